"""What the page that adds phasors says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Add phasors"
DESCRIPTION = (
    "Add or subtract two to six phasors: in polar or rectangular form, by scale drawing and by calculation."
)
SCENARIO = "Boat club workshop, two machines"
CAUTIONS = (
    cautions.TEACHING_ONLY,
    "Only competent or supervised people may measure on a live system, and only on a rig made for it.",
    cautions.EXAMINING_BODY,
)
HELP = (
    "Size and angle in degrees, such as 20 at 60, or real and imaginary part, such as 10 + j17.3. At least two "
    "phasors."
)
COMBINE = "What to find"
COMBINES = (("sum", "their sum"), ("difference", "the first minus the others"))
UNIT = "Quantity"
UNITS = (("A", "currents, in amperes"), ("V", "voltages, in volts"))
RESULTS = {"sum": "the sum", "difference": "the difference"}
"""What is to be found, in the moves of a sheet for easy reading."""
ZERO = "the 0° direction"
TASKS = {"sum": "Find the sum by drawing", "difference": "Find the first phasor minus the others by drawing"}
WORDS = {
    "A": SumWords("current", "currents", "amperes", partial="This would be the result without {third}."),
    "V": SumWords("voltage", "voltages", "volts", partial="This would be the result without {third}."),
}
RESULT = "Sum"
DIFFERENCE = "Difference"


def label(number: int) -> str:
    """Label of a phasor's field."""
    return f"Phasor {number}"


ORIGIN: Phrase = ("0°",)
"""The direction from which angles are counted."""


def both_forms(polar: str, rectangular: str) -> str:
    """How a typed phasor was understood."""
    return f"{polar} = {rectangular}" if polar and rectangular else polar or rectangular


def subtracted(names: str) -> Phrase:
    """Subtraction is adding the opposite."""
    return say("{names}: turned by 180°, then added. To subtract a phasor, add its opposite.", names=names)


def named(name: str, phasor: str) -> str:
    """A phasor with its name: I₁ = 20 A at 0°."""
    return f"{name} = {phasor}"


def opposite(name: Phrase) -> Phrase:
    """Where a phasor that is subtracted comes from."""
    return say("−{name} is {name} turned by 180°.", name=name)


def longest_check(total: str, plain_sum: str, *, difference: bool) -> Phrase:
    """The first sanity check of any sum of phasors."""
    return say(
        "Check: the {result} is never larger than the sizes added as plain numbers. {total} is not more than "
        "{plain_sum}.",
        result="difference" if difference else "sum", total=total, plain_sum=plain_sum,
    )  # fmt: skip


def no_parallelogram(count: str) -> Phrase:
    """More than three phasors are not drawn by parallelogram."""
    return say((
        "{count} phasors would need too many parallelograms, so the sheet shows them tip to tail."
    ), count=count)  # fmt: skip


NOTHING_TO_PAIR: Phrase = say("One phasor alone does not make a parallelogram, so the sheet shows only this phasor.")
"""A single arrow makes no parallelogram."""


COUNTS = {4: "Four", 5: "Five", 6: "Six"}
MISTAKES = {
    "added": (
        "the other phasors were added instead of subtracted",
        "To subtract a phasor, turn it by 180° and add it.",
    ),
    "taken-off": (
        "the other phasors were subtracted instead of added",
        "Draw every phasor at its own angle. No phasor is turned by 180° here.",
    ),
    "first-turned": (
        "the phasors were subtracted in the wrong order",
        "The first phasor keeps its direction. The phasors that are subtracted are turned by 180°.",
    ),
    "parts-exchanged": (
        "the real and imaginary parts of {a} are swapped",
        "The imaginary part (with j) is along 90°, the real part along 0°.",
    ),
    "j-sign": (
        "{a} has the wrong sign before j",
        "A minus sign before j means −90° from the 0° line.",
    ),
}


NOTHING_HERE = "Enter at least two phasors, such as 20 at 0 and 15 at 60."
"""No phasor was entered."""


def no_first(label: str) -> str:
    """A difference whose first phasor is missing."""
    return f"{label} is empty, so there is nothing to subtract the others from. Enter it, such as 20 at 60, or 0."


PARTS = ("component along 0°", "component along 90°")


SHORT: dict[str, str] = {
    "added": "added instead of subtracted",
    "taken-off": "subtracted instead of added",
    "first-turned": "subtracted in the wrong order",
    "parts-exchanged": "real and imaginary part swapped",
    "j-sign": "wrong sign before j",
}
"""Mistakes of this calculator alone, in few words."""
