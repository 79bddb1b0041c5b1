"""How hard a sentence is to read, by two measures of textstat: Flesch-Kincaid (syllables) and ARI (letters).

Both give a school grade: 8 is read at about thirteen. The terms that the course teaches, numbers, symbols and formulas
are set apart first, for the learner has to learn them: each counts as one short word.
"""

import functools
import re
from collections.abc import Iterable, Iterator
from html.parser import HTMLParser

import textstat

HARDEST = 8.0
SHORTEST = 8
"""Words; in a shorter sentence one long word decides the grade."""
TERMS = (
    "acceleration", "active power", "admittances?", "alternating", "amperes?", "angles?", "anticlockwise",
    "apparent power", "calculations?", "calculated?", "capacitances?", "capacitors?", "centimetres?", "clockwise",
    "components?", "conductances?", "conductors?", "construction", "current transformer", "currents?", "degrees?",
    "delta", "diagonals?", "displacement", "fundamentals?", "harmonics?", "horizontal", "impedances?", "inductances?",
    "inductors?", "installations?", "isolated?", "kilovolt-amperes?", "line voltages?", "loads?",
    "measurement category", "millimetres?", "negative", "neutral", "operator", "parallelograms?", "perpendicular",
    "phase sequence", "phasors?", "phases?", "positive", "power factors?", "protractors?", "reactances?", "reactive",
    "reference", "resistances?", "resistors?", "resonance", "resultant", "sequence", "series", "single-phase",
    "supply", "susceptances?", "symmetrical", "three-phase", "vertical", "voltages?", "volt-amperes?", "wattmeters?",
    "third-harmonic", "phase-shift", "power-factor-correction", "two-wattmeter", "Millman", "Pythagoras",
)  # fmt: skip
TERM = re.compile(rf"\b(?:{'|'.join(sorted(TERMS, key=len, reverse=True))})\b", re.IGNORECASE)
NUMBER = re.compile(r"[−+±]?\d[\d., ]*\d(?:\s?(?:mm|cm|A|V|W|Ω|°|kW|VA|var|kvar|kVA|%|Hz|mH|µF)\b)?|\d\S*")
SYMBOL = re.compile(r"\b(?:[A-Z][₀-₉A-Za-z]?[₀-₉]?)\b(?=\s)|[φ∠Σ√]\S*")
END = re.compile(r"(?<=[.?!])\s+(?=[A-Z0-9“])|(?<=:)\s+(?=[A-Z])")
FORMULA = re.compile(r"[=×÷√∠]")
WORD = re.compile(r"[A-Za-z’-]{2,}")


def sentences(texts: Iterable[str]) -> Iterator[str]:
    """Each sentence once; rows of symbols, labels and formulas are none."""
    seen = set()
    for text in texts:
        for sentence in END.split(re.sub(r"\s+", " ", text)):
            if sentence not in seen and not FORMULA.search(sentence) and len(WORD.findall(sentence)) >= 4:
                seen.add(sentence)
                yield sentence


@functools.cache
def plain(sentence: str) -> str:
    """The sentence with each taught term, number and symbol as one short word."""
    return SYMBOL.sub("line", NUMBER.sub("five", TERM.sub("lamp", sentence)))


@functools.cache
def grades(sentence: str) -> tuple[float, float]:
    """The school grades of a text by both measures."""
    text = plain(sentence)
    return textstat.flesch_kincaid_grade(text), textstat.automated_readability_index(text)


def too_hard(texts: Iterable[str]) -> list[str]:
    """The sentences that both measures put over the hardest grade."""
    return [one for one in sentences(texts) if len(one.split()) >= SHORTEST and min(grades(one)) > HARDEST]


class Paragraphs(HTMLParser):
    """The texts of the elements that hold sentences, without drawings, formulas, controls and tables of values."""

    HOLD = frozenset(("p", "li", "dd", "figcaption", "legend", "td", "h1", "h2", "h3"))
    APART = frozenset(("svg", "math", "script", "style", "select", "option", "button"))
    INLINE = frozenset(("b", "i", "em", "strong", "a", "span", "sub", "sup", "var", "label", "input", "br"))

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.apart = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in self.APART:
            self.apart += 1
        elif tag not in self.INLINE:
            self.texts.append("")

    def handle_endtag(self, tag: str) -> None:
        if tag in self.APART:
            self.apart -= 1
        elif tag not in self.INLINE:
            self.texts.append("")

    def handle_data(self, data: str) -> None:
        if not self.apart and self.texts:
            self.texts[-1] += data


def paragraphs(html: str) -> list[str]:
    """Texts of a piece of a page that end as a sentence ends."""
    reader = Paragraphs()
    reader.feed(html)
    return [text.strip() for text in reader.texts if re.search(r"[.?!:]$", text.strip())]
