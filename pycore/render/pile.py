"""A pile of photographs as HTML: rows come with each request and stay on the device."""

from collections.abc import Iterator, Mapping
from typing import Any

from pycore.forms.links import USUAL
from pycore.pages import pile as page
from pycore.pages.class_job import Job
from pycore.pages.pile import Pile, PileRow
from pycore.pages.pile_sheet import kept_set
from pycore.practice import tables
from pycore.practice.marking import ACCEPT, LOOK, WRONG
from pycore.render import camera
from pycore.render.all_codes import all_codes_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.render.to_register import ask_html
from pycore.words import camera as camera_words
from pycore.words import marks as class_mark_words
from pycore.words import paper_marks as mark_words
from pycore.words import pile as words
from pycore.words import question_paper as paper_words
from pycore.words import register as register_words
from pycore.words.verdict import capital

Reply = tuple[dict[str, Any], bytes | None]
FIELDS = ()
LONGEST = USUAL


# The table.


def _result(row: PileRow) -> str:
    drawing = row.drawing
    if drawing is None:
        return ""
    if not drawing.found:
        return words.NOT_FINISHED
    if drawing.band == ACCEPT:
        return words.RIGHT
    if drawing.band == WRONG and drawing.parts[1] == ACCEPT:
        return words.DIRECTION_OFF
    said = words.look_again if drawing.band == LOOK else words.off_by
    return said(drawing.off, drawing.unit)


def _said(row: PileRow) -> str:
    """Return what a person has to know of a row; "" for one that is judged."""
    if row.fault:
        return row.fault
    if row.state == "fault":
        if row.said == "pdf" and row.unread:
            return words.pages_not_read(row.unread)
        return words.FAULTS.get(row.said, row.said)
    return words.STATES.get(row.state, "")


def _why_looked_at(row: PileRow) -> str:
    """Return why a person has to choose the marks of a judged drawing; "" where nobody has to."""
    drawing = row.drawing
    if row.state != "judged" or drawing is None or row.paper or row.marks[0] == row.marks[1]:
        return ""
    if drawing.band == LOOK and drawing.parts[0] == WRONG:
        return words.FROM_OWN_STEP
    if drawing.parts == (ACCEPT,) * 3:
        return words.LINES_OFF
    unsure = [name for name, band in zip(words.PARTS_AT_THE_EDGE, drawing.parts, strict=True) if band == LOOK]
    return words.at_the_edge(unsure)


def _who(row: PileRow) -> str:
    who = mark_words.learner(row.place, row.name) if row.place else ""
    return mark_words.of_question(row.place, row.name, row.paper.question.number) if row.paper else who


def _cells(row: PileRow) -> Iterator[Markup]:
    drawing, said = row.drawing, _said(row)
    is_judged = row.state == "judged" and drawing is not None
    found = f"{drawing.found} {drawing.unit}".strip() if is_judged and drawing and drawing.found else ""
    yield h("td", {"data-head": words.HEAD[1]}, _who(row))
    yield h("td", {"data-head": words.HEAD[2], "class": "number"}, found)
    yield h("td", {"data-head": words.HEAD[3], "class": "number"},
            f"{drawing.asked} {drawing.unit}" if is_judged and drawing else "")  # fmt: skip
    if not is_judged:
        yield h("td", {"colspan": 2, "class": "told", "data-head": words.HEAD[4]}, said)
    else:
        strong = drawing is not None and drawing.band != ACCEPT
        yield h("td", {"data-head": words.HEAD[4]}, h("strong", None, _result(row)) if strong else _result(row))
        yield h("td", {"data-head": words.HEAD[5]}, said or "; ".join(drawing.mistakes if drawing else ()))
    mark = mark_words.of_total(*row.marks, row.of) if is_judged else ""
    yield h("td", {"data-head": words.HEAD[6], "class": "number"}, mark,
            h("span", {"class": "day"}, words.ACCEPTED) if row.accepted else None)  # fmt: skip


def _row_html(row: PileRow) -> Markup:
    kind = "accepted" if row.accepted else "asked" if row.is_asked else row.state
    named = row.code or row.file or str(row.number)
    select: Marks = {"type": "button", "class": "row-name", "data-do": "select", "data-row": row.id}
    return h("tr", {"data-row": row.id, "data-kind": kind},
             h("th", {"scope": "row"}, h("button", select, h("span", {"class": "day"}, f"{row.number}"), named)),
             list(_cells(row)))  # fmt: skip


