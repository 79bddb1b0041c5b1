"""Seeded forms of series circuits."""

from host.seeded import SeededChoices, farads, henries, ohms, with_choices


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """One of each, one kind alone, several, resonance, almost resonance, an element of 0 Ω."""
    kind = ("plain", "one", "several", "resonance", "near", "zero", "plain", "triangle")[number % 8]
    form = {"r": ohms(rng), "l": henries(rng), "c": farads(rng)}
    if kind == "one":
        kept = rng.one_of("rlc")
        form = {name: text if name == kept else "" for name, text in form.items()}
    elif kind == "several":
        form["r"] += f" + {ohms(rng)}"
        form["l"] += f"; {henries(rng)}"
    elif kind == "resonance":
        form["l"] = form["c"] = f"{5 + rng.below(95)} Ω"
    elif kind == "near":
        form["l"], form["c"] = "40 Ω", "40.1 Ω"
    elif kind == "zero":
        form["r"] = "0"
    return {
        **form, "supply": rng.one_of(("230 V", "24", "2.5 A", f"{1 + rng.below(900)} mA")),
        "frequency": rng.one_of(("50", "60", "400", "1 kHz")),
        "drawn": "impedances" if kind == "triangle" else "voltages",
    }  # fmt: skip


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
