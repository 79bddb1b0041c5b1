"""What the neutral-current page says beside its figures."""

from pycore.words.answers import Name
from pycore.words.phrase import Phrase, Symbol, say

TITLE = "Neutral current"
DESCRIPTION = (
    "The neutral current of an unbalanced star-connected load: calculated, drawn to scale move by move, "
    "and printed true to the millimetre."
)
SCENARIO = "Village theatre, three dimmer racks in star"
CAUTIONS = (
    "These sheets teach; they do not size an installation. A neutral’s size, protection and harmonics are "
    "decided by the local wiring rules and a licensed person.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. "
    "One conductor in the jaw of the clamp, and the right measurement category.",
    "Never open a neutral on a live system: voltages at single-phase loads can rise to the line voltage and, "
    "with mixed reactances, beyond it. A lost combined neutral and earth can make metalwork live.",
    "A neutral may carry current when a line is off. A clamp meter never proves a circuit dead: isolate, and "
    "prove dead with a proved tester, before changing a connection.",
    "Ask which method your examining body accepts.",
)
NEUTRAL, METER_ON_NEUTRAL, BY_FORMULA = "Neutral", "meter on the neutral", "By the closed formula"


def balanced() -> Phrase:
    """Currents and angles equal."""
    return say("The load is balanced: three equal currents 120° apart add to nothing.")


def closed_not_balanced() -> Phrase:
    """The sum is zero by chance."""
    return say(
        "The three currents add to nothing although the load is not balanced: the figure closes by itself."
    )


def below_largest(neutral: str, largest: str) -> Phrase:
    """First sanity check at equal power factor."""
    return say(
        "Check: at equal power factor the neutral never carries more than the largest line. "
        "{neutral} is within {largest}.",
        neutral=neutral,
        largest=largest,
    )


def unequal_power_factors() -> Phrase:
    """The sanity check does not hold."""
    return say(
        "The power factors differ, so the neutral may carry more than the largest line: "
        "the usual check does not hold here."
    )


def one_line(line: str) -> Phrase:
    """Only one line carries current."""
    return say(
        "Only {line} carries current, so the neutral carries the same. There is nothing to construct.",
        line=line,
    )


def zero_line(lines: str) -> Phrase:
    """Lines without current have no arrow."""
    return say("{lines} carries no current and has no arrow.", lines=lines)


def zero_lines(lines: str) -> Phrase:
    """Several lines without current."""
    return say("{lines} carry no current and have no arrow.", lines=lines)


def small_neutral(length: str) -> Phrase:
    """A sum too short to be measured."""
    return say(
        "The neutral is only {length} on this sheet: too short to measure its length or angle well.", length=length
    )


def angle_label(voltage: Name, line: str, *, mirrored: bool) -> Phrase:
    """What the neutral's angle is counted from, and which sense is positive in this picture."""
    sense = "clockwise" if mirrored else "anticlockwise"
    return say(
        "angle from {voltage}, the {line} phase voltage, {sense} positive in this picture",
        voltage=voltage,
        line=line,
        sense=sense,
    )


def prints_blank(label: str) -> Phrase:
    """A name, group or date that the sheet's lettering cannot set."""
    return say(
        "{label} has signs that the sheet’s lettering lacks: it prints blank, to be written by hand.", label=label
    )


def meter(reading: str, calculated: str, difference: str, share: str, higher: bool) -> Phrase:
    """The meter's reading beside the calculation."""
    return say(
        "Meter on the neutral: {reading}. The calculation gives {calculated}, so the reading is "
        "{difference} ({share}) {side}.",
        reading=reading,
        calculated=calculated,
        difference=difference,
        share=share,
        side="higher" if higher else "lower",
    )


def meter_same(reading: str) -> Phrase:
    """Reading and calculation agree as written."""
    return say("Meter on the neutral: {reading}, the same as the calculation.", reading=reading)


def meter_zero(reading: str) -> Phrase:
    """A reading where the calculation gives nothing."""
    return say("Meter on the neutral: {reading}. The calculation gives 0 A.", reading=reading)


def formula_intro() -> Phrase:
    """When the closed formula holds."""
    return say(
        "For three lines 120° apart at equal power factor, with {a}, {b}, {c} their sizes:",
        a=Symbol("a"),
        b=Symbol("b"),
        c=Symbol("c"),
    )


def formula_differences() -> Phrase:
    """The cancellation-free form."""
    return say("The same from the differences, which shows that equal currents give 0:")


def formula_no_angle() -> Phrase:
    """What the formula cannot give."""
    return say("The formula gives the size only. For the angle, draw or use components.")


def formula_fails() -> Phrase:
    """Why the closed formula is refused."""
    return say(
        "The closed formula √(a² + b² + c² − ab − bc − ca) holds only when all three lines have the same "
        "power factor, so that they stand 120° apart. Here they do not: use components or draw."
    )


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
