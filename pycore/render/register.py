"""The register as HTML, and the replies to its requests: papers come with each request and stay on the device."""

from collections.abc import Iterator, Mapping
from typing import Any

from pycore.forms.conventions import MARKS
from pycore.forms.links import USUAL
from pycore.pages import register as page
from pycore.pages.class_job import Job
from pycore.pages.register import LearnerMarks, Register
from pycore.practice import tables
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.words import paper_marks as mark_words
from pycore.words import register as words

Reply = tuple[dict[str, Any], bytes | None]
FIELDS = ()
LONGEST = USUAL
HEADS = {"group": words.GROUP, "learner": words.LEARNER, "mistake": words.MISTAKE, "total": words.TOTAL,
         "average": words.AVERAGE, **words.TABLE_HEADS}  # fmt: skip


def _head(first: str, register: Register, last: str = "") -> Markup:
    """Return the head of a table: each paper's title above its day."""
    papers = [
        h("th", {"scope": "col"}, paper.title, h("span", {"class": "day"}, paper.day)) for paper in register.papers
    ]
    end = h("th", {"scope": "col"}, last) if last else None
    return h("thead", None, h("tr", None, h("th", {"scope": "col"}, first), papers, end))


def _cell(own: LearnerMarks | None, whole: int) -> Markup:
    """Return a learner's marks of one paper; below them what is not marked yet."""
    if own is None:
        return h("td", None, words.NOTHING)
    missing = h("span", {"class": "day"}, words.not_marked(own.missing)) if own.missing else None
    return h("td", None, mark_words.marked_of(*own.marks, own.of, whole), missing)


def _register_html(register: Register) -> Markup:
    rows = [
        h("tr", None, h("th", {"scope": "row"}, row.name),
          [_cell(own, paper.of) for own, paper in zip(row.papers, register.papers, strict=True)],
          h("td", {"class": "total"}, mark_words.of_total(*row.total, row.of),
            h("span", {"class": "day"}, words.per_cent(row.per_cent))))
        for row in register.learners()
    ]  # fmt: skip
    averages = [h("td", None, words.per_cent(paper.average)) for paper in register.papers]
    rows.append(h("tr", {"class": "average"}, h("th", {"scope": "row"}, words.AVERAGE), averages, h("td", None, "")))
    mistakes = [
        h("tr", None, h("th", {"scope": "row"}, name), [h("td", None, str(count) if count else "") for count in counts])
        for name, counts in register.mistakes()
    ]
    marks_table = h("table", {"class": "register"}, _head(words.LEARNER, register, words.TOTAL), h("tbody", None, rows))
    named = f"{words.GROUP}: {register.group}" if register.group else words.NO_GROUP
    parts = [h("h2", None, named), h("p", {"class": "help"}, words.MARKS_NOTE),
             _scrolled(f"{words.MARKS}: {named}", marks_table)]  # fmt: skip
    if mistakes:
        table = h("table", {"class": "register"}, _head(words.MISTAKE, register), h("tbody", None, mistakes))
        parts += [h("h3", None, words.MISTAKES), h("p", {"class": "help"}, words.MISTAKES_NOTE),
                  _scrolled(f"{words.MISTAKES}: {named}", table)]  # fmt: skip
    papers = [
        h("li", None, h("span", None, words.paper_line(paper.title, paper.code, len(paper.marks))),
          h("button", {
              "type": "button", "class": "plain", "data-do": "erase", "data-code": paper.code,
              "data-group": paper.group, "aria-label": f"{words.ERASE}: {paper.title}, {paper.code}",
          }, words.ERASE))
        for paper in register.papers
    ]  # fmt: skip
    return h("section", None, parts, h("h3", None, words.PAPERS), h("ul", {"class": "register-papers"}, papers))


def _scrolled(label: str, table: Markup) -> Markup:
    """Return a table that may be wider than a phone."""
    marks: Marks = {"class": "wide-table", "role": "region", "aria-label": label, "tabindex": 0}
    return h("div", marks, table)


def register_html(registers: tuple[Register, ...]) -> Markup:
    """Return the registers of all groups; a sentence where there is none."""
    return join([_register_html(one) for one in registers]) if registers else h("p", None, words.EMPTY)


def answer(_form: Mapping[str, str], request: Mapping[str, Any]) -> Reply:
    """Return the register of the papers in a request."""
    registers = page.read(request.get("papers"))
    return {"ok": True, "regions": {"register": str(register_html(registers))}, "announce": "", "errors": []}, None


def share(_form: Mapping[str, str], _request: Mapping[str, Any]) -> dict[str, Any]:
    """Return a refusal: a register is in no link."""
    return {"ok": False, "errors": [], "announce": ""}


def job(_form: Mapping[str, str], request: Mapping[str, Any]) -> Job:
    """Return the job that writes the register as a table."""

    def steps() -> Iterator[tuple[str, float]]:
        yield "", 1.0

    def result() -> Reply:
        # Separated as the college's other tables are, so that one spreadsheet opens all.
        college = request.get("college")
        chosen = college.get("decimal") if isinstance(college, dict) else ""
        mark = MARKS["comma" if chosen == "comma" else "point"]
        text = tables.write(page.table(page.read(request.get("papers")), HEADS), mark)
        file = {"filename": words.TABLE_FILE, "type": "text/csv;charset=utf-8"}
        return {**file, "told": words.told(tables.separator(mark))}, text.encode()

    return Job(steps(), result)


def main_html() -> Markup:
    """Return the page before the script has looked at what is kept."""
    choose: Marks = {"type": "file", "id": "f-register", "accept": ".json,application/json", "class": "away",
                     "data-register-file": True}  # fmt: skip
    label = h("label", {"for": "f-register", "class": "plain"}, words.LOAD)
    file = h("p", {"class": "file"}, h("input", choose), label)
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": do}, label)
        for do, label in {"save-table": words.SAVE_TABLE, "save-file": words.SAVE_FILE}.items()
    ]
    undo = h("button", {"type": "button", "class": "plain", "data-do": "undo", "hidden": True}, words.UNDO)
    said: Marks = {"class": "said", "role": "status", "data-said": True, "data-erased": words.ERASED,
                   "data-back": words.BACK, "data-loaded": words.LOADED, "data-bad-file": words.BAD_FILE}  # fmt: skip
    noscript = h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
    row = h("div", {"class": "row"}, undo, buttons, file, link_to_kept("../"))
    # What a press has done stands above the buttons: Undo has the focus, and with it both are in view.
    return join(noscript, h("div", {"data-region": "register"}, register_html(())), h("p", said), row,
                h("p", {"class": "help"}, words.HELP, " ", keeps_html(words.HOW_LONG)))  # fmt: skip
