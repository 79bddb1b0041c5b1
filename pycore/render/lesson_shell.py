"""The lesson view's empty shell in a page: words, menu, foot, pane. JavaScript fills its regions."""

from collections.abc import Sequence

from pycore.forms.fields import Field
from pycore.render.elements import Marks, Markup, h, join
from pycore.words import classroom, furniture, give

METHOD = "method"
SELECTED = ("order", "parallels", "protractor")
"""Fields that a lecturer changes in front of a class, besides the method."""
GUESS_BOX = "0 0 120 98.4"


def _button(do: str, label: Markup | str, kind: str = "", **marks: str) -> Markup:
    pressed = {name.replace("_", "-"): value for name, value in marks.items()}
    return h("button", {"type": "button", "class": kind or None, "data-lesson-do": do, **pressed}, label)


def _key(letter: str, label: str) -> Markup:
    """A letter in its box, and what it does."""
    return join(h("kbd", None, letter), h("span", None, label))


def _item(letter: str, label: str, **marks: str) -> Markup:
    """One line of the menu: pressed, or its letter typed."""
    named = {name.replace("_", "-"): value for name, value in marks.items()}
    return h("button", {"type": "button", "data-lesson-key": letter.lower(), **named}, _key(letter, label))


def _items(title: str, items: Sequence[Markup]) -> Markup:
    return join(h("h3", None, title), h("div", {"class": "lesson-menu"}, items))


def _select(field: Field) -> Markup:
    control = h("select", {"id": f"lesson-{field.name}", "data-lesson-set": field.name, "autocomplete": "off"},
                [h("option", {"value": choice.value}, choice.label) for choice in field.options])  # fmt: skip
    title = h("label", {"for": f"lesson-{field.name}"}, field.label)
    return h("p", {"class": "lesson-choice", "data-lesson-choice": field.name}, title, control)


def method_keys(values: Sequence[tuple[str, str]]) -> dict[str, str]:
    """Return a letter for each method (value and label): its usual one, else a free letter of its label."""
    taken = {*classroom.VIEW_KEYS.values(), *"QHBWMLSXNO", classroom.DRAW_KEY, *classroom.METHOD_KEYS.values()}
    keys: dict[str, str] = {}
    for value, label in values:
        free = (letter for letter in f"{label}EFGIJKUYZ".upper() if letter.isalpha() and letter not in taken)
        keys[value] = classroom.METHOD_KEYS.get(value) or next(free)
        taken.add(keys[value])
    return keys


def _jump() -> Markup:
    control: Marks = {
        "id": "lesson-jump", "type": "text", "inputmode": "numeric", "autocomplete": "off", "maxlength": 3,
        "data-lesson-jump": True,
    }  # fmt: skip
    return h("p", {"class": "lesson-choice"}, h("label", {"for": "lesson-jump"}, classroom.GO_TO),
             h("span", {"class": "lesson-jump"}, h("input", control), _button("jump", classroom.GO)))  # fmt: skip


def _keys() -> Markup:
    rows = [h("div", None, h("dt", None, keys), h("dd", None, meaning)) for keys, meaning in classroom.KEYS]
    return join(h("h3", {"class": "lesson-keys-title"}, classroom.KEYS_TITLE), h("dl", {"class": "lesson-keys"}, rows))


