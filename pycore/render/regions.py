"""The regions of an answer."""

from collections.abc import Iterable, Mapping

from pycore.render.answer import (
    answer_html,
    figures_html,
    front_html,
    kinds_html,
    notes_html,
    problem_sheet_html,
    results_html,
    sheet_html,
    view_html,
)
from pycore.render.checking import task_html
from pycore.render.elements import Markup
from pycore.render.workings import workings_html
from pycore.sums.answer import PROBLEM_SHEET, Answer

PARTS = ("answer", "sheet", "view", "workings")


def regions_of(
    answer: Answer, parts: Iterable[str] = PARTS, inks: Mapping[str, str] | None = None
) -> dict[str, Markup]:
    """Return the HTML of the requested parts by region; equal answers give equal bytes on every machine.

    The part ``answer`` has the regions ``notes``, ``results`` and ``figures`` beside its own, ``sheet`` has ``kinds``,
    ``check`` has ``task``; ``problem-sheet`` shows the sheet of an answer that was asked for as a problem's.
    ``inks``: by sample name (``i1``, ``sum`` ...), the ink of its line. Raises ValueError for an unknown part.
    """
    regions: dict[str, Markup] = {}
    for name in parts:
        if name == "answer":
            regions[name] = answer_html(answer, inks or {})
            regions |= {"notes": notes_html(answer), "results": results_html(answer), "figures": figures_html(answer)}
        elif name == "sheet":
            regions |= {name: sheet_html(answer), "kinds": kinds_html(answer)}
        elif name == PROBLEM_SHEET:
            regions[name] = problem_sheet_html(answer)
        elif name == "view":
            regions[name] = view_html(answer)
        elif name == "front":
            regions[name] = front_html(answer)
        elif name == "check" and answer.answer_request:
            regions["task"] = task_html(answer.answer_request)
        elif name == "workings":
            regions[name] = workings_html(answer)
        else:
            raise ValueError(f"no page has a region called {name!r}")
    return regions