def _scale(pile: Pile) -> Markup:
    """Return a scale with a tick for each photograph, long for those that are to be asked."""
    ticks = [h("i", {"data-kind": "asked" if row in pile.asked else "accepted" if row.accepted else row.state})
             for row in pile.rows]  # fmt: skip
    return h("div", {"class": "pile-scale", "aria-hidden": "true"}, ticks)


def table_html(pile: Pile, request: Mapping[str, Any]) -> Markup:
    """Return how many photographs there are, which set they belong to, and a row for each."""
    if not pile.rows:
        return h("p", {"class": "pile-empty"}, words.EMPTY)
    read = [row for row in pile.rows if row.state not in ("waiting", "reading")]
    about: list[Markup] = []
    if pile.group is not None:
        group = pile.group
        is_kept = kept_set(request.get("set"), request.get("roll")) is group
        said = words.marked_by if is_kept else words.marked_by_default
        line = words.set_line(group.topic.title, str(group.code))
        about = [h("p", {"class": "pile-set"}, line), h("p", {"class": "help"}, said(*group.marks))]
    head = h("thead", None, h("tr", None, [
        h("th", {"scope": "col", "class": "number" if at in (2, 3, 6) else None}, name)
        for at, name in enumerate(words.HEAD)
    ]))  # fmt: skip
    table = h("table", {"class": "register pile"}, head, h("tbody", None, [_row_html(row) for row in pile.rows]))
    scrolled: Marks = {"class": "wide-table", "role": "region", "aria-label": words.TABLE_LABEL, "tabindex": 0}
    counted = words.counted(len(read), len(pile.asked), len(pile.accepted))
    return join(about, h("p", {"class": "pile-counted"}, counted), _scale(pile), h("div", scrolled, table))


# The row in hand.


def _button(do: str, label: str, kind: str = "plain", **more: Any) -> Markup:
    return h("button", {"type": "button", "class": kind, "data-do": do, **more}, label)


def _mark_choice(row: PileRow) -> Markup:
    low, high = row.marks
    options = [h("option", {"value": "", "selected": low != high}, words.ANY_MARK)] if low != high else []
    options += [
        h("option", {"value": mark, "selected": low == high == mark}, f"{mark} {register_words.OF} {row.of}")
        for mark in range(row.of + 1)
    ]
    return h("p", {"class": "pile-mark"}, h("label", {"for": "pile-mark"}, words.MARK),
             h("select", {"id": "pile-mark", "data-settle": row.id, "autocomplete": "off"}, options))  # fmt: skip


def _by_step(row: PileRow) -> Markup | None:
    """Return how the marks fall on the steps, where there are some but not all of them."""
    if row.state != "judged" or not row.by_step or row.marks in ((0, 0), (row.of, row.of)):
        return None
    return h("p", {"class": "help"}, f"{capital(class_mark_words.by_step(row.by_step))}.")


def _code_field(row: PileRow) -> Markup:
    entry = h("input", {"id": "pile-code", "type": "text", "autocomplete": "off", "spellcheck": "false",
                        "maxlength": 40, "data-code-of": row.id, "autocapitalize": "characters"})  # fmt: skip
    return h("div", {"class": "pile-code"}, h("label", {"for": "pile-code"}, words.CODE), entry,
             _button("use-code", words.OPEN_CODE))  # fmt: skip


def question_html(seen: Mapping[str, Any]) -> Markup:
    """Return what is asked of a drawing that was read, with answers of one press: a place by its number in the
    photograph, a reading of the whole, or that the point is not drawn."""
    point, readings = seen["point"], seen["readings"]
    said = words.where(point["label"], point["left"]) if point else seen["why"]
    listed = point["choices"] if point else readings
    answers = [
        _button("choose", words.choice(number, point is not None), **{"data-choice": str(number - 1)})
        for number in range(1, len(listed) + 1)
    ]  # fmt: skip
    if point:
        answers.append(_button("choose", words.NOT_DRAWN, **{"data-choice": "-1"}))
    row = h("div", {"class": "row"}, answers)
    return h("div", {"class": "pile-question"}, h("p", {"class": "pile-told"}, said), row)


