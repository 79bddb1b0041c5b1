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


PAGES: dict[str, Callable[[Dice, int], dict[str, str]]] = {"add-phasors": add_phasors}


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
