"""Drawings read from strokes: true strokes give true points whichever method was drawn; what is not clear is asked."""

import json
import math
import re
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from bench.pencil import strokes_in
from pencilled import METHODS, NEUTRAL, Drawn, Pencilled, drawn_by, pencilled
from photographs import OPENING

from pycore import api, geometry
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.methods import COMPONENTS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.geometry import Box, Point
from pycore.practice.photograph import Photo, measure_read, measured_by
from pycore.practice.stroke_reading import StrokeReading, guides_of, needed_points, read_strokes
from pycore.practice.strokes import StrokeSheet, crossing, sine_between, stroke_of
from pycore.sheet.printed import printed_matter
from pycore.sums.strokes import StrokesTask, strokes_task

SEEDS = (1, 3, 4, 7, 9, 21, 24)
"""Sheets of both methods whose lines cross steeply."""


@lru_cache(maxsize=64)
def sheet_of(seed: int, method: str = "") -> Pencilled:
    """A made-up sheet."""
    return pencilled(seed, method)


def found(stroke: Drawn) -> dict:
    """One drawn line as the page's script finds it."""
    length = geometry.distance(stroke.start, stroke.end)
    heads = [[length - 0.5, 1, 9.0]] if stroke.arrow else []
    ends = {"x1": stroke.start.x, "y1": stroke.start.y, "x2": stroke.end.x, "y2": stroke.end.y}
    return {**ends, "dark": 0.01 if stroke.faint else 0.03, "runs": [[0.0, length]], "blind": [], "heads": heads}


def strokes(drawn: Sequence[Drawn]) -> list[dict]:
    """Drawn lines as the page's script finds them; one that lies along another is one with it."""
    long = [stroke for stroke in drawn if geometry.distance(stroke.start, stroke.end) > 7.0]
    return [found(stroke) for stroke in long]


def read_by(task: StrokesTask, drawn: Sequence[Drawn]) -> StrokeReading:
    """The reading of a task's sheet with these lines on it."""
    made = strokes_in(strokes(drawn))
    return read_strokes(StrokeSheet(made, task.photo.origin, guides_of(task.drawings)), task.drawings)


def read(sheet: Pencilled, drawn: Sequence[Drawn]) -> StrokeReading:
    """The reading of a sheet with these lines on it."""
    return read_by(strokes_task(NEUTRAL, sheet.form), drawn)


def off(sheet: Pencilled, reading: StrokeReading) -> float:
    """How far the worst point is from where it was drawn."""
    points = {point.name: point.place for point in reading.points}
    needed = needed_points(sheet.want.drawing)
    return max(geometry.distance(points[name], Point(*sheet.points[name])) for name in needed if name in points)


@pytest.mark.parametrize("seed", SEEDS)
def test_true_strokes_give_true_points_and_the_method_that_was_drawn(seed: int):
    sheet = sheet_of(seed)
    reading = read(sheet, sheet.strokes)
    assert sheet.method == reading.method
    assert reading.sure
    assert off(sheet, reading) < 0.4


@pytest.mark.parametrize("seed", [2, 5, 14])
def test_components_are_read_from_where_the_perpendiculars_begin(seed: int):
    sheet = sheet_of(seed)
    assert COMPONENTS == sheet.method
    reading = read(sheet, sheet.strokes)
    assert COMPONENTS == reading.method
    places = {point.name: point.place for point in reading.points}
    for name in ("T2", "T3", "N"):
        assert geometry.distance(places[name], Point(*sheet.points[name])) < 0.6


@pytest.mark.parametrize("seed", [50012, 50024])
def test_components_whose_lines_lie_on_one_another_are_read(seed: int):
    """Two lines may end in one place; the arrows that both are taken for have one place then."""
    sheet = sheet_of(seed)
    assert COMPONENTS == sheet.method == read(sheet, sheet.strokes).method


def test_another_method_than_the_sheet_asks_for_is_found():
    seeds = (seed for seed in range(200) if sheet_of(seed).form["method"] != sheet_of(seed).method)
    sheet = next(sheet for sheet in map(sheet_of, seeds) if sheet.method == "tip-to-tail")
    assert "tip-to-tail" == read(sheet, sheet.strokes).method


def test_a_third_arrow_that_begins_at_the_start_is_read_where_it_is():
    sheet = next(one for one in map(sheet_of, range(1, 900, 3)) if one.mistake == "from-start")
    reading = read(sheet, sheet.strokes)
    assert "tip-to-tail" == reading.method
    assert off(sheet, reading) < 0.8


@pytest.mark.parametrize("slug", CALCULATORS)
def test_on_every_calculator_s_sheet_nothing_is_read_wrongly_and_said_to_be_sure(slug: str):
    """Exactly drawn, by every method that the page has; lines that lie on one another may be asked."""
    page, counted = CALCULATORS[slug], 0
    for method in METHODS:
        form = default_form(page.fields) | {"sheet": "problem", "method": method}
        try:
            task = strokes_task(page, form)
        except InputError:
            continue
        field = page.case(form).sheet_plan().layout.field
        made = drawn_by(task.photo, "", np.random.default_rng(1), field)
        if made is None:
            continue
        points, _, lines = made
        reading = read_by(task, lines)
        counted += 1
        if reading.sure:
            assert task.photo.drawing.construction.method == reading.method
            for point in reading.points:
                if point.name in points:
                    assert geometry.distance(point.place, Point(*points[point.name])) < 1.0
    assert counted


