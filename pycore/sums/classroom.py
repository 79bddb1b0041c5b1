"""A sum of phasors for the classroom: a construction frame by frame, all constructions together, ropes, waves."""

from dataclasses import replace

from pycore import phasor, quantity
from pycore.constructions.construction import Construction
from pycore.constructions.names import SUM_KEY
from pycore.sheet import pictures
from pycore.sums.case import SumCase
from pycore.sums.lesson import Lesson, LessonFrame
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import lesson as words
from pycore.words import plain
from pycore.words.phrase import Phrase

LESSON, TOGETHER, PULL, WAVES = VIEWS = ("lesson", "together", "pull", "waves")
WAVE_STEP = 10.0
"""Degrees from one position of the waves' slider to the next."""


class SumLesson:
    """Everything that the classroom view can show for one problem, by view and step number from 1."""

    def __init__(self, case: SumCase) -> None:
        self.case = case
        self.plan = self.case.sheet_plan()
        self.look = look_of(self.case)

    def lesson(self) -> Lesson:
        """The construction on the sheet, frame by frame."""
        return Lesson(self.plan, StepSentences(self.plan, self.case.notation), self.look)

    def count(self, view: str) -> int:
        """Return the number of steps of a view; raises KeyError for an unknown view."""
        return {
            LESSON: lambda: len(self.lesson().frames),
            TOGETHER: lambda: len(self.methods()),
            PULL: lambda: len(self.case.arms) + 1,
            WAVES: lambda: int(360.0 / WAVE_STEP),
        }[view]()

    def show(self, view: str, step: int) -> LessonFrame:
        """Return one step of a view; a number out of range is brought into range.

        A view that this problem does not offer opens the lesson at its first step.
        """
        if view in VIEWS and view not in self.views:
            view, step = LESSON, 1
        number = min(max(step, 1), self.count(view))
        ways = {TOGETHER: self.together, PULL: self.pull, WAVES: self.waves}
        frame = self.lesson().show(number) if view == LESSON else ways[view](number)
        return replace(frame, view=view, views=self.views)

    @property
    def views(self) -> tuple[str, ...]:
        """The views that tell the truth of this problem: all others than the lesson show a sum, waves one of sine
        waves."""
        if not self.case.is_sum:
            return (LESSON,)
        return VIEWS if self.case.notation.words.alternates else (LESSON, TOGETHER, PULL)

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
        """Return a ring pulled by ropes, one more with each step."""
        phasors, count = self.phasors(), number - 1
        tags = self.case.notation.tags
        reading: Phrase = ()
        if count == 0:
            sentence = words.RING
        else:
            key, value = phasors[count - 1]
            sentence = words.rope(
                tags[key], self.case.notation.short_of(key, phasor.magnitude(value)), is_first=count == 1
            )
        if count > 1:
            net = phasor.total(value for _, value in phasors[:count])
            keys = [key for key, _ in phasors[:count]]
            name = tags[SUM_KEY] if count == len(phasors) else pictures.partial_tag(tags, keys)
            reading = words.net_pull(name, self.case.amount(phasor.magnitude(net))) if net else words.NO_PULL
        why = (words.analogy(self.case.notation.words.quantity + "s"),)
        picture = pictures.pull(phasors, count, self.case.picture, self.look, plain(sentence))
        return LessonFrame(
            number, len(phasors) + 1, sentence, reading, (), why, picture, count == len(phasors)
        )

    def waves(self, number: int) -> LessonFrame:
        """Return phasors turned through one period, ten degrees for each step, beside their waves."""
        turned = WAVE_STEP * (number - 1)
        phasors = [*self.phasors(), (SUM_KEY, self.case.total)]
        sentence = words.waves(self.case.notation.words.quantity, quantity.plain(turned) + "°")
        picture = pictures.waves(phasors, turned, self.look, plain(sentence))
        tags = self.case.notation.tags
        why = (words.waves_why(tags[SUM_KEY], [tags[arm.key] for arm in self.case.arms]),)
        return LessonFrame(number, self.count(WAVES), sentence, (), (), why, picture)
