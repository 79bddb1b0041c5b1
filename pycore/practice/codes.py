"""Codes of practice sheets: a few characters that name the problem on a sheet, the same in every edition.

A code names one problem. The values of the problem depend on the generator's version, the topic, the tier, the seed
of the set and the learner's number, and on nothing else (``seeded_integers.integers_of_code``); method and paper say
how it is drawn.

The alphabet has 32 characters, each worth its place in it (0 to 31). It lacks 0, O, 1 and I, which are easily confused
by hand. The first character is the version of the code's writing, which is not the version of the generator:

- Version 1 (first character ``3``) has nine characters and ten topics, and always means generator 1.
- Version 2 (first character ``4``) has twelve characters and a thousand topics, and names the generator.
- Version 3 (first character ``5``) is version 1 for generator 2.
- Version 4 (first character ``6``) names no problem: it checks values that somebody types (``CheckCode``).
- Version 5 (first character ``7``) names a learner's question paper (``PaperCode``). It brings no values either.

Every code of a problem has one written form (``version_for``): nine characters where these can hold it, version 2
otherwise. All are read for ever, and a version 2 text of what nine characters can hold stands for the same ``Code``.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
GENERATOR = 2
"""The newest version of the generators of problems."""
TIERS = ("support", "core", "stretch")
METHODS = ("any", "parallelogram", "tip-to-tail", "components")
PAPERS = ("A4", "A3", "A5", "A2", "letter", "tabloid")
SEEDS = 32 * 32 * 32
MOST_LEARNERS = 32 * 32 - 1
FEW_TOPICS, MOST_TOPICS = 10, 1000
GROUP = 3
"""Number of characters between two dashes."""


class CodeError(ValueError):
    """Raised for text that is no code of a problem: ``reason`` is ``length``, ``sign``, ``check``, ``version``,
    ``topic``, ``values`` for a code that only checks values, or ``paper`` for that of a question paper; ``part`` the
    stretch at fault."""

    def __init__(self, reason: str, part: str = "") -> None:
        self.reason, self.part = reason, part
        super().__init__(f"{reason}: {part!r}")


@dataclass(frozen=True, slots=True)
class Code:
    """Which problem a sheet holds: the topic's number, the tier, the method asked for, the paper, the seed of its
    set, the learner's number in it (0: the set itself), and the version of the generator that draws its values."""

    topic: int
    tier: str
    method: str = "any"
    paper: str = "A4"
    seed: int = 0
    number: int = 0
    generator: int = GENERATOR

    def __str__(self) -> str:
        return write(self)


FINGERPRINTS = 32 * 32 * 32 * 32 * 32
"""How many fingerprints of values there are: other values have the same one once in 34 million times."""


@dataclass(frozen=True, slots=True)
class CheckCode:
    """What a sheet with a lecturer's own values prints, so that whoever types them learns whether they are right: the
    topic's number and a fingerprint of the values, which tells nothing of the answer."""

    topic: int
    fingerprint: int

    def __str__(self) -> str:
        return write_check(self)


@dataclass(frozen=True, slots=True)
class PaperCode:
    """One learner's question paper: a fingerprint of its questions, which tells nothing of them, and the learner's
    number (0: the paper itself). Whoever has the paper's file finds the learner's questions by it."""

    fingerprint: int
    number: int = 0

    def __str__(self) -> str:
        return write_paper(self)


Characters = tuple[int, ...]
"""What the characters of a code are worth, each from 0 to 31."""


# The field of 32 elements, and check characters over it.


def _times(first: int, second: int) -> int:
    """Product in the field of 32 elements, modulo x^5 + x^2 + 1; its element 2 is primitive."""
    product = 0
    while second:
        if second & 1:
            product ^= first
        first <<= 1
        if first & 32:
            first ^= 0b100101
        second >>= 1
    return product


