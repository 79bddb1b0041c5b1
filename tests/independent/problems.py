"""Problems of all topics by code, their lines and right answers worked out from the form's texts alone."""

import cmath
import html
import json
import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from pycore import api
from pycore.practice.codes import TIERS, Code

TOPICS = {
    "neutral-current": 0, "add-phasors": 1, "star-and-delta": 2, "series-circuit": 3, "parallel-circuit": 4,
    "power-triangle": 5, "harmonics-in-the-neutral": 6, "open-neutral": 7, "two-wattmeters": 8,
    "sequence-components": 9,
}  # fmt: skip
METHODS = ("parallelogram", "tip-to-tail", "components")
PARALLELS = ("protractor", "set-squares", "compasses")
ROOT_THREE = math.sqrt(3.0)
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


def _subscripts(text: str) -> str:
    return text.translate(str.maketrans("123", "₁₂₃"))


def _typed_phasors(form: dict[str, str]) -> list[complex]:
    texts = [form[f"p{k}"] for k in range(1, 7) if form.get(f"p{k}")]
    return [polar(float(size), float(angle)) for size, angle in (text.split(" at ") for text in texts)]


def _add_phasors(form: dict[str, str]) -> list[Line]:
    values = _typed_phasors(form)
    off = form["combine"] == "difference"
    return [Line(("−" if off and k else "") + _subscripts(f"I{k + 1}"), -v if off and k else v)
            for k, v in enumerate(values)]  # fmt: skip


def reactances(form: dict[str, str]) -> tuple[list[float], complex, complex]:
    """Ohms of a series circuit: its resistances, its coil, its capacitor."""
    frequency = number(form["frequency"])
    coil = form.get("l", "")
    capacitor = form.get("c", "")
    l_ohms = complex(0, abs(impedance(coil, frequency))) if coil else 0j
    c_ohms = complex(0, -abs(impedance(capacitor, frequency))) if capacitor else 0j
    return [float(part) for part in form.get("r", "").split("+") if part.strip()], l_ohms, c_ohms


def _series(form: dict[str, str]) -> list[Line]:
    current = number(form["supply"])
    resistances, coil, capacitor = reactances(form)
    many = len(resistances) > 1
    lines = [Line(f"V_R{k}" if many else "V_R", current * r) for k, r in enumerate(resistances, 1)]
    lines += [Line(name, current * ohms) for name, ohms in (("V_L", coil), ("V_C", capacitor)) if ohms]
    return lines


def branches(form: dict[str, str]) -> list[complex]:
    """Ohms of each branch of a parallel circuit."""
    frequency = number(form["frequency"])
    return [impedance(form[f"b{k}"], frequency) for k in range(1, 7) if form.get(f"b{k}")]


def _parallel(form: dict[str, str]) -> list[Line]:
    volts = number(form["supply"])
    return [Line(_subscripts(f"I{k}"), volts / ohms) for k, ohms in enumerate(branches(form), 1)]


def _power(form: dict[str, str]) -> list[Line]:
    active, lag = number(form["power"]), math.acos(float(form["factor"].split()[0]))
    sense = -1.0 if "lead" in form["factor"] else 1.0
    return [Line("P", complex(active)), Line("Q", 1j * sense * active * math.tan(lag))]


def _three(form: dict[str, str]) -> tuple[float, float, float]:
    return (0.0, -120.0, 120.0) if form["sequence"] == "123" else (0.0, 120.0, -120.0)


def _star_delta(form: dict[str, str]) -> list[Line]:
    """The two that make a difference, in the order of their numbers, as the sheet draws them."""
    one = int(form["line"]) - 1
    volts, after, before = number(form["volts"]), (one + 1) % 3, (one + 2) % 3
    if form["connection"] == "star":
        size = volts / ROOT_THREE if form["known"] == "line" else volts
        values = [polar(size, angle) for angle in _three(form)]
        pair = {one: Line(_subscripts(f"V{one + 1}"), values[one]),
                after: Line(_subscripts(f"−V{after + 1}"), -values[after])}  # fmt: skip
        return [pair[k] for k in sorted(pair)]
    values = [polar(volts, angle) / impedance(form[f"z{k}"], 50.0) for k, angle in enumerate(_three(form), 1)]
    names = [_subscripts(f"I{k}{k % 3 + 1}") for k in (1, 2, 3)]
    pair = {one: Line(names[one], values[one]), before: Line("−" + names[before], -values[before])}
    return [pair[k] for k in sorted(pair)]


def _neutral(form: dict[str, str]) -> list[Line]:
    return [Line(_subscripts(f"I{k}"), polar(number(form[f"i{k}"]), angle - float(form.get(f"a{k}") or 0)))
            for k, angle in enumerate(_three(form), 1)]  # fmt: skip


