"""Random circuits and loads for the tests of their pages, over decades, with every choice of the form."""

import random
from collections.abc import Iterator

from pycore.calculators.registry import CALCULATORS

LEFT_OUT = ("sheet", "start", "mirror", "wording", "drawn")


def chosen(dice: random.Random, slug: str) -> dict[str, str]:
    """One option of each choice of a page."""
    return {
        field.name: dice.choice(field.options).value
        for field in CALCULATORS[slug].fields
        if field.kind == "choice" and field.name not in LEFT_OUT and field.group not in ("values", "loads", "more")
    }


def ohms(dice: random.Random) -> str:
    """A resistance as typed, 1 Ω to 10 kΩ."""
    value = 10 ** dice.uniform(0, 4)
    return f"{value / 1000:.3g} kΩ" if value > 2000 else f"{value:.3g}"


def henries(dice: random.Random) -> str:
    """An inductance as typed, 1 mH to 10 H."""
    value = 10 ** dice.uniform(-3, 1)
    return f"{value * 1000:.3g} mH" if value < 0.5 else f"{value:.3g} H"


def farads(dice: random.Random) -> str:
    """A capacitance as typed, 100 nF to 1 mF."""
    value = 10 ** dice.uniform(-7, -3)
    return f"{value * 1e9:.3g} nF" if value < 1e-6 else f"{value * 1e6:.4g} µF"


def series_forms(count: int, seed: int = 1) -> Iterator[dict[str, str]]:
    """Series circuits of one to six elements."""
    dice = random.Random(seed)
    for _ in range(count):
        counts = [dice.choice((0, 1, 1, 2)), dice.choice((0, 1, 1, 2)), dice.choice((0, 1, 1, 2))]
        if not any(counts):
            counts[dice.randrange(3)] = 1
        form = chosen(dice, "series-circuit")
        for name, make, number in zip("rlc", (ohms, henries, farads), counts, strict=True):
            form[name] = " + ".join(make(dice) for _ in range(number))
        form["supply"] = dice.choice((f"{10 ** dice.uniform(0, 3):.3g} V", f"{10 ** dice.uniform(-2, 2):.3g} A"))
        form["frequency"] = dice.choice(("50", "60", "400", f"{10 ** dice.uniform(1, 4):.4g}"))
        form["drawn"] = dice.choice(("voltages", "voltages", "impedances"))
        yield form


def branch(dice: random.Random) -> str:
    """One branch as typed: up to three elements in series."""
    made = [make(dice) for make in (ohms, henries, farads) if dice.random() < 0.5]
    return " + ".join(made) or ohms(dice)


def parallel_forms(count: int, seed: int = 1) -> Iterator[dict[str, str]]:
    """Parallel circuits of one to four branches."""
    dice = random.Random(seed)
    for _ in range(count):
        form = chosen(dice, "parallel-circuit")
        places = dice.randint(1, 4)
        for number in range(1, 5):
            form[f"b{number}"] = branch(dice) if number <= places else ""
        form["supply"] = dice.choice((f"{10 ** dice.uniform(0, 3):.3g} V", f"{10 ** dice.uniform(-2, 2):.3g} A"))
        form["frequency"] = dice.choice(("50", "60", "400", f"{10 ** dice.uniform(1, 4):.4g}"))
        yield form
