"""Each stage is made once and does not change: one reading of a form serves every kind of sheet."""

import functools
import gc
import json
import re

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS, SLUGS
from pycore.forms.fields import default_form
from pycore.forms.reading import Reader
from pycore.sheet.kinds import KINDS
from pycore.writers import svg


@pytest.fixture
def readings(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """A line for each reader that reads a form to its end; it may look at its faults on the way."""
    ended: list[str] = []
    readers: list[Reader] = []
    finish = Reader.finish

    def counted(self: Reader) -> None:
        if not any(self is reader for reader in readers):
            readers.append(self)
            ended.append("read")
        finish(self)

    monkeypatch.setattr(Reader, "finish", counted)
    return ended


@pytest.mark.parametrize("slug", SLUGS)
def test_pages_of_three_kinds_read_the_form_once(slug: str, readings: list[str]):
    page = CALCULATORS[slug]
    assert 3 == len(page.pages(default_form(page.fields), kinds=KINDS))
    assert ["read"] == readings


@pytest.mark.parametrize("slug", SLUGS)
def test_a_request_for_an_answer_reads_the_form_once(slug: str, readings: list[str]):
    form = default_form(CALCULATORS[slug].fields)
    parts = ["answer", "sheet", "view", "workings", "check"]
    reply = json.loads(api.handle(json.dumps({"do": "answer", "page": slug, "form": form, "parts": parts}))[0])
    assert reply["ok"]
    assert ["read"] == readings


@pytest.mark.parametrize("slug", SLUGS)
def test_a_case_does_not_change_once_it_is_made(slug: str):
    page = CALCULATORS[slug]
    case = page.case(default_form(page.fields))
    for name in ("total", "problem", "plan", "code", "new"):
        with pytest.raises(AttributeError):
            setattr(case, name, None)
    notation = case.notation
    for held in (notation.tags, notation.own_steps, notation.origins, notation.units):
        with pytest.raises(TypeError):
            held["x"] = ("1",)


def test_the_faults_of_a_case_do_not_depend_on_what_was_asked_before():
    """A scale that does not fit is told by a fresh case too, whose plan nobody has asked for yet."""
    page = CALCULATORS["neutral-current"]
    form = default_form(page.fields) | {"scale": "0.01"}
    fresh, asked = page.case(form), page.case(form)
    asked.sheet_plan()
    assert page.faults(fresh) == page.faults(asked) != ()


def test_a_kind_of_sheet_is_an_argument_and_leaves_the_form_alone():
    """The link on an overlay opens the overlay, though the form asks for the construction."""
    page = CALCULATORS["neutral-current"]
    form = default_form(page.fields) | {"sheet": "construction"}
    answer = page.answer(form, ("answer",), kind="overlay")
    assert "overlay" == answer.kind == dict(answer.link)["sheet"]
    assert "sheet" not in dict(page.answer(form, ("answer",)).link)


def emptied() -> None:
    """Everything that pycore keeps from one request for the next is forgotten."""
    for one in gc.get_objects():
        if isinstance(one, functools._lru_cache_wrapper) and one.__module__.startswith("pycore."):
            one.cache_clear()
    svg._kept.clear()


def edits_of(slug: str) -> list[dict[str, str]]:
    """A form as it opens, with other sizes in its first value, and with another option of each choice."""
    fields = CALCULATORS[slug].fields
    form, edited = default_form(fields), next(field for field in fields if field.group == "values")
    typed = form[edited.name]
    sizes = [re.sub(r"^[\d.]+", f"{10 + number / 7:.2f}", typed) for number in range(8)]
    choices = [{field.name: field.options[-1].value} for field in fields if field.options]
    return [form, *(form | {edited.name: size} for size in sizes), *(form | choice for choice in choices)]


@pytest.mark.parametrize("slug", SLUGS)
def test_a_reply_depends_on_the_form_alone_and_not_on_what_was_typed_before(slug: str):
    """What is kept from one edit for the next changes no byte: replies as they are asked one after another, and each
    with nothing kept."""
    edits = edits_of(slug)

    def reply(edit: dict[str, str]) -> str:
        asked = {"do": "answer", "page": slug, "form": edit, "parts": ["answer", "sheet", "view", "workings"]}
        lesson = {"do": "lesson", "page": slug, "form": edit, "view": "lesson", "step": 2}
        return "".join(api.handle(json.dumps(one))[0] for one in (asked, lesson))

    typed = [reply(edit) for edit in edits]
    answered = [text for text in typed if '"errors": []' in text]
    assert len(answered) > 0.8 * len(edits)
    assert len(set(answered)) > 0.3 * len(edits)
    for edit, before in list(zip(edits, typed, strict=True))[::3]:
        emptied()
        assert before == reply(edit)
