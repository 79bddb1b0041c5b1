"""Marking a question paper as HTML: the field for pasted answers, each learner's marks, each line, the mistakes."""

from collections.abc import Mapping
from typing import Any

from pycore.errors import Fault, InputError
from pycore.pages.class_job import Job
from pycore.pages.question_paper import QuestionPaper
from pycore.pages.question_paper_marks import PaperMarking, QuestionMarks, marking_of
from pycore.practice import tables
from pycore.practice.part_marks import added
from pycore.render.class_marks import LONGEST_RESULTS
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.this_device import link_html as link_to_kept
from pycore.sheet import tally
from pycore.words import paper_marks as words
from pycore.words import register as register_words
from pycore.words.inputs import too_much_text
from pycore.words.marks import MORE_ANSWERS, REFUSED, saved
from pycore.words.question_paper import question
from pycore.writers import svg


def _table(kind: str, title: str, heads: tuple[str, ...], rows: list[Markup]) -> Markup:
    head = h("thead", None, h("tr", None, [h("th", {"scope": "col"}, name) for name in heads]))
    return join(h("h3", None, title), h("table", {"class": f"paper-marks {kind}"}, head, h("tbody", None, rows)))


def _line(one: QuestionMarks, worth: Mapping[str, int]) -> Markup:
    of = added(worth.values())
    parts = ", ".join(words.part_marks(key, *marks, worth[key]) for key, marks in one.marks if marks[1] < worth[key]
                      or marks[0] < worth[key])  # fmt: skip
    found = "; ".join(text for text in (*one.remarks, parts) if text)
    cells = (words.learner(one.place, one.name), question(one.question), words.of_total(*one.total, of), found)
    return h("tr", None, [h("td", {"data-head": head}, cell) for head, cell in zip(words.HEAD, cells, strict=True)])


def _chart(marking: PaperMarking) -> Markup | None:
    counted = [(label, count, 0) for label, count in marking.counted()]
    if not counted:
        return None
    description = "; ".join(f"{label}: {count}" for label, count, _ in counted)
    drawing = svg.write(tally.chart(counted, words.MISTAKES, description), prefix="tally", role="view", view="small")
    return h("section", {"class": "tally"}, h("h3", None, words.MISTAKES), Markup.trusted(drawing))


def marks_html(marking: PaperMarking) -> Markup:
    """Return how many lines were marked, those that could not be used, each learner's marks, and every line."""
    paper = marking.paper
    refused = None
    if marking.refused:
        lines = h("ul", {"class": "notices"}, [h("li", None, line) for line in marking.refused])
        refused = h("section", None, h("h3", None, REFUSED), lines)
    totals = [
        h("tr", None, h("td", None, words.learner(place, name)), h("td", None, words.of_total(*marks, paper.total)))
        for place, (name, marks, _) in marking.totals().items()
    ]  # fmt: skip
    worth = {one.number: dict(one.marks) for one in paper.questions}
    lines_html = [_line(one, worth[one.question]) for one in marking.results]
    counted = h("p", {"class": "counted"}, words.counted(len(marking.results), len(marking.refused)))
    if not marking.results:
        return join(counted, refused)
    return join(
        counted, refused, _table("totals", words.TOTALS, words.TOTALS_HEAD, totals), _chart(marking),
        _table("lines", words.LINES, words.HEAD, lines_html),
    )  # fmt: skip


def marks_job(paper: QuestionPaper, request: Mapping[str, Any]) -> Job:
    """Return the job that marks a pasted table. Raises InputError."""
    pasted = request.get("results")
    text = pasted if isinstance(pasted, str) else ""
    if len(text) > LONGEST_RESULTS:
        raise InputError(Fault("results", "", too_much_text(LONGEST_RESULTS, MORE_ANSWERS)))
    marking = marking_of(paper, text)

    def result() -> tuple[dict[str, Any], bytes | None]:
        summary = words.counted(len(marking.results), len(marking.refused))
        reply = {
            "regions": {"marks": str(marks_html(marking))}, "announce": summary,
            "told": saved(tables.separator(marking.mark)), "filename": words.FILE, "type": "text/csv;charset=utf-8",
            "entry": {
                "paper": str(paper.code()), "title": paper.texts["title"], "group": paper.texts["group"],
                "of": paper.total, "marks": marking.entries(),
            },
        }  # fmt: skip
        return reply, marking.table()

    return Job(marking.steps(), result)


def paste_html() -> Markup:
    """Return the field where answers are typed or pasted, with its buttons."""
    area = h("textarea", {
        "id": "results", "rows": 8, "autocomplete": "off", "spellcheck": "false", "data-results": True,
        "data-longest": LONGEST_RESULTS, "placeholder": words.EXAMPLE, "aria-describedby": "h-results m-results",
    })  # fmt: skip
    message = h("p", {"class": "message", "id": "m-results", "data-message-for": "results", "hidden": True})
    names = {"mark": words.MARK, "register": words.REGISTER, "save-marks": words.SAVE, "erase-results": words.ERASE}
    later = ("register", "save-marks")
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": do, "hidden": do in later}, label)
        for do, label in names.items()
    ]
    to_register = h("a", {"href": f"../{register_words.SLUG}/"}, register_words.TITLE)
    texts: Marks = {"class": "said", "data-marks-said": True, "data-erased": words.ERASED, "data-old": words.OLD,
                    "data-added": words.ADDED}  # fmt: skip
    about = h("p", {"class": "help", "id": "h-results"}, words.RESULTS_HELP)
    field = h("div", {"class": "field"}, h("label", {"for": "results"}, words.RESULTS), area, message, about)
    row = h("div", {"class": "row"}, buttons, to_register, link_to_kept("../"))
    return join(h("h2", None, words.TITLE), h("p", None, words.LEAD), field, row, h("p", texts))
