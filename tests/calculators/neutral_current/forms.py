"""Seeded forms of loads whose neutral is wanted, with more kinds and choices than the other calculators' forms have.

Balanced loads, zeros, collinear and nearly collinear phasors, three decades of size, every method, order, paper and way
of writing come up.
"""

from collections.abc import Iterator

from host.seeded import SeededChoices

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


def _sizes_and_lags(kind: str, rng: SeededChoices) -> tuple[list[str], list[str]]:
    sizes = [rng.size() for _ in range(3)]
    lags = ["0", "0", "0"]
    if kind == "plain":
        sizes = [f"{(50 + rng.below(250)) / 10:.1f}" for _ in range(3)]
    elif kind == "balanced":
        sizes, lags = [sizes[0]] * 3, [rng.one_of(("0", "30", "-20.5"))] * 3
    elif kind == "two-equal":
        sizes[1] = sizes[0]
    elif kind == "zeros":
        kept = rng.below(3)
        sizes = [size if index == kept or rng.below(2) else "0" for index, size in enumerate(sizes)]
    elif kind == "collinear":
        lags = list(rng.one_of((("0", "-120", "120"), ("0", "60", "0"), ("0", "-120", "-60"), ("0", "0", "-60"))))
    elif kind == "nearly-collinear":
        sign, off = rng.one_of(("", "-")), rng.one_of(("0.5", "1.5", "2.5", "6"))
        lags = ["0", f"{-120 + float(sign + off):g}", rng.one_of(("0", "120", "118.5"))]
    elif kind == "cancelling":
        sizes, lags = [sizes[0], sizes[0], sizes[2]], ["0", "60", "0"]
    elif kind == "tiny":
        sizes[rng.below(3)] = "0.05"
    elif kind == "power-factors":
        lags = [rng.one_of((rng.angle(60), "0.8 lag", "0.95 lead", "0")) for _ in range(3)]
    return sizes, lags


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Three currents and their lags; the kinds of problem follow one another."""
    sizes, lags = _sizes_and_lags(KINDS[number % len(KINDS)], rng)
    return dict(zip(("i1", "i2", "i3", "a1", "a2", "a3"), (*sizes, *lags), strict=True))


def form(number: int) -> dict[str, str]:
    """The form of this number: its values are thrown before its choices."""
    rng = SeededChoices(number)
    own = values(rng, number)
    made = {name: rng.one_of(options) for name, options in CHOICES.items()} | own
    if made["decimal"] == "comma":
        made.update({name: made[name].replace(".", ",") for name in ("i1", "i2", "i3")})
    if rng.below(3) == 0:
        made["measured"] = rng.size()
    if rng.below(4) == 0:
        made["place"] = rng.one_of(("Höhenweg 3, Rack Ω", "Village theatre", "Workshop “B” – bench 2"))
    return made


def forms(count: int, start: int = 0) -> Iterator[dict[str, str]]:
    """Forms one after another."""
    return (form(number) for number in range(start, start + count))
