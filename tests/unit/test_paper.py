"""Blank paper: every ruling and graduation where it belongs, check bars clear of the edges, texts clear of all."""

import json
import math
import re
from itertools import pairwise

import pypdfium2 as pdfium
import pytest
from browser.test_print import straight_lines
from unit.sheets import Lettered, on_page, rectangle_of, strokes
from unit.test_sheet_clear import faults_of, touching

from pycore import api
from pycore.drawing import Circle, Document, Line, Page, Shape, Text
from pycore.errors import InputError
from pycore.geometry import Point
from pycore.pages.paper import GRAPH_PAPER, INSTRUMENTS, PAPER_PAGES
from pycore.sheet import instruments
from pycore.sheet.media import PAPERS, PRINTABLE_EDGE, size_of
from pycore.words import paper as words
from pycore.writers import pdf, svg
from pycore.writers.collect import collect

WAYS = ("portrait", "landscape")
GRAPHS = [(kind, paper, way) for kind, _ in words.KINDS for paper in PAPERS for way in WAYS]
TOOLS = [(kind, paper, way) for kind, _ in words.PROTRACTORS for paper in ("A4", "A3", "letter", "tabloid")
         for way in WAYS]  # fmt: skip
EXACT = 1e-9
WRITTEN = 1e-4  # mm: writers give four decimals
LEAST_BAR = 80.0  # mm; only letter lying has no room for 100


def graph(kind: str, paper: str = "A4", way: str = "portrait") -> Page:
    return GRAPH_PAPER.make({"kind": kind, "paper": paper, "orientation": way}).page


def tools(kind: str, paper: str = "A4", way: str = "landscape") -> Page:
    return INSTRUMENTS.make({"protractor": kind, "paper": paper, "orientation": way}).page


def lines_of(page: Page, name: str) -> list[Line]:
    """The lines of one named group."""
    return [placed.item for placed in collect(page) if name in placed.names and isinstance(placed.item, Line)]


def apart(values: list[float]) -> list[float]:
    return [after - before for before, after in pairwise(sorted(values))]


@pytest.mark.parametrize(("kind", "paper", "way"), GRAPHS)
def test_a_sheet_of_graph_paper_has_its_papers_size_and_stays_on_it(kind: str, paper: str, way: str):
    page = graph(kind, paper, way)
    assert size_of(paper, way) == (page.width, page.height)
    reach = page.box.grown(-5.0)
    ends = [point for stroke in strokes(page) for point in (stroke.start, stroke.end)]
    assert [] == [at for at in ends if not (reach.left <= at.x <= reach.right and reach.bottom <= at.y <= reach.top)]
    assert [] == [text.words for text in texts_level(page) if not page.box.holds(text.box)]


def texts_level(page: Page) -> list[Lettered]:
    """Every text but the figures that stand turned round a circle."""
    return [
        Lettered(rectangle_of(placed.item), placed.item.plain, " ".join(placed.names), None)
        for placed in on_page(page, Text)
        if placed.item.turn in (0.0, 90.0) and not {"grid", "protractor"} & set(placed.names)
    ]


@pytest.mark.parametrize(("kind", "paper", "way"), [*GRAPHS, *TOOLS])
def test_both_check_bars_are_as_long_as_they_say_and_clear_of_what_printers_lose(kind: str, paper: str, way: str):
    page = (tools if kind.isdigit() else graph)(kind, paper, way)
    bars = [placed for placed in collect(page) if "check-bar" in placed.names]
    said = [int(placed.item.plain.split("\u00a0")[0]) for placed in bars if isinstance(placed.item, Text)]
    ends = [placed.item for placed in bars if isinstance(placed.item, Line)]
    level = [line.start.x for line in ends if line.start.x == line.end.x]
    upright = [line.start.y for line in ends if line.start.y == line.end.y]
    assert [2, 2] == [len(level), len(upright)]
    assert said == pytest.approx([max(upright) - min(upright), max(level) - min(level)], abs=EXACT)
    assert min(said) >= (50 if paper == "A5" else LEAST_BAR)
    for placed in bars:
        points = placed.item.points if isinstance(placed.item, Shape) else (
            (placed.item.start, placed.item.end) if isinstance(placed.item, Line) else ())  # fmt: skip
        for x, y in points:
            assert PRINTABLE_EDGE - EXACT <= x <= page.width - PRINTABLE_EDGE + EXACT
            assert PRINTABLE_EDGE - EXACT <= y <= page.height - PRINTABLE_EDGE + EXACT


