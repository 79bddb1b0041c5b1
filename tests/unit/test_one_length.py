"""One length has one number: in moves, lesson, table, results and both keys, to half a millimetre."""

import math
import re
from collections import defaultdict

import pytest
from host import shelf

from pycore.calculators.registry import CALCULATORS
from pycore.constructions import roles, step_kinds
from pycore.constructions.moves import Join, ReadLength, SetOff
from pycore.constructions.names import DIAGONAL_LENGTH, RESULT_LENGTH, RETURN_KEY, SUM_KEY, arm_key
from pycore.practice.key import amount_of
from pycore.sums.lesson import Lesson
from pycore.sums.rows import rows_of
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import plain

FORMS = 40
MM = re.compile(r"(\d[\d.,]*)\u00a0mm")
OF_ITS_PHASOR = (step_kinds.DRAW_FIRST, step_kinds.DRAW_ALONG, step_kinds.DRAW, step_kinds.FOLLOW)
Named = dict[str, dict[str, set[float]]]


def value(text: str) -> float:
    return float(text.replace(",", "."))


def one_name(key: str) -> str:
    """The returning phasor is as long as the sum."""
    return SUM_KEY if key == RETURN_KEY else key


class Lengths:
    """Every length of one problem's sheet by the key of what is so long, and where its number stands."""

    def __init__(self, slug: str, form: dict[str, str]) -> None:
        self.page = CALCULATORS[slug]
        self.case = self.page.case(form)
        self.plan = self.case.sheet_plan()
        self.sentences = StepSentences(self.plan, self.case.notation)
        self.first_diagonal = arm_key(self.plan.construction.order)
        self.found: Named = defaultdict(lambda: defaultdict(set))
        self.form = form

    def note(self, key: str, text: str, where: str) -> None:
        """Note the first length of a text."""
        number = MM.search(text)
        if key and number:
            self.found[one_name(key)][where].add(value(number[1]))

    def collect(self) -> Named:
        """Every length with its name."""
        self.of_moves()
        self.of_lesson()
        self.of_table()
        self.of_results()
        return self.found

    def of_moves(self) -> None:
        for step in self.plan.construction.steps:
            text = plain(self.sentences.sentence(step)[0])
            if step.name in OF_ITS_PHASOR:
                self.note(arm_key(step.arm_numbers[-1]), text, "moves")
            elif step.name == step_kinds.PARALLEL and len(step.arm_numbers) == 2:
                self.note(arm_key(step.arm_numbers[1]), text, "moves")
            elif step.name == step_kinds.DIAGONAL:
                self.note(self.first_diagonal, text, "moves")
            elif step.name in (step_kinds.READ, step_kinds.RETURN):
                self.note(SUM_KEY, text, "moves")
            elif step.name == step_kinds.SCALE:
                longest = max(self.plan.construction.arms, key=lambda arm: arm.size)
                self.note(longest.key, text, "moves")

    def of_lesson(self) -> None:
        lesson = Lesson(self.plan, self.sentences, look_of(self.case))
        named = {DIAGONAL_LENGTH: self.first_diagonal, RESULT_LENGTH: SUM_KEY}
        for frame in lesson.frames:
            move, text = frame.move, plain(lesson.frame_words(frame)[1])
            if isinstance(move, SetOff) and move.role != roles.MARK:
                self.note(move.phasor, text, "lesson")
            elif isinstance(move, Join) and move.role in (roles.PARALLEL, roles.RESULTANT):
                self.note(move.like or move.phasor, text, "lesson")
            elif isinstance(move, ReadLength):
                self.note(named.get(move.reading, ""), text, "lesson")

    def of_table(self) -> None:
        symbols = {plain(self.case.row_tag(key)): key for key in self.case.notation.tags}
        for row in rows_of(self.case, self.plan):
            if row.length and (key := symbols.get(plain(row.symbol))):
                self.found[one_name(key)]["table"].add(value(row.length))

    def of_results(self) -> None:
        texts = [output.text for output in self.page.outputs(self.case, self.plan) if output.name.endswith("-length")]
        self.note(SUM_KEY, texts[0], "results")
        self.note(SUM_KEY, self.case.length(self.plan), "headline")


@pytest.mark.parametrize("slug", CALCULATORS)
def test_one_length_has_one_number(slug: str):
    places: set[str] = set()
    for form in shelf.forms(slug, FORMS):
        for key, found in Lengths(slug, form).collect().items():
            numbers = set[float]().union(*found.values())
            assert len(numbers) == 1, (slug, key, dict(found), form)
            (number,) = numbers
            assert math.isclose(2 * number % 1.0, 0.0) or number < 0.5, (slug, key, number)
            places |= set(found)
    assert places >= {"moves", "lesson", "table", "results", "headline"}


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_key_of_a_class_has_the_number_of_the_sheet(slug: str):
    for form in shelf.forms(slug, 10):
        lengths = Lengths(slug, form)
        found, task = lengths.collect()[SUM_KEY], CALCULATORS[slug].task(form)
        # Where the same is asked for at the same scale.
        if "table" in found and task.factor == lengths.plan.factor and task.result == lengths.case.total:
            assert value(amount_of(task, task.result).length) in found["table"], form
