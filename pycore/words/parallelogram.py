"""The sentences of the parallelogram: its two stages, with each tool for parallels."""

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol


def parallel_by_protractor(side: Name, angle: str, sense: str, length: str, to: Name) -> Phrase:
    """First dashed line, by the neighbouring angle."""
    return say(
        "**Set off {angle} at the tip of {side}.** Protractor’s centre on that tip, zero line back along {side}. "
        "Go {sense} and draw a dashed line, {length}: it runs parallel to {to}.",
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
        "Neighbouring angles of a parallelogram make 180°: 180° − {between} = {angle}, {than} a right angle.",
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
        "**Close the {which}parallelogram.** Protractor’s centre on the tip of {side}, zero line back along {side}: "
        "{angle} {sense}. Dashed line, {length}, parallel to {to}. The two meet.",
        which=_before(which),
        side=side,
        angle=angle,
        sense=sense,
        length=length,
        to=to,
    )


def measure_between(first: Name, second: Name, expected: str) -> Phrase:
    """The angle of the second stage is measured, not copied."""
    return say(
        "**Measure the angle between {first} and {second}.** Protractor’s centre on the common point: "
        "expect about {expected}.",
        first=first,
        second=second,
        expected=expected,
    )


def measure_why() -> Phrase:
    """What the measured angle is for."""
    return say(
        "Take your own reading: 180° less it is what you set off next. Or extend the diagonal beyond its tip and "
        "set off the reading itself there: corresponding angles are equal."
    )


def parallel_by_set_squares(side: Name, to: Name, length: str) -> Phrase:
    """First dashed line, slid along."""
    return say(
        "**Slide a parallel to the tip of {side}.** Set square along {to}, ruler against its other side; "
        "slide to the tip of {side} and draw a dashed line, {length}.",
        side=side,
        to=to,
        length=length,
    )


def close_by_set_squares(which: str, side: Name, to: Name, length: str) -> Phrase:
    """Second dashed line, slid along."""
    return say(
        "**Close the {which}parallelogram.** Set square along {to}; slide to the tip of {side} and draw a "
        "dashed line, {length}. The two meet.",
        which=_before(which),
        side=side,
        to=to,
        length=length,
    )


def slide_why() -> Phrase:
    """Why a slide keeps the direction."""
    return say("Hold the ruler still: a square that slides along it keeps its direction.")


def cross_arcs(first: Name, first_radius: str, second: Name, second_radius: str) -> Phrase:
    """Two compass arcs of copied length."""
    return say(
        "**Cross two arcs.** Compasses open to {second}, {second_length}, point on the tip of {first}: an arc. "
        "Then open to {first}, {first_length}, point on the tip of {second}: a second arc across it.",
        first=first,
        second=second,
        second_length=second_radius,
        first_length=first_radius,
    )


def close_by_compasses(which: str, first: Name, second: Name) -> Phrase:
    """Dashed lines to the crossing."""
    return say(
        "**Close the {which}parallelogram.** Dashed lines from the tips of {first} and {second} to where "
        "the arcs cross.",
        which=_before(which),
        first=first,
        second=second,
    )


def arcs_why() -> Phrase:
    """Why arcs make a parallelogram."""
    return say("A figure whose opposite sides are equal is a parallelogram.")


def diagonal(end: str, length: str, amount: str) -> Phrase:
    """The first diagonal, drawn and measured."""
    return say(
        "**Draw the diagonal.** From the common point to {end}. Measure it: about {length}, so {amount}.",
        end=end,
        length=length,
        amount=amount,
    )


def diagonal_why(meaning: str, third: str) -> Phrase:
    """What the first diagonal means, in a page's own words."""
    return say(meaning, third=third) if meaning else ()


def carry_on(first: Name, second: Name, length: str) -> Phrase:
    """Two phasors so nearly on one line that no parallelogram can be drawn."""
    return say(
        "**No parallelogram:** {first} and {second} lie so nearly on one line that none can be drawn. Go tip to "
        "tail: from the tip of {first} draw {length} in the direction of {second}.",
        first=first,
        second=second,
        length=length,
    )


def the_diagonal() -> Phrase:
    """The first diagonal by name."""
    return ("the diagonal",)
