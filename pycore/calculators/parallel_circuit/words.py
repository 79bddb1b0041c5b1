"""What the page of the parallel circuit says."""

from pycore.words.circuits import CAUTIONS as CIRCUIT_CAUTIONS
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Parallel circuit"
DESCRIPTION = (
    "Resistors, coils and capacitors in parallel: each branch current with the common voltage as reference, their "
    "sum, admittance and resonance."
)
SCENARIO = "Village hall: heater, fan motor, capacitor"
CAUTIONS = (
    "At resonance, the currents in coil and capacitor can be many times the supply current: the cables and fuses of "
    "the branches must be chosen for those currents.",
    *CIRCUIT_CAUTIONS,
)
SUPPLY = "Supply"
HELP = (
    "Elements in series in one branch: 20 Ω + 120 mH. Reactances in ohms: j32 Ω for a coil, -j50 Ω for a capacitor. "
    "Supply: a voltage, or the supply current if you know it, such as 2.5 A."
)
REFERENCE = "the voltage"
AMPERES = SumWords("current", "currents", "amperes", closes="the currents cancel and no arrow is drawn",
                   partial="This would be the supply current without {third}.")  # fmt: skip
VOLTS = SumWords("voltage", "voltages", "volts")
WHY_VOLTAGE: Phrase = ("Parallel branches have the same voltage, so all angles are measured from it.",)
TASK = "Calculate each branch current, then find the supply current by drawing"
TASK_KNOWN = "Find the voltage and each current, then draw their sum"
CURRENT, VOLTAGE, ADMITTANCE, IMPEDANCE = "Supply current", "Voltage", "Admittance", "impedance"
POWER, RESONANCE, DYNAMIC = "active power", "nearest resonance at", "impedance at resonance"
CALCULATED = "By calculation"
HEAD = ("branch", "R", "X", "Z", "I", "φ", "I cos φ", "I sin φ")


def label(number: int) -> str:
    """Label of a branch's field."""
    return f"Branch {number}"


def given(branches: str, supply: str, frequency: str) -> str:
    """The values in words."""
    return f"{branches} in parallel on {supply}, {frequency}"


def given_current(branches: str, current: str, frequency: str) -> str:
    """The values in words, where the whole current is known."""
    return f"{branches} in parallel, supply current {current}, {frequency}"


def no_branches() -> str:
    """Nothing was given."""
    return "Nothing is connected. Enter at least one branch, such as 24 Ω, or 20 Ω + 120 mH, or 47 µF."


def short(label: str) -> str:
    """A branch without impedance."""
    return (
        f"{label} is a short circuit: at this frequency it has no resistance and no reactance. Enter a resistance, or "
        "leave it empty."
    )


def no_way(label: str) -> str:
    """A current that the branches do not take."""
    return (
        f"{label}: at this frequency the branches together take almost no current, so the given current would need an "
        "unlimited voltage. Enter the voltage instead, or add a resistance."
    )


def resonates(frequency: str, ohms: str) -> Phrase:
    """Where the branches together are like a resistor."""
    return say((
        "Resonance at {frequency}: there the supply current and the voltage are in phase, and the circuit acts like a "
        "resistor of {ohms}. If there are several resonances, this is the one nearest to the supply frequency."
    ), frequency=frequency, ohms=ohms)  # fmt: skip


def resonates_without_loss(frequency: str) -> Phrase:
    """The same without any resistance."""
    return say((
        "Resonance at {frequency}: there the branch currents add to zero, and without resistance the supply current "
        "is zero. If there are several resonances, this is the one nearest to the supply frequency."
    ), frequency=frequency)  # fmt: skip


def larger(name: Phrase, times: str) -> Phrase:
    """A branch current beyond the supply's."""
    return say("{name} is {times} times the supply current: the cable and fuse of this branch must be rated for it.",
               name=name, times=times)  # fmt: skip


def not_numbers(plain_sum: str, whole: str) -> Phrase:
    """The first sanity check."""
    return say((
        "Check: the branch currents added as plain numbers give {plain_sum}. The supply current, {whole}, is never "
        "more than that."
    ),
               plain_sum=plain_sum, whole=whole)  # fmt: skip


def too_small_to_draw(names: str) -> Phrase:
    """Currents below a millionth of the largest."""
    return say("{names}: less than a millionth of the largest, so there is no arrow.", names=names)


def reactances() -> Phrase:
    """What comes first."""
    return say("Reactances at the supply frequency:")


def voltage_first() -> Phrase:
    """The voltage where the current was given."""
    return say("The voltage, from the supply current and the admittance (calculated below):")


def one_branch(number: str) -> Phrase:
    """A branch by itself."""
    return say("Branch {number} by itself:", number=number)


def table() -> Phrase:
    """All branches."""
    return say(
        "Each current has a component in phase with the voltage, I cos φ, and one at right angles to it, I sin φ "
        "(lagging: +):"
    )


def added() -> Phrase:
    """The two sums."""
    return say("Add the components, then use Pythagoras:")


def admittance() -> Phrase:
    """The same by admittances."""
    return say(
        "The same by admittance, Y = G + jB: add the conductances, and add the susceptances with their signs (coil −, "
        "capacitor +):"
    )  # fmt: skip


def angle() -> Phrase:
    """Power factor and powers."""
    return say("Power factor, and active, reactive and apparent power:")


def resonance() -> Phrase:
    """The classic formula."""
    return say("Resonance of a coil with resistance in parallel with a capacitor:")


def resonance_found() -> Phrase:
    """Resonance of any branches."""
    return say(
        "Nearest resonance, where the susceptances of all branches add to zero (found by numerical search; there is "
        "no short formula):"
    )


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
