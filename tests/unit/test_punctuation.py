"""Sentences are put together from pieces: no two punctuation marks meet, no two spaces, no space before a mark."""

import dataclasses
import json
import re
from collections.abc import Iterator

import pytest
from host import shelf
from unit.sheets import texts

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Page
from pycore.sums.answer import Answer
from pycore.words import plain
from pycore.words.phrase import Emphasis, Symbol

FORMS = 12
CLASH = re.compile(r",,|\.,|,\.|\.\.|;,|,;|:,|  | [.,;:](?!\d)|\(\s|\s\)")
READINGS = (
    {"drawn": "11.6", "measured": "11.6"}, {"drawn": "81 mm", "measured": "17.9", "hand": "ordinary"},
    {"drawn": "58 mm", "measured": "12.6 12.4", "wording": "full", "meters": "one"}, {"measured": "0"},
)  # fmt: skip


def said(value: object) -> Iterator[str]:
    """Every text within an answer, a working or a frame of a lesson, a phrase as one text."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple) and value and all(isinstance(one, str | Symbol | Emphasis) for one in value):
        yield plain(value)
    elif isinstance(value, list | tuple):
        for one in value:
            yield from said(one)
    elif dataclasses.is_dataclass(value) and not isinstance(value, Page | Symbol):
        for field in dataclasses.fields(value):
            if field.name not in ("link", "sheet", "picture"):
                yield from said(getattr(value, field.name))


def clashes(lines: Iterator[str]) -> list[str]:
    return [line for line in (line.replace("\u00a0", " ") for line in lines) if CLASH.search(line)]


def announced(slug: str, form: dict[str, str]) -> str:
    reply = json.loads(handle(json.dumps({"do": "answer", "page": slug, "form": form, "parts": ["answer"]}))[0])
    return reply["announce"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_punctuation_marks_or_spaces_meet_in_any_sentence(slug: str):
    page = CALCULATORS[slug]
    forms = [{}, *shelf.forms(slug, FORMS)]
    for form in (*forms, *(READINGS if any(field.name == "measured" for field in page.fields) else ())):
        answer: Answer = page.answer(form)
        assert [] == clashes(said(answer)), form
        assert [] == clashes(iter((announced(slug, form),))), form


@pytest.mark.parametrize("slug", CALCULATORS)
def test_nor_in_any_line_of_a_sheet_or_a_lesson(slug: str):
    page = CALCULATORS[slug]
    for form in ({}, *shelf.forms(slug, 4)):
        for kind in ("construction", "problem", "overlay"):
            for printed in ("usual", "easy"):
                paper = "A4" if form.get("paper") == "A5" else form.get("paper", "A4")
                pages = page.pages({**form, "sheet": kind, "print": printed, "paper": paper})
                assert [] == clashes(text.words for one in pages for text in texts(one)), form
        first = page.lesson(form, "lesson", 1)
        frames = [page.lesson(form, "lesson", number) for number in range(1, first.count + 1)]
        assert [] == clashes(line for frame in frames for line in said(frame)), form
