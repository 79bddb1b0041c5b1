"""What the page of the power triangle says."""

from pycore.words.circuits import CAUTIONS as CIRCUIT_CAUTIONS
from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say
from pycore.words.sums import SumWords

TITLE = "Power triangle"
DESCRIPTION = (
    "Active, reactive and apparent power drawn as a triangle, the power factor, and the capacitor that raises it to a "
    "target, for one phase or three phases."
)
SCENARIO = "Joinery workshop, saw and extractor on three phases"
CAUTIONS = (
    "Power-factor-correction capacitors keep a dangerous charge after the supply is off. Only competent people may "
    "work on them, with discharge resistors fitted and each capacitor proved dead.",
    *CIRCUIT_CAUTIONS[1:],
)
LOAD, FACTOR, TARGET, VOLTAGE, PHASES = "Load", "Power factor", "Target", "Voltage", "Phases"
HELP = (
    "Load: active power (10 kW), apparent power (12 kVA), reactive power (5 kvar) or line current (20 A). Target: the "
    "power factor that you want; leave it empty for no correction. Voltage: for three phases, the voltage between "
    "lines."
)
PHASE_CHOICES = (("3", "three"), ("1", "one"))
REFERENCE = "active power"
WORDS = SumWords("power", "powers", "kVA, kW or kvar", closes="no power remains and no arrow is drawn",
                 on_the_way=("This is the triangle before the correction.",))  # fmt: skip
RESULT = "the apparent power"
GUESS = "the reactive power needed for the target"
TASK = "Find the apparent power by drawing"
TASK_TARGET = "Find the reactive power needed for the target, then draw the triangle before and after"
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
    return (
        f"{label} needs a unit: {quoted(given)}. Write kW (active power), kVA (apparent power), kvar (reactive power) "
        "or A (line current)."
    )


def load_range(label: str, given: str) -> str:
    """A load beyond what the page takes."""
    return f"{label} is out of range: {quoted(given)}. Use 1 mW to 10 GW."


def no_load(label: str, reason: str) -> str:
    """Powers that fix no load."""
    if reason == "active":
        return (
            f"{label}: at a power factor below 0.001, the load cannot be calculated from its active power. Enter it "
            "in kVA or kvar."
        )
    return (
        f"{label}: at a power factor of 1, or very close to 1, the load cannot be calculated from its reactive power. "
        "Enter it in kW or kVA."
    )


def gives_power(label: str, given: str) -> str:
    """An angle beyond a right one."""
    return f"{label} is more than 90°: {quoted(given)}. A load takes power, so its angle is from −90° to 90°."


def bad_target(label: str, given: str) -> str:
    """A target that is no power factor."""
    return (
        f"{label} is not a power factor: {quoted(given)}. Write a number above 0 and up to 1, such as 0.95, or 0.95 "
        "lead. Leave it empty for no correction."
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
    return say("A {kind} of {amount} changes the power factor to {target}.", kind=kind, amount=amount, target=target)


CAPACITOR, COIL = "capacitor", "coil"


def reached(target: str) -> Phrase:
    """Nothing is needed."""
    return say("The power factor is already {target} or better, so no correction is needed.", target=target)


def impossible() -> Phrase:
    """No active power."""
    return say(
        "The load takes no active power, or almost none, so its power factor cannot be corrected: a capacitor or coil "
        "of the same reactive power would leave no current at all."
    )  # fmt: skip


def leading() -> Phrase:
    """A capacitor would make it worse."""
    return say("The load current leads, so a capacitor would make the power factor worse. A coil is needed.")


def current_falls(before: str, after: str, share: str) -> Phrase:
    """What the correction is for."""
    return say((
        "The line current falls from {before} to {after}, by {share}. The active power is the same, with less loss in "
        "the cables."
    ), before=before, after=after, share=share)  # fmt: skip


def three_times() -> Phrase:
    """Star and delta."""
    return say(
        "In star, each capacitor needs three times the capacitance that it needs in delta: its voltage is smaller by "
        "a factor of √3, and reactive power is proportional to the voltage squared."
    )  # fmt: skip


def never_less() -> Phrase:
    """The first sanity check."""
    return say("Check: apparent power is never less than active power. They are equal only at power factor 1.")


def from_given() -> Phrase:
    """The triangle."""
    return say("The three powers form a right-angled triangle:")


def line_current() -> Phrase:
    """The current."""
    return say("Line current:")


def to_target() -> Phrase:
    """The correction."""
    return say("Active power does not change. Reactive power falls to the value at the target:")


def to_other_side(side: str) -> Phrase:
    """The correction to a target on the other side."""
    return say((
        "Active power does not change. The target is {side}, so its reactive power has the opposite sign (lagging +, "
        "leading −)."
    ), side=side)  # fmt: skip


def leads_negative() -> Phrase:
    """The triangle of a load that leads."""
    return say(
        "The load current leads, so the angle and the reactive power are negative. The three powers form a "
        "right-angled triangle:"
    )  # fmt: skip


def stands_at(name: Phrase, angle: str, factor: str) -> Phrase:
    """Where the apparent power stands, lagging upwards."""
    return say("{name} at {angle}: power factor {factor}", name=name, angle=angle, factor=factor)


def capacitors() -> Phrase:
    """Farads."""
    return say("The capacitor for that reactive power:")


def after() -> Phrase:
    """The triangle after."""
    return say("Powers after correction:")


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
