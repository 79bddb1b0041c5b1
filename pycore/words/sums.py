"""What every page with a sum says, and the words in which pages differ."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.words.phrase import Phrase, Symbol, say


@dataclass(frozen=True, slots=True)
class SumWords:
    """The words of one page's quantity: ``quantity`` (current), its ``plural``, ``units`` (amperes); ``closes`` the
    end of "The sum ends on the start itself, so ..."; ``partial`` what the first diagonal means ("" for nothing
    to say), with the names ``{first}`` and ``{second}`` and the numbers ``{one}`` and ``{other}`` of what it adds and
    the name ``{third}`` of the one left out; ``opposite`` the reversed sum and ``why_opposite``."""

    quantity: str
    plural: str
    units: str
    closes: str = "no arrow is drawn"
    partial: str = ""
    opposite: str = "the reversed sum"
    why_opposite: str = "It has the same size as the sum and the opposite direction."
    on_the_way: Phrase = ()
    """What the sum of the first two arrows is, where a page draws it for itself."""
    alternates: bool = True
    """Whether these phasors are sine waves, as currents and voltages are; impedances and powers are not."""


NONE = "none"
ANGLE, SCALE, LENGTH, PHASOR, SIDE = "angle", "scale", "length on the sheet", "phasor", "side"


def angle_from(origin: Phrase) -> Phrase:
    """Head of a sheet's column of angles."""
    return say("angle from {origin}", origin=origin)


def part_heads(letter: Symbol, level: str, upright: str) -> tuple[Phrase, Phrase, Phrase]:
    """Heads of the table of components: the angle, and both parts by their functions."""
    theta = Symbol("θ")
    return (
        say("angle {theta}", theta=theta),
        say("horizontal, {i}\u00a0{f}\u00a0{theta}", i=letter, f=level, theta=theta),
        say("vertical, {i}\u00a0{f}\u00a0{theta}", i=letter, f=upright, theta=theta),
    )


def at_angle(amount: str, angle: str) -> str:
    """A phasor in polar form: 20 A at 60°."""
    return f"{amount} at {angle}"


CLOSED = say("The phasors add to zero: the figure closes.")
NEARLY_CLOSED = say("The figure closes, as nearly as a drawing can show.")


def alternative(method: str, scale: str, name: Phrase, length: str) -> Phrase:
    """What another order would give."""
    return say("{method}: {scale}, {name} {length}", method=method, scale=scale, name=name, length=length)


ORDER = "Which two first"
ORDERS = (("12", "1 and 2"), ("13", "1 and 3"), ("23", "2 and 3"))
FIRST_PHASOR = "the first phasor"
RESULTANT = "Drawn as"
RESULTANTS = (("sum", "the sum"), ("returning", "the sum reversed"))


def scale_label(unit: str) -> str:
    """Label of the scale: V per cm."""
    return f"{unit} per cm"


def second_does_not_fit(scale_text: str, fits: str, plural: str) -> str:
    """A scale of the companions at which they leave the sheet."""
    return f"At 1 cm = {scale_text} the {plural} do not fit on the sheet. They are drawn at 1 cm = {fits}."


def second_scale(plural: str, scale: str) -> str:
    """The companions' scale, on a line below the sum's: for currents 1 cm = 5 A."""
    return f"for {plural} {scale}"


def second_scale_short(plural: str, scale: str, amount: str, second: str) -> str:
    """The same with its check, where there is little room."""
    return f"{plural} {scale}; bar: {amount}, {second}"


def second_check(bar: str, amount: str, second: str) -> str:
    """What a check bar represents at both scales."""
    return f"A bar of {bar} represents {amount}, or {second}."


def second_label(plural: str) -> Phrase:
    """Label of the companions' scale among the results."""
    return say("scale of {plural}", plural=plural)


def answer_sentence(name: str, symbol: str, amount: str, direction: str) -> str:
    """What was found, at the head of a solved sheet: The neutral current I_N is 11.6 A, 87.5° anticlockwise from I₁."""
    return f"{name[:1].upper()}{name[1:]} {symbol} is {amount}, {direction}."


def found_beside(symbol: str, amount: str) -> str:
    """A phasor of the second quantity that was found on the way: I is 5.33 A."""
    return f"{symbol} is {amount}."


ROUTINE = "Estimate first, then draw, measure and calculate."
"""What is done with every problem, after its task."""
DRAWN_ROUTINE = "Estimate first, then draw and measure."
"""The same where the calculation has a page of its own."""


def problem_notes(task: str, values_text: str, direction_note: str) -> tuple[str, ...]:
    """What is given on a problem sheet, and what the learner is to do."""
    values_text = f"{values_text}." if values_text and not values_text.endswith(".") else values_text
    return (f"{values_text} {direction_note}".strip(), f"{task}. {ROUTINE}")


def overlay_notes(first: str, *, short: bool, mirrored: bool) -> tuple[str, ...]:
    """How to lay the overlay on a drawing."""
    over = " Mirrored: lay it face down." if mirrored else ""
    if short:
        return (f"Lay the starting point and {first} on the learner’s.{over}",)
    return (
        f"Lay this sheet on the learner’s drawing. Match the starting points, then turn the sheet until {first} covers "
        f"the learner’s {first}.{over}",
        "On plain paper, hold both sheets against a window.",
    )


AS_LISTED = "Dashed: the same two phasors, in the order of the table."
"""On an overlay that draws them in the other order."""


def first_direction(first: str, direction: str, *, drawn: bool) -> str:
    """Where the first phasor points, which is ``drawn`` already or to be drawn."""
    return f"{first} points {direction}" if drawn else f"Draw {first} {direction}"


def drawing_direction(first: str, direction: str, sense: str, *, drawn: bool, short: bool) -> str:
    """The first direction and the sense of rotation of the drawing."""
    how = first_direction(first, direction, drawn=drawn)
    return f"{how}; angles {sense}." if short else f"{how}. Positive angles turn {sense}."


def problem_description(plural: str, method: str, drawn: Sequence[str] = ()) -> str:
    """A problem sheet for someone who cannot see it; ``drawn`` are the phasors that it shows already."""
    blank = "Blank paper" if not drawn else f"Paper with {' and '.join(drawn)} drawn to scale"
    return f"{blank} and the values of the {plural}, to be drawn by hand: {method}."


def sheet_titles(title: str) -> dict[str, str]:
    """Titles of the kinds of sheet."""
    return {"construction": title, "problem": f"{title}: problem", "overlay": f"{title}: overlay"}
