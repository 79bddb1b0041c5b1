"""What the page of sequence components says."""

from collections.abc import Sequence

from pycore.words import cautions
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Sequence components"
ON_SHEET = "Sequence components"
"""The title where there is little room."""
DESCRIPTION = (
    "The zero, positive and negative sequence components of three unequal phasors: each found by drawing, with the "
    "operator a, and by calculation."
)
SCENARIO = "Print workshop, one feeder"
CAUTIONS = (
    cautions.NEUTRAL_DECIDED,
    "Never open a neutral on a live system. It carries three times the zero sequence current. Without it, the voltage "
    "across single-phase loads can rise to the line voltage and, with mixed reactances, above it. A clamp meter "
    "cannot prove that a circuit is dead: isolate, and prove dead with a proved tester.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it.",
    cautions.EXAMINING_BODY,
)
HELP = "Size and angle, such as 20 at -120, or real and imaginary part, such as 10 + j17.3. Write 0 for no phasor."
PART = "Component to draw"
PARTS = (("zero", "zero"), ("positive", "positive"), ("negative", "negative"))
UNIT = "Quantity"
UNITS = (("A", "line currents, in amperes"), ("V", "phase voltages, in volts"))
ZERO = "the 0° direction"
ITS_ANGLE = "its angle"
WORDS = {
    "A": SumWords("current", "line currents", "amperes", "this component is zero and no arrow is drawn"),
    "V": SumWords("voltage", "phase voltages", "volts", "this component is zero and no arrow is drawn"),
}
NAMES = {"zero": "zero sequence", "positive": "positive sequence", "negative": "negative sequence"}
INDEX = {"zero": "0", "positive": "+", "negative": "−"}
NEUTRAL = "in the neutral"
CALCULATED = "All three components"
A, A_TWICE = Symbol("a"), "²"


ORIGIN = ("0°",)
"""The direction from which angles are counted."""


def times_a(tag: Phrase, power: int) -> Phrase:
    """A phasor turned by the operator a, once or twice."""
    return (A, *tag) if power == 1 else (A, A_TWICE, *tag)


def three_times(component: str) -> str:
    """Label of what is drawn."""
    return f"Three times {NAMES[component]}"


def task(component: str) -> str:
    """What is to be found by drawing."""
    return f"Find three times the {NAMES[component]} component by drawing"


DIVIDE = "Divide by three. Write the component down."


def result(component: str) -> str:
    """What is drawn, in the moves of a sheet for easy reading."""
    return f"three times the {NAMES[component]} component"


def one_third(symbol: Phrase, amount: str, sum_tag: Phrase) -> Phrase:
    """The component itself."""
    return say("{symbol} = {amount}, one third of {sum_tag}.", symbol=symbol, amount=amount, sum_tag=sum_tag)


def operator(component: str, *, clockwise: bool) -> Phrase:
    """How the phasors are turned; ``clockwise``: positive angles are clockwise on the sheet."""
    if component == "zero":
        return say("For the zero sequence, the three phasors are added without turning them.")
    twice = ("second", "third") if component == "positive" else ("third", "second")
    return say((
        "{a} turns a phasor by 120° in the direction of positive angles, {a}² by 240°. On this sheet, that direction "
        "is {sense}. Here the {first} phasor is multiplied by {a} and the {second} by {a}²."
    ), a=A, sense="clockwise" if clockwise else "anticlockwise", first=twice[0], second=twice[1])  # fmt: skip


def turning_moves(phasors: Sequence[tuple[str, str, float]], *, clockwise: bool) -> tuple[str, ...]:
    """The moves that turn phasors, in a problem for easy reading: name, name once turned, and degrees of each;
    ``clockwise``: positive angles are clockwise on the sheet."""
    sense = "clockwise" if clockwise else "anticlockwise"
    return tuple(
        f"Turn {name} by {120 if turn > 0 else 240}° {sense}: that is {turned}. Write its angle in the table."
        for name, turned, turn in phasors
        if turn
    )


