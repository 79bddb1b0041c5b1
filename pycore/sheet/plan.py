"""Chooses order, orientation and scale together: which construction fits a paper best."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.constructions.companions import accompanied, companion_moves
from pycore.constructions.construction import FLAT_CROSSING, Arm, Construction, DrawingConvention, flattest
from pycore.constructions.methods import THE_RETURNING
from pycore.geometry import ORIGIN, Box
from pycore.sheet.media import PAPERS, Layout, holds, layout
from pycore.sheet.scale import Fit, best_fit, fit_at, next_scale
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


def table_rows(construction: Construction) -> int:
    """Return the number of rows of a sheet's table: arms, first diagonal if there is one, sum, returning phasor."""
    returning = construction.resultant == THE_RETURNING and not construction.closed
    more = len(companion_moves(construction)) + construction.further
    return len(construction.arms) + 1 + ("r" in construction.figure.readings) + returning + more


@dataclass(frozen=True, slots=True)
class Finest:
    """The finest scales allowed, of the phasors and of their companions; 0: as fine as the paper takes."""

    scale: float = 0.0
    second: float = 0.0


ANY_SCALE = Finest()


def _plan(construction: Construction, picture: DrawingConvention, sheet: Layout, fit: Fit) -> Plan:
    return Plan(construction, picture, sheet, fit, flattest(construction))


def _fit(box: Box, sheet: Layout, scale: float | None, steps: str, finest: Finest) -> Fit:
    return best_fit(box, sheet, steps, finest.scale) if scale is None else fit_at(box, sheet, scale)


def _cost(plan: Plan, index: int) -> tuple[int, int, float, int, int]:
    return (
        0 if plan.fit.fits else round(1000 * max(plan.fit.over)) + 1,
        int(plan.sharpness < FLAT_CROSSING),
        plan.scale,
        index,
        int(plan.layout.orientation == "portrait"),
    )


@dataclass(frozen=True, slots=True)
class Candidate:
    """A construction that may be drawn, with the rectangle that it takes, in the quantity."""

    construction: Construction
    box: Box


def candidate(construction: Construction, picture: DrawingConvention, companions: tuple[Arm, ...]) -> Candidate:
    """Return a construction with the room that it and its companions take."""
    box = _with_companions(figure_box(construction, picture), construction, picture, companions)
    return Candidate(construction, box)


def ranked(
    candidates: Sequence[Candidate],
    picture: DrawingConvention,
    paper: str,
    orientations: Sequence[str],
    scale: float | None,
    steps: str,
    companions: tuple[Arm, ...] = (),
    printed: str = USUAL,
    finest: Finest = ANY_SCALE,
) -> tuple[Plan, ...]:
    """Return the best plan for each candidate, without its companions, the best candidate first.

    Without a given scale, candidates are ranked by crossings that are not too flat, then by the finest scale (of those
    allowed by ``finest``); ties by the candidates' order, then landscape. ``printed``: ``usual``, ``large`` or
    ``easy``.
    """

    def sheet_for(orientation: str, rows: int) -> Layout:
        return layout(paper, orientation, rows, second=bool(companions), printed=printed)

    best: list[tuple[tuple[int, int, float, int, int], Plan]] = []
    for index, one in enumerate(candidates):
        rows = table_rows(one.construction) + len(companions)
        sheets = [sheet_for(orientation, rows) for orientation in orientations]
        # Large print of many rows has room only on a sheet that stands upright.
        sheets = [sheet for sheet in sheets if holds(sheet)] or [sheet_for("portrait", rows)]
        plans = [
            _plan(one.construction, picture, sheet, _fit(one.box, sheet, scale, steps, finest)) for sheet in sheets
        ]
        costs = [(_cost(plan, index), plan) for plan in plans]
        best.append(min(costs, key=lambda pair: pair[0]))
    return tuple(plan for _, plan in sorted(best, key=lambda pair: pair[0]))


COMPANION_SHARE = 0.6
"""The room for the longest companion, as a share of the longest arm."""
CLEAR_OF_TIPS = 12.0
"""Preferred distance of a companion's tip from other tips, mm: two arrowheads can then be told apart."""
MOST_SCALES = 30


def _with_companions(
    box: Box, construction: Construction, picture: DrawingConvention, companions: tuple[Arm, ...]
) -> Box:
    """Return the rectangle with room for companions, whose scale is chosen later."""
    if not companions:
        return box
    longest = max(arm.size for arm in construction.arms)
    largest = max((arm.size for arm in companions), default=1.0)
    tips = [
        ORIGIN.moved(COMPANION_SHARE * longest * arm.size / largest, picture.paper_angle(arm.angle))
        for arm in companions
    ]
    return geometry.bounds([*box.corners, *tips])


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
        for move in companion_moves(plan.construction)
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


def papers_that_take(
    construction: Construction, picture: DrawingConvention, scale: float, beside: str, ways: Sequence[str],
    printed: str = USUAL,
) -> tuple[str, ...]:
    """Return the other papers on which a given scale fits, smallest first."""
    box = figure_box(construction, picture)
    rows, second = table_rows(construction), bool(companion_moves(construction))
    # Paper of the same family first: who prints on A4 has A3 sooner than tabloid.
    family = beside.startswith("A")
    by_size = sorted(
        PAPERS, key=lambda name: (name.startswith("A") != family, PAPERS[name][0] * PAPERS[name][1])
    )
    return tuple(
        name
        for name in by_size
        if name != beside
        and any(
            fit_at(box, layout(name, orientation, rows, second=second, printed=printed), scale).fits
            for orientation in ways
        )
    )
