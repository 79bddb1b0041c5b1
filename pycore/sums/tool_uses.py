"""The moves of a drawing by their tools: for each use its place, zero line, reading and action, a line each.

They are the frames of the lesson in another dress, so that both say the same; a picture of each is the lesson's own.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import Step
from pycore.constructions.frames import COMPASSES, LINE, PROTRACTOR, RULER, SQUARES, WORDS, Frame
from pycore.constructions.moves import DrawParallel, ReadAngle, ReadLength, SetOff, TurnAngle, length_of, turn_of
from pycore.drawing import Page
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson
from pycore.sums.places import faint_line
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import tool_uses as words
from pycore.words.phrase import Emphasis, Phrase

TOOLS = {
    RULER: words.RULER, PROTRACTOR: words.PROTRACTOR, SQUARES: words.SQUARES, COMPASSES: words.COMPASSES,
    LINE: words.RULER,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class ActionLine:
    """One line of a use of a tool: what it says ("" for a sentence by itself), and the words."""

    label: str
    phrase: Phrase


@dataclass(frozen=True, slots=True)
class ToolUse:
    """One use of a tool. ``frame``: the number of the lesson's frame that shows it; 0 where there is none."""

    lines: tuple[ActionLine, ...]
    frame: int = 0
    protractor: bool = False


@dataclass(frozen=True, slots=True)
class ToolMove:
    """A numbered move: what it does in a few words (() where its sentences say it), and its tools one after another."""

    number: int
    title: Phrase
    uses: tuple[ToolUse, ...]


class ToolMoves:
    """The moves of the drawing on a case's sheet by their tools."""

    def __init__(self, case: SumCase) -> None:
        plan = case.sheet_plan()
        self.sentences = StepSentences(plan, case.notation)
        self.lesson = Lesson(plan, self.sentences, look_of(case))

    def all(self) -> tuple[ToolMove, ...]:
        """Return every move, numbered as on the page."""
        return tuple(self._move(number, step) for number, step in self.sentences.construction.numbered)

    def picture(self, frame: int) -> Page:
        """Return the picture of a frame: the tool in its place on what is drawn so far."""
        return self.lesson.show(frame).picture

    def _move(self, number: int, step: Step) -> ToolMove:
        sentence = self.sentences.sentence(step)[0]
        numbered = enumerate(self.lesson.frames, start=1)
        shown = [(at, frame) for at, frame in numbered if frame.step == number]
        if not shown or shown[0][1].tool == WORDS or step.name in (step_kinds.VOLTAGES, step_kinds.AXES):
            lines = tuple(ActionLine("", one) for one in words.sentences(sentence))
            return ToolMove(number, (), (ToolUse(lines, shown[0][0] if shown else 0),))
        title = tuple(piece for piece in sentence if isinstance(piece, Emphasis))[:1]
        uses = (ToolUse(tuple(self._lines(frame)), at, frame.tool == PROTRACTOR) for at, frame in shown)
        return ToolMove(number, title, tuple(uses))

    def _lines(self, frame: Frame) -> Iterator[ActionLine]:
        """Yield tool, place, zero line, reading and action of one frame."""
        move, lesson = frame.move, self.lesson
        sentence, reading, why, _ = lesson.frame_words(frame)
        yield ActionLine(words.TOOL, (self._tool(frame),))
        if isinstance(move, (TurnAngle, ReadAngle)):
            yield ActionLine(words.PLACE, words.centre_on(lesson.place(move.at, move)))
            zero, back = (move.zero, move.back) if isinstance(move, TurnAngle) else (move.first, False)
            yield ActionLine(words.ZERO_LINE, words.along(lesson.line_name(zero), back=back))
        elif reading:
            yield from _each(words.PLACE, sentence)
        if isinstance(move, TurnAngle):
            sense = self.sentences.sense(turn_of(move, self.sentences.figure.readings))
            yield ActionLine(words.READING, words.angle(self.sentences.angle_text(move), sense))
            yield from _each(words.ACTION, words.MARK_IT + faint_line(lesson.places, move))
        elif isinstance(move, (ReadAngle, ReadLength)):
            yield from _each(words.READING, reading)
            yield from _each(words.MEANS, why[0] if isinstance(move, ReadLength) and why else ())
        elif isinstance(move, SetOff) and move.role != roles.MARK:
            yield ActionLine(words.READING, (self.sentences.length(self._length(move)),))
            yield ActionLine(words.ACTION, words.draw(self._name(move), double=move.role == roles.COMPANION))
        else:
            yield from _each(words.ACTION, reading or sentence)

    def _tool(self, frame: Frame) -> str:
        along = [move.line for move in self.sentences.construction.moves if isinstance(move, DrawParallel)]
        squared = frame.tool == LINE and getattr(frame.move, "line", "") in along
        return words.SQUARES if squared else TOOLS[frame.tool]

    def _length(self, move: SetOff) -> float:
        return length_of(move, self.sentences.figure.readings)

    def _name(self, move: SetOff) -> Phrase:
        return self.sentences.notation.tags.get(move.phasor) or self.lesson.line_name(move.line)


def _each(label: str, phrase: Phrase) -> Iterator[ActionLine]:
    """Yield the sentences of a phrase, each on its own line; the first says what they are."""
    for index, sentence in enumerate(words.sentences(phrase)):
        yield ActionLine("" if index else label, sentence)
