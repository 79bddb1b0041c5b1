"""The sentences of the constructions: tool first, then where, then the reading; one line of why."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol

START = "the star point"
NOTHING: Phrase = ()


def choose_scale(scale: str, longest: str, length: str) -> Phrase:
    """The scale, and what it makes of the longest line."""
    return say(
        "**Choose the scale.** {scale}. The longest line, {longest}, becomes {length}.",
        scale=scale,
        longest=longest,
        length=length,
    )


def scale_why() -> Phrase:
    """How a current becomes a length."""
    return say("Length in centimetres = current ÷ amperes per centimetre.")


def draw_reference(name: Name, way: str) -> Phrase:
    """The faint first direction."""
    return say(
        "**Draw the direction of {name}** faintly, {way} from the star point.", name=name, way=way
    )


def reference_why() -> Phrase:
    """What the faint line is for."""
    return say("It is only a direction: every angle is set off from it.")


def draw_first(phasor: Name, way: str, length: str) -> Phrase:
    """The first arrow."""
    return say(
        "**Draw {phasor}.** {way} from the star point, {length}.",
        phasor=phasor,
        way=way[0].upper() + way[1:],
        length=length,
    )


def first_why() -> Phrase:
    """Which mark of the ruler."""
    return say("The ruler’s zero mark goes on the star point; the edge of the ruler is not its zero.")


def draw(phasor: Name, zero: Name, angle: str, sense: str, length: str) -> Phrase:
    """A further arrow from the common point."""
    return say(
        "**Draw {phasor}.** Protractor on the star point, zero line along {zero}. "
        "Set off {angle} {sense} and draw {length}.",
        phasor=phasor,
        zero=zero,
        angle=angle,
        sense=sense,
        length=length,
    )


def draw_along(phasor: Name, way: str, length: str) -> Phrase:
    """An arrow that lies on the line all angles are counted from, or opposite to it."""
    return say(
        "**Draw {phasor}.** {way} from the star point, {length}.",
        phasor=phasor,
        way=way[0].upper() + way[1:],
        length=length,
    )


def right_angle_check(angle: str, wider: bool) -> Phrase:
    """Which of the protractor's two scales counts."""
    return say(
        "{angle} is {than} than a right angle: that settles which of the two scales to read.",
        angle=angle,
        than="more" if wider else "less",
    )


def opposite_why(angle: str, other: str) -> Phrase:
    """A 180 degree protractor cannot reach beyond 180 degrees."""
    return say(
        "A protractor of 180° cannot set {other}: go {angle} the other way round.",
        angle=angle,
        other=other,
    )


def parallel_by_protractor(side: Name, angle: str, sense: str, length: str, to: Name) -> Phrase:
    """First dashed line, by the neighbouring angle."""
    return say(
        "**Set off {angle} at the tip of {side}.** Protractor on that tip, zero line back along {side}. "
        "Go {sense} and draw a dashed line, {length}: it runs parallel to {to}.",
        side=side,
        angle=angle,
        sense=sense,
        length=length,
        to=to,
    )


def neighbouring_why(between: str, angle: str) -> Phrase:
    """Why that angle."""
    return say(
        "Neighbouring angles of a parallelogram make 180°: 180° − {between} = {angle}.",
        between=between,
        angle=angle,
    )


def _before(which: str) -> str:
    """"first" or "second" with the space that parts it from its noun; nothing where there is only one."""
    return f"{which} " if which else ""


def close_by_protractor(
    which: str, side: Name, angle: str, sense: str, length: str, to: Name
) -> Phrase:
    """Second dashed line; the two meet."""
    return say(
        "**Close the {which}parallelogram.** Protractor on the tip of {side}, zero line back along {side}: "
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
        "**Measure the angle between {first} and {second}.** Protractor on the star point: "
        "expect about {expected}.",
        first=first,
        second=second,
        expected=expected,
    )


def measure_why() -> Phrase:
    """What the measured angle is for."""
    return say("Take your own reading: 180° less it is what you set off next.")


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
        second_length=first_radius,
        first_length=second_radius,
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


