"""Order, orientation and scale chosen together: which construction fits a paper best."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.constructions.construction import Construction, Picture, flattest
from pycore.geometry import Box
from pycore.sheet.figure import extent
from pycore.sheet.media import PAPERS, Layout, layout
from pycore.sheet.scale import Fit, best_fit, fit_at

FLAT_INTERSECTION = 15.0
"""Degrees below which two crossing lines meet too flatly to be trusted by hand (common practice)."""


@dataclass(frozen=True, slots=True)
class Plan:
    """A construction on a paper at a scale."""

    construction: Construction
    picture: Picture
    layout: Layout
    fit: Fit
    sharpness: float

    @property
    def scale(self) -> float:
        """Quantity per centimetre."""
        return self.fit.scale

    @property
    def factor(self) -> float:
        """Millimetres for each unit of the quantity."""
        return 10.0 / self.fit.scale


def table_rows(construction: Construction) -> int:
    """Rows of a sheet's table: the arms, the first diagonal if there is one, the sum, its return."""
    returning = construction.resultant == "returning" and not construction.closed
    return len(construction.arms) + 1 + ("r" in construction.figure.readings) + returning + construction.further


def _plan(
    construction: Construction, picture: Picture, box: Box, sheet: Layout, scale: float | None, steps: str
) -> Plan:
    fit = best_fit(box, sheet, steps) if scale is None else fit_at(box, sheet, scale)
    return Plan(construction, picture, sheet, fit, flattest(construction))


def _cost(plan: Plan, index: int) -> tuple[int, int, float, int, int]:
    return (
        0 if plan.fit.fits else round(1000 * max(plan.fit.over)) + 1,
        int(plan.sharpness < FLAT_INTERSECTION),
        plan.scale,
        index,
        int(plan.layout.orientation == "portrait"),
    )


def choose(
    candidates: Sequence[Construction],
    picture: Picture,
    paper: str,
    orientations: Sequence[str],
    scale: float | None = None,
    steps: str = "125",
) -> tuple[Plan, ...]:
    """The best way to put each candidate on the paper, the best candidate first.

    Without a given scale the fewest amperes per centimetre that fit count, after crossings
    that are too flat for a hand; ties are broken by the candidates' order, then landscape.
    """
    best: list[tuple[tuple[int, int, float, int, int], Plan]] = []
    for index, construction in enumerate(candidates):
        box = extent(construction, picture)
        rows = table_rows(construction)
        plans = [
            _plan(construction, picture, box, layout(paper, way, rows), scale, steps) for way in orientations
        ]
        costs = [(_cost(plan, index), plan) for plan in plans]
        best.append(min(costs, key=lambda pair: pair[0]))
    return tuple(plan for _, plan in sorted(best, key=lambda pair: pair[0]))


def papers_that_take(
    construction: Construction, picture: Picture, scale: float, beside: str, ways: Sequence[str]
) -> tuple[str, ...]:
    """The other papers on which a given scale fits, smallest first."""
    box = extent(construction, picture)
    rows = table_rows(construction)
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
            fit_at(box, layout(name, way, rows), scale).fits for way in ways
        )
    )