def _weighted_sum(characters: Sequence[int]) -> Characters:
    """The one check character of versions 1 and 3: the sum of the characters, the n-th times 2^n in the field. It finds
    every single wrong character and every exchange of two characters."""
    weight, found = 1, 0
    for character in characters:
        weight = _times(weight, 2)
        found ^= _times(weight, character)
    return (found,)


def _reed_solomon(characters: Sequence[int]) -> Characters:
    """The two check characters of version 2: the remainder of the characters, as a polynomial, by
    (x - 2)(x - 4) = x^2 + 6x + 8.

    With its checks, a code of twelve characters is a word of the Reed-Solomon code [31, 29] over the field of 32
    elements, shortened to [12, 10]. Two such words differ in three characters or more, so any two wrong characters are
    found, and with them every exchange of two. The roots are 2 and 4, not 1 and 2: with the root 1, the sum of all
    characters would be one of the checks, and that stays as it is whenever characters are only rearranged, as when two
    groups change places.

    Source: I. S. Reed and G. Solomon, Polynomial codes over certain finite fields, Journal of SIAM 8 (1960) 300-304;
    the form by a generator polynomial and its least distance n - k + 1: F. J. MacWilliams and N. J. A. Sloane, The
    Theory of Error-Correcting Codes (1977), chapter 10. Both from memory; the tests prove the distance.
    """
    first = second = 0
    for character in characters:
        carried = character ^ first
        first, second = second ^ _times(6, carried), _times(8, carried)
    return first, second


# How each version lays out a code.


def _split(number: int, count: int) -> Characters:
    """A whole number as ``count`` characters, the most significant first."""
    return tuple(number >> 5 * place & 31 for place in reversed(range(count)))


def _joined(characters: Sequence[int]) -> int:
    """The whole number that some characters stand for, the most significant first."""
    number = 0
    for character in characters:
        number = number << 5 | character
    return number


def _drawing_character(code: Code) -> int:
    """Paper and method in one character."""
    return PAPERS.index(code.paper) * len(METHODS) + METHODS.index(code.method)


def _characters_of_nine(code: Code) -> Characters:
    """Topic and tier (1 character), paper and method (1), seed (3), number (2)."""
    problem = code.topic * len(TIERS) + TIERS.index(code.tier)
    return (problem, _drawing_character(code), *_split(code.seed, 3), *_split(code.number, 2))


def _code_of_nine(generator: int, characters: Sequence[int]) -> Code:
    topic, tier = divmod(characters[0], len(TIERS))
    paper, method = divmod(characters[1], len(METHODS))
    if topic >= FEW_TOPICS or paper >= len(PAPERS):
        raise CodeError("topic", _text(characters[:2]))
    seed, number = _joined(characters[2:5]), _joined(characters[5:7])
    return Code(topic, TIERS[tier], METHODS[method], PAPERS[paper], seed, number, generator)


def _characters_2(code: Code) -> Characters:
    """Topic (2 characters), generator and tier (1), paper and method (1), seed (3), number (2).

    The third character is 4 (generator - 1) + tier, so that there is room for eight generators.
    """
    version_and_tier = 4 * (code.generator - 1) + TIERS.index(code.tier)
    problem = (*_split(code.topic, 2), version_and_tier)
    return (*problem, _drawing_character(code), *_split(code.seed, 3), *_split(code.number, 2))


def _code_2(characters: Sequence[int]) -> Code:
    topic = _joined(characters[:2])
    generator, tier = divmod(characters[2], 4)
    paper, method = divmod(characters[3], len(METHODS))
    if generator + 1 > GENERATOR:
        raise CodeError("version", _text(characters[2:3]))
    if topic >= VERSIONS[2].topics or tier >= len(TIERS) or paper >= len(PAPERS):
        raise CodeError("topic", _text(characters[:4]))
    seed, number = _joined(characters[4:7]), _joined(characters[7:9])
    return Code(topic, TIERS[tier], METHODS[method], PAPERS[paper], seed, number, generator + 1)


