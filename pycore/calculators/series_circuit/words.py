"""What the page of the series circuit says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Series circuit"
DESCRIPTION = (
    "Resistors, coils and capacitors in series: reactances, impedance, current and each voltage, by calculation and "
    "by phasors drawn tip to tail with the current as reference."
)
SCENARIO = "Workshop lamp with its choke and a capacitor"
CAUTIONS = (
    "Near resonance, the voltages across coil and capacitor can be many times the supply voltage. Components and "
    "insulation must be rated for the peak of these voltages. Do not touch.",
    cautions.CHARGED,
    cautions.COMPETENT_ON_CIRCUIT,
    f"{cautions.TEACHING_ONLY} {cautions.EXAMINING_BODY}",
)
REACTANCES = {"l": "Inductive reactance", "c": "Capacitive reactance"}
"""What is given of a coil or a capacitor in ohms."""
SUPPLY, RESISTANCE, INDUCTANCE, CAPACITANCE = "Supply", "Resistance", "Inductance", "Capacitance"
HELP = (
    "Several of one kind: 10 + 4.7 Ω. You can enter a reactance in ohms: 31.4 Ω. Supply: a voltage, or the current if "
    "you know it, such as 2.5 A."
)
DRAWN = "What is drawn"
DRAWINGS = (("voltages", "voltages, with the current as reference"), ("impedances", "impedance triangle"))
REFERENCE = "the current or resistance"
SUM_WORDS: dict[str, Phrase] = {"voltages": ("supply voltage",), "impedances": ("impedance",)}
VOLTS = SumWords("voltage", "voltages", "volts", closes="the voltages cancel and no arrow is drawn",
                 partial="This is the voltage across {first} and {second} together.")  # fmt: skip
OHMS = SumWords("impedance", "resistances and reactances", "ohms", closes="the reactances cancel and no arrow is drawn",
                partial="This is the impedance of {first} and {second} together.", alternates=False)  # fmt: skip
AMPERES = SumWords("current", "currents", "amperes")
RESULTS = {"voltages": "the supply voltage", "impedances": "the impedance"}
"""What is to be found, in the moves of a sheet for easy reading."""
GUESS = "the current"
WHY_CURRENT: Phrase = ("In series the same current flows through every component, so all angles are measured from it.",)
TASKS = {
    "voltages": "Calculate the current and each voltage, then draw the sum of the voltages",
    "voltages-known": "Calculate each voltage, then find the supply voltage by drawing",
    "impedances": "Find the impedance by drawing",
}
CURRENT, SUPPLY_VOLTAGE, IMPEDANCE = "Current", "Supply voltage", "Impedance"
REACTANCE, POWER = "reactance", "active power"
RESONANCE = "resonance at"
CALCULATED = "By calculation"


def nothing_limits(label: str) -> str:
    """The supply is a voltage and there is no impedance."""
    return (
        f"{label}: at this frequency the reactances cancel and there is almost no resistance, so nothing limits the "
        "current. Enter a resistance of at least a thousandth of the reactance, or enter the current instead of the "
        "voltage."
    )


def zero_circuit(label: str) -> str:
    """All elements have 0 Ω."""
    return (
        f"{label}: the whole circuit has 0 Ω, so there is no voltage to draw and nothing limits the current. Enter a "
        "resistance, a coil or a capacitor with more than 0 Ω."
    )


def resonates(frequency: str) -> Phrase:
    """The frequency of resonance."""
    return say("Resonance: at {frequency} the two reactances are equal.", frequency=frequency)


_AT_RESONANCE = "Resonance: at {frequency} the reactances cancel. "


def at_resonance(frequency: str, *, current_known: bool) -> Phrase:
    """The supply has the resonant frequency; a current that is given does not change, the voltage for it does."""
    which = "supply voltage needed is at its minimum" if current_known else "current is at its maximum"
    return say(_AT_RESONANCE + "The impedance is only the resistance, so the {which}.",
               frequency=frequency, which=which)  # fmt: skip


def at_resonance_without_resistance(frequency: str, *, current_known: bool, exact: bool) -> Phrase:
    """The same without a resistance: nothing is left of the impedance, or next to nothing."""
    which = "supply voltage needed is at its minimum" if current_known else "current is very large"
    return say(_AT_RESONANCE + "The impedance is {nothing}, so the {which}.",
               frequency=frequency, nothing="zero" if exact else "almost zero", which=which)  # fmt: skip


def voltage_above_supply(name: Phrase, times: str, peak: str) -> Phrase:
    """An element's voltage is larger than the supply voltage."""
    return say((
        "{name} is {times} times the supply voltage (r.m.s.). Components and insulation must withstand its peak, "
        "{peak}: √2 times its r.m.s. value."
    ),
               name=name, times=times, peak=peak)  # fmt: skip


