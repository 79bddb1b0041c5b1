"""What each kind of code is for, folded away on the pages where a lecturer makes or marks sheets."""

from pycore.render.elements import Markup, h
from pycore.words import all_codes as words


def all_codes_html() -> Markup:
    """Return the kinds of codes, each with an example."""
    kinds = [
        h("p", None, h("strong", None, name), f", such as {example}. {stands} {typed}")
        for name, example, stands, typed in words.KINDS
    ]
    summary, lead = h("summary", None, words.TITLE), h("p", None, words.LEAD)
    return h("details", {"class": "more"}, summary, lead, kinds)
