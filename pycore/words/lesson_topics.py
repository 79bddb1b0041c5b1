"""Every topic's lesson, in the order of the course: a further topic adds its plan here."""

from pycore.words.lesson_circuits import ADD, PARALLEL, POWER, SERIES, STAR_DELTA
from pycore.words.lesson_plans import COVER_ONE, COVER_SLUG, NEUTRAL, ONE, SLUG, LessonPlan, page_title
from pycore.words.lesson_three_phase import HARMONICS, OPEN_NEUTRAL, SEQUENCE, WATTMETERS

PLANS: tuple[LessonPlan, ...] = (
    NEUTRAL, ADD, SERIES, PARALLEL, POWER, STAR_DELTA, HARMONICS, OPEN_NEUTRAL, WATTMETERS, SEQUENCE,
)  # fmt: skip


def folder(slug: str, plan: LessonPlan) -> str:
    """The folder of a topic's page: the first topic has the name alone."""
    return slug if plan is PLANS[0] else f"{slug}-{plan.slug}"


def lessons_of(topic: str, title: str) -> tuple[tuple[str, str], ...]:
    """Folder and title of a topic's plan and cover lesson; none where it has none, or where it is the first."""
    kinds = ((SLUG, ONE), (COVER_SLUG, COVER_ONE))
    return tuple(
        (folder(slug, plan), page_title(kind, title))
        for plan in PLANS[1:] if plan.slug == topic for slug, kind in kinds
    )  # fmt: skip
