"""The sentences of the constructions: tool first, then where, then the reading; one line of why."""

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol

COMMON_POINT = "the common point"
START = "the start"
NOTHING: Phrase = ()
UPRIGHT_AXIS: Phrase = ("the upright axis",)
LEVEL_AXIS: Phrase = ("the level axis",)
WAYS = {0.0: "to the right", 90.0: "straight up", 180.0: "to the left", -90.0: "straight down"}
MEETING = "where they meet"
LINE_END = "the end of the line just drawn"
CORNER = "the corner of the rectangle"
MARKED_SUM = "the mark of the sum"
LAST_TIP = "the last tip"


def slanting(angle: str, *, above: bool) -> str:
    """A direction that is none of the four straight ones."""
    return f"{angle} {'above' if above else 'below'} the level to the right"


def about(angle: str) -> str:
    """A figure that the learner's own reading replaces."""
    return f"about {angle}"


def sense(*, anticlockwise: bool) -> str:
    """A sense of rotation on the paper."""
    return "anticlockwise" if anticlockwise else "clockwise"


def choose_scale(scale: str, longest: str, length: str) -> Phrase:
    """The scale, and what it makes of the longest line."""
    return say(
        "**Choose the scale.** {scale}. The longest line, {longest}, becomes {length}.",
        scale=scale,
        longest=longest,
        length=length,
    )


def scale_why(quantity: str, units: str) -> Phrase:
    """How a quantity becomes a length."""
    return say(
        "Length in centimetres = {quantity} ÷ {units} per centimetre.", quantity=quantity, units=units
    )


def draw_reference(name: Name, way: str, place: str) -> Phrase:
    """The faint first direction."""
    return say("**Draw the direction of {name}** faintly, {way} from {place}.", name=name, way=way, place=place)


def reference_why() -> Phrase:
    """What the faint line is for."""
    return say("It is only a direction, to count angles from.")


def on_the_way(tag: Name, place: str, end: Name) -> Phrase:
    """The sum of the first arrows, drawn for itself."""
    return say("**Draw {tag}.** From {place} to {end}.", tag=tag, place=place, end=end)


def companion_first(tag: Name, way: str, place: str, length: str) -> Phrase:
    """A phasor of another quantity that angles are counted from."""
    return say("**Draw {tag}.** {way} from {place}, {length}: a double line with an open arrowhead.",
               tag=tag, way=way[0].upper() + way[1:], place=place, length=length)  # fmt: skip


def companion(tag: Name, zero: Name, angle: str, sense: str, place: str, length: str) -> Phrase:
    """A further phasor of another quantity, by protractor and ruler."""
    return say("**Draw {tag}.** From {zero}, set off {angle} {sense} at {place}; draw {length}: a double line with an "
               "open arrowhead.", tag=tag, zero=zero, angle=angle, sense=sense, place=place, length=length)  # fmt: skip


def companion_why(plural: str, scale: str, amount: str) -> Phrase:
    """The second scale and what it makes of an amount."""
    return say("{plural} have a scale of their own, {scale}; this is {amount}. ",
               plural=plural[0].upper() + plural[1:], scale=scale, amount=amount)  # fmt: skip


def draw_first(phasor: Name, way: str, place: str, length: str) -> Phrase:
    """An arrow that needs no protractor: the first, or one on the line that angles are counted from."""
    return say(
        "**Draw {phasor}.** {way} from {place}, {length}.",
        phasor=phasor,
        way=way[0].upper() + way[1:],
        place=place,
        length=length,
    )


def first_why(place: str) -> Phrase:
    """Which mark of the ruler."""
    return say("The ruler’s zero mark goes on {place}; the edge of the ruler is not its zero.", place=place)


def draw(phasor: Name, zero: Name, angle: str, sense: str, place: str, length: str) -> Phrase:
    """A further arrow from the common point."""
    return say(
        "**Draw {phasor}.** Protractor’s centre on {place}, zero line along {zero}. "
        "Set off {angle} {sense} and draw {length}.",
        phasor=phasor,
        zero=zero,
        angle=angle,
        sense=sense,
        place=place,
        length=length,
    )


def dot(phasor: Name, length: str, place: Phrase | str, angle: str, sense: str, zero: Phrase) -> Phrase:
    """A phasor too short for an arrow."""
    return say(
        "**Mark {phasor} as a dot,** {length} from {place}, {angle} {sense} from {zero}: too short for an arrow.",
        phasor=phasor,
        length=length,
        place=place,
        angle=angle,
        sense=sense,
        zero=zero,
    )


