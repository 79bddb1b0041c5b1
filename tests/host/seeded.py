"""SeededChoices that a seed fixes, and what the seeded forms of several calculators share.

The forms must be the same in every host, so nothing but plain integers is used.
"""

from collections.abc import Callable

COMMON = {
    "method": ("tip-to-tail", "parallelogram", "components"),
    "order": ("", "12", "13", "23"),
    "parallels": ("protractor", "set-squares", "compasses"),
    "protractor": ("180", "360"),
    "first": ("right", "up"),
    "reference": ("zero", "current"),
    "rotation": ("anticlockwise", "clockwise"),
    "resultant": ("sum", "returning"),
    "sheet": ("construction", "construction", "problem", "overlay"),
    "paper": ("A5", "A4", "A3", "A2", "letter", "tabloid"),
    "orientation": ("", "landscape", "portrait"),
    "steps": ("125", "all"),
    "decimal": ("point", "comma"),
    "angles": ("protractor", "polar"),
}
"""The choices of every calculator's form but the neutral's, which has its own."""


class SeededChoices:
    """Numbers that a seed fixes: a linear congruential generator whose high bits are used."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2654435761 + 97) % 2**48
        for _ in range(4):
            self.below(2)

    def below(self, count: int) -> int:
        """A whole number from 0 to count - 1."""
        self.state = (self.state * 0x5DEECE66D + 0xB) % 2**48
        return (self.state >> 17) % count

    def one_of(self, options):
        """One of some options."""
        return options[self.below(len(options))]

    def size(self) -> str:
        """A size over three decades as typed: 0.1 to 99.9, or 100 to 999."""
        power = self.below(3)
        whole = 1 + self.below(999)
        return (f"{whole / 100:.2f}", f"{whole / 10:.1f}", str(whole))[power]

    def angle(self, widest: int = 180) -> str:
        """Degrees with no or one decimal."""
        tenths = self.below(20 * widest + 1) - 10 * widest
        return f"{tenths / 10:g}"


def with_choices(values: Callable[[SeededChoices, int], dict[str, str]]) -> Callable[[int], dict[str, str]]:
    """A calculator's ``form(number)``: a choice of each kind, then what ``values(rng, number)`` gives."""

    def form(number: int) -> dict[str, str]:
        rng = SeededChoices(number)
        choices = {name: rng.one_of(options) for name, options in COMMON.items()}
        return {**choices, **values(rng, number)}

    return form


def ohms(rng: SeededChoices) -> str:
    """A resistance as typed."""
    return rng.one_of((f"{5 + rng.below(95)}", f"{rng.size()} Ω", f"{1 + rng.below(9)}.{rng.below(10)} kΩ"))


def henries(rng: SeededChoices) -> str:
    """An inductance as typed, or a reactance."""
    return rng.one_of((f"{1 + rng.below(900)} mH", f"0.{1 + rng.below(9)} H", f"{1 + rng.below(200)} Ω"))


def farads(rng: SeededChoices) -> str:
    """A capacitance as typed, or a reactance."""
    return rng.one_of((f"{1 + rng.below(300)} µF", f"{1 + rng.below(900)} nF", f"{1 + rng.below(200)} Ω"))
