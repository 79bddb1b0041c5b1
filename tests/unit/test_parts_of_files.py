"""Long files are handed over part by part: the parts are the file, and objects that are written are let go."""

import io
import json

import pikepdf
import pypdfium2
import pytest

from pycore import api
from pycore.writers import pdf_file
from pycore.writers.pdf_file import FileBody

FORM = {"learners": "6", "seed": "4711"}


def ask(**request):
    """The reply and the bytes for a request of the page of class sets."""
    text, data = api.handle(json.dumps({"page": "class-set", "base": "https://hall.example/class-set/"} | request))
    return json.loads(text), data


def parts_of(**more):
    """The parts of a class set's file, in the order in which they come."""
    reply, _ = ask(do="begin", work="pdf", form=FORM)
    parts = []
    while not reply["ended"]:
        reply, part = ask(do="next", job=reply["job"], pieces=2, **more)
        parts.append(part)
    parts.append(ask(do="finish", job=reply["job"])[1])
    return [part for part in parts if part]


def test_parts_are_the_file(monkeypatch):
    """What comes in parts is, joined, the file that comes at once; two readers find no fault in it."""
    (whole,) = parts_of()
    monkeypatch.setattr(pdf_file, "PART", 8192)
    parts = parts_of(parts=True)
    assert len(parts) > 4
    assert b"".join(parts) == whole
    assert all(len(part) >= 8192 for part in parts[:-1])
    with pikepdf.open(io.BytesIO(whole)) as read:
        pages = len(read.pages)
        assert not read.check_pdf_syntax()
    assert pages == len(pypdfium2.PdfDocument(whole)) >= 12


def test_parts_come_only_to_those_who_ask(monkeypatch):
    """A request as version 1.0 made it gets its file at the end, whole."""
    monkeypatch.setattr(pdf_file, "PART", 8192)
    assert len(parts_of()) == 1
    assert len(parts_of(parts="yes")) == 1


def test_written_objects_are_let_go(monkeypatch):
    """While a set is made, few of its objects wait to be written."""
    waiting = []
    written = FileBody.write

    def write(self, first):
        written(self, first)
        waiting.append(len([one for one in self._pdf.objects if one is not None]) + len(self._small))

    monkeypatch.setattr(FileBody, "write", write)
    parts_of(parts=True)
    assert len(waiting) > 12
    assert max(waiting) < pdf_file.PACKED + 100


@pytest.mark.parametrize("job", [None, "1", 99])
def test_a_job_that_is_gone_has_no_parts(job):
    """A request for a part of work that nobody knows is told so."""
    reply, part = ask(do="next", job=job, parts=True)
    assert reply["gone"]
    assert part is None
