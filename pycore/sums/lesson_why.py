"""Why the angle at a tip is half a turn less the angle between two phasors: the frames that need a picture of it."""

import math
from typing import Protocol

from pycore.constructions.frames import PROTRACTOR, Frame
from pycore.constructions.moves import Join, SetOff, Supplement, TurnAngle, turn_of
from pycore.constructions.names import START_POINT, arm_key
from pycore.phasor import wrap
from pycore.sheet.laying import Stage
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import PhasorStyles
from pycore.sheet.why_view import WhyAngle, why_page
from pycore.sums.lesson_frame import Reason
from pycore.sums.sentences import StepSentences
from pycore.words import lesson as words
from pycore.words import plain
from pycore.words.phrase import Phrase


class ExplainedLesson(Protocol):
    """What an explanation needs from a lesson."""

    plan: Plan
    sentences: StepSentences
    look: PhasorStyles

    @property
    def stage(self) -> Stage:
        """The place and scale of all pictures."""

    def line_name(self, line: str) -> Phrase:
        """Return the name of a line for a sentence."""


def reason_of(lesson: ExplainedLesson, frame: Frame) -> Reason | None:
    """Return the picture of why an angle is marked at a tip; None where the angle is marked as it is typed."""
    move = frame.move
    if frame.tool != PROTRACTOR or not isinstance(move, TurnAngle) or not move.back:
        return None
    turn = turn_of(move, lesson.sentences.figure.readings)
    is_own = isinstance(move.turn, Supplement)
    inside = math.fabs(turn)
    if not 0.5 <= inside <= 179.5:
        return None
    outside = 180.0 - inside
    degrees = (lambda size: f"{round(size)}°") if is_own else lesson.sentences.degrees
    out, left = degrees(outside), f"{180 - round(outside)}°" if is_own else degrees(inside)
    name, length, is_copy = _next_line(lesson, move)
    first = lesson.line_name(move.zero)
    tell = words.turned_at_tip if is_copy else words.turns_at_tip
    sentence = tell(name, first, out)
    angle = WhyAngle(move, wrap(turn + 180.0), turn, out, left, words.copy_of(name) if is_copy else name, length,
                     START_POINT if is_copy else "")  # fmt: skip
    picture = why_page(lesson.plan, frame, lesson.look, lesson.stage, angle, plain(sentence))
    return Reason(sentence, words.FROM_BACK, words.supplement(out, left), picture)


def _next_line(lesson: ExplainedLesson, move: TurnAngle) -> tuple[Phrase, float, bool]:
    """Return the name of the phasor along the marked line, its length in the drawing, and whether it is a copy."""
    tags, figure = lesson.sentences.notation.tags, lesson.sentences.figure
    for later in lesson.plan.construction.moves:
        if isinstance(later, Join) and later.line == move.line:
            start, end = figure.points[later.start], figure.points[later.end]
            reach = math.hypot(end.x - start.x, end.y - start.y)
            named = later.like == arm_key(lesson.plan.construction.order) or later.like not in tags
            return lesson.line_name(_line_like(lesson, later.like)) if named else tags[later.like], reach, True
        if isinstance(later, SetOff) and later.line == move.line:
            start, end = figure.points[later.start], figure.points[later.point]
            tag = tags.get(later.phasor) or lesson.line_name(move.line)
            return tag, math.hypot(end.x - start.x, end.y - start.y), False
    return lesson.line_name(move.line), 0.0, False


def _line_like(lesson: ExplainedLesson, key: str) -> str:
    """Return the line of the phasor that a parallel copies."""
    for move in lesson.plan.construction.moves:
        if isinstance(move, (SetOff, Join)) and move.phasor == key:
            return move.line
    return key
