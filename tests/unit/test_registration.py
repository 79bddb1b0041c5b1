"""Registration marks: where they stand on every paper, clear of all print, and lopsided round the sheet."""

import itertools

import pytest
from calculators.neutral_current.forms import forms
from unit.sheets import DEFAULT, NEUTRAL, on_page, strokes, texts

from pycore import geometry
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.problem import read_problem
from pycore.drawing import Circle, Page
from pycore.forms.opening import ReopenInfo
from pycore.geometry import Point
from pycore.projection import Lens, Mark, solve
from pycore.sheet import compose, marks
from pycore.sheet.media import ORIENTATIONS, PAPERS
from pycore.sums.sheet import look_of

OPENING = ReopenInfo("https://www.folio.example/neutral-current/", True)
SHEETS = list(itertools.product(PAPERS, ORIENTATIONS))


def sheet(paper: str, orientation: str) -> Page:
    """A problem sheet with its code."""
    form = {**DEFAULT, "sheet": "problem", "paper": paper, "orientation": orientation}
    return NEUTRAL.pages(form, OPENING)[0]


def discs(page: Page) -> list[Point]:
    """The middles of the marks that are printed."""
    rings = marks.SMALL.ring, marks.LARGE.ring
    return [found.item.centre for found in on_page(page, Circle) if found.item.radius in rings]


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
def test_every_mark_stands_on_the_fields_frame_and_is_clear_of_all_other_print(paper: str, orientation: str):
    """Only the frame's own line runs under a mark, and there it is cleared."""
    page = sheet(paper, orientation)
    others = [stroke for stroke in strokes(page) if not {"registration", "frame"} & set(stroke.source.split())]
    layout = NEUTRAL.case({**DEFAULT, "paper": paper, "orientation": orientation}).sheet_plan().layout
    field, size = layout.field, marks.size_of_marks(layout)
    cleared = [found.item.centre for found in on_page(page, Circle) if found.item.radius == size.cleared]
    assert 8 == len(discs(page))
    assert discs(page) == cleared
    for place in discs(page):
        assert 0.0 == pytest.approx(min(abs(place.x - field.left), abs(place.x - field.right),
                                        abs(place.y - field.bottom), abs(place.y - field.top)))  # fmt: skip
        for stroke in others:
            # The rule above the title block begins at the field's edge, a mark's width from a corner.
            clear = geometry.segment_distance(place, stroke.start, stroke.end) - stroke.half - size.reach
            assert clear > 0.3, f"{place} touches {stroke.source}"
        about = geometry.Box(*place, *place).grown(size.reach + 0.3)
        assert [] == [text.words for text in texts(page) if text.box.meets(about)]


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
def test_a_printer_that_loses_five_millimetres_loses_no_mark(paper: str, orientation: str):
    page = sheet(paper, orientation)
    for place in discs(page):
        assert min(place.x, page.width - place.x, place.y, page.height - place.y) - marks.LARGE.reach >= 5.0


def farthest(seen: list[Mark], lens: Lens) -> float:
    """How far the worst mark is from where the best projection shows it."""
    fitted = solve(seen, lens, 0.01)
    return max(geometry.distance(mark.seen, fitted.seen(mark.place)) for mark in seen)


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
def test_marks_fit_only_one_way_round(paper: str, orientation: str):
    """Taken for one another the other way round, they fit no projection better than to 2 mm."""
    places = discs(sheet(paper, orientation))
    lens = Lens(Point(100.0, 100.0), 200.0)
    assert 1e-6 > farthest([Mark(p, p) for p in places], lens)
    for shift in range(1, 8):
        turned = [Mark(place, places[(index + shift) % 8]) for index, place in enumerate(places)]
        assert farthest(turned, lens) > 2.0


def test_the_other_kinds_of_sheet_have_no_marks():
    for kind in ("construction", "overlay"):
        assert [] == discs(NEUTRAL.sheet_page({**DEFAULT, "sheet": kind}))


def test_a_mark_beside_the_star_point_is_left_out():
    layout = NeutralCase(read_problem({**DEFAULT, "sheet": "problem"})).sheet_plan().layout
    for edition in marks.EDITIONS:
        every = marks.numbered(layout, Point(-100.0, -100.0), edition)
        assert every[1:] == marks.numbered(layout, every[0][1].moved(10.0, 0.0), edition)


def test_the_right_drawing_seldom_runs_through_a_mark():
    """At most one of the eight, and on few sheets."""
    crossed = []
    for form in forms(150):
        case = NeutralCase(read_problem({**form, "sheet": "problem"}))
        plan = case.sheet_plan()
        stand, whole = compose.settled(plan, look_of(case))
        touched = [
            place for _, place in marks.numbered(plan.layout, stand.origin)
            if any(geometry.segment_distance(place, s.start, s.end) < marks.SMALL.reach + 0.5 for s in whole.segments)
        ]  # fmt: skip
        crossed.append(len(touched))
    assert max(crossed) <= 2
    assert len([count for count in crossed if count]) <= 0.05 * len(crossed)
