"""What the page of the series circuit says."""

from pycore.words.circuits import CAUTIONS as CIRCUIT_CAUTIONS
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Series circuit"
DESCRIPTION = (
    "Resistors, coils and capacitors in series: reactances, impedance, current and each voltage, by calculation and by "
    "phasors tip to tail on the current."
)
SCENARIO = "Workshop lamp with its choke and a capacitor"
CAUTIONS = (
    "Near resonance the voltages across coil and capacitor can be many times the supply: choose parts and insulation "
    "for those, and keep hands away.",
    *CIRCUIT_CAUTIONS,
)
SUPPLY, RESISTANCE, INDUCTANCE, CAPACITANCE = "Supply", "Resistance", "Inductance", "Capacitance"
HELP = (
    "Several of a kind: 10 + 4.7 Ω. A reactance may be given in ohms: 31.4 Ω. The supply is a voltage, or the current "
    "if that is known: 2.5 A."
)
DRAWN = "What is drawn"
DRAWINGS = (("voltages", "voltages on the current"), ("impedances", "impedance triangle"))
REFERENCE = "the current or resistance"
VOLTS = SumWords("voltage", "voltages", "volts", closes="the voltages cancel and no arrow is drawn",
                 partial="Without {third} this would be the supply voltage.")  # fmt: skip
OHMS = SumWords("impedance", "resistances and reactances", "ohms", closes="the reactances cancel and no arrow is drawn",
                partial="Without {third} this would be the impedance.")  # fmt: skip
AMPERES = SumWords("current", "currents", "amperes")
RESULTS = {"voltages": "the supply voltage", "impedances": "the impedance"}
"""What is to be found, in the moves of a sheet for easy reading."""
GUESS = "the current"
WHY_CURRENT: Phrase = ("In series one current flows through everything, so all voltages are counted from it.",)
TASKS = {
    "voltages": "Find the current and each voltage, then draw their sum",
    "voltages-known": "Find each voltage, then the supply by drawing",
    "impedances": "Find the impedance by drawing",
}
CURRENT, SUPPLY_VOLTAGE, IMPEDANCE = "Current", "Supply voltage", "Impedance"
REACTANCE, POWER = "reactance", "active power"
RESONANCE = "resonance at"
CALCULATED = "By calculation"


def nothing_limits(label: str) -> str:
    """No impedance on a given voltage."""
    return (
        f"{label}: at this frequency the reactances cancel and there is next to no resistance, so nothing limits the "
        "current. Give a resistance, a thousandth of the reactance or more, or the current instead of the voltage."
    )


def nothing_there(label: str) -> str:
    """Elements of 0 ohms only."""
    return (
        f"{label}: everything in the circuit has 0 Ω, which leaves no voltage to draw and nothing that limits the "
        "current. Give a resistance, a coil or a capacitor of more than that."
    )


def resonates(frequency: str) -> Phrase:
    """Where the circuit resonates."""
    return say("The reactances are equal at {frequency}: there the circuit resonates.", frequency=frequency)


def at_resonance(frequency: str, times: str) -> Phrase:
    """The supply has the frequency of resonance."""
    return say(
        "Resonance: at {frequency} the reactances cancel, the impedance is the resistance alone and the current is at "
        "its largest.{times}", frequency=frequency, times=times,
    )  # fmt: skip


def magnified(name: Phrase, times: str) -> Phrase:
    """A voltage beyond the supply's."""
    return say("{name} is {times} times the supply voltage: parts and insulation must stand that.",
               name=name, times=times)  # fmt: skip


def not_numbers(plain_sum: str, supply: str) -> Phrase:
    """The first sanity check."""
    return say("Check: the voltages added as plain numbers give {plain_sum}, never less than the supply, {supply}.",
               plain_sum=plain_sum, supply=supply)  # fmt: skip


def nothing_across(names: str) -> Phrase:
    """Elements of no impedance have no arrow."""
    return say("{names}: 0 Ω, so there is no arrow for it.", names=names)


def too_small_to_draw(names: str) -> Phrase:
    """Voltages below a millionth of the largest."""
    return say("{names}: less than a millionth of the largest, so no arrow is drawn for it.", names=names)


def given(elements: str, supply: str, frequency: str) -> str:
    """The values in words."""
    return f"{elements} in series on {supply}, {frequency}"


def given_current(elements: str, current: str, frequency: str) -> str:
    """The values in words, where the current is known."""
    return f"{elements} in series, carrying {current}, {frequency}"


def reactance_echo(ohms: str) -> str:
    """How coils or capacitors were understood."""
    return f"reactance {ohms}"


def reactances() -> Phrase:
    """What comes first."""
    return say("Reactances, at the circuit’s own frequency:")


def no_reactances() -> Phrase:
    """Resistors alone."""
    return say("There is resistance only: no reactance, and the impedance is the sum of the resistances.")


def sums() -> Phrase:
    """Elements of one kind are added."""
    return say("Resistances add, and reactances add with their sign: a coil’s +, a capacitor’s −.")


def triangle() -> Phrase:
    """The impedance triangle."""
    return say("Resistance and reactance stand at a right angle:")


def ohm() -> Phrase:
    """The law of Ohm with impedances."""
    return say("One current flows through everything:")


def each_voltage() -> Phrase:
    """Each voltage."""
    return say("Each voltage is that current times the element’s own resistance or reactance:")


def supply_again() -> Phrase:
    """The supply from the voltages."""
    return say("Added as phasors they give the supply again:")


def angle() -> Phrase:
    """The angle and the power factor."""
    return say("The angle between voltage and current, and the power factor:")


def powers() -> Phrase:
    """Powers."""
    return say("Active, reactive and apparent power:")


def resonance() -> Phrase:
    """The frequency of resonance."""
    return say("Resonance, where the reactances are equal:")


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