def _harmonics(form: dict[str, str]) -> list[Line]:
    order = int(form["drawn"])
    share = 1.0 if order == 1 else float(form[f"h{order}"]) / 100.0
    return [
        Line(f"I_{k},{order}", polar(share * number(form[f"i{k}"]), order * (angle - float(form.get(f"a{k}") or 0))))
        for k, angle in enumerate((0.0, -120.0, 120.0), 1)
    ]


def loads(form: dict[str, str]) -> tuple[list[complex], list[complex]]:
    """Phase voltages and admittances of a star with its neutral open."""
    volts = [polar(number(form["volts"]) / ROOT_THREE, angle) for angle in _three(form)]
    return volts, [1.0 / impedance(form[f"z{k}"], 50.0) for k in (1, 2, 3)]


def star_point(volts: list[complex], admittances: list[complex]) -> complex:
    """Where the star point lies (Millman)."""
    return sum(v * y for v, y in zip(volts, admittances, strict=True)) / sum(admittances)


def _open_neutral(form: dict[str, str]) -> list[Line]:
    return [Line("V_S", star_point(*loads(form)))]


def _wattmeters(form: dict[str, str]) -> list[Line]:
    one, two = number(form["w1"]), number(form["w2"])
    return [Line("P₁", complex(one)), Line("P₂", complex(two)), Line("Q", 1j * ROOT_THREE * (two - one))]


def _sequence(form: dict[str, str]) -> list[Line]:
    values = _typed_phasors(form)
    turns = {"zero": ("", ""), "positive": ("a", "a²"), "negative": ("a²", "a")}[form["part"]]
    factor = {"": 1.0, "a": TURN, "a²": TURN * TURN}
    return [Line("I₁", values[0]), *(Line(_subscripts(f"{turn}I{k}"), factor[turn] * values[k - 1])
                                     for k, turn in enumerate(turns, 2))]  # fmt: skip


LINES: dict[str, Callable[[dict[str, str]], list[Line]]] = {
    "add-phasors": _add_phasors, "series-circuit": _series, "parallel-circuit": _parallel, "power-triangle": _power,
    "star-and-delta": _star_delta, "neutral-current": _neutral, "harmonics-in-the-neutral": _harmonics,
    "open-neutral": _open_neutral, "two-wattmeters": _wattmeters, "sequence-components": _sequence,
}  # fmt: skip


def capacitor_of(form: dict[str, str]) -> float:
    """The reactive power (var) that a capacitor must take for the target power factor."""
    active = number(form["power"])
    before, after = float(form["factor"].split()[0]), float(form["target"])
    return active * (math.tan(math.acos(before)) - math.tan(math.acos(after)))


def _worked(slug: str, form: dict[str, str]) -> tuple[list[Line], complex, float, bool]:
    """Lines and right answer from the line that angles are counted from; its own angle; whether it is single."""
    lines = LINES[slug](form)
    reference = 0.0
    if slug == "neutral-current" and form["reference"] == "current":
        reference = degrees(lines[0].value)
        lines = [Line(line.name, line.value * polar(1.0, -reference)) for line in lines]
    if slug == "power-triangle" and form.get("target"):
        return lines, complex(capacitor_of(form)), 0.0, True
    return lines, sum(line.value for line in lines), reference, False


def problem_of(slug: str, code: str, **choices: str) -> Problem:
    """The problem of a code, as a page opens it; ``choices`` replace form values."""
    found = ask(do="code", code=code)
    form = {**ask(do="open", page=slug, fragment=found["fragment"])["form"], **choices}
    link = ask(do="share", page=slug, form=form)["link"]
    shown = ask(do="open", page=slug, fragment=link)["form"]
    asked = ask(do="answer", page=slug, form=form, parts=["check"], veiled=True)["asked"]
    says = html.unescape(re.sub("<[^>]+>", "", asked["scale"])).replace("\u00a0", " ")
    scale = re.search(r"1 cm = ([\d.]+) (\w+)", says)
    lines, right, reference, single = _worked(slug, form)
    unit = asked["units"][0]
    voltages = tuple(_three(form)) if slug == "neutral-current" else ()
    return Problem(
        slug, code, form, tuple(lines), right, shown["method"], shown["order"] or "12", form["parallels"],
        float(scale[1]) * prefix(scale[2]), unit, prefix(unit),
        "answer-angle" in asked["labels"], reference, voltages, single,
    )  # fmt: skip


def problems(slug: str, count: int, seed: int) -> Iterator[Problem]:
    """So many problems of a topic: tiers, methods and ways of drawing parallels in turn."""
    for k in range(count):
        code = Code(TOPICS[slug], TIERS[k % 3], METHODS[k // 3 % 3], seed=seed % 30000 + k // 1000, number=1 + k % 1000)
        yield problem_of(slug, str(code), parallels=PARALLELS[k // 9 % 3])
