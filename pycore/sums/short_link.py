"""The link in the QR code of a problem sheet that has a code: the code, and what the code alone would not open.

A short text has large modules, which a camera reads from farther away. Whoever opens it gets the values of the code,
the choices of the sheet that are not those of its code, and the sheet of the problem, its answer held back.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from pycore.forms.fields import VALUE_GROUPS, VERSION, Field
from pycore.forms.opening import ReopenInfo

CODE, SHEET, PROBLEM = "code", "sheet", "problem"
LEFT_OUT = (CODE, SHEET)
"""What stands at the end of the link, whatever the form has."""


def form_of_code(page: Any, opening: ReopenInfo, code: str) -> Mapping[str, str]:
    """Return the form that the code printed on a sheet opens by itself; empty where no QR code is wanted, or where the
    code brings no values of this page."""
    issue = opening.issue
    written = code if issue is None else "" if issue.question else issue.code
    if not (opening.code and opening.reachable and written):
        return {}
    # Only a sheet with a code needs it; the first answer need not wait for its import.
    from pycore.practice import codes
    from pycore.practice.generator import NoProblemError

    try:
        read = codes.read(written)
        form: dict[str, str] = page.practice_form(read) if read.topic == page.topic else {}
    except (codes.CodeError, NoProblemError):
        return {}
    return form


def short_link(
    typed: Mapping[str, str], fields: Iterable[Field], opened: Mapping[str, str], code: str
) -> tuple[tuple[str, str], ...]:
    """Return the link pairs that open a form by its code; () where the form has other values than the code.

    ``typed``: the form; ``opened``: the form that the code opens by itself, empty where it opens none.
    """
    pairs = [("v", VERSION)]
    for field in fields:
        own = typed.get(field.name, field.default).strip()
        if field.private or field.name in LEFT_OUT or own == opened.get(field.name, field.default).strip():
            continue
        if field.group in VALUE_GROUPS:
            return ()
        pairs.append((field.name, own))
    return (*pairs, (SHEET, PROBLEM), (CODE, code)) if opened else ()
