"""Seeded forms of parallel circuits."""

from host.seeded import SeededChoices, farads, henries, ohms, with_choices


def _branch(rng: SeededChoices) -> str:
    kind = rng.below(6)
    coil, capacitor = henries(rng), farads(rng)
    coil = f"j{coil}" if coil.endswith("Ω") else coil
    capacitor = f"-j{capacitor}" if capacitor.endswith("Ω") else capacitor
    return (ohms(rng), coil, capacitor, f"{ohms(rng)} + {coil}", f"{ohms(rng)}; {capacitor}", coil)[kind]


def values(rng: SeededChoices, number: int) -> dict[str, str]:
    """One to four branches; resonance with loss and without."""
    places = 1 + rng.below(4)
    form = {f"b{place}": _branch(rng) if place <= places else "" for place in range(1, 5)}
    kind = ("plain", "plain", "dynamic", "closed", "equal", "plain")[number % 6]
    if kind == "dynamic":
        form = {"b1": "8 Ω + j20", "b2": "-j23.2", "b3": "", "b4": ""}
    elif kind == "closed":
        form = {"b1": "j40", "b2": "-j40", "b3": "", "b4": ""}
    elif kind == "equal":
        form["b2"] = form["b1"]
    supply = "230 V" if kind == "closed" else rng.one_of(("230 V", "48", "12 A", f"{1 + rng.below(900)} mA"))
    return {**form, "supply": supply, "frequency": rng.one_of(("50", "60", "400"))}


form = with_choices(values)
"""The form of a number, with the choices that pages share."""
