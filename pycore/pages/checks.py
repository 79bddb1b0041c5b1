"""The evidence: every outside check of the project, topic by topic, from the data of the tests."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.pages.reading import ReadingPage, Section
from pycore.sums.answer import Grid, Paragraph
from pycore.words import evidence as words
from pycore.words.phrase import Phrase, say


@dataclass(frozen=True, slots=True)
class Check:
    """One checked value: its topic, the quantity, source and kind, expected value and ours as text, the difference."""

    topic: str
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
    first = Section(
        say(words.TABLE), (Paragraph(words.counted(str(len(checks)), str(held), counts)), Paragraph(words.kinds()))
    )
    topics: dict[str, list[Check]] = {}
    for check in checks:
        topics.setdefault(check.topic, []).append(check)
    tables = [Section(say(topic), (Grid(words.HEAD, tuple(map(_row, listed))),)) for topic, listed in topics.items()]
    return ReadingPage(
        words.CHECKS_SLUG, words.CHECKS_TITLE, words.CHECKS_DESCRIPTION, words.CHECKS_LEAD, (first, *tables)
    )
