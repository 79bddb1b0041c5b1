"""The sentences of the parallelogram: its two stages, with each tool for parallels."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol


def parallel_by_protractor(side: Name, angle: str, sense: str, length: str, to: Name) -> Phrase:
    """First dashed line, by the neighbouring angle."""
    return say(
        "**Mark {angle} {sense} at the tip of {side}.** Protractor’s centre on that tip, zero line back along "
        "{side}. Draw a dashed line, {length}. It is parallel to {to}.",
        side=side,
        angle=angle,
        sense=sense,
        length=length,
        to=to,
    )


def neighbouring_why(between: str, angle: str, wider: int) -> Phrase:
    """Why that angle, and that it is the smaller or the larger of the two on the protractor."""
    than = {1: "more than", 0: "exactly", -1: "less than"}[wider]
    return say(
        "Neighbouring angles of a parallelogram add up to 180°: 180° − {between} = {angle}, {than} a right angle.",
        between=between,
        angle=angle,
        than=than,
    )


FIRST, SECOND = "first", "second"


def _before(which: str) -> str:
    """"first" or "second" with the space that parts it from its noun; nothing where there is only one."""
    return f"{which} " if which else ""


def close_by_protractor(
    which: str, side: Name, angle: str, sense: str, length: str, to: Name
) -> Phrase:
    """Second dashed line; the two meet."""
    return say(
        "**Complete the {which}parallelogram.** Protractor’s centre on the tip of {side}, zero line back along "
        "{side}: mark {angle} {sense}. Draw a dashed line{length}, parallel to {to}. The two dashed lines meet.",
        which=_before(which),
        side=side,
        angle=angle,
        sense=sense,
        length=length,
        to=to,
    )


def of_length(length: str) -> str:
    """The length of a dashed line, after its name."""
    return f", {length}"


def as_the_diagonal(length: str) -> str:
    """The length of a dashed line that the learner has measured, after its name; ``length`` as it should be read."""
    return f" as long as your diagonal (about {length})"


def measure_between(first: Name, second: Name, expected: str) -> Phrase:
    """The angle of the second stage is measured, not copied."""
    return say(
        "**Measure the angle between {first} and {second}.** Protractor’s centre on the common point. Expect "
        "{expected}.",
        first=first,
        second=second,
        expected=expected,
    )


MEASURE_WHY = say(
    "The next angle to mark is 180° minus your own reading. Or extend the diagonal beyond its "
    "tip and mark your reading there: corresponding angles are equal."
)


def parallel_by_set_squares(side: Name, to: Name, length: str) -> Phrase:
    """First dashed line, slid along."""
    return say(
        "**Draw a parallel through the tip of {side}.** Set square along {to}, ruler against its other side. Slide "
        "the set square to the tip of {side} and draw a dashed line, {length}.",
        side=side,
        to=to,
        length=length,
    )


def close_by_set_squares(which: str, side: Name, to: Name, length: str) -> Phrase:
    """Second dashed line, slid along."""
    return say(
        "**Complete the {which}parallelogram.** Set square along {to}. Slide it to the tip of {side} and draw a "
        "dashed line{length}. The two dashed lines meet.",
        which=_before(which),
        side=side,
        to=to,
        length=length,
    )


SLIDE_WHY = say("Hold the ruler still: a set square that slides along it keeps its direction.")


def cross_arcs(first: Name, first_radius: str, second: Name, second_radius: str) -> Phrase:
    """Two compass arcs of copied length."""
    return say(
        "**Draw two arcs that cross.** Open the compasses to the length of {second}, {second_length}. Point on the "
        "tip of {first}: draw an arc. Then open them to the length of {first}, {first_length}. Point on the tip of "
        "{second}: draw a second arc across the first.",
        first=first,
        second=second,
        second_length=second_radius,
        first_length=first_radius,
    )


def close_by_compasses(which: str, first: Name, second: Name) -> Phrase:
    """Dashed lines to the crossing."""
    return say(
        "**Complete the {which}parallelogram.** Draw dashed lines from the tips of {first} and {second} to the point "
        "where the arcs cross.",
        which=_before(which),
        first=first,
        second=second,
    )


ARCS_WHY = say(
    "The arcs can cross twice. Take the crossing further from the common point. There opposite sides are equal and "
    "parallel."
)


def diagonal(end: str, measured: Phrase) -> Phrase:
    """The first diagonal, drawn and measured."""
    return say(
        "**Draw the diagonal.** From the common point to {end}. Measure it: {measured}", end=end, measured=measured
    )


def diagonal_why(meaning: str, names: Sequence[str], numbers: Sequence[int]) -> Phrase:
    """What the first diagonal means, in a page's own words: ``names`` of both that it adds and of the one left out, and
    the ``numbers`` of both."""
    first, second, third = names
    if not meaning:
        return ()
    return say(meaning, first=first, second=second, third=third, one=str(numbers[0]), other=str(numbers[1]))


def carry_on(first: Name, second: Name, length: str) -> Phrase:
    """Two phasors on one line, or so nearly that no parallelogram can be drawn."""
    return say(
        "**No parallelogram:** {first} and {second} are on one line, or almost. Use tip to tail: from the tip of "
        "{first}, draw {length} in the direction of {second}.",
        first=first,
        second=second,
        length=length,
    )


THE_DIAGONAL: Phrase = ("the diagonal",)
IT: Phrase = ("it",)
