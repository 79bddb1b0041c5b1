"""Seeded forms of the shelf's pages: the same in every host, so nothing but plain integers is used.

``forms(slug, count)`` gives forms one after another, equal, opposite, collinear, tiny and cancelling values among
them; ``digests`` is what tests/render/two_hosts.mjs runs in the site's Pyodide. A new page adds its values to PAGES.
"""

import hashlib
import json
from collections.abc import Callable, Iterator

COUNT = 30
COMMON = {
    "method": ("tip-to-tail", "parallelogram", "components"),
    "order": ("", "12", "13", "23"),
    "parallels": ("protractor", "set-squares", "compasses"),
    "protractor": ("180", "360"),
    "first": ("right", "up"),
    "reference": ("zero", "current"),
    "rotation": ("anticlockwise", "clockwise"),
    "resultant": ("sum", "returning"),
    "sheet": ("construction", "construction", "problem", "overlay"),
    "paper": ("A5", "A4", "A3", "A2", "letter", "tabloid"),
    "orientation": ("", "landscape", "portrait"),
    "steps": ("125", "all"),
    "decimal": ("point", "comma"),
    "angles": ("protractor", "polar"),
}


class Dice:
    """Numbers that a seed fixes: a linear congruential generator whose high bits are used."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2654435761 + 97) % 2**48
        for _ in range(4):
            self.below(2)

    def below(self, count: int) -> int:
        """A whole number from 0 to count - 1."""
        self.state = (self.state * 0x5DEECE66D + 0xB) % 2**48
        return (self.state >> 17) % count

    def one_of(self, options):
        """One of some options."""
        return options[self.below(len(options))]

    def size(self) -> str:
        """A size over three decades as typed: 0.1 to 99.9, or 100 to 999."""
        power = self.below(3)
        whole = 1 + self.below(999)
        return (f"{whole / 100:.2f}", f"{whole / 10:.1f}", str(whole))[power]

    def angle(self, widest: int = 180) -> str:
        """Degrees with no or one decimal."""
        tenths = self.below(20 * widest + 1) - 10 * widest
        return f"{tenths / 10:g}"


def add_phasors(dice: Dice, number: int) -> dict[str, str]:
    """Two to six phasors in either form."""
    kind = ("plain", "equal", "opposite", "line", "tiny", "parts", "closing", "decades")[number % 8]
    count = 2 + dice.below(5)
    sizes = [f"{(50 + dice.below(250)) / 10:.1f}" for _ in range(count)]
    angles = [dice.angle() for _ in range(count)]
    if kind == "equal":
        count = 3
        sizes, angles = [sizes[0]] * 3, ["0", "-120", "120"]
    elif kind == "opposite":
        sizes, angles = [sizes[0], sizes[0]], [angles[0], f"{float(angles[0]) + 180:g}"]
    elif kind == "line":
        angles = [dice.one_of((angles[0], f"{float(angles[0]) - 180:g}")) for _ in angles]
    elif kind == "tiny":
        sizes[-1] = "0.02"
    elif kind == "decades":
        sizes = [dice.size() for _ in sizes]
    texts = [f"{size} at {angle}" for size, angle in zip(sizes, angles, strict=True)]
    if kind == "closing":
        texts = ["3", "j4", "-3 - j4", dice.one_of(("", "2 at 45"))]
    elif kind == "parts":
        texts[0] = f"{sizes[0]} {dice.one_of('+-')} j{sizes[1]}"
    form = {f"p{place}": text for place, text in enumerate(texts, start=1)}
    return {**form, "combine": dice.one_of(("sum", "sum", "difference")), "unit": dice.one_of(("A", "V"))}


def open_neutral(dice: Dice, number: int) -> dict[str, str]:
    """Three loads: resistances, reactances, powers, one not connected, all equal, one far larger."""
    kind = ("plain", "equal", "reactive", "power", "open", "mixed", "wide", "plain")[number % 8]
    loads = [dice.size() for _ in range(3)]
    if kind == "equal":
        loads = [loads[0]] * 3
    elif kind == "reactive":
        loads[dice.below(3)] = f"{dice.size()} {dice.one_of('+-')} j{dice.size()}"
    elif kind == "power":
        loads = [f"{load} kW" for load in loads]
    elif kind == "open":
        loads[dice.below(3)] = ""
    elif kind == "mixed":
        loads = ["100", "-j100", "j100"]
    elif kind == "wide":
        loads = ["1", "1000", "50"]
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    return {**form, "method": dice.one_of(("displacement", "displacement", "tip-to-tail")),
            "volts": dice.one_of(("400", "208", "11 kV")), "sequence": dice.one_of(("123", "132"))}  # fmt: skip


def harmonics(dice: Dice, number: int) -> dict[str, str]:
    """Three lines with up to six orders; the order drawn may not be there, or cancel."""
    form = {f"i{line}": dice.size() for line in (1, 2, 3)}
    form |= {f"a{line}": dice.angle(60) for line in (1, 2, 3)}
    for order in (3, 5, 7, 9, 11, 13):
        share = str(1 + dice.below(60))
        form[f"h{order}"] = dice.one_of((share, share, f"{share} at {dice.angle()}", ""))
    if number % 6 == 1:
        form |= {"i2": form["i1"], "i3": form["i1"], "a1": "0", "a2": "0", "a3": "0"}
    drawn = dice.one_of(("1", "3", "3", "5", "7", "9"))
    return {**form, "drawn": drawn, "stated": dice.one_of(("fundamental", "total"))}


def two_wattmeters(dice: Dice, number: int) -> dict[str, str]:
    """A balanced load by its angle or its readings, or readings of a load that is not balanced."""
    form = {"method": dice.one_of(("tip-to-tail", "components"))}
    if number % 3 == 0:
        lag = dice.one_of(("0", "30", "60", "90", "-60", dice.angle(90)))
        return {**form, "volts": "400", "amps": dice.size(), "lag": lag}
    first = ("-" if dice.below(4) == 0 else "") + dice.size()
    return {**form, "known": "readings", "w1": first, "w2": f"{dice.size()} kW"[: 20 if number % 2 else -3],
            "balanced": dice.one_of(("yes", "yes", "no"))}  # fmt: skip


def star_and_delta(dice: Dice, number: int) -> dict[str, str]:
    """Three loads in star or delta: equal, open, reactive, one a thousand times another."""
    kind = ("resistive", "equal", "reactive", "open", "opposite", "decades", "mixed")[number % 7]
    loads = [str(5 + dice.below(95)) for _ in range(3)]
    if kind == "equal":
        loads = [dice.one_of((loads[0], f"{loads[0]} + j{loads[1]}")), "", ""]
    elif kind in ("reactive", "mixed"):
        loads = [f"{load} {dice.one_of('+-')} j{5 + dice.below(95)}" for load in loads]
    elif kind == "open":
        loads[dice.below(3)] = "open"
    elif kind == "opposite":
        loads = ["100", "j100", "-j100"]
    elif kind == "decades":
        loads = [dice.size() for _ in loads]
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    return {**form, "volts": dice.one_of(("400", "230", "11000", "0.69 kV", "100")), "line": dice.one_of("123"),
            "connection": dice.one_of(("delta", "delta", "star")), "known": dice.one_of(("line", "phase")),
            "sequence": dice.one_of(("123", "132")), "names": dice.one_of(("L123", "ABC", "RYB", "RST"))}  # fmt: skip


def sequence_components(dice: Dice, number: int) -> dict[str, str]:
    """Three phasors and a component: symmetrical ones, one or two at nothing, tiny and cancelling ones."""
    kind = ("plain", "positive", "negative", "zero", "single", "tiny", "free", "two")[number % 8]
    sizes = [f"{(50 + dice.below(250)) / 10:.1f}" for _ in range(3)]
    angles = ["0", f"{-120 + dice.below(21) - 10}", f"{120 + dice.below(21) - 10}"]
    if kind in ("positive", "negative", "zero"):
        sizes = [sizes[0]] * 3
        start = dice.below(360) - 180
        step = {"positive": -120, "negative": 120, "zero": 0}[kind]
        angles = [str(start + place * step) for place in range(3)]
    elif kind == "single":
        sizes = [size if place == number % 3 else "0" for place, size in enumerate(sizes)]
    elif kind == "two":
        sizes[number % 3] = "0"
    elif kind == "tiny":
        sizes[number % 3] = "0.02"
    elif kind == "free":
        angles = [dice.angle() for _ in angles]
    form = {f"p{place}": f"{size} at {angle}"
            for place, (size, angle) in enumerate(zip(sizes, angles, strict=True), start=1)}  # fmt: skip
    return {**form, "part": dice.one_of(("zero", "positive", "negative")), "unit": dice.one_of(("A", "V")),
            "names": dice.one_of(("L123", "ABC", "RYB", "RST")),
            "colours": dice.one_of(("iec", "british-old", "american-208", "american-480"))}  # fmt: skip


def _ohms(dice: Dice) -> str:
    return dice.one_of((f"{5 + dice.below(95)}", f"{dice.size()} Ω", f"{1 + dice.below(9)}.{dice.below(10)} kΩ"))


def _henries(dice: Dice) -> str:
    return dice.one_of((f"{1 + dice.below(900)} mH", f"0.{1 + dice.below(9)} H", f"{1 + dice.below(200)} Ω"))


def _farads(dice: Dice) -> str:
    return dice.one_of((f"{1 + dice.below(300)} µF", f"{1 + dice.below(900)} nF", f"{1 + dice.below(200)} Ω"))


def series_circuit(dice: Dice, number: int) -> dict[str, str]:
    """One of each, one kind alone, several, resonance, almost resonance, an element of 0 Ω."""
    kind = ("plain", "one", "several", "resonance", "near", "zero", "plain", "triangle")[number % 8]
    form = {"r": _ohms(dice), "l": _henries(dice), "c": _farads(dice)}
    if kind == "one":
        kept = dice.one_of("rlc")
        form = {name: text if name == kept else "" for name, text in form.items()}
    elif kind == "several":
        form["r"] += f" + {_ohms(dice)}"
        form["l"] += f"; {_henries(dice)}"
    elif kind == "resonance":
        form["l"] = form["c"] = f"{5 + dice.below(95)} Ω"
    elif kind == "near":
        form["l"], form["c"] = "40 Ω", "40.1 Ω"
    elif kind == "zero":
        form["r"] = "0"
    return {
        **form, "supply": dice.one_of(("230 V", "24", "2.5 A", f"{1 + dice.below(900)} mA")),
        "frequency": dice.one_of(("50", "60", "400", "1 kHz")),
        "drawn": "impedances" if kind == "triangle" else "voltages",
    }  # fmt: skip


def _branch(dice: Dice) -> str:
    kind = dice.below(6)
    coil, capacitor = _henries(dice), _farads(dice)
    coil = f"j{coil}" if coil.endswith("Ω") else coil
    capacitor = f"-j{capacitor}" if capacitor.endswith("Ω") else capacitor
    return (_ohms(dice), coil, capacitor, f"{_ohms(dice)} + {coil}", f"{_ohms(dice)}; {capacitor}", coil)[kind]


def parallel_circuit(dice: Dice, number: int) -> dict[str, str]:
    """One to four branches; resonance with loss and without."""
    places = 1 + dice.below(4)
    form = {f"b{place}": _branch(dice) if place <= places else "" for place in range(1, 5)}
    kind = ("plain", "plain", "dynamic", "closed", "equal", "plain")[number % 6]
    if kind == "dynamic":
        form = {"b1": "8 Ω + j20", "b2": "-j23.2", "b3": "", "b4": ""}
    elif kind == "closed":
        form = {"b1": "j40", "b2": "-j40", "b3": "", "b4": ""}
    elif kind == "equal":
        form["b2"] = form["b1"]
    supply = "230 V" if kind == "closed" else dice.one_of(("230 V", "48", "12 A", f"{1 + dice.below(900)} mA"))
    return {**form, "supply": supply, "frequency": dice.one_of(("50", "60", "400"))}


def power_triangle(dice: Dice, number: int) -> dict[str, str]:
    """Watts, vars, volt-amperes and amperes; lagging, leading, unity, no active power, target reached, overshot."""
    kind = ("plain", "plain", "leading", "unity", "reactive", "reached", "over", "none")[number % 8]
    power = dice.one_of((f"{dice.size()} kW", f"{dice.size()} kVA", f"{1 + dice.below(90)} A", f"{dice.size()} kvar"))
    factor = f"0.{30 + dice.below(65)} {dice.one_of(('lag', 'lag', 'lead'))}"
    target = dice.one_of(("0.9", "0.95", "1", "0.98 lag"))
    if kind == "leading":
        factor = f"0.{30 + dice.below(50)} lead"
    elif kind == "unity":
        power, factor = f"{dice.size()} kW", "1"
    elif kind == "reactive":
        power, factor = f"{dice.size()} kVA", "90"
    elif kind == "reached":
        factor, target = "0.97 lag", "0.8"
    elif kind == "over":
        target = "0.95 lead"
    elif kind == "none":
        target = ""
    return {
        "power": power, "factor": factor, "target": target, "voltage": dice.one_of(("230", "400", "11 kV")),
        "frequency": dice.one_of(("50", "60")), "phases": dice.one_of(("1", "3")),
    }  # fmt: skip


PAGES: dict[str, Callable[[Dice, int], dict[str, str]]] = {
    "add-phasors": add_phasors,
    "harmonics-in-the-neutral": harmonics,
    "open-neutral": open_neutral,
    "two-wattmeters": two_wattmeters,
    "star-and-delta": star_and_delta,
    "sequence-components": sequence_components,
    "series-circuit": series_circuit,
    "parallel-circuit": parallel_circuit,
    "power-triangle": power_triangle,
}


def form(slug: str, number: int) -> dict[str, str]:
    """The form of this number."""
    dice = Dice(number)
    made = {name: dice.one_of(options) for name, options in COMMON.items()}
    return {**made, **PAGES[slug](dice, number)}


def forms(slug: str, count: int, start: int = 0) -> Iterator[dict[str, str]]:
    """Forms of one page one after another."""
    return (form(slug, number) for number in range(start, start + count))


def ask(slug: str, form: dict[str, str], do: str = "answer", **more: object) -> tuple[dict, bytes | None]:
    """The api's reply to a form, all parts of it."""
    from pycore import api

    request = {"do": do, "page": slug, "form": form, "parts": ["answer", "sheet", "view", "workings"], **more}
    text, data = api.handle(json.dumps(request))
    return json.loads(text), data


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:20]


def digests() -> dict[str, str]:
    """A digest by page, problem and region, and of the PDF of one problem in ten."""
    made: dict[str, str] = {}
    for slug in PAGES:
        for number in range(COUNT):
            reply, _ = ask(slug, form(slug, number))
            assert reply["ok"], (slug, number, reply["announce"])
            for name, html in reply.pop("regions").items():
                made[f"{slug} {number} {name}"] = _digest(html.encode())
            made[f"{slug} {number} rest"] = _digest(json.dumps(reply).encode())
            if number % 10 == number // 10:
                made[f"{slug} {number} pdf"] = _digest(ask(slug, form(slug, number), "pdf")[1] or b"")
    return made
