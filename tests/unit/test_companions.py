"""Phasors of a second quantity: true to a scale of their own, told apart without colours, clear of labels."""

import json
import math
import random
import re

import pytest
from unit.companions import FIELDS, Beside
from unit.sheets import arrow_of, capitals_of, on_page, table_of, texts, vector
from unit.test_sheet_clear import faults_of, told

from pycore.constructions.roles import COMPANION
from pycore.drawing import Arrow, Line, Page, Shape, Text
from pycore.errors import InputError
from pycore.sheet.media import PAPERS
from pycore.words import plain
from pycore.writers import svg

SERIES = {"p1": "75 at 0", "p2": "180 at 90", "p3": "80 at -90"}
ONE = Beside((2.5, 0.0))
METHODS = ("tip-to-tail", "parallelogram", "components")
KINDS = ("construction", "problem", "overlay")
CHOSEN = ("method", "first", "rotation", "reference", "paper", "orientation", "resultant", "angles", "steps")


def shown(page: Beside, form: dict[str, str]) -> dict[str, float | None]:
    """The values of the results by name."""
    return {output.name: output.value for output in page.answer(form, ("answer",)).outputs}


def words_on(page: Page) -> str:
    """Everything that stands beside the figure, the notes run together, and the scale."""
    return " ".join(text.words for text in texts(page) if text.group in ("words", "scale"))


def forms(count: int) -> list[tuple[Beside, dict[str, str]]]:
    """Random sums of two to four voltages with one or two currents, over three decades, all papers and pictures."""
    rng = random.Random(20261125)
    made = []
    for _ in range(count):
        sizes = [round(10 ** rng.uniform(0, 3), 1) for _ in range(rng.randint(2, 4))]
        angles = [rng.choice((0, 90, -90, 180, rng.randint(-179, 180))) for _ in sizes]
        form = {f"p{n}": f"{size} at {angle}" for n, (size, angle) in enumerate(zip(sizes, angles, strict=True), 1)}
        for name in CHOSEN:
            field = next(field for field in FIELDS if field.name == name)
            form[name] = rng.choice(field.options).value
        current = 0.0 if form["reference"] == "zero" else float(angles[0])
        currents = [(round(10 ** rng.uniform(-2, 2), 3), current)]
        if rng.random() < 0.4:
            currents.append((round(currents[0][0] * rng.uniform(0.2, 1), 4), float(rng.randint(-179, 180))))
        made.append((Beside(*currents), form))
    return made


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("kind", ["construction", "overlay"])
def test_a_companion_is_as_long_as_its_own_scale_says(method: str, kind: str):
    form = {**SERIES, "method": method, "sheet": kind}
    scale = shown(ONE, form)["second-scale"]
    found = vector(arrow_of(ONE.pages(form)[0], "c1"))
    assert 2.5 * 10 / scale == pytest.approx(found.real, abs=1e-9)
    assert 0 == pytest.approx(found.imag, abs=1e-9)


def test_random_companions_are_true_in_length_and_direction():
    """Against the cosine and sine of this test's own, whichever way the drawing lies."""
    for page, form in forms(60):
        scale = shown(page, form)["second-scale"]
        sheet = page.pages(form)[0]
        reference = page.case(form).picture.reference
        for arm in page.companions.arms:
            seen = math.radians(arm.angle - reference) * (-1 if form["rotation"] == "clockwise" else 1)
            expected = arm.size * 10 / scale * complex(math.cos(seen), math.sin(seen))
            found = vector(arrow_of(sheet, arm.key)) * (-1j if form["first"] == "up" else 1)
            assert abs(found - expected) < 1e-6 * abs(expected) + 1e-6


def test_it_is_told_apart_by_line_and_arrowhead_not_by_colour_alone():
    """A double line of long dashes and an open head, where the sum's phasors have a filled head and a single shaft."""
    overlay = ONE.sheet_page({**SERIES, "sheet": "overlay"})
    for view in (*ONE.pages(SERIES), ONE.answer(SERIES).views["phone"], overlay):
        inside = [placed.item for placed in on_page(view, object) if COMPANION in placed.names]
        assert [True] == [not item.closed and item.fill is None for item in inside if isinstance(item, Shape)]
        rails = [item for item in inside if isinstance(item, Line)]
        assert 2 == len(rails)
        assert all(rail.dash for rail in rails)
        assert [0.0] == [item.head for item in inside if isinstance(item, Arrow)]
        others = [p.item for p in on_page(view, Arrow) if COMPANION not in p.names and p.phasor]
        assert len(others) >= 3
        # Of a phasor that stands aside of another, the head is a filled shape.
        filled = {p.phasor for p in on_page(view, Shape) if p.item.fill}
        keys = [p.phasor for p in on_page(view, Arrow) if COMPANION not in p.names and p.phasor]
        # An overlay's own lines have no heads, so that the learner's remain visible.
        headed = [arrow.head > 0 or key in filled for arrow, key in zip(others, keys, strict=True)]
        assert set(headed) == {view is not overlay}


def test_the_svg_of_it_holds_one_line_to_exactly_its_tip():
    """The contract of every phasor's group, beside the dashed rails."""
    page = ONE.pages(SERIES)[0]
    group = svg.write(page, prefix="sheet", role="sheet").split('data-phasor="c1"')[1].split("</g>")[0]
    ends = re.search(r'x1="([^"]+)" y1="([^"]+)" x2="([^"]+)" y2="([^"]+)"', group).groups()
    thin = arrow_of(page, "c1")
    expected = [thin.tail.x, page.height - thin.tail.y, thin.tip.x, page.height - thin.tip.y]
    assert expected == pytest.approx([float(end) for end in ends], abs=1e-3)


