"""Finds an answer in a file or a page, in every unit, rounding and convention in which somebody might write it.

It knows the results by name and SI value, and looks at everything that can be read, marked up or run: not at the
coordinates of a drawing, in which any number may stand. Whether a drawing has an arrow of the answer is asked apart.
"""

import re
from collections.abc import Iterable, Iterator
from html.parser import HTMLParser

from pycore.sums.answer import Output

GEOMETRY = {
    "d", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "dx", "dy", "points", "transform", "width",
    "height", "viewbox", "textlength", "font-size", "stroke-width", "stroke-dasharray",
}  # fmt: skip
BUILT = {"src", "data-worker", "data-runtime", "data-library", "data-parts", "data-memory", "data-size", "data-edition",
         "data-edition-size"}  # fmt: skip
"""Addresses and sizes of the site's files: hashes, full of digits."""
PRINTED = {"scale", "second-scale"}
"""Results that a problem's sheet says: how it is to be drawn."""
LEAST_FIGURES = 3
"""Two figures stand in any drawing and any sentence; a number with three is the answer, or looks like it."""

OWN_VALUES: dict[str, dict[str, str]] = {
    "add-phasors": {"p1": "23.7 at 12", "p2": "17.9 at 71", "p3": "9.3 at 160"},
    "harmonics-in-the-neutral": {"i1": "13.7", "i2": "8.9", "i3": "5.3", "h3": "23", "h5": "11"},
    "neutral-current": {"i1": "19.7", "i2": "12.9", "i3": "23.3", "a2": "0.83 lag",
                        "measured": "9.1", "drawn": "93 mm"},
    "open-neutral": {"z1": "23", "z2": "37", "z3": "71", "volts": "410"},
    "parallel-circuit": {"b1": "57 Ω", "b2": "23 Ω + 110 mH", "b3": "43 µF", "supply": "233 V", "frequency": "50"},
    "power-triangle": {"power": "11.3 kW", "factor": "0.73 lag", "target": "0.96", "voltage": "410", "frequency": "50"},
    "sequence-components": {"p1": "31 at 7", "p2": "19 at -113", "p3": "13 at 94"},
    "series-circuit": {"r": "33 Ω", "l": "0.19 H", "c": "87 µF", "supply": "227 V", "frequency": "50"},
    "star-and-delta": {"z1": "23", "z2": "29", "z3": "37", "volts": "410"},
    "two-wattmeters": {"known": "load", "volts": "410", "amps": "11.3", "lag": "37"},
}
"""Values of a lecturer's own for each calculator. None of their results is one of the values, nor a round number."""


class _Reader(HTMLParser):
    """Everything in a document but the coordinates of its drawings, its style and its policy, which is full of hashes.
    """

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag
        if any(name == "http-equiv" for name, _ in attrs):
            return
        told = [(name, value) for name, value in attrs if value and name not in GEOMETRY | BUILT]
        self.found += [value for name, value in told if name != "href" or "#" in value]

    def handle_endtag(self, _tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside not in ("style", "script"):
            self.found.append(data)


def readable(html: str) -> list[str]:
    """Each text and attribute of a document. Indices and the like part numbers from words, not from one another."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.found


def _writings(value: float) -> Iterator[str]:
    """A number with up to three decimals and up to six figures, without a sign."""
    size = abs(value)
    for decimals in range(4):
        yield f"{size:.{decimals}f}"
    for figures in range(LEAST_FIGURES, 13):
        yield f"{float(f'{size:.{figures}g}'):.12f}".rstrip("0").rstrip(".")


def _values(output: Output) -> Iterator[float]:
    """A result in every unit that a learner may meet: SI, thousandths, thousands; mm and cm; each way of an angle."""
    value = output.value or 0.0
    if "°" in output.text:
        yield from (value, value % 360.0, 360.0 - value % 360.0, 180.0 - abs(value), abs(abs(value) - 90.0))
    elif "mm" in output.text:
        yield from (value, value / 10.0)
    else:
        yield from (value, value * 1e3, value / 1e3)


def _counts(number: str) -> bool:
    figures = re.sub(r"\D", "", number).lstrip("0")
    return len(figures) >= LEAST_FIGURES and set(figures) != {"0"} and float(number) not in (100.0, 120.0, 180.0, 360.0)


def needles(outputs: Iterable[Output], printed: str) -> set[str]:
    """The numbers to look for, with a point; ``printed``: what the problem itself says, and so no answer."""
    said = {float(number.replace(",", ".")) for number in re.findall(r"\d+(?:[.,]\d+)?", printed)}
    found = set()
    for output in outputs:
        if output.value and output.name not in PRINTED:
            found |= {text for value in _values(output) for text in _writings(value) if _counts(text)}
    return {number for number in found if float(number) not in said}


def leaks(texts: Iterable[str], numbers: set[str]) -> set[str]:
    """Which of the numbers stand in the texts, with a point or a comma."""
    there = {
        number.replace(",", ".")
        for text in texts
        for number in re.findall(r"\d+(?:[.,]\d+)?", text.replace("\u2009", "").replace("%2C", ","))
    }
    return there & numbers
