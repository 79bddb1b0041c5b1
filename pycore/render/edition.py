"""The offer of a newer edition of the site, shown once all of it is on the device."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import furniture


def edition_html() -> Markup:
    """The strip that offers it; hidden until the script has something to offer."""
    button = h("button", {"type": "button"}, furniture.TAKE_EDITION)
    marks: Marks = {"class": "edition", "data-edition-offer": True, "role": "status", "hidden": True}
    return h("div", marks, h("p", None, furniture.NEWER_EDITION), button)
