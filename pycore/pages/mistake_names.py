"""Short names of mistakes, for counts of a class or a device."""

from collections.abc import Mapping
from functools import cache

from pycore.calculators.registry import SLUGS, module_of
from pycore.words import circuit_mistakes, short_mistakes


@cache
def short_names() -> Mapping[str, str]:
    """The short name of every mistake of every calculator, by its key."""
    own = [module_of(slug, "words").SHORT for slug in SLUGS]
    return {key: name for names in (short_mistakes.SHORT, circuit_mistakes.SHORT, *own) for key, name in names.items()}


def short(key: str) -> str:
    """Return the short name of a mistake; for an unknown key in an older record, the key in words."""
    return short_names().get(key) or short_mistakes.BESIDE.get(key, key.replace("-", " "))
