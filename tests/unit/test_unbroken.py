"""What must stay on one line: sums, a number and its unit, in sentences of pages and lessons and on sheets."""

import re

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.render.phrase import phrase_html
from pycore.sheet.lettered import width_of, wrapped
from pycore.words.phrase import Emphasis, Symbol, say
from pycore.words.unbroken import NO_BREAK, together

BROKEN_SUM = re.compile(r"[\d°₀-₉] [−+×] [\d−]|[−+×] \d+[.,]?\d*°")


@pytest.mark.parametrize(("text", "kept"), [
    ("that is 180° − 120° = 60°.", "that is 180°~−~120° =~60°."),
    ("5 A + 3.2 A = 8.2 A", "5~A~+~3.2~A =~8.2~A"),
    ("I₁ + I₂ first", "I₁~+~I₂ first"),
    ("1 + 2 + 3 + 4 in a row", "1 +~2 +~3 +~4 in a row"),
    ("from −180° to 180°", "from −180° to 180°"),
    ("a word – a dash – and 3 words", "a word – a dash – and 3 words"),
])  # fmt: skip
def test_a_sum_stays_together(text: str, kept: str):
    assert kept == together(text).replace(NO_BREAK, "~")


def test_a_sum_of_symbols_and_one_that_is_stressed_stay_together():
    one, two = Symbol("I", "1"), Symbol("I", "2")
    assert f"</sub></span>{NO_BREAK}+{NO_BREAK}<span" in str(phrase_html(say("{one} + {two} first", one=one, two=two)))
    stressed = (Emphasis(("180° − ", "120°")), " = 60°")
    assert f"<strong>180°{NO_BREAK}−{NO_BREAK}120°</strong>" in str(phrase_html(stressed))


def test_a_sheet_breaks_no_sum():
    words = "Measured from the line you have just drawn, that is 180° − 120° = 60°."
    for width in range(40, 120):
        assert not [line for line in wrapped(words, 3.0, float(width)) if line.endswith(("180°", "−", "=", "+"))]
    assert wrapped("180° − 120°", 3.0, width_of("180° −", 3.0)) == ["180° −", "120°"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_sum_of_a_lesson_can_break(slug: str):
    page, sums = CALCULATORS[slug], 0
    for method in [option.value for field in page.fields if field.name == "method" for option in field.options]:
        form = {**default_form(page.fields), "method": method}
        try:
            first = page.lesson(form, "lesson", 1)
        except ValueError:
            continue
        for number in range(1, first.count + 1):
            frame = page.lesson(form, "lesson", number)
            phrases = [frame.sentence, frame.reading, *frame.why]
            phrases += [] if frame.reason is None else [frame.reason.sentence, frame.reason.calculation]
            text = " ".join(re.sub("<[^>]*>", "", str(phrase_html(phrase))) for phrase in phrases)
            sums += text.count(f"{NO_BREAK}−{NO_BREAK}")
            assert not BROKEN_SUM.search(text), text
    assert sums or slug in ("open-neutral", "two-wattmeters", "power-triangle", "harmonics-in-the-neutral")
