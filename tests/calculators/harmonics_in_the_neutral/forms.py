"""Seeded forms of lines with harmonics."""

from host.seeded import SeededChoices, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """Three lines with up to six orders; the order drawn may not be there, or cancel."""
    form = {f"i{line}": rng.size() for line in (1, 2, 3)}
    form |= {f"a{line}": rng.angle(60) for line in (1, 2, 3)}
    for order in (3, 5, 7, 9, 11, 13):
        share = str(1 + rng.below(60))
        form[f"h{order}"] = rng.one_of((share, share, f"{share} at {rng.angle()}", ""))
    if number % 6 == 1:
        form |= {"i2": form["i1"], "i3": form["i1"], "a1": "0", "a2": "0", "a3": "0"}
    drawn = rng.one_of(("1", "3", "3", "5", "7", "9"))
    return {**form, "drawn": drawn, "stated": rng.one_of(("fundamental", "total"))}


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
