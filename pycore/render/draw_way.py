"""The ways between a problem, its drawing on the screen and Practice."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import furniture


def draw_way_html(address: str = "") -> Markup:
    """Return the button that opens the drawing on the screen, or a link to ``address``, where it opens by itself."""
    if address:
        return h("a", {"href": address, "class": "plain"}, furniture.DRAW)
    return h("button", {"type": "button", "class": "plain", "data-action": "draw"}, furniture.DRAW)


def practice_way_html() -> Markup:
    """Return the link back to Practice; the page shows it for the problem that is in hand there."""
    marks: Marks = {"href": "../practice/", "class": "plain", "data-in-practice": True, "hidden": True}
    return h("a", marks, furniture.IN_PRACTICE)
