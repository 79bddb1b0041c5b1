"""A sum that is not zero but too short for any drawing: no arrow, no angle, and the page says why."""

import json

import pytest
from host import shelf
from unit.sheets import on_page, table_of

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.forms.fields import default_form
from pycore.sums.answer import Move
from pycore.words import plain

NEARLY = "as nearly as a drawing can show"
FORMS = [
    ("neutral-current", {"i1": "10", "i2": "6", "i3": "8", "a2": "6.87", "a3": "-23.13"}),
    ("add-phasors", {"p1": "10 at 0", "p2": "6 at -126.87", "p3": "8 at 143.13"}),
    ("add-phasors", {"p1": "10 at 0", "p2": "10.001 at 0", "combine": "difference"}),
    ("sequence-components", {"p1": "100 at 0", "p2": "100 at -120", "p3": "100.05 at 120", "part": "zero"}),
    ("harmonics-in-the-neutral", {"i1": "10", "i2": "10", "i3": "10.002", "drawn": "1"}),
    ("open-neutral", {"z1": "20", "z2": "20", "z3": "20.01"}),
    ("open-neutral", {"z1": "20", "z2": "20", "z3": "20.01", "method": "tip-to-tail"}),
]


def constructions(slug: str, form: dict[str, str]) -> list[list[str]]:
    """The moves of each construction, in words."""
    workings = CALCULATORS[slug].answer(form, ("workings",)).workings
    told = [[plain(block.phrase) for block in one.blocks if isinstance(block, Move)] for one in workings]
    return [moves for moves in told if moves]


@pytest.mark.parametrize(("slug", "form"), FORMS)
@pytest.mark.parametrize("resultant", ["sum", "returning"])
def test_a_sum_that_no_drawing_shows_has_no_arrow_and_no_angle(slug: str, form: dict[str, str], resultant: str):
    page = CALCULATORS[slug]
    assert any(field.name == "resultant" for field in page.fields) or resultant == "sum" or slug == "open-neutral"
    methods = [choice.value for field in page.fields if field.name == "method" for choice in field.options]
    for method in [form["method"]] if "method" in form else methods:
        if slug == "open-neutral" and "method" not in form and method != "displacement":
            continue
        whole = default_form(page.fields) | form | {"method": method}
        whole |= {"resultant": resultant} if "resultant" in whole else {}
        case = page.case(whole)
        assert 0 < case.size <= 0.001 * max(arm.size for arm in case.arms)
        answer = page.answer(whole)
        told = " ".join(plain(line) for line in (*answer.summary, *answer.remarks, *answer.notices))
        summary = " ".join(plain(line) for line in answer.summary)
        assert NEARLY in summary and "°" not in summary and "by hand" not in summary
        assert "mm long" not in told and "too short" not in told
        for kind in ("construction", "overlay"):
            sheet = page.sheet_page({**whole, "sheet": kind})
            assert not [placed for placed in on_page(sheet, Arrow) if placed.phasor in ("sum", "return")]
            assert any("no arrow" in cell for row in table_of(sheet) for cell in row)


@pytest.mark.parametrize(("slug", "form"), FORMS)
def test_every_construction_ends_with_the_figure_that_closes(slug: str, form: dict[str, str]):
    for moves in constructions(slug, form):
        assert 1 == sum(NEARLY in move for move in moves)
        assert not any("no vertical component. The other sum" in move for move in moves)
        assert not any(move.startswith("Measure I") or "too short to measure" in move for move in moves)
    reply, _ = shelf.ask(slug, form, "lesson", view="lesson", step=1)
    assert reply["ok"], reply
    finished, _ = shelf.ask(slug, form, "lesson", view="lesson", step=99)
    last, _ = shelf.ask(slug, form, "lesson", view="lesson", step=finished["step"] - 1)
    assert (last["ok"] and NEARLY in json.dumps(last)) or slug == "open-neutral"


def test_a_figure_that_closes_exactly_still_says_so():
    told = constructions("neutral-current", {"i1": "10", "i2": "10", "i3": "10"})
    assert all(any(move.startswith("The figure closes. The last phasor ends at") for move in moves) for moves in told)


def test_a_sum_of_a_millimetre_is_still_drawn():
    page = CALCULATORS["neutral-current"]
    sheet = page.sheet_page({"i1": "10", "i2": "10", "i3": "10.1"})
    assert [placed for placed in on_page(sheet, Arrow) if placed.phasor == "sum"] or "sum" in str(sheet)
    assert not any(NEARLY in move for moves in constructions("neutral-current", {"i3": "18"}) for move in moves)
