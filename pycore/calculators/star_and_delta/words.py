"""What the page of star and delta says."""

from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Star and delta"
DESCRIPTION = (
    "Line and phase values of three loads in star or delta: the line voltage built from two phase voltages, each line "
    "current of a delta built from two branch currents."
)
SCENARIO = "Sports hall, three heaters in delta"
CAUTIONS = (
    "The same three loads take three times the power in delta that they take in star. Never change a connection live: "
    "isolate, and prove dead with a proved tester, first. A clamp meter never proves a circuit dead.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. One conductor "
    "in the jaw of the clamp, and the right measurement category.",
    "These sheets teach; they do not size an installation: the local wiring rules and a licensed person decide.",
    "Ask which method your examining body accepts.",
)
CONNECTION = "Loads connected in"
CONNECTIONS = (("delta", "delta"), ("star", "star, with neutral"))
LINE = "Which line is drawn"
KNOWN = "The voltage given is"
KNOWN_VOLTAGES = (("line", "between two lines"), ("phase", "between line and neutral"))
VOLTAGE = "Voltage"
VOLTAGES = {"line": "Voltage between lines", "phase": "Voltage to neutral"}
LOAD_HELP = "Ohms, such as 20 or 8 + j6; or open. Loads 2 and 3 left empty are like load 1."
NO_LOADS = "no loads"
ZERO = "the first voltage"
VOLTS = SumWords("voltage", "phase voltages", "volts")
AMPERES = SumWords("current", "branch currents", "amperes", "this line carries 0 A and no arrow is drawn")
CALCULATED = "Line and phase values"
PHASE_VOLTAGE, LINE_VOLTAGE = "phase voltage", "line voltage"
POWER, REACTIVE, FACTOR = "power of all three", "reactive power", "power factor"


def drawn(result: Phrase, *, star: bool) -> Phrase:
    """Label of what is drawn."""
    return say("Line voltage {result}" if star else "Line current {result}", result=result)


def load_label(number: int) -> str:
    """Label of a load's field."""
    return f"Load {number}"


def line_option(first: str, second: str) -> str:
    """A line to be drawn, with the one it is taken against."""
    return f"{first}, less {second}"


def bad_load(label: str, given: str) -> str:
    """Text that is no load."""
    return f"{label} cannot be read: “{given[:24]}”. Give ohms, such as 20 or 8 + j6, or write open for no load."


def nothing_flows(label: str) -> str:
    """Both branches of the line that is drawn are open."""
    return f"{label} is open, and so is the other branch of the line that is drawn. Close one, or draw another line."


def given(loads: str, connection: str, volts: str, sequence: str) -> str:
    """The values in words."""
    return f"{loads} in {connection} on {volts}" + (f", sequence {sequence}" if sequence else "")


def named_load(name: str, load: str) -> str:
    """One load with its symbol."""
    return f"{name} = {load}"


def each(load: str) -> str:
    """Three equal loads."""
    return f"Three of {load}"


def between_lines(volts: str) -> str:
    """A voltage between lines, said so."""
    return f"{volts} between lines"


RESULTS = {"star": "the voltage between the two lines", "delta": "the line current"}
"""What is to be found, in the moves of a sheet for easy reading."""
TASK_BACK = (
    "Work out the phase voltage, then find by drawing the angle of the voltage between two lines, and its size again"
)
"""In star, where the voltage between lines is what is known."""
TASKS = {
    "star": "Work out the phase voltage, then find the voltage between two lines by drawing",
    "delta": "Work out both branch currents, then find the line current, their difference, by drawing",
}


def is_difference(result: Phrase, first: Phrase, second: Phrase) -> Phrase:
    """The sum drawn is a difference."""
    return say("{result} = {first} − {second}: {second} is turned round and added.",
               result=result, first=first, second=second)  # fmt: skip


def root_three(result: Phrase, first: Phrase, *, ahead: bool) -> Phrase:
    """The line voltage against the phase voltage."""
    side = "ahead of" if ahead else "behind"
    return say("{result} is √3 times as long as {first}, and 30° {side} it.", result=result, first=first, side=side)


def balanced_delta(line: str, branch: str) -> Phrase:
    """Equal loads in delta."""
    return say("The loads are equal, so each line carries √3 times the branch current: {line} = √3 × {branch}.",
               line=line, branch=branch)  # fmt: skip


def unbalanced_delta() -> Phrase:
    """The loads differ."""
    return say("The loads differ, so √3 does not hold between branch and line: draw each line’s own difference.")


def other_connection(connection: str, line: str, power: str, here: str, power_here: str) -> Phrase:
    """The same loads connected the other way."""
    return say("The same three loads in {connection}: {line} in each line and {power}, instead of {here} and "
               "{power_here}.",
               connection=connection, line=line, power=power, here=here, power_here=power_here)  # fmt: skip


def of_load(number: int) -> Phrase:
    """Label of a load's current."""
    return say("load {n}", n=str(number))


def of_line(name: str) -> Phrase:
    """Label of a line's current."""
    return say("line {n}", n=name)


def phase_voltage() -> Phrase:
    """Before the phase voltage's formula."""
    return say("Phase voltage (line to neutral) from line voltage:")


def load_size() -> Phrase:
    """Before an impedance."""
    return say("Size and angle of each load, and its current, the voltage across it divided by its impedance:")


def corner() -> Phrase:
    """Kirchhoff's current law at the corners of a delta."""
    return say("What flows in by a line leaves by the two branches at its corner: each line current is a difference.")


def powers() -> Phrase:
    """Before the sums of power."""
    return say("Power of the three loads together, each I²R, and reactive power, each I²X:")


Z_HEAD = ("load", "impedance", "size and angle", "voltage across it", "branch current")
DIFFERENCE_HEAD = ("line", "difference", "in parts", "size and angle")
MISTAKES = {
    "added": ("the two were added, not taken off", "One of the two is turned round by 180° before it is added."),
    "branch-for-line": ("{a} itself was taken for the result", "{a} is one of the two that meet: take off the other."),
    "root-three-unbalanced": (
        "√3 times {a} was taken",
        "√3 holds only where the three loads are equal: here draw the difference.",
    ),
    "first-turned": (
        "the difference was taken the other way round",
        "Check which of the two is turned round: the second, which is taken off.",
    ),
    "star-voltage": (
        "the phase voltage was used across the loads",
        "In delta each load lies between two lines: across it is the line voltage.",
    ),
    "size-by-adding": (
        "resistance and reactance were added as plain numbers",
        "They stand at a right angle: use Pythagoras.",
    ),
    "angles-of-loads": (
        "the loads’ own angles were left out",
        "Each branch current lags its voltage by the angle of its load.",
    ),
}


SHORT: dict[str, str] = {
    "added": "added, not taken off",
    "branch-for-line": "one phasor taken for the result",
    "root-three-unbalanced": "√3 though the loads differ",
    "first-turned": "the difference the other way round",
    "star-voltage": "phase voltage across the loads",
    "size-by-adding": "R and X of a load added as plain numbers",
    "angles-of-loads": "the loads’ own angles left out",
}
"""Mistakes of this calculator alone, in few words."""
