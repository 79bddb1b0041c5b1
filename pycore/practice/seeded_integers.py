"""Numbers drawn from a seed: whole numbers only, the same in every host and for ever.

The generator is SplitMix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators,
OOPSLA 2014; constants from memory, held by a test of its published first outputs).
"""

from pycore.practice.codes import TIERS, Code

_MASK = (1 << 64) - 1
_GOLDEN = 0x9E3779B97F4A7C15


class SeededIntegers:
    """Whole numbers drawn one after another from a seed of 64 bits."""

    def __init__(self, seed: int) -> None:
        self._state = seed & _MASK

    def word(self) -> int:
        """The next 64 bits."""
        self._state = (self._state + _GOLDEN) & _MASK
        mixed = self._state
        mixed = ((mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9) & _MASK
        mixed = ((mixed ^ (mixed >> 27)) * 0x94D049BB133111EB) & _MASK
        return mixed ^ (mixed >> 31)

    def below(self, count: int) -> int:
        """A whole number from 0 to ``count`` - 1, each as likely as another."""
        limit = (1 << 64) - (1 << 64) % count
        while True:
            drawn = self.word()
            if drawn < limit:
                return drawn % count

    def between(self, least: int, most: int) -> int:
        """A whole number from ``least`` to ``most``, both included."""
        return least + self.below(most - least + 1)


def integers_of(*parts: int) -> SeededIntegers:
    """SeededIntegers of a seed made from several whole numbers, in their order."""
    seed = 0
    for part in parts:
        seed = SeededIntegers(seed ^ (part & _MASK)).word()
    return SeededIntegers(seed)


def integers_of_code(code: Code) -> SeededIntegers:
    """The integers that draw a code's values.

    The version of the generator is one of the parts; the version of the code's writing is not, so that a problem stays
    the same however its code is written.
    """
    return integers_of(code.generator, code.topic, TIERS.index(code.tier), code.seed, code.number)
