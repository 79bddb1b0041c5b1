"""What the page that adds phasors says."""

from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Add phasors"
DESCRIPTION = (
    "Two to six phasors added or taken off: in polar or rectangular form, by scale drawing and by calculation."
)
SCENARIO = "Boat club workshop, two machines"
CAUTIONS = (
    "These sheets teach; they do not size an installation.",
    "Measurements on a live system are for competent or supervised people on a rig made for it.",
    "Ask which method your examining body accepts.",
)
HELP = "Size and angle in degrees, such as 20 at 60, or two parts, such as 10 + j17.3. At least two."
COMBINE = "What to find"
COMBINES = (("sum", "their sum"), ("difference", "the first less the others"))
UNIT = "Quantity"
UNITS = (("A", "currents, in amperes"), ("V", "voltages, in volts"))
RESULTS = {"sum": "the sum", "difference": "the difference"}
"""What is to be found, in the moves of a sheet for easy reading."""
ZERO = "the 0° direction"
TASKS = {"sum": "Find the sum by drawing", "difference": "Find the first less the others by drawing"}
WORDS = {
    "A": SumWords("current", "currents", "amperes", partial="Without {third} this would be the result."),
    "V": SumWords("voltage", "voltages", "volts", partial="Without {third} this would be the result."),
}
RESULT = "Sum"
DIFFERENCE = "Difference"


def label(number: int) -> str:
    """Label of a phasor's field."""
    return f"Phasor {number}"


def origin() -> Phrase:
    """The direction from which angles are counted."""
    return ("0°",)


def both_forms(polar: str, rectangular: str) -> str:
    """How a typed phasor was understood."""
    return f"{polar} = {rectangular}" if polar and rectangular else polar or rectangular


def taken_off(names: str) -> Phrase:
    """Subtraction is adding the opposite."""
    return say("{names} turned round and added: to take a phasor off is to add its opposite.", names=names)


def longest_check(total: str, plain_sum: str) -> Phrase:
    """The first sanity check of any sum of phasors."""
    return say("Check: the result is never more than the sizes added as plain numbers. {total} is within {plain_sum}.",
               total=total, plain_sum=plain_sum)  # fmt: skip


def no_parallelogram(count: str) -> Phrase:
    """More than three phasors are not drawn by parallelogram."""
    return say("{count} phasors would need a parallelogram on a parallelogram on a parallelogram, so the sheet shows "
               "them tip to tail.", count=count)  # fmt: skip


def nothing_to_pair() -> Phrase:
    """A single arrow makes no parallelogram."""
    return say("One phasor alone makes no parallelogram, so the sheet shows it by itself.")


COUNTS = {4: "Four", 5: "Five", 6: "Six"}
MISTAKES = {
    "added": (
        "the others were added, not taken off",
        "To take a phasor off, turn it round by 180° and add it.",
    ),
    "taken-off": (
        "the others were taken off, not added",
        "Set off every phasor at its own angle: none is turned round here.",
    ),
    "first-turned": (
        "the difference was taken the other way round",
        "The first phasor keeps its direction; those that are taken off are turned round.",
    ),
    "parts-exchanged": (
        "the two parts of {a} are exchanged",
        "The part with j lies along 90°, the part without it along 0°.",
    ),
    "j-sign": (
        "the sign before j slipped for {a}",
        "A minus before j points to the other side of the 0° line.",
    ),
}


def nothing_here() -> str:
    """No phasor was given."""
    return "Give at least two phasors, such as 20 at 0 and 15 at 60."


def no_first(label: str) -> str:
    """A difference without what the others are taken off."""
    return f"{label} is empty, so there is nothing to take the others off. Give it, such as 20 at 60, or 0."


PARTS = ("part along 0°", "part along 90°")


SHORT: dict[str, str] = {
    "added": "added, not taken off",
    "taken-off": "taken off, not added",
    "first-turned": "the difference the other way round",
    "parts-exchanged": "both parts of a phasor exchanged",
    "j-sign": "the sign before j slipped",
}
"""Mistakes of this calculator alone, in few words."""
