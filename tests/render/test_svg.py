"""The SVG writer, its output read back by the standard library's XML parser."""

import math
import xml.etree.ElementTree as ElementTree

import pytest

from pycore import lettering, trig
from pycore.drawing import PAPER_COLOURS, Arc, Arrow, Circle, Group, Line, Page, Run, Shape, Squares, Text
from pycore.errors import DrawingError
from pycore.geometry import ORIGIN, Point
from pycore.writers import svg
from pycore.writers.collect import arrows, collect
from pycore.writers.numbers import coordinate, extent, factor

NAMESPACE = "{http://www.w3.org/2000/svg}"
WIDTH, HEIGHT = 297.0, 210.0


def drawn(*items, title="", description="", **choices) -> ElementTree.Element:
    """The root element of a page with these items."""
    page = Page(WIDTH, HEIGHT, items, title, description)
    return ElementTree.fromstring(svg.write(page, **({"prefix": "p", "role": "sheet"} | choices)))


def found(root, name):
    return list(root.iter(NAMESPACE + name))


def points(path):
    """The corners of a path of straight lines."""
    pairs = path.get("d").strip("MZ").split("L")
    return [tuple(map(float, pair.split(" "))) for pair in pairs]


def fan() -> list[Arrow]:
    """Arrows of awkward lengths all round, from a tail at no round number."""
    tail = Point(148.123456, 105.654321)
    return [Arrow(tail, tail.moved(7.3 + number * 1.237, number * 7.77)) for number in range(60)]


def test_a_sheet_has_its_size_in_mm_and_a_view_only_its_proportions():
    sheet, view = drawn(), drawn(role="view", view="phone")
    assert ("297mm", "210mm", "0 0 297 210") == tuple(sheet.get(name) for name in ("width", "height", "viewBox"))
    assert (None, None, "0 0 297 210") == tuple(view.get(name) for name in ("width", "height", "viewBox"))
    assert sheet.get("data-sheet") is not None and sheet.get("data-view") is None
    assert "phone" == view.get("data-view") and view.get("data-sheet") is None


def test_title_and_description_are_tied_to_the_drawing_by_ids_of_its_own():
    root = drawn(title="Neutral current", description="Three arrows", prefix="sheet-2")
    title, description = found(root, "title")[0], found(root, "desc")[0]
    assert ("Neutral current", "Three arrows") == (title.text, description.text)
    assert ("sheet-2-title", "sheet-2-desc") == (root.get("aria-labelledby"), root.get("aria-describedby"))
    assert ("sheet-2-title", "sheet-2-desc", "img") == (title.get("id"), description.get("id"), root.get("role"))


def test_a_description_that_is_the_title_is_not_read_twice():
    root = drawn(title="Angles of three currents", description="Angles of three currents")
    assert [] == found(root, "desc") and root.get("aria-describedby") is None
    assert root.get("aria-labelledby") == found(root, "title")[0].get("id")


def test_every_arrow_is_one_line_from_its_tail_to_exactly_its_tip():
    for arrow in fan():
        (line,) = found(drawn(Group((arrow,), phasor="i1")), "line")
        ends = [float(line.get(name)) for name in ("x1", "y1", "x2", "y2")]
        expected = [arrow.tail.x, HEIGHT - arrow.tail.y, arrow.tip.x, HEIGHT - arrow.tip.y]
        assert max(math.fabs(a - b) for a, b in zip(expected, ends, strict=True)) <= 0.0000501
        assert "0.1" == line.get("stroke-width")


def test_the_heads_point_stands_on_the_tip_and_the_shaft_stops_inside_the_head():
    for arrow in fan():
        shaft, head = found(drawn(arrow), "path")
        point, corner, notch, _ = points(head)
        assert point == pytest.approx((arrow.tip.x, HEIGHT - arrow.tip.y), abs=0.0000501)
        assert 4.6 * math.hypot(1, 0.17) == pytest.approx(math.dist(point, corner), abs=0.0002)
        assert math.dist(point, notch) > math.dist(point, points(shaft)[1]) > 1.5
        assert "Z" == head.get("d")[-1] and head.get("stroke") is None


