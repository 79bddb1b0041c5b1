"""What the page of the power triangle says."""

from pycore.words import cautions
from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Power triangle"
DESCRIPTION = (
    "Active, reactive and apparent power, and power factor correction: drawn as a triangle, with the capacitor for the "
    "power factor that you want."
)
SCENARIO = "Joinery workshop, saw and extractor on three phases"
CAUTIONS = (
    "Power-factor-correction capacitors keep a dangerous charge after the supply is off. Only competent people may "
    "work on them: switched off and isolated, with discharge resistors fitted and each capacitor proved dead.",
    cautions.COMPETENT_ON_CIRCUIT,
    f"{cautions.TEACHING_ONLY} {cautions.EXAMINING_BODY}",
)
LOAD, FACTOR, TARGET, VOLTAGE, PHASES = "Load", "Power factor", "Target", "Voltage", "Phases"
HELP = (
    "Load: active power (10 kW), apparent power (12 kVA), reactive power (5 kvar) or line current (20 A). Target: the "
    "power factor that you want; leave it empty for no correction. Voltage: for three phases, the voltage between "
    "lines."
)
PHASE_CHOICES = (("3", "three"), ("1", "one"))
REFERENCE = "active power"
SUM_WORD: Phrase = ("apparent power",)
WORDS = SumWords("power", "powers", "kVA, kW or kvar", closes="no power remains and no arrow is drawn",
                 on_the_way=("This is the triangle before the correction.",), alternates=False)  # fmt: skip
RESULT = "the apparent power"
GUESS = "the reactive power needed for the target"
TASK = "Find the apparent power by drawing"
TASK_TARGET = "Find the reactive power needed for the target, then draw the triangle before and after"
CORRECTION_POWER = {
    "capacitor": {1: "Capacitor", 3: "Three capacitors together"}, "coil": {1: "Coil", 3: "Three coils together"},
}  # fmt: skip
"""Labels of the correction's reactive power, by the number of phases."""
CAPACITY = {"": "capacitance", "delta": "each in delta", "star": "each in star"}
ACTIVE, REACTIVE, APPARENT, APPARENT_AFTER = "active power", "reactive power", "Apparent power", "apparent power after"
FACTOR_OUT, FACTOR_AFTER, ANGLE, CURRENT, CURRENT_AFTER = (
    "power factor", "power factor after", "phase angle", "line current", "line current after",
)  # fmt: skip
CALCULATED = "By calculation"


def bad_load(label: str, typed: str) -> str:
    """A load that cannot be read."""
    start = f"{label} is empty." if not typed else f"{label} cannot be read: {quoted(typed)}."
    return f"{start} Write 10 kW, or 12 kVA, or 5 kvar, or a line current such as 20 A."


def no_unit(label: str, typed: str) -> str:
    """A number without a unit."""
    return (
        f"{label} needs a unit: {quoted(typed)}. Write kW (active power), kVA (apparent power), kvar (reactive power) "
        "or A (line current)."
    )


def load_range(label: str, typed: str) -> str:
    """A load beyond what the page takes."""
    return f"{label} is out of range: {quoted(typed)}. Use 1 mW to 10 GW."


def no_load(label: str, reason: str) -> str:
    """The load cannot be calculated from this power; ``reason`` as in NoLoadError."""
    if reason == "active":
        return (
            f"{label}: at a power factor below 0.001, the load cannot be calculated from its active power. Enter it "
            "in kVA or kvar."
        )
    return (
        f"{label}: at a power factor of 1, or very close to 1, the load cannot be calculated from its reactive power. "
        "Enter it in kW or kVA."
    )


def angle_above_right(label: str, typed: str) -> str:
    """An angle above 90°."""
    return f"{label} is more than 90°: {quoted(typed)}. A load takes power, so its angle is from −90° to 90°."


def bad_target(label: str, typed: str) -> str:
    """A target that is not a power factor."""
    return (
        f"{label} is not a power factor: {quoted(typed)}. Write a number above 0 and up to 1, such as 0.95, or 0.95 "
        "lead. Leave it empty for no correction."
    )


