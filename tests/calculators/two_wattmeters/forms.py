"""Seeded forms of two wattmeters."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """A balanced load by its angle or its readings, or readings of a load that is not balanced."""
    form = {"method": rng.one_of(("tip-to-tail", "components"))}
    if number % 3 == 0:
        lag = rng.one_of(("0", "30", "60", "90", "-60", rng.angle(90)))
        return {**form, "volts": "400", "amps": rng.size(), "lag": lag}
    first = ("-" if rng.below(4) == 0 else "") + rng.size()
    return {**form, "known": "readings", "w1": first, "w2": f"{rng.size()} kW"[: 20 if number % 2 else -3],
            "balanced": rng.one_of(("yes", "yes", "no"))}  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
