"""Why phasors are not added like numbers: the view that compares both, and the frame that ends a lesson."""

import math

from pycore import phasor, quantity
from pycore.constructions.frames import WORDS, Frame
from pycore.constructions.names import RETURN_KEY, SUM_KEY
from pycore.sheet.lesson_view import frame_page
from pycore.sheet.numbers_view import LinedUp, numbers_page, row_ends
from pycore.sheet.strokes import PhasorStyles
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson
from pycore.sums.lesson_frame import LessonFrame
from pycore.words import lesson as words
from pycore.words import numbers_alone as alone_words
from pycore.words import plain
from pycore.words.phrase import Phrase

FRAMES = 2
"""The arrows in one line; each turned to its own direction."""
SAME = 1e-6
"""Two sums whose difference is a smaller share of the larger one are the same."""


def _lined_up(case: SumCase) -> list[LinedUp]:
    """Return the arrows of a case; one whose name begins with a minus sign is the opposite of what was typed."""
    tags = case.notation.tags
    return [
        LinedUp(arm.key, phasor.polar(arm.size, arm.angle), index > 0 and tags[arm.key][:1] == ("−",))
        for index, arm in enumerate(case.arms)
    ]


def _alone(case: SumCase, arrows: list[LinedUp]) -> tuple[Phrase, str, float]:
    """Return the numbers added without their directions as a sentence, their sum as text, and the sum."""
    writing, reach = case.notation.writing, row_ends(arrows)[-1]
    numbers = [writing.as_typed(arm.size) for arm in case.arms]
    added = math.fsum(
        -_number(number) if arrow.subtracted else _number(number) for number, arrow in zip(numbers, arrows, strict=True)
    )
    # Results have three figures each: their sum is no finer than the coarsest of them.
    decimals = (min if writing.computed else max)(quantity.decimals_of(number) for number in numbers)
    total = quantity.fixed(reach / writing.factor, decimals, writing.mark) + quantity.NO_BREAK_SPACE + writing.unit
    exact = math.fabs(added - reach / writing.factor) < 0.5 * float(f"1e-{decimals}")
    listed = [(number, arrow.subtracted) for number, arrow in zip(numbers, arrows, strict=True)]
    return alone_words.numbers_alone(listed, total, exact=exact), total, reach


def _number(written: str) -> float:
    return float(written.replace(",", ".").replace("−", "-"))


def numbers_frame(case: SumCase, look: PhasorStyles, number: int) -> LessonFrame:
    """Return the arrows in one line (1), or each turned to its own direction beside it (2)."""
    arrows, tags = _lined_up(case), case.notation.tags
    added, total, reach = _alone(case, arrows)
    turned = number == FRAMES
    sentence = alone_words.TURNED if turned else alone_words.IN_ONE_LINE
    reading, why = added, alone_words.ONE_LINE_WHY
    if any(arrow.subtracted for arrow in arrows):
        why = alone_words.ONE_LINE_LESS_WHY
    is_same = math.fabs(reach - case.size) <= SAME * max(math.fabs(reach), case.size)
    if turned:
        size, name = case.amount(case.size), tags[SUM_KEY]
        reading = words.together_reading(name, size) if is_same else alone_words.not_the_numbers(name, size, total)
        why = alone_words.SAME_WAY_WHY if is_same else alone_words.TURNED_WHY
    picture = numbers_page(arrows, case.picture, look, (total,), plain(sentence), turned=turned)
    return LessonFrame(number, FRAMES, sentence, reading, (), (why,), picture, answers=turned or is_same)


def finished_frame(case: SumCase, lesson: Lesson) -> LessonFrame:
    """Return the frame behind the last move: the drawing without an instrument, and its result."""
    notation, sentences = case.notation, lesson.sentences
    number = len(lesson.frames) + 1
    moves = frozenset(range(len(lesson.plan.construction.moves)))
    frame = Frame(WORDS, len(lesson.plan.construction.steps), "", None, moves)
    title = plain(alone_words.FINISHED_SENTENCE)
    picture = frame_page(
        lesson.plan, frame, lesson.look, lesson.stage, title, "", before=moves, circle=lesson.circle
    )
    key = RETURN_KEY if sentences.is_only_returning else SUM_KEY
    reading = words.together_reading(notation.tags[key], notation.amount_of(key, case.size))
    return LessonFrame(
        number, number, alone_words.FINISHED_SENTENCE, reading, (), (), picture, answers=True,
        heading=alone_words.FINISHED,
        begins=(*lesson.begins(), number), stage=lesson.stage_key(),
    )  # fmt: skip
