"""A problem as it is drawn on the screen: its choices, and the link by which its kept drawing is found again."""

from collections.abc import Mapping

from pycore.forms import links
from pycore.sheet.kinds import POINT, PROBLEM
from pycore.sheet.styles import USUAL
from pycore.sums.case import SumCase

ON_SCREEN = {"own-paper": "", "own-way": "", "print": USUAL, "start": POINT, "sheet": PROBLEM}
"""Choices of the form that hold for paper alone: here the sheet itself is drawn on, and only its start stands on it."""


def on_screen(form: Mapping[str, str]) -> dict[str, str]:
    """Return a form as it is drawn on the screen."""
    return {**form, **ON_SCREEN}


def link_on_screen(case: SumCase) -> str:
    """Return the fragment of a case on the screen, with every choice that was made to fit: equal for equal problems."""
    return links.fragment(case.link(case.sheet_plan(), PROBLEM))
