"""What the page of the two wattmeters says."""

from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Two wattmeters"
DESCRIPTION = (
    "Two wattmeters on three wires: what each reads, from power and angle, and back from both readings to power, "
    "reactive power and power factor, drawn to scale."
)
SCENARIO = "Joinery workshop, one motor on three wires"
CAUTIONS = (
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it, with meters "
    "and leads of the right measurement category.",
    "Isolate, and prove dead with a proved tester, before changing a connection, a meter’s leads among them.",
    "Never open a current circuit under load, and never leave a current transformer open.",
    "These sheets teach; they do not size an installation: the local wiring rules and a licensed person decide.",
    "Ask which method your examining body accepts.",
)
KNOWN = "What is known"
KNOWNS = (("load", "the load: voltage, current, angle"), ("readings", "both readings"))
VOLTS, AMPS, LAG = "Line voltage", "Line current", "Lag"
LAG_HELP = (
    "Lag: degrees by which each current lags its own phase voltage, minus if it leads; or a power factor, such as "
    "0.85 lag."
)
FIRST, SECOND = "Wattmeter 1, on L1", "Wattmeter 2, on L3"
READING_HELP = "Minus for a meter that reads backwards."
BALANCED = "Load"
BALANCEDS = (("yes", "balanced"), ("no", "not balanced"))
ZERO = "the power"
WORDS = SumWords("power", "powers", "volt-amperes", closes="there is no power to draw")
LINES = ("P₁", "P₂", "Q")
APPARENT, ACTIVE, REACTIVE, ANGLE, FACTOR = "Apparent power", "Power", "Reactive power", "angle of lag", "power factor"
TAGS = (Symbol("P", "1"), Symbol("P", "2"), Symbol("Q"), Symbol("S"))


def origin() -> Phrase:
    """The direction of the active power."""
    return (Symbol("P"),)


def bad_reading(label: str, given: str) -> str:
    """Text that is no power."""
    return f"{label} cannot be read: “{given[:24]}”. Give watts, such as 2828, 2.83 kW or −1035."


def reading_range(label: str, given: str) -> str:
    """A power out of range."""
    return f"{label} is out of range: “{given[:24]}”. Accepted is 0, or 1 mW to 1 GW with either sign."


def bad_lag(label: str, given: str) -> str:
    """An angle that no load of three wires has."""
    return f"{label}: “{given[:24]}” is more than 90°. A load that takes power lags or leads by 90° at the most."


def both_zero(label: str) -> str:
    """Nothing flows."""
    return f"{label}: both readings are zero, so there is no power to draw."


def only_balanced(label: str) -> str:
    """The load given by one current and one angle is a balanced one."""
    return f"{label}: a load of one current and one angle is balanced. For another, give both readings."


def reads(number: int, angle: str, amount: str) -> Phrase:
    """What a meter sees."""
    return say(
        "Wattmeter {number} sees an angle of {angle} between its voltage and its current, and reads **{amount}.**",
        number=str(number), angle=angle, amount=amount,
    )  # fmt: skip


def negative(number: int) -> Phrase:
    """Which reading is below zero, and what that means."""
    return say(
        "Wattmeter {number} reads backwards: the power factor is below 0.5. To read it, use the meter’s own reversing "
        "switch; or exchange the leads of its voltage circuit with the supply off and proved dead. Count it as "
        "negative.",
        number=str(number),
    )


def one_is_zero(number: int) -> Phrase:
    """A power factor of one half."""
    return say("Wattmeter {number} reads nothing: the power factor is just 0.5.", number=str(number))


def alike() -> Phrase:
    """Unity power factor."""
    return say("Both read the same: the power factor is 1.")


def flows_back(amount: str) -> Phrase:
    """Power below zero."""
    return say(
        "Together the readings are below zero: **{amount} flow back to the supply,** as from a motor that is driven. "
        "Where nothing drives the load, both current circuits may be the wrong way round: look with the supply off.",
        amount=amount,
    )


def turned_back() -> Phrase:
    """The arctangent's other angle."""
    return say("The power is below zero, so the angle lies 180° from the one that the arctangent gives:")


def opposite() -> Phrase:
    """Pure reactance."""
    return say("The readings are equal and opposite: the load takes no power, only reactive power.")


def three_wires() -> Phrase:
    """Where the method holds."""
    return say("For three wires only: with a neutral that carries current the two readings do not add to the power.")


def refused() -> Phrase:
    """The tangent formula does not hold."""
    return say(
        "**The load is not balanced:** the sum of both readings is still its power, but the tangent formula gives no "
        "angle of it. Measure reactive power, or each line, for that."
    )


def back_title() -> str:
    """Title of the working from the readings."""
    return "From both readings"


def picture_title(first: str, second: str) -> str:
    """What the phasor diagram shows, for someone who cannot see it."""
    return (
        f"Phasor diagram: the voltage of wattmeter 1 and the current of L1, {first} apart; the voltage of wattmeter 2 "
        f"and the current of L3, {second} apart. Each current is dropped square on to its voltage."
    )


def picture_words() -> Phrase:
    """How to read the picture."""
    return say(
        "Voltages have filled arrowheads, currents open ones. Each current is dropped square on to its own meter’s "
        "voltage: voltage × that part is the reading."
    )


RESULT = "the apparent power"
NOT_GIVEN = "powers that are not given"
METERS = "Meter 1 on L1, meter 2 on L3, sequence L1, L2, L3."
TASK = "Work out the reactive power, then find the apparent power and its angle by drawing"
TASK_UNBALANCED = "Find the power by drawing both readings in line"
PHASORS = "Phasor diagram of both meters"
CONNECTION = (
    "Meter 1 has the current of L1 and the voltage from L1 to L2; meter 2 the current of L3 and the voltage from L3 to "
    "L2. The lines follow each other in the sequence L1, L2, L3; in the other sequence both readings change places, "
    "and Q changes its sign."
)


def reading(symbol: str, watts: str) -> str:
    """A meter's reading as it is given."""
    return f"{symbol} = {watts}"


MISTAKES = {
    "root-three-forgotten": (
        "√3 was left out of the reactive power",
        "Q = √3 × (second reading − first reading).",
    ),
    "readings-exchanged": (
        "the two readings are exchanged in the reactive power",
        "Take the first reading from the second, in this order: the sign tells lag from lead.",
    ),
    "minus-forgotten": (
        "the minus of a reading was forgotten",
        "A meter that reads backwards counts as negative.",
    ),
}  # fmt: skip
"""Mistakes of this calculator alone: what happened, and where to look."""

SHORT: dict[str, str] = {
    "root-three-forgotten": "√3 forgotten",
    "readings-exchanged": "the two readings exchanged",
    "minus-forgotten": "a reading’s minus forgotten",
}
"""Mistakes of this calculator alone, in few words."""
