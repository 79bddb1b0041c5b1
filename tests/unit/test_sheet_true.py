"""What is drawn is true: lengths, directions, conventions, and the tables beside it."""

import ctypes
import itertools
import json
import math
import re
from functools import partial
from xml.etree import ElementTree

import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest
from calculators.neutral_current.forms import form, forms
from host import shelf
from unit.sheets import (
    DEFAULT,
    NEUTRAL,
    arrow_of,
    lines_of,
    on_page,
    phasors_of,
    results,
    table_of,
    turn_to_paper,
    vector,
)

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Page, Text
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo
from pycore.quantity import MINUS, read
from pycore.sums.answer import Grid
from pycore.sums.rows import rows_of
from pycore.sums.sheet import view_of
from pycore.words import plain
from pycore.words.phrase import stressed

ask = partial(shelf.ask, "neutral-current")
COUNT = 300
FACTS = {"i1": "4.1", "i2": "16.1", "i3": "8.1"}
PICTURE = {"first": ("up", "right"), "rotation": ("anticlockwise", "clockwise"), "reference": ("current", "voltage")}


def number(text: str) -> float:
    """A written number, whatever its mark and minus."""
    return read(text.removesuffix("°"), "A")


def test_every_arrow_is_as_long_as_its_value_at_the_scale_and_points_where_it_must():
    """1e-9 mm over 300 random problems: lines, first diagonals, sums, returning currents and copies."""
    count = 0
    for given in forms(COUNT):
        page, scale = NEUTRAL.sheet_page(given), results(given)["scale"]
        phasors = phasors_of(given)
        for placed in on_page(page, Arrow):
            wanted = turn_to_paper(given, phasors[placed.phasor]) * 10.0 / scale
            assert math.dist(placed.item.tail, placed.item.tip) == pytest.approx(abs(wanted), abs=1e-9)
            assert abs(vector(placed.item) - wanted) < 1e-9 * max(1.0, abs(wanted))
            count += 1
    assert count > 3 * COUNT


def test_the_neutral_is_drawn_unless_it_is_zero_and_then_nothing_is():
    drawn = 0
    for given in forms(COUNT):
        keys = {placed.phasor for placed in on_page(NEUTRAL.sheet_page(given), Arrow)}
        if results(given)["neutral-angle"] is None:
            assert not keys & {"sum", "return"}
        else:
            drawn += 1
            assert ("return" if given["resultant"] == "returning" else "sum") in keys
    assert 200 < drawn < COUNT


def test_arrows_of_the_parallelogram_start_at_one_point_and_tip_to_tail_they_form_a_chain():
    for given in forms(COUNT):
        arrows = [placed for placed in on_page(NEUTRAL.sheet_page(given), Arrow) if placed.phasor in ("i1", "i2", "i3")]
        chain = given["method"] == "tip-to-tail" or len(arrows) == 1
        if chain:
            for before, after in itertools.pairwise(arrows):
                assert math.dist(before.item.tip, after.item.tail) < 1e-9
        else:
            assert 1 == len({tuple(round(x, 9) for x in p.item.tail) for p in arrows if not p.copy})


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
@pytest.mark.parametrize(("first", "rotation", "reference"), list(itertools.product(*PICTURE.values())))
def test_the_picture_follows_its_conventions_and_the_answer_does_not(method, first, rotation, reference):
    """What is drawn first lies up or to the right; with sequence L1-L2-L3 the next follows against the rotation."""
    given = {**DEFAULT, "a1": "20", "a2": "20", "a3": "20", "method": method, "order": "12",
             "first": first, "rotation": rotation, "reference": reference}  # fmt: skip
    page = NEUTRAL.sheet_page(given)
    base = 90.0 if first == "up" else 0.0
    sense = 1 if rotation == "anticlockwise" else -1
    lag = 20.0 if reference == "voltage" else 0.0
    for key, voltage in (("i1", 0.0), ("i2", -120.0), ("i3", 120.0)):
        seen = math.degrees(math.atan2(vector(arrow_of(page, key)).imag, vector(arrow_of(page, key)).real))
        assert 0 == pytest.approx((seen - base - sense * (voltage - lag) + 180) % 360 - 180, abs=1e-9)
    assert results({**DEFAULT, "a1": "20", "a2": "20", "a3": "20"})["neutral-angle"] == results(given)["neutral-angle"]