def _panel(fields: Sequence[Field]) -> Markup:
    views = [
        _item(classroom.VIEW_KEYS[view], label, data_lesson_view=view, aria_pressed="false")
        for view, label in classroom.VIEWS.items()
    ]
    method = next((field for field in fields if field.name == METHOD), None)
    options = [(choice.value, choice.label) for choice in method.options] if method else []
    letters = method_keys(options)
    methods = [
        _item(letters[value], label, data_lesson_method=value, aria_pressed="false") for value, label in options
    ]
    if any(field.name == "order" for field in fields):
        methods.append(_item("O", classroom.OTHER_ORDER, data_lesson_do="pair"))
    uses = (
        ("Q", classroom.ASK_FIRST, "ask"), ("H", classroom.HIDE_ANSWER, "hide"), ("B", classroom.DARK, "dark"),
        ("L", classroom.LARGE, "large"), ("N", classroom.NIGHT, "night"), ("X", classroom.NO_GUESS, "unguess"),
        ("S", classroom.SHARE, "share"),
    )  # fmt: skip
    toggles = ("ask", "hide", "large")
    listed = [
        _item(letter, label, data_lesson_do=do, **({"aria_pressed": "false"} if do in toggles else {}))
        for letter, label, do in uses
    ]
    selects = [_select(field) for name in SELECTED for field in fields if field.name == name]
    marks: Marks = {"data-lesson-lead": True, "data-lead": classroom.MENU_LEAD,
                    "data-touch": classroom.MENU_LEAD_TOUCH, "data-next": classroom.NEXT_VIEW,
                    "data-back": classroom.VIEW_BEFORE}  # fmt: skip
    head = h("div", {"class": "lesson-menu-head"}, h("p", None, classroom.MENU_TITLE),
             h("p", marks, classroom.MENU_LEAD))  # fmt: skip
    rest = h("div", {"class": "lesson-rest"}, _items(classroom.WITH_CLASS, listed),
             h("p", {"class": "lesson-note"}, classroom.GUESS_HELP), h("h3", None, classroom.FURTHER),
             h("div", {"class": "lesson-choices"}, join(*selects), _jump()), _keys())  # fmt: skip
    return h("div", {"class": "lesson-panel", "id": "lesson-panel", "data-lesson-panel": True, "hidden": True}, head,
             _items(classroom.SHOW, views), _items(classroom.METHOD, methods) if methods else "", rest)  # fmt: skip


def _foot() -> Markup:
    """Return progress, which is also a slider, the buttons back and next, and the keys as buttons."""
    slider: Marks = {
        "type": "range", "min": 1, "max": 1, "value": 1, "step": 1, "autocomplete": "off",
        "aria-label": classroom.STEP, "data-lesson-slider": True,
    }  # fmt: skip
    scale = h("div", {"class": "lesson-progress"},
              h("div", {"data-lesson-region": "lesson-scale"}), h("input", slider))  # fmt: skip
    turning = h("div", {"class": "lesson-ways lesson-turning"},
                h("button", {"type": "button", "class": "first", "data-lesson-do": "play", "data-play": classroom.PLAY,
                             "data-pause": classroom.PAUSE}, classroom.PLAY),
                _button("back-ten", classroom.BACK_TEN), _button("on-ten", classroom.ON_TEN))  # fmt: skip
    ways = h("div", {"class": "lesson-ways lesson-stepping"}, _button("back", classroom.BACK),
             h("button", {"type": "button", "class": "first", "data-lesson-do": "next", "autofocus": True,
                          "data-next": classroom.NEXT, "data-show": classroom.SHOW_READING,
                          "data-onward": classroom.ONWARD, "data-return": classroom.BACK_TO_STEP}, classroom.NEXT),
             _button("close", classroom.CLOSE))  # fmt: skip
    switches = h("div", {"class": "lesson-switches"},
                 _button("more", _key("M", classroom.MENU), aria_expanded="false", aria_controls="lesson-panel"),
                 _button("why", _key("W", classroom.WHY), aria_pressed="false"),
                 _button("ask", _key("Q", classroom.ASK), aria_pressed="false"),
                 _button("draw", _key(classroom.DRAW_KEY, classroom.DRAW), data_lesson_key=classroom.DRAW_KEY.lower()),
                 _button("hide", _key("H", classroom.HIDE), aria_pressed="false"))  # fmt: skip
    return h("div", {"class": "lesson-foot"}, scale, turning, ways, switches)


def _guess() -> Markup:
    """Return the arrow that the class expects, over the picture; JavaScript places it."""
    marks: Marks = {"class": "lesson-guess", "viewBox": GUESS_BOX, "aria-hidden": "true", "data-lesson-guess": True,
                    "hidden": True}  # fmt: skip
    return h("svg", marks, h("line", {}), h("path", {}), h("text", {"font-size": "4"}, classroom.GUESS))


