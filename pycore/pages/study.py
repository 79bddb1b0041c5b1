"""The study of hand drawing: what twenty thousand simulated drawings by each way show, in this build's numbers."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.pages.reading import AssetImage, ReadingPage, Section
from pycore.sums.answer import Grid, Paragraph
from pycore.words import evidence as words
from pycore.words.phrase import say


@dataclass(frozen=True, slots=True)
class StudyRow:
    """One way of drawing: half-width of 95 drawings in 100 (mm), to first order and as simulated, the share of
    drawings inside the first-order ellipse, and the flattest crossing (degrees)."""

    title: str
    first_order: float
    simulated: float
    coverage: float
    flattest: float


@dataclass(frozen=True, slots=True)
class Study:
    """All numbers of the study: drawings per way, the ways, half-width by scale, how often each is best."""

    drawings: int
    scale: str
    ways: tuple[StudyRow, ...]
    by_scale: tuple[tuple[str, float], ...]
    problems: int
    best: tuple[tuple[str, float], ...]
    figures: Mapping[str, str]


def _rows(ways: Sequence[StudyRow]) -> tuple[tuple[tuple[str, ...], ...], ...]:
    return tuple(
        (
            (way.title,), (f"{way.first_order:.1f} mm",), (f"{way.simulated:.1f} mm",),
            (f"{100 * way.coverage:.1f} %",), (f"{way.flattest:.0f}°" if way.flattest < 90 else words.NONE_CROSS,),
        )
        for way in ways
    )  # fmt: skip


def study_page(study: Study) -> ReadingPage:
    """The page ``/accuracy/``; every number in its text is that of this build."""
    sharp = [way for way in study.ways if way.flattest >= 15.0]
    flat = [way for way in study.ways if way.flattest < 15.0]
    lowest, highest = min(way.coverage for way in sharp), max(way.coverage for way in sharp)
    best, worst = min(study.ways, key=_width), max(study.ways, key=_width)
    said = [Paragraph(words.covered(f"{100 * lowest:.1f}", f"{100 * highest:.1f}"))]
    if flat:
        said.append(
            Paragraph(words.flat_found(flat[0].title, f"{flat[0].flattest:.0f}°", f"{100 * flat[0].coverage:.1f}"))
        )
    said.append(
        Paragraph(words.best_and_worst(best.title, f"{best.simulated:.1f}", worst.title, f"{worst.simulated:.1f}"))
    )
    first = Section(
        say(words.SCATTER),
        (
            Paragraph(words.simulated(str(study.drawings), study.scale)),
            Grid(words.SCATTER_HEAD, _rows(study.ways)),
            *said,
            AssetImage(study.figures["scatter"], words.SCATTER_ALTERNATIVE),
        ),
    )
    scales = Grid(words.SCALE_HEAD, tuple(((scale,), (f"{half:.1f} %",)) for scale, half in study.by_scale))
    second = Section(
        say(words.BY_SCALE),
        (Paragraph(words.scale_found()), scales, AssetImage(study.figures["scale"], words.SCALE_ALTERNATIVE)),
    )
    ranked = Grid(words.BEST_HEAD, tuple(((title,), (f"{100 * share:.0f} %",)) for title, share in study.best))
    third = Section(say(words.BEST), (Paragraph(words.best_found(str(study.problems))), ranked))
    return ReadingPage(
        words.STUDY_SLUG, words.STUDY_TITLE, words.STUDY_DESCRIPTION, words.study_lead(), (first, second, third)
    )


def _width(way: StudyRow) -> float:
    return way.simulated
