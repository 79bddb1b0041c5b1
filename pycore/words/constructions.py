"""The sentences of the constructions: tool first, then place, then reading; one line of reason."""

from pycore.words.phrase import Phrase, Symbol, plain, say

Name = Phrase | Symbol

COMMON_POINT = "the common point"
START = "the start"
NOTHING: Phrase = ()
UPRIGHT_AXIS: Phrase = ("the vertical axis",)
LEVEL_AXIS: Phrase = ("the horizontal axis",)
DIRECTIONS = {0.0: "to the right", 90.0: "straight up", 180.0: "to the left", -90.0: "straight down"}
LINE_END = "the end of the line just drawn"
CORNER = "the corner of the rectangle"
MARKED_SUM = "the marked sum"
LAST_TIP = "the last tip"


def meeting(dashed: int) -> str:
    """The corner where the last of so many dashed lines meet."""
    return "where the dashed lines meet" if dashed <= 2 else "where the last two dashed lines meet"


def slanting(angle: str, *, above: bool, left: bool) -> str:
    """A direction that is not horizontal or vertical; ``angle`` is an acute angle."""
    return f"{angle} {'above' if above else 'below'} the horizontal, to the {'left' if left else 'right'}"


def about(angle: str) -> str:
    """An angle that the learner's own reading replaces."""
    return f"about {angle}"


def sense(*, anticlockwise: bool) -> str:
    """A sense of rotation on the paper."""
    return "anticlockwise" if anticlockwise else "clockwise"


def choose_scale(scale: str) -> Phrase:
    """The scale of the drawing."""
    return say("**Choose the scale.** {scale}.", scale=scale)


def place_point(scale: str, point: str, edges: tuple[str, str], paper: str) -> Phrase:
    """On the learner's own paper: where the common point, or the start, goes, and the scale."""
    return say(
        "**Mark {point}** on your {paper}: {across} from the left edge, {upward} from the lower edge. {scale}.",
        point=point, across=edges[0], upward=edges[1], paper=paper, scale=scale,
    )  # fmt: skip


def longest_line(amount: str, length: str) -> Phrase:
    """The longest length of a drawing that is marked by the ruler, after its scale."""
    return say(" The longest length to mark, {amount}, is {length}.", amount=amount, length=length)


def no_room(scale: str, paper: str, over: str, larger: str) -> Phrase:
    """A drawing that has no room on the learner's own paper at the scale that is kept for every method."""
    way_out = f"It fits on {larger}." if larger else "No paper here takes it."
    return say(
        "**No room on {paper}.** At {scale} this drawing does not fit: {over}. {way_out}",
        paper=paper, scale=scale, over=over, way_out=way_out,
    )  # fmt: skip


def scale_why(quantity: str, units: str) -> Phrase:
    """How an amount becomes a length."""
    return say(
        "Length in centimetres = {quantity} ÷ {units} per centimetre.", quantity=quantity, units=units
    )


def as_line(name: Phrase) -> Phrase:
    """A first direction as a line on the paper: V₁, or the 0° line."""
    return say("the {name} line", name=name) if plain(name).endswith("°") else name


def first_line(name: Phrase) -> Phrase:
    """The faint line in a first direction."""
    return say("the {name} line" if plain(name).endswith("°") else "the direction of {name}", name=name)


def draw_reference(name: Phrase, direction: str, place: str) -> Phrase:
    """The faint first direction."""
    return say(
        "**Draw {name}** faintly, {direction} from {place}.",
        name=first_line(name),
        direction=direction,
        place=place,
    )


REFERENCE_WHY = say("This line is only a direction. Angles are measured from it.")


def on_the_way(tag: Name, place: str, end: Name) -> Phrase:
    """The sum of the first arrows, as an arrow of its own."""
    return say("**Draw {tag}.** From {place} to {end}.", tag=tag, place=place, end=end)


def companion_first(tag: Name, direction: str, place: str, length: str) -> Phrase:
    """A phasor of another quantity from which angles are measured."""
    return say("**Draw {tag}.** {direction} from {place}, {length}: a double line with an open arrowhead.",
               tag=tag, direction=direction[0].upper() + direction[1:], place=place, length=length)  # fmt: skip


def companion(tag: Name, zero: Name, angle: str, sense: str, place: str, length: str) -> Phrase:
    """A further phasor of another quantity, by protractor and ruler."""
    return say((
        "**Draw {tag}.** At {place}, mark {angle} {sense} from {zero}. Draw {length}: a double line with an open "
        "arrowhead."
    ), tag=tag, zero=zero, angle=angle, sense=sense, place=place, length=length)  # fmt: skip


def companion_why(plural: str, scale: str, amount: str) -> Phrase:
    """The second scale, and the length of an amount at it."""
    return say("{plural} have their own scale, {scale}. This phasor is {amount}. ",
               plural=plural[0].upper() + plural[1:], scale=scale, amount=amount)  # fmt: skip


def draw_first(phasor: Name, direction: str, place: str, length: str) -> Phrase:
    """An arrow that needs no protractor: the first, or one on the line from which angles are measured."""
    return say(
        "**Draw {phasor}.** {direction} from {place}, {length}.",
        phasor=phasor,
        direction=direction[0].upper() + direction[1:],
        place=place,
        length=length,
    )


def first_why(place: str) -> Phrase:
    """Which mark of the ruler to use."""
    return say("Put the ruler’s zero mark on {place}. The end of the ruler is not its zero.", place=place)


