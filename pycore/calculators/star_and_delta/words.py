"""What the page of star and delta says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Star and delta"
DESCRIPTION = (
    "Line and phase values of three loads in star or delta: the line voltage built from two phase voltages, each line "
    "current of a delta built from two branch currents."
)
SCENARIO = "Sports hall, three heaters in delta"
CAUTIONS = (
    "On the same supply, loads of constant impedance take three times as much power in delta as in star with neutral. "
    "Never change a connection live: first isolate, and prove dead with a proved tester. A clamp meter cannot prove "
    "that a circuit is dead.",
    cautions.COMPETENT_WITH_CLAMP,
    cautions.LICENSED_PERSON,
    cautions.EXAMINING_BODY,
)
CONNECTION = "Loads connected in"
CONNECTIONS = (("delta", "delta"), ("star", "star, with neutral"))
LINE = "Line to draw"
KNOWN = "The given voltage is"
KNOWN_VOLTAGES = (("line", "between two lines"), ("phase", "between line and neutral"))
VOLTAGE = "Voltage"
VOLTAGES = {"line": "Voltage between lines", "phase": "Voltage to neutral"}
LOAD_HELP = (
    "Ohms, such as 20 or 8 + j6, or “open”. An empty load is equal to load 1. Load 1 is between L1 and L2 in delta, or "
    "between L1 and the neutral in star."
)
NO_LOADS = "no loads"
ZERO = "the first voltage"
VOLTS = SumWords("voltage", "phase voltages", "volts")
AMPERES = SumWords("current", "branch currents", "amperes", "this line carries 0 A and no arrow is drawn")
CALCULATED = "Line and phase values"
PHASE_VOLTAGE, LINE_VOLTAGE = "voltage between line and neutral", "voltage between lines"
POWER, REACTIVE, FACTOR = "power of all three", "reactive power", "power factor"


def drawn(result: Phrase, *, star: bool) -> Phrase:
    """Label of what is drawn."""
    return say("Line voltage {result}" if star else "Line current {result}", result=result)


def load_label(number: int) -> str:
    """Label of a load's field."""
    return f"Load {number}"


def line_option(first: str, second: str) -> str:
    """Option of the field ``line`` in star: the difference of two phase voltages."""
    return f"{first} minus {second}"


def bad_load(label: str, typed: str) -> str:
    """Text that is no load."""
    return f"{label} cannot be read: “{typed[:24]}”. Enter ohms, such as 20 or 8 + j6, or write open for no load."


def nothing_flows(label: str) -> str:
    """Both branches of the line that is drawn are open."""
    return (
        f"{label} is open, and the other branch of this line is open too. Enter a load for one of them, or draw "
        "another line."
    )


def values_text(loads: str, connection: str, volts: str, sequence: str) -> str:
    """The values in words."""
    return f"{loads} in {connection} on {volts}" + (f", sequence {sequence}" if sequence else "")


def named_load(name: str, load: str) -> str:
    """One load with its symbol."""
    return f"{name} = {load}"


def three_equal_loads(load: str, *, resistive: bool) -> str:
    """Three equal loads."""
    return f"Three resistive loads of {load}" if resistive else f"Three of {load}"


def all_resistive(loads: str) -> str:
    """Loads that are all resistances, which says that their currents are in phase with their voltages."""
    return f"Resistive loads {loads}"


def between_lines(volts: str) -> str:
    """A voltage between lines, said so."""
    return f"{volts} between lines"


def to_neutral(volts: str) -> str:
    """A phase voltage, said so."""
    return f"{volts} between line and neutral"


RESULTS = {"star": "the voltage between the two lines", "delta": "the line current"}
"""What is to be found, in the moves of a sheet for easy reading."""


def task(result: str, first: str, second: str, *, star: bool, back: bool) -> str:
    """What is to be drawn; ``back``: in star, where the voltage between lines is what is known."""
    difference = f"{result} = {first} − {second}"
    if back:
        return (
            "Calculate the phase voltage. Then find by drawing the angle of the line voltage "
            f"{difference}, and check its size"
        )
    if star:
        return f"Find the line voltage {difference} by drawing"
    return f"Calculate the branch currents {first} and {second}, then find the line current {difference} by drawing"


def is_difference(result: Phrase, first: Phrase, second: Phrase) -> Phrase:
    """The sum drawn is a difference."""
    return say("{result} = {first} − {second}: turn {second} by 180° and add it.",
               result=result, first=first, second=second)  # fmt: skip


def opposite(name: Phrase) -> Phrase:
    """Where the phasor that is subtracted comes from."""
    return say("−{name} is {name} turned by 180°.", name=name)


