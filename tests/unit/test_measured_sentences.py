"""Every sentence in which a length is measured: the amount follows from the printed length and scale."""

import re

import pytest
from host import shelf
from unit.sheets import texts

from pycore.calculators.registry import CALCULATORS
from pycore.sums.answer import Move
from pycore.sums.classroom import SumLesson
from pycore.sums.rows import directions_of, rows_of
from pycore.sums.sentences import StepSentences
from pycore.words import plain

FORMS = 14
NUMBER = r"(\d[\d.,]*)"
LENGTH = re.compile(rf"about {NUMBER} mm \({NUMBER} cm\)")
READ = re.compile(
    rf"(?:about|Read) {NUMBER} mm \({NUMBER} cm\)\. At 1 cm = {NUMBER} (\S+), [^.]*? is {NUMBER} (\S+) "
    rf"\(calculated: {NUMBER} (\S+)\)\."
)


def moves(slug: str, form: dict[str, str]) -> list[str]:
    """The moves of every construction."""
    page = CALCULATORS[slug]
    answer = page.answer(form, ("workings",))
    found = [plain(block.phrase) for working in answer.workings for block in working.blocks if isinstance(block, Move)]
    return [text.replace("\u00a0", " ") for text in found]


def frames(slug: str, form: dict[str, str]) -> list[str]:
    """What each step of the lesson says, as it stands in the lesson view and in the handout; no picture is drawn but
    that of the finished drawing."""
    lesson = SumLesson(CALCULATORS[slug].case(form))
    finished = lesson.show("lesson", lesson.count("lesson"))
    steps = [lesson.lesson.frame_words(frame)[:3] for frame in lesson.lesson.frames]
    steps.append((finished.sentence, finished.reading, finished.why))
    return [
        " ".join(plain(one) for one in (sentence, reading, *why)).replace("\u00a0", " ")
        for sentence, reading, why in steps
    ]


def value(text: str) -> float:
    return float(text.replace(",", "."))


def rounding(text: str) -> float:
    """Half a unit of the last digit of a number as printed."""
    return 0.5 * 10.0 ** -len(re.split("[.,]", text)[1]) if re.search("[.,]", text) else 0.5


def check(text: str) -> int:
    """Recompute what a text says of lengths that are measured; how many there are."""
    for mm, cm, scale, unit, product, product_unit, calculated, last_unit in READ.findall(text):
        exact = value(mm) / 10 * value(scale)
        assert value(cm) == pytest.approx(value(mm) / 10, abs=1e-9), text
        # A scale with many digits has a product with more: it is printed to six figures.
        assert value(product) == pytest.approx(exact, rel=5e-6, abs=1e-9), text
        assert product_unit == last_unit, text
        assert unit[0] == product_unit[0] or not {unit[0], product_unit[0]} & set("kmµM"), text
        # A ruler is read to half a millimetre.
        assert abs(value(calculated) - exact) <= 0.025 * value(scale) * 1.001 + rounding(calculated), text
    return len(READ.findall(text))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_measured_length_is_multiplied_out_as_printed(slug: str):
    sentences = 0
    for form in shelf.forms(slug, FORMS):
        for text in (*moves(slug, form), *frames(slug, form)):
            if "easure" in text or " 1 cm = " in text:
                assert not re.search(r"mm \([\d.,]+ cm\), so ", text), text
            if re.search(r"about [\d.,]+ mm \(|Read [\d.,]+ mm \([\d.,]+ cm\)\. At", text):
                assert READ.search(text), text
            sentences += check(text)
    assert sentences >= FORMS


@pytest.mark.parametrize("slug", CALCULATORS)
def test_easy_reading_prints_the_same_products(slug: str):
    sentences = 0
    for form in shelf.forms(slug, 4):
        easy = {**form, "print": "easy", "sheet": "construction", "paper": "A3", "scale": "", "orientation": ""}
        pages = CALCULATORS[slug].pages(easy)
        text = " ".join(" ".join(one.words for one in texts(page)) for page in pages).replace("\u00a0", " ")
        for match in LENGTH.finditer(text):
            assert READ.match(text, match.start()), text[match.start() : match.start() + 140]
            sentences += check(READ.match(text, match.start())[0])
    assert sentences >= 3


PART = re.compile(rf"{NUMBER} mm \({NUMBER} cm\) (to the right|to the left|up|down)")
SIGNS = {"to the right": ("x", 1.0), "to the left": ("x", -1.0), "up": ("y", 1.0), "down": ("y", -1.0)}


def signed(text: str) -> list[tuple[str, float]]:
    """The axis and the signed length in mm of every component in a text."""
    return [(SIGNS[side][0], SIGNS[side][1] * value(mm)) for mm, _, side in PART.findall(text)]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_components_are_read_to_half_a_millimetre_and_added_as_they_were_read(slug: str):
    page, sums = CALCULATORS[slug], 0
    methods = [option.value for field in page.fields if field.name == "method" for option in field.options]
    for form in shelf.forms(slug, FORMS) if "components" in methods else ():
        case = page.case({**form, "method": "components", "scale": ""})
        if "components" not in case.methods or case.closed:
            continue
        sentences = StepSentences(case.plans("components")[0], case.notation)
        told = [plain(block.phrase).replace("\u00a0", " ") for block in sentences.all_moves()]
        dropped = [part for text in told if text.startswith("Find the components") for part in signed(text)]
        assert all(mm * 2 == round(mm * 2) for _, mm in dropped), told
        for text in told:
            for axis, mm in signed(text) if text.startswith(("Add the components", "Mark both sums")) else ():
                read = sum(one for letter, one in dropped if letter == axis)
                if read * mm > 0:
                    assert read == pytest.approx(mm, abs=1e-9), told
                    sums += 1
    assert sums > FORMS or slug == "open-neutral"


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_opposite_of_a_sum_is_as_long_as_the_sum_was_read(slug: str):
    for form in shelf.forms(slug, 4):
        shown = {**form, "resultant": "returning", "scale": "", "decimal": "point"}
        case = CALCULATORS[slug].case(shown)
        for method in case.methods if slug != "open-neutral" else ():
            drawn_back = method != "tip-to-tail" and case.possible(method) == method and not case.closed
            if drawn_back and case.companions is None:
                told = StepSentences(case.plans(method)[0], case.notation).all_moves()
                last = plain(told[-1].phrase).replace("\u00a0", " ")
                found = [value(mm) for mm in re.findall(r"([\d.]+) mm \(", last)]
                assert found
                assert all(mm * 2 == round(mm * 2) for mm in found), last


@pytest.mark.parametrize("kind", ["construction", "problem", "overlay"])
@pytest.mark.parametrize("slug", CALCULATORS)
def test_all_angles_of_a_column_have_a_decimal_or_none_has(slug: str, kind: str):
    """On every kind of sheet; on a drawn arc an angle has only the decimals that it needs."""
    columns = 0
    for form in shelf.forms(slug, 4):
        for printed in ("usual", "large"):
            case = CALCULATORS[slug].case({**form, "sheet": kind, "print": printed, "scale": "", "orientation": ""})
            plan = case.sheet_plan()
            found = [row.angle for row in rows_of(case, plan)] if kind != "problem" else directions_of(case, plan)
            angles = [text.split("°")[0] for text in found if re.match(r"[−\d][\d.,]*°", text)]
            decimals = {len(re.split("[.,]", text)) for text in angles}
            assert len(decimals) <= 1, angles
            columns += bool(angles)
    # A problem's directions may all have to be found.
    assert columns or kind == "problem"
