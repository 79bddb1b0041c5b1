"""Sentences of the neutral-current page."""

from pycore.words import cautions
from pycore.words.answers import Name
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords, first_direction

TITLE = "Neutral current"
JOB = "Find the neutral current"
"""What the front page says of it."""
DESCRIPTION = (
    "The neutral current of an unbalanced load in star: calculated, drawn to scale one move at a time, and printed at "
    "exact size."
)
SCENARIO = "Community hall, three heating banks in star"
CAUTIONS = (
    cautions.NEUTRAL_DECIDED,
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. One conductor "
    "in the jaw of the clamp; a meter of the right measurement category.",
    "Never open a neutral on a live system. The voltage across single-phase loads can rise to the line voltage and, "
    "with mixed reactances, above it. If a combined neutral and earth conductor is lost, metalwork can become live.",
    cautions.NEUTRAL_CARRIES,
    cautions.EXAMINING_BODY,
)
WORDS = SumWords(
    "current",
    "line currents",
    "amperes",
    "the neutral carries 0 A and no arrow is drawn",
    "A meter in the neutral would read this if {third} carried nothing.",
    "the returning current",
    "At every moment, the sum of the line currents returns through the neutral.",
)
TASK = "Find the neutral current by drawing"
NEUTRAL, METER_ON_NEUTRAL, BY_FORMULA = "Neutral", "meter on the neutral", "By the closed formula"


def drawing_direction(first: str, direction: str, sense: str, *, drawn: bool) -> str:
    """The first direction and the sense of lag of the drawing."""
    return f"{first_direction(first, direction, drawn=drawn)}. A lag turns a current {sense}."


def further(line: str) -> str:
    """The question for those who are done early."""
    return f"Then: which current in {line}, at which angle, makes the neutral current zero?"


BALANCED = say("The load is balanced: three equal currents 120° apart add to zero.")
"""Currents and angles equal."""

CLOSED_NOT_BALANCED = say(
    "The three currents add to zero, but the load is not balanced: the currents or their angles are unequal."
)
"""The sum is zero by chance."""


def below_largest(neutral: str, largest: str) -> Phrase:
    """First sanity check at equal power factor."""
    return say(
        "Check: for sine-shaped currents at equal power factor, the neutral current is never more than the largest "
        "line current. {neutral} is not more than {largest}. With harmonics, it can be more.",
        neutral=neutral,
        largest=largest,
    )


UNEQUAL_POWER_FACTORS = say(
    "The lines lag (or lead) by different angles, so the neutral current can be more than the largest line current. "
    "The check for equal power factors cannot be used here."
)
"""The sanity check does not hold."""


def one_line(line: str) -> Phrase:
    """Only one line carries current."""
    return say(
        "Only {line} carries current, so the neutral carries the same current. There is nothing to construct.",
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
        "The neutral current is only {length} long on this sheet: too short to measure its length or angle well.",
        length=length,
    )


def angle_label(voltage: Name, line: str, *, mirrored: bool) -> Phrase:
    """What the neutral's angle is counted from, and which sense is positive in this picture."""
    sense = "clockwise" if mirrored else "anticlockwise"
    return say(
        "angle from {voltage}, the {line} phase voltage ({sense} is positive in this drawing)",
        voltage=voltage,
        line=line,
        sense=sense,
    )


def meter(reading: str, calculated: str, difference: str, share: str, higher: bool) -> Phrase:
    """The meter's reading beside the calculation."""
    return say(
        "Meter on the neutral: {reading}. The calculation gives {calculated}. The reading is {difference} ({share}) "
        "{side}.",
        reading=reading,
        calculated=calculated,
        difference=difference,
        share=share,
        side="higher" if higher else "lower",
    )


def meter_same(reading: str) -> Phrase:
    """Reading and calculation agree as written."""
    return say("Meter on the neutral: {reading}, the same as the calculation.", reading=reading)


def meter_without_share(reading: str, calculated: str) -> Phrase:
    """A reading where the calculation gives nothing, or hardly anything."""
    return say("Meter on the neutral: {reading}. The calculation gives {calculated}.",
               reading=reading, calculated=calculated)  # fmt: skip


FORMULA_INTRO = say(
    "For three line currents 120° apart (equal power factor, all lagging or all leading) with the sizes {a}, {b}, "
    "{c}:",
    a=Symbol("a"),
    b=Symbol("b"),
    c=Symbol("c"),
)
"""When the closed formula holds."""

FORMULA_DIFFERENCES = say("The same formula with differences. It shows that equal currents give 0:")
"""The cancellation-free form."""

FORMULA_NO_ANGLE = say("The formula gives the size only. For the angle, use a drawing or components.")
"""What the formula cannot give."""

FORMULA_FAILS = say(
    "The closed formula √(a² + b² + c² − ab − bc − ca) is valid only if all three lines have the same angle of "
    "lag (or lead), so that the currents are 120° apart. This is not so here: use components or a drawing."
)
"""Why the closed formula is refused."""


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