@pytest.mark.parametrize(("kind", "paper", "way"), [case for case in GRAPHS if case[0] != "polar"])
def test_no_text_of_graph_paper_touches_a_line_or_another_text(kind: str, paper: str, way: str):
    page = graph(kind, paper, way)
    assert [] == faults_of(page, page.box)


@pytest.mark.parametrize(("kind", "paper", "way"), TOOLS)
def test_the_words_beside_the_instruments_touch_nothing(kind: str, paper: str, way: str):
    """The figures on the instruments apart, which stand turned; both instruments keep what printers lose."""
    page = tools(kind, paper, way)
    beside = [text for text in texts_level(page) if text.group in ("words", "check-bar")]
    assert len(beside) > 7
    printable = page.box.grown(-PRINTABLE_EDGE + 0.01)
    assert [] == touching(beside, strokes(page, beside), printable)
    for stroke in strokes(page):
        if "check-bar" not in stroke.source:
            for x, y in (stroke.start, stroke.end):
                assert printable.left <= x <= printable.right and printable.bottom <= y <= printable.top


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("way", WAYS)
def test_millimetre_paper_has_a_line_at_every_millimetre_and_a_strong_one_at_every_tenth(paper: str, way: str):
    grid = lines_of(graph("millimetre", paper, way), "grid")
    for axis in (0, 1):
        across = [line for line in grid if line.start[axis] == line.end[axis]]
        places = [line.start[axis] for line in across]
        assert [1.0] * (len(places) - 1) == pytest.approx(apart(places), abs=EXACT)
        first = min(places)
        tens = [line.start[axis] - first for line in across if line.width == max(one.width for one in across)]
        assert [10.0 * index for index in range(len(tens))] == pytest.approx(sorted(tens), abs=EXACT)
        assert tens[-1] == max(tens) and len(places) == 10 * (len(tens) - 1) + 1


def test_polar_paper_has_a_circle_every_5_mm_and_a_ray_every_5_degrees_through_one_point():
    page = graph("polar", "A3", "landscape")
    circles = [placed.item for placed in on_page(page, Circle) if "grid" in placed.names]
    (centre,) = {circle.centre for circle in circles}
    radii = sorted(circle.radius for circle in circles if circle.radius > 1.0)
    assert [5.0 * index for index in range(1, len(radii) + 1)] == radii
    assert 120.0 == radii[-1]
    rays = lines_of(page, "grid")
    angles = [math.degrees(math.atan2(ray.end.y - centre.y, ray.end.x - centre.x)) % 360 for ray in rays]
    assert [5.0 * index for index in range(72)] == pytest.approx(sorted(angle % 359.9999999 for angle in angles))
    for ray, angle in zip(rays, angles, strict=True):
        assert radii[-1] == pytest.approx(math.dist(ray.end, centre), abs=EXACT)
        assert angle % 180 == pytest.approx(
            math.degrees(math.atan2(ray.end.y - ray.start.y, ray.end.x - ray.start.x)) % 180, abs=1e-6
        )
    figures = {placed.item.plain for placed in on_page(page, Text) if "grid" in placed.names}
    assert {str(10 * index) for index in range(36)} == figures


def test_sixty_paper_has_three_sets_of_parallels_that_meet_in_threes():
    """Lines of each set are 10·√3/2 mm apart; where lines of two sets cross, one of the third passes."""
    grid = lines_of(graph("sixty"), "grid")
    sets: dict[int, list[float]] = {0: [], 60: [], 120: []}
    for line in grid:
        angle = math.degrees(math.atan2(line.end.y - line.start.y, line.end.x - line.start.x)) % 180
        whole = round(angle) % 180
        assert angle == pytest.approx(round(angle), abs=1e-6)
        normal = math.radians(whole + 90)
        sets[whole].append(line.start.x * math.cos(normal) + line.start.y * math.sin(normal))
    step = 10 * math.sqrt(3) / 2
    for offsets in sets.values():
        assert len(offsets) > 15
        assert [step] * (len(offsets) - 1) == pytest.approx(apart(offsets), abs=1e-6)
    # Normals at 90°, 150° and 210°: the middle one is the sum of the others, so the three offsets agree.
    rest = (sets[0][0] + sets[120][0] - sets[60][0]) / step
    assert round(rest) == pytest.approx(rest, abs=1e-6)


