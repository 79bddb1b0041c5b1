"""The words of the recording sheet for a training rig."""

from dataclasses import dataclass

from pycore.words.phrase import Symbol, say

SLUG = "rig-record"
TITLE = "Recording sheet for the rig"
LEAD = "A sheet to print and fill in: safety checks first, then repeated readings in a fixed order."
DESCRIPTION = "A sheet to print for readings at a training rig: safety checks, meter, readings, three answers."
TOPIC = "Topic"
REPEATS = "Readings of each quantity"
REPEAT_SETS = (("3", "3 times"), ("4", "4 times"), ("5", "5 times"))
REPEAT_HELP = (
    "Repeated readings show their scatter. Take at least three: even then the scatter is only a rough estimate."
)

FIRST = "Before you take readings"
CHECKS = (
    "A competent person is with us and has allowed us to start.",
    "The rig is made for this work. We know where its emergency stop is.",
    "Meter, jaw and leads are undamaged and of the right measurement category.",
    "The voltage tester was proved before use and will be proved again after use.",
)
STOP = "If anything is damaged, hot, wet or strange: hands off, stop the rig, call the supervisor."
INSTRUMENT = "Instrument"
CELLS = (("instrument", 0.36), ("number", 0.22), ("range", 0.18), ("value of one digit", 0.24))
LOWER_CELLS = (("limit: ± ( ____ % + ____ digits )", 0.36), ("rig", 0.22), ("date", 0.18), ("initials", 0.24))
MEAN, INITIALS = "mean", "initials"
AGREE = say("Do they agree?", number=Symbol("E", "n"))
AGREE_HELP = (
    "Find the difference of two answers. Divide it by the uncertainty (95 %) of that difference. For two independent "
    "answers it is √(U₁² + U₂²). Drawing and calculation share the same values: use the drawing’s uncertainty alone. "
    "Up to 1, the two agree. More than 1: look for a reason before you trust either."
)
AGREE_ROWS = ("meter and calculation", "drawing and calculation")
WHY = "If they do not agree: what could be the reason? Which reading would show it?"
CHECKED = "checked by the supervisor"


@dataclass(frozen=True, slots=True)
class RecordingSheet:
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
        return ("", f"answer in {self.unit}", f"± (95 %), {self.unit}", "source")

    @property
    def answer_rows(self) -> tuple[tuple[str, str], ...]:
        """The three answers, each with where it comes from."""
        return (("meter", self.meter), ("drawing", "measured; accuracy of the hand"), ("calculation", self.calculation))

    @property
    def agree_line(self) -> str:
        """Room for the difference of two answers over what both may be out by."""
        return f"difference _____ {self.unit}  ÷  uncertainty _____ {self.unit}  =  _____"


JAW = "One conductor in the jaw, jaw closed."
NEUTRAL_STAYS = "The neutral stays connected: it is never opened while the rig is live."
DISCHARGED = "Every capacitor was discharged through a resistor and proved dead before it was touched."


def three_answers_for(quantity: str) -> str:
    """The heading of the three answers."""
    return f"Three answers for {quantity}"


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
        f"{checks} checks to tick before any reading. The instrument. {repeats} readings of {'; '.join(columns)} in "
        f"order. Three answers for {answers}. Whether they agree, and space for the reason if they do not."
    )
