"""What the page of the parallel circuit says."""

from pycore.words.circuits import CAUTIONS as CIRCUIT_CAUTIONS
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Parallel circuit"
DESCRIPTION = (
    "Branches of resistors, coils and capacitors beside one another: each current on the common voltage, their sum, "
    "admittance and resonance."
)
SCENARIO = "Village hall: heater, fan motor, capacitor"
CAUTIONS = (
    "At resonance the currents in coil and capacitor can be many times the supply’s: cables and fuses of the branches "
    "must be chosen for those.",
    *CIRCUIT_CAUTIONS,
)
SUPPLY = "Supply"
HELP = (
    "In series within a branch: 20 Ω + 120 mH. Reactances in ohms: j32 Ω of a coil, -j50 Ω of a capacitor. The supply "
    "is a voltage, or the whole current if that is known: 2.5 A."
)
REFERENCE = "the voltage"
AMPERES = SumWords("current", "currents", "amperes", closes="the currents cancel and no arrow is drawn",
                   partial="Without {third} this would be the whole current.")  # fmt: skip
VOLTS = SumWords("voltage", "voltages", "volts")
WHY_VOLTAGE: Phrase = ("Side by side all branches have this one voltage, so all currents are counted from it.",)
TASK = "Find each branch current, then the whole current by drawing"
TASK_KNOWN = "Find the voltage and each current, then draw their sum"
CURRENT, VOLTAGE, ADMITTANCE, IMPEDANCE = "Whole current", "Voltage", "Admittance", "impedance"
POWER, RESONANCE, DYNAMIC = "active power", "resonance at", "impedance at resonance"
CALCULATED = "By calculation"
HEAD = ("branch", "R", "X", "Z", "I", "φ", "I cos φ", "I sin φ")


def label(number: int) -> str:
    """Label of a branch's field."""
    return f"Branch {number}"


def given(branches: str, supply: str, frequency: str) -> str:
    """The values in words."""
    return f"{branches} side by side on {supply}, {frequency}"


def given_current(branches: str, current: str, frequency: str) -> str:
    """The values in words, where the whole current is known."""
    return f"{branches} side by side, carrying {current} together, {frequency}"


def no_branches() -> str:
    """Nothing was given."""
    return "Nothing is connected. Give at least one branch, such as 24 Ω, or 20 Ω + 120 mH, or 47 µF."


def short(label: str) -> str:
    """A branch without impedance."""
    return (
        f"{label} is a short circuit: at this frequency it has neither resistance nor reactance. Give it a resistance, "
        "or leave it empty."
    )


def no_way(label: str) -> str:
    """A current that the branches do not take."""
    return (
        f"{label}: at this frequency the branches together take next to no current, so a given current would need a "
        "voltage without bound. Give the voltage instead, or a resistance."
    )


def resonates(frequency: str, ohms: str) -> Phrase:
    """Where the branches together are like a resistor."""
    return say("At {frequency} whole current and voltage are in phase: resonance. There the circuit is like a resistor "
               "of {ohms}.", frequency=frequency, ohms=ohms)  # fmt: skip


def resonates_without_loss(frequency: str) -> Phrase:
    """The same without any resistance."""
    return say("At {frequency} the branches exchange their currents among themselves: resonance. Without resistance "
               "they take none from the supply.", frequency=frequency)  # fmt: skip


def larger(name: Phrase, times: str) -> Phrase:
    """A branch current beyond the supply's."""
    return say("{name} is {times} times the whole current: its cable and fuse must stand that.",
               name=name, times=times)  # fmt: skip


def not_numbers(plain_sum: str, whole: str) -> Phrase:
    """The first sanity check."""
    return say("Check: the currents added as plain numbers give {plain_sum}, never less than the whole, {whole}.",
               plain_sum=plain_sum, whole=whole)  # fmt: skip


def too_small_to_draw(names: str) -> Phrase:
    """Currents below a millionth of the largest."""
    return say("{names}: less than a millionth of the largest, so no arrow is drawn for it.", names=names)


def reactances() -> Phrase:
    """What comes first."""
    return say("Reactances, at the circuit’s own frequency:")


def voltage_first() -> Phrase:
    """The voltage where the current was given."""
    return say("The voltage from the whole current and the admittance (worked out below):")


def one_branch(number: str) -> Phrase:
    """A branch by itself."""
    return say("Branch {number}, as if it were alone:", number=number)


def table() -> Phrase:
    """All branches."""
    return say("Each current has a part along the voltage, I cos φ, and one across it, I sin φ (lagging: +):")


def added() -> Phrase:
    """The two sums."""
    return say("Add the parts, then Pythagoras:")


def admittance() -> Phrase:
    """The same by admittances."""
    return say("The same by admittance, Y = G + jB: conductances add, and susceptances with their sign (a coil’s −, a "
               "capacitor’s +):")  # fmt: skip


def angle() -> Phrase:
    """Power factor and powers."""
    return say("Power factor, and active, reactive and apparent power:")


def resonance() -> Phrase:
    """The classic formula."""
    return say("Resonance of a coil with its resistance beside a capacitor:")


def resonance_found() -> Phrase:
    """Resonance of any branches."""
    return say("Resonance, where the susceptances of all branches cancel (found by trying, there is no short formula):")


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
