"""What a class, or a learner who wants a hint, is asked while the reading of a frame is hidden."""

from typing import Protocol

from pycore.constructions import roles
from pycore.constructions.frames import COMPASSES, LINE, RULER, WORDS, Frame
from pycore.constructions.moves import Join, ReadAngle, SetOff, TurnAngle
from pycore.words import lesson as words
from pycore.words.phrase import Phrase

ASKED = {RULER: words.ASK_LENGTH, COMPASSES: words.ASK_OPENING, LINE: words.ASK_LENGTH, WORDS: words.ASK_SCALE}
"""The question by tool, where the move asks nothing of its own."""


class AskedLesson(Protocol):
    """What a question needs from a lesson."""

    def line_name(self, line: str) -> Phrase:
        """Return the name of a line for a sentence."""

    def drawn_name(self, move: SetOff) -> Phrase:
        """Return the name of what a length along a line draws."""


def question_of(lesson: AskedLesson, frame: Frame) -> Phrase:
    """Return the question: what is read, or what is to be drawn or marked, by its name."""
    match frame.move:
        case ReadAngle():
            return words.ask_angle(lesson.line_name(frame.move.second))
        case TurnAngle():
            return words.ask_angle_to_mark(lesson.line_name(frame.move.zero))
        case SetOff(role=roles.MARK):
            return words.ASK_LENGTH_TO_MARK
        case SetOff():
            return words.ask_length_to_draw(lesson.drawn_name(frame.move))
        case Join(role=roles.PARALLEL):
            return words.ASK_DASHED_LENGTH
    return ASKED[frame.tool]
