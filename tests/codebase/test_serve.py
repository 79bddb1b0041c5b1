"""The server of the built site loses no time: what it sends leaves at once."""

import socket
import urllib.request
from pathlib import Path
from queue import Queue

from making.serve import Server, serving


def test_a_body_does_not_wait_for_the_word_that_its_headers_have_arrived(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("<!doctype html>", encoding="utf-8")
    at_once: Queue[int] = Queue()

    class Watched(Server):
        def finish_request(self, request: socket.socket, client_address: object) -> None:
            super().finish_request(request, client_address)
            at_once.put(request.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY))

    with serving(tmp_path, Watched) as address, urllib.request.urlopen(address) as response:
        assert b"<!doctype html>" == response.read()
    assert 0 != at_once.get(timeout=10)
