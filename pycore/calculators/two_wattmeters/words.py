"""What the page of the two wattmeters says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Two wattmeters"
DESCRIPTION = (
    "Two wattmeters on three wires: what each one reads, and how to find active power, reactive power and power "
    "factor from both readings, drawn to scale."
)
SCENARIO = "Joinery workshop, one motor on three wires"
CAUTIONS = (
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. Meters and "
    "leads must have the right measurement category.",
    "Before you change a connection, including the leads of a meter: isolate, and prove dead with a proved tester.",
    "Never open a current circuit under load, and never leave the secondary of a current transformer open.",
    cautions.LICENSED_PERSON,
    cautions.EXAMINING_BODY,
)
KNOWN = "What is known"
KNOWNS = (("load", "the load: voltage, current, angle"), ("readings", "both readings"))
VOLTS, AMPS, LAG = "Line voltage", "Line current", "Lag"
LAG_HELP = (
    "Lag: angle in degrees by which each current lags its own phase voltage (minus if it leads), or a power factor, "
    "such as 0.85 lag."
)
METER_LINES = "Wattmeters on"
METER_LINE_OPTIONS = (
    ("12", "L1 and L2, voltages to L3"), ("13", "L1 and L3, voltages to L2"), ("23", "L2 and L3, voltages to L1"),
)  # fmt: skip
READING_HELP = "Minus if the meter reads backwards."
BALANCED = "Load"
BALANCEDS = (("yes", "balanced"), ("no", "unbalanced"))
ZERO = "the power"
WORDS = SumWords(
    "power", "powers", "volt-amperes", closes="there is no active power and no arrow is drawn", alternates=False
)
WATTS = SumWords(
    "power", "powers", "watts", closes="there is no active power and no arrow is drawn", alternates=False
)
"""Of an unbalanced load, whose two readings give the active power alone."""
LINES = ("P₁", "P₂", "Q")
APPARENT, ACTIVE, REACTIVE, ANGLE, FACTOR = "Apparent power", "Power", "Reactive power", "phase angle", "power factor"
TAGS = (Symbol("P", "1"), Symbol("P", "2"), Symbol("Q"), Symbol("S"))


ORIGIN: Phrase = (Symbol("P"),)
POSITIVE: Phrase = ("positive ", Symbol("P"))
"""The direction of the active power; where that may be negative, of a positive P."""


def reading_label(number: int, line: int) -> str:
    """Label of a reading's field."""
    return f"Wattmeter {number}, on L{line}"


def enter_reading(label: str) -> str:
    """A reading that is not typed yet."""
    return f"Enter the reading of {label[0].lower()}{label[1:]}, in watts, such as 2828 or 2.83 kW."


def drawn(amount: str, direction: Phrase) -> Phrase:
    """What the drawing ends on."""
    return say("On the drawing: S = {amount}, {direction}", amount=amount, direction=direction)


def power_factor(text: str) -> Phrase:
    """The power factor, which with the power answers the question."""
    return say("Power factor: **{text}.**", text=text)


def larger_reading(number: int, side: str) -> Phrase:
    """Which meter's reading is larger, and what that says."""
    return say("Wattmeter {number} has the larger reading: the load is **{side}.**", number=str(number), side=side)


def bad_reading(label: str, typed: str) -> str:
    """Text that is no power."""
    return f"{label} cannot be read: “{typed[:24]}”. Enter watts, such as 2828, 2.83 kW or −1035."


def reading_range(label: str, typed: str) -> str:
    """A power out of range."""
    return f"{label} is out of range: “{typed[:24]}”. Use 0, or 1 mW to 1 GW, positive or negative."


def bad_lag(label: str, typed: str) -> str:
    """An angle that no load of three wires has."""
    return f"{label}: “{typed[:24]}” is more than 90°. A load that takes power lags or leads by at most 90°."


def both_zero(label: str) -> str:
    """Nothing flows."""
    return f"{label}: both readings are zero, so there is no power to draw."


def only_balanced(label: str) -> str:
    """The load given by one current and one angle is a balanced one."""
    return f"{label}: a load with one current and one angle is balanced. For an unbalanced load, enter both readings."


def reads(number: int, angle: str, amount: str) -> Phrase:
    """What a meter sees."""
    return say(
        "In wattmeter {number}, the angle between voltage and current is {angle}. It reads **{amount}.**",
        number=str(number), angle=angle, amount=amount,
    )  # fmt: skip


def negative(number: int) -> Phrase:
    """Which reading is below zero, and what that means."""
    return say(
        "Wattmeter {number} reads backwards: its pointer moves below zero, because the power factor of this balanced "
        "load is below 0.5. To read it, use the meter’s reversing switch, or swap the two leads of its voltage coil "
        "with the supply off and proved dead. Count the reading as negative.",
        number=str(number),
    )


