"""What a question paper and its mark scheme print: units, pages, one place for an answer, a worked solution."""

import re
from itertools import combinations

import numpy
import pymupdf
import pytest
from leaks import OWN_VALUES
from paper_files import made, pages

from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages.question_paper import read_paper

HEAD = {"title": "Hall lighting", "college": "Northgate College", "group": "Tuesday", "date": "7 Dec 2026"}
ROLL = "Ada Lark\nBen Stone"
SERIES = {"r": "40", "l": "150 mH", "c": "80 uF", "supply": "110", "frequency": "50"}


def link_of(slug: str, values: dict[str, str]) -> str:
    """A lecturer's own values on a calculator, as a link."""
    page = CALCULATORS[slug]
    return f"/{slug}/#{links.fragment(links.form_pairs(default_form(page.fields) | values, page.fields))}"


def printed(form: dict[str, str], work: str = "papers") -> list[str]:
    """The text of each page, in one line."""
    return [" ".join(text.split()) for text in pages(made(HEAD | {"questions": "1"} | form, work, ROLL)[1])]


def test_every_page_says_which_it_is_and_every_sheet_whose():
    texts = printed({"questions": "2", "q2-working": "none"})
    assert 8 == len(texts)
    for place in (1, 2):
        own = texts[4 * (place - 1) : 4 * place]
        for number, text in enumerate(own, start=1):
            assert f"page {number} of 4" in text if number < 3 else f"{number} of 4" in text
        for sheet in own[2:]:
            assert all(one in sheet for one in ("Northgate College", "Tuesday", "7 Dec 2026"))


def test_a_paper_of_pages_for_easy_reading_counts_them_too():
    texts = printed({"print": "easy", "q1-topic": "add-phasors"})
    count = len(texts) // 2
    assert count > 3
    assert [f"page {number} of {count}" in texts[number - 1] for number in (1, 2)] == [True, True]


def test_the_front_page_has_room_for_who_marks():
    assert all(word in printed({})[0] for word in ("Grade", "Marked by", "Date marked"))


@pytest.mark.parametrize(("form", "told"), [
    ({}, "Calculate the neutral current, IN, in A, and its angle from I1 (positive: anticlockwise)"),
    ({"resultant": "returning"}, "Calculate −IN in A, and its angle from I1 (positive: anticlockwise)"),
    ({"rotation": "clockwise"}, "(positive: clockwise)"),
    ({"q1-link": link_of("series-circuit", SERIES)}, "Calculate the current, I, in A, and its angle from V (positive"),
    ({"q1-topic": "power-triangle"}, "QC, in "),
])  # fmt: skip
def test_a_question_names_what_is_calculated_its_unit_and_the_sense_of_its_angle(form: dict[str, str], told: str):
    question = printed(form)[1]
    assert told in question
    assert "with its unit on the answer line" in question


def test_a_sheet_asks_for_what_is_marked():
    """The arrow that returns, where the college teaches it; the calculated result has one place, its answer line."""
    sheet = printed({"resultant": "returning", "colours": "british-old"})[2]
    assert re.search(r"result −IN −IN from I1", sheet)
    assert "drawn" in sheet
    assert "calculated" not in sheet
    whole = printed({"q1-working": "none"})
    assert 4 == len(whole)
    assert "calculated" in whole[1]


def test_lines_have_the_colours_of_the_paper():
    iec, old = (made(HEAD | {"questions": "1", "colours": one}, "papers", ROLL)[1] for one in ("iec", "british-old"))
    assert iec != old


def test_a_calculation_alone_is_asked_in_sentences_and_says_nothing_of_drawing():
    text = printed({"q1-topic": "power-triangle", "q1-asks": "calculation"})[1]
    assert re.search(r"A load takes [\d.]+ kW at a power factor of [\d.]+ lagging, from a supply of 230 V", text)
    assert re.search(r"Its power factor is to be corrected to 0\.9\d\.", text)
    assert "Draw" not in text


