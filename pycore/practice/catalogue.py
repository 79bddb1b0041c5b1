"""One mistake of the catalogue, with its words: those of every sum, or a calculator's own."""

from collections.abc import Mapping

from pycore import phasor
from pycore.practice.task import Mistake
from pycore.words import mistakes as words
from pycore.words.phrase import Phrase

Texts = Mapping[str, tuple[str, str]]
"""By a mistake's key, what happened and where to look, as templates over named values."""


def mistake(
    key: str, how: tuple[str, ...], point: complex | None, size: float | None = None, own: Texts | None = None, /,
    **named: "str | Phrase",
) -> Mistake:
    """A mistake that ends on a point, counted from the direction drawn first, or that gives a ``size`` alone.

    ``how`` are the ways of answering in which it is made, ``own`` a calculator's own texts, ``named`` the values that
    the texts name. Raises KeyError for a key without words.
    """
    name, look = words.mistake_text(key, own, **named)
    if size is None:
        size = phasor.magnitude(point) if point is not None else 0.0
    return Mistake(key, how, size, point, name, look)