def dot_first(phasor: Name, length: str, place: str, way: str) -> Phrase:
    """A phasor too short for an arrow, along a straight direction."""
    return say(
        "**Mark {phasor} as a dot,** {length} {way} from {place}: too short for an arrow.",
        phasor=phasor,
        length=length,
        way=way,
        place=place,
    )


def tip_of(name: Name) -> Phrase:
    """The tip of an arrow."""
    return say("the tip of {name}", name=name)


def back_along(name: Name) -> Phrase:
    """The direction back along a line."""
    return say("back along {name}", name=name)


def dot_why() -> Phrase:
    """What a dot does to the moves after it."""
    return say("Where a later move needs its direction, draw it faintly as far as the protractor reaches.")


def which_scale(zero: Name, angle: str, wider: int) -> Phrase:
    """Which of the protractor's two scales counts; ``wider``: more than a right angle, equal or less."""
    than = {1: "more than a right angle", 0: "exactly a right angle", -1: "less than a right angle"}[wider]
    return say("Read the scale that starts at 0 on {zero}. {angle} is {than}.", zero=zero, angle=angle, than=than)


def zero_line() -> Phrase:
    """What the protractor is laid on with."""
    return say(" The base edge of the protractor is not its zero line.")


def extend(name: Name) -> Phrase:
    """A line too short for the protractor."""
    return say(" Where {name} is too short to reach the scale, extend it faintly.", name=name)


def full_circle(other: str) -> Phrase:
    """The same direction on a full-circle protractor."""
    return say(" On a full circle the same direction is {other}.", other=other)


def opposite_why(angle: str, other: str) -> Phrase:
    """A 180 degree protractor cannot reach beyond 180 degrees."""
    return say(
        " A half circle cannot set {other}: go {angle} the other way round.",
        angle=angle,
        other=other,
    )


def result(symbol: Name, place: str, end: str) -> Phrase:
    """The resultant."""
    return say("**Draw {symbol}.** From {place} to {end}.", symbol=symbol, place=place, end=end)


def result_why() -> Phrase:
    """One arrowhead only."""
    return say("One arrowhead, on the far end: it stands for all of them together.")


def read(symbol: Name, length: str, scale: str, amount: str, angle: Phrase | str) -> Phrase:
    """Measure the resultant."""
    return say(
        "**Measure {symbol}.** About {length}; at {scale} that is {amount}, {angle}.",
        symbol=symbol,
        length=length,
        scale=scale,
        amount=amount,
        angle=angle,
    )


def read_short(symbol: Name, length: str, scale: str, amount: str) -> Phrase:
    """A resultant too short for an angle to be read."""
    return say(
        "**Measure {symbol}.** About {length}; at {scale} that is {amount}, too short to read its angle.",
        symbol=symbol,
        length=length,
        scale=scale,
        amount=amount,
    )


def returning_read_why() -> Phrase:
    """The returning current and the sum."""
    return say("It points opposite to the sum of the lines: what flows out comes back.")


def read_why() -> Phrase:
    """Where the reading ends."""
    return say("Measure to the point of the arrow, not to its base.")


def closes(place: str, so: str) -> Phrase:
    """The sum is zero: no arrow."""
    return say("**The figure closes.** The sum ends on {place} itself, so {so}.", place=place, so=so)


def follow(phasor: Name, before: Name, angle: str, sense: str, length: str) -> Phrase:
    """Next arrow, tip to tail."""
    return say(
        "**Draw {phasor} from the tip of {before}.** Protractor’s centre on the tip, zero line back along {before}. "
        "Mark {angle} {sense} and draw {length}.",
        phasor=phasor,
        before=before,
        angle=angle,
        sense=sense,
        length=length,
    )


def follow_straight(phasor: Name, before: Name, back: bool, length: str) -> Phrase:
    """Next arrow on the same line."""
    return say(
        "**Draw {phasor} from the tip of {before},** {way} along the same line, {length}.",
        phasor=phasor,
        before=before,
        way="straight back" if back else "straight on",
        length=length,
    )


def follow_why(turn: str, angle: str) -> Phrase:
    """Why 60 degrees at a tip."""
    return say(
        "The direction turns by {turn}; seen from the line just drawn that is 180° − {turn} = {angle}.",
        turn=turn,
        angle=angle,
    )


def return_close(what: str) -> Phrase:
    """The reversed sum, tip to tail."""
    return say("**Draw {what}.** From the last tip back to the start.", what=what)


def return_opposite(what: str, length: str) -> Phrase:
    """The reversed sum from the common point."""
    return say(
        "**Draw {what}.** Extend the sum back through the common point and set off {length} the other way.",
        what=what,
        length=length,
    )
