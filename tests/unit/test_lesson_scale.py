"""The lesson's first picture: the longest line at the scale, along a ruler."""

from importlib import import_module

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.constructions import step_kinds
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.geometry import distance
from pycore.sheet.instruments import RULER_BEFORE_ZERO
from pycore.sheet.laying import WIDTH, ruler_length
from pycore.sheet.lesson_view import _Showing
from pycore.sums.classroom import SumLesson


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_ruler_that_has_room_is_whole(slug: str):
    """On the power triangle the view's edge cut it in the middle of a number."""
    form_of = import_module(f"calculators.{slug.replace('-', '_')}.forms").form
    default, whole = default_form(CALCULATORS[slug].fields), 0
    for form in (default, *({**default, **form_of(number)} for number in range(40))):
        try:
            lesson = SumLesson(CALCULATORS[slug].case(form)).lesson
        except InputError:
            continue
        frame = lesson.frames[0]
        assert step_kinds.SCALE == frame.name
        view = _Showing(lesson.plan, frame, lesson.look, lesson.stage, circle=lesson.circle)
        start, end = view.ruled()
        before, ruler = RULER_BEFORE_ZERO * view.zoom, ruler_length(distance(start, end) / view.zoom) * view.zoom
        if 2 * before + ruler <= WIDTH:
            assert start.x >= before - 1e-6
            assert start.x + ruler + before <= WIDTH + 1e-6
            whole += 1
    assert whole
