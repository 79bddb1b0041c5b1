"""What a classroom screen shows at one time: words, picture, given values, and the reason behind an angle."""

from dataclasses import dataclass

from pycore.drawing import Page
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class StepPlace:
    """Where a frame is: its step as it is numbered on the page, and which of the step's moves it shows."""

    step: int
    steps: int
    part: int = 1
    parts: int = 1


@dataclass(frozen=True, slots=True)
class GivenValue:
    """A phasor of the problem over the picture: its tag, its line in its own ink with its ticks, its amount."""

    key: str
    tag: Phrase
    line: Page
    amount: str


@dataclass(frozen=True, slots=True)
class Reason:
    """Why an angle is what it is: a picture of its own with a sentence, what follows, and the calculation."""

    sentence: Phrase
    why: Phrase
    calculation: Phrase
    picture: Page


@dataclass(frozen=True, slots=True)
class LessonFrame:
    """One frame with its number from 1, the number of frames, its words and its picture.

    ``reading`` has a line of its own and can be hidden behind ``question``. ``answers``: the reading (or without one,
    the sentence) is the answer itself. ``measured``: the learner takes the reading from their own drawing; it is shown
    only on request. ``reads``: an instrument measures what is on the paper. ``diagonal``: its last why is what the
    first diagonal means. ``view`` is the view that is shown, ``views`` are those that the problem offers. ``stage``:
    the common point and the scale of the picture, which a lesson keeps.
    ``heading``: what stands in place of the step's number, where a frame belongs to none.
    ``turned``: degrees, among the waves. ``begins``: the numbers of the frames with which a numbered step begins; none
    where frames are not numbered by steps.
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
    view: str = "lesson"
    views: tuple[str, ...] = ("lesson",)
    place: StepPlace | None = None
    begins: tuple[int, ...] = ()
    values: tuple[GivenValue, ...] = ()
    scale: str = ""
    asks_scale: bool = False
    reads: bool = False
    diagonal: bool = False
    reason: Reason | None = None
    stage: str = ""
    turned: int = 0
    heading: str = ""
