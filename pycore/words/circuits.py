"""Words that all circuits share: elements as typed, power factor."""

from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say

LAGGING, LEADING = "lagging", "leading"
FREQUENCY = "Frequency"
ANGLE, FACTOR = "phase angle", "power factor"
EXAMPLES = {"Ω": "10 Ω, or 1.5 kΩ", "H": "0.1 H, or 100 mH, or its reactance, such as 31.4 Ω",
            "F": "100 µF, or its reactance, such as 31.8 Ω",
            "": "24 Ω, or 10 Ω + 50 mH, or 100 µF, or j32 Ω"}  # fmt: skip
KINDS = {"R": "resistances", "L": "inductances or inductive reactances", "C": "capacitances or capacitive reactances"}


def bad_element(label: str, typed: str, bare: str) -> str:
    """A text that is not an element."""
    return f"{label} cannot be read: {quoted(typed)}. Write {EXAMPLES[bare]}. For several, put + between them."


def other_kind(label: str, typed: str, only: str) -> str:
    """An element that belongs in another field."""
    return f"{label} takes {KINDS[only]}: {quoted(typed)} belongs in another field."


def no_capacitance(label: str, typed: str) -> str:
    """A capacitor of 0 F."""
    return (
        f"{label} is zero: {quoted(typed)}. A capacitor of 0 F carries no current. If there is no capacitor, leave "
        "the field empty."
    )


def element_range(label: str, typed: str, least: str, most: str, example: str) -> str:
    """An element beyond what the page takes."""
    return f"{label} is out of range: {quoted(typed)}. Use {least} to {most}, for example {example}."


def too_many(label: str, most: int) -> str:
    """More elements than a sheet shows."""
    return f"{label}: at most {most} elements fit on a sheet. Combine elements of the same kind first."


NO_ELEMENTS = "The circuit is empty. Enter at least one resistor, coil or capacitor."


def accepted_supply(example: str) -> str:
    """What a supply may look like."""
    return f"Write a voltage, such as {example}, or a current if you know it, such as 2.5 A."


def bad_supply(label: str, typed: str, example: str) -> str:
    """A supply that is neither volts nor amperes."""
    if not typed:
        return f"{label} is empty. {accepted_supply(example)}"
    return f"{label} cannot be read: {quoted(typed)}. {accepted_supply(example)}"


def supply_range(label: str, typed: str, least: str, most: str) -> str:
    """A supply beyond what the page takes."""
    return f"{label} is out of range: {quoted(typed)}. Use {least} to {most}."


def more_than(number: str) -> str:
    """A number too large to state."""
    return f"more than {number}"


def factor_text(factor: str, side: str) -> str:
    """A power factor with its side: 0.8 lagging."""
    return f"{factor} {side}".strip()


def lags(first: Phrase, second: Phrase, angle: str, factor: str) -> Phrase:
    """The current lags its voltage."""
    return say("{first} lags {second} by {angle}: power factor {factor}.",
               first=first, second=second, angle=angle, factor=factor)  # fmt: skip


def leads(first: Phrase, second: Phrase, angle: str, factor: str) -> Phrase:
    """The current leads its voltage."""
    return say("{first} leads {second} by {angle}: power factor {factor}.",
               first=first, second=second, angle=angle, factor=factor)  # fmt: skip


def in_phase(first: Phrase, second: Phrase) -> Phrase:
    """Current and voltage are in phase."""
    return say("{first} and {second} are in phase: power factor 1.", first=first, second=second)


def almost_in_phase(first: Phrase, second: Phrase) -> Phrase:
    """The angle between current and voltage is too small to be written."""
    return say("{first} and {second} are almost in phase: power factor almost 1.", first=first, second=second)


def too_small_to_draw(names: str) -> Phrase:
    """Voltages or currents below a millionth of the largest."""
    return say("{names}: less than a millionth of the largest, so there is no arrow.", names=names)


def current_is(side: str) -> Phrase:
    """Whether the current lags or leads."""
    return say("The current is {side}: the {kind} has the larger effect.", side=side,
               kind="coil" if side == LAGGING else "capacitor")  # fmt: skip


ONE_OF = {"L": "a coil", "C": "a capacitor"}


def reactance_of(kind: str, ohms: str) -> str:
    """A coil or capacitor of so many ohms; ``kind`` as circuits/elements.py has it."""
    return f"{ONE_OF[kind]} of {ohms}"