def test_the_neutrals_size_and_angle_do_not_depend_on_how_it_is_drawn():
    """To the last bit, for 60 problems under every picture, method, resultant and way of writing."""
    for number_of in range(60):
        given = form(number_of)
        pinned = {key: value for key, value in given.items() if key[0] in "ai" and key[1:].isdigit()}
        pinned["sequence"] = given["sequence"]
        if given["decimal"] == "comma":
            pinned["decimal"] = "comma"
        answers = {(r["neutral-current"], r["neutral-angle"]) for r in (
            results({**pinned, **choice}) for choice in (
                {}, {"first": "right"}, {"rotation": "clockwise"}, {"reference": "voltage"}, {"resultant": "returning"},
                {"method": "tip-to-tail"}, {"method": "components", "first": "right", "rotation": "clockwise"},
                {"angles": "polar"}, {"names": "RYB"}, {"paper": "A2", "steps": "all"}))}  # fmt: skip
        assert 1 == len(answers)


def test_the_sequence_is_physics():
    """L1-L3-L2 with one lagging load changes the answer; with all lagging alike it only mirrors it."""
    unequal = {**DEFAULT, "a2": "35"}
    assert abs(results(unequal)["neutral-current"] - results({**unequal, "sequence": "132"})["neutral-current"]) > 1
    one, other = results(DEFAULT), results({**DEFAULT, "sequence": "132"})
    assert one["neutral-current"] == pytest.approx(other["neutral-current"], abs=1e-12)
    assert one["neutral-angle"] == pytest.approx(-other["neutral-angle"], abs=1e-9)


def table_turn(given: dict[str, str], value: complex) -> float:
    """Degrees from the reference, anticlockwise on the paper, as a protractor laid on the sheet reads them."""
    start = turn_to_paper(given, value) / (1j if given["first"] == "up" else 1)
    return math.degrees(math.atan2(start.imag, start.real))


def test_the_sheets_table_is_that_of_its_picture():
    """Amounts, lengths, angles and senses of rotation of 300 problems, against the arrows that stand beside them."""
    rows_read = 0
    for given in forms(COUNT):
        page, answer = NEUTRAL.sheet_page(given), results(given)
        keys = [f"i{n}" for n in "123" if given[f"i{n}"] != "0"]
        head, *rows = table_of(page)
        # The narrowest tables leave the head of the symbols out.
        unit = next({"A": 1.0, "mA": 1e-3, "kA": 1e3}[cell] for cell in head if cell in ("A", "mA", "kA"))
        middle = [placed.phasor for placed in on_page(page, Arrow) if placed.phasor in ("i12", "i13", "i23")][:1]
        returned = ["return"] if given["resultant"] == "returning" and answer["neutral-angle"] is not None else []
        assert len(keys) + len(middle) + 1 + len(returned) == len(rows)
        for key, row in zip([*keys, *middle, "sum", *returned], rows, strict=True):
            value = -phasors_of(given)["sum"] if key == "return" else phasors_of(given)[key]
            decimals = len(row[1].partition("," if given["decimal"] == "comma" else ".")[2])
            assert number(row[1]) * unit == pytest.approx(abs(value), abs=0.501 * unit * 10.0**-decimals)
            assert number(row[2]) == pytest.approx(abs(value) * 10 / answer["scale"], abs=0.2501)
            if key == "sum" and answer["neutral-angle"] is None:
                assert "no arrow" == row[-1]
                continue
            if abs(value) < 1e-6:
                continue
            told = number(row[3])
            if given["angles"] == "polar":
                seen = math.degrees(math.atan2(value.imag, value.real))
            else:
                seen = table_turn(given, value)
                assert told >= 0
                told *= {"clockwise": -1, "anticlockwise": 1}[row[4]] if len(row) == 5 else 1
            assert 0 == pytest.approx((told - seen + 180) % 360 - 180, abs=0.0501)
            rows_read += 1
    assert rows_read > 3 * COUNT


def components_grid(given: dict[str, str]) -> Grid:
    """The table of the components' working."""
    workings = NEUTRAL.answer(given, ("workings",)).workings
    blocks = next(working for working in workings if working.key == "components").blocks
    return next(block for block in blocks if isinstance(block, Grid))


def components_of(given: dict[str, str]) -> list[list[str]]:
    """The rows of the components' working as text, without its head."""
    return [[plain(cell) for cell in row] for row in components_grid(given).rows]


