"""Which part of a page shows what of an answer."""

from collections.abc import Iterable, Mapping

from pycore.render.answer import answer_html, sheet_html, view_html
from pycore.render.elements import Markup
from pycore.render.workings import workings_html
from pycore.sums.answer import Answer

PARTS = ("answer", "sheet", "view", "workings")


def regions_of(
    answer: Answer, parts: Iterable[str] = PARTS, inks: Mapping[str, str] | None = None
) -> dict[str, Markup]:
    """The HTML of the asked regions, by name; equal answers give equal bytes in every host.

    ``inks``: by sample name (``i1``, ``sum`` ...), the ink of its line. Raises ValueError for
    a region that no page has.
    """
    made: dict[str, Markup] = {}
    for part in parts:
        if part == "answer":
            made[part] = answer_html(answer, inks or {})
        elif part == "sheet":
            made[part] = sheet_html(answer)
        elif part == "view":
            made[part] = view_html(answer)
        elif part == "workings":
            made[part] = workings_html(answer)
        else:
            raise ValueError(f"no page has a region called {part!r}")
    return made
