"""Seeded forms of loads whose neutral is open."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Three loads: resistances, reactances, powers, one not connected, all equal, one far larger."""
    kind = ("plain", "equal", "reactive", "power", "open", "mixed", "wide", "plain")[number % 8]
    loads = [rng.size() for _ in range(3)]
    if kind == "equal":
        loads = [loads[0]] * 3
    elif kind == "reactive":
        loads[rng.below(3)] = f"{rng.size()} {rng.one_of('+-')} j{rng.size()}"
    elif kind == "power":
        loads = [f"{load} kW" for load in loads]
    elif kind == "open":
        loads[rng.below(3)] = ""
    elif kind == "mixed":
        loads = ["100", "-j100", "j100"]
    elif kind == "wide":
        loads = ["1", "1000", "50"]
    form = dict(zip(("z1", "z2", "z3"), loads, strict=True))
    return {**form, "method": rng.one_of(("displacement", "displacement", "tip-to-tail")),
            "volts": rng.one_of(("400", "208", "11 kV")), "sequence": rng.one_of(("123", "132"))}  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
