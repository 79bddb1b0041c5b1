"""Letters that our faces lack: read from a request, or asked for before it is answered.

The page shapes them and asks the same again; what it could not shape is told in words. Only a request with a name or
text in such letters comes here.
"""

from collections.abc import Mapping
from typing import Any

from pycore.forms.title_block import texts_by_hand
from pycore.lettering.glyphs import NO_LETTERS, Letters
from pycore.lettering.held import own

SETS = ("answer", "pdf", "handout", "begin")
"""What a request may ask for that has names on it."""


class BadLettersError(Exception):
    """Raised for letters that no page of this site sends."""


def letters_of(request: Mapping[str, Any]) -> Letters:
    """Return the letters that a request brings. Raises BadLettersError."""
    given = request.get("letters")
    if given is None:
        return NO_LETTERS
    from pycore.lettering.letters import read

    try:
        return read(given)
    except ValueError:
        raise BadLettersError from None


def _texts(request: Mapping[str, Any]) -> tuple[str, ...]:
    form, roll = request.get("form"), request.get("roll")
    texts = texts_by_hand(form) if isinstance(form, dict) else ()
    if not isinstance(roll, str) or roll.isascii():
        return texts
    from pycore.pages.class_set import names_of  # Only such a list needs it before its page is asked.

    return (*texts, *names_of(roll))


def lacking(request: Mapping[str, Any]) -> dict[str, Any] | None:
    """Return the reply that asks for letters to be shaped first; None where none are lacking."""
    texts = [text for text in _texts(request) if not own(text)] if request.get("do") in SETS else []
    if not texts:
        return None
    from pycore.lettering.letters import unknown

    pieces = unknown(letters_of(request), texts)
    if not pieces:
        return None
    return {
        "ok": False, "errors": [], "announce": "",
        "unlettered": [
            {"key": one.key, "text": one.text, "script": one.script, "rtl": one.level % 2 == 1} for one in pieces
        ],
    }  # fmt: skip