def _characters_of_check(code: CheckCode) -> Characters:
    """Topic (2 characters), fingerprint (5)."""
    return (*_split(code.topic, 2), *_split(code.fingerprint, 5))


def _check_of(characters: Sequence[int]) -> CheckCode:
    topic = _joined(characters[:2])
    if topic >= MOST_TOPICS:
        raise CodeError("topic", _text(characters[:2]))
    return CheckCode(topic, _joined(characters[2:]))


def _characters_of_paper(code: PaperCode) -> Characters:
    """Fingerprint (5 characters), number (2)."""
    return (*_split(code.fingerprint, 5), *_split(code.number, 2))


def _paper_of(characters: Sequence[int]) -> PaperCode:
    return PaperCode(_joined(characters[:5]), _joined(characters[5:]))


@dataclass(frozen=True, slots=True)
class Version:
    """One way of writing codes: how many characters it has, how many topics it can hold (from 0) and which generators,
    its check characters, and how a code becomes the characters between version and check, and
    back. Those of check codes and of papers hold no problem."""

    length: int
    topics: int
    generators: range
    checks_of: Callable[[Sequence[int]], Characters]
    characters_of: Callable[[Any], Characters]
    code_of: Callable[[Sequence[int]], Code | CheckCode | PaperCode]

    def checked(self, characters: Sequence[int]) -> Characters:
        """Characters with their check behind them."""
        return (*characters, *self.checks_of(characters))

    def sound(self, characters: Sequence[int]) -> bool:
        """Whether the check characters at the end are those of the characters before them."""
        count = len(self.checks_of(()))
        return self.checks_of(characters[:-count]) == tuple(characters[-count:])

    def body(self, characters: Sequence[int]) -> Characters:
        """The characters between version and check."""
        return tuple(characters[1 : -len(self.checks_of(()))])


VERSIONS: Mapping[int, Version] = {
    1: Version(9, FEW_TOPICS, range(1, 2), _weighted_sum, _characters_of_nine, partial(_code_of_nine, 1)),
    3: Version(9, FEW_TOPICS, range(2, 3), _weighted_sum, _characters_of_nine, partial(_code_of_nine, 2)),
    2: Version(12, MOST_TOPICS, range(1, 9), _reed_solomon, _characters_2, _code_2),
}
"""Every version of writing a problem's code by its number, which is what its codes' first character is worth; shorter
ones first."""
CHECKING, OF_PAPERS = 4, 5
"""The versions of check codes and of the codes of question papers."""
READ: Mapping[int, Version] = {
    **VERSIONS,
    CHECKING: Version(9, 0, range(0), _weighted_sum, _characters_of_check, _check_of),
    OF_PAPERS: Version(9, 0, range(0), _weighted_sum, _characters_of_paper, _paper_of),
}  # fmt: skip
"""Every version that is read."""
LENGTHS = tuple(version.length for version in VERSIONS.values())


def version_for(code: Code) -> int:
    """The number of the version that a code is written in: the first that can hold its topic and its generator.

    Raises ValueError where none can.
    """
    for number, version in VERSIONS.items():
        if 0 <= code.topic < version.topics and code.generator in version.generators:
            return number
    raise ValueError(f"topic {code.topic} of generator {code.generator} fits no code")


def _text(characters: Sequence[int]) -> str:
    return "".join(ALPHABET[character] for character in characters)


def write_as(version: int, code: Code) -> str:
    """A code in the writing of one version, in groups of three: ``333-JDL-2GA``."""
    if not (0 <= code.seed < SEEDS and 0 <= code.number <= MOST_LEARNERS):
        raise ValueError(f"seed {code.seed} and number {code.number} fit no code")
    return _grouped(version, VERSIONS[version].characters_of(code))


def _grouped(version: int, body: Characters) -> str:
    """A version and what it holds as text with its check, in groups of three."""
    text = _text(READ[version].checked((version, *body)))
    return "-".join(text[start : start + GROUP] for start in range(0, len(text), GROUP))