def test_an_arrow_that_was_left_out_is_asked_and_never_said_not_to_be_there():
    sheet = sheet_of(3)
    third, end = (Point(*sheet.points[name]) for name in ("T3", "N"))
    kept = [stroke for stroke in sheet.strokes if all(
        geometry.distance(at, gone) > 14.0 for at in (stroke.start, stroke.end) for gone in (third, end)
    )]  # fmt: skip
    reading = read(sheet, kept)
    assert not reading.sure
    assert {"T3", "N"} <= {name for name, _ in reading.missing} | {p.name for p in reading.points if not p.sure}


def test_a_clear_line_that_belongs_to_nothing_is_asked_about():
    sheet = sheet_of(9)
    beside = Drawn(Point(30.0, 40.0), Point(80.0, 44.0))
    assert read(sheet, sheet.strokes).sure
    assert ("more",) == read(sheet, [*sheet.strokes, beside]).why


def test_a_blank_sheet_has_nothing_on_it_and_says_so():
    reading = read(sheet_of(1), [])
    assert ("nothing",) == reading.why
    assert not reading.points and reading.missing


@pytest.mark.parametrize("seed", SEEDS)
def test_a_mirrored_drawing_is_not_taken_for_a_right_one(seed: int):
    """What was drawn counts, not what should have been: no point is pulled to where it belongs."""
    sheet = sheet_of(seed)
    o = sheet.want.origin
    mirrored = [
        replace(stroke, start=Point(2 * o.x - stroke.start.x, stroke.start.y),
                end=Point(2 * o.x - stroke.end.x, stroke.end.y))
        for stroke in sheet.strokes
    ]  # fmt: skip
    reading = read(sheet, mirrored)
    if reading.sure:
        points = {point.name: point.place for point in reading.points}
        for name, (x, y) in sheet.points.items():
            assert geometry.distance(points[name], Point(2 * o.x - x, y)) < 0.6


def test_crossings_and_cover_of_strokes():
    one = stroke_of(Point(0.0, 0.0), Point(40.0, 0.0), 0.1, [(0.0, 10.0), (20.0, 40.0)], [(10.0, 15.0)], [])
    other = stroke_of(Point(50.0, -10.0), Point(50.0, 30.0), 0.1, [(0.0, 40.0)], [], [])
    assert one and other
    assert Point(50.0, 0.0) == crossing(one, other)
    assert 1.0 == sine_between(one, other)
    assert None is crossing(one, one)
    assert 10.0 == one.beyond(Point(50.0, 0.0))
    share, bare = StrokeSheet([one, other], Point(0.0, 0.0)).covered(one, Point(0.0, 0.0), Point(40.0, 0.0))
    assert math.isclose(share, 30.0 / 35.0, abs_tol=0.02)
    assert 5.0 == bare
    assert None is stroke_of(Point(1.0, 1.0), Point(1.0, 1.5), 0.1, [], [], [])


def test_print_lies_where_the_page_has_it():
    sheet = sheet_of(1)
    task = strokes_task(NEUTRAL, sheet.form)
    origin = task.photo.origin
    assert any(math.dist(disc[:2], origin) < 0.1 for disc in task.printed.discs)
    assert any(math.dist(disc[:2], task.photo.marks[0]) < 0.1 for disc in task.printed.discs)
    page = NEUTRAL.pages(dict(sheet.form), OPENING)[0]
    nowhere = printed_matter(page, Box(-20.0, -20.0, -10.0, -10.0))
    assert not (nowhere.lines or nowhere.discs or nowhere.areas)


# The judgement.


def judged(sheet: Pencilled, longer: float, sigma: float) -> str:
    """The band of the first arrow's length if it is drawn so much too long."""
    drawing, o = sheet.want.drawing, sheet.want.origin
    figure = drawing.construction.figure.points
    places = {name: o.plus(drawing.picture.place(figure[name], drawing.factor))
              for name in ("O", *needed_points(drawing))}  # fmt: skip
    first = needed_points(drawing)[0]
    length = geometry.distance(o, places[first])
    places[first] = o.plus(places[first].minus(o).times((length + longer) / length))
    flat = measured_by(
        Photo(2000.0, 1500.0, 1.0), sheet.want.marks,
        [Point(100.0 + 5.0 * p.x, 1300.0 - 5.0 * p.y) for p in sheet.want.marks], by_hand=False,
    )  # fmt: skip
    lines = measure_read(drawing, flat, places, dict.fromkeys(places, sigma), {}).lines
    return next(line.bands[0] for line in lines if line.ends == ("O", first))


