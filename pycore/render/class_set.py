"""The page of class sets as HTML, and the replies to its requests.

Regions: ``set`` (which set, what it contains, notices) and ``sheet`` (the first learner's sheet). The form is outside
of them.
"""

from collections.abc import Mapping
from typing import Any

from pycore.drawing import Page
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.opening import ReopenInfo
from pycore.pages import class_set as page
from pycore.pages.class_job import issue_of, learners_of
from pycore.pages.class_set import FIELDS, ClassSet
from pycore.practice.class_set import Learner
from pycore.render.all_codes import all_codes_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import FORM, fields_html, method_html
from pycore.render.keeping import keeps_html
from pycore.render.lettered import letters_of
from pycore.render.page import link_html
from pycore.render.phrase import phrase_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.words import class_set as words
from pycore.words import key as key_words
from pycore.words.inputs import too_much_text
from pycore.writers import svg

Reply = tuple[dict[str, Any], bytes | None]
LONGEST = links.USUAL
LONGEST_ROLL = 400_000
"""Characters. The page sends one more of a longer text, so that it is refused and never cut."""


def roll_of(request: Mapping[str, Any]) -> str:
    """The list of names of a request, as text. Raises InputError if it is longer than is read."""
    roll = request.get("roll")
    if not isinstance(roll, str):
        return ""
    if len(roll) > LONGEST_ROLL:
        raise InputError(Fault("roll", "", too_much_text(LONGEST_ROLL, words.MORE_NAMES)))
    return roll


def _first_learner(group: ClassSet) -> Learner:
    return next(candidate for candidate in learners_of(group) if candidate is not None)


def first_sheet(group: ClassSet) -> Page:
    """The first learner's sheet, without its QR code."""
    learner = _first_learner(group)
    opening = ReopenInfo(issue=issue_of(group, learner), letters=group.letters)
    page: Page = group.topic.pages(learner.form, opening, ("problem",))[0]
    return page


def set_html(group: ClassSet) -> Markup:
    """Return which set this is, what it contains, what its parts are worth, and its notices."""
    overlays = group.learners if group.chosen["overlays"] == "yes" else 0
    angled = group.topic.task(_first_learner(group).form).angled
    notices = h("ul", {"class": "notices"}, [h("li", None, notice) for notice in group.notices])
    return join(
        h("p", {"class": "which"}, phrase_html(words.set_line(str(group.code)))),
        h("p", None, words.contents(group.learners, overlays)),
        h("p", None, page.level_words(group)),
        h("p", None, key_words.marks(*group.marks, angled=angled)),
        notices if group.notices else None,
    )


def sheet_html(group: ClassSet, base: str = "") -> Markup:
    """The first learner's sheet as a picture; ``base``: the page's address, "" if unknown."""
    drawing = Markup.trusted(svg.write(first_sheet(group), prefix="set", role="view", view="small"))
    wanted = group.chosen["opens"] == "qr"
    lacking = wanted and base and not ReopenInfo(base).reachable
    caption = f"{words.FIRST_SHEET}. {words.NO_QR_HERE}" if lacking else words.FIRST_SHEET
    caption = words.FIRST_SHEET_QR if wanted and not lacking else caption
    return join(h("p", {"class": "caption"}, caption), h("div", {"class": "paper"}, drawing))


def answer(form: Mapping[str, str], request: Mapping[str, Any]) -> Reply:
    """Return the regions of a form, and the fragment that reproduces it. Raises InputError."""
    group = page.read_set(form, roll_of(request), letters_of(request))
    return {
        "ok": True,
        "regions": {"set": str(set_html(group)), "sheet": str(sheet_html(group, links.base_of(request.get("base"))))},
        "fragment": links.fragment(group.link),
        "announce": " ".join([words.announced(str(group.code)), *group.notices]),
        "errors": [],
    }, None