def look_html(row: PileRow, result: Markup | None, question: Markup | None = None) -> Markup:
    """Return what is known of the row in hand, and what can be done with it."""
    said = _said(row) or _why_looked_at(row)
    needs_code = row.state == "fault" and not row.page and row.said not in words.NO_SHEET_TO_READ
    is_marked = row.state == "judged" and (row.marks[0] == row.marks[1] or row.paper is not None)
    can_press = bool(row.page) and row.state in ("press", "asked", "judged", "fault")
    pressing = words.PRESS_AGAIN if row.state == "judged" else words.PRESS
    is_first = "first" if row.state == "press" else "plain"
    buttons = [
        _button("press", pressing, is_first) if can_press else None,
        _button("accept", words.ACCEPTED if row.accepted else words.ACCEPT, "plain" if row.accepted else "first",
                **{"aria-pressed": "true" if row.accepted else "false"}) if is_marked else None,
        _button("take-away", words.TAKE_AWAY),
        _button("next", words.NEXT, "plain narrow-only"),
    ]  # fmt: skip
    return join(
        h("h2", {"id": "pile-row", "tabindex": -1}, words.heading(row.number, _who(row), row.code or row.file)),
        h("p", {"class": "pile-told"}, said) if said and question is None else None,
        question,
        _code_field(row) if needs_code else None,
        h("p", {"class": "help"}, words.OF_PAPER) if row.paper is not None else None,
        _mark_choice(row) if row.state == "judged" and row.paper is None else None,
        _by_step(row),
        h("div", {"class": "row"}, buttons), result,
    )  # fmt: skip


# The replies.


def _rows(request: Mapping[str, Any]) -> Reply:
    pile = page.read_pile(request)
    return {
        "ok": True, "errors": [], "announce": "",
        "regions": {"pile": str(table_html(pile, request))},
        "sure": [row.id for row in pile.sure], "asked": [row.id for row in pile.asked],
        "ofPapers": len([row for row in pile.accepted if row.paper]), "rows": len(pile.rows),
        "accepted": len(pile.accepted), "entry": page.entry_of(pile),
    }, None  # fmt: skip


def answer(_form: Mapping[str, str], request: Mapping[str, Any]) -> Reply:
    """Return the table of the rows in a request, and which of them are sure, and which are to be asked."""
    return _rows(request)


def share(_form: Mapping[str, str], _request: Mapping[str, Any]) -> dict[str, Any]:
    """Return a refusal: a pile is in no link."""
    return {"ok": False, "errors": [], "announce": ""}


def job(_form: Mapping[str, str], request: Mapping[str, Any]) -> Job:
    """Return the job that makes the learners' sheets of feedback, or writes the rows as a table: numbers as numbers."""
    pile = page.read_pile(request)
    if request.get("work") == "feedback":
        from pycore.render.pile_feedback import feedback_job  # A part of its own.

        return feedback_job(pile, request)

    def steps() -> Iterator[tuple[str, float]]:
        yield "", 1.0

    def result() -> Reply:
        rows = [list(words.TABLE_HEAD), *(_line(row) for row in pile.rows)]
        file = {"filename": words.FILE, "type": "text/csv;charset=utf-8"}
        return {**file, "told": words.told(tables.separator("."))}, tables.write(rows, ".").encode()

    return Job(steps(), result)


def _line(row: PileRow) -> list[str]:
    drawing = row.drawing if row.state == "judged" else None
    numbers = (drawing.found, drawing.asked, drawing.unit, drawing.off) if drawing else ("", "", "", "")
    found, asked, unit, off = (tables.ascii_number(text.replace(",", ".")) for text in numbers)
    marks = tuple(map(str, (*row.marks, row.of))) if drawing else ("", "", "")
    mistakes = "; ".join(drawing.mistakes) if drawing else ""
    return [
        str(row.number), row.code, _who(row), found, asked, unit, off, _result(row), mistakes, *marks,
        words.YES if row.accepted else "", row.file, _said(row),
    ]  # fmt: skip


# The page as it opens.


def _file(label: str, name: str, *, camera: bool) -> Markup:
    marks: Marks = {
        "type": "file", "accept": "image/*" if camera else "image/*,.pdf,application/pdf",
        "id": f"pile-{name}", "class": "away", "data-pile-file": True,
        "multiple": not camera, "capture": "environment" if camera else None,
    }  # fmt: skip
    kind = "plain" if camera else "first"
    named: Marks = {"for": f"pile-{name}", "class": kind, "data-next": words.TAKE_NEXT if camera else None}
    return h("p", {"class": "file"}, h("input", marks), h("label", named, label))


