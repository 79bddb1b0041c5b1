"""Which single error of ruler, protractor, set square or compasses would explain a reading taken from a drawing.

The size is solved for through the construction's own moves, one deviation at a time.
"""

import math
from dataclasses import dataclass

from pycore.accuracy.hand import Hand, is_final
from pycore.accuracy.roots import roots
from pycore.constructions import deviations
from pycore.constructions.construction import Construction
from pycore.constructions.moves import DEVIATIONS, ConstructionError, carry_out

MOST = 40.0
"""Standard uncertainties beyond which a slip is no slip any more."""


@dataclass(frozen=True, slots=True)
class SingleError:
    """One error: index of the move, kind of deviation, size (mm or degrees, signed), and how many standard
    uncertainties of the hand that is."""

    move: int
    kind: str
    size: float
    strain: float


def single_errors(construction: Construction, factor: float, hand: Hand, read: float) -> tuple[SingleError, ...]:
    """Return every single error that would give the drawn length ``read`` (the quantity's unit), the smallest first.

    ``factor``: mm for each unit. The final reading is left out: it is measured again first in any case.
    """
    errors: list[SingleError] = []
    for index, move in enumerate(construction.moves):
        if is_final(move):
            continue
        for kind in DEVIATIONS.get(type(move), ()):
            errors += _slips(construction, index, kind, hand.deviation(kind, factor), factor, read)
    return tuple(sorted(errors, key=lambda slip: slip.strain))


def _slips(
    construction: Construction, index: int, kind: str, deviation: float, factor: float, read: float
) -> list[SingleError]:
    key, moves, exact = f"{index}:{kind}", construction.moves_to_end, construction.figure

    def gap(strain: float) -> float:
        try:
            end = carry_out(moves, {key: strain * deviation}, exact).points[construction.end]
        except ConstructionError:
            return math.nan
        return math.hypot(end.x, end.y) - read

    unit = factor if kind in deviations.LENGTHS else 1.0
    return [SingleError(index, kind, multiple * deviation * unit, math.fabs(multiple)) for multiple in roots(gap, MOST)]
