"""The names of points and lines on the paper, as they are there before a move is made, and where a ruler lies."""

from collections.abc import Iterator

from pycore import geometry
from pycore.constructions import roles
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.moves import CrossArcs, DrawParallel, Intersect, Join, Move, SetOff, TurnAngle, turn_of
from pycore.constructions.names import (
    AXIS_ACROSS,
    AXIS_UP,
    DIAGONAL,
    FIRST_DIRECTION,
    RESULTANT,
    START_POINT,
    SUM_KEY,
)
from pycore.sums.sentences import StepSentences
from pycore.words import constructions as told
from pycore.words import lesson as words
from pycore.words import parallelogram as parallel
from pycore.words.phrase import Phrase

TOUCHING = 0.05
"""Points as near as this are one on paper, mm."""


class Places:
    """The points and lines of one construction by their names in sentences."""

    def __init__(self, sentences: StepSentences) -> None:
        self.sentences = sentences
        self.moves: tuple[Move, ...] = sentences.construction.moves

    def line(self, line: str) -> Phrase:
        """Return the name of a line for a sentence."""
        if line.startswith("L") and line[1:].isdigit():
            return self.sentences.tag(int(line[1:]))
        named = {
            FIRST_DIRECTION: told.as_line(self.sentences.notation.reference),
            DIAGONAL: parallel.THE_DIAGONAL,
            RESULTANT: self.sentences.notation.tags[SUM_KEY],
            AXIS_ACROSS: told.LEVEL_AXIS,
            AXIS_UP: told.UPRIGHT_AXIS,
        }
        return named.get(line, (words.MARK,))

    def apart(self, one: str, other: str) -> float:
        """Return how far two points are from each other on paper, mm."""
        points = self.sentences.figure.points
        return self.sentences.millimetres(geometry.distance(points[one], points[other]))

    def name(self, point: str, move: Move) -> Phrase:
        """Return the name of a point before a move is made."""
        if point == START_POINT:
            return (self.sentences.place,)
        if point == DIAGONAL and not self.is_end_of(move, point):
            return told.tip_of(parallel.THE_DIAGONAL)
        if point in (AXIS_ACROSS, AXIS_UP):
            return words.mark_on(told.LEVEL_AXIS if point == AXIS_ACROSS else told.UPRIGHT_AXIS)
        before = self.moves[: self.moves.index(move)]
        tip = next((key for key, end in self.tips(before) if end == point), "")
        return told.tip_of(self.sentences.notation.tags[tip]) if tip else self.unnamed(point, before)

    def is_end_of(self, move: Move, point: str) -> bool:
        """Return whether a move draws the line to this point."""
        return isinstance(move, Join) and move.end == point

    def tips(self, before: tuple[Move, ...]) -> Iterator[tuple[str, str]]:
        """Yield the phasors that are drawn, each with the point at its tip."""
        for move in before:
            if isinstance(move, SetOff) and move.phasor and not move.copy:
                yield move.phasor, move.point
            elif isinstance(move, Join) and move.phasor:
                yield move.phasor, move.end

    def unnamed(self, point: str, before: tuple[Move, ...]) -> Phrase:
        """Return the name of a point that no phasor ends at: a crossing, a corner, a mark or a line's end."""
        if self.sentences.construction.method == COMPONENTS:
            return (self.sentences.corner_end(),)
        dashed = [move for move in before if isinstance(move, Join) and move.role == roles.PARALLEL]
        if [move.end for move in dashed].count(point) == 2:
            return (told.meeting(len(dashed)),)
        for move in before:
            if isinstance(move, Intersect) and move.point == point:
                return self.crossing(move, before, dashed)
            if isinstance(move, CrossArcs) and move.point == point:
                return (words.ARCS_CROSS,)
            if isinstance(move, SetOff) and move.point == point:
                return (words.MARK if move.role == roles.MARK else told.LINE_END,)
        return (words.MARK,)

    def crossing(self, move: Intersect, before: tuple[Move, ...], dashed: list[Join]) -> Phrase:
        """Return the name of the point where two lines cross: a tip, if a phasor ends there."""
        tip = next((key for key, end in self.tips(before) if self.apart(end, move.point) < TOUCHING), "")
        if tip:
            return told.tip_of(self.sentences.notation.tags[tip])
        lines = [join.line for join in dashed]
        if move.first in lines and move.second in lines:
            return (told.meeting(len(dashed)),)
        arrows = [one.line for one in before if isinstance(one, SetOff)]
        along = [line for line in (move.first, move.second) if line in arrows]
        return words.faint_line_meets(self.line(along[0])) if len(along) == 1 else (words.LINES_MEET,)


def faint_line(places: Places, move: TurnAngle) -> Phrase:
    """Return what is drawn through a mark along which no later move draws; () if a later one does."""
    moves = places.moves
    at = moves.index(move)
    if any(isinstance(m, SetOff) and m.line == move.line for m in moves):
        return ()
    if any(isinstance(m, Join) and m.line == move.line and m.role == roles.PARALLEL for m in moves):
        return ()
    crossed = [m for m in moves if isinstance(m, Intersect) and move.line in (m.first, m.second)]
    drawn = [getattr(m, "line", "") for m in moves[:at]]
    for line in (line for m in crossed for line in (m.first, m.second) if line != move.line and line in drawn):
        return words.faint_to(places.name(move.at, move), places.line(line))
    return words.faint_through(places.name(move.at, move))


def ruler_for(places: Places, move: SetOff) -> tuple[Phrase, bool]:
    """Return where the ruler lies for an arrow, and whether that is through a mark of the protractor."""
    place, moves = places.name(move.start, move), places.moves
    turn = next((m for m in moves if isinstance(m, TurnAngle) and m.line == move.line), None)
    if turn is not None and turn_of(turn, places.sentences.figure.readings) != 0.0:
        return words.ruler_along_mark(place), True
    if turn is not None:
        on_line = words.ruler_back_on_line if turn.back else words.ruler_on_line
        return on_line(place, places.line(turn.zero)), False
    parallel_to = next((m for m in moves if isinstance(m, DrawParallel) and m.line == move.line), None)
    if parallel_to is not None:
        return words.ruler_parallel(place, places.line(parallel_to.to)), False
    if move.role not in (roles.GIVEN, roles.COMPANION):
        on_line = words.ruler_beyond if move.back else words.ruler_on_line
        return on_line(place, places.line(move.line)), False
    degrees = places.sentences.figure.lines[move.line].degrees
    return words.ruler_first(place, places.sentences.direction(degrees)), False