def test_an_arrow_shorter_than_its_head_gets_a_head_of_six_tenths_of_its_length():
    shaft, head = found(drawn(Arrow(Point(10, 10), Point(12, 10))), "path")
    xs = [x for x, _ in points(head)]
    assert (12.0, 1.2) == (max(xs), pytest.approx(max(xs) - min(xs), abs=0.0001))
    breadth = max(y for _, y in points(head)) - min(y for _, y in points(head))
    assert float(shaft.get("stroke-width")) < breadth < 0.5


def test_an_arrow_without_a_head_is_a_plain_line_and_one_without_length_shows_nothing():
    root = drawn(Arrow(Point(10, 10), Point(40, 10), head=0.0))
    assert [(10.0, 200.0), (40.0, 200.0)] == points(found(root, "path")[0])
    assert 1 == len(found(root, "line"))
    assert [] == found(drawn(Arrow(Point(10, 10), Point(10, 10))), "path")


@pytest.mark.parametrize("arrow", [Arrow(ORIGIN, Point(60, 0), cased=True), Arrow(ORIGIN, Point(60, 0), ink="white")])
def test_a_cased_arrow_has_its_colour_between_ink_edges(arrow):
    outer, outer_head, inner, inner_head = found(drawn(arrow), "path")
    assert PAPER_COLOURS["ink"] == outer.get("stroke") == outer_head.get("fill")
    assert PAPER_COLOURS[arrow.ink] == inner.get("stroke") == inner_head.get("fill")
    edge = (float(outer.get("stroke-width")) - float(inner.get("stroke-width"))) / 2
    assert 0.1 < edge < 0.2
    (x, y), corner, _, _ = points(outer_head)
    for inside in points(inner_head)[:2]:
        side = (corner[0] - x, corner[1] - y)
        off = math.fabs(side[0] * (inside[1] - y) - side[1] * (inside[0] - x)) / math.hypot(*side)
        assert edge == pytest.approx(off, abs=0.001)


def test_ticks_within_a_phasors_group_are_no_lines_so_that_the_arrow_is_the_only_one():
    tick = Line(Point(20, 20), Point(22, 23))
    inside = drawn(Group((Arrow(ORIGIN, Point(60, 0)), Group((tick,))), phasor="i1"))
    outside = drawn(Group((tick,), step=2))
    assert 1 == len(found(inside, "line")) and "M20 190L22 187" == found(inside, "path")[-1].get("d")
    assert 1 == len(found(outside, "line")) and [] == found(outside, "path")


def test_groups_carry_step_phasor_copy_and_name():
    root = drawn(Group((Group((), phasor="i3", copy=True),), step=0, name="main"))
    outer, inner = found(root, "g")
    assert {"data-step": "0", "data-name": "main"} == outer.attrib
    assert {"data-phasor": "i3", "data-copy": ""} == inner.attrib


def test_an_arc_keeps_its_radius_and_turns_anticlockwise_for_a_positive_sweep():
    for sweep in (10.0, 90.0, 180.0, 270.0, 359.0, -10.0, -200.0):
        path = found(drawn(Arc(Point(100, 100), 75.0, 20.0, sweep)), "path")[0].get("d")
        start, *pieces = path[1:].split("A")
        ends = [tuple(map(float, start.split(" ")))] + [tuple(map(float, piece.split(" ")[5:])) for piece in pieces]
        assert all(75.0 == pytest.approx(math.dist((100, 110), end), abs=0.0001) for end in ends)
        assert {"0" if sweep > 0 else "1"} == {piece.split(" ")[4] for piece in pieces}
        last = Point(100, 100).moved(75.0, 20.0 + sweep)
        assert (last.x, 210 - last.y) == pytest.approx(ends[-1], abs=0.0001)


