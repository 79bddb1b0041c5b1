"""Lesson plans as data, one for each topic: what is done when, what is printed, what to listen for.

Braces stand for what the topic's own page says of its example: {values}, {answer}, {angle}, {length}, {scale}, and
every result by its name ({voltage_2}); with ``exit_`` before the name, of the values of the exit question. Each
topic's plan is `PLAN` in its room's `teaching.py`.
"""

from dataclasses import dataclass

SLUG, TITLE = "lesson-plan", "Lesson plans"
LEAD = (
    "One lesson for each topic: times, what to print, and typical mistakes. The values are the example values of the "
    "topic’s page."
)
DESCRIPTION = (
    "A lesson plan to print for each topic: from the starter to the exit question."
)
COVER_SLUG, COVER_TITLE = "cover-lesson", "Cover lessons"
LEAD_ONE = "With times, what to print, and typical mistakes. The values are the example values of the topic’s page."
ONE, COVER_ONE = "Lesson plan", "Cover lesson"
COVER_LEAD = (
    "The same lesson for a colleague who is not an electrician. It has what to say, what to hand out, the answers, "
    "and when to stop."
)
COVER_DESCRIPTION = "A lesson to print for each topic, for a cover teacher who is not an electrician."
PAGES = ((SLUG, TITLE), (COVER_SLUG, COVER_TITLE))
COVER_DEMONSTRATION = (
    "Open the lesson view. Press the arrow key for each move and read its sentence aloud. 15 minutes."
)
"""What a cover teacher does in the demonstration."""


@dataclass(frozen=True, slots=True)
class LessonStage:
    """One part of a lesson: its name, its minutes, and what is done."""

    name: str
    minutes: int
    does: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Handout:
    """What is printed or opened: what it is, the page's folder, and the form values that it opens with."""

    name: str
    slug: str
    values: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class LessonPlan:
    """One topic's lesson. ``listen`` are keys of the catalogue of mistakes; ``exit_values`` the form values, beside the
    example's, whose results the exit question asks for."""

    slug: str
    aim: str
    parts: tuple[LessonStage, ...]
    handouts: tuple[Handout, ...]
    listen: tuple[str, ...]
    cover_says: tuple[str, ...]
    cover_stops: tuple[str, ...]
    cover_handouts: tuple[Handout, ...]
    exit_values: tuple[tuple[str, str], ...] = ()
    of_lines: bool = False
    """Whether its phasors are those of three lines, and are called so."""


PROTRACTOR = Handout("Reading a protractor", "reading-a-protractor")


def handouts_of(slug: str, *more: Handout) -> tuple[Handout, ...]:
    """What a lesson of a topic prints and opens, with more of its own."""
    return (
        Handout("Lesson view with these values", slug, (("view", "lesson"), ("step", "1"))),
        Handout("Problem sheet, two phasors drawn", slug, (("sheet", "problem"), ("start", "two"))),
        Handout("Problem sheet, starting point only", slug, (("sheet", "problem"),)),
        Handout("Problem sheet for easy reading", slug, (("sheet", "problem"), ("print", "easy"))),
        Handout("Problem sheet in large print", slug, (("sheet", "problem"), ("print", "page"))),
        Handout("Overlay for marking", slug, (("sheet", "overlay"),)),
        *more,
        Handout("Class set with key", "class-set", (("topic", slug), ("tier", "core"))),
        PROTRACTOR,
        Handout("Ruler and protractor to cut out", "ruler-and-protractor"),
    )


def rig_of(slug: str) -> Handout:
    """The recording sheet for a topic's readings at the rig."""
    return Handout("Recording sheet for the rig", "rig-record", (("topic", slug),))


def cover_handouts_of(slug: str) -> tuple[Handout, ...]:
    """What a cover teacher hands out, and has for marking."""
    return (
        Handout("Lesson view with these values", slug, (("view", "lesson"), ("step", "1"))),
        Handout("Problem sheet, one for each learner", slug, (("sheet", "problem"), ("start", "two"))),
        Handout("Finished drawing, for you", slug),
        Handout("Overlay, for you: lay it on a drawing to check it", slug, (("sheet", "overlay"),)),
        PROTRACTOR,
    )


def cover_stops(*own: str) -> tuple[str, ...]:
    """Where a cover teacher stops: no live work, then what this topic tempts to, then what is kept for later."""
    return (NO_ELECTRICS, *own, QUESTIONS, KEEP_BOTH)


PRINTS, LISTEN, CARE, METHOD = "Print or open", "Typical mistakes", "Safety", "Which method"
COVER_SAY, COVER_HAND, COVER_KEY, COVER_STOP = "Say and do", "Hand out", "The answers", "When to stop"
ACCEPTED = (
    "Examining bodies differ in their rules for the method, for angles and for rounding. Ask yours before the lesson "
    "and tell the class."
)
KEY_HEAD = (("what",), ("answer",))
KEY_ROWS = (
    ("values", "values"), ("", "answer"), ("the drawing", "angle"),
    ("length on the sheet", "length"), ("scale", "scale"),
)  # fmt: skip
BODY = "examining body"
"""What the reminder of the method is told by: it has a part of its own."""
KEY_LIMIT = (
    "A careful drawing is within {tolerance}. A larger difference is not always wrong: ask the learner to measure the "
    "angles again."
)
QUESTIONS = (
    "Do not answer questions about real installations, cable sizes or wiring rules. Write them down for the lecturer."
)
KEEP_BOTH = "If two answers differ and you cannot see why, keep both drawings for the lecturer."
NO_ELECTRICS = "No meters, no rig and no live measurements in this lesson: pencil and paper only."
WITH_YOU = "You need no electrical knowledge: the lesson view shows and explains each move of ruler and protractor."


def part_heading(name: str, minutes: int) -> str:
    """A part of a lesson with its time."""
    return f"{name}, {minutes} minutes"


OTHERS = "Lessons of the other topics"
TO_TOPIC = "The page of this topic"


def page_title(title: str, topic: str) -> str:
    """A page with the lesson of one topic."""
    return f"{title}: {topic}"


def page_description(topic: str) -> str:
    """One sentence on such a page."""
    return f"A lesson to print on {topic} with values, answers and typical mistakes."


def topic_heading(title: str, minutes: int) -> str:
    """A lesson's topic with its whole time."""
    return f"{title}: {minutes} minutes"