LOAD_ANGLE = (
    "The angle between each current and its voltage is the angle of its load: a coil makes the current lag, a "
    "capacitor makes it lead."
)
"""What the angle of a load does to its current."""
ALL_THREE_TITLES = {"star": "All three voltages and currents", "delta": "All three line currents"}
ALL_THREE_INTROS: dict[str, Phrase] = {
    "star": say(
        "The whole star: three phase voltages (filled arrowheads) and three line currents (dashed, open arrowheads). "
        f"{LOAD_ANGLE} Voltages and currents have separate scales."
    ),
    "delta": say(
        "All three line currents (filled arrowheads) and the branch currents from which they are built (dashed, open "
        "arrowheads), at one scale. Each line current is the difference of two branch currents. The three line "
        "currents add to zero, because there is no neutral."
    ),
}
ALL_THREE_HEADS = {
    "star": ("load", "voltage", "size and angle", "current", "size and angle"),
    "delta": ("line", "line current", "size and angle", "branch current", "size and angle"),
}


def all_three_description(connection: str, phasors: list[str]) -> str:
    """What the picture shows, for someone who cannot see it."""
    shown = "phase voltages and line currents" if connection == "star" else "line currents and branch currents"
    return f"Phasor diagram of all three {shown}: {'; '.join(phasors)}."


def root_three(result: Phrase, first: Phrase, *, ahead: bool) -> Phrase:
    """The line voltage against the phase voltage."""
    side = "ahead of" if ahead else "behind"
    return say("{result} is √3 times {first} in size and 30° {side} it.", result=result, first=first, side=side)


def balanced_delta(line: str, branch: str) -> Phrase:
    """Equal loads in delta."""
    return say("The loads are equal, so each line carries √3 times the branch current: {line} = √3 × {branch}.",
               line=line, branch=branch)  # fmt: skip


UNBALANCED_DELTA: Phrase = say(
    "The loads are unequal, so the factor √3 between branch and line current is not valid. Draw the difference "
    "for each line."
)
"""The loads differ."""


def other_connection(connection: str, line: str, power: str, here: str, power_here: str) -> Phrase:
    """The same loads connected the other way."""
    return say("The same three loads in {connection}: {line} in each line and {power}, instead of {here} and "
               "{power_here}.",
               connection=connection, line=line, power=power, here=here, power_here=power_here)  # fmt: skip


def of_load(number: int) -> Phrase:
    """Label of a load's current."""
    return say("current in load {n}", n=str(number))


def of_line(name: str) -> Phrase:
    """Label of a line's current."""
    return say("current in line {n}", n=name)


VOLTAGE_INTROS: dict[str, Phrase] = {
    "line": say("Phase voltage (line to neutral) from line voltage:"),
    "phase": say("Line voltage from phase voltage (line to neutral):"),
}
"""Before the formula of the voltage that is not typed, by the one that is."""


LOADS_INTRO: Phrase = say(
    "Size and angle of each load, and its current, the voltage across it divided by its impedance:"
)
"""Before an impedance."""


CORNER_LAW: Phrase = say(
    "The current that flows in through a line flows out through the two branches at that corner. So each line current "
    "is the difference of two branch currents."
)
"""Kirchhoff's current law at the corners of a delta."""


POWERS_INTRO: Phrase = say("Power of the three loads together, each I²R, and reactive power, each I²X:")
"""Before the sums of power."""


Z_HEAD = ("load", "impedance", "size and angle", "voltage across it", "branch current")
DIFFERENCE_HEAD = ("line", "difference", "in parts", "size and angle")
MISTAKES = {
    "added": ("the two phasors were added instead of subtracted", "Turn the second one by 180° before you add it."),
    "branch-for-line": ("{a} itself was given as the result", (
        "{a} is one of the two phasors: subtract the other one."
    )),
    "root-three-unbalanced": (
        "√3 times {a} was used",
        "The factor √3 is valid only for three equal loads. Here, draw the difference.",
    ),
    "first-turned": (
        "the phasors were subtracted in the wrong order",
        "Check which phasor is turned by 180°: the second one, which is subtracted.",
    ),
    "star-voltage": (
        "the phase voltage was used across the loads",
        "In delta each load is connected between two lines: it has the line voltage.",
    ),
    "size-by-adding": (
        "resistance and reactance were added as plain numbers",
        "They are at right angles: use Pythagoras.",
    ),
    "angles-of-loads": (
        "the phase angles of the loads were left out",
        LOAD_ANGLE,
    ),
}


SHORT: dict[str, str] = {
    "added": "added instead of subtracted",
    "branch-for-line": "one phasor given as the result",
    "root-three-unbalanced": "√3 used for unequal loads",
    "first-turned": "the difference the other way round",
    "star-voltage": "phase voltage across the loads",
    "size-by-adding": "R and X of a load added as plain numbers",
    "angles-of-loads": "the loads’ phase angles left out",
}
"""Mistakes of this calculator alone, in few words."""