def diagonal(length: str, amount: str) -> Phrase:
    """The first diagonal, drawn and measured."""
    return say(
        "**Draw the diagonal.** From the star point to where they meet. Measure it: about {length}, "
        "so {amount}.",
        length=length,
        amount=amount,
    )


def diagonal_why(third: str) -> Phrase:
    """What the first diagonal means."""
    return say("The neutral would carry this if {third} carried nothing.", third=third)


def carry_on(first: Name, second: Name, length: str) -> Phrase:
    """Two phasors on one line."""
    return say(
        "**{first} and {second} lie on one line,** so they make no parallelogram. Go tip to tail: from the "
        "tip of {first} draw {length} in the direction of {second}.",
        first=first,
        second=second,
        length=length,
    )


def result(symbol: Name) -> Phrase:
    """The resultant in a parallelogram."""
    return say("**Draw {symbol}.** From the star point to where they meet.", symbol=symbol)


def result_tip_to_tail(symbol: Name) -> Phrase:
    """The closing line."""
    return say("**Draw {symbol}.** From the star point, the start, to the last tip.", symbol=symbol)


def result_why() -> Phrase:
    """One arrowhead only."""
    return say("One arrowhead, on the far end: it stands for all three together.")


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


def read_why() -> Phrase:
    """Where the reading ends."""
    return say("Measure to the point of the arrow, not to its base.")


def closes() -> Phrase:
    """The sum is zero: no arrow."""
    return say(
        "**The figure closes.** The last line ends on the star point, so the neutral carries 0 A "
        "and no arrow is drawn."
    )


def follow(phasor: Name, before: Name, angle: str, sense: str, length: str) -> Phrase:
    """Next arrow, tip to tail."""
    return say(
        "**Draw {phasor} from the tip of {before}.** Protractor on the tip, zero line back along {before}. "
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
        "The direction turns by {turn}; back from the line just drawn that is 180° − {turn} = {angle}.",
        turn=turn,
        angle=angle,
    )


def return_close() -> Phrase:
    """Returning current, tip to tail."""
    return say("**Draw the returning current.** From the last tip back to the star point.")


def return_opposite(length: str) -> Phrase:
    """Returning current from the star point."""
    return say(
        "**Draw the returning current.** Extend the sum back through the star point and set off "
        "{length} the other way.",
        length=length,
    )


def return_why() -> Phrase:
    """Why it is turned round."""
    return say("What flows out through the lines comes back through the neutral.")


def axes(level: str, upright: str) -> Phrase:
    """The two axes of the components."""
    return say(
        "**Draw two axes** faintly through the star point: {level} and {upright}, square to each other.",
        level=level,
        upright=upright,
    )


def drop(phasor: Name, across: str, upward: str) -> Phrase:
    """Perpendiculars on to both axes."""
    return say(
        "**Drop {phasor} on to both axes.** Set square on each axis, through the tip. "
        "Read {across} and {upward}.",
        phasor=phasor,
        across=across,
        upward=upward,
    )


def across_part(length: str, right: bool) -> str:
    """A horizontal part in words."""
    return f"{length} to the {'right' if right else 'left'}"


def upward_part(length: str, up: bool) -> str:
    """A vertical part in words."""
    return f"{length} {'up' if up else 'down'}"


def add_parts(across: str, upward: str) -> Phrase:
    """Add the two columns."""
    return say(
        "**Add the parts.** Right less left makes {across}; up less down makes {upward}.",
        across=across,
        upward=upward,
    )


def corner(across: str, upward: str) -> Phrase:
    """The rectangle on the sums."""
    return say(
        "**Mark both sums on the axes,** {across} and {upward}, and complete the rectangle with two dashed lines.",
        across=across,
        upward=upward,
    )


def joined(names: Sequence[Name]) -> Phrase:
    """Names with plus signs between: I₁ + I₂."""
    pieces: list[str | Symbol] = []
    for index, name in enumerate(names):
        if index:
            pieces.append(" + ")
        flat = name if isinstance(name, tuple) else (name,)
        pieces.extend(piece for piece in flat if isinstance(piece, (str, Symbol)))
    return tuple(pieces)


def the_diagonal() -> Phrase:
    """The first diagonal by name."""
    return ("the diagonal",)
