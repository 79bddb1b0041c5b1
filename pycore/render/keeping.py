"""Sentences that promise to keep something, and what stands in their place where the browser keeps nothing."""

from pycore.render.elements import Markup, h, join
from pycore.words import furniture


def keeps_html(promise: str, lost: str = furniture.UNKEPT) -> Markup:
    """Return a promise, with what is said instead where the browser stores nothing: page.css shows one of the two."""
    return join(h("span", {"class": "keeps"}, promise), h("span", {"class": "unkept"}, lost) if lost else None)
