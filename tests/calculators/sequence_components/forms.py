"""Seeded forms of three phasors and their components."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Three phasors and a component: symmetrical ones, one or two at nothing, tiny and cancelling ones."""
    kind = ("plain", "positive", "negative", "zero", "single", "tiny", "free", "two")[number % 8]
    sizes = [f"{(50 + rng.below(250)) / 10:.1f}" for _ in range(3)]
    angles = ["0", f"{-120 + rng.below(21) - 10}", f"{120 + rng.below(21) - 10}"]
    if kind in ("positive", "negative", "zero"):
        sizes = [sizes[0]] * 3
        start = rng.below(360) - 180
        step = {"positive": -120, "negative": 120, "zero": 0}[kind]
        angles = [str(start + place * step) for place in range(3)]
    elif kind == "single":
        sizes = [size if place == number % 3 else "0" for place, size in enumerate(sizes)]
    elif kind == "two":
        sizes[number % 3] = "0"
    elif kind == "tiny":
        sizes[number % 3] = "0.02"
    elif kind == "free":
        angles = [rng.angle() for _ in angles]
    form = {f"p{place}": f"{size} at {angle}"
            for place, (size, angle) in enumerate(zip(sizes, angles, strict=True), start=1)}  # fmt: skip
    return {**form, "part": rng.one_of(("zero", "positive", "negative")), "unit": rng.one_of(("A", "V")),
            "sets": ("no", "yes")[number // 8 % 2],
            "names": rng.one_of(("L123", "ABC", "RYB", "RST")),
            "colours": rng.one_of(("iec", "british-old", "american-208", "american-480"))}  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
