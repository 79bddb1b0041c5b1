"""Seeded forms of loads whose neutral is open."""

from host.seeded import Dice, with_choices


def values(dice: Dice, number: int) -> dict[str, str]:
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


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
