"""What the page of sequence components says."""

from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Sequence components"
ON_SHEET = "Sequence parts"
"""The title where there is little room."""
DESCRIPTION = (
    "Three unequal phasors taken apart into zero, positive and negative sequence: each component found by drawing, "
    "with the operator a, and by calculation."
)
SCENARIO = "Print workshop, one feeder"
CAUTIONS = (
    "These sheets teach; they do not size an installation: a neutral’s size, protection and harmonics are decided by "
    "the local wiring rules and a licensed person.",
    "Never open a neutral on a live system: the zero sequence current flows in it, and voltages at single-phase loads "
    "can rise to the line voltage. A clamp meter never proves a circuit dead: isolate, and prove dead with a proved "
    "tester.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it.",
    "Ask which method your examining body accepts.",
)
HELP = "Size and angle, such as 20 at -120, or two parts, such as 10 + j17.3. Write 0 for none."
PART = "Component that is drawn"
PARTS = (("zero", "zero"), ("positive", "positive"), ("negative", "negative"))
UNIT = "Quantity"
UNITS = (("A", "line currents, in amperes"), ("V", "phase voltages, in volts"))
ZERO = "the 0° direction"
ITS_ANGLE = "its angle"
WORDS = {
    "A": SumWords("current", "line currents", "amperes", "this component is nothing and no arrow is drawn"),
    "V": SumWords("voltage", "phase voltages", "volts", "this component is nothing and no arrow is drawn"),
}
NAMES = {"zero": "zero sequence", "positive": "positive sequence", "negative": "negative sequence"}
INDEX = {"zero": "0", "positive": "+", "negative": "−"}
NEUTRAL = "in the neutral"
CALCULATED = "All three components"
A, A_TWICE = Symbol("a"), "²"


def origin() -> Phrase:
    """The direction from which angles are counted."""
    return ("0°",)


def times_a(tag: Phrase, power: int) -> Phrase:
    """A phasor turned by the operator a, once or twice."""
    return (A, *tag) if power == 1 else (A, A_TWICE, *tag)


def three_times(part: str) -> str:
    """Label of what is drawn."""
    return f"Three times {NAMES[part]}"


def task(part: str) -> str:
    """What is to be found by drawing."""
    return f"Find three times the {NAMES[part]} component by drawing, then divide by three"


DIVIDE = "Divide by three. Write the component down."


def result(part: str) -> str:
    """What is drawn, in the moves of a sheet for easy reading."""
    return f"three times the {NAMES[part]} component"


def one_third(symbol: Phrase, amount: str, whole: Phrase) -> Phrase:
    """The component itself."""
    return say("{symbol} = {amount}, one third of {whole}.", symbol=symbol, amount=amount, whole=whole)


def operator(part: str) -> Phrase:
    """How the phasors are turned."""
    if part == "zero":
        return say("For the zero sequence the three are added as they are.")
    twice = ("second", "third") if part == "positive" else ("third", "second")
    return say("{a} turns a phasor by 120° anticlockwise, {a}² by 240°. Here the {first} is turned by {a}, the "
               "{second} by {a}².", a=A, first=twice[0], second=twice[1])  # fmt: skip


def neutral_carries(amount: str) -> Phrase:
    """The neutral carries three times the zero sequence."""
    return say("The neutral carries three times the zero sequence current: {amount}. The other two components add to "
               "nothing there.", amount=amount)  # fmt: skip


def no_zero() -> Phrase:
    """Nothing in the neutral."""
    return say("There is no zero sequence, so the three add to nothing: a neutral would carry 0 A.")


def symmetrical(part: str) -> Phrase:
    """Only one component is there."""
    return say("Only the {name} is there: the three phasors are symmetrical.", name=NAMES[part])


def table_words() -> Phrase:
    """Before the table of components."""
    return say("Each component of the first phasor, by adding the three as they are turned and dividing by three:")


def a_parts() -> Phrase:
    """The operator in rectangular form."""
    return say("{a} = −0.5 + j0.866, {a}² = −0.5 − j0.866, and 1 + {a} + {a}² = 0.", a=A)


def back_words() -> Phrase:
    """Before the check."""
    return say("Check: zero, positive and negative, turned to each phase, add to the phasors that were given:")


HEAD = ("component", "sum", "divided by three", "size and angle")
BACK_HEAD = ("phasor", "zero", "positive", "negative", "together")


def nothing_here(label: str) -> str:
    """All three are nothing."""
    return f"{label} is 0 and so are the others: there is nothing to take apart. At least one must be more than 0."


MISTAKES = {
    "a-exchanged": (
        "{a} and {a}² were exchanged, which gives the {other} component",
        "For the positive sequence the second phasor is turned by {a}, the third by {a}².",
    ),
    "not-turned": (
        "the phasors were added as they are, which gives the zero sequence",
        "Turn the second and the third by {a} and {a}² first.",
    ),
    "turned": (
        "the phasors were turned, which gives the {other} component",
        "For the zero sequence they are added as they are.",
    ),
    "divided-already": (
        "the sum was divided by three already",
        "The sheet asks for three times the component: the whole sum.",
    ),
    "wrong-way-a": (
        "the turn went the other way for {which}",
        "{a} turns by 120° anticlockwise, as angles are counted.",
    ),
}


SHORT: dict[str, str] = {
    "a-exchanged": "a and a² exchanged",
    "not-turned": "not turned by a",
    "turned": "turned where nothing turns",
    "divided-already": "divided by three already",
    "wrong-way-a": "a turn by a the wrong way",
}
"""Mistakes of this calculator alone, in few words."""
