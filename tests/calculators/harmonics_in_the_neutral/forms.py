"""Seeded forms of lines with harmonics."""

from host.seeded import Dice, with_choices


def values(dice: Dice, number: int) -> dict[str, str]:
    """Three lines with up to six orders; the order drawn may not be there, or cancel."""
    form = {f"i{line}": dice.size() for line in (1, 2, 3)}
    form |= {f"a{line}": dice.angle(60) for line in (1, 2, 3)}
    for order in (3, 5, 7, 9, 11, 13):
        share = str(1 + dice.below(60))
        form[f"h{order}"] = dice.one_of((share, share, f"{share} at {dice.angle()}", ""))
    if number % 6 == 1:
        form |= {"i2": form["i1"], "i3": form["i1"], "a1": "0", "a2": "0", "a3": "0"}
    drawn = dice.one_of(("1", "3", "3", "5", "7", "9"))
    return {**form, "drawn": drawn, "stated": dice.one_of(("fundamental", "total"))}


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