def test_the_components_working_matches_its_picture():
    """Level and upright parts of each line are those of its arrow on the paper. The sums are those of the printed
    parts, and so the neutral's within what three roundings allow."""
    for given in forms(100):
        scale, phasors = results(given)["scale"], phasors_of(given)
        rows = components_of(given)
        factor = 1.0 if max(map(abs, lines_of(given).values())) >= 1 else 1e-3
        for key, row in zip(("i1", "i2", "i3", "sum"), rows, strict=True):
            there = turn_to_paper(given, phasors[key])
            roundings = 3 if key == "sum" else 1
            near = [0.501 * roundings * 10.0 ** -len(cell.replace(",", ".").partition(".")[2]) for cell in row[3:5]]
            parts = (number(row[3]), number(row[4]))
            assert abs(parts[0] - there.real / factor) <= near[0]
            assert abs(parts[1] - there.imag / factor) <= near[1]
            if key == "sum":
                for column, part in zip((3, 4), parts, strict=True):
                    assert part == pytest.approx(sum(number(line[column]) for line in rows[:3]), abs=1e-9)
            if key != "sum" and given["method"] != "components" and phasors[key]:
                arrow = vector(arrow_of(NEUTRAL.sheet_page(given), key)) * scale / 10 / factor
                assert abs(parts[0] - arrow.real) <= near[0]
                assert abs(parts[1] - arrow.imag) <= near[1]


def test_the_components_angles_give_the_parts_by_the_functions_that_the_head_names():
    """Up: I sin θ level, I cos θ upright; to the right: cosine level, sine upright. Swapped heads are a lie."""
    for first, rotation in itertools.product(("up", "right"), ("anticlockwise", "clockwise")):
        given = {**DEFAULT, "a2": "31.8", "first": first, "rotation": rotation}
        functions = {"I sin θ": math.sin, "I cos θ": math.cos}
        heads = [plain(cell).replace("\u00a0", " ").partition(", ")[2] for cell in components_grid(given).head[3:]]
        level, upright = (functions[head] for head in heads)
        assert ("I sin θ" if first == "up" else "I cos θ") == heads[0]
        for row in components_of(given)[:3]:
            size, theta = number(row[1]), math.radians(number(row[2]))
            told = (number(row[3]), number(row[4]))
            assert told == pytest.approx((size * level(theta), size * upright(theta)), abs=0.03)


def path_lengths(data: bytes) -> list[float]:
    """Lengths in mm of all straight one-piece paths of a PDF's first page."""
    found = []
    for item in pdfium.PdfDocument(data)[0].get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
        if raw.FPDFPath_CountSegments(item) != 2:
            continue
        ends = []
        for index in range(2):
            x, y = ctypes.c_float(), ctypes.c_float()
            assert raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(item, index), x, y)
            ends.append(item.get_matrix().on_point(x.value, y.value))
        found.append(math.dist(*ends) * 25.4 / 72)
    return found


def svg_length(html: str, key: str) -> float:
    """The length of the one line in a phasor's group of the sheet, in mm as its viewBox has it."""
    svg = ElementTree.fromstring(re.search(r"<svg[^>]*data-sheet.*?</svg>", html, re.DOTALL)[0])
    (group,) = [g for g in svg.iter() if g.get("data-phasor") == key and g.get("data-copy") is None]
    (line,) = [child for child in group.iter() if child.tag.endswith("line")]
    x1, y1, x2, y2 = (float(line.get(name)) for name in ("x1", "y1", "x2", "y2"))
    return math.hypot(x2 - x1, y2 - y1)


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_a_neutral_of_10_58_amperes_is_105_83_millimetres_in_drawing_svg_and_pdf(method: str):
    """4.1, 16.1 and 8.1 A at unity power factor, 1 cm = 1 A, on A3. Kind: common practice, no source.

    Careful hand drawings of it come out between 10.4 and 10.5 A.
    """
    given = {**FACTS, "method": method, "paper": "A3", "scale": "1"}
    assert math.sqrt(112) == pytest.approx(results(given)["neutral-current"], abs=1e-12)
    page = NEUTRAL.sheet_page(given)
    arrow = arrow_of(page, "sum")
    assert 105.83 == round(math.dist(arrow.tail, arrow.tip), 2)
    reply, _ = ask(given)
    assert 105.83 == round(svg_length(reply["regions"]["sheet"], "sum"), 2)
    assert 'name="neutral-length" data-value="105.830052443"' in reply["regions"]["results"]
    _, data = ask(given, "pdf")
    assert [length for length in path_lengths(data) if abs(length - 105.830052443) < 0.001]


