"""A step has one number: in the page's list, the drawing, the lesson, easy reading and feedback."""

import re

import pytest
from host import shelf

from pycore.calculators.registry import CALCULATORS
from pycore.sheet.compose import settled
from pycore.sums.answer import Move
from pycore.sums.lesson import Lesson
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.sums.tool_uses import ToolMoves
from pycore.words import checking

FORMS = 3
LIST = re.compile(r'<ol class="moves" role="list"(?: start="(\d+)")?>(.*?)</ol>', re.DOTALL)
STEP = re.compile(r'<li data-for-step="(\d+)"')


@pytest.mark.parametrize("slug", CALCULATORS)
def test_list_lesson_easy_reading_and_drawing_number_steps_alike(slug: str):
    for form in shelf.forms(slug, FORMS):
        case = CALCULATORS[slug].case(form)
        plan = case.sheet_plan()
        numbers = [number for number, _ in plan.construction.numbered]
        sentences = StepSentences(plan, case.notation)
        assert numbers == [move.step for move in sentences.all_moves() if isinstance(move, Move)]
        assert numbers == [move.number for move in ToolMoves(case).all()]
        lesson = Lesson(plan, sentences, look_of(case))
        places = [lesson.step_place(at + 1) for at in range(len(lesson.frames))]
        assert {place.step for place in places} <= set(numbers)
        assert {place.steps for place in places} == {len(numbers)}
        drawn = settled(plan, look_of(case))[1].by_step
        assert set(drawn) <= set(numbers)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_a_list_shows_beside_a_move_is_its_number(slug: str):
    for form in shelf.forms(slug, FORMS):
        reply, _ = shelf.ask(slug, form, parts=["workings"])
        lists = LIST.findall(reply["regions"]["workings"])
        assert lists
        for start, items in lists:
            first = int(start or 1)
            steps = [int(step) for step in STEP.findall(items)]
            assert steps == list(range(first, first + len(steps)))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_feedback_names_the_step_that_the_lesson_then_shows(slug: str):
    seen = 0
    for form in shelf.forms(slug, FORMS):
        page = CALCULATORS[slug]
        place_of = page.places(form)
        for mistake in page.task(form).mistakes:
            where = place_of(mistake)
            if where is None or not where.step:
                continue
            frame = page.lesson(form, "lesson", where.step)
            assert frame.place and frame.place.step == where.listed, mistake.key
            assert str(frame.place.step) in checking.step(where.listed)
            seen += 1
    # Pages whose mistakes are all of calculating point to a working instead.
    assert seen or slug != "neutral-current"
