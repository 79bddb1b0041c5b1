"""Seeded forms of series circuits."""

from host.seeded import Dice, farads, henries, ohms, with_choices


def values(dice: Dice, number: int) -> dict[str, str]:
    """One of each, one kind alone, several, resonance, almost resonance, an element of 0 Ω."""
    kind = ("plain", "one", "several", "resonance", "near", "zero", "plain", "triangle")[number % 8]
    form = {"r": ohms(dice), "l": henries(dice), "c": farads(dice)}
    if kind == "one":
        kept = dice.one_of("rlc")
        form = {name: text if name == kept else "" for name, text in form.items()}
    elif kind == "several":
        form["r"] += f" + {ohms(dice)}"
        form["l"] += f"; {henries(dice)}"
    elif kind == "resonance":
        form["l"] = form["c"] = f"{5 + dice.below(95)} Ω"
    elif kind == "near":
        form["l"], form["c"] = "40 Ω", "40.1 Ω"
    elif kind == "zero":
        form["r"] = "0"
    return {
        **form, "supply": dice.one_of(("230 V", "24", "2.5 A", f"{1 + dice.below(900)} mA")),
        "frequency": dice.one_of(("50", "60", "400", "1 kHz")),
        "drawn": "impedances" if kind == "triangle" else "voltages",
    }  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