def test_circles_and_shapes_have_outline_and_filling_only_where_asked():
    root = drawn(
        Circle(Point(10, 20), 3.0, fill="accent"),
        Shape((ORIGIN, Point(1, 0), Point(1, 1)), fill="rule"),
        Shape((ORIGIN, Point(1, 0), Point(1, 1)), 0.7, closed=False),
    )
    (circle,), (filled, open_line) = found(root, "circle"), found(root, "path")
    assert ("10", "190", "3") == tuple(circle.get(name) for name in ("cx", "cy", "r"))
    assert ("ink-ink fill-accent", "#00664B", "0.25") == tuple(
        circle.get(name) for name in ("class", "fill", "stroke-width")
    )
    assert ("fill-rule", None) == (filled.get("class"), filled.get("stroke"))
    assert ("0.7", None) == (open_line.get("stroke-width"), open_line.get("fill"))
    assert "Z" == filled.get("d")[-1] and "Z" != open_line.get("d")[-1]


def test_squares_are_one_filled_path_of_rectangles():
    root = drawn(Squares(Point(20.0, 60.0), 0.285, ("1101", "0000", "0110"), "accent"), Squares(ORIGIN, 1.0, ("0",)))
    [path] = found(root, "path")
    assert ("fill-accent", "#00664B", None) == tuple(path.get(name) for name in ("class", "fill", "stroke"))
    assert path.get("d") == (
        "M20 150H20.57V150.285H20ZM20.855 150H21.14V150.285H20.855ZM20.285 150.57H20.855V150.855H20.285Z"
    )


def test_dashes_are_written_in_mm_and_white_lines_are_cased():
    dashed = found(drawn(Line(ORIGIN, Point(9, 9), dash=(3.0, 0.75))), "line")
    white = found(drawn(Line(ORIGIN, Point(9, 9), 1.0, "white")), "line")
    assert ["3 0.75"] == [line.get("stroke-dasharray") for line in dashed]
    assert [("#14191A", "1"), ("#FFFFFF", "0.48")] == [(line.get("stroke"), line.get("stroke-width")) for line in white]


@pytest.mark.parametrize(("anchor", "part"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_text_has_a_width_that_no_fallback_font_can_change(anchor, part):
    runs = (Run("I", "italic", 5.0), Run("N", "regular", 3.5, -0.8), Run(" = 18.4 A", "bold", 5.0))
    (text,) = found(drawn(Text(runs, Point(100, 50), anchor)), "text")
    spans = list(text)
    assert "IN = 18.4 A" == "".join(text.itertext())
    along = 100 - part * lettering.runs_width(runs)
    for run, span in zip(runs, spans, strict=True):
        width = lettering.width(run.text, run.face, run.size)
        assert along == pytest.approx(float(span.get("x")), abs=0.0001)
        assert 160 - run.rise == pytest.approx(float(span.get("y")), abs=0.0001)
        assert width == pytest.approx(float(span.get("textLength")), abs=0.0001)
        assert "spacingAndGlyphs" == span.get("lengthAdjust")
        along += width
    assert ("Phasor Serif, serif", "italic") == (spans[0].get("font-family"), spans[0].get("font-style"))
    assert "650" == spans[2].get("font-weight")


def test_only_text_is_ever_transformed_and_only_when_turned():
    root = drawn(Text((Run("30°"),), Point(80, 50), turn=30.0), Text((Run("0°"),), Point(80, 60)), *fan())
    transformed = [element for element in root.iter() if element.get("transform")]
    assert [("rotate(-30 80 160)", "30°")] == [(e.get("transform"), "".join(e.itertext())) for e in transformed]


def test_markup_in_words_is_text_and_not_markup():
    hostile = "</text><script>alert(1)</script>&amp;\"'"
    root = drawn(
        Text((Run(hostile),), Point(10, 10)), Group((), phasor=hostile, name=hostile), title=hostile, prefix='"><b>'
    )
    assert [] == found(root, "script")
    assert hostile == "".join(found(root, "text")[0].itertext()) == found(root, "title")[0].text
    assert hostile == found(root, "g")[0].get("data-phasor") == found(root, "g")[0].get("data-name")


def test_what_xml_cannot_hold_is_replaced():
    root = drawn(title="a\x00b\ud800c\x1bd")
    assert "a\ufffdb\ufffdc\ufffdd" == found(root, "title")[0].text


@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf])
def test_nan_and_infinity_are_refused_wherever_they_stand(bad):
    there = Point(bad, 1.0)
    for item in (
        Line(ORIGIN, there),
        Line(ORIGIN, Point(1, 1), width=bad),
        Line(ORIGIN, Point(1, 1), dash=(bad, 1.0)),
        Arrow(ORIGIN, there),
        Arrow(there, ORIGIN),
        Arc(ORIGIN, bad, 0.0, 90.0),
        Arc(ORIGIN, 1.0, bad, 90.0),
        Arc(ORIGIN, 1.0, 0.0, bad),
        Circle(there, 1.0),
        Circle(ORIGIN, bad),
        Shape((ORIGIN, there), 0.5),
        Shape((ORIGIN,), bad),
        Squares(there, 1.0, ("1",)),
        Squares(ORIGIN, bad, ("1",)),
        Text((Run("a"),), there),
        Text((Run("a", size=bad),), ORIGIN),
        Text((Run("a"),), ORIGIN, turn=bad),
    ):
        with pytest.raises(DrawingError):
            drawn(Group((item,)))


