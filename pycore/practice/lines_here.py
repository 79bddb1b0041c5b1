"""What is drawn on the screen, and the lines of a construction that a learner draws."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.constructions import roles
from pycore.constructions.construction import Construction
from pycore.constructions.moves import Join, SetOff
from pycore.constructions.names import START_POINT
from pycore.geometry import Point
from pycore.practice import arcs_here
from pycore.practice.arcs_here import Arc

ARROW, FULL, DASHED = "arrow", "full", "dashed"
KINDS = (ARROW, FULL, DASHED, arcs_here.KIND)


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line as it was drawn, from press to release (mm): ``arrow``, ``full`` or ``dashed``. ``name``: the key of the
    phasor that the learner calls it; "" if none. Of an ``arc``, ``start`` is the centre and ``end`` where it begins;
    ``sweep``: how far it goes (degrees, anticlockwise)."""

    kind: str
    start: Point
    end: Point
    name: str = ""
    sweep: float = 0.0

    def arc(self) -> Arc:
        """The same as an arc."""
        begun = geometry.direction(self.start, self.end)
        return Arc(self.start, geometry.distance(self.start, self.end), begun, self.sweep)


@dataclass(frozen=True, slots=True)
class WantedLine:
    """A line of a construction: its ends, the key of its phasor (of a dashed line, of the one it is parallel to),
    whether it is an arrow, whether its end is a point that nothing else gives, and the move that draws it."""

    start: str
    end: str
    key: str
    arrow: bool
    gives_end: bool
    index: int

    @property
    def ends(self) -> tuple[str, str]:
        """The names of both ends."""
        return self.start, self.end


def wanted_lines(construction: Construction) -> tuple[WantedLine, ...]:
    """The lines of a construction that a learner draws, in order; faint directions and marks are left to them."""
    lines: list[WantedLine] = []
    for index, move in enumerate(construction.moves):
        if isinstance(move, SetOff) and move.role in (roles.GIVEN, roles.RESULTANT):
            lines.append(WantedLine(move.start, move.point, move.phasor, True, True, index))
        elif isinstance(move, Join) and move.role in (roles.PARALLEL, roles.PARTIAL, roles.RESULTANT):
            arrow = move.role != roles.PARALLEL
            lines.append(WantedLine(move.start, move.end, move.phasor if arrow else move.like, arrow, False, index))
    return _with_ends(lines)


def _with_ends(lines: Sequence[WantedLine]) -> tuple[WantedLine, ...]:
    """Leave out dashed lines from points that no line gives; an arrow to such a point gives it."""
    known = {START_POINT, *(line.end for line in lines if line.gives_end)}
    kept: list[WantedLine] = []
    for line in lines:
        sides = [one for one in lines if not one.arrow and one.end == line.end]
        corner = len(sides) > 1 and all(one.start in known for one in sides)
        if line.arrow and line.end not in known and not corner:
            line = replace(line, gives_end=True)
        if line.arrow or (line.start in known and (corner or line.end in known)):
            kept.append(line)
            known.add(line.end)
    return tuple(kept)
