"""The page of a college's settings as HTML, and the replies to its requests: region ``sheet`` shows them on a sheet."""

from collections.abc import Mapping
from typing import Any

from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.pages import college as page
from pycore.pages.college import FIELDS, CollegeSettings
from pycore.render.class_set import making_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import FORM, fields_html
from pycore.render.page import link_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.words import college as words
from pycore.writers import svg

Reply = tuple[dict[str, Any], bytes | None]
LONGEST = links.USUAL


def sheet_html(settings: CollegeSettings) -> Markup:
    """Return the main calculator's sheet as it starts with these settings."""
    calculator = CALCULATORS[page.SHOWN]
    sheet = calculator.sheet_page(settings.for_page(calculator.fields))
    drawing = Markup.trusted(svg.write(sheet, prefix="college", role="view", view="small"))
    return join(h("p", {"class": "caption"}, words.EXAMPLE), h("div", {"class": "paper"}, drawing))


def answer(form: Mapping[str, str], _request: Mapping[str, Any]) -> Reply:
    """Return what the settings hold, their fragment, and a sheet with them. Raises InputError."""
    settings = page.read_settings(form)
    return {
        "ok": True, "regions": {"sheet": str(sheet_html(settings))}, "fragment": links.fragment(settings.link),
        "chosen": dict(settings.chosen), "announce": "", "errors": [],
    }, None  # fmt: skip


def share(form: Mapping[str, str], request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the link of these settings. Raises InputError."""
    fragment = links.fragment(page.read_settings(form).link)
    return {"ok": True, "link": f"{links.base_of(request.get('base'))}#{fragment}"}


def form_html(form: Mapping[str, str]) -> Markup:
    """Return the fields, group by group."""
    groups = []
    for name, title in words.GROUPS:
        members = [field for field in FIELDS if field.group == name]
        groups.append(h("section", {"class": "group", "data-group": name}, h("h2", None, title),
                        h("div", {"class": "fields"}, fields_html(members, form, {}))))  # fmt: skip
    first = h("div", {"class": "fields"}, fields_html([FIELDS[0]], form, {}))
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": words.TITLE}
    return h("form", marks, first, groups)


def actions_html() -> Markup:
    """Return the buttons that use the settings, give them to colleagues, and what is said of them."""
    choose: Marks = {"type": "file", "id": "settings-file", "accept": ".json,application/json", "class": "away",
                     "data-settings-file": True}  # fmt: skip
    label = h("label", {"for": "settings-file", "class": "plain"}, words.OPEN_FILE)
    state: Marks = {"class": "which", "data-in-use": words.IN_USE, "data-not-in-use": words.NOT_IN_USE,
                    "data-none": words.NONE, "data-not-stored": words.NOT_STORED, "data-state": True}  # fmt: skip
    sentences = {"copied": words.COPIED, "used": words.USED, "stopped": words.STOPPED, "opened": words.OPENED,
                 "bad-file": words.BAD_FILE}  # fmt: skip
    names = {"use": words.USE, "share": words.SHARE}
    others = {"save": words.SAVE, "stop-using": words.STOP_USING}
    buttons = [h("button", {"type": "button", "class": "plain", "data-do": do}, said) for do, said in others.items()]
    file = h("p", {"class": "file"}, h("input", choose), label)
    making = making_html(names, words.ACTIONS, "", sentences)
    return join(h("p", state, words.NONE), making, link_html(words.LINK_LABEL),
                h("div", {"class": "row"}, buttons, file, link_to_kept("../")),
                h("p", {"class": "help"}, words.FILE_NOTE))  # fmt: skip


def no_script_html() -> Markup:
    """Return the text for people without JavaScript."""
    return h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT))