def share(form: Mapping[str, str], request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the link of a set, without names. Raises InputError."""
    root = links.base_of(request.get("base"))
    return {"ok": True, "link": f"{root}#{links.fragment(page.read_set(form).link)}"}


def again(request: Mapping[str, Any]) -> Reply:
    """Return the form values of a typed code. Raises InputError."""
    text = request.get("code")
    values = page.values_of(text[: links.LONGEST_VALUE] if isinstance(text, str) else "")
    return {"ok": True, "form": values, "errors": []}, None


def _fields(group: str, form: Mapping[str, str]) -> Markup:
    return fields_html([field for field in FIELDS if field.group == group], form, {})


def roll_html(stays: str = words.STAYS) -> Markup:
    """Return the area where names are pasted; it is not a form field, so no link and no other page contains them."""
    area = h("textarea", {
        "id": "roll", "rows": 8, "autocomplete": "off", "spellcheck": "false", "data-roll": True,
        "data-longest": LONGEST_ROLL, "data-file": words.ROLL_FILE, "aria-describedby": "h-roll m-roll",
    })  # fmt: skip
    message = h("p", {"class": "message", "id": "m-roll", "data-message-for": "roll", "hidden": True})
    names = {"save-roll": words.SAVE_ROLL, "erase-roll": words.ERASE_ROLL}
    buttons = [h("button", {"type": "button", "class": "plain", "data-do": do}, said) for do, said in names.items()]
    attributes: Marks = {"class": "said", "data-roll-said": True, "data-erased": words.ERASED}
    about = h("p", {"class": "help", "id": "h-roll"}, words.ROLL_HELP, " ", keeps_html(stays))
    field = h("div", {"class": "field wide"}, h("label", {"for": "roll"}, words.ROLL), area, message, about,
              h("div", {"class": "row"}, buttons, link_to_kept("../")), h("p", attributes))  # fmt: skip
    return h("div", {"class": "fields"}, field)


def _group(name: str, title: str, form: Mapping[str, str]) -> Markup:
    extra: Markup | None = None
    if name == "again":
        button = h("button", {"type": "button", "class": "plain", "data-do": "open-code"}, words.OPEN_CODE)
        extra = h("div", {"class": "row"}, button)
    inside = roll_html() if name == "roll" else h("div", {"class": "fields"}, _fields(name, form), extra)
    marks: Marks = {"class": "group", "data-group": name}
    return h("details", marks, h("summary", None, title), inside)


def form_html(form: Mapping[str, str]) -> Markup:
    """Return the main choices: topic if there are several, tier, method, number of learners."""
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": words.CHOICES}
    topic = h("div", {"hidden": len(page.TOPICS) < 2}, _fields("topic", form))
    return h("form", marks, topic, method_html(FIELDS, form), h("div", {"class": "fields"}, _fields("count", form)))


def groups_html(form: Mapping[str, str]) -> Markup:
    """Return the choices with good defaults, folded away."""
    return join([_group(name, title, form) for name, title in words.GROUPS], all_codes_html())


def actions_html() -> Markup:
    """Return the buttons that make the set, its key as a table, and its link; and the progress of the job."""
    names = {"make": words.MAKE, "make-key": words.MAKE_KEY, "share": words.SHARE}
    row = making_html(names, words.CHOICES, words.IN_HAND, {"stopped": words.STOPPED, "copied": words.COPIED})
    return join(row, link_html(words.LINK_LABEL), h("p", {"class": "help"}, words.LEARNING))


def making_html(names: Mapping[str, str], about: str, in_hand: str, sentences: Mapping[str, str]) -> Markup:
    """Return buttons by what they do, the first one first; below them the progress of work that they begin.

    ``in_hand``: said to whoever takes a new version over meanwhile; ``sentences``: what is said afterwards, by name.
    """
    first = next(iter(names))
    buttons = [
        h("button", {"type": "button", "data-do": do, "class": "first" if do == first else None}, label)
        for do, label in names.items()
    ]
    bar = h("progress", {"max": 1, "value": 0, "data-share": True, "aria-label": names[first]})
    stop = h("button", {"type": "button", "class": "plain", "data-do": "stop"}, words.STOP)
    working = h("div", {"class": "working", "data-working": True, "data-in-hand": in_hand, "hidden": True}, bar,
                h("span", {"data-work-said": True}), stop)  # fmt: skip
    attributes: Marks = {f"data-{name}": sentence for name, sentence in sentences.items()}
    status = h("p", {"class": "said", "data-said": True, **attributes})
    wait = h("p", {"class": "waiting", "id": "waiting", "hidden": True})
    row = h("div", {"class": "actions", "role": "group", "aria-label": about}, buttons)
    return join(row, wait, working, status)


def another_html() -> Markup:
    """Return the link to a set with other values."""
    button = h("button", {"type": "button", "class": "plain", "data-do": "another", "aria-describedby": "h-another"},
               words.ANOTHER)  # fmt: skip
    return h("div", {"class": "another"}, button, h("p", {"class": "help", "id": "h-another"}, words.ANOTHER_HELP, " ",
                                                      keeps_html(words.OPENS_AGAIN, "")))


def no_script_html() -> Markup:
    """Return the text for people without JavaScript."""
    return h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
