"""The offer of a newer version of the site, shown once the device has stored all of it."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import furniture


def edition_html() -> Markup:
    """Return the strip with the offer; hidden until JavaScript has something to offer."""
    button = h("button", {"type": "button"}, furniture.TAKE_EDITION)
    marks: Marks = {"class": "edition", "data-edition-offer": True, "role": "status", "hidden": True}
    return h("div", marks, h("p", None, furniture.NEWER_EDITION), button)
