"""The plots of the study: dots where drawings end, the ellipse round them, values above their axis; nothing leaves the
picture."""

import math

import pytest
from making.evidence import _small

from pycore.drawing import Circle, Line, Page, Shape, Text, walk
from pycore.geometry import Point
from pycore.pages.checks import Check, checks_page
from pycore.pages.reading import Section
from pycore.sheet.plots import CLOUD_FACTOR, CLOUD_SIDE, COURSE_CORNER, Cloud, cloud_page, course_page
from pycore.words import evidence as words
from pycore.words import plain

CLOUD = Cloud("Tip to tail: L1, L2, L3", ((0.0, 0.0), (3.0, -2.0), (14.9, 14.9), (40.0, 0.0)), 4.0, 2.0, 30.0)
VALUES = ((0.5, 3.4), (1.0, 3.6), (2.0, 4.3), (5.0, 7.5), (10.0, 13.8))


def within(page: Page) -> bool:
    """Whether every point of the page's strokes and the start of every text is on it."""
    points: list[Point] = []
    for item in walk(page.items):
        if isinstance(item, Line):
            points += [item.start, item.end]
        elif isinstance(item, Circle):
            points.append(item.centre)
        elif isinstance(item, Shape):
            points += item.points
        elif isinstance(item, Text):
            points.append(item.at)
    return all(0 <= point.x <= page.width and 0 <= point.y <= page.height for point in points)


def test_a_dot_lies_where_its_drawing_ends_and_one_far_out_is_left_out():
    page = cloud_page(CLOUD, "Dots")
    dots = [item.centre for item in walk(page.items) if isinstance(item, Circle)]
    middle = Point(CLOUD_SIDE / 2, CLOUD_SIDE / 2)
    assert [middle.plus(Point(x, y).times(CLOUD_FACTOR)) for x, y in CLOUD.points[:3]] == dots
    assert within(page)


def test_the_ellipse_has_its_axes_and_direction():
    page = cloud_page(CLOUD, "Dots")
    [edge] = [item for item in walk(page.items) if isinstance(item, Shape)]
    middle = Point(CLOUD_SIDE / 2, CLOUD_SIDE / 2)
    away = [point.minus(middle) for point in edge.points]
    lengths = [math.hypot(*point) / CLOUD_FACTOR for point in away]
    assert (4.0, 2.0) == pytest.approx((max(lengths), min(lengths)))
    far = away[lengths.index(max(lengths))]
    assert 30.0 == pytest.approx(math.degrees(math.atan2(far.y, far.x)) % 180)


def test_a_course_rises_as_its_values_do():
    page = course_page(VALUES, "across", "up", "title", "description")
    places = [item.centre for item in walk(page.items) if isinstance(item, Circle)]
    assert len(VALUES) == len(places) and within(page)
    (x0, y0), (x4, y4) = VALUES[0], VALUES[4]
    first, last = places[0].minus(COURSE_CORNER), places[4].minus(COURSE_CORNER)
    assert (x0 / x4, y0 / y4) == pytest.approx((first.x / last.x, first.y / last.y))
    assert {"across", "up", "0", "10", "5"} <= {item.plain for item in walk(page.items) if isinstance(item, Text)}


@pytest.mark.parametrize(("gap", "said"), [
    (0.0, "0"), (-0.51, "\u22120.51"), (0.42, "0.42"), (1.5e-9, "1.5\u00a0×\u00a010⁻⁹"),
    (-2.3e-5, "\u22122.3\u00a0×\u00a010⁻⁵"),
    (12.0, "12"),
])  # fmt: skip
def test_a_small_difference_is_written_as_people_write_it(gap: float, said: str):
    assert said == _small(gap)


def test_checks_stand_topic_by_topic():
    def check(topic: str, name: str) -> Check:
        return Check(topic, name, "source", "published", "1 A", "1 A", "0 A", True)

    page = checks_page([check("One", "a"), check("Two", "b"), check("One", "c")])
    assert [words.TABLE, "One", "Two"] == [plain(section.heading) for section in page.sections]

    def names(section: Section) -> list[str]:
        return [plain(row[0]) for block in section.blocks for row in getattr(block, "rows", ())]

    assert [["a", "c"], ["b"]] == [names(section) for section in page.sections[1:]]
