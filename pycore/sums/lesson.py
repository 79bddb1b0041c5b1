"""A construction as a lesson: sentence, reading, reason and picture of each frame."""

from dataclasses import dataclass

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
    WORDS,
    Frame,
    frames,
)
from pycore.constructions.moves import (
    CrossArcs,
    Direction,
    DrawParallel,
    DropPerpendicular,
    Join,
    ReadAngle,
    ReadLength,
    SetOff,
    TurnAngle,
    length_of,
    turn_of,
)
from pycore.constructions.names import (
    AXIS_ACROSS,
    AXIS_UP,
    DIAGONAL,
    DIAGONAL_LENGTH,
    FIRST_DIRECTION,
    RESULT_ANGLE,
    RESULT_LENGTH,
    RESULTANT,
    START_POINT,
    SUM_KEY,
)
from pycore.drawing import Page
from pycore.phasor import wrap
from pycore.sheet.figure import PhasorStyles
from pycore.sheet.lesson_view import frame_page
from pycore.sheet.plan import Plan
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import length_text, reading_text
from pycore.words import components as parts
from pycore.words import constructions as told
from pycore.words import lesson as words
from pycore.words import parallelogram as parallel
from pycore.words import plain
from pycore.words.phrase import Phrase

NOTHING_BELOW = 0.05
"""A shorter length cannot be seen on a ruler, mm."""


@dataclass(frozen=True, slots=True)
class LessonFrame:
    """One frame with its number from 1, the number of frames, its words and its picture.

    ``reading`` has a line of its own and can be hidden behind ``question``. ``answers``: the reading (or without one,
    the sentence) is the answer itself. ``measured``: the learner takes the reading from their own drawing; it is shown
    only on request.
    """

    number: int
    count: int
    sentence: Phrase
    reading: Phrase
    question: Phrase
    why: tuple[Phrase, ...]
    picture: Page
    answers: bool = False
    measured: bool = False


ASKED = {PROTRACTOR: words.ASK_ANGLE, RULER: words.ASK_LENGTH, COMPASSES: words.ASK_OPENING, LINE: words.ASK_LENGTH,
         WORDS: words.ASK_SCALE}  # fmt: skip
"""The question shown while a tool's reading is hidden."""


MARKS = {AXIS_ACROSS: words.MARK_ACROSS, AXIS_UP: words.MARK_UP}
"""The marks of both sums on the axes, by their points."""


