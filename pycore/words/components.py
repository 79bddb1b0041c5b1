"""The sentences of the components: axes, perpendiculars, sums, rectangle."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, Symbol, listed_phrases, say

Name = Phrase | Symbol


AXES = say(
    "**Draw two axes** faintly through the common point: one horizontal and one vertical, at right angles."
)


def drop(phasor: Name, across: str, upward: str) -> Phrase:
    """Perpendiculars on to both axes."""
    return say(
        "**Find the components of {phasor}.** With a set square, draw a line from the tip at right angles to each "
        "axis. Read {across} and {upward}.",
        phasor=phasor,
        across=across,
        upward=upward,
    )


def drop_on_axis(phasor: Name, axis: Name, part: str, other: str) -> Phrase:
    """A phasor along one axis has one component only."""
    return say(
        "**Find the components of {phasor}.** It is on {axis}: {part}, {other}.",
        phasor=phasor, axis=axis, part=part, other=other,
    )  # fmt: skip


NOTHING_ACROSS, NOTHING_UPWARD = "nothing to the side", "nothing up or down"


def across_part(length: str, side: int) -> str:
    """A horizontal component in words; ``side`` is +1 to the right, -1 to the left, 0 for none."""
    return {1: f"{length} to the right", -1: f"{length} to the left", 0: "no horizontal component"}[side]


def upward_part(length: str, side: int) -> str:
    """A vertical component in words; ``side`` is +1 up, -1 down, 0 for none."""
    return {1: f"{length} up", -1: f"{length} down", 0: "no vertical component"}[side]


def add_parts(across: str, upward: str) -> Phrase:
    """Add the two columns."""
    return say(
        "**Add the components.** Right minus left: {across}. Up minus down: {upward}.",
        across=across,
        upward=upward,
    )


def which_way(
    right: Sequence[Phrase], left: Sequence[Phrase], up: Sequence[Phrase], down: Sequence[Phrase]
) -> Phrase:
    """Before they are added: whose components lie to which side, and which are subtracted."""
    listed = {name: listed_phrases(tags) if tags else ("nothing",)
              for name, tags in (("right", right), ("left", left), ("up", up), ("down", down))}  # fmt: skip
    return say(
        "Sort the components that you read. To the right: {right}. To the left: {left}. Subtract left from right. "
        "Up: {up}. Down: {down}. Subtract down from up.",
        **listed,
    )


def corner(across: str, upward: str) -> Phrase:
    """The rectangle on the sums."""
    return say(
        "**Mark both sums on the axes:** {across} and {upward}. Complete the rectangle with two dashed lines.",
        across=across,
        upward=upward,
    )


def corner_on_axis(component: str) -> Phrase:
    """One of the sums is zero."""
    return say(
        "**Mark the sum on its axis:** {component}. The other sum is zero, so there is no rectangle.",
        component=component,
    )
