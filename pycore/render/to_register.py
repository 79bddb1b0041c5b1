"""The way of marks into the register as HTML: the question before they are added. js/to-register.js fills it."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import register as words

LINK = h("a", {"href": f"../{words.SLUG}/"}, words.TITLE)
"""The link to the register, beside the button that adds marks to it."""


def ask_html(open_ranges: str) -> Markup:
    """Return the question before marks go into the register: what would change or is missing; ``open_ranges``: what is
    said of marks that are still a range."""
    texts: Marks = {f"data-{name}": text for name, text in {**words.ASK_LINES, "open": open_ranges}.items()}
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": do}, label)
        for do, label in {"add-anyway": words.ADD_ANYWAY, "add-not": words.ADD_NOT}.items()
    ]
    marks: Marks = {"class": "ask", "role": "group", "aria-labelledby": "ask-register", "data-ask": True,
                    "hidden": True, **texts}  # fmt: skip
    return h("div", marks, h("h3", {"id": "ask-register", "tabindex": -1}, words.ASK), h("ul"),
             h("div", {"class": "row"}, buttons))  # fmt: skip
