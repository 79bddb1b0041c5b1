"""Phasors on one line stand beside each other, their exact lines stay; ticks keep away from what crosses a line."""

import math

import pytest
from calculators.neutral_current.forms import forms
from unit.sheets import NEUTRAL, on_page, said_on, strokes, texts

from pycore import geometry
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Circle, Line, Page, Shape
from pycore.forms.fields import default_form
from pycore.geometry import Point
from pycore.sheet.aside import overlap
from pycore.sheet.wave_view import ASIDE, CENTRE

ON_ONE_LINE = {
    "voltages of coil and capacitor": ("series-circuit", {}, "i3"),
    "reactive power and its correction": ("power-triangle", {}, "i3"),
    "third harmonics and their sum": ("harmonics-in-the-neutral", {}, "sum"),
    "one line alone": ("neutral-current", {"i1": "18.4", "i2": "0", "i3": "0"}, "sum"),
    "equal currents": ("neutral-current", {"i1": "18.4", "i2": "18.4", "i3": "18.4"}, "i3"),
}


def heads(page: Page, key: str) -> list[Point]:
    """The points of the heads that are seen of a phasor which stands aside."""
    return [placed.item.points[0] for placed in on_page(page, Shape) if placed.phasor == key]


@pytest.mark.parametrize("name", ON_ONE_LINE)
def test_a_phasor_on_another_line_stands_five_millimetres_beside_it(name: str):
    """What is seen is 5 mm away; the line from tail to tip that programs read is at its true place; a note says so."""
    slug, form, key = ON_ONE_LINE[name]
    page = CALCULATORS[slug].sheet_page(form)
    arrows = [placed.item for placed in on_page(page, Arrow) if placed.phasor == key and placed.item.head == 0.0]
    exact = arrows[-1]
    across = [geometry.distance(exact.tip, head) for head in heads(page, key)]
    assert any(far == pytest.approx(5.0, abs=1e-9) for far in across)
    rings = [placed.item.centre for placed in on_page(page, Circle) if placed.step]
    assert any(geometry.distance(exact.tip, ring) < 1e-9 for ring in rings)
    thin = [placed.item for placed in on_page(page, Line) if placed.step and placed.item.width == 0.18]
    for end in (exact.tail, exact.tip):
        assert any(line.start == end and geometry.distance(*ends(line)) == pytest.approx(7.0) for line in thin)
    assert "thin lines carry" in said_on([page])


def ends(line: Line) -> tuple[Point, Point]:
    return line.start, line.end


def test_the_figure_stands_where_it_stood_and_nothing_else_is_moved():
    """The starting point of a problem is that of its construction; a sheet without such phasors has no note."""
    for form in ({"i2": "0", "i3": "0"}, {"i2": "18.4", "i3": "18.4"}):
        start = next(p.item.centre for p in on_page(NEUTRAL.sheet_page(form), Circle) if p.step)
        crossed = NEUTRAL.sheet_page({**form, "sheet": "problem"})
        assert start in [placed.item.centre for placed in on_page(crossed, Circle) if "start" in placed.names]
    assert "thin lines" not in said_on([NEUTRAL.sheet_page({})])


def test_no_visible_arrows_of_random_sheets_lie_on_each_other():
    seen = 0
    for form in forms(150):
        page = NEUTRAL.sheet_page(form)
        shown = [p.item for p in on_page(page, Arrow) if p.phasor and p.item.head > 0.0]
        seen += len(shown)
        for index, one in enumerate(shown):
            for other in shown[index + 1 :]:
                assert overlap(one.tail, one.tip, other.tail, other.tip) <= 2.0
    assert seen > 300


WAVES = {
    "third harmonics": ("harmonics-in-the-neutral", {}, 3),
    "equal currents of one line": ("neutral-current", {"i1": "18", "i2": "0", "i3": "0"}, 1),
    "two in opposite directions": ("series-circuit", {"r": "", "supply": "2 A"}, 1),
    "none": ("neutral-current", {}, 0),
}


@pytest.mark.parametrize("name", WAVES)
def test_arrows_of_the_waves_stand_beside_each_other_at_every_moment(name: str):
    """As on a sheet: the exact line to the true tip stays, shaft and head stand aside."""
    slug, form, moved = WAVES[name]
    page = CALCULATORS[slug]
    form = {**default_form(page.fields), **form}
    for step in (1, 4.3, 10, 12.5, 19, 28, 36):
        picture = page.lesson(form, "waves", step).picture
        arrows = [placed for placed in on_page(picture, Arrow) if placed.phasor]
        assert len({placed.phasor for placed in arrows}) == len(arrows)
        aside = [placed for placed in arrows if placed.item.head == 0.0]
        assert moved == len(aside)
        seen = [(placed.item.tail, placed.item.tip) for placed in arrows if placed not in aside]
        for placed in aside:
            tip = max(heads(picture, placed.phasor), key=lambda point: geometry.distance(point, CENTRE))
            shift = Point(tip.x - placed.item.tip.x, tip.y - placed.item.tip.y)
            assert math.hypot(*shift) == pytest.approx(ASIDE * round(math.hypot(*shift) / ASIDE), abs=1e-6)
            seen.append((placed.item.tail.plus(shift), tip))
        for index, one in enumerate(seen):
            assert all(overlap(*one, *other) <= 2.0 for other in seen[index + 1 :])


def ticks_of(page: Page, key: str) -> list[Line]:
    return [p.item for p in on_page(page, Line) if p.phasor == key and geometry.distance(*ends(p.item)) < 4.5]


def test_ticks_of_the_example_keep_away_from_crossings_and_arcs():
    page = NEUTRAL.sheet_page({})
    others = [stroke for stroke in strokes(page) if "parallel" in stroke.source or "Arc" in stroke.source]
    for key in ("i1", "i2", "i3"):
        ticks = ticks_of(page, key)
        assert ticks
        at = geometry.bounds([end for tick in ticks for end in ends(tick)]).centre
        assert min(geometry.segment_distance(at, one.start, one.end) for one in others) > 6.0


def test_names_of_the_example_keep_away_from_ticks_and_crossings():
    """The name of a phasor stands beside a piece of its line where nothing else is."""
    page = NEUTRAL.sheet_page({})
    across = [tick for key in ("i1", "i2", "i3") for tick in ticks_of(page, key)]
    names = [text.box for text in texts(page) if text.words in ("I1", "I2", "I3", "I1 + I2", "IN") and text.step]
    assert len(names) == 5
    for box in names:
        assert all(not box.grown(2.5).meets_segment(*ends(tick)) for tick in across)


def test_components_bear_the_lengths_of_their_parts():
    """18.4, 11.2 and 24.6 A at 1 cm = 2 A: the parts of the second and third current to half a millimetre."""
    said = said_on([NEUTRAL.sheet_page({"method": "components"})])
    for size in (56.0, 123.0):
        for part in (size * math.cos(math.radians(30.0)), size * math.sin(math.radians(30.0))):
            assert f"{round(2.0 * part) / 2.0:g} mm" in said