def test_what_a_length_may_be_off_is_what_hand_and_reading_allow_together():
    """The hand's tolerance is 1.32 mm where six numbers are measured; a reading that is less sure widens it. The band
    that is looked at ends at twice as much."""
    sheet = sheet_of(1, "tip-to-tail")
    assert ["accept", "look"] == [judged(sheet, 1.2, 0.01), judged(sheet, 1.4, 0.01)]
    assert ["accept", "look"] == [judged(sheet, 1.4, 0.2), judged(sheet, 1.7, 0.2)]
    assert ["wrong", "look", "wrong"] == [judged(sheet, 2.7, 0.01), judged(sheet, 2.7, 0.2), judged(sheet, 3.6, 0.2)]


# The request.


def ask(sheet: Pencilled, **more: object) -> dict:
    """The reply to a request ``strokes``."""
    request = {"do": "strokes", "page": "neutral-current", "form": dict(sheet.form), **more}
    return json.loads(api.handle(json.dumps(request))[0])


def photo(opened: dict) -> dict:
    """A photograph from straight above, as the script tells of it."""
    marks = [[100.0 + 8.0 * x, 1700.0 - 8.0 * y] for x, y in opened["marks"]]
    return {"photo": {"width": 2600, "height": 1900, "tap": 1.0}, "marks": marks, "byHand": False, "printed": "marks"}


def test_the_request_leads_from_the_form_to_the_verdict():
    sheet = sheet_of(9)
    opened = ask(sheet)
    assert opened["ok"] and 8 == len(opened["marks"])
    taken = photo(opened)
    seen = ask(sheet, **taken)
    assert 9 == len(seen["projection"]["numbers"])
    done = ask(sheet, **taken, strokes=strokes(sheet.strokes))
    assert "parallelogram" == done["method"]
    assert [] == done["asked"] and "" == done["why"]
    assert {"O", "T1", "T2", "T3", "R", "N"} == {point["name"] for point in done["points"]}
    assert done["band"] in ("accept", "look", "wrong") and 9 > len(done["lines"]) > 4
    assert "photo-result" in done["regions"]
    veiled = ask(sheet, **taken, strokes=strokes(sheet.strokes), veiled=True)
    assert [] == veiled["lines"] == veiled["overlay"]


def test_the_row_in_hand_of_a_pile_tells_every_point_in_mm():
    sheet = sheet_of(9)
    row = {"id": "a", "state": "asked", "page": "neutral-current", "form": dict(sheet.form)}
    reply = json.loads(api.handle(json.dumps({
        "do": "pile", "move": "look", "row": "a", "rows": [row], "sheet": "neutral-current", "form": dict(sheet.form),
        **photo(ask(sheet)), "strokes": strokes(sheet.strokes),
    }))[0])  # fmt: skip
    shown = reply["regions"]["look"].partition("What was read, in mm")[2]
    assert f"{len(strokes(sheet.strokes))} straight strokes were found." in shown
    cells = re.findall(r"<td>([^<]*)</td>", shown.partition("<tbody>")[2])
    told = [(float(cells[at]), float(cells[at + 1])) for at in range(0, len(cells), 4)]
    assert 6 == len(told) and {"sure"} == set(cells[3::4])
    for x, y in sheet.points.values():
        assert min(math.hypot(x - across, y - up) for across, up in told) < 0.5
    left, top, right, bottom = reply["frame"]
    assert left < right and top < bottom


def test_what_is_settled_counts_and_ends_the_asking():
    sheet = sheet_of(9)
    taken = photo(ask(sheet))
    points = {name: list(at) for name, at in sheet.points.items()}
    settled = {"method": "parallelogram", "points": points | {"N": None}}
    done = ask(sheet, **taken, strokes=[], settled=settled)
    assert [] == done["asked"]
    assert "N" not in {point["name"] for point in done["points"]}
    assert done["band"]


FLAT = {"x1": 0, "y1": 0, "x2": 9, "y2": 0, "dark": 1, "runs": [], "blind": [], "heads": []}


@pytest.mark.parametrize(
    "strokes", ["none", [1], [{}], [{"x1": 0}], [{**FLAT, "x1": 1e9}], [{**FLAT, "runs": [[1]]}], [FLAT] * 300]
)
def test_strokes_that_are_none_are_refused(strokes: object):
    sheet = sheet_of(9)
    reply = ask(sheet, **photo(ask(sheet)), strokes=strokes)
    assert not reply["ok"] and reply["announce"]


@pytest.mark.parametrize("settled", [1, {"points": 3}, {"method": "guesswork"}, {"points": {"N": [1]}}])
def test_settled_points_that_are_none_are_refused(settled: object):
    sheet = sheet_of(9)
    assert not ask(sheet, **photo(ask(sheet)), strokes=[], settled=settled)["ok"]


def test_methods_are_those_of_the_page():
    task = strokes_task(NEUTRAL, sheet_of(1).form)
    assert set(METHODS) == {drawing.construction.method for drawing in task.drawings}
