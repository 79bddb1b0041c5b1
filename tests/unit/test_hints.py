"""Hints tell what the problem does not say: which instrument and from where, then the move."""

import json
import re

import pytest

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import Code

PRACTISED = list(CALCULATORS)


def hint(slug: str, form: dict[str, str], step: int, rung: int) -> str:
    reply = json.loads(handle(json.dumps({"do": "hint", "page": slug, "form": form, "step": step, "rung": rung}))[0])
    assert reply["ok"]
    return reply["regions"]["hint"]


def lines(html: str) -> list[str]:
    """What a hint says, without its buttons."""
    return [re.sub("<[^>]*>", "", line) for line in re.findall("<p>(.*?)</p>", html)]


def problem(slug: str, tier: str = "core", method: str = "any") -> dict[str, str]:
    page = CALCULATORS[slug]
    return page.practice_form(Code(page.topic, tier, method, seed=3)) | {"sheet": "problem"}


@pytest.mark.parametrize("slug", PRACTISED)
def test_the_first_hint_is_not_the_scale_that_the_problem_states(slug: str) -> None:
    """It asked which scale, then told the one beside it."""
    form = problem(slug)
    for rung in (1, 2):
        said = " ".join(lines(hint(slug, form, 1, rung)))
        assert "scale" not in said.lower() and re.search("uler|rotractor|quare|ompass", said), said


@pytest.mark.parametrize("slug", PRACTISED)
def test_every_rung_of_every_step_adds_something(slug: str) -> None:
    """The move was told after a line that began it with the same words."""
    form, step, seen = problem(slug), 1, 0
    while step:
        first, second = (hint(slug, form, step, rung) for rung in (1, 2))
        look, *move = lines(second)
        assert [look] == lines(first)
        assert all(line != look and not line.startswith(look) for line in move)
        assert bool(move) is ('data-hint-rung="2"' in first)
        following = re.findall(r'data-hint-step="(\d+)" data-hint-rung="1"', second)
        assert not following or int(following[0]) > step
        step, seen = int(following[0]) if following else 0, seen + 1
    assert seen > 2


@pytest.mark.parametrize(("method", "drawn"), [("parallelogram", 2), ("tip-to-tail", 2), ("components", 3)])
def test_hints_pass_over_what_the_sheet_has_drawn(method: str, drawn: int) -> None:
    """They told how to draw the two phasors that stand on the sheet; `drawn`: the step of the first."""
    form = problem("neutral-current", "support", method)
    assert "two" == form["start"]
    for step in (drawn, drawn + 1):
        assert f"Step {drawn + 2} " in hint("neutral-current", form, step, 1)
        assert f"Step {step} " in hint("neutral-current", form | {"start": "yes"}, step, 1)


def test_on_own_paper_nothing_is_drawn_already_and_the_first_hint_is_its_scale() -> None:
    """Hints began at the fourth step, after two phasors that no paper of the learner's has."""
    form = problem("neutral-current", "support", "parallelogram") | {"own-paper": "A4"}
    look, move = (hint("neutral-current", form, 1, rung) for rung in (1, 2))
    assert "Step 1 " in look and 'data-hint-step="2"' in move
    [asked] = lines(look)
    assert "Ruler" in asked and "current ÷ amperes per centimetre" in asked and "1 cm" not in asked
    assert re.search(r"left edge, .* 1\s+cm\s+=\s+2\s+A\. .* is [0-9]+", lines(move)[1])
    for step in (2, 3):
        assert f"Step {step} " in hint("neutral-current", form, step, 1)


def test_components_are_sorted_before_they_are_added() -> None:
    """The first hint told both sums in millimetres."""
    form = problem("neutral-current", method="components")
    first, second = (lines(hint("neutral-current", form, 9, rung)) for rung in (1, 2))
    assert first == [
        "Sort the components that you read. To the right: I2. To the left: I3. Subtract left from right. "
        "Up: I1. Down: I2 and I3. Subtract down from up."
    ]
    assert first[0] == second[0] and "mm" in second[1] and "Right minus left" in second[1]
