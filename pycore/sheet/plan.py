"""Chooses order, orientation and scale together: which construction fits a paper best."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.constructions.companions import accompanied
from pycore.constructions.construction import FLAT_CROSSING, Arm, Construction, DrawingConvention
from pycore.sheet.media import PAPERS, Layout, holds, layout
from pycore.sheet.scale import Fit, best_fit, finest_scale, fit_at, next_scale
from pycore.sheet.space import Space, table_rows
from pycore.sheet.strokes import figure_box
from pycore.sheet.styles import USUAL


@dataclass(frozen=True, slots=True)
class Plan:
    """A construction on a paper at a scale."""

    construction: Construction
    picture: DrawingConvention
    layout: Layout
    fit: Fit
    sharpness: float
    second: float = 0.0
    """Units per centimetre of the companions; 0 where there are none."""
    second_fits: bool = True

    @property
    def scale(self) -> float:
        """Quantity for each centimetre."""
        return self.fit.scale

    @property
    def factor(self) -> float:
        """Millimetres for each unit of the quantity."""
        return 10.0 / self.fit.scale


@dataclass(frozen=True, slots=True)
class Finest:
    """The finest scales allowed, of the phasors and of their companions; 0: as fine as the paper takes."""

    scale: float = 0.0
    second: float = 0.0


ANY_SCALE = Finest()


@dataclass(frozen=True, slots=True)
class PaperChoice:
    """The paper of a drawing: its name, the orientations allowed, the scales (``125`` or ``all``), how it is printed
    (``usual``, ``page``, ``large``, ``easy``), and whether it shows a second scale."""

    paper: str
    orientations: tuple[str, ...]
    steps: str
    printed: str = USUAL
    second: bool = False

    def sheets(self, rows: int) -> list[Layout]:
        """Return the sheets on which a table of so many rows has room."""
        sheets = [self._sheet(orientation, rows) for orientation in self.orientations]
        # Large print of many rows has room only on a sheet that stands upright.
        return [sheet for sheet in sheets if holds(sheet)] or [self._sheet("portrait", rows)]

    def _sheet(self, orientation: str, rows: int) -> Layout:
        return layout(self.paper, orientation, rows, second=self.second, printed=self.printed)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A construction that may be drawn, with the space that it takes."""

    construction: Construction
    space: Space


_Cost = tuple[int, int, float, int, int]
_Placed = tuple[_Cost, Layout, Fit]


def _cost(space: Space, sheet: Layout, fit: Fit, index: int) -> _Cost:
    return (
        0 if fit.fits else round(1000 * max(fit.over)) + 1,
        int(space.sharpness < FLAT_CROSSING),
        fit.scale,
        index,
        int(sheet.orientation == "portrait"),
    )


def _placed(spaces: Iterable[Space], choice: PaperChoice, scale: float | None, finest: Finest) -> list[_Placed]:
    """Return the best sheet for each space, with its cost."""
    best: list[_Placed] = []
    for index, space in enumerate(spaces):
        placed: list[_Placed] = []
        for sheet in choice.sheets(space.rows):
            box, steps = space.box, choice.steps
            fit = best_fit(box, sheet, steps, finest.scale) if scale is None else fit_at(box, sheet, scale)
            placed.append((_cost(space, sheet, fit, index), sheet, fit))
        best.append(min(placed, key=lambda one: one[0]))
    return best


def ranked(
    candidates: Sequence[Candidate], picture: DrawingConvention, choice: PaperChoice, scale: float | None,
    finest: Finest = ANY_SCALE,
) -> tuple[Plan, ...]:
    """Return the best plan for each candidate, without its companions, the best candidate first.

    Without a given scale, candidates are ranked by crossings that are not too flat, then by the finest scale (of those
    allowed by ``finest``); ties by the candidates' order, then landscape.
    """
    best = zip(_placed((one.space for one in candidates), choice, scale, finest), candidates, strict=True)
    return tuple(
        Plan(one.construction, picture, sheet, fit, one.space.sharpness)
        for (_, sheet, fit), one in sorted(best, key=lambda pair: pair[0][0])
    )


def own_scale(spaces: Sequence[Space], choice: PaperChoice) -> float:
    """Return the scale of the best plan of several by ``ranked``, from the space that each takes: all fit."""
    sheets = {rows: choice.sheets(rows) for rows in dict.fromkeys(space.rows for space in spaces)}
    return min(
        (space.sharpness < FLAT_CROSSING, finest_scale(space.box, sheet, choice.steps))
        for space in spaces
        for sheet in sheets[space.rows]
    )[1]


CLEAR_OF_TIPS = 12.0
"""Preferred distance of a companion's tip from other tips, mm: two arrowheads can then be told apart."""
MOST_SCALES = 30


def _at_second(plan: Plan, companions: tuple[Arm, ...], second: float) -> Plan:
    """Return the plan with its companions at a scale."""
    construction = accompanied(plan.construction, companions, plan.scale / second, plan.picture)
    box = figure_box(construction, plan.picture)
    fits = not plan.fit.fits or fit_at(box, plan.layout, plan.scale).fits
    return replace(plan, construction=construction, second=second, second_fits=fits)


def _stands_clear(plan: Plan) -> bool:
    """Return whether the companions' tips are clear of the other tips."""
    points = plan.construction.figure.points
    others = [point for name, point in points.items() if not name.startswith("K")]
    return all(
        geometry.distance(points[move.point], other) * plan.factor >= CLEAR_OF_TIPS
        for move in plan.construction.companions
        for other in others
    )


def beside_companions(
    plan: Plan, companions: tuple[Arm, ...], second: float | None, steps: str, finest: Finest = ANY_SCALE
) -> Plan:
    """Return the companions at the chosen scale, or at the finest allowed at which they fit and are clear."""
    if second is not None:
        return _at_second(plan, companions, second)
    largest = max(arm.size for arm in companions)
    longest = max(arm.size for arm in plan.construction.arms) * plan.factor
    scale, first = max(finest.second, next_scale(10.0 * largest / longest, steps)), None
    for _ in range(MOST_SCALES):
        placed = _at_second(plan, companions, scale)
        if placed.second_fits and first is None:
            first = placed
        if placed.second_fits and _stands_clear(placed):
            return placed
        # Smaller than a third of what fits would be hard to draw.
        if first is not None and scale > 3.0 * first.second:
            break
        scale = next_scale(scale * 1.01, steps)
    return first or placed


def fits_paper(
    construction: Construction, picture: DrawingConvention, scale: float, paper: str, ways: Sequence[str],
    printed: str = USUAL,
) -> bool:
    """Return whether a drawing fits a paper at a scale, in one of the orientations."""
    box = figure_box(construction, picture)
    rows, second = table_rows(construction), bool(construction.companions)
    sheets = (layout(paper, orientation, rows, second=second, printed=printed) for orientation in ways)
    return any(fit_at(box, sheet, scale).fits for sheet in sheets)


def papers_that_take(
    construction: Construction, picture: DrawingConvention, scale: float, beside: str, ways: Sequence[str],
    printed: str = USUAL,
) -> tuple[str, ...]:
    """Return the other papers on which a given scale fits, smallest first."""
    # Paper of the same family first: who prints on A4 has A3 sooner than tabloid.
    family = beside.startswith("A")
    by_size = sorted(
        PAPERS, key=lambda name: (name.startswith("A") != family, PAPERS[name][0] * PAPERS[name][1])
    )
    return tuple(
        name
        for name in by_size
        if name != beside and fits_paper(construction, picture, scale, name, ways, printed)
    )