def draw(phasor: Name, zero: Name, angle: str, sense: str, place: str, length: str) -> Phrase:
    """A further arrow from the common point."""
    return say(
        "**Draw {phasor}.** Protractor’s centre on {place}, zero line along {zero}. Mark {angle} {sense} and draw "
        "{length}.",
        phasor=phasor,
        zero=zero,
        angle=angle,
        sense=sense,
        place=place,
        length=length,
    )


def dot(phasor: Name, length: str, place: Phrase | str, way: Phrase) -> Phrase:
    """A phasor too short for an arrow."""
    return say(
        "**Mark {phasor} as a dot,** {length} from {place}, {way}: too short for an arrow.",
        phasor=phasor,
        length=length,
        place=place,
        way=way,
    )


def way_from(angle: str, sense: str, zero: Name) -> Phrase:
    """A direction by its angle from a line."""
    return say("{angle} {sense} from {zero}", angle=angle, sense=sense, zero=zero)


def way_along(name: Name, *, back: bool) -> Phrase:
    """A direction along the line just drawn."""
    return say("straight back along {name}" if back else "straight on along the line of {name}", name=name)


def dot_first(phasor: Name, length: str, place: str, direction: str) -> Phrase:
    """A phasor too short for an arrow, along a straight direction."""
    return say(
        "**Mark {phasor} as a dot,** {length} {direction} from {place}: too short for an arrow.",
        phasor=phasor,
        length=length,
        direction=direction,
        place=place,
    )


def tip_of(name: Name) -> Phrase:
    """The tip of an arrow."""
    return say("the tip of {name}", name=name)


def back_along(name: Name) -> Phrase:
    """The line back along an arrow, from its tip."""
    return say("the line back along {name}", name=name)


DOT_WHY = say("If a later move needs its direction, draw a faint line long enough to reach the protractor’s scale.")


def which_scale(zero: Name, angle: str, wider: int) -> Phrase:
    """Which of the protractor's two scales to use; ``wider``: more than a right angle, equal or less."""
    than = {1: "more than a right angle", 0: "exactly a right angle", -1: "less than a right angle"}[wider]
    return say("Use the scale that starts at 0 on {zero}. {angle} is {than}.", zero=zero, angle=angle, than=than)


def along_zero(zero: Name, angle: str, place: str) -> Phrase:
    """An angle of 0° or 180°, which no scale of the protractor is needed for."""
    if angle == "0°":
        return say("{angle} is along {zero}.", angle=angle, zero=zero)
    return say("{angle} is straight back along the zero line, on the other side of {place}.", angle=angle, place=place)


ZERO_LINE = say(" The protractor’s straight edge is not its zero line.")


def extend(name: Name) -> Phrase:
    """A line too short for the protractor."""
    return say(" If {name} is too short to reach the scale, extend it with a faint line.", name=name)


def full_circle(other: str) -> Phrase:
    """The same direction on a full-circle protractor."""
    return say(" On a full-circle protractor this is the same direction as {other}.", other=other)


def opposite_why(angle: str, other: str) -> Phrase:
    """A 180 degree protractor cannot reach beyond 180 degrees."""
    return say(
        " A half-circle protractor has no {other}: turn {angle} the other way.",
        angle=angle,
        other=other,
    )


def result(symbol: Name, place: str, end: str) -> Phrase:
    """The sum."""
    return say("**Draw {symbol}.** From {place} to {end}.", symbol=symbol, place=place, end=end)


RESULT_WHY = say("Draw one arrowhead, at the far end. This phasor replaces all the others together.")


def measured(length: str, scale: str, product: str, calculated: str) -> Phrase:
    """A measured length: what it represents, by the printed numbers, and the calculated value."""
    return say(
        "about {length}. At {scale}, that is {product} (calculated: {calculated}).",
        length=length, scale=scale, product=product, calculated=calculated,
    )  # fmt: skip


def read(symbol: Name, measured: Phrase, angle: Phrase | str) -> Phrase:
    """Measure the resultant."""
    return say(
        "**Measure {symbol}.** Length: {measured} Direction: {angle}.", symbol=symbol, measured=measured, angle=angle
    )


def read_short(symbol: Name, measured: Phrase) -> Phrase:
    """A resultant too short for an angle to be read."""
    return say(
        "**Measure {symbol}.** Length: {measured} It is too short to measure its angle.",
        symbol=symbol, measured=measured,
    )  # fmt: skip


def returning_read_why(symbol: Name, shown: str, direction: Phrase) -> Phrase:
    """The returning phasor ends at the start, so the protractor shows the opposite direction."""
    return say(
        "The protractor shows {shown}, but {symbol} points the opposite way along this line: {direction}.",
        shown=shown, symbol=symbol, direction=direction,
    )  # fmt: skip


READ_WHY = say("Measure to the point of the arrowhead, not to its wide end.")


def closes(place: str, so: str) -> Phrase:
    """The sum is zero: no arrow."""
    return say("**The figure closes.** The last phasor ends at {place}, so {so}.", place=place, so=so)


NEARLY_CLOSES = say("**The figure closes, as nearly as a drawing can show.** Draw no arrow for the sum.")
"""The sum is not zero, but too short to be seen."""


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
        "The direction turns by {turn}. Measured from the line you have just drawn, that is 180° − {turn} = {angle}.",
        turn=turn,
        angle=angle,
    )


def return_close(name: str) -> Phrase:
    """The returning phasor, tip to tail."""
    return say("**Draw {name}.** From the last tip back to the start.", name=name)


def return_opposite(name: str, length: str) -> Phrase:
    """The returning phasor from the common point."""
    return say(
        "**Draw {name}.** Extend the sum backwards through the common point. Mark {length} on this side and draw the "
        "arrow.",
        name=name,
        length=length,
    )
