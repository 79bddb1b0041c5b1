"""Every sentence in which a length is measured: the amount follows from the printed length and scale."""

import re

import pytest
from host import shelf
from unit.sheets import texts

from pycore.calculators.registry import CALCULATORS
from pycore.sums.answer import Move
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
    """What each step of the lesson says, as it stands in the classroom view and in the handout."""
    page = CALCULATORS[slug]
    first = page.lesson(form, "lesson", 1)
    steps = (page.lesson(form, "lesson", number) for number in range(1, first.count + 1))
    return [
        " ".join(plain(one) for one in (step.sentence, step.reading, *step.why)).replace("\u00a0", " ")
        for step in steps
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