def test_negative_sizes_are_refused():
    for item in (Circle(ORIGIN, -1.0), Line(ORIGIN, Point(1, 1), -0.5), Shape((ORIGIN,), -0.1), Arc(ORIGIN, -1, 0, 9),
                 Squares(ORIGIN, -1.0, ("1",))):  # fmt: skip
        with pytest.raises(DrawingError):
            drawn(item)


def test_no_style_and_no_minus_nought_and_equal_bytes_each_time():
    page = Page(WIDTH, HEIGHT, (*fan(), Line(Point(-1e-9, 210.00000001), Point(-0.0, 0.0))), "t", "d")
    first, second = (svg.write(page, prefix="p", role="sheet") for _ in range(2))
    assert first == second
    assert "style=" not in first and "-0 " not in first and '-0"' not in first
    assert 'x1="0" y1="0" x2="0" y2="210"' in first


@pytest.mark.parametrize(
    ("expected", "value"),
    [
        ("0", -0.00004), ("0", 0.0), ("-0.0001", -0.00006), ("100", 100.0), ("12.5", 12.5),
        ("0.3333", 1 / 3), ("-7.25", -7.25), ("1000000", 1e6),
    ],
)  # fmt: skip
def test_a_coordinate_has_four_decimals_and_no_idle_signs(expected, value):
    assert expected == coordinate(value)


def test_factors_are_finer_and_extents_not_below_nought():
    assert ("0.33333333", "0", "1") == (factor(1 / 3), factor(-1e-12), factor(1.0))
    assert trig.cosine(30.0) == pytest.approx(float(factor(trig.cosine(30.0))), abs=5.1e-9)
    with pytest.raises(DrawingError):
        extent(-0.1)
    for write in (coordinate, extent, factor):
        with pytest.raises(DrawingError):
            write(math.nan)


def test_the_collector_lists_primitives_with_what_their_groups_say():
    arrow, tick, frame = Arrow(ORIGIN, Point(1, 0)), Line(ORIGIN, Point(0, 1)), Line(ORIGIN, Point(2, 2))
    inner = Group((arrow, Group((tick,), name="tick")), phasor="i1", copy=True)
    page = Page(10, 10, (frame, Group((inner,), step=3, name="moves")))
    first, second, third = collect(page)
    assert (frame, None, "", False, ()) == (first.item, first.step, first.phasor, first.copy, first.names)
    assert (arrow, 3, "i1", True, ("moves",)) == (second.item, second.step, second.phasor, second.copy, second.names)
    assert (tick, 3, "i1", True, ("moves", "tick")) == (third.item, third.step, third.phasor, third.copy, third.names)
    assert (arrow,) == arrows(page, "i1") and () == arrows(page, "i2")
