"""What the page of the power triangle says."""

from pycore.words.circuits import CAUTIONS as CIRCUIT_CAUTIONS
from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Power triangle"
DESCRIPTION = (
    "Active, reactive and apparent power drawn as a triangle, the power factor, and the capacitor that brings it to a "
    "target, on one phase or three."
)
SCENARIO = "Joinery workshop, saw and extractor on three phases"
CAUTIONS = (
    "Correction capacitors keep a dangerous charge after the supply is off: only competent people work on them, with "
    "discharge resistors in place and each one proved dead.",
    *CIRCUIT_CAUTIONS[1:],
)
LOAD, FACTOR, TARGET, VOLTAGE, PHASES = "Load", "Power factor", "Target", "Voltage", "Phases"
HELP = (
    "The load as active power 10 kW, apparent power 12 kVA, reactive power 5 kvar or line current 20 A. The target is "
    "the power factor to be reached; leave it empty for no correction. The voltage of three phases is that from line "
    "to line."
)
PHASE_CHOICES = (("3", "three"), ("1", "one"))
REFERENCE = "active power"
WORDS = SumWords("power", "powers", "kVA, kW or kvar", closes="no power is left and no arrow is drawn",
                 on_the_way=("This is the triangle before the correction.",))  # fmt: skip
RESULT = "the apparent power"
GUESS = "the reactive power that reaches the target"
TASK = "Find the apparent power by drawing"
TASK_TARGET = "Find the reactive power that reaches the target, then draw the triangle before and after"
CAPACITOR_POWER, COIL_POWER = "Capacitor", "Coil"
CAPACITY = {"": "capacitance", "delta": "each in delta", "star": "each in star"}
ACTIVE, REACTIVE, APPARENT, APPARENT_AFTER = "active power", "reactive power", "Apparent power", "apparent power after"
FACTOR_OUT, FACTOR_AFTER, ANGLE, CURRENT, CURRENT_AFTER = (
    "power factor", "power factor after", "phase angle", "line current", "line current after",
)  # fmt: skip
CALCULATED = "By calculation"


def bad_load(label: str, given: str) -> str:
    """A load that cannot be read."""
    start = f"{label} is empty." if not given else f"{label} cannot be read: {quoted(given)}."
    return f"{start} Write 10 kW, or 12 kVA, or 5 kvar, or a line current such as 20 A."


def no_unit(label: str, given: str) -> str:
    """A number whose unit would decide."""
    return f"{label} needs its unit: {quoted(given)}. Write kW for active power, kVA for apparent, kvar or A."


def load_range(label: str, given: str) -> str:
    """A load beyond what the page takes."""
    return f"{label} is out of range: {quoted(given)}. Accepted is 1 mW to 10 GW."


def no_load(label: str, reason: str) -> str:
    """Powers that fix no load."""
    if reason == "active":
        return (
            f"{label}: at a power factor below 0.001 there is no active power to tell the load by. Give it in kVA or "
            "kvar instead."
        )
    return (
        f"{label}: at a power factor of 1, or so near it, there is no reactive power to tell the load by. Give it in "
        "kW or kVA instead."
    )


def gives_power(label: str, given: str) -> str:
    """An angle beyond a right one."""
    return f"{label} is beyond 90°: {quoted(given)}. A load takes power: its angle lies between −90° and 90°."


def bad_target(label: str, given: str) -> str:
    """A target that is no power factor."""
    return (
        f"{label} is no power factor: {quoted(given)}. Write a number above 0 and up to 1, such as 0.95, or 0.95 lead. "
        "Leave it empty for no correction."
    )


def given(load: str, factor: str, target: str, supply: str) -> str:
    """The values in words."""
    aim = f", to reach {target}" if target else ""
    return f"{load} at {factor}{aim}, on {supply}"


def supply(volts: str, hertz: str, phases: int) -> str:
    """The supply in words."""
    return f"{volts}, {hertz}, " + ("three phases" if phases == 3 else "one phase")


def needs(kind: str, amount: str, target: str) -> Phrase:
    """What reaches the target."""
    return say("A {kind} of {amount} brings the power factor to {target}.", kind=kind, amount=amount, target=target)


CAPACITOR, COIL = "capacitor", "coil"


def reached(target: str) -> Phrase:
    """Nothing is needed."""
    return say("The load’s power factor is {target} or better already: no correction is needed.", target=target)


def impossible() -> Phrase:
    """No active power."""
    return say("The load takes no active power, or next to none, so no correction gives it a power factor: a capacitor "
               "or coil of its own reactive power would leave nothing.")  # fmt: skip


def leading() -> Phrase:
    """A capacitor would make it worse."""
    return say("The load leads: a capacitor would make its power factor worse. What it needs is a coil.")


def current_falls(before: str, after: str, share: str) -> Phrase:
    """What the correction is for."""
    return say("The line current falls from {before} to {after}, by {share}: the same active power with less loss in "
               "the cables.", before=before, after=after, share=share)  # fmt: skip


def three_times() -> Phrase:
    """Star and delta."""
    return say("In star each capacitor must be three times as large as in delta: its voltage is √3 times smaller, and "
               "reactive power goes with the square.")  # fmt: skip


def never_less() -> Phrase:
    """The first sanity check."""
    return say("Check: apparent power is never less than active power, and the two are equal at power factor 1 only.")


def from_given() -> Phrase:
    """The triangle."""
    return say("The three powers form a right triangle:")


def line_current() -> Phrase:
    """The current."""
    return say("Line current:")


def to_target() -> Phrase:
    """The correction."""
    return say("Active power stays; reactive power falls to what the target leaves:")


def to_other_side(side: str) -> Phrase:
    """The correction to a target on the other side."""
    return say("Active power stays. The target is {side}, on the other side: its reactive power has the other sign "
               "(lagging +, leading −).", side=side)  # fmt: skip


def leads_negative() -> Phrase:
    """The triangle of a load that leads."""
    return say("The load leads, so its angle and its reactive power are below zero. The three powers form a right "
               "triangle:")  # fmt: skip


def stands_at(name: Phrase, angle: str, factor: str) -> Phrase:
    """Where the apparent power stands, lagging upwards."""
    return say("{name} at {angle}: power factor {factor}", name=name, angle=angle, factor=factor)


def capacitors() -> Phrase:
    """Farads."""
    return say("The capacitor for that reactive power:")


def after() -> Phrase:
    """The triangle after."""
    return say("What is left to the supply:")


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