def ends_in_svg(page: Page, name: str) -> list[tuple[float, ...]]:
    """The ends of every line of one named group, as the SVG has them, mm from the upper left corner."""
    text = svg.write(page, prefix="sheet", role="sheet")
    group = text.split(f'data-name="{name}"', 1)[1].split("</g>", 1)[0]
    return [tuple(map(float, found)) for found in
            re.findall(r'<line[^>]* x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"', group)]  # fmt: skip


@pytest.fixture(params=["180", "360"])
def instrument_sheet(request) -> tuple[str, Page]:
    return request.param, tools(request.param)


def graduations(lines: list[tuple[float, ...]], centre: Point, height: float) -> list[tuple[float, float, float]]:
    """Of lines that end on the protractor's rim: angle, distance of both ends from the centre."""
    found = []
    for x1, y1, x2, y2 in lines:
        for inner, outer in (((x1, y1), (x2, y2)), ((x2, y2), (x1, y1))):
            reach = math.hypot(outer[0] - centre.x, height - outer[1] - centre.y)
            start = math.hypot(inner[0] - centre.x, height - inner[1] - centre.y)
            if abs(reach - instruments.RADIUS) < 0.001 and 60 < start < reach - 1:
                angle = math.degrees(math.atan2(height - outer[1] - centre.y, outer[0] - centre.x))
                found.append((angle % 360 if angle % 360 < 359.99 else 0.0, start, reach))
    return sorted(found)


def test_the_protractors_graduations_stand_at_exact_degrees_in_drawing_svg_and_pdf(instrument_sheet, tmp_path):
    """Read back from each, about the centre of the rim: 0.001° on a radius of 75 mm is 0.0013 mm."""
    kind, page = instrument_sheet
    rim = next(placed.item for placed in collect(page) if "protractor" in placed.names
               and getattr(placed.item, "radius", 0.0) == instruments.RADIUS)  # fmt: skip
    target = tmp_path / "tools.pdf"
    target.write_bytes(pdf.write(Document((page,), "tools")))
    count = 360 if kind == "360" else 181
    for lines in (ends_in_svg(page, "protractor"), straight_lines(target)):
        found = graduations(lines, rim.centre, page.height)
        assert list(range(count)) == pytest.approx([angle for angle, _, _ in found], abs=0.001)
        lengths = [reach - start for _, start, reach in found]
        expected = [8.0 if n % 10 == 0 else 6.0 if n % 5 == 0 else 4.0 for n in range(count)]
        assert expected == pytest.approx(lengths, abs=0.001)


def test_each_figure_of_the_protractor_stands_at_its_graduation(instrument_sheet):
    """Inner figures count anticlockwise from the right; outer ones the other way round."""
    kind, page = instrument_sheet
    end = int(kind)
    placed = [p.item for p in collect(page) if "protractor" in p.names]
    centre = next(item.centre for item in placed if getattr(item, "radius", 0.0) == instruments.RADIUS)
    read: dict[str, list[tuple[int, int]]] = {"inner": [], "outer": []}
    for item in placed:
        middle = item.at.moved(1.5, item.turn + 90.0) if isinstance(item, Text) else centre
        lifted = end == 180 and middle.y - centre.y < 5.0  # upright on the base line, beside their graduation
        if isinstance(item, Text) and not lifted:
            angle = math.degrees(math.atan2(middle.y - centre.y, middle.x - centre.x)) % 360
            scale = "inner" if math.dist(middle, centre) < 59 else "outer"
            assert angle == pytest.approx(round(angle), abs=0.01)
            read[scale].append((round(angle) % 360, int(item.plain)))
    upright = 0 if end == 360 else 2
    assert [36 if end == 360 else 19 - upright] * 2 == [len(read["inner"]), len(read["outer"])]
    assert [] == [pair for pair in read["inner"] if pair[0] != pair[1]]
    assert [] == [pair for pair in read["outer"] if (end - pair[0]) % 360 != pair[1]]


