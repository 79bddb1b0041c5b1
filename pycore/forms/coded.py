"""The form that a code fills: the defaults of the time when its generator was the newest, for ever."""

from collections.abc import Iterable, Mapping

from pycore.forms.fields import Field, default_form
from pycore.practice.codes import Code

LINKS_OF: Mapping[int, str] = {1: "2", 2: "3"}
"""The version of the links whose defaults the codes of a generator have: its sheets are printed at their scales."""


def form_before(code: Code, fields: Iterable[Field]) -> dict[str, str]:
    """Return the form of a page before a code's values are filled in."""
    return default_form(fields, LINKS_OF[code.generator])