def values_text(load: str, factor: str, target: str, supply: str) -> str:
    """The given values as text."""
    aim = f", to reach {target}" if target else ""
    return f"{load} at {factor}{aim}, on {supply}"


def question_text(load: str, factor: str, target: str, supply: str) -> str:
    """The same in sentences."""
    aim = f" Its power factor is to be corrected to {target}." if target else ""
    return f"A load takes {load} at a power factor of {factor}, from a supply of {supply}.{aim}"


def supply(volts: str, hertz: str, phases: int) -> str:
    """The supply in words."""
    return f"{volts}, {hertz}, " + ("three phases" if phases == 3 else "one phase")


def read_as_angle(number: str) -> Phrase:
    """A number above 1 in the field of the power factor."""
    return say("{number} was read as an angle of {number}°. A power factor is never more than 1: for 80 %, enter 0.8.",
               number=number)  # fmt: skip


def correction_needed(kind: str, amount: str, reached: str, phases: int) -> Phrase:
    """The reactive power that reaches the target, of one element or of three."""
    if phases == 3:
        return say("Three {kind}s with {amount} together change the power factor to {reached}.",
                   kind=kind, amount=amount, reached=reached)  # fmt: skip
    return say("A {kind} of {amount} changes the power factor to {reached}.", kind=kind, amount=amount, reached=reached)


CAPACITOR, COIL = "capacitor", "coil"


def target_already_reached(target: str) -> Phrase:
    """No correction is needed."""
    return say("The power factor is already {target} or better, so no correction is needed.", target=target)


NO_CORRECTION_POSSIBLE: Phrase = say(
    "The load takes no active power, or almost none, so its power factor cannot be corrected. A capacitor or coil of "
    "the same reactive power would leave no current at all."
)  # fmt: skip
"""The load takes no active power."""


COIL_NEEDED: Phrase = say("The load current leads, so a capacitor would make the power factor worse. A coil is needed.")
"""The load leads."""


def current_falls(before: str, after: str, share: str) -> Phrase:
    """How far the line current falls."""
    return say((
        "The line current falls from {before} to {after}, by {share}. The active power is the same, with less loss in "
        "the cables."
    ), before=before, after=after, share=share)  # fmt: skip


STAR_AND_DELTA: Phrase = say(
    "In star, each capacitor needs three times the capacitance that it needs in delta: its voltage is smaller by "
    "a factor of √3, and reactive power is proportional to the voltage squared."
)  # fmt: skip
"""Capacitors in star and in delta."""


APPARENT_POWER_CHECK: Phrase = say(
    "Check: apparent power is never less than active power. They are equal only at power factor 1."
)
"""Apparent power against active power."""


TRIANGLE_INTRO: Phrase = say("The three powers form a right-angled triangle:")
"""Before the power triangle."""


LINE_CURRENT_INTRO: Phrase = say("Line current:")
"""Before the line current."""


TARGET_INTRO: Phrase = say("Active power does not change. Reactive power falls to the value at the target:")
"""Before the correction."""


def other_side_intro(side: str) -> Phrase:
    """The correction to a target on the other side."""
    return say((
        "Active power does not change. The target is {side}, so its reactive power has the opposite sign (lagging +, "
        "leading −)."
    ), side=side)  # fmt: skip


LEADING_TRIANGLE_INTRO: Phrase = say(
    "The load current leads, so the angle and the reactive power are negative. The three powers form a "
    "right-angled triangle:"
)  # fmt: skip
"""Before the power triangle of a leading load."""


def apparent_power_line(name: Phrase, angle: str, factor: str) -> Phrase:
    """Angle and power factor of the apparent power."""
    return say("{name} at {angle}: power factor {factor}", name=name, angle=angle, factor=factor)