def neutral_carries(amount: str) -> Phrase:
    """The neutral carries three times the zero sequence."""
    return say((
        "The neutral carries three times the zero sequence current: {amount}. The positive and negative sequence "
        "currents of the three lines add to zero."
    ), amount=amount)  # fmt: skip


NO_ZERO = say(
    "There is no zero sequence component, so the three currents add to zero: the neutral current would be 0 A."
)
"""The sum of the phasors is zero."""


def symmetrical(component: str) -> Phrase:
    """Only one component is there."""
    alike = "equal" if component == "zero" else "symmetrical"
    return say("Only the {name} is there: the three phasors are {alike}.", name=NAMES[component], alike=alike)


TABLE_WORDS = say("The components of the first phasor: turn the phasors as shown, add all three, divide by three:")
"""Before the table of components."""


def a_parts(half: str, root: str) -> Phrase:
    """The operator and its square in parts; ``half`` and ``root``: 0.5 and 0.866 as numbers are written here."""
    return say("{a} = −{half} + j{root}, {a}² = −{half} − j{root}, and 1 + {a} + {a}² = 0.", a=A, half=half, root=root)



BACK_WORDS = say("Check: for each phase, the zero, positive and negative sequence components add to the given phasor:")
"""Before the check."""

HEAD = (
    "component", "sum of the phasors as they are turned", "component = sum ÷ 3, real and imaginary part",
    "component, size and angle",
)  # fmt: skip
BACK_HEAD = (
    "phasor", "its zero sequence component", "its positive sequence component", "its negative sequence component",
    "sum of the three components",
)  # fmt: skip
SETS = "The three sets as diagrams"
SETS_SHEET = "Second sheet with all three sets"
SETS_CHOICE = (("no", "no"), ("yes", "yes"))
SETS_NAME = "The three sets"
SETS_METHOD = "Zero, positive and negative"
SETS_NOTE = (
    "Zero sequence: three equal arrows in one direction, drawn side by side. Positive and negative sequence: three "
    "equal arrows, 120° apart. All three sets have the scale of this sheet."
)
SETS_TASK = (
    "Find the other two sums too: turn the phasors by {a} or {a}², then add them. Divide each sum by three. Then draw "
    "the three sets at the scale of this sheet."
).replace("{a}", "a")
"""Before the note on a problem sheet."""


def sets_title(unit: str) -> str:
    """What the picture of the three sets shows, for someone who cannot see it."""
    kind = "currents" if unit == "A" else "voltages"
    return (
        f"Three phasor diagrams at one scale: the zero, positive and negative sequence components of the three {kind}. "
        "In the zero sequence set all three point in one direction; in the other two they are 120° apart."
    )


def nothing_here(label: str) -> str:
    """Message if all three phasors are zero."""
    return f"{label} and the other phasors are all 0. At least one must be more than 0."


MISTAKES = {
    "a-exchanged": (
        "{a} and {a}² were swapped, which gives the {other} component",
        "For the positive sequence, multiply the second phasor by {a} and the third by {a}².",
    ),
    "not-turned": (
        "the phasors were added without turning them, which gives the zero sequence",
        "First turn the second and third phasors by {a} and {a}², in the order that the sheet gives.",
    ),
    "turned": (
        "the phasors were turned, which gives the {other} component",
        "For the zero sequence, add the phasors without turning them.",
    ),
    "divided-already": (
        "the sum was already divided by three",
        "The sheet asks for three times the component: the sum, not divided by three.",
    ),
    "wrong-way-a": (
        "{which} was turned in the wrong direction",
        "{a} turns a phasor by 120° in the direction of positive angles. Check on the sheet which direction that is.",
    ),
}


SHORT: dict[str, str] = {
    "a-exchanged": "a and a² swapped",
    "not-turned": "not turned by a",
    "turned": "turned, but zero sequence has no turn",
    "divided-already": "divided by three already",
    "wrong-way-a": "turned by a in the wrong direction",
}
"""Mistakes of this calculator alone, in few words."""
