"""Marks for the parts of a question: method marks stand when a slip is carried on.

A mistake of the catalogue that explains a wrong drawing says which part was done wrong. What follows from it was then
done rightly, and keeps its marks. Where several mistakes could explain it, marks are a range for a person to decide.
So they are for the method of every wrong calculation: it stands in the working, which an answer does not show.
"""

from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import replace

from pycore.practice.answers import AnswerJudgement
from pycore.practice.marking import ACCEPT, LOOK
from pycore.practice.task import Mistake

Range = tuple[int, int]
"""Marks from and to."""
Worth = Mapping[str, int]
"""What each part can have."""

DRAWN_PARTS: Mapping[str, tuple[str, ...]] = {
    "scale": ("drawn-at-other-scale", "multiplied-lines"),
    "values": (
        "micro-as-milli", "milli-forgotten", "reactance-inverted", "two-pi-forgotten",
    ),
    "lengths": ("swapped", "line-at-other-scale", "figures-exchanged"),
    "directions": (
        "a-exchanged", "angle-at-tip", "angle-turned", "angles-ignored", "angles-of-loads", "base-edge", "centre-off",
        "kinds-exchanged", "lead-for-lag", "mirrored", "not-turned", "order-not-multiplied", "other-scale",
        "other-scale-at-tip", "other-scale-throughout", "reversed", "right-angles", "turned", "wrong-way",
        "wrong-way-a", "wrong-way-at-tip",
    ),
}  # fmt: skip
"""Drawing mistakes by the part that they belong to; all others belong to the result."""


def _part_of(key: str) -> str:
    return next((part for part, keys in DRAWN_PARTS.items() if key in keys), "resultant")


def _drawn_with(key: str, worth: Worth) -> dict[str, int]:
    """The marks of a drawing with one mistake: its own part loses, what follows from it stands. Where that part has no
    marks, the result loses them; where the result has none either, all do: wrong is never right."""
    lost = next((part for part in (_part_of(key), "resultant") if worth.get(part)), None)
    return {part: 0 if lost in (part, None) else marks for part, marks in worth.items()}


def _drawn_by(mistake: Mistake, worth: Worth) -> tuple[dict[str, int], ...]:
    """The marks of a drawing by one mistake. One that gives a size alone, as plain addition does, shows nothing of the
    drawing: of its parts only the paper can tell."""
    if mistake.point is not None:
        return (_drawn_with(mistake.key, worth),)
    return dict.fromkeys(worth, 0), {part: 0 if part == "resultant" else marks for part, marks in worth.items()}


def _mistakes(reply: AnswerJudgement) -> tuple[tuple[Mistake, ...], bool]:
    """The mistakes that could explain an answer, and whether they do for sure: those of the one cause that is sure, or
    of all; none where something else explains it."""
    causes = reply.marked.causes
    if reply.unit_meant or reply.follows or reply.missing or not causes:
        return (), False
    sure = causes[0].sure
    found = {one.key: one for cause in causes[: 1 if sure else None] for one in cause.mistakes}
    return tuple(found.values()), sure


def _open(reply: AnswerJudgement, worth: Worth, found: str) -> tuple[dict[str, int], ...]:
    """Marks that no mistake explains: the least and the most. The part ``found`` is what was asked for, the others how
    it was found; these stand where only the unit, the side or the line of the angle is wrong, or a slip was carried on.
    A wrong unit always costs the part ``found``.
    """
    stands = reply.follows or reply.coarse or bool(reply.unit_meant or reply.missing) or reply.origin is not None
    least = {part: marks if stands else 0 for part, marks in worth.items()}
    most = dict(worth)
    if found in worth:
        most[found] = worth[found] if reply.marked.band == LOOK and not reply.unit_meant else 0
        least[found] = most[found] if reply.follows else 0
    return least, most


def drawing_marks(reply: AnswerJudgement, worth: Worth) -> tuple[dict[str, int], ...]:
    """Marks for the parts of a drawing, from the answer that was read off it: by every explanation of it."""
    if reply.marked.band == ACCEPT:
        return (dict(worth),)
    mistakes, sure = _mistakes(reply)
    options = [option for one in mistakes for option in _drawn_by(one, worth)]
    return (*options, *(() if sure else _open(reply, worth, "resultant")))


def calculation_marks(reply: AnswerJudgement, worth: Worth) -> tuple[dict[str, int], ...]:
    """Marks for the parts of a calculation, from its answer: the least and the most."""
    return (dict(worth),) if reply.marked.band == ACCEPT else _open(reply, worth, "accuracy")


def agreed(replies: Mapping[str, AnswerJudgement | None]) -> dict[str, AnswerJudgement | None]:
    """A drawn and a calculated answer to one question, by how they were found: a mistake that explains both of them
    comes first in both, so that one slip has one name."""
    wrong = [reply for reply in replies.values() if reply is not None and reply.marked.causes]
    named = [{one.key for cause in reply.marked.causes for one in cause.mistakes} for reply in wrong]
    if len(named) < 2 or not named[0] & named[1]:
        return dict(replies)
    both = named[0] & named[1]
    return {how: reply and _with_first(reply, both) for how, reply in replies.items()}


def _with_first(reply: AnswerJudgement, keys: AbstractSet[str]) -> AnswerJudgement:
    """A judgement whose causes begin with mistakes of these keys; one cause that is sure stays the first."""
    causes = [
        replace(cause, mistakes=tuple(sorted(cause.mistakes, key=lambda one: one.key not in keys)))
        for cause in reply.marked.causes
    ]
    if causes and not causes[0].sure:
        causes.sort(key=lambda cause: cause.mistakes[0].key not in keys)
    return replace(reply, marked=replace(reply.marked, causes=tuple(causes)))


def narrowed(options: Iterable[Mapping[str, int]], chosen: Mapping[str, int]) -> list[dict[str, int]]:
    """The explanations that leave the marks that a person chose for single parts; where none does, all of them with
    these marks."""
    listed = [dict(one) for one in options]
    for part, count in chosen.items():
        if part in listed[0]:
            listed = [one for one in listed if one[part] == count] or [{**one, part: count} for one in listed]
    return listed


def spread(options: Iterable[Mapping[str, int]]) -> dict[str, Range]:
    """From the least to the most that some explanation leaves of each part."""
    listed = list(options)
    return {part: (min(one[part] for one in listed), max(one[part] for one in listed)) for part in listed[0]}


def total(options: Iterable[Mapping[str, int]]) -> Range:
    """From the least to the most that some explanation leaves of all parts together."""
    sums = [added(one.values()) for one in options]
    return min(sums), max(sums)


def added(counts: Iterable[int]) -> int:
    """The sum of whole numbers."""
    whole = 0
    for count in counts:
        whole += count
    return whole


def summed(parts: Iterable[Range]) -> Range:
    """The marks of several parts."""
    low = high = 0
    for least, most in parts:
        low, high = low + least, high + most
    return low, high
