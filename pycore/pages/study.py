"""The study of hand drawing: the result of twenty thousand simulated drawings by each method, from this build."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.constructions.construction import FLAT_CROSSING
from pycore.pages.reading import DrawingRow, InlineDrawing, ReadingPage, Section
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plots import Cloud, cloud_page, course_page
from pycore.sums.answer import Grid, Paragraph
from pycore.words import evidence as words
from pycore.words.phrase import say


@dataclass(frozen=True, slots=True)
class StudyRow:
    """One method: half-width of 95 of 100 drawings (mm), to first order and simulated, the share of drawings inside the
    first-order ellipse, and the flattest crossing (degrees)."""

    title: str
    first_order: float
    simulated: float
    coverage: float
    flattest: float


@dataclass(frozen=True, slots=True)
class Study:
    """All numbers of the study: drawings for each method, the methods, half-width (%) by scale (A/cm), how often each
    is best, and some of the drawings' ends as they lie."""

    drawings: int
    scale: str
    ways: tuple[StudyRow, ...]
    by_scale: tuple[tuple[float, float], ...]
    problems: int
    best: tuple[tuple[str, float], ...]
    clouds: tuple[Cloud, ...]


def _rows(ways: Sequence[StudyRow]) -> tuple[tuple[tuple[str, ...], ...], ...]:
    return tuple(
        (
            (row.title,), (f"{row.first_order:.1f} mm",), (f"{row.simulated:.1f} mm",),
            (f"{100 * row.coverage:.1f} %",), (f"{row.flattest:.0f}°" if row.flattest < 90 else words.NONE_CROSS,),
        )
        for row in ways
    )  # fmt: skip


def study_page(study: Study) -> ReadingPage:
    """Return the page ``/accuracy/``; every number in its text is from this build."""
    sharp = [row for row in study.ways if row.flattest >= FLAT_CROSSING]
    flat = [row for row in study.ways if row.flattest < FLAT_CROSSING]
    lowest, highest = min(row.coverage for row in sharp), max(row.coverage for row in sharp)
    best, worst = min(study.ways, key=_width), max(study.ways, key=_width)
    blocks = [Paragraph(words.covered(f"{100 * lowest:.1f}", f"{100 * highest:.1f}"))]
    if flat:
        blocks.append(
            Paragraph(words.flat_note(flat[0].title, f"{flat[0].flattest:.0f}°", f"{100 * flat[0].coverage:.1f}"))
        )
    blocks.append(
        Paragraph(words.best_and_worst(best.title, f"{best.simulated:.1f}", worst.title, f"{worst.simulated:.1f}"))
    )
    first = Section(
        say(words.SCATTER),
        (
            Paragraph(words.simulated(f"{study.drawings:,}".replace(",", NO_BREAK_SPACE), study.scale)),
            Grid(words.SCATTER_HEAD, _rows(study.ways)),
            *blocks,
            Paragraph(words.DOTS),
            DrawingRow(tuple(
                InlineDrawing(cloud_page(cloud, words.SCATTER_ALTERNATIVE), f"cloud-{number}")
                for number, cloud in enumerate(study.clouds, start=1)
            )),
        ),
    )
    scales = Grid(
        words.SCALE_HEAD, tuple(((words.scale(f"{scale:g}"),), (f"{half:.1f} %",)) for scale, half in study.by_scale)
    )
    course = course_page(study.by_scale, words.ACROSS, words.UPWARDS, words.BY_SCALE, words.SCALE_ALTERNATIVE)
    second = Section(
        say(words.BY_SCALE),
        (Paragraph(words.SCALE_NOTE), scales, InlineDrawing(course, "by-scale")),
    )
    ranked = Grid(words.BEST_HEAD, tuple(((title,), (f"{100 * share:.0f} %",)) for title, share in study.best))
    third = Section(say(words.BEST), (Paragraph(words.best_note(str(study.problems))), ranked))
    return ReadingPage(
        words.STUDY_SLUG, words.STUDY_TITLE, words.STUDY_DESCRIPTION, words.STUDY_LEAD, (first, second, third)
    )


def _width(row: StudyRow) -> float:
    return row.simulated