def test_the_rulers_millimetres_stand_at_exact_millimetres_in_svg_and_pdf(tmp_path):
    page = tools("180")
    target = tmp_path / "tools.pdf"
    target.write_bytes(pdf.write(Document((page,), "tools")))
    marks = ends_in_svg(page, "ruler")
    zero = min(x for x, *_ in marks)
    assert list(range(251)) == pytest.approx([x - zero for x, *_ in marks], abs=WRITTEN)
    edge = {y for _, y, _, _ in marks}
    assert 1 == len(edge)
    printed = straight_lines(target)
    for x1, y1, x2, y2 in marks:
        assert min(max(abs(a - b) for a, b in zip(line, (x1, y1, x2, y2), strict=True)) for line in printed) < 0.001
    written = [placed.item for placed in on_page(page, Text) if "ruler" in placed.names]
    figures = [item for item in written if item.plain.isdigit()]
    assert [zero + 10.0 * int(item.plain) for item in figures] == pytest.approx([item.at.x for item in figures])
    assert 26 == len(figures)


@pytest.mark.parametrize("kind", [kind for kind, _ in words.KINDS])
def test_the_grid_in_the_pdf_is_the_grid_of_the_svg(kind: str, tmp_path):
    page = graph(kind)
    target = tmp_path / "grid.pdf"
    target.write_bytes(pdf.write(Document((page,), "grid")))
    drawn, printed = ends_in_svg(page, "grid"), {tuple(round(v, 2) for v in line) for line in straight_lines(target)}
    near = [line for line in drawn if not any(
        all(abs(a - b) < 0.015 for a, b in zip(line, other, strict=True)) for other in printed)]  # fmt: skip
    assert len(drawn) > 60
    assert [] == near


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_a_sheets_link_names_every_choice_and_gives_the_same_sheet_again(slug: str):
    for field in PAPER_PAGES[slug].fields:
        for choice in field.options:
            form = {field.name: choice.value}
            shared = ask(slug, "share", form=form, base="https://folio.example/x/")["link"]
            fragment = shared.partition("#")[2]
            assert ["v", *(one.name for one in PAPER_PAGES[slug].fields)] == re.findall(r"(\w+)=", fragment)
            opened = ask(slug, "open", fragment=fragment)
            assert [] == opened["notices"]
            assert PAPER_PAGES[slug].make(form) == PAPER_PAGES[slug].make(opened["form"])


def ask(slug: str, do: str, **more: object) -> dict:
    return json.loads(api.handle(json.dumps({"do": do, "page": slug, **more}))[0])


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_what_is_not_on_offer_is_said_by_field_and_no_sheet_is_made(slug: str):
    reply = ask(slug, "answer", form={"paper": "A9", "orientation": "upside down"})
    asked = [one.name for one in PAPER_PAGES[slug].fields if one.name in ("paper", "orientation")]
    assert (False, asked) == (reply["ok"], [error["field"] for error in reply["errors"]])
    assert "“A9”" in reply["errors"][0]["message"] and "A4" in reply["errors"][0]["message"]
    with pytest.raises(InputError):
        PAPER_PAGES[slug].make({"paper": "A9"})
    assert not ask(slug, "pdf", form={"paper": "A9"})["ok"]


@pytest.mark.parametrize("slug", list(PAPER_PAGES))
def test_the_pdf_of_the_api_is_the_sheet_corrected_as_asked(slug: str):
    plain, stretched = (
        api.handle(json.dumps({"do": "pdf", "page": slug, "form": {}, **more}))[1]
        for more in ({}, {"correction": [1.01, 0.99]})
    )
    made = PAPER_PAGES[slug].make({})
    assert pdf.write(PAPER_PAGES[slug].document({})) == plain
    assert pdf.write(PAPER_PAGES[slug].document({}), correction=Point(1.01, 0.99)) == stretched
    size = [side * 25.4 / 72 for side in pdfium.PdfDocument(plain)[0].get_size()]
    assert [made.page.width, made.page.height] == pytest.approx(size, abs=0.001)