def main_html() -> Markup:
    """Return the page before the script has looked at what is kept; its sentences are in attributes."""
    said: Marks = {
        "class": "said", "role": "status", "data-said": True, "data-reading": words.READING, "data-left": words.LEFT,
        "data-stopped": words.STOPPED, "data-erased": words.ERASED, "data-taken-away": words.TAKEN_AWAY,
        "data-back": words.BACK, "data-marks-said": True, "data-added": words.ADDED,
        "data-added-open": class_mark_words.ADDED_OPEN,
        "data-not-added": words.NOT_ADDED, "data-accepted": words.ACCEPTED_SOME, "data-unread": words.NOTHING_READ,
        "data-preparing": words.PREPARING, "data-not-put": words.NOT_PUT, "data-full": words.FULL,
    }  # fmt: skip
    buttons = [
        h("button", {"type": "button", "class": kind, "data-do": do, "data-label": label, "hidden": True}, label)
        for do, label, kind in (
            ("accept-sure", words.ACCEPT_SURE, "first"), ("next", words.NEXT, "plain"), ("stop", words.STOP, "plain"),
            ("go-on", words.GO_ON, "plain"), ("register", register_words.ADD, "plain"),
            ("to-papers", words.TO_PAPERS, "plain"), ("feedback", words.FEEDBACK, "plain"),
            ("save-table", words.SAVE_TABLE, "plain"),
            ("print", words.PRINT, "plain"),
        )
    ]  # fmt: skip
    more = h("details", {"class": "more"}, h("summary", None, words.MORE_ABOUT),
             h("ul", None, [h("li", None, line) for line in (*words.ABOUT, keeps_html(words.STAYS))]))  # fmt: skip
    bar = h("progress", {"max": 1, "value": 0, "data-share": True, "aria-label": words.TABLE_LABEL, "hidden": True})
    noscript = h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
    files = h("div", {"class": "row pile-files"}, _file(words.ADD, "choose", camera=False),
              _button("camera", camera_words.OPEN))  # fmt: skip
    register = h("a", {"href": f"../{register_words.SLUG}/"}, register_words.TITLE)
    table = h("div", {"data-region": "pile"}, table_html(Pile((), None), {}))
    picture = h("div", {"class": "pile-picture", "data-picture": True, "hidden": True},
                h("canvas", {"data-canvas": True, "role": "img", "aria-label": words.SHOWN}))  # fmt: skip
    legend = h("ul", {"class": "pile-legend"}, [
        h("li", {"data-legend": name, "hidden": True}, h("i", {"aria-hidden": "true"}), said)
        for name, said in words.LEGEND.items()
    ])  # fmt: skip
    switches = [
        _button("lines", on, **{"data-lines": name, "data-say-on": on, "data-say-off": off})
        for name, (on, off) in words.LINES.items()
    ]
    sizes = {"data-say-on": words.SMALLER, "data-say-off": words.LARGER}
    larger = _button("larger", words.LARGER, "plain wide-only", **sizes)
    tools = h("div", {"data-picture-tools": True, "hidden": True}, legend, h("p", {"class": "row"}, larger, switches))
    gone = h("p", {"class": "help", "data-gone": True, "hidden": True}, words.GONE)
    look = h("section", {"class": "pile-look", "data-look": True, "aria-label": words.SHOWN, "hidden": True},
             picture, gone, tools, h("div", {"data-region": "look"}))  # fmt: skip
    keys = h("p", {"class": "help", "data-keys": True, "hidden": True}, words.TABLE_HELP)
    left = h("div", {"class": "pile-left"}, noscript, files, h("p", {"class": "help drop"}, words.DROP), more,
             all_codes_html(), table, keys)  # fmt: skip
    papers = h("a", {"href": f"../{paper_words.SLUG}/"}, paper_words.TITLE)
    erase = h("button", {"type": "button", "class": "plain", "data-do": "erase", "hidden": True}, words.ERASE)
    elsewhere = h("p", None, register, papers, link_to_kept("../"), erase)
    undo = h("button", {"type": "button", "class": "plain", "data-do": "undo", "hidden": True}, register_words.UNDO)
    status = h("div", {"class": "pile-status"}, bar, h("p", said), undo)
    foot = h("div", {"class": "pile-actions"}, status, h("div", {"class": "row"}, buttons),
             ask_html(class_mark_words.OPEN), elsewhere)  # fmt: skip
    window = camera.window_html(_file(words.TAKE, "take", camera=True))
    return join(h("div", {"class": "pile-columns"}, left, look), foot, window)
