"""Seeded forms of two wattmeters."""

from host.seeded import Dice, with_choices


def values(dice: Dice, number: int) -> dict[str, str]:
    """A balanced load by its angle or its readings, or readings of a load that is not balanced."""
    form = {"method": dice.one_of(("tip-to-tail", "components"))}
    if number % 3 == 0:
        lag = dice.one_of(("0", "30", "60", "90", "-60", dice.angle(90)))
        return {**form, "volts": "400", "amps": dice.size(), "lag": lag}
    first = ("-" if dice.below(4) == 0 else "") + dice.size()
    return {**form, "known": "readings", "w1": first, "w2": f"{dice.size()} kW"[: 20 if number % 2 else -3],
            "balanced": dice.one_of(("yes", "yes", "no"))}  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
