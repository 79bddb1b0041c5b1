"""Marking a question paper as HTML: the field for pasted answers, each learner's marks, each line, the mistakes."""

from collections.abc import Iterator, Mapping
from typing import Any

from pycore.errors import Fault, InputError
from pycore.pages.class_job import Job
from pycore.pages.question_paper import QuestionPaper
from pycore.pages.question_paper_marks import (
    MOST_LINES,
    Choice,
    LearnerTotal,
    PaperMarking,
    QuestionMarks,
    Settled,
    marking_of,
)
from pycore.practice import tables
from pycore.practice.part_marks import Range, added
from pycore.render.class_marks import LONGEST_RESULTS
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.render.to_register import LINK as TO_REGISTER
from pycore.render.to_register import ask_html
from pycore.sheet import tally
from pycore.words import paper_marks as words
from pycore.words import register as register_words
from pycore.words.inputs import too_much_text
from pycore.words.marks import MORE_ANSWERS, REFUSED, saved
from pycore.writers import svg


def _table(
    kind: str, title: str, heads: tuple[str, ...], rows: list[Markup], about: Markup | None = None
) -> Markup:
    head = h("thead", None, h("tr", None, [h("th", {"scope": "col"}, name) for name in heads]))
    return join(h("h3", None, title), about, h("table", {"class": f"paper-marks {kind}"}, head, h("tbody", None, rows)))


def _line(one: QuestionMarks, worth: Mapping[str, int]) -> Markup:
    """Return one line: who, which question, what was typed, the marks with the choice of a range, what was found."""
    of = added(worth.values())
    parts = ", ".join(words.part_marks(key, *marks, worth[key]) for key, marks in one.marks if marks[0] < worth[key])
    found = "; ".join(text for text in (*one.remarks, parts) if text) or words.ALL_RIGHT
    typed = "; ".join(text for text in one.given if text)
    cells = (words.learner(one.place, one.name), str(one.question), typed, join(_marks(one, worth, of)), found)
    return h("tr", None, [h("td", {"data-head": head}, cell) for head, cell in zip(words.HEAD, cells, strict=True)])


def _marks(one: QuestionMarks, worth: Mapping[str, int], of: int) -> Iterator[Markup | str]:
    """Return the marks of a line; of a range, what can be chosen: all marks together, or those of single parts."""
    yield words.of_total(*one.total, of)
    who = words.of_question(one.place, one.name, one.question)
    whole = one.chosen_from or one.total
    if whole[0] < whole[1]:
        yield _choice(one, words.CHOOSE, who, whole, of, one.total[0] if one.chosen_from else None)
    parts = [
        h("div", {"class": "part"}, words.part_marks(key, *now, worth[key]),
          _choice(one, words.PARTS[key], f"{who}, {words.PARTS[key]}", marks, worth[key],
                  now[0] if key in one.parts_chosen_from else None, key))
        for key, now in one.marks
        if (marks := one.parts_chosen_from.get(key, now))[0] < marks[1]
    ]  # fmt: skip
    if parts:
        kept = f"by-part-{one.place}-{one.question}"
        yield h("details", {"class": "more by-part", "open": bool(one.parts_chosen_from), "data-keep": kept},
                h("summary", None, words.BY_PART), parts)  # fmt: skip


def _choice(
    one: QuestionMarks, name: str, who: str, marks: Range, of: int, chosen: int | None, part: str | None = None
) -> Markup:
    """Return a button for each number of a range: of the marks of ``part``, None: of the whole line."""
    known: Marks = {"class": "settle", "role": "group", "aria-label": name, "data-place": one.place,
                    "data-question": one.question, "data-part": part, "data-drawn": one.given[0],
                    "data-calculated": one.given[1]}  # fmt: skip
    buttons = [
        h("button", {
            "type": "button", "class": "plain", "data-do": "settle", "data-marks": count,
            "aria-pressed": "true" if count == chosen else "false", "aria-label": words.settle(who, count, of),
        }, count)
        for count in range(marks[0], marks[1] + 1)
    ]  # fmt: skip
    return h("span", known, buttons)


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
    refused = _refused(marking) if marking.refused else None
    counted = h("p", {"class": "counted"}, words.counted(len(marking.results), len(marking.refused)))
    if not marking.results:
        return join(counted, refused)
    totals = [_total(place, one, paper.total) for place, one in marking.totals().items()]
    absent = marking.without_marks()
    worth = {one.number: dict(one.marks) for one in paper.questions}
    lines = [_line(one, worth[one.question]) for one in marking.results]
    open_ranges = [one for one in marking.results if one.total[0] < one.total[1]]
    return join(
        counted, refused, _table("totals", words.TOTALS, words.TOTALS_HEAD, totals),
        h("p", None, words.without_marks(absent)) if absent else None, _chart(marking),
        _table("lines", words.LINES, words.HEAD, lines,
               _to_choose(len(open_ranges)) if open_ranges else None),
    )  # fmt: skip


