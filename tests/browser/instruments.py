"""Reads ruler and protractor off the drawing that a page shows, as a learner would: in its own units, y up."""

import cmath
import math
import re

from playwright.sync_api import Page

CAPITALS = 0.658
"""Height of a capital of the lettering as a share of the em."""

SEEN = """() => {
  const svg = document.querySelector('[data-lesson-region="lesson-picture"] svg, [data-player-step]:not([hidden]) svg');
  const lines = (query) => [...svg.querySelectorAll(query)].map((line) =>
    ["x1", "y1", "x2", "y2"].map((name) => Number(line.getAttribute(name))));
  const texts = (query) => [...svg.querySelectorAll(query)].map((text) => {
    const span = text.querySelector("tspan");
    const of = (name) => Number(span.getAttribute(name));
    return { words: text.textContent, x: of("x"), y: of("y"), size: of("font-size"), length: of("textLength"),
             bold: span.getAttribute("font-weight") === "650", transform: text.getAttribute("transform") ?? "" };
  });
  const phasors = {};
  for (const group of svg.querySelectorAll("[data-phasor]:not([data-copy])")) {
    phasors[group.dataset.phasor] = lines(`[data-phasor="${group.dataset.phasor}"]:not([data-copy]) > line`)[0];
  }
  const part = (name) => `[data-name="${name}"]`;
  const start = svg.querySelector("[data-step] > circle");
  return {
    protractor: lines(part("protractor") + " line"), figures: texts(part("known") + " " + part("numbers") + " text"),
    ruler: lines(part("ruler") + " line"), reading: lines(part("reading") + " > line"),
    words: texts(part("reading") + " > text"), zero: texts(part("zero") + " > text"), phasors,
    start: start && [Number(start.getAttribute("cx")), Number(start.getAttribute("cy"))],
    instruments: [...svg.querySelectorAll("[data-instrument]")].map((group) => group.dataset.instrument),
    box: svg.viewBox.baseVal.height,
  };
}"""


def point(x: float, y: float) -> complex:
    """A place with y up."""
    return complex(x, -y)


def ends(line: list[float]) -> tuple[complex, complex]:
    """Both ends of a line."""
    return point(*line[:2]), point(*line[2:])


def way(start: complex, end: complex) -> float:
    """The direction from one place to another, in degrees."""
    return math.degrees(cmath.phase(end - start))


def apart(one: float, other: float) -> float:
    """The angle between two directions."""
    return abs((one - other + 180.0) % 360.0 - 180.0)


def crossing(first: tuple[complex, float], second: tuple[complex, float]) -> complex:
    """Where two lines meet, each given by a place and a direction in degrees."""
    (a, one), (b, other) = first, second
    u, v = cmath.rect(1, math.radians(one)), cmath.rect(1, math.radians(other))
    across = (u.conjugate() * v).imag
    return a + u * (((b - a).conjugate() * v).imag / across)


class Seen:
    """What the drawing shows now."""

    def __init__(self, page: Page) -> None:
        self.found = page.evaluate(SEEN)

    @property
    def amount(self) -> float | None:
        """The reading in figures."""
        named = [re.match(r"[\d.]+", text["words"]) for text in self.found["words"] if re.search("°|mm", text["words"])]
        return float(named[0].group()) if named else None

    @property
    def start(self) -> complex:
        """The common point."""
        return point(*self.found["start"])

    def phasor(self, key: str) -> tuple[complex, complex]:
        """Tail and tip of a phasor's arrow."""
        return ends(self.found["phasors"][key])

    def protractor(self) -> tuple[complex, dict[int, float]]:
        """Centre, by the graduations, and the direction of each value of the scale that counts."""
        lines = [ends(line) for line in self.found["protractor"]]
        shortest = min(abs(b - a) for a, b in lines)
        ones = [(a, b) for a, b in lines if abs(b - a) < shortest * 1.01]
        (a, b), (c, d) = ones[0], ones[len(ones) // 3]
        centre = crossing((a, way(a, b)), (c, way(c, d)))
        values = {}
        for figure in self.found["figures"]:
            if figure["bold"] and figure["words"] not in ("0", "180"):
                turn, at = self._place(figure)
                middle = at + cmath.rect(CAPITALS * figure["size"] / 2, math.radians(turn + 90.0))
                values[int(figure["words"])] = way(centre, middle)
        return centre, values

    @staticmethod
    def _place(figure: dict) -> tuple[float, complex]:
        """How far a figure is turned, and the middle of its base line."""
        turned = re.match(r"rotate\((\S+) (\S+) (\S+)\)", figure["transform"])
        if turned:
            return -float(turned[1]), point(float(turned[2]), float(turned[3]))
        return 0.0, point(figure["x"] + figure["length"] / 2, figure["y"])

    def direction(self, value: float) -> float:
        """The direction of a value on the scale that counts."""
        _, values = self.protractor()
        sense = 1 if (values[100] - values[80] + 180.0) % 360.0 - 180.0 > 0 else -1
        return values[90] + sense * (value - 90.0)

    def ruler(self) -> tuple[complex, float, float]:
        """Zero, direction, and units for each millimetre."""
        first, last = ends(self.found["ruler"][0])[0], ends(self.found["ruler"][-1])[0]
        return first, way(first, last), abs(last - first) / (len(self.found["ruler"]) - 1)

    def capitals(self) -> list[float]:
        """Heights of the capitals of reading and zero as shares of the drawing's height."""
        told = [text for text in self.found["words"] if re.search("°|mm", text["words"])]
        return [CAPITALS * text["size"] / self.found["box"] for text in told + self.found["zero"]]
