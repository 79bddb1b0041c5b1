"""Marking a class as HTML: the field for pasted answers, the table of verdicts, the summary with its chart."""

from collections.abc import Mapping
from typing import Any

from pycore.errors import Fault, InputError
from pycore.pages import class_marks as page
from pycore.pages.class_job import Job
from pycore.pages.class_marks import MarkingRun
from pycore.pages.class_set import ClassSet
from pycore.pages.class_table import MarkedLine, RefusedLine
from pycore.practice import tables
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.render.to_register import LINK as TO_REGISTER
from pycore.render.to_register import ask_html
from pycore.sheet import tally
from pycore.words import class_set as class_words
from pycore.words import marks as words
from pycore.words import pile as pile_words
from pycore.words import register as register_words
from pycore.words.inputs import too_much_text
from pycore.writers import svg

LONGEST_RESULTS = 1_000_000
"""Characters: 2,000 lines of 500. The page sends one more of a longer text, so that it is refused and never cut."""
SHAPES = {
    "accept": {"d": "M2 9L7 14L16 3", "class": "shape-line"},
    "look": {"d": "M9 1.5L16.5 9L9 16.5L1.5 9Z", "class": "shape-line"},
    "wrong": {"d": "M3 3L15 15M15 3L3 15", "class": "shape-line"},
}
"""A tick, an open diamond, a cross: they can be told apart without colour."""


def verdict_html(band: str) -> Markup:
    """A band as shape and word."""
    marks: Marks = {"class": "shape", "viewBox": "0 0 18 18", "width": 18, "height": 18, "aria-hidden": "true",
                    "focusable": "false"}  # fmt: skip
    return h("span", {"class": "band", "data-band": band}, h("svg", marks, h("path", dict(SHAPES[band]))),
             words.BANDS[band])  # fmt: skip


def _given(one: MarkedLine) -> str:
    cells = one.cells
    angle = cells.get("answer-angle", "").removesuffix("°")
    typed_side = cells.get("answer-side", "").lower()
    side = words.SIDES.get(typed_side, typed_side)
    return ", ".join(
        fragment for fragment in (cells["answer"], f"{angle}° {side}".strip() if angle else "") if fragment
    )


def _row(one: MarkedLine, of: int) -> Markup:
    head = words.HEAD
    learner = join(h("strong", None, one.name), " " if one.name else None, h("span", {"class": "code"}, one.code))
    remarks = "; ".join(fragment for fragment in (one.verdict, *one.remarks) if fragment)
    cells = (
        h("td", {"data-head": head[0]}, learner),
        h("td", {"data-head": head[1]}, _given(one)),
        h("td", {"data-head": head[2]}, verdict_html(one.band)),
        h("td", {"data-head": head[3]}, remarks),
        h("td", {"data-head": head[4]}, words.marks(*one.marks, of), _by_step(one, of)),
    )
    return h("tr", None, cells)


def _by_step(one: MarkedLine, of: int) -> Markup | None:
    """Return how a line's marks fall on its steps, where it has some but not all of them."""
    if not one.by_step or one.marks in ((0, 0), (of, of)):
        return None
    return h("p", {"class": "by-step"}, words.by_step(one.by_step))


def _table(marking: MarkingRun) -> Markup:
    of = len([0 for worth in marking.group.marks for _ in range(worth)])
    head = h("thead", None, h("tr", None, [h("th", {"scope": "col"}, name) for name in words.HEAD]))
    return h("table", {"class": "verdicts"}, head, h("tbody", None, [_row(one, of) for one in marking.results]))


def _chart(marking: MarkingRun) -> Markup | None:
    counted = marking.summary()
    if not counted:
        return None
    description = "; ".join(f"{label}: {sure} + {perhaps}" for label, sure, perhaps in counted)
    drawing = Markup.trusted(
        svg.write(tally.chart(counted, words.SUMMARY, description), prefix="tally", role="view", view="small")
    )
    return h("section", {"class": "tally"}, h("h3", None, words.SUMMARY), h("p", {"class": "help"}, words.SUMMARY_NOTE),
             drawing)  # fmt: skip


