"""A construction as a lesson: sentence, reading, reason and picture of each frame."""

import math
from dataclasses import replace
from functools import cached_property

from pycore import geometry
from pycore.constructions import roles, step_kinds
from pycore.constructions.frames import (
    COMPASSES,
    DASHED,
    FIRST_ARC,
    LINE,
    PROTRACTOR,
    RULER,
    SQUARES,
    Frame,
    frames,
)
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
    Supplement,
    TurnAngle,
    length_of,
    turn_of,
)
from pycore.constructions.names import (
    AXIS_ACROSS,
    AXIS_UP,
    DIAGONAL,
    DIAGONAL_LENGTH,
    RESULT_ANGLE,
    RESULT_LENGTH,
    RETURN_KEY,
    START_POINT,
    SUM_KEY,
    arm_key,
)
from pycore.phasor import wrap
from pycore.sheet.laying import HEIGHT, Stage, stage_of
from pycore.sheet.lesson_view import frame_page
from pycore.sheet.paper_view import paper_page
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import PhasorStyles
from pycore.sums.lesson_asked import question_of
from pycore.sums.lesson_frame import LessonFrame, StepPlace
from pycore.sums.lesson_why import reason_of
from pycore.sums.places import Places, faint_line, ruler_for
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import whole_degrees
from pycore.words import components as parts
from pycore.words import constructions as told
from pycore.words import lesson as words
from pycore.words import parallelogram as parallel
from pycore.words import plain
from pycore.words.phrase import Phrase

NOTHING_BELOW = 0.05
"""A shorter length cannot be seen on a ruler, mm."""