def write_check(code: CheckCode) -> str:
    """A check code as it is printed. Raises ValueError for a topic or fingerprint that none can hold."""
    if not (0 <= code.topic < MOST_TOPICS and 0 <= code.fingerprint < FINGERPRINTS):
        raise ValueError(f"topic {code.topic} and fingerprint {code.fingerprint} fit no check code")
    return _grouped(CHECKING, _characters_of_check(code))


def write_paper(code: PaperCode) -> str:
    """A paper's code as it is printed. Raises ValueError for a fingerprint or number that none can hold."""
    if not (0 <= code.fingerprint < FINGERPRINTS and 0 <= code.number <= MOST_LEARNERS):
        raise ValueError(f"fingerprint {code.fingerprint} and number {code.number} fit no code of a paper")
    return _grouped(OF_PAPERS, _characters_of_paper(code))


def write(code: Code) -> str:
    """The code as it is printed. Raises ValueError for a topic, seed or number that no code can hold."""
    return write_as(version_for(code), code)


def _repairs(characters: Sequence[int]) -> Iterator[tuple[tuple[int, ...], list[int]]]:
    """Every text that differs in one character, or by an exchange of two neighbours, with the places of the change.
    The first character, the version, stays."""
    for place, typed in enumerate(characters[1:], start=1):
        for character in range(len(ALPHABET)):
            if character != typed:
                yield (place,), [*characters[:place], character, *characters[place + 1 :]]
        if place > 1:
            exchanged = [*characters[: place - 1], typed, characters[place - 1], *characters[place + 1 :]]
            yield (place - 1, place), exchanged


_LOOKALIKES = str.maketrans({"–": "-", "—": "-", "−": "-"})


def read(text: str) -> Code:
    """The code of a problem that a person typed: small letters, spaces and dashes anywhere. Raises CodeError, for a
    check code with the reason ``values``, for a paper's with ``paper``."""
    code = read_any(text)
    if not isinstance(code, Code):
        raise CodeError("values" if isinstance(code, CheckCode) else "paper")
    return code


def read_any(text: str) -> Code | CheckCode | PaperCode:
    """The code of a problem or of a paper, or the check code, that a person typed. Raises CodeError."""
    plain = "".join(text.translate(_LOOKALIKES).upper().replace("-", " ").split())
    for character in plain:
        if character not in ALPHABET:
            raise CodeError("sign", character)
    if len(plain) not in LENGTHS:
        raise CodeError("length", plain[:20])
    characters = [ALPHABET.index(character) for character in plain]
    version = READ.get(characters[0])
    if version is None:
        raise _unknown(characters, plain)
    if len(characters) != version.length:
        raise CodeError("length", plain)
    if not version.sound(characters):
        raise CodeError("check", plain)
    return version.code_of(version.body(characters))


def _unknown(characters: Sequence[int], plain: str) -> CodeError:
    """The error for a version that is not known: a newer edition's where the characters pass the check of a known
    version of their length, a damaged first character otherwise."""
    alike = next(version for version in READ.values() if version.length == len(characters))
    return CodeError("version", plain[0]) if alike.sound(characters) else CodeError("check", plain)


def suspect(plain: str) -> int:
    """The number of the group, from 1, in which a code that fails its check is probably wrong: the only one in which a
    single slip of the pen gives a code; 0 where several groups or none do. A single check character almost never
    tells."""
    characters = [ALPHABET.index(character) for character in plain]
    version = READ.get(characters[0])
    groups: set[int] = set()
    for places, repaired in _repairs(characters) if version else ():
        if version and version.sound(repaired):
            try:
                version.code_of(version.body(repaired))
            except CodeError:
                continue
            groups.update(place // GROUP + 1 for place in places)
    return groups.pop() if len(groups) == 1 else 0