CAPACITORS_INTRO: dict[int, Phrase] = {
    1: say("The capacitor for that reactive power:"), 3: say("Each of three capacitors for that reactive power:"),
}  # fmt: skip
"""Before the capacitances, by the number of phases."""


POWERS_AFTER_INTRO: Phrase = say("Powers after correction:")
"""Before the powers after correction."""


def perpendicular(active: Phrase, sense: str) -> Phrase:
    """The line for the tips of all apparent powers, for a load without reactive power."""
    return say(
        "**Draw the perpendicular.** Protractor’s centre on the tip of {active}, zero line back along {active}. Mark "
        "90° {sense} and draw faintly in both directions.", active=active, sense=sense,
    )  # fmt: skip


def target_angle(active: Phrase, place: str, angle: str, sense: str) -> Phrase:
    """The angle of the target power factor."""
    return say(
        "**Mark the target angle.** Protractor’s centre on {place}, zero line along {active}. Mark {angle} {sense} and "
        "draw faintly to the perpendicular at the tip of {active}; extend it if necessary.",
        active=active, place=place, angle=angle, sense=sense,
    )  # fmt: skip


def target_on_active(active: Phrase) -> Phrase:
    """The target angle of power factor 1, which needs no protractor."""
    return say("**The target angle is 0°.** The new apparent power ends at the tip of {active}.", active=active)


SAME_ACTIVE_POWER: Phrase = say(
    "Active power does not change, so the tip of the apparent power stays on the perpendicular at the tip of P. The "
    "target angle comes from its cosine, the target power factor."
)


ON_PERPENDICULAR = "where the faint line meets the perpendicular"


def draw_correction(tag: Phrase, start: Phrase, end: Phrase | str) -> Phrase:
    """The reactive power of the correction, drawn between two tips."""
    return say("**Draw {tag}.** From {start} to {end}.", tag=tag, start=start, end=end)


def measure_correction(tag: Phrase, measured: Phrase) -> Phrase:
    """The reactive power of the correction, found by the drawing."""
    return say("**Measure {tag}.** Length: {measured}", tag=tag, measured=measured)


CORRECTION_WHY: Phrase = say("It brings the tip of the apparent power to the target angle.")
MEASURE_WHY: Phrase = say("This is the reactive power that you need: the drawing has found it.")


def finding_moves(tag: str, last: str, *, reactive: bool) -> tuple[str, ...]:
    """How a problem for easy reading finds the correction ``tag``, which starts at the tip of ``last``."""
    upright = () if reactive else ("Draw a thin line through the tip of P, at right angles to P.",)
    return (
        *upright,
        "Find the angle whose cosine is the target power factor. Mark it at the start, from P.",
        "Draw a thin line from the start through the mark to the line at right angles to P.",
        f"Draw {tag} from the tip of {last} to the point where the two lines cross. Put an arrowhead on it.",
        f"Measure {tag}. Use the scale to find its size. Write it in the table.",
    )


def target_sum(tag: Phrase, place: str, end: Phrase | str) -> Phrase:
    """The apparent power after the correction."""
    return say("**Draw {tag}.** From {place} to {end}.", tag=tag, place=place, end=end)


TARGET_SUM_WHY: Phrase = say("This is the triangle after the correction.")


def calculate_first(tag: Phrase) -> Phrase:
    """Before a construction that needs the reactive power of the correction beforehand."""
    return say("This construction needs {tag} first: calculate it, or find it tip to tail with P first.", tag=tag)


def current_rises(before: str, after: str) -> Phrase:
    """A correction that makes things worse."""
    return say((
        "The line current rises from {before} to {after}: this target overcorrects. The supply then carries more "
        "current than without the correction."
    ), before=before, after=after)  # fmt: skip


CAPACITANCE_TAGS = {"": Symbol("C"), "delta": Symbol("C", "delta"), "star": Symbol("C", "star")}
"""Symbols of the capacitors, by their connection."""


SHORT: dict[str, str] = {}
"""Mistakes of this calculator alone, in few words."""
