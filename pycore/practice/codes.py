"""Codes of practice sheets: nine signs that say which problem this is, whichever edition reads them.

The first sign is the generator's version, the last a check. The alphabet lacks 0, O, 1 and I, which
hands confuse. The check is a weighted sum in the field of 32 elements (x^5 + x^2 + 1), with a different
power of its generator for each place: it finds every single wrong sign and every two signs exchanged.
"""

from dataclasses import dataclass

ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
VERSION = 1
TIERS = ("support", "core", "stretch")
METHODS = ("any", "parallelogram", "tip-to-tail", "components")
PAPERS = ("A4", "A3", "A5", "A2", "letter", "tabloid")
SEEDS = 32 * 32 * 32
MOST_LEARNERS = 32 * 32 - 1
LENGTH = 9
MOST_TOPICS = 10


class CodeError(ValueError):
    """Raised for text that is no code: ``reason`` is ``length``, ``sign``, ``check``, ``version`` or
    ``topic``; ``part`` the stretch at fault."""

    def __init__(self, reason: str, part: str = "") -> None:
        self.reason, self.part = reason, part
        super().__init__(f"{reason}: {part!r}")


@dataclass(frozen=True, slots=True)
class Code:
    """Which problem a sheet holds: the topic's number, the tier, the method asked for, the paper, the
    seed of its set, and the learner's number in it (0: the set itself)."""

    topic: int
    tier: str
    method: str = "any"
    paper: str = "A4"
    seed: int = 0
    number: int = 0
    version: int = VERSION

    def __str__(self) -> str:
        return write(self)


def _times(first: int, second: int) -> int:
    """Product in the field of 32 elements."""
    product = 0
    while second:
        if second & 1:
            product ^= first
        first <<= 1
        if first & 32:
            first ^= 0b100101
        second >>= 1
    return product


def _check(signs: list[int]) -> int:
    weight, found = 1, 0
    for sign in signs:
        weight = _times(weight, 2)
        found ^= _times(weight, sign)
    return found


def _signs(code: Code) -> list[int]:
    recipe = code.topic * len(TIERS) + TIERS.index(code.tier)
    way = PAPERS.index(code.paper) * len(METHODS) + METHODS.index(code.method)
    seed, number = code.seed, code.number
    return [
        code.version, recipe, way,
        seed >> 10 & 31, seed >> 5 & 31, seed & 31,
        number >> 5 & 31, number & 31,
    ]  # fmt: skip


def write(code: Code) -> str:
    """The code as it is printed, in groups of three: ``333-JDL-2GA``.

    Raises ValueError for a topic, seed or number that no code can hold.
    """
    if not (0 <= code.topic < MOST_TOPICS and 0 <= code.seed < SEEDS and 0 <= code.number <= MOST_LEARNERS):
        raise ValueError(f"{code.topic}, {code.seed}, {code.number} do not fit a code")
    signs = _signs(code)
    text = "".join(ALPHABET[sign] for sign in (*signs, _check(signs)))
    return "-".join(text[start : start + 3] for start in range(0, LENGTH, 3))


_LOOKALIKES = str.maketrans({"–": "-", "—": "-", "−": "-"})


def read(text: str) -> Code:
    """The code that a person typed: small letters, spaces and dashes anywhere. Raises CodeError."""
    plain = "".join(text.translate(_LOOKALIKES).upper().replace("-", " ").split())
    for sign in plain:
        if sign not in ALPHABET:
            raise CodeError("sign", sign)
    if len(plain) != LENGTH:
        raise CodeError("length", plain[:20])
    signs = [ALPHABET.index(sign) for sign in plain]
    if _check(signs[:-1]) != signs[-1]:
        raise CodeError("check", plain)
    version, recipe, way, *rest = signs[:-1]
    if version != VERSION:
        raise CodeError("version", plain[0])
    topic, tier = divmod(recipe, len(TIERS))
    paper, method = divmod(way, len(METHODS))
    if topic >= MOST_TOPICS or paper >= len(PAPERS):
        raise CodeError("topic", plain[1:3])
    seed = rest[0] << 10 | rest[1] << 5 | rest[2]
    return Code(topic, TIERS[tier], METHODS[method], PAPERS[paper], seed, rest[3] << 5 | rest[4], version)
