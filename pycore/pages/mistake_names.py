"""Mistakes in few words, as they are counted for a class or on a device."""

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
    """A mistake in few words; of a key that an older record of a device holds and no page has, the key in words."""
    return short_names().get(key, key.replace("-", " "))