def one_is_zero(number: int) -> Phrase:
    """A power factor of one half."""
    return say("Wattmeter {number} reads zero: the power factor is exactly 0.5.", number=str(number))


ALIKE: Phrase = say("Both wattmeters read the same: the power factor is 1.")
"""Unity power factor."""


def flows_back(amount: str) -> Phrase:
    """Power below zero."""
    return say(
        "The sum of the readings is negative: **{amount} flow back to the supply,** as from a motor that is driven as "
        "a generator. If nothing drives the load, both current circuits may be reversed: check with the supply off "
        "and proved dead.",
        amount=amount,
    )


TURNED_BACK: Phrase = say("The power is negative, so add 180° to the angle from the arctangent:")
"""The arctangent's other angle."""


OPPOSITE: Phrase = say(
    "The readings are equal with opposite signs: the load takes no active power, only reactive power."
)
"""Pure reactance."""


THREE_WIRES: Phrase = say(
    "For three wires only: if a neutral carries current, the sum of the two readings is not the total power."
)
"""Where the method holds."""


REFUSED: Phrase = say(
    "**The load is unbalanced:** the sum of both readings is still the total power. But the tangent formula does not "
    "give its angle. Measure the reactive power, or measure each line."
)
"""The tangent formula does not hold."""


BACK_TITLE = "From both readings"
"""Title of the working from the readings."""


def picture_title(first: str, second: str) -> str:
    """What the phasor diagram shows, for someone who cannot see it."""
    return (
        f"Phasor diagram: voltage and current of wattmeter 1, {first} apart; voltage and current of wattmeter 2, "
        f"{second} apart. A dashed line at right angles to each voltage shows the component of "
        "its current."
    )


PICTURE_WORDS: Phrase = say(
    "Voltages have filled arrowheads, currents open ones. A dashed line at right angles to each voltage gives the "
    "component of the current along it. Reading = voltage × this component."
)
"""How to read the picture."""


RESULT, RESULT_UNBALANCED = "the apparent power", "the active power"
"""What the drawing ends on: of an unbalanced load, both readings in one line."""
NOT_GIVEN = "powers that are not given"


def meters_note(meters: str) -> str:
    """The lines of both meters (``12``, ``13`` or ``23``) and the sequence, in few words."""
    return f"Meter 1 on L{meters[0]}, meter 2 on L{meters[1]}, sequence L1, L2, L3."


TASK = "Calculate the reactive power, then find the apparent power and its angle by drawing"
TASK_UNBALANCED = "Find the active power by drawing both readings in line"
PHASORS = "Phasor diagram of both meters"


def connection(first: int, second: int, to: int, larger: int) -> Phrase:
    """In which lines both meters are connected, and which one reads more with a lagging load."""
    return say(
        "Wattmeter 1 has the current of L{first} and the voltage from L{first} to L{to}. Wattmeter 2 has the current "
        "of L{second} and the voltage from L{second} to L{to}. The phase sequence is L1, L2, L3. If the load lags, "
        "wattmeter {larger} has the larger reading. In the other sequence the two readings of a balanced load are "
        "swapped, and the formula gives Q with the wrong sign.",
        first=str(first), second=str(second), to=str(to), larger=str(larger),
    )  # fmt: skip




def load_text(volts: str, amps: str, lag: str, side: str) -> str:
    """What is known of a balanced load; ``side`` is lagging, leading or "" for neither."""
    angle = f"{side} by {lag}" if side else "in phase with its phase voltage"
    return f"Balanced load, {volts} between lines, {amps} in each line, {angle}"


def reading(symbol: str, watts: str) -> str:
    """A meter's reading as it is given."""
    return f"{symbol} = {watts}"


MISTAKES = {
    "root-three-forgotten": (
        "√3 was left out of the reactive power",
        "Q is √3 times the difference of the readings.",
    ),
    "readings-exchanged": (
        "the two readings are swapped in the reactive power",
        "Check which reading is subtracted: the order depends on the lines of the meters. The sign shows lag or lead.",
    ),
    "minus-forgotten": (
        "the minus sign of a reading was left out",
        "A reading of a wattmeter that reads backwards is negative.",
    ),
}  # fmt: skip
"""Mistakes of this calculator alone: what happened, and where to look."""

SHORT: dict[str, str] = {
    "root-three-forgotten": "√3 forgotten",
    "readings-exchanged": "the two readings swapped",
    "minus-forgotten": "minus sign of a reading left out",
}
"""Mistakes of this calculator alone, in few words."""