def _to_choose(count: int) -> Markup:
    """Return how many ranges are open, with the buttons that choose from all of them."""
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": "settle-all", "data-end": end}, label)
        for end, label in {"least": words.LEAST, "most": words.MOST}.items()
    ]
    return join(h("p", {"class": "help"}, words.to_choose(count)), h("div", {"class": "row"}, buttons))


def _total(place: int, one: LearnerTotal, whole: int) -> Markup:
    cells = (words.learner(place, one.name), words.marked_of(*one.marks, one.of, whole), words.not_marked(one.missing))
    named = zip(words.TOTALS_HEAD, cells, strict=True)
    return h("tr", None, [h("td", {"data-head": head}, cell) for head, cell in named])


def _refused(marking: PaperMarking) -> Markup:
    """Return the lines that could not be used, each with a button that shows it among the answers."""
    lines = [
        h("li", None, one.why, " ",
          h("button", {"type": "button", "class": "plain", "data-do": "show-line", "data-line": one.line},
            words.show_line(one.line)))
        for one in marking.refused
    ]  # fmt: skip
    return h("section", {"class": "refused"}, h("h3", None, REFUSED), h("ul", {"class": "notices"}, lines))


def _settled(request: Mapping[str, Any]) -> Settled:
    """What a person chose from ranges, as the page keeps it: lists of place, question, marks (of all parts together,
    or by part) and both answers."""
    found: dict[tuple[int, int], Choice] = {}
    listed = request.get("settled")
    for one in listed[:MOST_LINES] if isinstance(listed, list) else []:
        if not isinstance(one, dict):
            continue
        place, question, marks = one.get("place"), one.get("question"), one.get("marks")
        drawn, calculated = one.get("drawn"), one.get("calculated")
        if isinstance(place, int) and isinstance(question, int) and isinstance(drawn, str):
            parts = one.get("parts")
            counts = parts.items() if isinstance(parts, dict) else ()
            by_part = {key: count for key, count in counts if isinstance(count, int)}
            total = marks if isinstance(marks, int) else None
            found[place, question] = Choice((drawn, str(calculated)), total, by_part)
    return found


def marks_job(paper: QuestionPaper, request: Mapping[str, Any]) -> Job:
    """Return the job that marks a pasted table. Raises InputError."""
    pasted = request.get("results")
    text = pasted if isinstance(pasted, str) else ""
    if len(text) > LONGEST_RESULTS:
        raise InputError(Fault("results", "", too_much_text(LONGEST_RESULTS, MORE_ANSWERS)))
    marking = marking_of(paper, text, _settled(request))

    def result() -> tuple[dict[str, Any], bytes | None]:
        summary = words.counted(len(marking.results), len(marking.refused))
        reply = {
            "regions": {"marks": str(marks_html(marking))}, "announce": summary,
            "told": saved(tables.separator(marking.mark)), "filename": words.FILE, "type": "text/csv;charset=utf-8",
            "entry": marking.entry(), "count": len(marking.refused), "unread": marking.unread,
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
    names = {"mark": words.MARK, "register": register_words.ADD, "save-marks": words.SAVE, "erase-results": words.ERASE}
    later = ("register", "save-marks")
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": do, "hidden": do in later}, label)
        for do, label in names.items()
    ]
    texts: Marks = {"class": "said", "data-marks-said": True, "data-erased": words.ERASED, "data-old": words.OLD,
                    "data-added": register_words.ADDED, "data-added-open": words.ADDED_OPEN,
                    "data-other": words.OTHER_PAPER}  # fmt: skip
    about = h("p", {"class": "help", "id": "h-results"}, words.RESULTS_HELP, " ", keeps_html(words.STAYS))
    field = h("div", {"class": "field"}, h("label", {"for": "results"}, words.RESULTS), area, message, about)
    row = h("div", {"class": "row"}, buttons, TO_REGISTER, link_to_kept("../"))
    more = h("details", {"class": "more"}, h("summary", None, words.MORE_ABOUT),
             h("ul", None, [h("li", None, line) for line in words.ABOUT]))  # fmt: skip
    return join(h("h2", {"id": "mark-papers", "tabindex": -1}, words.TITLE), h("p", None, words.LEAD), more, field, row,
                ask_html(words.OPEN), h("p", texts))  # fmt: skip