class Lesson:
    """The frames of one plan, with their sentences."""

    def __init__(self, plan: Plan, sentences: StepSentences, look: PhasorStyles) -> None:
        self.plan, self.sentences, self.look = plan, sentences, look
        self.frames: tuple[Frame, ...] = tuple(frame for frame in frames(plan.construction) if not self.is_idle(frame))

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
        if line.startswith("L") and line[1:].isdigit():
            return self.sentences.tag(int(line[1:]))
        named = {
            FIRST_DIRECTION: self.sentences.notation.reference,
            DIAGONAL: parallel.THE_DIAGONAL,
            RESULTANT: self.sentences.notation.tags[SUM_KEY],
            AXIS_ACROSS: told.LEVEL_AXIS,
            AXIS_UP: told.UPRIGHT_AXIS,
        }
        return named.get(line, (words.MARK,))

    def place(self, point: str) -> Phrase:
        """Return the name of a point for a sentence."""
        if point == START_POINT:
            return (self.sentences.place,)
        if point == DIAGONAL:
            return told.tip_of(parallel.THE_DIAGONAL)
        if point in MARKS:
            return (MARKS[point],)
        if point.startswith("T"):
            return told.tip_of(self.sentences.tag(int(point[1:])))
        moves = self.plan.construction.moves
        if any(isinstance(move, Join) and move.end == point and move.phasor == SUM_KEY for move in moves):
            return told.tip_of(self.sentences.notation.tags[SUM_KEY])
        before = next(
            (m for m in self.plan.construction.moves if isinstance(m, SetOff) and m.point == point and m.phasor), None
        )
        if before is None:
            return (words.MARK,)
        return told.tip_of(self.sentences.notation.tags[before.phasor])

    def length(self, amount: float) -> str:
        """Return a length to draw, as text."""
        return length_text(self.sentences.millimetres(amount), self.sentences.notation.mark)

    def read(self, amount: float) -> str:
        """Return a length read off a ruler, as text."""
        return reading_text(self.sentences.millimetres(amount), self.sentences.notation.mark)

    # One frame.

    def frame_words(self, frame: Frame) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """Return the sentence, the reading, the reasons, and the number shown in the picture."""
        move = frame.move
        why = self.step_why(frame)
        if isinstance(move, (SetOff, Join)) and move.role in ("mark", "parallel") and self.is_own(frame):
            return self.say_own(frame, move, why)
        if frame.tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            return self.protractor_frame(move, why)
        if frame.tool == RULER and isinstance(move, SetOff):
            return self.set_off_frame(move, why)
        if frame.tool == RULER and isinstance(move, ReadLength):
            return self.reading_frame(move, why)
        if frame.tool == SQUARES and isinstance(move, DrawParallel):
            sentence = words.slide(self.line_name(move.to), self.place(move.through))
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

    def say_own(self, frame: Frame, move: SetOff | Join, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A mark or a dashed line of such a step, in the step's own words."""
        points = self.sentences.figure.points
        end = move.point if isinstance(move, SetOff) else move.end
        length = self.length(geometry.distance(points[move.start], points[end]))
        sentence = self.sentences.sentence(self.plan.construction.steps[frame.step - 1])[0]
        # The stressed beginning of a mark has the length that a class may be asked for.
        if isinstance(move, SetOff):
            return _without_stress(sentence), words.mark_length(length), (why,) if why else (), _short(length)
        return sentence, words.draw_dashed(length), (why,) if why else (), _short(length)

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
            return words.scale(notation.scale(self.plan.scale)), reading, (why,), _short(length)
        step = next(step for step in self.plan.construction.steps if step.name == name)
        return self.sentences.sentence(step)[0], (), (why,) if why else (), ""

    def protractor_frame(
        self, move: TurnAngle | ReadAngle, why: Phrase
    ) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """The protractor in place, and which scale to use."""
        lines, readings = self.sentences.figure.lines, self.sentences.figure.readings
        if isinstance(move, TurnAngle):
            turn = turn_of(move, readings)
            sentence = words.protractor(self.place(move.at), self.line_name(move.zero), back=move.back)
            size = self.sentences.degrees(turn)
            reading = words.mark_angle(size, self.sentences.sense(turn))
        else:
            turn = wrap(lines[move.second].degrees - lines[move.first].degrees)
            sentence = words.protractor(self.place(move.at), self.line_name(move.first), back=False)
            size = self.sentences.degrees(turn)
            reading = words.read_angle(size) if move.reading == RESULT_ANGLE else words.measure_angle(size)
            # Of the step's two readings the length has its why.
            why = () if move.reading == RESULT_ANGLE else why
        inner = self.sentences.picture.sense * turn >= 0
        counted = words.count(words.INNER if inner else words.OUTER)
        return sentence, reading, (counted, why) if why else (counted,), size

    def set_off_frame(self, move: SetOff, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A length drawn along a line."""
        amount = length_of(move, self.sentences.figure.readings)
        length = self.length(amount)
        if move.role == roles.MARK:
            sentence = words.ruler_along(self.line_name(move.line), self.sentences.place)
            return sentence, words.mark_length(self.component_text(move.line, amount)), (), _short(self.length(amount))
        name = self.sentences.notation.tags.get(move.phasor) or self.line_name(move.line)
        turn = next((m for m in self.plan.construction.moves if isinstance(m, TurnAngle) and m.line == move.line), None)
        turned = turn is not None and turn_of(turn, self.sentences.figure.readings) != 0.0
        if turned:
            sentence = words.ruler_along_mark(self.place(move.start))
        elif turn is not None or move.role not in (roles.GIVEN, roles.COMPANION):
            along = self.line_name(turn.zero if turn else move.line)
            sentence = words.ruler_on_line(self.place(move.start), along)
        else:
            degrees = self.sentences.figure.lines[move.line].degrees
            sentence = words.ruler_first(plain(self.place(move.start)), self.sentences.direction(degrees))
        draw = words.draw_companion if move.role == roles.COMPANION else words.draw_length
        is_explained = why and (move.role == roles.COMPANION or not turned)
        return sentence, draw(name, length), (why,) if is_explained else (), _short(length)

    def reading_frame(self, move: ReadLength, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A length read, and what it represents."""
        amount = self.sentences.figure.readings[move.reading]
        tags = self.sentences.notation.tags
        named = {DIAGONAL_LENGTH: parallel.THE_DIAGONAL, RESULT_LENGTH: tags[SUM_KEY]}
        name = named.get(move.reading) or tags.get(move.reading)
        length = self.read(amount)
        if name is None:
            axis = self.line_name(move.line)
            component = self.component_text(move.line, amount)
            reading = _short(length) if self.sentences.side_of(amount) else ""
            return words.ruler_along(axis, self.sentences.place), words.read_length(component), (), reading
        notation = self.sentences.notation
        symbol = notation.tags[f"i{self.plan.construction.order}"] if move.reading == DIAGONAL_LENGTH else name
        keys = {RESULT_LENGTH: "sum", DIAGONAL_LENGTH: f"i{self.plan.construction.order}"}
        key = keys.get(move.reading, move.reading)
        product = notation.measured(key, self.sentences.millimetres(amount), self.plan.scale)
        scale = notation.scale(self.plan.scale)
        represented = words.represents(scale, symbol, product, notation.amount_of(key, amount))
        sentence = words.ruler_along(name, plain(self.place(move.start)))
        return sentence, words.read_length(length), (represented, why) if why else (represented,), _short(length)

    def component_text(self, line: str, amount: float) -> str:
        """Return a component on an axis, with its side."""
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
        why = () if phase == FIRST_ARC else (parallel.ARCS_WHY,)
        return words.compasses(opened, self.place(centre)), words.arc(length), why, _short(length)

    def line_frame(self, frame: Frame, why: Phrase) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A line drawn: first direction, dashed parallel, diagonal, sum."""
        move = frame.move
        if isinstance(move, Direction):
            if move.line == AXIS_UP:
                return parts.AXES, (), (), ""
            direction = self.sentences.direction(move.degrees)
            return words.faint(self.line_name(FIRST_DIRECTION), direction, self.sentences.place), (), (why,), ""
        if not isinstance(move, Join):
            raise TypeError(f"a line is not drawn by {move}")
        if move.role == roles.PARALLEL:
            return self.dashed_frame(frame, move)
        step = self.plan.construction.steps[frame.step - 1]
        sentence, reason = self.sentences.sentence(step)
        name = (
            parallel.THE_DIAGONAL if step.name == step_kinds.DIAGONAL else self.sentences.notation.tags[move.phasor]
        )
        if step.name == step_kinds.DIAGONAL:
            sentence = words.join(self.sentences.place, told.MEETING)
            return sentence, words.draw_name(name), (), ""
        return _without_stress(sentence), words.draw_name(name), (reason,) if reason else (), ""

    def dashed_frame(self, frame: Frame, move: Join) -> tuple[Phrase, Phrase, tuple[Phrase, ...], str]:
        """A dashed side of a parallelogram."""
        points = self.sentences.figure.points
        length = self.length(geometry.distance(points[move.start], points[move.end]))
        place = self.place(move.start)
        if frame.phase != DASHED:
            return words.join_tips(place), words.draw_dashed(length), (), _short(length)
        by_square = any(isinstance(m, DrawParallel) and m.line == move.line for m in self.plan.construction.moves)
        if by_square:
            return words.dash_along_square(place), words.draw_dashed(length), (), ""
        return words.dash(place), words.draw_dashed(length), (), _short(length)

    def show(self, number: int) -> LessonFrame:
        """Return one frame by its number from 1."""
        frame = self.frames[number - 1]
        sentence, reading, why, figure = self.frame_words(frame)
        move = frame.move
        answers = isinstance(move, (ReadLength, ReadAngle)) and move.reading in (RESULT_LENGTH, RESULT_ANGLE)
        answers = answers or frame.name == step_kinds.ZERO
        question = ASKED[frame.tool] if figure else ()
        # Without the reading: a class may be asked for it, and the title is read aloud.
        circle = self.sentences.notation.protractor == "360"
        picture = frame_page(self.plan, frame, self.look, plain(sentence), figure, circle=circle)
        measured = isinstance(move, ReadAngle) and move.reading != RESULT_ANGLE
        return LessonFrame(number, len(self.frames), sentence, reading, question, why, picture, answers, measured)


def _short(length: str) -> str:
    """Return the millimetres of a length that is written in mm and cm."""
    return length.partition(" (")[0]


def _without_stress(sentence: Phrase) -> Phrase:
    """Return a sentence without its emphasised beginning, which the line of the reading repeats."""
    rest = tuple(piece for piece in sentence[1:])
    first = rest[0] if rest else ""
    if not isinstance(first, str):
        return rest
    start = first.lstrip()
    return (start[:1].upper() + start[1:], *rest[1:])
