"""Seeded forms of power triangles."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Watts, vars, volt-amperes and amperes; lagging, leading, unity, no active power, target reached, overshot."""
    kind = ("plain", "plain", "leading", "unity", "reactive", "reached", "over", "none")[number % 8]
    power = rng.one_of((f"{rng.size()} kW", f"{rng.size()} kVA", f"{1 + rng.below(90)} A", f"{rng.size()} kvar"))
    factor = f"0.{30 + rng.below(65)} {rng.one_of(('lag', 'lag', 'lead'))}"
    target = rng.one_of(("0.9", "0.95", "1", "0.98 lag"))
    if kind == "leading":
        factor = f"0.{30 + rng.below(50)} lead"
    elif kind == "unity":
        power, factor = f"{rng.size()} kW", "1"
    elif kind == "reactive":
        power, factor = f"{rng.size()} kVA", "90"
    elif kind == "reached":
        factor, target = "0.97 lag", "0.8"
    elif kind == "over":
        target = "0.95 lead"
    elif kind == "none":
        target = ""
    return {
        "power": power, "factor": factor, "target": target, "voltage": rng.one_of(("230", "400", "11 kV")),
        "frequency": rng.one_of(("50", "60")), "phases": rng.one_of(("1", "3")),
    }  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