@pytest.mark.parametrize("kind", KINDS)
def test_both_scales_are_said_with_a_check_of_each(kind: str):
    """In words beside the figure: volts and amperes per centimetre, and what the bar stands for in both."""
    sheet = ONE.pages({**SERIES, "sheet": kind})[0]
    words = words_on(sheet)
    assert "1\u00a0cm\u00a0=\u00a020\u00a0V" in words
    assert "for currents 1\u00a0cm\u00a0=\u00a00.4\u00a0A" in words
    assert "A bar of 100\u00a0mm represents 200\u00a0V, or 4\u00a0A." in words
    row = next(row for row in table_of(sheet) if row[0].startswith("I"))
    assert "2.50\u00a0A" in row
    assert ("62.5" in row) == (kind != "problem")


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
def test_the_check_of_both_scales_stands_whole_on_every_paper(paper: str, orientation: str):
    for kind in KINDS:
        sheet = ONE.pages({**SERIES, "sheet": kind, "paper": paper, "orientation": orientation})[0]
        values = shown(ONE, {**SERIES, "paper": paper, "orientation": orientation})
        small = paper == "A5"
        volts, amperes = (f"{values[name] * (5 if small else 10):g}" for name in ("scale", "second-scale"))
        check = f"bar: {volts} V, {amperes} A" if small else f"A bar of 100 mm represents {volts} V, or {amperes} A."
        assert check in words_on(sheet).replace("\u00a0", " ")
        assert [] == faults_of(sheet)


def test_the_steps_draw_it_first_and_say_its_scale():
    working = next(working for working in ONE.answer(SERIES).workings if working.key == "tip-to-tail-12")
    told_by = [(plain(block.phrase), plain(block.why)) for block in working.blocks if hasattr(block, "step")]
    assert told_by[1] == (
        "Draw I₁. To the right from the start, 62.5\u00a0mm (6.25\u00a0cm): a double line with an open arrowhead.",
        "Currents have their own scale, 1\u00a0cm\u00a0=\u00a00.4\u00a0A. This phasor is 2.50\u00a0A. "
        "All voltages are counted from it.",
    )


def test_one_that_lies_elsewhere_is_drawn_after_the_sum_by_protractor():
    page = Beside((2.5, -30.0))
    working = next(working for working in page.answer(SERIES).workings if working.key == "tip-to-tail-12")
    last = [plain(block.phrase) for block in working.blocks if hasattr(block, "step")][-1]
    assert last.startswith("Draw I₁. At the start, mark 30° clockwise from V₁. Draw 62.5\u00a0mm")


@pytest.mark.parametrize("method", METHODS)
def test_the_lesson_shows_it_with_the_ruler_and_its_scale(method: str):
    form = {**SERIES, "method": method}
    shows = [ONE.lesson(form, "lesson", step) for step in range(1, ONE.lesson(form, "lesson", 1).count + 1)]
    found = [show for show in shows if "open arrowhead" in plain(show.reading)]
    assert 1 == len(found)
    assert "1\u00a0cm\u00a0=\u00a00.4\u00a0A" in plain(found[0].why[0])
    assert any(placed.phasor == "c1" for placed in on_page(found[0].picture, Arrow))


def test_a_companion_changes_nothing_about_the_sum_or_its_tolerance():
    alone, beside = (shown(Beside(*currents), SERIES) for currents in (((1e-9, 0.0),), ((2.5, 0.0),)))
    for name in ("sum", "sum-angle", "scale", "sum-length", "tolerance"):
        assert alone[name] == beside[name]


def test_a_scale_of_ones_own_that_does_not_fit_is_refused_with_one_that_does():
    answer = ONE.answer({**SERIES, "second-scale": "0.01"})
    (fault,) = answer.faults
    assert ("second-scale", "0.01") == (fault.field, fault.typed)
    assert "do not fit" in fault.message and "1 cm = 500\u00a0mA" not in fault.message
    assert dict(fault.offers[0].values) == {"second-scale": "0.4"}
    assert ("second-scale", "0.4") in answer.link


def test_a_scale_of_ones_own_is_kept_and_goes_into_the_link():
    answer = ONE.answer({**SERIES, "second-scale": "0.25"})
    assert () == answer.faults
    assert ("second-scale", "0.25") in answer.link
    assert 0.25 == shown(ONE, {**SERIES, "second-scale": "0.25"})["second-scale"]


def test_a_scale_that_is_no_number_is_said_at_its_field():
    with pytest.raises(InputError) as found:
        ONE.answer({**SERIES, "second-scale": "5 V"})
    assert ["second-scale"] == [fault.field for fault in found.value.faults]


def test_no_label_of_two_hundred_random_sheets_and_phone_views_touches_anything():
    faults, labels = [], 0
    for number, (page, form) in enumerate(forms(200)):
        answer = page.answer(form, ("sheet", "view"))
        labels += len([text for text in texts(answer.sheet) if text.step is not None])
        view = answer.views["phone"]
        found = [*faults_of(answer.sheet), *faults_of(view, view.box)]
        faults += [(number, f"{fault} {json.dumps(form)}") for fault in found]
    assert labels > 800
    assert [] == faults, told(faults)


def test_its_label_stands_on_the_sheet():
    for page, form in forms(60):
        sheet = page.pages(form)[0]
        labels = [p.item for p in on_page(sheet, Text) if p.step is not None and capitals_of(p.item) > 3]
        for arm in page.companions.arms:
            assert any(label.plain.replace("₁", "1") == f"I{arm.number}" for label in labels), form
