"""A sum of phasors for the classroom: a construction frame by frame, all constructions together, ropes, waves."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cached_property, lru_cache
from typing import Any

from pycore import phasor, quantity
from pycore.constructions.construction import Construction
from pycore.constructions.moves import SetOff
from pycore.constructions.names import SUM_KEY
from pycore.drawing import Line, Page
from pycore.geometry import Point
from pycore.sheet import pictures
from pycore.sheet.styles import Style
from pycore.sheet.ticks import ticks
from pycore.sheet.wave_view import Wave, top_of, waves_page
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson
from pycore.sums.lesson_frame import GivenValue, LessonFrame
from pycore.sums.numbers_alone import FRAMES, finished_frame, numbers_frame
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import lesson as words
from pycore.words import plain
from pycore.words.phrase import Phrase, negated

LESSON, NUMBERS, TOGETHER, PULL, WAVES = VIEWS = ("lesson", "numbers", "together", "pull", "waves")
WAVE_STEP = 10.0
"""Degrees from one position of the waves' slider to the next."""
STRIP = Style(wide=0.4, tick=2.2, tick_gap=1.0)
GIVEN_LINE = (6.5, 2.6)
"""Width and height of a phasor's line in the strip of values, units."""


class SumLesson:
    """Everything that the lesson view can show for one problem, by view and step number from 1."""

    def __init__(self, case: SumCase) -> None:
        self.case = case
        self.plan = self.case.sheet_plan()
        self.look = look_of(self.case)

    @cached_property
    def lesson(self) -> Lesson:
        """The construction on the sheet, frame by frame."""
        return Lesson(self.plan, StepSentences(self.plan, self.case.notation), self.look)

    def given(self) -> tuple[GivenValue, ...]:
        """Return the phasors of the problem for the strip over the picture, each in its own ink with its ticks; what is
        drawn between other points, as a correction, is no value of the problem."""
        notation, look = self.case.notation, self.look
        set_off = {move.phasor for move in self.plan.construction.moves if isinstance(move, SetOff)}
        wide, high = GIVEN_LINE
        start, end = Point(0.0, high / 2), Point(wide, high / 2)
        values = []
        for arm in (arm for arm in self.case.arms if arm.key in set_off):
            ink = look.inks[arm.key]
            across = ticks(start, end, look.ticks.get(arm.key, 0), STRIP.wide, ink, STRIP, 0.5)
            line = Page(wide, high, (Line(start, end, STRIP.wide, ink), *across))
            values.append(GivenValue(arm.key, look.tags[arm.key], line, notation.short_of(arm.key, arm.size)))
        return tuple(values)

    def number_of_step(self, step: int) -> int:
        """Return the number of the first frame of a step of the page's list."""
        return self.lesson.number_of_step(step)

    def count(self, view: str) -> int:
        """Return the number of steps of a view; raises KeyError for an unknown view."""
        return {
            LESSON: lambda: len(self.lesson.frames) + 1,  # the last is the finished drawing
            NUMBERS: lambda: FRAMES,
            TOGETHER: lambda: len(self.methods()),
            PULL: lambda: len(self.case.arms) + 1,  # the last is the balancing pull
            WAVES: lambda: int(360.0 / WAVE_STEP),
        }[view]()

    def show(self, view: str, step: float) -> LessonFrame:
        """Return one step of a view; a number out of range is brought into range.

        Between two steps of the waves there are tenths, a degree each. A view that this problem does not offer opens
        the lesson at its first step.
        """
        if view in VIEWS and view not in self.views:
            view, step = LESSON, 1
        number = min(max(int(step), 1), self.count(view))
        if view == WAVES:
            turned = round(WAVE_STEP * (step - 1)) if number == int(step) else round(WAVE_STEP * (number - 1))
            frame = self.waves(number, turned)
        else:
            ways = {LESSON: self.move, NUMBERS: self.numbers, TOGETHER: self.together, PULL: self.pull}
            frame = ways[view](number)
        scale = self.case.notation.scales(self.plan.scale, self.plan.second) if view == LESSON else ""
        return replace(frame, view=view, views=self.views, values=self.given(), scale=scale)

    @property
    def views(self) -> tuple[str, ...]:
        """The views that tell the truth of this problem: all others than the lesson show a sum, waves one of sine
        waves. The numbers alone are of several phasors."""
        if not self.case.is_sum:
            return (LESSON,)
        views = VIEWS if self.case.notation.words.alternates else (LESSON, NUMBERS, TOGETHER, PULL)
        return tuple(view for view in views if view != NUMBERS or len(self.case.arms) > 1)

    def move(self, number: int) -> LessonFrame:
        """Return one move of the drawing, and behind the last the finished drawing."""
        lesson = self.lesson
        count = len(lesson.frames) + 1
        if number == count:
            return finished_frame(self.case, lesson)
        return replace(lesson.show(number), count=count, begins=(*lesson.begins(), count))

    def numbers(self, number: int) -> LessonFrame:
        """Return the arrows in one line, as numbers are added, and then each in its own direction."""
        return numbers_frame(self.case, self.look, number)

    def methods(self) -> tuple[tuple[str, Construction], ...]:
        """Return every construction of the problem with its name."""
        constructions: list[tuple[str, Construction]] = []
        for method in self.case.methods:
            if self.case.possible(method) != method:
                continue
            for order in self.case.orders(method):
                title = self.case.method_title(method, order)
                constructions.append((plain(title), self.case.build(method, order)))
        return tuple(constructions)

    def together(self, number: int) -> LessonFrame:
        """Return constructions drawn on top of one another, one more with each step."""
        methods = self.methods()
        amount = self.case.amount(self.case.size)
        tell = words.together_first if number == 1 else words.together
        sentence = tell(methods[number - 1][0])
        reading = words.together_reading(self.case.notation.tags[SUM_KEY], amount)
        picture = pictures.together(
            [construction for _, construction in methods], number - 1, self.case.picture, self.look, plain(sentence)
        )
        why = (words.TOGETHER_WHY,) if number == len(methods) else ()
        return LessonFrame(number, len(methods), sentence, reading, (), why, picture, answers=True)

    def phasors(self) -> list[tuple[str, complex]]:
        """Return the phasors that are not zero, by key."""
        return [(arm.key, phasor.polar(arm.size, arm.angle)) for arm in self.case.arms]

    def pull(self, number: int) -> LessonFrame:
        """Return a ring pulled by ropes, one more with each step, and at last the pull that keeps it at rest."""
        phasors, tags = self.phasors(), self.case.notation.tags
        why = (words.analogy(self.case.notation.words.quantity + "s"),)
        balanced = number > len(phasors)
        count = min(number, len(phasors))
        net = phasor.total(value for _, value in phasors[:count])
        reading: Phrase = ()
        if balanced:
            sentence = words.balancing(tags[SUM_KEY]) if net else words.NOTHING_TO_BALANCE
            opposite = self.case.amount(phasor.magnitude(net))
            reading = words.balancing_pull(negated(tags[SUM_KEY]), opposite) if net else words.NO_PULL
        else:
            key, value = phasors[count - 1]
            size = self.case.notation.short_of(key, phasor.magnitude(value))
            sentence = words.rope(tags[key], size, is_first=count == 1)
            if count > 1:
                keys = [key for key, _ in phasors[:count]]
                name = tags[SUM_KEY] if count == len(phasors) else pictures.partial_tag(tags, keys)
                reading = words.net_pull(name, self.case.amount(phasor.magnitude(net))) if net else words.NO_PULL
        title = plain(sentence)
        picture = pictures.pull(phasors, count, self.case.picture, self.look, title, balanced=balanced)
        answers = bool(reading) and count == len(phasors)
        return LessonFrame(number, len(phasors) + 1, sentence, reading, (), why, picture, answers)

    def waves(self, number: int, turned: int) -> LessonFrame:
        """Return phasors turned through one period, ten degrees for each step, beside their waves."""
        notation = self.case.notation
        found = [Wave(key, value) for key, value in [*self.phasors(), (SUM_KEY, self.case.total)]]
        sentence = words.waves(notation.words.quantity, f"{turned}°")
        writing = notation.writing

        def amount(value: float) -> str:
            """The unit stands at the top of the axis only."""
            number = quantity.plain(value / writing.factor, writing.mark)
            return number + quantity.NO_BREAK_SPACE + writing.unit if value == top_of(found) else number

        picture = waves_page(found, turned, self.look, amount, plain(sentence))
        why = (
            words.waves_why(notation.tags[SUM_KEY], [notation.tags[arm.key] for arm in self.case.arms]),
            words.peaks([notation.short_of(arm.key, arm.size) for arm in self.case.arms]),
        )
        reading = self.moment(found, turned)
        frame = LessonFrame(number, self.count(WAVES), sentence, reading, (), why, picture, answers=True)
        return replace(frame, turned=turned)

    def moment(self, found: Sequence[Wave], turned: float) -> Phrase:
        """Return the sum of the values at one moment, all with as many decimals as the largest peak needs."""
        writing, tags = self.case.notation.writing, self.case.notation.tags
        decimals = quantity.decimals_for(max(wave.peak for wave in found) / writing.factor)

        def text(value: float) -> str:
            written = quantity.fixed(value / writing.factor, decimals, writing.mark)
            return written if any(digit in written for digit in "123456789") else written.lstrip("-−")

        values = [wave.at(turned) for wave in found]
        numbers = [round(value / writing.factor, decimals) for value in values]
        left = math.fsum(numbers[:-1]) - numbers[-1]
        exact = math.fabs(left) < 0.5 * float(f"1e-{decimals}")
        parts = [(tags[wave.key], text(value)) for wave, value in zip(found[:-1], values[:-1], strict=True)]
        total = text(values[-1]) + quantity.NO_BREAK_SPACE + writing.unit
        return words.moment(parts, tags[SUM_KEY], total, exact=exact)


def lesson_of(page: Any, form: Mapping[str, str]) -> SumLesson:
    """Return the lesson of a page's form. The last ones stand ready: a lesson is asked for frame after frame. Raises
    InputError."""
    found: SumLesson = _lesson_of(page, tuple(form.items()))
    return found


@lru_cache(maxsize=2)
def _lesson_of(page: Any, typed: tuple[tuple[str, str], ...]) -> SumLesson:
    return SumLesson(page.case(dict(typed)))
