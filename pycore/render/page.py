"""The frame of every page: header and footer, buttons, status line."""

from collections.abc import Iterable, Sequence

from pycore.forms.fields import Field
from pycore.pages.paper import PAPER_PAGES
from pycore.render.edition import ask_html, edition_html, not_kept_html, stored_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.keeping import keeps_html
from pycore.render.phrase import phrase_html
from pycore.render.this_device import link_html as link_to_kept
from pycore.render.this_device import sign_html
from pycore.words import api as api_words
from pycore.words import (
    boards,
    class_set,
    classroom,
    college,
    evidence,
    furniture,
    lesson_plans,
    pile,
    practice,
    question_paper,
    readings,
    register,
)
from pycore.words.phrase import Phrase


def mark() -> Markup:
    """Return the site's sign: a parallelogram with its diagonal."""
    paths = [
        h("path", {"class": "mark-edge", "d": "M9 3H37L28 27H1Z"}),
        h("path", {"class": "mark-diagonal", "d": "M1 27L37 3"}),
    ]
    marks: Marks = {"class": "mark", "viewBox": "0 0 38 30", "width": 30, "height": 24, "aria-hidden": "true",
             "focusable": "false"}  # fmt: skip
    return h("svg", marks, paths)


Address = tuple[str, str]
"""A page's folder, or a whole address, and what it is called."""

NAVIGATION: tuple[Address, ...] = (
    ("", furniture.SHEETS),
    (practice.SLUG, practice.TITLE),
    (class_set.SLUG, furniture.CLASS_SETS),
    (lesson_plans.SLUG, lesson_plans.TITLE),
)
"""What the head of every page leads to."""
TO_ANSWER: Address = ("#answer", furniture.SKIP)
TO_ACTIONS: Address = ("#actions", furniture.SKIP_TO_ACTIONS)
TO_PAGE: Address = ("#page", furniture.SKIP_HEAD)


def _to(root: str, slug: str) -> str:
    return f"{root}{slug}/" if slug else root


def _navigation(root: str, here: str, current: str) -> Markup:
    """Return the links of the head and the switch between light and dark, on a phone behind a button."""
    links = [
        h("a", {"href": _to(root, slug), "aria-current": current if slug == here else None}, title)
        for slug, title in NAVIGATION
    ]
    # Both words stand there; the style sheet shows the one that the switch would bring.
    words = (h("span", {"class": "to-night"}, furniture.NIGHT), h("span", {"class": "to-day"}, furniture.DAY))
    switch = h("button", {"type": "button", "class": "theme", "data-theme-switch": True}, words)
    opener = h("button", {"type": "button", "class": "menu", "popovertarget": "menu"}, furniture.MENU)
    menu = h("div", {"class": "pages", "id": "menu", "popover": "auto"}, links, switch)
    return h("nav", {"aria-label": furniture.MENU_LABEL}, opener, menu)


def header_html(
    root: str, here: str = "", *, current: str = "page", skips: Iterable[Address] = (TO_ANSWER,)
) -> Markup:
    """Return the name, the links to what the site has, and the switch between light and dark.

    ``here``: the folder of the link that is marked ("" for the sheets, any other text for none); ``current``: how
    it is, "true" on a page that only belongs there. ``skips``: the links that pass over the head.
    """
    name = h("a", {"class": "name", "href": root}, mark(), furniture.NAME)
    passing = [h("a", {"class": "skip", "href": address}, said) for address, said in skips]
    return h("header", {"class": "head"}, passing, name, sign_html(root), _navigation(root, here, current))


def intro_html(
    title: str, scenario: Phrase | str, warning: str = "", *, keeps: str = "", instead: Markup | None = None,
    how: Markup | None = None,
) -> Markup:
    """Return the title, a caution that comes first, and the story of the example, with what the page ``keeps``;
    ``instead`` takes the place of the story while it is shown, and is what stands nearest to the first value by
    keyboard, after ``how`` it is written."""
    marks: Marks = {"class": "scenario", "data-scenario": True, "hidden": not scenario}
    story = h("p", marks, phrase_html(scenario), (" ", keeps_html(keeps)) if keeps else None)
    caution = _warning(warning) if warning else None
    place = h("div", {"class": "story"}, story, instead) if instead else story
    return join(h("h1", None, title), caution, h("div", {"class": "beside-values"}, how) if how else None, place)


def _warning(warning: str) -> Markup:
    """Return a caution: its first sentence always in view, what it rests on one press away."""
    first, _, rest = warning.partition(". ")
    return h("details", {"class": "warning"}, h("summary", None, f"{first}."), h("p", {"role": "note"}, rest))


def _action(name: str, label: str, first: bool) -> Markup:
    return h("button", {"type": "button", "data-action": name, "class": "first" if first else None}, label)


