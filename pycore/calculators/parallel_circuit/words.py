"""What the page of the parallel circuit says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Parallel circuit"
DESCRIPTION = (
    "Resistors, coils and capacitors in parallel: each branch current with the common voltage as reference, their "
    "sum, admittance and resonance."
)
SCENARIO = "Village hall: heater, fan motor, capacitor"
CAUTIONS = (
    "At resonance, the currents in coil and capacitor can be many times the supply current. Cables and fuses of the "
    "branches must be chosen for those currents.",
    cautions.CHARGED,
    cautions.COMPETENT_ON_CIRCUIT,
    f"{cautions.TEACHING_ONLY} {cautions.EXAMINING_BODY}",
)
SUPPLY = "Supply"
HELP = (
    "Elements in series in one branch: 20 Ω + 120 mH. Reactances in ohms: j32 Ω for a coil, -j50 Ω for a capacitor. "
    "Supply: a voltage, or the supply current if you know it, such as 2.5 A."
)
REFERENCE = "the voltage"
SUM_WORD: Phrase = ("supply current",)
AMPERES = SumWords("current", "currents", "amperes", closes="the currents cancel and no arrow is drawn",
                   partial="This is the current of branches {one} and {other} together.")  # fmt: skip
VOLTS = SumWords("voltage", "voltages", "volts")
WHY_VOLTAGE: Phrase = ("Parallel branches have the same voltage, so all angles are measured from it.",)
TASK = "Calculate each branch current, then find the supply current by drawing"
GUESS_KNOWN = "the voltage"
"""What is estimated where the supply current is known."""
CURRENT, VOLTAGE, ADMITTANCE, IMPEDANCE = "Supply current", "Voltage", "Admittance", "impedance"
POWER, RESONANCE, NEAREST_RESONANCE, DYNAMIC = (
    "active power", "resonance at", "nearest resonance at", "impedance at resonance",
)  # fmt: skip
CALCULATED = "By calculation"
HEAD = ("branch", "R", "X", "Z", "I", "φ", "I cos φ", "I sin φ")


def task_known(current: str) -> str:
    """What to do where the supply current is known."""
    return f"Calculate the voltage and each branch current. Draw the currents: their sum must be {current}"


def label(number: int) -> str:
    """Label of a branch's field."""
    return f"Branch {number}"


def values_text(branches: str, supply: str, frequency: str) -> str:
    """The given values as text."""
    return f"{branches} in parallel on {supply}, {frequency}"


def values_text_with_current(branches: str, current: str, frequency: str) -> str:
    """The values in words, if the supply current is known."""
    return f"{branches} in parallel, supply current {current}, {frequency}"


NO_BRANCHES = "Nothing is connected. Enter at least one branch, such as 24 Ω, or 20 Ω + 120 mH, or 47 µF."
"""The form has no branches."""


def short_circuit(label: str) -> str:
    """A branch without impedance."""
    return (
        f"{label} is a short circuit: at this frequency it has no resistance and no reactance. Enter a resistance, or "
        "leave it empty."
    )


def no_voltage_possible(label: str) -> str:
    """The branches take almost none of the known current."""
    return (
        f"{label}: at this frequency the branches together take almost no current. The current typed would need a "
        "voltage without limit. Enter the voltage instead, or add a resistance."
    )


def resonates(frequency: str, ohms: str) -> Phrase:
    """Resonance with losses: frequency, and impedance there."""
    return say((
        "Resonance at {frequency}: there the supply current and the voltage are in phase, and the circuit acts like a "
        "resistor of {ohms}."
    ), frequency=frequency, ohms=ohms)  # fmt: skip


def resonates_without_loss(frequency: str) -> Phrase:
    """Resonance of a circuit without resistance."""
    return say((
        "Resonance at {frequency}: there the branch currents add to zero, and without resistance the supply current "
        "is zero."
    ), frequency=frequency)  # fmt: skip


def resonance_text(frequency: str, ohms: str) -> str:
    """One of several resonances: its frequency, and the impedance there, or "" without losses."""
    return f"{frequency} ({ohms})" if ohms else frequency


def several_resonances(listed: str, nearest: str) -> Phrase:
    """All resonances of a circuit, and the one nearest to the supply frequency."""
    return say((
        "The circuit has several resonances: {listed}. The results show the one nearest to the supply frequency, "
        "{nearest}."
    ), listed=listed, nearest=nearest)  # fmt: skip


def branch_resonates(branch: str, frequency: str, ohms: str) -> Phrase:
    """A branch whose own coil and capacitor cancel, and its resistance then; "" for none."""
    then = "its impedance is then only its resistance, {ohms}." if ohms else "it is then almost a short circuit."
    return say("Branch {branch} alone is in resonance at {frequency}: " + then,
               branch=branch, frequency=frequency, ohms=ohms)  # fmt: skip


RESISTANCE_TOO_LARGE: Phrase = say("This circuit has no resonance: the resistance of the coil is too large.")
"""A coil and a capacitor in parallel that do not resonate."""


def branch_above_supply(name: Phrase, times: str) -> Phrase:
    """A branch current larger than the supply current."""
    return say("{name} is {times} times the supply current: the cable and fuse of this branch must be rated for it.",
               name=name, times=times)  # fmt: skip


def plain_sum_check(plain_sum: str, supply_current: str) -> Phrase:
    """The supply current is at most the sum of the sizes."""
    return say((
        "Check: the branch currents added as plain numbers give {plain_sum}. The supply current, {supply_current}, is "
        "never more than that."
    ),
               plain_sum=plain_sum, supply_current=supply_current)  # fmt: skip


REACTANCES_INTRO: Phrase = say("Reactances at the supply frequency:")
"""Before the reactances."""


VOLTAGE_INTRO: Phrase = say("The voltage, from the supply current and the admittance (calculated below):")
"""Before the branches, if the supply current is known."""


def one_branch(number: str) -> Phrase:
    """Before the lines of one branch."""
    return say("Branch {number} by itself:", number=number)


TABLE_INTRO: Phrase = say(
    "Each current has a component in phase with the voltage, I cos φ, and one at right angles to it, I sin φ "
    "(lagging: +):"
)
"""Before the table of all branches."""


SUMS_INTRO: Phrase = say("Add the components, then use Pythagoras:")
"""Before the sums of the components."""


ADMITTANCE_INTRO: Phrase = say(
    "The same by admittance, Y = G + jB: add the conductances, and add the susceptances with their signs (coil −, "
    "capacitor +):"
)  # fmt: skip
"""Before the calculation by admittance."""


ANGLE_INTRO: Phrase = say("Power factor, and active, reactive and apparent power:")
"""Before power factor and powers."""


RESONANCE_INTRO: Phrase = say("Resonance of a coil with resistance in parallel with a capacitor:")
LOSSLESS_RESONANCE_INTRO: Phrase = say("Resonance of a coil in parallel with a capacitor:")
"""Before the formula for a coil and a capacitor."""


NUMERICAL_RESONANCE_INTRO: Phrase = say(
    "Resonance, where the susceptances of all branches add to zero (found numerically; there is no short formula):"
)
"""Before a resonance that has no short formula."""


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
