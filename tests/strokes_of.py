"""A made-up photograph read as the page reads it: its marks and strokes by the page's own scripts, in one Node."""

import json
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType

from PIL import Image

RUN = Path(__file__).parent / "bench" / "photographs_read.mjs"
MOST = 2000


@dataclass
class Reader:
    """A Node that reads photographs one after another; a context manager."""

    def __enter__(self) -> "Reader":
        self.folder = tempfile.TemporaryDirectory()
        self.node = subprocess.Popen(
            ["node", str(RUN)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
        )
        return self

    def __exit__(self, kind: type | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.node.stdin.close()
        self.node.wait(timeout=20)
        self.node.stdout.close()
        self.folder.cleanup()

    def ask(self, picture: Image.Image, **request: object) -> dict:
        """The reply to one request about a picture."""
        file = Path(self.folder.name) / "pixels"
        file.write_bytes(picture.convert("RGBA").tobytes())
        asked = {"file": str(file), "width": picture.width, "height": picture.height, **request}
        self.node.stdin.write(json.dumps(asked) + "\n")
        reply = self.node.stdout.readline()
        if not reply:
            raise RuntimeError("the reader in Node has ended")
        return json.loads(reply)

    def marks(self, picture: Image.Image, editions: object) -> dict:
        """The marks in a picture made no larger than the page makes it; in the picture's own pixels."""
        share = min(1.0, MOST / max(picture.size))
        size = (round(picture.width * share), round(picture.height * share))
        found = self.ask(picture.resize(size, Image.Resampling.BOX), do="marks", editions=editions)
        if found["marks"]:
            found["marks"] = [mark and [mark["x"] / share, mark["y"] / share] for mark in found["marks"]]
        return found
