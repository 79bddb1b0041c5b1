"""The way to drawing on the screen: one button wherever a learner looks for it; from another page a link."""

from pycore.render.elements import Markup, h
from pycore.words import furniture


def draw_way_html(address: str = "") -> Markup:
    """Return the button that opens the drawing on the screen, or a link to ``address``, where it opens by itself."""
    if address:
        return h("a", {"href": address, "class": "plain"}, furniture.DRAW)
    return h("button", {"type": "button", "class": "plain", "data-action": "draw"}, furniture.DRAW)
