"""Random circuits and loads for the tests of their pages, over decades, with every choice of the form."""

import random
from collections.abc import Iterator

from pycore.calculators.registry import CALCULATORS

LEFT_OUT = ("own-paper", "own-way", "sheet", "start", "mirror", "wording", "drawn")


def chosen(rng: random.Random, slug: str) -> dict[str, str]:
    """One option of each choice of a page."""
    return {
        field.name: rng.choice(field.options).value
        for field in CALCULATORS[slug].fields
        if field.kind == "choice" and field.name not in LEFT_OUT and field.group not in ("values", "loads", "more")
    }


def ohms(rng: random.Random) -> str:
    """A resistance as typed, 1 Ω to 10 kΩ."""
    value = 10 ** rng.uniform(0, 4)
    return f"{value / 1000:.3g} kΩ" if value > 2000 else f"{value:.3g}"


def henries(rng: random.Random) -> str:
    """An inductance as typed, 1 mH to 10 H."""
    value = 10 ** rng.uniform(-3, 1)
    return f"{value * 1000:.3g} mH" if value < 0.5 else f"{value:.3g} H"


def farads(rng: random.Random) -> str:
    """A capacitance as typed, 100 nF to 1 mF."""
    value = 10 ** rng.uniform(-7, -3)
    return f"{value * 1e9:.3g} nF" if value < 1e-6 else f"{value * 1e6:.4g} µF"


def series_forms(count: int, seed: int = 1) -> Iterator[dict[str, str]]:
    """Series circuits of one to six elements."""
    rng = random.Random(seed)
    for _ in range(count):
        counts = [rng.choice((0, 1, 1, 2)), rng.choice((0, 1, 1, 2)), rng.choice((0, 1, 1, 2))]
        if not any(counts):
            counts[rng.randrange(3)] = 1
        form = chosen(rng, "series-circuit")
        for name, make, number in zip("rlc", (ohms, henries, farads), counts, strict=True):
            form[name] = " + ".join(make(rng) for _ in range(number))
        form["supply"] = rng.choice((f"{10 ** rng.uniform(0, 3):.3g} V", f"{10 ** rng.uniform(-2, 2):.3g} A"))
        form["frequency"] = rng.choice(("50", "60", "400", f"{10 ** rng.uniform(1, 4):.4g}"))
        form["drawn"] = rng.choice(("voltages", "voltages", "impedances"))
        yield form


def branch(rng: random.Random) -> str:
    """One branch as typed: up to three elements in series."""
    made = [make(rng) for make in (ohms, henries, farads) if rng.random() < 0.5]
    return " + ".join(made) or ohms(rng)


def parallel_forms(count: int, seed: int = 1) -> Iterator[dict[str, str]]:
    """Parallel circuits of one to four branches."""
    rng = random.Random(seed)
    for _ in range(count):
        form = chosen(rng, "parallel-circuit")
        places = rng.randint(1, 4)
        for number in range(1, 5):
            form[f"b{number}"] = branch(rng) if number <= places else ""
        form["supply"] = rng.choice((f"{10 ** rng.uniform(0, 3):.3g} V", f"{10 ** rng.uniform(-2, 2):.3g} A"))
        form["frequency"] = rng.choice(("50", "60", "400", f"{10 ** rng.uniform(1, 4):.4g}"))
        yield form
