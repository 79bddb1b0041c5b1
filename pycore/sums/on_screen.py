"""A problem as it is drawn on the screen: its choices, and the link by which its kept drawing is found again."""

from collections.abc import Mapping

from pycore.forms import links
from pycore.sheet.kinds import POINT, PROBLEM, TWO
from pycore.sheet.styles import USUAL
from pycore.sums.case import SumCase

ON_SCREEN = {"own-paper": "", "own-way": "", "print": USUAL, "sheet": PROBLEM}
"""Choices of the form that hold for paper alone: here the sheet itself is drawn on."""


def on_screen(form: Mapping[str, str]) -> dict[str, str]:
    """Return a form as it is drawn on the screen: its start is always shown, and phasors that the sheet has drawn; own
    paper has none."""
    begun = form.get("start") == TWO and not form.get("own-paper")
    return {**form, **ON_SCREEN, "start": TWO if begun else POINT}


def link_on_screen(case: SumCase) -> str:
    """Return the fragment of a case on the screen, with every choice that was made to fit: equal for equal problems.

    What stands on the sheet at the start is left out: drawings were kept without it before any phasor stood there.
    """
    pairs = case.link(case.sheet_plan(), PROBLEM)
    return links.fragment([pair for pair in pairs if pair[0] != "start"])
