"""The regions of an answer."""

from collections.abc import Iterable, Mapping

from pycore.render.answer import answer_html, front_html, sheet_html, view_html
from pycore.render.elements import Markup
from pycore.render.workings import workings_html
from pycore.sums.answer import Answer

PARTS = ("answer", "sheet", "view", "workings")


def regions_of(
    answer: Answer, parts: Iterable[str] = PARTS, inks: Mapping[str, str] | None = None
) -> dict[str, Markup]:
    """Return the HTML of the requested regions by name; equal answers give equal bytes on every machine.

    ``inks``: by sample name (``i1``, ``sum`` ...), the ink of its line. Raises ValueError for an unknown region.
    """
    regions: dict[str, Markup] = {}
    for name in parts:
        if name == "answer":
            regions[name] = answer_html(answer, inks or {})
        elif name == "sheet":
            regions[name] = sheet_html(answer)
        elif name == "view":
            regions[name] = view_html(answer)
        elif name == "front":
            regions[name] = front_html(answer)
        elif name == "workings":
            regions[name] = workings_html(answer)
        else:
            raise ValueError(f"no page has a region called {name!r}")
    return regions
