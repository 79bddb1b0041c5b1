"""The files of question papers as the api makes them, and their text as another program reads it."""

import json

import pypdfium2

from pycore import api

BASE = "https://folio.example/term/question-papers/"


def made(form: dict[str, str], work: str, roll: str, **more: object) -> tuple[dict, bytes]:
    """A file, made by the api piece by piece."""
    request = {"do": "begin", "work": work, "page": "question-papers", "form": form, "roll": roll, "base": BASE, **more}
    begun = json.loads(api.handle(json.dumps(request))[0])
    assert begun["ok"], begun
    reply, data = api.handle(json.dumps({"do": "finish", "job": begun["job"]}))
    return json.loads(reply), data or b""


def pages(data: bytes) -> list[str]:
    """The text of every page, its lines one after another."""
    document = pypdfium2.PdfDocument(data)
    texts = [page.get_textpage().get_text_range().replace("\r\n", "\n").replace("\u00a0", " ") for page in document]
    document.close()
    return texts
