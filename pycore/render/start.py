"""The words of a page whose scripts do not come, for the script that stands in the page itself (site/js/watch.js)."""

import json

from pycore.render.elements import Markup, h
from pycore.words import start

WORDS = {
    "late": start.LATE,
    "missing": start.MISSING,
    "broken": start.BROKEN,
    "page": start.PAGE,
    "reload": start.RELOAD,
    "old": start.OLD,
    "newer": start.NEWER,
    "policy": start.POLICY,
    "needed": start.NEEDED,
    "file": start.FILE,
    "serve": start.SERVE,
    "example": start.EXAMPLE,
    "link": start.LINK,
    "again": start.AGAIN,
}
"""By the names that the script knows."""


def words_html() -> Markup:
    """Return the words, where the first script of a page finds them."""
    return h("meta", {"name": "words-of-the-start", "content": json.dumps(WORDS, ensure_ascii=False)})
