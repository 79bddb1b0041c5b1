"""The evidence: every outside check of the project in one table, from the data of the tests."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.pages.reading import ReadingPage, Section
from pycore.sums.answer import Grid, Paragraph
from pycore.words import evidence as words
from pycore.words.phrase import Phrase, say


@dataclass(frozen=True, slots=True)
class Check:
    """One checked value: the quantity, source and kind, expected value and ours as text, and the difference."""

    quantity: str
    source: str
    kind: str
    expected: str
    ours: str
    difference: str
    holds: bool


def _row(check: Check) -> tuple[Phrase, ...]:
    held = words.HOLDS if check.holds else words.FAILS
    return (
        (check.quantity,), (f"{check.source} ({check.kind})",), (check.expected,), (check.ours,), (check.difference,),
        (held,),
    )  # fmt: skip


def checks_page(checks: Sequence[Check]) -> ReadingPage:
    """The page ``/checks/``."""
    kinds: dict[str, int] = {}
    for check in checks:
        kinds[check.kind] = kinds.get(check.kind, 0) + 1
    counts = ", ".join(f"{count} {kind}" for kind, count in sorted(kinds.items()))
    held = len([check for check in checks if check.holds])
    table = Grid(words.HEAD, tuple(_row(check) for check in checks))
    section = Section(
        say(words.TABLE),
        (Paragraph(words.counted(str(len(checks)), str(held), counts)), table, Paragraph(words.kinds())),
    )
    return ReadingPage(words.CHECKS_SLUG, words.CHECKS_TITLE, words.CHECKS_DESCRIPTION, words.CHECKS_LEAD, (section,))
