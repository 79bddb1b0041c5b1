"""Seeded forms of the neutral-current page: the same in every host, so nothing but plain integers is used.

Balanced loads, zeros, collinear and nearly collinear phasors, three decades of size, every method,
order, paper and way of writing come up; ``form(number)`` always gives the same form for a number.
``digests`` is what tests/render/two_hosts.mjs runs in the site's Pyodide.
"""

import hashlib
import json
from collections.abc import Iterator

COUNT = 200

CHOICES = {
    "method": ("parallelogram", "tip-to-tail", "components"),
    "order": ("", "12", "13", "23"),
    "parallels": ("protractor", "set-squares", "compasses"),
    "protractor": ("180", "360"),
    "first": ("up", "right"),
    "reference": ("current", "voltage"),
    "rotation": ("anticlockwise", "clockwise"),
    "resultant": ("sum", "returning"),
    "sequence": ("123", "132"),
    "paper": ("A5", "A4", "A3", "A2", "letter", "tabloid"),
    "orientation": ("", "landscape", "portrait"),
    "steps": ("125", "all"),
    "names": ("L123", "ABC", "RYB", "RST"),
    "colours": ("iec", "british-old", "american-208", "american-480"),
    "decimal": ("point", "comma"),
    "angles": ("protractor", "polar"),
}
KINDS = ("plain", "decades", "balanced", "two-equal", "zeros", "collinear", "nearly-collinear", "cancelling",
         "tiny", "power-factors")  # fmt: skip


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

    def digits(self) -> str:
        """A size over three decades as typed: 0.1 to 99.9, or 100 to 999."""
        power = self.below(3)
        whole = 1 + self.below(999)
        return (f"{whole / 100:.2f}", f"{whole / 10:.1f}", str(whole))[power]

    def angle(self, widest: int = 60) -> str:
        """Degrees of lag with no or one decimal."""
        tenths = self.below(20 * widest + 1) - 10 * widest
        return f"{tenths / 10:g}"


def _sizes_and_lags(kind: str, dice: Dice) -> tuple[list[str], list[str]]:
    sizes = [dice.digits() for _ in range(3)]
    lags = ["0", "0", "0"]
    if kind == "plain":
        sizes = [f"{(50 + dice.below(250)) / 10:.1f}" for _ in range(3)]
    elif kind == "balanced":
        sizes, lags = [sizes[0]] * 3, [dice.one_of(("0", "30", "-20.5"))] * 3
    elif kind == "two-equal":
        sizes[1] = sizes[0]
    elif kind == "zeros":
        kept = dice.below(3)
        sizes = [size if index == kept or dice.below(2) else "0" for index, size in enumerate(sizes)]
    elif kind == "collinear":
        lags = list(dice.one_of((("0", "-120", "120"), ("0", "60", "0"), ("0", "-120", "-60"), ("0", "0", "-60"))))
    elif kind == "nearly-collinear":
        sign, off = dice.one_of(("", "-")), dice.one_of(("0.5", "1.5", "2.5", "6"))
        lags = ["0", f"{-120 + float(sign + off):g}", dice.one_of(("0", "120", "118.5"))]
    elif kind == "cancelling":
        sizes, lags = [sizes[0], sizes[0], sizes[2]], ["0", "60", "0"]
    elif kind == "tiny":
        sizes[dice.below(3)] = "0.05"
    elif kind == "power-factors":
        lags = [dice.one_of((dice.angle(), "0.8 lag", "0.95 lead", "0")) for _ in range(3)]
    return sizes, lags


def form(number: int) -> dict[str, str]:
    """The form of this number; the kinds of problem follow one another."""
    dice = Dice(number)
    kind = KINDS[number % len(KINDS)]
    sizes, lags = _sizes_and_lags(kind, dice)
    made = {name: dice.one_of(options) for name, options in CHOICES.items()}
    made.update(zip(("i1", "i2", "i3"), sizes, strict=True))
    made.update(zip(("a1", "a2", "a3"), lags, strict=True))
    if made["decimal"] == "comma":
        made.update({name: made[name].replace(".", ",") for name in ("i1", "i2", "i3")})
    if dice.below(3) == 0:
        made["measured"] = dice.digits()
    if dice.below(4) == 0:
        made["place"] = dice.one_of(("Höhenweg 3, Rack Ω", "Village theatre", "Workshop “B” – bench 2"))
    return made


def forms(count: int, start: int = 0) -> Iterator[dict[str, str]]:
    """Forms one after another."""
    return (form(number) for number in range(start, start + count))


def ask(form: dict[str, str], do: str = "answer") -> tuple[dict, bytes | None]:
    """The api's reply to a form, all parts of it."""
    from pycore import api

    request = {"do": do, "page": "neutral-current", "form": form, "parts": ["answer", "sheet", "view", "workings"]}
    text, data = api.handle(json.dumps(request))
    return json.loads(text), data


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:20]


def digests() -> dict[str, str]:
    """A digest by problem and region (``17 sheet``), and of the PDF of one problem in ten, each kind in turn."""
    made: dict[str, str] = {}
    for number in range(COUNT):
        reply, _ = ask(form(number))
        assert reply["ok"], (number, reply["announce"])
        for name, html in reply.pop("regions").items():
            made[f"{number} {name}"] = _digest(html.encode())
        made[f"{number} rest"] = _digest(json.dumps(reply).encode())
        if number % 10 == number // 10 % 10:
            made[f"{number} pdf"] = _digest(ask(form(number), "pdf")[1] or b"")
    return made