def actions_html(*, lesson: bool = False) -> Markup:
    """Return the buttons of the sheet, and the place of the link if it cannot be copied.

    The first button is filled: the lesson, if there is one.
    """
    names = {"print": furniture.PRINT, "pdf": furniture.PDF, "share": furniture.SHARE}
    names = {"lesson": classroom.LESSON, **names} if lesson else names
    buttons = [_action(name, label, index == 0) for index, (name, label) in enumerate(names.items())]
    attributes: Marks = {"data-copied": furniture.COPIED, "data-saved": furniture.PDF_READY,
                   "data-handed": classroom.HANDOUT_READY}  # fmt: skip
    status = h("p", {"class": "said", "data-said": True, **attributes})
    wait = h("p", {"class": "waiting", "id": "waiting", "hidden": True},
             h("span", {"data-waiting": True}), " ", _go())  # fmt: skip
    marks: Marks = {"class": "actions", "id": "actions", "tabindex": -1, "role": "group",
                    "aria-label": furniture.ACTIONS}  # fmt: skip
    row = h("div", marks, buttons)
    return join(row, wait, status, link_html(furniture.LINK_LABEL))


def link_html(label: str) -> Markup:
    """Return the place of a link that could not be copied by itself."""
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-link-do": do}, said)
        for do, said in (("copy", classroom.COPY), ("close", classroom.CLOSE))
    ]
    return h("div", {"class": "link", "data-link": True, "hidden": True}, h("label", {"for": "link"}, label),
             h("input", {"id": "link", "type": "text", "readonly": True, "autocomplete": "off"}),
             h("p", {"class": "ways-out"}, buttons))  # fmt: skip


def _go() -> Markup:
    return h("button", {"type": "button", "class": "go", "data-go": True, "hidden": True}, furniture.SHOW_FIELD)


def elsewhere_html() -> Markup:
    """Return the place where a message is repeated if its field is far from the values, with a link to it."""
    return h("p", {"class": "elsewhere", "data-elsewhere": True, "hidden": True}, h("span", None), " ", _go())


def link_notices_html() -> Markup:
    """Return the place for what a link asked for that this page does not know."""
    return h("ul", {"class": "open-notices", "data-open-notices": True, "role": "status", "hidden": True})


def tabs_html(*, compare: bool) -> Markup:
    """Return the choice of what stands beside the sheet."""
    buttons = [
        h("button", {"type": "button", "data-tab": name, "aria-pressed": "true" if name == "moves" else "false"},
          _by_room(words, furniture.RESULTS_BRIEFLY) if name == "results" else words)
        for name, words in furniture.TABS.items()
        if compare or name != "compare"
    ]
    marks: Marks = {"class": "tabs", "role": "group", "aria-label": furniture.TABS_LABEL}
    return h("div", marks, buttons, _settings_switch())


def _by_room(words: str, briefly: str) -> Markup:
    """Return words, and what a very narrow screen shows instead."""
    return join(h("span", {"class": "in-full"}, words), h("span", {"class": "in-brief"}, briefly))


def _settings_switch() -> Markup:
    """Return the switch to the settings: on a phone among what stands below the sheet, else in the bar."""
    switch: Marks = {"type": "button", "class": "to-settings", "data-settings-switch": True, "aria-pressed": "false"}
    return h("button", switch, furniture.SETTINGS)


def more_html(*parts: Markup) -> Markup:
    """Return what is wanted more rarely, and the switch to the settings."""
    all_kinds = h("button", {"type": "button", "class": "plain", "data-action": "pdf-all"}, furniture.ALL_KINDS)
    panel = h("div", {"class": "more-panel"}, all_kinds, parts)
    more = h("details", {"class": "more", "data-more": True}, h("summary", None, furniture.MORE), panel)
    return h("div", {"class": "further"}, more, _settings_switch())


def also_html(fields: Sequence[Field]) -> Markup:
    """Return the place that says which further values are set, and leads to them; where a page has lags among its
    settings, it leads to these while none is set."""
    lag = next((field.name for field in fields if field.kind == "angle" and field.group == "loads"), None)
    words = furniture.LAGS if lag else furniture.SETTINGS
    button = h("button", {"type": "button", "class": "go", "data-also-go": lag or True, "data-also-none": words,
                          "data-also-some": furniture.SETTINGS}, words)  # fmt: skip
    marks: Marks = {"class": "also", "data-also-said": furniture.ALSO_SET, "data-also-first": lag, "hidden": not lag}
    return h("p", marks, h("span"), " ", button)


def status_html(*, example: bool = False) -> Markup:
    """Return the strip that says what the page is doing until Python runs, and the live line."""
    return join(progress_html(example=example), live_html())


def live_html() -> Markup:
    """Return the line that is read out."""
    return h("p", {"class": "live", "aria-live": "polite", "data-live": True})