def plain_sum_check(plain_sum: str, supply: str) -> Phrase:
    """The supply voltage is at most the sum of the sizes."""
    return say((
        "Check: the voltages added as plain numbers give {plain_sum}. The supply voltage, {supply}, is never more "
        "than that."
    ),
               plain_sum=plain_sum, supply=supply)  # fmt: skip


def zero_impedance(names: str) -> Phrase:
    """Elements of no impedance have no arrow."""
    return say("{names}: 0 Ω, so there is no arrow.", names=names)


def values_text(elements: str, supply: str, frequency: str) -> str:
    """The given values as text."""
    return f"{elements} in series on {supply}, {frequency}"


def values_text_with_current(elements: str, current: str, frequency: str) -> str:
    """The given values as text, if the current is known."""
    return f"{elements} in series, carrying {current}, {frequency}"


def reactance_echo(ohms: str) -> str:
    """Reactances beside the field of coils or capacitors."""
    return f"reactance {ohms}"


REACTANCES_INTRO: Phrase = say("Reactances at the supply frequency:")
"""Before the reactances."""


NO_REACTANCES: Phrase = say("There is no reactance, so the impedance is the sum of the resistances.")
"""Instead of reactances, if there are only resistors."""


SUMS_INTRO: Phrase = say("Add the resistances. Add the reactances with their signs: coil +, capacitor −.")
"""Before the sums of resistances and of reactances."""


TRIANGLE_INTRO: Phrase = say("Resistance and reactance are at right angles:")
"""Before the impedance triangle."""


OHM_INTRO: Phrase = say("The same current flows through every component:")
"""Before Ohm's law."""


EACH_VOLTAGE_INTRO: Phrase = say("Each voltage is this current times the resistance or reactance of the element:")
"""Before each element's voltage."""


def opposite_first(coil: Phrase, capacitor: Phrase) -> Phrase:
    """Before a construction that begins with coil and capacitor."""
    return say((
        "{coil} and {capacitor} are opposite, so this order begins with their difference, {coil} − {capacitor}. The "
        "resistance is at right angles to it: the rest is a right-angled triangle."
    ), coil=coil, capacitor=capacitor)  # fmt: skip


def opposite_elsewhere(coil: Phrase, capacitor: Phrase, order: str) -> Phrase:
    """Before another construction: the order that begins with coil and capacitor is easier."""
    return say((
        "{coil} and {capacitor} point in opposite directions. It is easier to begin with their difference, {coil} − "
        "{capacitor}: choose the order “{order}”."
    ), coil=coil, capacitor=capacitor, order=order)  # fmt: skip


OPPOSITE_INTRO: Phrase = say(
    "The voltages of coil and capacitor point in opposite directions, so subtract them first. The difference and the "
    "voltage of the resistance are at right angles:"
)
"""Before the sum of the voltages of coil and capacitor."""
SUPPLY_CHECK_INTRO: Phrase = say("Added as phasors, they give the supply voltage:")
"""Before the sum of the voltages."""


ANGLE_INTRO: Phrase = say("The angle between voltage and current, and the power factor:")
"""Before angle and power factor."""


POWERS_INTRO: Phrase = say("Active, reactive and apparent power:")
"""Before the powers."""


RESONANCE_INTRO: Phrase = say("Resonance, where the reactances are equal:")
"""Before the frequency of resonance."""


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
