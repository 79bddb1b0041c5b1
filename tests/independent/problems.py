"""Problems of all topics by code, their lines and right answers worked out from the form's texts alone."""

import cmath
import html
import importlib
import json
import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType

from pycore import api
from pycore.practice.codes import TIERS, Code

METHODS = ("parallelogram", "tip-to-tail", "components")
PARALLELS = ("protractor", "set-squares", "compasses")
ROOT_THREE = math.sqrt(3.0)
FOLDERS = Path(__file__).parent.parent / "calculators"
TURN = cmath.rect(1.0, math.radians(120.0))


@dataclass(frozen=True)
class Line:
    """One phasor of a drawing: its name as sentences write it, and its value."""

    name: str
    value: complex


@dataclass(frozen=True)
class Problem:
    """What a learner has: the form, the lines to be combined in the sheet's order, and how they are drawn.

    ``scale`` is base units per centimetre, ``per`` base units per unit of the answer. ``single``: what is asked is one
    length that no sum of lines gives (``right`` all the same). ``voltages``: each line's own voltage, if it lags one.
    """

    slug: str
    code: str
    form: dict[str, str]
    lines: tuple[Line, ...]
    right: complex
    method: str
    order: str
    parallels: str
    scale: float
    unit: str
    per: float
    angled: bool
    reference: float = 0.0
    voltages: tuple[float, ...] = ()
    single: bool = False

    @property
    def equal_angles(self) -> bool:
        """Whether three lines stand 120 degrees apart, so that the closed formula holds."""
        turns = {round(abs(wrapped(degrees(b.value) - degrees(a.value)))) for a, b in zip(self.lines, (
            *self.lines[1:], *self.lines[:1]), strict=True)}
        return len(self.lines) == 3 and turns == {120}


def ask(**request: object) -> dict:
    """One request to pycore's only door, and its reply."""
    return json.loads(api.handle(json.dumps(request))[0])


def degrees(value: complex) -> float:
    """The direction of a phasor."""
    return math.degrees(cmath.phase(value))


def wrapped(angle: float) -> float:
    """The same direction, above -180 and up to 180."""
    return 180.0 - (180.0 - angle) % 360.0


def polar(size: float, angle: float) -> complex:
    """A phasor by size and degrees."""
    return cmath.rect(size, math.radians(angle))


def number(text: str) -> float:
    """The number at the start of a text, with its prefix k, m or µ."""
    found = re.fullmatch(r"\s*(-?[\d.]+)\s*([kmµ]?)[A-Za-zΩ ]*", text)
    return float(found[1]) * {"": 1.0, "k": 1e3, "m": 1e-3, "µ": 1e-6}[found[2]]


def prefix(unit: str) -> float:
    """Base units in a unit of electricity: 1000 for kVA, 0.001 for mA, 1 for var."""
    return {"k": 1e3, "m": 1e-3}.get(unit[0], 1.0)


def impedance(text: str, frequency: float) -> complex:
    """Ohms of parts in series: ``27 Ω + 170 mH``, ``18 - j50``, ``85 µF``."""
    whole = 0j
    for sign, turned, size, prefix, unit in re.findall(r"([+-]?)\s*(j?)([\d.]+)\s*([mµ]?)([HFΩ]?)", text):
        value = float(size) * {"": 1.0, "m": 1e-3, "µ": 1e-6}[prefix]
        part = complex(value)
        if unit == "H":
            part = 2j * math.pi * frequency * value
        elif unit == "F":
            part = -1j / (2.0 * math.pi * frequency * value)
        elif turned:
            part = 1j * value
        whole += -part if sign == "-" else part
    return whole


def subscripts(text: str) -> str:
    """The digits of a name as they stand below the line."""
    return text.translate(str.maketrans("123", "₁₂₃"))


def typed_phasors(form: dict[str, str]) -> list[complex]:
    """The phasors of a form's fields ``p1`` to ``p6``, each as ``20 at 60``."""
    texts = [form[f"p{k}"] for k in range(1, 7) if form.get(f"p{k}")]
    return [polar(float(size), float(angle)) for size, angle in (text.split(" at ") for text in texts)]


def phase_angles(form: dict[str, str]) -> tuple[float, float, float]:
    """Directions of the three phase voltages in the form's phase sequence, in degrees."""
    return (0.0, -120.0, 120.0) if form["sequence"] == "123" else (0.0, 120.0, -120.0)


def learners_of(slug: str) -> ModuleType:
    """What a calculator's folder of tests says of its learners: ``TOPIC``, ``lines(form)``, ``slips(problem, rng)``,
    and, if the topic has them, ``voltages(form)`` and ``single(form)``."""
    return importlib.import_module(f"calculators.{slug.replace('-', '_')}.learners")


def _turned(lines: list[Line], form: dict[str, str]) -> tuple[list[Line], float]:
    """The lines from the one that angles are measured from, and that one's own angle."""
    if form["reference"] != "current":
        return lines, 0.0
    reference = degrees(lines[0].value)
    return [Line(line.name, line.value * polar(1.0, -reference)) for line in lines], reference


def problem_of(slug: str, code: str, **choices: str) -> Problem:
    """The problem of a code, as a page opens it; ``choices`` replace form values."""
    found = ask(do="code", code=code)
    form = {**ask(do="open", page=slug, fragment=found["fragment"])["form"], **choices}
    link = ask(do="share", page=slug, form=form)["link"]
    shown = ask(do="open", page=slug, fragment=link)["form"]
    asked = ask(do="answer", page=slug, form=form, parts=["check"], veiled=True)["asked"]
    says = html.unescape(re.sub("<[^>]+>", "", asked["scale"])).replace("\u00a0", " ")
    scale = re.search(r"1 cm = ([\d.]+) (\w+)", says)
    lines, reference = _turned(learners_of(slug).lines(form), form)
    voltages = getattr(learners_of(slug), "voltages", lambda form: ())(form)
    single = getattr(learners_of(slug), "single", lambda form: None)(form)
    right = sum(line.value for line in lines) if single is None else complex(single)
    unit = asked["units"][0]
    return Problem(
        slug, code, form, tuple(lines), right, shown["method"], shown["order"] or "12", form["parallels"],
        float(scale[1]) * prefix(scale[2]), unit, prefix(unit),
        "answer-angle" in asked["labels"], reference, voltages, single is not None,
    )  # fmt: skip


def problems(slug: str, count: int, seed: int) -> Iterator[Problem]:
    """So many problems of a topic: tiers, methods and ways of drawing parallels in turn."""
    for k in range(count):
        code = Code(TOPICS[slug], TIERS[k % 3], METHODS[k // 3 % 3], seed=seed % 30000 + k // 1000, number=1 + k % 1000)
        yield problem_of(slug, str(code), parallels=PARALLELS[k // 9 % 3])


TOPICS = {
    slug: learners_of(slug).TOPIC
    for path in sorted(FOLDERS.glob("*/learners.py")) for slug in [path.parent.name.replace("_", "-")]
}  # fmt: skip