def _refused(one: RefusedLine) -> Markup:
    """Return a line that could not be used; where its code is like one of the set, a button that takes that."""
    if not one.meant:
        return h("li", None, one.why)
    marks: Marks = {"type": "button", "class": "plain", "data-do": "take-code", "data-line": one.line,
                    "data-typed": one.typed, "data-code": one.meant}  # fmt: skip
    return h("li", None, one.why, " ", h("button", marks, words.take(one.meant)))


def marks_html(marking: MarkingRun) -> Markup:
    """Return the summary, then each line's verdict, then the lines that could not be used."""
    refused = None
    if marking.refused:
        lines = h("ul", {"class": "notices"}, [_refused(line) for line in marking.refused])
        refused = h("section", None, h("h3", None, words.REFUSED), lines)
    counted = h("p", {"class": "counted"}, words.counted(*marking.counts(), len(marking.refused)))
    return join(counted, refused, _chart(marking), _table(marking) if marking.results else None)


def marks_job(group: ClassSet, request: Mapping[str, Any]) -> Job:
    """Return the job that marks a pasted table. Raises InputError."""
    pasted = request.get("results")
    text = pasted if isinstance(pasted, str) else ""
    if len(text) > LONGEST_RESULTS:
        raise InputError(Fault("results", "", too_much_text(LONGEST_RESULTS, words.MORE_ANSWERS)))
    marking = MarkingRun(group, page.read_results(text, group))

    def result() -> tuple[dict[str, Any], bytes | None]:
        file = {"filename": words.FILE, "type": "text/csv;charset=utf-8"}
        summary = words.counted(*marking.counts(), len(marking.refused))
        told = words.saved(tables.separator(marking.mark))
        reply = {"regions": {"marks": str(marks_html(marking))}, "announce": summary, "told": told, **file,
                 "count": len(marking.refused)}  # fmt: skip
        entry, left = marking.entry()
        reply |= {"left": left, "unread": marking.unread} | ({} if entry is None else {"entry": entry})
        return reply, marking.table()

    return Job(marking.steps(), result)


def paste_html() -> Markup:
    """Return the field where answers are typed or pasted, with its buttons."""
    area = h("textarea", {
        "id": "results", "rows": 8, "autocomplete": "off", "spellcheck": "false", "data-results": True,
        "data-longest": LONGEST_RESULTS, "data-file": words.TYPED_FILE,
        "placeholder": words.EXAMPLE, "aria-describedby": "h-results m-results",
    })  # fmt: skip
    message = h("p", {"class": "message", "id": "m-results", "data-message-for": "results", "hidden": True})
    names = {"mark": words.MARK, "register": register_words.ADD, "save-marks": words.SAVE,
             "save-results": words.SAVE_TYPED, "erase-results": words.ERASE}  # fmt: skip
    later = ("register", "save-marks")
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": do, "hidden": do in later}, label)
        for do, label in names.items()
    ]
    texts: Marks = {
        "class": "said", "data-marks-said": True, "data-erased": words.ERASED, "data-old": words.OLD,
        "data-added": register_words.ADDED, "data-added-open": words.ADDED_OPEN,
    }  # fmt: skip
    return join(
        h("h2", None, words.TITLE), h("p", None, words.LEAD),
        h("p", None, h("a", {"href": f"../{pile_words.SLUG}/"}, words.BY_PHOTOGRAPH)),
        h("div", {"class": "field"}, h("label", {"for": "results"}, words.RESULTS), area, message,
          h("p", {"class": "help", "id": "h-results"}, words.RESULTS_HELP, " ",
            keeps_html(class_words.STAYS))),
        h("div", {"class": "row"}, buttons, TO_REGISTER, link_to_kept("../")), ask_html(words.OPEN), h("p", texts),
    )  # fmt: skip
