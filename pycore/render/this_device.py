"""The page that lists what this device keeps: its headings and buttons, and the sentences that JavaScript fills with
what it finds. The page needs no Python."""

from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.words import furniture
from pycore.words import this_device as words

LONGEST_FILE = 8_000_000
"""Bytes: more than a browser keeps for a site."""


def _button(does: str, label: str, kind: str = "plain", **more: object) -> Markup:
    marks: Marks = {"type": "button", "class": kind, "data-device-do": does, **more}  # type: ignore[dict-item]
    return h("button", marks, label)


def _section(name: str, title: str, *parts: object) -> Markup:
    heading = h("h2", {"id": name}, title)
    return h("section", {"class": "reading", "data-part": name}, heading, h("div", {"class": "said-here"}, parts))


def _said(part: str, **sentences: str) -> Markup:
    """Return the line that says what a button has done; its sentences are in attributes."""
    marks: Marks = {f"data-{name.replace('_', '-')}": sentence for name, sentence in sentences.items()}
    return h("p", {"class": "said", "role": "status", "data-said-of": part, **marks})


def _learners() -> Markup:
    field = h("div", {"class": "field"}, h("label", {"for": "new-learner"}, words.NEW_NAME),
              h("div", {"class": "entry"}, h("input", {
                  "id": "new-learner", "type": "text", "autocomplete": "off", "maxlength": 40, "spellcheck": "false",
                  "aria-describedby": "h-new-learner",
              })))  # fmt: skip
    row = h("form", {"class": "new-learner", "data-new-learner": True}, field,
            h("button", {"type": "submit", "class": "plain"}, words.NEW))  # fmt: skip
    in_use: Marks = {"class": "in-use", "data-in-use": words.IN_USE, "data-in-use-first": words.IN_USE_FIRST}
    ways = h("p", {"class": "way"}, h("a", {"href": "../practice/"}, words.PRACTISE))
    return _section(
        words.LEARNERS_ID, words.LEARNERS,
        h("p", None, keeps_html(words.LEARNERS_HELP, furniture.NOT_KEPT["records"])), h("p", in_use),
        h("ul", {"class": "kept-rows", "data-learners": words.FIRST}), row,
        h("p", {"class": "help", "id": "h-new-learner"}, keeps_html(words.NEW_HELP, "")),
        _said("learners", started=words.STARTED, taken_up=words.TAKEN_UP, no_name=words.NO_NAME), ways,
    )  # fmt: skip


def _row() -> Markup:
    """Return one thing of the list, to be filled."""
    buttons = (_button("save", words.SAVE), _button("erase", words.ERASE))
    text = h("div", None, h("h3"), h("p", {"data-detail": True}), h("p", {"class": "help", "data-when": True}))
    return h("template", {"data-row": True},
             h("li", {"class": "kept-row"}, text, h("div", {"class": "row"}, buttons)))  # fmt: skip


def _learner_row() -> Markup:
    """Return one learner of the list, to be filled."""
    text = h("div", None, h("h3"), h("p", {"data-detail": words.THINGS["practice"][1], "data-none": words.NO_RECORD}))
    return h("template", {"data-learner-row": True},
             h("li", {"class": "kept-row"}, text, h("div", {"class": "row"}, _button("use", words.USE))))  # fmt: skip


def _kept() -> Markup:
    sentences: Marks = {}
    for thing, (title, detail) in words.THINGS.items():
        sentences |= {f"data-title-{thing}": title, f"data-detail-{thing}": detail}
    marks: Marks = {
        "class": "kept-rows", "data-kept-rows": True, "data-of": words.OF, "data-changed": words.CHANGED,
        "data-until": words.UNTIL, "data-for-ever": words.FOR_EVER, "data-unreadable": words.UNREADABLE, **sentences,
    }  # fmt: skip
    nothing = h("p", {"data-nothing": words.NOTHING, "data-refused": words.REFUSED}, words.NOTHING)
    learner = h("div", {"class": "row"}, _button("erase-learner", words.ERASE_FIRST, hidden=True, **{
        "data-of": words.ERASE_LEARNER, "data-first": words.ERASE_FIRST, "data-all-of": words.ALL_OF,
        "data-all-of-first": words.ALL_OF_FIRST,
    }))  # fmt: skip
    said = h("div", {"class": "row"}, _said("kept", erased=words.ERASED, back=words.BROUGHT_BACK, full=words.NOT_ROOM),
             _button("undo", words.UNDO, hidden=True))  # fmt: skip
    not_kept = h("ul", {"class": "said", "role": "list"}, [h("li", None, line) for line in words.NOT_KEPT_LINES])
    heading = h("h3", None, words.NOT_KEPT)
    return _section(words.LISTED_ID, words.LISTED, nothing, h("ul", marks), learner, said, heading, not_kept)


