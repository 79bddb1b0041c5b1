"""Sentences as a voice says them, and the moves for easy reading on the screen."""

import json
import re

import pytest

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.words import spoken
from pycore.words.phrase import Emphasis, Symbol, plain, say


@pytest.mark.parametrize(("phrase", "said"), [
    (("Draw ", Symbol("I", "N"), "."), "Draw I N."),
    ((Symbol("I", "12"), " is 18.4\u00a0A."), "I 1 2 is 18.4 amperes."),
    (("1 cm = 2 A",), "1 centimetre equals 2 amperes"),
    (("1 cm = 1\u00a0A",), "1 centimetre equals 1 ampere"),
    (("Turn −36,9° from it, 92 mm (9.2 cm).",), "Turn minus 36.9 degrees from it, 92 millimetres (9.2 centimetres)."),
    (("Mark 120° clockwise; 850 mA, 4.7 kΩ, 10\u00a0µF, 50 Hz",),
     "Mark 120 degrees clockwise; 850 milliamperes, 4.7 kiloohms, 10 microfarads, 50 hertz"),
    (("I₁ + I₂ at ±0.5 %",), "I 1 plus I 2 at plus or minus 0.5 per cent"),
    ((Symbol("φ", "1"), " = 1°"), "phi 1 equals 1 degree"),
])  # fmt: skip
def test_figures_and_symbols_are_said_as_people_say_them(phrase, said: str):
    assert said == spoken.spoken(phrase)


def test_a_move_is_one_action_on_a_line_and_loses_no_word():
    phrase = say("**Draw {i}.** Straight up, 92.5 mm. Then stop.", i=Symbol("I", "1"))
    parts = spoken.sentences(phrase)
    assert ["Draw I₁.", "Straight up, 92.5 mm.", "Then stop."] == [plain(part) for part in parts]
    assert isinstance(parts[0][0], Emphasis)
    assert plain(phrase) == " ".join(plain(part) for part in parts)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_move_of_every_calculator_can_be_said(slug: str):
    """No sign is left that a voice skips or spells, and the lines are the moves of the list on the page."""
    form = default_form(CALCULATORS[slug].fields)
    reply = json.loads(handle(json.dumps({"do": "easy", "page": slug, "form": form}))[0])
    html = reply["regions"]["easy"]
    said = re.findall(r'data-spoken="([^"]+)"', html)
    assert len(said) > 8 and html.count("<li>") == html.count("data-tick=") >= 4
    answer = json.loads(handle(json.dumps({"do": "answer", "page": slug, "form": form, "parts": ["workings"]}))[0])
    section = re.search(r'<section[^>]*class="working".*?</section>', answer["regions"]["workings"], re.DOTALL)[0]
    assert html.count("<li>") == section.count("data-for-step=")
    for line in said:
        assert not re.search(r"[−°Ω√±×=µ₀-₉_]|\d ?(?:mm|cm|mA|A|V|W|kW)\b", line), line
