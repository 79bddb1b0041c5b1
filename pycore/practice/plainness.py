"""Which of several mistakes that give one answer is the plainest: it is named first, and counted.

Where one thing explains an answer, nobody needs two, and a thing forgotten or turned round is commoner than a wrong
power of ten or a tool set wrongly. That order is our own, from how lecturers read scripts; no source is known.
"""

from collections.abc import Iterable

from pycore.practice.task import Mistake

PLAIN = frozenset((
    "added", "angle-turned", "arrow-reversed", "branch-for-line", "divided-already", "first-turned", "left-out",
    "mirrored", "plain-sum", "reactances-added", "reactive-currents-added", "reactance-only", "resistance-only",
    "stopped", "turned-round",
))  # fmt: skip
"""Something left out, added for subtracted, or a result turned the other way."""
FAR_FETCHED = frozenset((
    "all-sine-for-cosine", "base-edge", "centre-off", "complement", "figures-exchanged", "gradians",
    "line-at-other-scale", "micro-as-milli", "milli-forgotten", "over-root-three", "radians", "reactance-inverted",
    "ruler-edge", "sine-for-cosine", "times-root-three", "two-pi-forgotten",
))  # fmt: skip
"""A wrong power of ten, formula or setting that happens to give the same."""


def _rank(mistake: Mistake) -> int:
    if mistake.key in PLAIN:
        return 0
    return 2 if mistake.key in FAR_FETCHED else 1


def plainest_first(mistakes: Iterable[Mistake]) -> tuple[Mistake, ...]:
    """Mistakes that no answer can tell apart, the plainest first; equally plain ones keep the catalogue's order."""
    return tuple(sorted(mistakes, key=_rank))