def _site() -> Markup:
    marks: Marks = {"data-site-line": True, "data-whole": words.SITE_KEPT, "data-part": words.SITE_PART,
                    "data-none": words.SITE_NOT}  # fmt: skip
    memory: Marks = {"data-memory-line": words.MEMORY, "hidden": True}
    stays: Marks = {"data-stay-line": True, "data-stays": words.STAYS, "data-may-go": words.MAY_GO, "hidden": True}
    buttons = h("div", {"class": "row"}, _button("stay", words.ASK_TO_STAY, hidden=True),
                _button("remove-site", words.REMOVE_SITE, hidden=True))  # fmt: skip
    return _section(words.SITE_ID, words.SITE, h("p", marks, words.SITE_NOT), h("p", memory), h("p", stays), buttons,
                    _said("site", removed=words.SITE_REMOVED))  # fmt: skip


def _terms() -> Markup:
    fields = []
    for thing, label in words.TERM_FIELDS.items():
        options = [h("option", {"value": days}, said) for days, said in words.TERM_CHOICES]
        control = h("select", {"id": f"term-{thing}", "data-term": thing, "autocomplete": "off"}, options)
        fields.append(h("div", {"class": "field"}, h("label", {"for": f"term-{thing}"}, label),
                        h("div", {"class": "entry"}, control)))  # fmt: skip
    return _section(words.TERMS_ID, words.TERMS, h("div", {"class": "term-fields"}, fields),
                    h("p", {"class": "help"}, keeps_html(words.TERMS_HELP)),
                    _said("terms", chosen=words.TERM_SET, none=words.TERM_NONE))  # fmt: skip


def _all() -> Markup:
    choose: Marks = {"type": "file", "id": "f-kept", "accept": ".json,application/json", "data-kept-file": True,
                     "class": "away", "data-longest": LONGEST_FILE}  # fmt: skip
    file = h("p", {"class": "file"}, h("input", choose), h("label", {"for": "f-kept", "class": "plain"}, words.LOAD))
    buttons = h("div", {"class": "row"}, _button("save-all", words.SAVE_ALL), file,
                _button("erase-all", words.ERASE_ALL))  # fmt: skip
    said = h("div", {"class": "row"}, _said(
        "all", refused=words.REFUSED, erased=words.ALL_ERASED, back=words.ALL_BACK, loaded=words.LOADED,
        not_ours=words.NOT_OURS, large=words.TOO_LARGE, practice=words.PRACTICE_FILE, full=words.NOT_ROOM,
    ), _button("undo-all", words.UNDO, hidden=True))  # fmt: skip
    help_line = h("p", {"class": "help"}, words.ALL_HELP)
    return _section(words.ALL_ID, words.ALL, buttons, help_line, said)


def main_html() -> Markup:
    """Return the page as it stands before JavaScript has looked."""
    noscript = h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
    marks: Marks = {"class": "device-parts", "data-file": words.ALL_FILE}
    return join(noscript, h("div", marks, _learners(), _kept(), _terms(), _site(), _all()), _row(), _learner_row())


def sign_html(root: str) -> Markup:
    """Return the sign in the head that the site is stored; seen only where it is."""
    marks: Marks = {"class": "kept-sign", "href": f"{root}{words.SLUG}/#{words.SITE_ID}", "title": words.SIGN_HELP}
    return h("a", marks, words.SIGN)


def link_html(root: str) -> Markup:
    """Return the way to the page, for the foot of every other."""
    return h("a", {"href": f"{root}{words.SLUG}/"}, words.TITLE)


def learner_html(root: str) -> Markup:
    """Return the line that says whose record is in use, and leads to another's."""
    said = h("span", {"data-learner": words.OF_LEARNER, "hidden": True})
    return h("p", {"class": "learner"}, said, " ",
             h("a", {"href": f"{root}{words.SLUG}/#{words.LEARNERS_ID}"}, words.NOT_YOU))  # fmt: skip
