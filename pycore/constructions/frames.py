"""A construction as frames for a class: one frame for each use of a tool.

A frame names the tool, its move, and the moves that are on the paper when it is done. The drawing, the sentence and the
reading are all derived from the move.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import Construction, Step
from pycore.constructions.moves import (
    CrossArcs,
    Direction,
    DrawParallel,
    DropPerpendicular,
    Join,
    Move,
    ReadAngle,
    ReadLength,
    SetOff,
    TurnAngle,
)
from pycore.constructions.names import AXIS_UP, FIRST_DIRECTION

WORDS, RULER, PROTRACTOR, SQUARES, COMPASSES, LINE = (
    "words", "ruler", "protractor", "squares", "compasses", "line",
)  # fmt: skip
FIRST_ARC, SECOND_ARC, DASHED = "first", "second", "dash"
"""The phases of a move: the two arcs of the compasses, and the dashed line drawn after its angle was marked."""


@dataclass(frozen=True, slots=True)
class Frame:
    """One picture of a lesson.

    ``tool``: a constant of this module. ``step``: number of the construction's step. ``move``: the move that it shows.
    ``drawn_moves``: indexes of the moves on the paper. ``phase``: tells frames of one move apart (``FIRST_ARC``,
    ``SECOND_ARC``, ``DASHED``).
    """

    tool: str
    step: int
    name: str
    move: Move | None
    drawn_moves: frozenset[int]
    phase: str = ""

    @property
    def reads(self) -> bool:
        """Whether it measures what is on the paper already."""
        return isinstance(self.move, (ReadLength, ReadAngle))


class _Reel:
    """Goes through the moves of a construction, frame by frame."""

    def __init__(self, construction: Construction) -> None:
        self.construction = construction
        self.drawn: set[int] = set()
        self.dashed: set[int] = set()

    def frame(self, tool: str, number: int, step: Step, move: Move | None, phase: str = "") -> Frame:
        """Return one frame with the moves drawn so far."""
        return Frame(tool, number, step.name, move, frozenset(self.drawn), phase)

    def run(self) -> Iterator[Frame]:
        """Every frame in order."""
        index = 0
        for number, step in self.construction.numbered:
            if not step.moves:
                yield self.frame(WORDS, number, step, None)
            if step.name == step_kinds.VOLTAGES:
                self.drawn |= set(range(index, index + len(step.moves)))
                index += len(step.moves)
                yield self.frame(LINE, number, step, step.moves[-1])
                continue
            for move in step.moves:
                yield from self.of_move(index, number, step, move)
                index += 1

    def of_move(self, index: int, number: int, step: Step, move: Move) -> Iterator[Frame]:
        """Yield the frames of one move; none if nothing is drawn or laid on."""
        self.drawn.add(index)
        match move:
            case TurnAngle():
                yield self.frame(PROTRACTOR, number, step, move)
                yield from self.dash(number, step, move.line)
            case DrawParallel():
                yield self.frame(SQUARES, number, step, move)
                yield from self.dash(number, step, move.line)
            case Direction() if move.line in (FIRST_DIRECTION, AXIS_UP) and step.name != step_kinds.COMPANION:
                yield self.frame(LINE, number, step, move)
            case SetOff() | ReadLength():
                yield self.frame(RULER, number, step, move)
            case ReadAngle():
                yield self.frame(PROTRACTOR, number, step, move)
            case CrossArcs():
                yield self.frame(COMPASSES, number, step, move, FIRST_ARC)
                yield self.frame(COMPASSES, number, step, move, SECOND_ARC)
            case DropPerpendicular():
                yield from self.drop(number, step, move)
            case Join() if index not in self.dashed and move.role not in (roles.HIDDEN, roles.DROP):
                yield self.frame(LINE, number, step, move)

    def dash(self, number: int, step: Step, line: str) -> Iterator[Frame]:
        """Yield the dashed line that follows a marked angle or a moved set square."""
        joined = self.join_of(line)
        if joined is not None:
            index, join = joined
            self.drawn.add(index)
            self.dashed.add(index)
            yield self.frame(LINE, number, step, join, DASHED)

    def drop(self, number: int, step: Step, move: DropPerpendicular) -> Iterator[Frame]:
        """The perpendicular with its dashed line."""
        for index, join in self.joins():
            if join.start == move.start and join.end == move.foot:
                self.drawn.add(index)
                self.dashed.add(index)
        yield self.frame(SQUARES, number, step, move)

    def joins(self) -> Iterator[tuple[int, Join]]:
        """Every join with its index."""
        for index, move in enumerate(self.construction.moves):
            if isinstance(move, Join):
                yield index, move

    def join_of(self, line: str) -> tuple[int, Join] | None:
        """Return the dashed join along a line and its index; None if there is none."""
        return next(
            ((index, join) for index, join in self.joins() if join.line == line and join.role == roles.PARALLEL), None
        )


def frames(construction: Construction) -> tuple[Frame, ...]:
    """Return all frames of a construction in order."""
    return tuple(_Reel(construction).run())
