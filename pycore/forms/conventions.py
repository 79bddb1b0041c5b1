"""Conventions that differ between classrooms: names, colours, decimal mark. The user chooses; nothing is guessed.

Line colours: IEC 60445 (L1 brown, L2 black, L3 grey, neutral blue); the older British colours (red, yellow, blue,
neutral black) and the North American ones (black, red, blue, neutral white; brown, orange, yellow, neutral grey) are
common practice with no source.
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from pycore.constructions.methods import PAIR_ORDERS
from pycore.constructions.names import RETURN_KEY, SUM_KEY, arm_key
from pycore.drawing import Ink
from pycore.forms.fields import Field, Option
from pycore.words.phrase import Phrase, Symbol

NAMES: dict[str, tuple[str, str, str]] = {
    "L123": ("L1", "L2", "L3"),
    "ABC": ("A", "B", "C"),
    "RYB": ("R", "Y", "B"),
    "RST": ("R", "S", "T"),
}
COLOURS: dict[str, tuple[Ink, Ink, Ink, Ink]] = {
    "iec": ("brown", "black", "grey", "blue"),
    "british-old": ("red", "yellow", "blue", "black"),
    "american-208": ("black", "red", "blue", "white"),
    "american-480": ("brown", "orange", "yellow", "grey"),
}
IEC = "iec"
MARKS = {"point": ".", "comma": ","}


def line_names(names: str) -> tuple[str, str, str]:
    """Return the names of the three lines."""
    return NAMES[names]


def symbols(letter: str, names: str) -> dict[str, Phrase]:
    """Return the tags of the phasors of three lines by key: i1, i2, i3, the sums of two, sum and return."""
    return tags_of([Symbol(letter, name.removeprefix("L")) for name in NAMES[names]], Symbol(letter, "N"))


def tags_of(symbols: Sequence[Symbol], total: Symbol) -> dict[str, Phrase]:
    """Return the tags of phasors numbered from 1 by key, of the sums of two, of the sum and of the returning phasor."""
    return dict(_tags_of(tuple(symbols), total))


@lru_cache(maxsize=32)
def _tags_of(symbols: tuple[Symbol, ...], total: Symbol) -> tuple[tuple[str, Phrase], ...]:
    tags: dict[str, Phrase] = {arm_key(number): (symbol,) for number, symbol in enumerate(symbols, start=1)}
    return tuple((tags | pair_tags(tags) | {SUM_KEY: (total,), RETURN_KEY: ("−", total)}).items())


def pair_tags(tags: Mapping[str, Phrase]) -> dict[str, Phrase]:
    """Return the tags of the sums of two phasors that can be combined first, by key (``i12``), from those of each."""
    return {
        arm_key(f"{first}{second}"): (*tags[arm_key(first)], " + ", *tags[arm_key(second)])
        for first, second in map(tuple, PAIR_ORDERS)
        if arm_key(first) in tags and arm_key(second) in tags
    }


def inks(colours: str) -> dict[str, Ink]:
    """Return the ink of each phasor by key."""
    one, two, three, neutral = COLOURS[colours]
    named: dict[str, Ink] = {"i1": one, "i2": two, "i3": three, SUM_KEY: neutral, RETURN_KEY: neutral}
    named.update({"i12": neutral, "i13": neutral, "i23": neutral})
    return named


TICKS = {"i1": 1, "i2": 2, "i3": 3, "i4": 4, "i5": 5, "i6": 6, "u1": 1, "u2": 2, "u3": 3}
"""Number of ticks of each phasor by key; ``u1`` to ``u3`` are the voltages of the loads on the lines."""

PLAIN_INKS: dict[str, Ink] = {
    "i1": "brown", "i2": "black", "i3": "grey", "i4": "red", "i5": "orange", "i6": "yellow",
    SUM_KEY: "blue", RETURN_KEY: "blue", "i12": "blue", "i13": "blue", "i23": "blue",
}  # fmt: skip
"""Inks of phasors that are not lines of a supply."""


def form_inks(form: Mapping[str, str], fields: Iterable[Field]) -> dict[str, Ink]:
    """Return the ink of each phasor by key: the colours chosen in a form, or those of a page without a choice."""
    for field in fields:
        if field.name == "colours":
            colours = form.get("colours", IEC)
            return inks(colours if colours in COLOURS else IEC)
    return PLAIN_INKS


def numbered(letter: str, count: int, total: str = "") -> dict[str, Phrase]:
    """Return tags of the phasors of one letter, numbered from 1, of the sums of two, of the sum and of the returning
    phasor."""
    return tags_of([Symbol(letter, str(number)) for number in range(1, count + 1)], Symbol(letter, total))


def choice_field(
    name: str,
    label: str,
    group: str,
    default: str,
    options: tuple[tuple[str, str], ...],
    about: str = "",
    only: tuple[tuple[str, str], ...] = (),
) -> Field:
    """Return a field with options from pairs of value and label."""
    choices = tuple(Option(value, words) for value, words in options)
    return Field(name, label, "choice", group, default, help=about, options=choices, shown_when=only)
