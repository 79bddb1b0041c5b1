"""The page of question papers as HTML, and the replies to its requests.

Regions: ``paper`` (which paper, its questions and marks) and ``front`` (the first learner's front page). The form is
outside of them: all questions that a paper may have, of which the script shows as many as there are.
"""

from collections.abc import Mapping
from typing import Any

from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.fields import Field
from pycore.forms.links import Longest
from pycore.pages import question_paper as page
from pycore.pages.class_job import Job
from pycore.pages.class_set import TOPICS, name_notices
from pycore.pages.own_values import LONGEST_LINK, example_of
from pycore.pages.print_setup import correction_of
from pycore.pages.question_paper import FIELDS, QUESTION_FIELDS, QuestionPaper
from pycore.pages.question_paper_job import first_page, papers_job, scheme_job
from pycore.render.all_codes import all_codes_html
from pycore.render.class_set import making_html, roll_html, roll_of
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import FORM, fields_html
from pycore.render.keeping import keeps_html
from pycore.render.lettered import letters_of
from pycore.render.page import link_html
from pycore.render.paper_marks import marks_job
from pycore.render.phrase import phrase_html
from pycore.words import question_paper as words
from pycore.words.phrase import say
from pycore.writers import svg

Reply = tuple[dict[str, Any], bytes | None]
LONGEST = Longest(8000, LONGEST_LINK + 1)
"""Of a paper's link and its values: one character more than is read, so that a text is refused and never cut."""


def paper_html(paper: QuestionPaper) -> Markup:
    """Return which paper this is, and its questions with their marks."""
    rows = [
        h("tr", None, h("th", {"scope": "row"}, one.number), h("td", None, one.group.topic.title, " ", h(
              "span", {"class": "level"}, words.values_of(one.group.code.tier, own=one.own is not None),
          )),
          h("td", {"class": "count"}, one.total))
        for one in paper.questions
    ]  # fmt: skip
    total = h("tr", {"class": "total"}, h("th", {"scope": "row"}, words.TOTAL), h("td"),
              h("td", {"class": "count"}, paper.total))  # fmt: skip
    heads = h("tr", None, [h("th", {"scope": "col"}, head) for head in words.HEADS])
    told = [h("li", None, notice) for notice in name_notices(paper.names)]
    return join(
        h("p", {"class": "which"}, phrase_html(say(words.PAPER_LINE, code=str(paper.code())))),
        h("p", None, words.contents(len(paper.questions), paper.total, paper.learners)),
        h("table", {"class": "questions"}, h("thead", None, heads), h("tbody", None, rows, total)),
        h("ul", {"class": "notices"}, told) if told else None,
    )


def front_html(paper: QuestionPaper) -> Markup:
    """The first learner's front page as a picture."""
    drawing = Markup.trusted(svg.write(first_page(paper), prefix="front", role="view", view="small"))
    return join(h("p", {"class": "caption"}, words.FRONT), h("div", {"class": "paper"}, drawing))


def answer(form: Mapping[str, str], request: Mapping[str, Any]) -> Reply:
    """Return the regions of a form, the fragment that reproduces it, and the paper's code. Raises InputError."""
    paper = page.read_paper(form, roll_of(request), letters_of(request))
    code = str(paper.code())
    return {
        "ok": True,
        "regions": {"paper": str(paper_html(paper)), "front": str(front_html(paper))},
        "fragment": links.fragment(paper.link),
        "code": code,
        "totals": [words.marks(one.total) for one in paper.questions],
        "parts": [words.parts_of(one.marks) for one in paper.questions],
        "announce": words.announced(code),
        "errors": [],
    }, None


