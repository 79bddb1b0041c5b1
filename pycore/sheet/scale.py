"""The scale of a drawing: what one centimetre represents, and what fits a paper.

Scales are 1, 2, 2.5, 4 or 5 x 10^n per centimetre; only 1, 2 and 5 (common practice) by a setting.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from pycore.geometry import Box
from pycore.quantity import order_of_magnitude
from pycore.sheet.media import Layout

STEPS = {"125": (1.0, 2.0, 5.0), "all": (1.0, 2.0, 2.5, 4.0, 5.0)}


def _ten_to(exponent: int) -> float:
    return float(f"1e{exponent}")


def next_scale(least: float, steps: str) -> float:
    """Return the smallest listed scale that is not below ``least`` (quantity per centimetre)."""
    exponent = order_of_magnitude(least)
    allowed = least * (1 - 1e-9)
    for candidate in _ladder(exponent, steps):
        if candidate >= allowed:
            return candidate
    return _ten_to(exponent + 2)


@lru_cache(maxsize=64)
def _ladder(exponent: int, steps: str) -> tuple[float, ...]:
    """Return the listed scales of two decades, the finest first."""
    return tuple(float(f"{step}e{power}") for power in (exponent, exponent + 1) for step in STEPS[steps])


LEAST_SHARE = 0.6
"""How much of its length a drawing keeps if it takes the scale of another, at the least.

That is one step of the ladder, and not one of those that halve a drawing (1 to 2, 5 to 10). Looked at on A4: at 0.8 and
0.625 it is still as good to draw and to read; at a half more than half of the paper is empty, and what a hand misses by
counts twice.
"""


def shared_scale(scales: Sequence[float]) -> float:
    """Return the scale at which every drawing of a problem fits, of the finest for each; 0 if one would lose too much.
    """
    coarsest = max(scales)
    return coarsest if min(scales) >= LEAST_SHARE * coarsest else 0.0


@dataclass(frozen=True, slots=True)
class Fit:
    """How a figure fits an area at a scale: the room it needs and the room there is, in mm."""

    scale: float
    needs: tuple[float, float]
    has: tuple[float, float]

    @property
    def over(self) -> tuple[float, float]:
        """The missing width and height, mm."""
        return (
            max(0.0, self.needs[0] - self.has[0]),
            max(0.0, self.needs[1] - self.has[1]),
        )

    @property
    def fits(self) -> bool:
        """Whether the figure lies completely inside (to a thousandth of a millimetre)."""
        return max(self.over) <= 1e-3


def fit_at(extent: Box, layout: Layout, scale: float) -> Fit:
    """Return how a figure with these extents (in the quantity) fits at a given scale."""
    factor = 10.0 / scale
    needs = (
        extent.width * factor + 2 * layout.style.margin,
        extent.height * factor + 2 * layout.style.margin,
    )
    return Fit(scale, needs, (layout.area.width, layout.area.height))


def best_fit(extent: Box, layout: Layout, steps: str, finest: float = 0.0) -> Fit:
    """Return how the figure fits at the finest scale at which it does, not finer than ``finest``."""
    return fit_at(extent, layout, max(finest, finest_scale(extent, layout, steps)))


def is_finest(fit: Fit, layout: Layout, steps: str) -> bool:
    """Return whether a figure with this fit would fit the area at no finer listed scale."""
    margin, factor = 2 * layout.style.margin, fit.scale / 10.0
    extent = Box(0.0, 0.0, (fit.needs[0] - margin) * factor, (fit.needs[1] - margin) * factor)
    return finest_scale(extent, layout, steps) >= fit.scale * (1 - 1e-9)


def finest_scale(extent: Box, layout: Layout, steps: str) -> float:
    """Return the finest listed scale at which a figure with these extents (in the quantity) fits the area."""
    # Written out: asked twenty times for each sheet.
    (left, bottom, right, top), (area_left, area_bottom, area_right, area_top) = extent, layout.area
    margin = layout.style.margin
    wide = (right - left) * 10 / (area_right - area_left - 2 * margin)
    high = (top - bottom) * 10 / (area_top - area_bottom - 2 * margin)
    least = max(wide, high)
    if least <= 0.0 or not math.isfinite(least):
        raise ValueError("a figure without extent has no scale")
    return next_scale(least, steps)
