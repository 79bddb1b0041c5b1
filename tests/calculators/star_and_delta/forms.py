"""Seeded forms of loads in star and delta."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Three loads in star or delta: equal, open, reactive, one a thousand times another."""
    kind = ("resistive", "equal", "reactive", "open", "opposite", "decades", "mixed")[number % 7]
    loads = [str(5 + rng.below(95)) for _ in range(3)]
    if kind == "equal":
        loads = [rng.one_of((loads[0], f"{loads[0]} + j{loads[1]}")), "", ""]
    elif kind in ("reactive", "mixed"):
        loads = [f"{load} {rng.one_of('+-')} j{5 + rng.below(95)}" for load in loads]
    elif kind == "open":
        loads[rng.below(3)] = "open"
    elif kind == "opposite":
        loads = ["100", "j100", "-j100"]
    elif kind == "decades":
        loads = [rng.size() for _ in loads]
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    return {**form, "volts": rng.one_of(("400", "230", "11000", "0.69 kV", "100")), "line": rng.one_of("123"),
            "connection": rng.one_of(("delta", "delta", "star")), "known": rng.one_of(("line", "phase")),
            "sequence": rng.one_of(("123", "132")), "names": rng.one_of(("L123", "ABC", "RYB", "RST"))}  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
