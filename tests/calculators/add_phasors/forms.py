"""Seeded forms of phasors to add."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Two to six phasors in either form."""
    kind = ("plain", "equal", "opposite", "line", "tiny", "parts", "closing", "decades")[number % 8]
    count = 2 + rng.below(5)
    sizes = [f"{(50 + rng.below(250)) / 10:.1f}" for _ in range(count)]
    angles = [rng.angle() for _ in range(count)]
    if kind == "equal":
        count = 3
        sizes, angles = [sizes[0]] * 3, ["0", "-120", "120"]
    elif kind == "opposite":
        sizes, angles = [sizes[0], sizes[0]], [angles[0], f"{float(angles[0]) + 180:g}"]
    elif kind == "line":
        angles = [rng.one_of((angles[0], f"{float(angles[0]) - 180:g}")) for _ in angles]
    elif kind == "tiny":
        sizes[-1] = "0.02"
    elif kind == "decades":
        sizes = [rng.size() for _ in sizes]
    texts = [f"{size} at {angle}" for size, angle in zip(sizes, angles, strict=True)]
    if kind == "closing":
        texts = ["3", "j4", "-3 - j4", rng.one_of(("", "2 at 45"))]
    elif kind == "parts":
        texts[0] = f"{sizes[0]} {rng.one_of('+-')} j{sizes[1]}"
    form = {f"p{place}": text for place, text in enumerate(texts, start=1)}
    return {**form, "combine": rng.one_of(("sum", "sum", "difference")), "unit": rng.one_of(("A", "V"))}


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