def progress_html(*, example: bool = False) -> Markup:
    """Return what says how far the start is, until Python runs; ``example``: there is one to be read meanwhile.

    Its sentences are in attributes, so that JavaScript composes none itself. The figures are no part of what is read
    out, which would not come to an end.
    """
    meanwhile = furniture.LOADING_EXAMPLE if example else furniture.LOADING_TYPE
    return h("div", {
        "class": "progress", "data-progress": True, "hidden": True, "role": "region", "aria-label": furniture.PROGRESS,
        "data-loading": furniture.LOADING, "data-loading-meanwhile": meanwhile,
        "data-loading-values": furniture.LOADING_VALUES, "data-loading-link": furniture.LOADING_LINK,
        "data-loading-own": furniture.LOADING_OWN,
        "data-loading-rest": furniture.LOADING_REST,
        "data-loading-code": furniture.LOADING_CODE,
        "data-loading-code-meanwhile": furniture.LOADING_CODE_FIELDS,
        "data-loading-problem": furniture.LOADING_CODE,
        "data-loading-problem-meanwhile": furniture.LOADING_PROBLEM_FIELDS,
        "data-loading-any-code": furniture.LOADING_ANY_CODE,
        "data-loading-any-code-meanwhile": furniture.LOADING_CODE_FIELDS,
        "data-far": furniture.LOADED, "data-minutes": furniture.MINUTES_LEFT, "data-minute": furniture.MINUTE_LEFT,
        "data-soon": furniture.SOON, "data-starting": furniture.STARTING, "data-failed": furniture.FAILED,
        "data-failed-own": furniture.FAILED_OWN, "data-stuck": furniture.STUCK, "data-again": furniture.AGAIN,
        "data-lacking": api_words.PART_MISSING,
    }, h("span", {"class": "bar", "data-bar": True}),
       h("p", None, h("span", {"data-progress-text": True, "role": "status"}), " ",
         h("span", {"data-progress-far": True})),
       h("button", {"type": "button", "data-retry": True, "hidden": True}, furniture.RETRY))  # fmt: skip


def request_html() -> Markup:
    """On a phone the complete sheet is shown on request; this works without JavaScript."""
    return h("details", {"class": "request"}, h("summary", None, furniture.SHEET_ON_REQUEST))


def unprintable_html() -> Markup:
    """Return what a browser prints in place of a sheet of other values than those in the form."""
    return h("p", {"class": "unprintable"}, furniture.UNPRINTABLE)


def no_script_html() -> Markup:
    """Return the text for people without JavaScript."""
    return h("noscript", None, h("p", {"class": "notice"}, furniture.NO_SCRIPT))


def _column(title: str, root: str, pages: Iterable[Address]) -> Markup:
    links = [h("li", None, h("a", {"href": f"{root}{address}"}, said)) for address, said in pages]
    return h("div", None, h("h2", None, title), h("ul", None, links))


def footer_html(root: str, cautions: Iterable[Phrase | str], own: Iterable[Address] = ()) -> Markup:
    """Return cautions, then every page of the site in headed columns.

    ``own``: folders and titles of the page's own lessons; those of the first topic are listed at every foot.
    """
    lessons = dict(zip((slug for slug, _ in lesson_plans.PAGES), own, strict=False))
    plans = [lessons.get(slug, (slug, title)) for slug, title in lesson_plans.PAGES]
    boards_here = [(f"#{boards.anchor(board)}", board) for board in boards.BOARDS]
    paper = [(f"{slug}/", page.title) for slug, page in PAPER_PAGES.items()]
    facts = [(f"{slug}/", title) for slug, title in evidence.PAGES]
    columns = (
        _column(furniture.SHEETS, root, boards_here),
        _column(furniture.FOOT_LEARN, root,
                [(f"{practice.SLUG}/", practice.TITLE), *((f"{slug}/", title) for slug, title in readings.PAGES)]),
        _column(furniture.FOOT_TEACH, root,
                [*((f"{slug}/", title) for slug, title in plans), (f"{class_set.SLUG}/", furniture.CLASS_SETS),
                 (f"{question_paper.SLUG}/", question_paper.TITLE), (f"{pile.SLUG}/", pile.TITLE),
                 (f"{register.SLUG}/", register.TITLE),
                 (f"{college.SLUG}/", college.TITLE)]),
        _column(furniture.FOOT_FACTS, root,
                [*paper, ("print-setup/", furniture.PRINT_SETUP), *facts, ("licences.txt", furniture.LICENCES)]),
    )  # fmt: skip
    listed = tuple(cautions)
    warnings = h("ul", {"class": "cautions"}, [h("li", None, phrase_html(caution)) for caution in listed])
    private = h("p", {"class": "foot-private"}, furniture.FOOT_PRIVACY, " ", link_to_kept(root))
    pages = h("nav", {"class": "foot-pages", "aria-label": furniture.FOOT_LABEL}, columns)
    foot = h("footer", {"class": "foot"}, warnings if listed else None, pages, private, stored_html())
    return join(foot, ask_html(), edition_html(), not_kept_html())
