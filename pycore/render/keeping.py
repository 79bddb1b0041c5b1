"""Sentences that promise to keep something, and what stands in their place where the browser keeps nothing, or no
more."""

from pycore.render.elements import Markup, h, join
from pycore.words import furniture


def keeps_html(promise: str, lost: str = furniture.UNKEPT) -> Markup:
    """Return a promise, with what is said instead where the browser stores nothing, or has no room: page.css shows one
    of them."""
    instead = [h("span", {"class": "unkept"}, lost), h("span", {"class": "no-room"}, furniture.FULL)] if lost else None
    return join(h("span", {"class": "keeps"}, promise), instead)