def test_the_scheme_of_a_calculation_has_its_own_tolerance_and_no_scale():
    text = " ".join(printed({"q1-topic": "power-triangle", "q1-asks": "calculation"}, "scheme"))
    assert "1 cm =" not in text
    assert " mm" not in text.replace("within 1 mm", "")
    for answer, unit, off in re.findall(r"([\d.]+) (k?var) ± ([\d.]+) k?var", text):
        assert unit
        assert float(off) == pytest.approx(0.01 * float(answer), rel=0.02)
    assert 2 == len(re.findall(r"± [\d.]+ k?var", text))


def test_own_values_have_their_units_and_belong_to_all_learners():
    text = " ".join(printed({"q1-link": link_of("series-circuit", SERIES)}, "scheme"))
    assert "40 Ω 150 mH 80 µF 110 V 50 Hz" in text
    assert "all learners" in text
    assert "Ada Lark" not in text


def test_the_scheme_works_out_one_solution():
    """Reactances, impedance and current by numpy; each stands in the lines of the calculation."""
    text = " ".join(printed({"q1-link": link_of("series-circuit", SERIES)}, "scheme"))
    coil, capacitor = 2 * numpy.pi * 50 * 0.15, 1 / (2 * numpy.pi * 50 * 80e-6)
    size = numpy.hypot(40.0, coil - capacitor)
    solution = text[text.index("Worked solution") :]
    for number, unit in ((coil, "Ω"), (capacitor, "Ω"), (size, "Ω"), (110.0 / size, "A")):
        assert f"= {number:.5g} {unit}" in solution
    assert "√(R² + X²)" in solution


def test_the_worked_solution_is_that_of_the_learner_it_names():
    form = {"questions": "1", "q1-topic": "neutral-current"}
    text = " ".join(printed(form, "scheme"))
    learner = next(one for one in read_paper(HEAD | form, ROLL).questions[0].learners() if one)
    sizes = [float(learner.form[key]) for key in ("i1", "i2", "i3")]
    turns = numpy.exp(-2j * numpy.pi * numpy.arange(3) / 3)
    assert "Worked solution with the values of Ada Lark" in text
    assert f"≈ {abs(numpy.dot(sizes, turns)):.3g} A" in text


def test_what_is_drawn_and_what_is_calculated_have_tables_of_their_own_where_they_differ():
    text = " ".join(printed({"q1-link": link_of("series-circuit", SERIES)}, "scheme"))
    assert "VR was left out" in text
    assert re.search(r"110 V 110\.0 mm ± .* Calculated .* 2\.70 A ± 0\.027 A 10\.4° ± 0\.5° clockwise", text)


@pytest.mark.parametrize(("angles", "told"), [("polar", "power factor 1"), ("protractor", "equal power factor")])
def test_angles_from_a_voltage_need_a_power_factor(angles: str, told: str):
    assert f"Star-connected load, {told}: currents 120° apart" in printed({"angles": angles})[1]


def test_the_scheme_says_what_a_first_diagonal_is():
    assert "First diagonal: the sum of the first two phasors" in " ".join(printed({}, "scheme"))


@pytest.mark.parametrize("slug", ["harmonics-in-the-neutral", "sequence-components", "series-circuit"])
def test_no_text_of_a_scheme_lies_on_another_or_on_a_rule(slug: str):
    """By the boxes of another reader of PDFs; a worked solution may begin a page with a table."""
    data = made({"questions": "1", "overlays": "no", "q1-link": link_of(slug, OWN_VALUES[slug])}, "scheme", ROLL)[1]
    with pymupdf.open(stream=data) as document:
        for page in document:
            boxes = [pymupdf.Rect(word[:4]) for word in page.get_text("words")]
            # A line's box is higher than its letters; lines stand 4.3 mm apart, letters are 3.5 mm high.
            flat = [pymupdf.Rect(box.x0, box.y0 + 0.3 * box.height, box.x1, box.y1 - 0.3 * box.height) for box in boxes]
            rules = [(item[1], item[2]) for path in page.get_drawings() for item in path["items"] if item[0] == "l"]
            assert not [(one, two) for one, two in combinations(flat, 2) if one.intersects(two)]
            assert not [box for box in flat for left, right in rules
                        if box.y0 < left.y < box.y1 and box.x0 < right.x and left.x < box.x1]  # fmt: skip
