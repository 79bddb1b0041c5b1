"""The step of a lesson to which a mistake belongs: the frame of the move that went wrong."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

from pycore.constructions import step_kinds
from pycore.constructions.frames import Frame
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.moves import Join, ReadLength, SetOff, TurnAngle
from pycore.constructions.names import RESULT_LENGTH, SUM_KEY, line_of
from pycore.practice.task import DRAWN, Mistake, StepReference
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of

Wanted = Callable[[Frame], bool]

FORMULA = ("no-root", "signs-slipped", "sign-slipped", "product-dropped", "product-doubled")
TURNED_THROUGHOUT = (
    "other-scale-throughout", "mirrored", "factor-ignored", "lead-for-lag", "base-edge", "right-angles",
)  # fmt: skip
SECOND_STAGE = (step_kinds.MEASURE, step_kinds.PARALLEL, step_kinds.ARCS, step_kinds.CARRY_ON, step_kinds.CLOSE)


def _sets_off(key: str) -> Wanted:
    return lambda frame: isinstance(frame.move, SetOff) and frame.move.phasor == key and not frame.move.copy


def _turns_to(key: str) -> Wanted:
    line = line_of(key[1:])
    return lambda frame: isinstance(frame.move, TurnAngle) and frame.move.line == line


def _turns(frame: Frame) -> bool:
    return isinstance(frame.move, TurnAngle)


def _sets(frame: Frame) -> bool:
    return isinstance(frame.move, SetOff)


def _measures_the_sum(frame: Frame) -> bool:
    return isinstance(frame.move, ReadLength) and frame.move.reading == RESULT_LENGTH


def _draws_the_sum(frame: Frame) -> bool:
    return isinstance(frame.move, Join) and frame.move.phasor == SUM_KEY


def _second_stage(frames: Sequence[Frame]) -> Wanted:
    first = next((frame.step for frame in frames if frame.name == step_kinds.DIAGONAL), 0)
    return lambda frame: frame.step > first > 0 and frame.name in SECOND_STAGE


def _wanted(mistake: Mistake, frames: Sequence[Frame]) -> tuple[Wanted, bool]:
    """Return a test for the frame of a drawn mistake, and whether that frame shows the answer."""
    about = mistake.about[0] if mistake.about else ""
    if mistake.key in ("left-out", "reversed", "swapped", "line-at-other-scale", "figures-exchanged"):
        return _sets_off(about), False
    if mistake.key.startswith(("other-scale", "wrong-way", "centre-off")) and about:
        return _turns_to(about), False
    if mistake.key in TURNED_THROUGHOUT:
        return _turns, False
    if mistake.key in ("stopped", "two-diagonals"):
        return _second_stage(frames), False
    if mistake.key in ("multiplied-lines", "drawn-at-other-scale", "ruler-edge", "plain-sum"):
        return _sets, False
    return (_draws_the_sum if mistake.key in ("other-diagonal", "arrow-reversed") else _measures_the_sum), True


def place_of(mistake: Mistake, frames: Sequence[Frame], *, formula: bool) -> StepReference | None:
    """Return the step of a lesson, or for a calculated answer the working, to which a mistake belongs; None if there is
    none.

    ``formula``: the page also calculates by a closed formula.
    """
    if DRAWN not in mistake.how:
        return StepReference(working="formula" if formula and mistake.key in FORMULA else COMPONENTS, reveals=True)
    fits, reveals = _wanted(mistake, frames)
    for number, frame in enumerate(frames, start=1):
        if fits(frame):
            return StepReference(step=number, listed=frame.step, reveals=reveals)
    return None


def places_in(case: SumCase) -> Callable[[Mistake], StepReference | None]:
    """Return a function that finds the place of a mistake; the lesson's frames are made on first use."""

    @cache
    def lesson_once() -> Lesson:
        plan = case.sheet_plan()
        return Lesson(plan, StepSentences(plan, case.notation), look_of(case))

    def find(mistake: Mistake) -> StepReference | None:
        lesson = lesson_once()
        place = place_of(mistake, lesson.frames, formula=case.has_formula)
        if place is None or not place.step or place.reveals:
            return place
        sentence, reading, _, _ = lesson.frame_words(lesson.frames[place.step - 1])
        return replace(place, sentence=(*sentence, " ", *reading) if reading else sentence)

    return find