def test_every_length_of_forty_sheets_is_the_same_in_drawing_svg_and_pdf():
    """Arrows read back from both files within a micrometre or two of the drawing."""
    for given in forms(40):
        page = NEUTRAL.sheet_page(given)
        html, lengths = ask(given)[0]["regions"]["sheet"], path_lengths(ask(given, "pdf")[1])
        for placed in on_page(page, Arrow):
            length = math.dist(placed.item.tail, placed.item.tip)
            if placed.copy or length < 1e-3:
                continue
            assert min(abs(length - seen) for seen in lengths) < 0.002
            assert svg_length(html, placed.phasor) == pytest.approx(length, abs=0.002)


def test_a_scale_of_the_users_own_is_kept_and_the_best_one_is_listed():
    assert 3.7 == results({**DEFAULT, "scale": "3.7"})["scale"]
    for given in forms(100):
        digits = f"{results(given)['scale']:e}"[0]
        assert digits in ("1", "2", "5", "4")
        if given["steps"] == "125":
            assert digits in ("1", "2", "5")


def test_no_larger_scale_of_the_list_would_have_fitted():
    """One step finer than the one chosen does not fit, for that order and way round."""
    finer = {"1": "5e-1", "2": "1e0", "5": "2e0"}
    for number_of in range(60):
        given = {**form(number_of), "steps": "125"}
        reply = json.loads(api.handle(json.dumps({"do": "share", "page": "neutral-current", "form": given}))[0])
        resolved = dict(pair.split("=") for pair in reply["link"].lstrip("#").split("&"))
        scale = f"{float(resolved['scale']):.0e}"
        step, power = scale[0], int(scale[2:])
        less = float(finer[step]) * 10.0**power
        closer = {**given, "order": resolved.get("order", ""), "orientation": resolved["orientation"]}
        faults = ask({**closer, "scale": f"{less:g}"})[0]["errors"]
        assert ["scale"] == [fault["field"] for fault in faults], given


def test_a_page_is_as_large_as_its_paper():
    sizes = {"A5": (148, 210), "A4": (210, 297), "A3": (297, 420), "A2": (420, 594), "letter": (215.9, 279.4),
             "tabloid": (279.4, 431.8)}  # fmt: skip
    for paper, (short, long) in sizes.items():
        for way, size in (("portrait", (short, long)), ("landscape", (long, short))):
            page: Page = NEUTRAL.sheet_page({"paper": paper, "orientation": way})
            assert size == (page.width, page.height)


def test_minus_signs_are_true_ones():
    """No number on a sheet or in a working begins with a hyphen."""
    assert "−" == MINUS
    for given in forms(60):
        cells = [cell for row in (*table_of(NEUTRAL.sheet_page(given)), *components_of(given)) for cell in row]
        assert [] == [cell for cell in cells if cell.startswith("-") or re.fullmatch(rf"{MINUS}0([.,]0*)?°?", cell)]


@pytest.mark.parametrize("page", CALCULATORS.values(), ids=CALCULATORS)
def test_a_drawing_is_described_by_what_stands_in_its_table(page):
    """Symbol, amount, millimetres and angle of each phasor; the moves stand beside it in words of their own."""
    case = page.case(default_form(page.fields))
    plan = case.sheet_plan()
    rows = rows_of(case, plan)
    for drawing in (page.sheet_page(default_form(page.fields)), view_of(case, plan)):
        said = drawing.description
        for row in rows:
            cells = (row.amount, row.length and f"{row.length} mm", f"{row.angle} {row.sense}".strip())
            assert f"{plain(row.symbol)}: {', '.join(filter(None, cells))}." in said
        assert "in ;" not in said
        assert said.count(". ") == len(rows)


def test_a_solved_sheet_has_the_numbered_steps_of_the_page_once_nobody_types():
    """They come with the code: sentences for every keystroke would take too long."""
    moves = [block for block in NEUTRAL.answer(DEFAULT).workings[0].blocks if hasattr(block, "step")]
    for opening, comes in ((ReopenInfo(), True), (ReopenInfo("https://f.org/a/", True), True),
                           (ReopenInfo("https://f.org/a/"), False)):  # fmt: skip
        words = " ".join(text.item.plain for text in on_page(NEUTRAL.pages(DEFAULT, opening)[0], Text))
        assert comes == ("Complete the first parallelogram." in words)
        if comes:
            on_paper = str.maketrans("₁₂₃", "123", "_")
            numbered = [f"{move.step} {stressed(move.phrase)}".translate(on_paper) for move in moves]
            assert [] == [line for line in numbered if line not in words]