def lesson_html(fields: Sequence[Field]) -> Markup:
    """Return the lesson view as part of a page: closed and empty, its sentences in attributes."""
    text = h("div", {"class": "lesson-text", "tabindex": 0, "role": "group", "aria-label": classroom.STEP},
             h("p", {"class": "lesson-notice", "data-lesson-notice": True, "role": "status", "hidden": True}),
             h("div", {"data-lesson-region": "lesson-text"},
               h("div", None, h("p", {"class": "lesson-sentence"}, classroom.WAITING),
                 h("p", {"data-progress-too": True}))),
             h("div", {"data-lesson-region": "lesson-why"}))  # fmt: skip
    title = h("h2", {"class": "away", "id": "lesson-title"}, classroom.TITLE)
    words_column = h("div", {"class": "lesson-words"}, title, text, _panel(fields), _foot())
    pictures = [
        h("div", {"class": "lesson-picture", "data-lesson-region": name})
        for name in ("lesson-picture", "lesson-why-picture")
    ]
    pane = h("div", {"class": "lesson-pane"},
             h("div", {"class": "lesson-values", "data-lesson-region": "lesson-values"}),
             h("div", {"class": "lesson-stage"}, pictures, _guess()))  # fmt: skip
    typed = h("p", {"class": "lesson-typed", "data-lesson-typed": True, "data-words": classroom.TYPED, "hidden": True})
    live = h("p", {"class": "live", "aria-live": "polite", "data-lesson-live": True,
                   "data-hidden": classroom.HIDDEN, "data-waiting": classroom.WAITING})  # fmt: skip
    dark = h("div", {"class": "lesson-dark", "data-lesson-dark": True, "hidden": True})
    marks: Marks = {"class": "lesson over-page", "data-lesson": True, "aria-labelledby": "lesson-title"}
    return join(h("dialog", marks, words_column, pane, typed, live, dark), share_html())


def _two_ways(tag: str, usual: str, giving: str, **marks: str) -> Markup:
    """Return words of the panel that are others while a problem is given."""
    return h(tag, {**marks, "data-usual": usual, "data-giving": giving}, usual)


def share_html() -> Markup:
    """Return the QR code and its link; while a problem is given also its sheet, its handout and what its code is for.
    """
    link = h("p", {"class": "code-link"}, h("label", {"for": "code-link"}, classroom.LINK),
             h("input", {"id": "code-link", "type": "text", "readonly": True, "autocomplete": "off"}))  # fmt: skip
    buttons = [
        h("button", {"type": "button", "class": "first" if do == "copy" else None, "data-share-do": do,
                     "autofocus": do == "copy", "hidden": do == "send"}, label)
        for do, label in (("copy", classroom.COPY), ("send", classroom.SEND), ("close", classroom.CLOSE))
    ]  # fmt: skip
    files = [
        h("button", {"type": "button", "class": "plain", "data-share-do": do}, label)
        for do, label in (("sheet", give.SHEET), ("handout", give.HANDOUT), ("paper", give.TO_PAPER))
    ]
    files.append(h("a", {"href": "../question-papers/", "data-share-paper": True, "hidden": True}, give.OPEN_PAPER))
    said: Marks = {"data-share-said": True, "role": "status", "data-saved": furniture.PDF_READY,
                   "data-handed": give.HANDOUT_READY, "data-in-paper": give.IN_PAPER,
                   "data-paper-full": give.PAPER_FULL}  # fmt: skip
    column = h("div", {"class": "code-words"},
               _two_ways("h2", classroom.SHARE_TITLE, give.TITLE, id="code-title"),
               _two_ways("p", classroom.SHARE_LEAD, give.LEAD), h("p", {"data-share-told": True, "hidden": True}),
               h("p", {"class": "notice", "data-share-note": True, "hidden": True}),
               link, h("div", {"class": "more-actions", "data-share-files": True, "hidden": True}, files),
               h("p", said), h("div", {"class": "lesson-ways"}, buttons))  # fmt: skip
    marks: Marks = {"class": "code-panel over-page", "data-share-panel": True, "aria-labelledby": "code-title"}
    return h("dialog", marks, column, h("div", {"class": "code-large", "data-lesson-region": "code"}))


def more_actions_html() -> Markup:
    """Return the buttons for values to be given as a problem, the QR code, the handout, a photograph."""
    names = {"give": give.GIVE, "code": classroom.CODE, "handout": classroom.HANDOUT, "photo": furniture.PHOTO}
    row = [
        h("button", {"type": "button", "class": "plain", "data-action": name}, label) for name, label in names.items()
    ]
    return h("div", {"class": "more-actions"}, row)
