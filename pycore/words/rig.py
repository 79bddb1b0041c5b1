"""The words of the recording sheet for readings at a training rig."""

from dataclasses import dataclass

from pycore.words.phrase import Symbol, say

SLUG = "rig-record"
TITLE = "Recording sheet for the rig"
LEAD = "Checks first, then the topic's readings in order, repeated. To print and fill in."
DESCRIPTION = "A sheet to print for readings at a training rig: checks, instrument, repeated readings, three answers."
TOPIC = "Topic"
SHORT = "Checks first, readings in order, three answers."
REPEATS = "Readings of each"
REPEAT_SETS = (("3", "3 times"), ("4", "4 times"), ("5", "5 times"))
REPEAT_HELP = "Repeats show how far readings scatter. Three are the least that do."

FIRST = "Before any reading"
CHECKS = (
    "A competent person is with us and has said that we may start.",
    "The rig is made for this work. We know where its stop is.",
    "Meter, jaw and leads are undamaged and of the right measurement category.",
    "The tester was proved before use, and is proved again after it.",
)
STOP = "Anything damaged, warm, wet or unexpected: hands off, stop the rig, call the supervisor."
INSTRUMENT = "Instrument"
CELLS = (("instrument", 0.36), ("number", 0.22), ("range", 0.18), ("one digit is", 0.24))
LOWER_CELLS = (("limit: ± ( ____ % + ____ digits )", 0.36), ("rig", 0.22), ("date", 0.18), ("initials", 0.24))
MEAN, INITIALS = "mean", "initials"
AGREE = say("Do they agree? {number}", number=Symbol("E", "n"))
AGREE_HELP = (
    "Take the difference of two answers and divide it by what both together may be out by. "
    "Up to 1 they agree. Over 1 something wants explaining: look for it before trusting either."
)
AGREE_ROWS = ("meter and calculation", "drawing and calculation")
WHY = "If not: what could explain it, and which reading would show it?"
CHECKED = "seen by the supervisor"


@dataclass(frozen=True, slots=True)
class Readings:
    """What is read for a topic: the ``topic`` (its page's folder) and its ``name``, the columns of the table, in which
    ``order`` they are read, what the three answers are of, and where each comes from; ``unit`` is the answers'.
    ``checks`` stand beside those of every rig."""

    topic: str
    name: str
    columns: tuple[str, ...]
    order: str
    answers: str
    unit: str
    meter: str
    calculation: str
    checks: tuple[str, ...] = ()

    @property
    def heading(self) -> str:
        """Of the table: its unit where all columns have one."""
        return "Readings in amperes" if "L1" in self.columns else "Readings"

    @property
    def answer_head(self) -> tuple[str, ...]:
        """The head of the three answers."""
        return ("", f"answer in {self.unit}", f"give or take, {self.unit}", "where from")

    @property
    def answer_rows(self) -> tuple[tuple[str, str], ...]:
        """The three answers, each with where it comes from."""
        return (("meter", self.meter), ("drawing", "measured; what a hand can do"), ("calculation", self.calculation))

    @property
    def agree_line(self) -> str:
        """Room for the difference of two answers over what both may be out by."""
        return f"difference _____ {self.unit}  ÷  out by _____ {self.unit}  =  _____"


_JAW = "One conductor in the jaw, jaw closed."
_NEUTRAL_STAYS = "The neutral stays connected: it is never opened while the rig is live."
_DISCHARGED = "Every capacitor was discharged through a resistor and proved dead before it was touched."
TOPICS = (
    Readings(
        "neutral-current", "Neutral current", ("L1", "L2", "L3", "N"),
        f"{_JAW} Always in this order: L1, L2, L3, N.", "the neutral", "A", "mean of N; limit of the meter",
        "from L1, L2, L3 and their limits", (_NEUTRAL_STAYS,),
    ),
    Readings(
        "series-circuit", "Series circuit", ("I, A", "V of R", "V of L", "V of C", "supply, V"),
        "Same supply throughout. Always in this order: current, each part, supply.", "the supply voltage", "V",
        "mean of supply; limit of the meter", "from the parts' values and I",
        (_DISCHARGED, "Parts and leads stand more than the supply: near resonance they get it."),
    ),
    Readings(
        "parallel-circuit", "Parallel circuit", ("V", "I₁, A", "I₂, A", "I₃, A", "whole I, A"),
        f"{_JAW} Always in this order: voltage, each branch, the whole.", "the whole current", "A",
        "mean of whole I; limit of the meter", "from the branches' values and V", (_DISCHARGED,),
    ),
    Readings(
        "power-triangle", "Power triangle", ("V", "I, A", "P, W", "I after, A"),
        "Always in this order: voltage, current, power; then the current with the capacitor connected.",
        "the apparent power before", "VA", "V × I (three phases: × √3)", "from P and the power factor stated",
        (_DISCHARGED, "The capacitor is connected with the supply off and proved dead."),
    ),
    Readings(
        "star-and-delta", "Star and delta", ("V lines", "I₁₂, A", "I₃₁, A", "I₁, A"),
        f"{_JAW} Always in this order: voltage between lines, both branches, the line.", "the line current I₁", "A",
        "mean of I₁; limit of the meter", "from I₁₂ and I₃₁ at their angles",
        ("Star or delta was connected with the supply off and proved dead, and seen by the supervisor.",),
    ),
    Readings(
        "harmonics-in-the-neutral", "Harmonics in the neutral", ("L1", "L2", "L3", "N", "N, order 3"),
        f"{_JAW} A meter for true r.m.s. values. Always in this order: L1, L2, L3, N.", "the neutral, all orders", "A",
        "mean of N; limit of the meter", "root of the squares of its orders", (_NEUTRAL_STAYS,),
    ),
    Readings(
        "two-wattmeters", "Two wattmeters", ("V lines", "I, A", "P₁, W", "P₂, W"),
        "Always in this order: voltage, current, both wattmeters with their signs.", "the apparent power", "VA",
        "√3 × V × I; limits of both meters", "from P₁ and P₂",
        ("Leads were connected with the supply off and proved dead; no current circuit is opened under load.",),
    ),
    Readings(
        "sequence-components", "Sequence components", ("L1", "L2", "L3", "N"),
        f"{_JAW} Always in this order: L1, L2, L3, N. Their angles: ____ , ____ , ____",
        "the neutral, three times I₀", "A", "mean of N; limit of the meter", "from L1, L2, L3 and their angles",
        (_NEUTRAL_STAYS,),
    ),
)  # fmt: skip
BY_TOPIC = {one.topic: one for one in TOPICS}


def answers_of(what: str) -> str:
    """The heading of the three answers."""
    return f"Three answers for {what}"


def reading(number: int) -> str:
    """A row of the table of readings."""
    return f"reading {number}"


def title(name: str) -> str:
    """The sheet's title with its topic."""
    return f"{TITLE}: {name}"


def page_title(name: str, paper: str) -> str:
    """What the sheet is called in a viewer and to a screen reader."""
    return f"{title(name)}, {paper}"


def description(checks: int, repeats: str, columns: tuple[str, ...], answers: str) -> str:
    """The sheet for someone who cannot see it."""
    return (
        f"{checks} checks to tick before any reading, the instrument, {repeats} readings of {'; '.join(columns)} in "
        f"order, three answers for {answers} and whether they agree, with room for what could explain a difference."
    )