class Lesson:
    """The frames of one plan, with their sentences."""

    def __init__(self, plan: Plan, sentences: StepSentences, look: PhasorStyles) -> None:
        self.plan, self.sentences, self.look = plan, sentences, look
        self.places = Places(sentences)
        self.frames: tuple[Frame, ...] = tuple(frame for frame in frames(plan.construction) if not self.is_idle(frame))
        self.circle = sentences.notation.protractor == "360"

    @cached_property
    def stage(self) -> Stage:
        """The place and scale of all pictures: whoever wants only words does without."""
        return stage_of(self.plan, self.frames, circle=self.circle)

    def is_idle(self, frame: Frame) -> bool:
        """Return whether a frame would show nothing: no turn, no length, or a tip that is already on the axis."""
        move, figure = frame.move, self.sentences.figure
        match move:
            case TurnAngle():
                return turn_of(move, figure.readings) == 0.0
            case Join():
                return self.is_short(move.start, move.end)
            case DropPerpendicular():
                return self.is_short(move.start, move.foot)
            case DrawParallel():
                ends = [m for m in self.plan.construction.moves if isinstance(m, Join) and m.line == move.line]
                return any(self.is_short(join.start, join.end) for join in ends)
            case SetOff():
                return self.is_short(move.start, move.point)
        return False

    def is_short(self, start: str, end: str) -> bool:
        """Return whether two points cannot be told apart on paper."""
        points = self.sentences.figure.points
        return self.sentences.millimetres(geometry.distance(points[start], points[end])) < NOTHING_BELOW

    # Names.

    def line_name(self, line: str) -> Phrase:
        """Return the name of a line for a sentence."""
        return self.places.line(line)

    def place(self, point: str, move: Move) -> Phrase:
        """Return the name of a point before a move is made."""
        return self.places.name(point, move)

    def length(self, amount: float) -> str:
        """Return a length as text."""
        return self.sentences.length(amount)

    # One frame.

    def frame_words(self, frame: Frame) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """Return the sentence, the reading, the reasons, and the number shown in the picture."""
        move = frame.move
        why = self.step_why(frame)
        if frame.tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            return self.protractor_frame(move, why)
        if frame.tool == RULER and isinstance(move, SetOff):
            return self.set_off_frame(move, why)
        if frame.tool == RULER and isinstance(move, ReadLength):
            return self.reading_frame(move, why)
        if frame.tool == SQUARES and isinstance(move, DrawParallel):
            sentence = words.slide(self.line_name(move.to), self.place(move.through, move))
            return sentence, (), (parallel.SLIDE_WHY,), ""
        if frame.tool == SQUARES and isinstance(move, DropPerpendicular):
            name = self.sentences.tag(int(move.start[1:]))
            return words.drop(name, self.line_name(move.line)), words.DROP_READING, (), ""
        if frame.tool == COMPASSES and isinstance(move, CrossArcs):
            return self.arc_frame(move, frame.phase)
        if frame.tool == LINE and move is not None:
            return self.line_frame(frame, why)
        step = self.plan.construction.steps[frame.step - 1]
        return self.words_frame(step.name, why)

    def is_own(self, frame: Frame) -> bool:
        """Whether a frame belongs to a step whose sentence a calculator brings."""
        return self.plan.construction.steps[frame.step - 1].name in self.sentences.notation.own_steps

    def step_why(self, frame: Frame) -> Phrase:
        """Return the reason of the step that a frame belongs to."""
        step = self.plan.construction.steps[frame.step - 1]
        return self.sentences.sentence(step)[1]

    def words_frame(self, name: str, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A frame without a tool."""
        if name == step_kinds.SCALE:
            longest = max(self.plan.construction.arms, key=lambda arm: arm.size)
            notation = self.sentences.notation
            length = self.length(longest.size)
            reading = words.scale_reading(notation.short_of(longest.key, longest.size), length)
            opening = words.scale(notation.scale(self.plan.scale))
            opening = self.sentences.own_paper(longest=False) if self.plan.layout.style.blank else opening
            return opening, reading, (why,), _short(length)
        step = next(step for step in self.plan.construction.steps if step.name == name)
        return self.sentences.sentence(step)[0], (), (why,) if why else (), ""

    def protractor_frame(
        self, move: TurnAngle | ReadAngle, why: Phrase
    ) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """The protractor in place, and which scale to use."""
        lines, readings = self.sentences.figure.lines, self.sentences.figure.readings
        if isinstance(move, TurnAngle):
            turn = turn_of(move, readings)
            sentence = words.protractor(self.place(move.at, move), self.line_name(move.zero), back=move.back)
            size = self.sentences.marked(move)
            mark = words.mark_supplement if isinstance(move.turn, Supplement) else words.mark_angle
            reading = mark(size, self.sentences.sense(turn)) + faint_line(self.places, move)
        else:
            turn = wrap(lines[move.second].degrees - lines[move.first].degrees)
            sentence = words.protractor(self.place(move.at, move), self.line_name(move.first), back=False)
            if move.reading == RESULT_ANGLE:
                size = self.sentences.degrees(turn)
                straight = round(math.fabs(turn), 1) in (0.0, 180.0)
                reading = words.read_angle(size, "" if straight else self.sentences.sense(turn))
                if not self.sentences.is_only_returning:
                    reading += self.result_words()
            else:
                size = whole_degrees(math.fabs(turn))
                reading = words.measure_angle(self.line_name(move.second), size)
            # Of the step's two readings the length has its why.
            why = self.sentences.returning_direction() if move.reading == RESULT_ANGLE else why
        inner = self.sentences.picture.sense * turn >= 0
        counted = words.count(words.INNER if inner else words.OUTER)
        return sentence, reading, (counted, why) if why else (counted,), size

    def result_words(self) -> Phrase:
        """The answer of the drawing, after its last reading."""
        notation = self.sentences.notation
        amount = notation.amount_of(SUM_KEY, self.sentences.figure.readings[RESULT_LENGTH])
        return words.result(notation.tags[SUM_KEY], amount)

    def drawn_name(self, move: SetOff) -> Phrase:
        """Return the name of what a length along a line draws."""
        return self.sentences.notation.tags.get(move.phasor) or self.line_name(move.line)

    def set_off_frame(self, move: SetOff, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A length drawn along a line."""
        amount = length_of(move, self.sentences.figure.readings)
        if move.role == roles.MARK:
            return self.mark_frame(move, why)
        length = self.length(amount)
        name = self.drawn_name(move)
        sentence, turned = ruler_for(self.places, move)
        draw = words.draw_companion if move.role == roles.COMPANION else words.draw_length
        is_explained = why and (move.role == roles.COMPANION or not turned)
        return sentence, draw(name, length), (why,) if is_explained else (), _short(length)

    def mark_frame(self, move: SetOff, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A length marked on a line that is on the paper: on an axis, or on a dashed line between two points."""
        amount = length_of(move, self.sentences.figure.readings)
        length, place = self.length(amount), self.place(move.start, move)
        side = next((m for m in self.plan.construction.moves if isinstance(m, Join) and m.line == move.line), None)
        if side is None:
            sentence = words.ruler_along(self.line_name(move.line), place)
            summed = self.sentences.summed(move.line)
            return sentence, words.mark_length(summed), (), _short(summed) if self.sentences.side_of(amount) else ""
        end = self.place(side.start if side.start != move.start else side.end, move)
        return words.ruler_on_side(place, end), words.mark_length(length), (why,) if why else (), _short(length)

    def reading_frame(self, move: ReadLength, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A length read, and what it represents."""
        amount = self.sentences.figure.readings[move.reading]
        tags = self.sentences.notation.tags
        result = RETURN_KEY if self.sentences.is_only_returning else SUM_KEY
        named = {DIAGONAL_LENGTH: parallel.THE_DIAGONAL, RESULT_LENGTH: tags[result]}
        name = named.get(move.reading) or tags.get(move.reading)
        length = self.length(amount)
        if name is None:
            axis = self.line_name(move.line)
            component = self.component_text(move.line, amount)
            if not self.sentences.side_of(amount):
                other = self.line_name(AXIS_UP if move.line == AXIS_ACROSS else AXIS_ACROSS)
                tag = self.sentences.tag(int(move.reading[1:]))
                return words.tip_on_axis(tag, other), words.there_is(component), (), ""
            return words.ruler_along(axis, self.sentences.place), words.read_length(component), (), _short(length)
        notation = self.sentences.notation
        symbol = notation.tags[f"i{self.plan.construction.order}"] if move.reading == DIAGONAL_LENGTH else name
        keys = {RESULT_LENGTH: result, DIAGONAL_LENGTH: f"i{self.plan.construction.order}"}
        key = keys.get(move.reading, move.reading)
        product = notation.measured(key, self.sentences.millimetres(amount), self.plan.scale)
        scale = notation.scale(self.plan.scale)
        represented = words.represents(scale, symbol, product, notation.amount_of(key, amount))
        sentence = words.ruler_along(name, self.place(move.start, move))
        if not any(isinstance(m, (SetOff, Join)) and m.phasor == key for m in self.plan.construction.moves):
            sentence = words.join(self.place(move.start, move), self.place(move.end, move))
        if self.sentences.is_only_returning:
            why = ()  # It is of the angle, which the next frame reads.
        return sentence, words.read_length(length), (represented, why) if why else (represented,), _short(length)

    def component_text(self, line: str, amount: float) -> str:
        """Return a component that is read off an axis, with its side."""
        side = self.sentences.side_of(amount)
        length = self.length(amount)
        return parts.across_part(length, side) if line == AXIS_ACROSS else parts.upward_part(length, side)

    def arc_frame(self, move: CrossArcs, phase: str) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """One of the two arcs."""
        centre = move.first if phase == FIRST_ARC else move.second
        copied = (move.first_radius if phase == FIRST_ARC else move.second_radius)[1]
        points = self.sentences.figure.points
        length = self.length(geometry.distance(points[START_POINT], points[copied]))
        opened = parallel.THE_DIAGONAL if copied == DIAGONAL else self.sentences.tag(int(copied[1:]))
        reading = words.arc(length)
        if copied == DIAGONAL:
            length = self.sentences.about_diagonal()
            reading = words.arc(told.about(length))
        why = () if phase == FIRST_ARC else (parallel.ARCS_WHY,)
        return words.compasses(opened, self.place(centre, move)), reading, why, _short(length)

    def line_frame(self, frame: Frame, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A line drawn: first direction, dashed parallel, diagonal, sum."""
        move = frame.move
        if isinstance(move, Direction):
            if move.line == AXIS_UP:
                return parts.AXES, (), (), ""
            if frame.name == step_kinds.VOLTAGES:
                return self.words_frame(frame.name, why)
            direction = self.sentences.direction(move.degrees)
            name = told.first_line(self.sentences.notation.reference)
            return words.faint(name, direction, self.sentences.place), (), (why,), ""
        if not isinstance(move, Join):
            raise TypeError(f"a line is not drawn by {move}")
        if move.role == roles.PARALLEL:
            return self.dashed_frame(frame, move)
        sentence = words.join(self.place(move.start, move), self.place(move.end, move))
        if frame.name == step_kinds.DIAGONAL:
            return sentence, words.draw_name(parallel.THE_DIAGONAL), (), ""
        tag = self.sentences.notation.tags[move.phasor]
        if self.is_measured_here(move):
            return self.measured_frame(move, sentence, why)
        return sentence, words.draw_name(tag), (why,) if why else (), ""

    def is_measured_here(self, move: Join) -> bool:
        """Return whether a line is the result, and no later move measures it."""
        reads = [m.reading for m in self.plan.construction.moves if isinstance(m, ReadLength)]
        return move.phasor == SUM_KEY and RESULT_LENGTH not in reads

    def measured_frame(
        self, move: Join, sentence: Phrase, why: Phrase
    ) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """The result drawn and measured at once."""
        notation, points = self.sentences.notation, self.sentences.figure.points
        amount, tag = geometry.distance(points[move.start], points[move.end]), notation.tags[move.phasor]
        length = self.length(amount)
        product = notation.measured(move.phasor, self.sentences.millimetres(amount), self.plan.scale)
        scale, calculated = notation.scale(self.plan.scale), notation.amount_of(move.phasor, amount)
        represented = words.represents(scale, tag, product, calculated)
        return sentence, words.draw_and_read(tag, length), (represented, why) if why else (represented,), _short(length)

    def dashed_frame(self, frame: Frame, move: Join) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A dashed side of a parallelogram."""
        points = self.sentences.figure.points
        length = self.length(geometry.distance(points[move.start], points[move.end]))
        draw = words.draw_dashed(length)
        if DIAGONAL_LENGTH in self.sentences.figure.readings and move.like == arm_key(self.plan.construction.order):
            length = self.sentences.about_diagonal()
            draw = words.draw_as_diagonal(length)
        place = self.place(move.start, move)
        if frame.phase != DASHED:
            why = self.step_why(frame) if self.is_own(frame) else ()
            sentence = words.join(place, self.place(move.end, move))
            return sentence, draw, (why,) if why else (), _short(length)
        by_square = any(isinstance(m, DrawParallel) and m.line == move.line for m in self.plan.construction.moves)
        if by_square:
            return words.dash_along_square(place), draw, (), ""
        return words.dash(place), draw, (), _short(length)

    def show(self, number: int) -> LessonFrame:
        """Return one frame by its number from 1."""
        frame = self.frames[number - 1]
        sentence, reading, why, figure = self.frame_words(frame)
        move = frame.move
        answers = isinstance(move, (ReadLength, ReadAngle)) and move.reading in (RESULT_LENGTH, RESULT_ANGLE)
        answers = answers or frame.name == step_kinds.ZERO or (isinstance(move, Join) and self.is_measured_here(move))
        question = question_of(self, frame) if figure else ()
        is_scale = frame.name == step_kinds.SCALE
        # Without the reading: a class may be asked for it, and the title is read aloud.
        title = plain(words.CHOOSE_SCALE if is_scale else sentence)
        before = self.frames[number - 2].drawn_moves if number > 1 else frozenset()
        if is_scale and self.plan.layout.style.blank:
            picture = paper_page(self.plan, self.look.mark, title)
        else:
            picture = frame_page(
                self.plan, frame, self.look, self.stage, title, figure, before=before, circle=self.circle
            )
        shown = LessonFrame(number, len(self.frames), sentence, reading, question, why, picture, answers)
        is_diagonal = isinstance(move, ReadLength) and move.reading == DIAGONAL_LENGTH
        return replace(
            shown, place=self.step_place(number), begins=self.begins(), reads=frame.reads, asks_scale=is_scale,
            diagonal=is_diagonal,
            measured=isinstance(move, ReadAngle) and move.reading != RESULT_ANGLE,
            reason=reason_of(self, frame), stage=self.stage_key(),
        )  # fmt: skip

    def begins(self) -> tuple[int, ...]:
        """Return the numbers of the frames with which a step begins."""
        numbered = enumerate(self.frames, start=1)
        return tuple(number for number, frame in numbered if number == 1 or frame.step != self.frames[number - 2].step)

    def step_place(self, number: int) -> StepPlace:
        """Return where a frame is: the number that its step has on the page, and the move within the step."""
        step = self.frames[number - 1].step
        parts = [index for index, frame in enumerate(self.frames, start=1) if frame.step == step]
        return StepPlace(step, len(self.plan.construction.steps), parts.index(number) + 1, len(parts))

    def number_of_step(self, step: int) -> int:
        """Return the number of the first frame of a step; the nearest if it has none or does not exist."""
        numbers = [number for number, frame in enumerate(self.frames, start=1) if frame.step >= step]
        return numbers[0] if numbers else len(self.frames)

    def stage_key(self) -> str:
        """Return where the common point stands in the view, and the scale: from the left and from the top."""
        origin = self.stage.stand.origin
        return f"{origin.x:.2f} {HEIGHT - origin.y:.2f} {self.stage.stand.factor:.6g}"


def _short(length: str) -> str:
    """Return the millimetres of a length that is written in mm and cm."""
    return length.partition(" (")[0]