def share(form: Mapping[str, str], request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the link of a paper, without names. Raises InputError."""
    fragment = links.fragment(page.read_paper(form).link)
    if len(fragment) > LONGEST.fragment:
        raise InputError(Fault("questions", "", words.LINK_TOO_LONG))
    return {"ok": True, "link": f"{links.base_of(request.get('base'))}#{fragment}"}


def job(form: Mapping[str, str], request: Mapping[str, Any]) -> Job:
    """Return the job that a request asks for: all papers, one learner's, or the mark scheme. Raises InputError."""
    paper = page.read_paper(form, roll_of(request), letters_of(request))
    correction = correction_of(request)
    if request.get("work") == "marks":
        return marks_job(paper, request)
    if request.get("work") == "scheme":
        return scheme_job(paper, correction)
    which = request.get("which")
    places = range(1, paper.learners + 1)
    if request.get("work") == "one":
        place = page.place_of(paper, which if isinstance(which, str) else "")
        places = range(place, place + 1)
    return papers_job(paper, places, links.root_of(request.get("base"), words.SLUG), correction)


# The page as it opens.


def _of(group: str) -> list[Field]:
    return [field for field in FIELDS if field.group == group]


def _button(do: str, label: str, number: int = 0) -> Markup:
    marks: Marks = {"type": "button", "class": "plain", "data-do": do, "data-of": number or None,
                    "aria-label": f"{label}: {words.question(number)}" if number else None}  # fmt: skip
    return h("button", marks, label)


def _question_html(number: int, form: Mapping[str, str], *, shown: bool) -> Markup:
    """Return the fields of one question; the script shows it when the paper has so many."""
    fields = QUESTION_FIELDS[number - 1]
    group = f"q{number}"
    parts = {name: [field for field in fields if field.group == f"{group}{name}"]
             for name in ("", "-own", "-marks", "-more")}  # fmt: skip
    marks = [
        h("div", {"class": "fields of-marks", "data-marks-of": asks, "data-of": number},
          fields_html([field for field in parts["-marks"] if field.name.rpartition("-")[2] in keys], form, {}))
        for asks, keys in {"drawing": words.OF_DRAWING, "calculation": words.OF_CALCULATION}.items()
    ]  # fmt: skip
    # Written without an id: it stands at every question.
    more = [
        h("details", {"class": "more"},
          h("summary", {"data-parts-of": number}, words.MARKS), marks),
        h("details", {"class": "more"}, h("summary", None, words.MORE), h("div", {"class": "fields of-more"},
          fields_html(parts["-more"], form, {}))),
    ]  # fmt: skip
    example = h("span", {"data-own-example": True}, example_of(TOPICS[form[f"{group}-topic"]]))
    own = h("div", {"class": "fields of-own"}, fields_html(parts["-own"], form, {}),
            h("p", {"class": "help wide"}, words.OWN_HELP[0], example, words.OWN_HELP[1]))  # fmt: skip
    moves = {"up": words.UP, "down": words.DOWN, "remove": words.REMOVE}
    buttons = h("div", {"class": "row"}, [_button(do, label, number) for do, label in moves.items()])
    named = f"question-{number}"
    attributes: Marks = {"class": "question", "data-question": number, "role": "group", "aria-labelledby": named,
                         "hidden": not shown}  # fmt: skip
    heading = h("h2", {"id": named, "tabindex": -1}, words.question(number))
    worth = h("span", {"class": "worth", "data-total-of": number})
    return h("section", attributes, h("div", {"class": "question-head"}, heading, worth),
             h("div", {"class": "fields"}, fields_html(parts[""], form, {})), own, more, buttons)  # fmt: skip


def form_html(form: Mapping[str, str]) -> Markup:
    """Return what stands on the front page, then the questions."""
    count = int(form["questions"])
    hidden = h("input", {"type": "hidden", "name": "questions", "form": FORM, "value": form["questions"],
                         "data-built": form["questions"]})  # fmt: skip
    message = h("p", {"class": "message", "id": "m-questions", "data-message-for": "questions", "hidden": True})
    head = h("form", {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": words.CHOICES},
             h("div", {"class": "fields"}, fields_html(_of("head"), form, {})), hidden)  # fmt: skip
    questions = [_question_html(n, form, shown=n <= count) for n in range(1, page.MOST_QUESTIONS + 1)]
    add = h("p", {"class": "row"}, _button("add", words.ADD))
    examples: Marks = {f"data-own-{slug}": example_of(topic) for slug, topic in TOPICS.items()}
    first = [slug for slug, topic in TOPICS.items() if page.is_calculated_first(topic)]
    attributes: Marks = {"class": "questions-list", "data-questions": True, "data-calculated-first": " ".join(first),
                         **examples}  # fmt: skip
    return join(head, h("div", attributes, questions), message, add)


def groups_html(form: Mapping[str, str]) -> Markup:
    """Return the choices with good defaults, folded away."""
    groups = []
    for name, title in words.GROUPS:
        fields = h("div", {"class": "fields"}, fields_html(_of(name), form, {}))
        inside = roll_html(words.NAMES_STAY) if name == "roll" else fields
        marks: Marks = {"class": "group", "data-group": name, "open": name == "roll"}
        groups.append(h("details", marks, h("summary", None, title), inside))
    return join(groups, all_codes_html())


def _which_html() -> Markup:
    """Return the field for one learner's paper, with its button."""
    control = h("input", {"id": "which", "type": "text", "autocomplete": "off", "spellcheck": "false", "maxlength": 60,
                          "aria-describedby": "h-which m-which"})  # fmt: skip
    message = h("p", {"class": "message", "id": "m-which", "data-message-for": "which", "hidden": True})
    label = h("label", {"for": "which"}, words.WHICH)
    about = h("p", {"class": "help", "id": "h-which"}, words.WHICH_HELP)
    field = h("div", {"class": "field"}, label, h("div", {"class": "entry"}, control), about, message)
    button = h("div", {"class": "row"}, _button("one", words.ONE))
    said = h("p", {"class": "said", "data-one-said": True})
    return h("div", {"class": "one-learner"}, field, button, said)


def actions_html() -> Markup:
    """Return the buttons that make the files, share and keep the paper, and the progress of the work."""
    names = {"make": words.MAKE, "scheme": words.MAKE_SCHEME, "to-marks": words.TO_MARKS}
    sentences = {"stopped": words.STOPPED, "copied": words.COPIED, "bad-file": words.BAD_FILE,
                 "saved": words.FILE_SAVED, "saved-names": words.FILE_SAVED_NAMES}  # fmt: skip
    choose: Marks = {"type": "file", "id": "paper-file", "accept": ".json,application/json", "class": "away",
                     "data-paper-file": True}  # fmt: skip
    label = h("label", {"for": "paper-file", "class": "plain"}, words.OPEN_FILE)
    file = h("p", {"class": "file"}, h("input", choose), label)
    files = h("div", {"class": "row"}, _button("share", words.SHARE), _button("save", words.SAVE), file)
    return join(making_html(names, words.CHOICES, words.IN_HAND, sentences), link_html(words.LINK_LABEL), files,
                h("p", {"class": "help"}, words.NOTE))  # fmt: skip


def lost_html() -> Markup:
    """Return the part for a lost paper, under its heading."""
    return join(h("h2", None, words.LOST), _which_html())


def begin_html() -> Markup:
    """Return which paper to work on: a new one, the same questions with other values, one that this device keeps. Below
    it what is said of the paper that is shown."""
    back = h("button", {"type": "button", "class": "plain", "data-do": "back", "hidden": True}, words.BACK)
    undo = h("button", {"type": "button", "class": "plain", "data-do": "undo-kept", "hidden": True}, words.UNDO)
    buttons = h("div", {"class": "row"}, _button("new", words.NEW), _button("other-values", words.OTHER_VALUES), back,
                undo)  # fmt: skip
    college = h("div", {"class": "notice", "data-college-note": True, "hidden": True},
                h("p", {"data-text": words.NOT_AS_COLLEGE}), _button("use-college", words.USE_COLLEGE))  # fmt: skip
    same: Marks = {"class": "notice", "data-same-number": True, "data-text": words.SAME_NUMBER, "hidden": True}
    said: Marks = {"class": "said", "data-begun": True, "data-opened": words.OPENED, "data-new": words.BEGUN,
                   "data-other-values": words.OTHER_VALUES_SAID, "data-erased": words.PAPER_ERASED,
                   "data-erased-shown": words.PAPER_ERASED_SHOWN,
                   "data-restored": words.PAPER_RESTORED}  # fmt: skip
    return join(buttons, h("p", said), _kept_html(), college, h("p", same))


def _kept_html() -> Markup:
    """Return the list of papers on this device; the script fills it."""
    names = {"open-kept": words.OPEN, "mark-kept": words.MARK_KEPT, "erase-kept": words.ERASE}
    row = h("template", {"data-kept-row": True}, h("li", {"class": "kept-row"}, h("div", None, h("h3"), h("p")), h(
        "div", {"class": "row"}, [_button(do, label) for do, label in names.items()],
    )))  # fmt: skip
    marks: Marks = {"class": "group kept-papers", "data-kept-papers": True, "data-detail": words.KEPT_DETAIL,
                    "hidden": True}  # fmt: skip
    about = h("p", {"class": "help"}, words.KEPT_HELP, " ", keeps_html(words.STAYS))
    summary = h("summary", None, words.KEPT, ": ", h("span", {"data-kept-count": True}))
    return join(row, h("details", marks, summary, about, h("ul")))


def no_script_html() -> Markup:
    """Return the text for people without JavaScript."""
    return h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
