"""Checking a drawing by its photograph: the panel in which a photograph is chosen and its points are marked."""

from collections.abc import Mapping, Sequence

from pycore.render.elements import Marks, Markup, h
from pycore.sheet.media import PAPERS
from pycore.words import photograph as words

CORNERS = "corners"


def _button(do: str, label: str, kind: str = "plain", *, hidden: bool = True) -> Markup:
    return h("button", {"type": "button", "class": kind, "data-photo-do": do, "hidden": hidden}, label)


def _file(label: str, name: str, *, camera: bool) -> Markup:
    """Return a button that is a file field; with ``camera`` a phone opens its camera at once."""
    marks: Marks = {
        "type": "file", "accept": "image/*", "id": f"photo-{name}", "data-photo-file": True,
        "capture": "environment" if camera else None,
    }  # fmt: skip
    return h("p", {"class": "photo-file"}, h("input", marks), h("label", {"for": f"photo-{name}"}, label))


def _select(name: str, label: str, options: Sequence[tuple[str, str]], chosen: str) -> Markup:
    listed = [h("option", {"value": value, "selected": value == chosen}, text) for value, text in options]
    control = h("select", {"id": f"photo-{name}", "data-photo-set": name, "autocomplete": "off"}, listed)
    return h("p", {"class": "photo-choice", "data-photo-for": None if name == "ground" else CORNERS},
             h("label", {"for": f"photo-{name}"}, label), control)  # fmt: skip


def panel_html(form: Mapping[str, str], own: tuple[str, str] | None = None) -> Markup:
    """Return the panel as it opens: choose a photo. Its sentences are in attributes; JavaScript shows them.

    ``own``: size and orientation of the learner's own paper, if the drawing is on that.
    """
    paper, way = own or (form.get("paper", "A4"), "portrait")
    grounds = [one for one in words.GROUNDS if own is None or one[0] == CORNERS]
    paper = paper if paper in PAPERS else "A4"
    attributes: Marks = {
        "class": "photo-panel", "data-photo-panel": True, "data-looking": words.LOOKING,
        "data-found": words.MARKS_FOUND, "data-none": words.NO_MARKS, "data-corners": words.DRAG_CORNERS,
        "data-misfit": words.marks_do_not_fit(paper), "data-drag": words.DRAG_MARKS,
        "data-unreadable": words.NOT_A_PICTURE, "data-small": words.TOO_SMALL, "data-saved": words.SAVED,
        "data-steer": words.POINTS_LEAD,
    }  # fmt: skip
    choose = h("div", {"class": "photo-choose", "data-photo-stage": "choose"},
               h("p", None, words.LEAD),
               _select("ground", words.GROUND, grounds, grounds[0][0]),
               _select("paper", words.PAPER, [(name, name) for name in PAPERS], paper),
               _select("way", words.WAY, words.WAYS, way),
               h("div", {"class": "photo-files"}, _file(words.TAKE, "take", camera=True),
                 _file(words.CHOOSE, "choose", camera=False)))  # fmt: skip
    picture = h("div", {"class": "photo-picture", "data-photo-picture": True, "role": "group",
                        "aria-label": words.PICTURE},
                h("canvas", {"data-photo-canvas": True}), h("canvas", {"data-photo-drawn": True}),
                h("div", {"data-photo-handles": True}),
                h("canvas", {"class": "photo-loupe", "data-photo-loupe": True, "hidden": True}))  # fmt: skip
    buttons = (
        _button("marks-done", words.MARKS_DONE, "first"), _button("turn", words.TURN),
        _button("not-drawn", words.NOT_DRAWN), _button("overlay", words.OVERLAY), _button("save", words.SAVE),
        _button("back", words.BACK), _button("whole", words.WHOLE),
        _button("move-marks", words.MOVE_MARKS), _button("again", words.AGAIN),
    )  # fmt: skip
    row = h("div", {"class": "photo-buttons"}, buttons)
    steer = h("p", {"class": "photo-help", "data-photo-help": True})
    measuring = h("div", {"class": "photo-measure", "data-photo-stage": "measure", "hidden": True}, picture, steer, row)
    head = h("div", {"class": "photo-head"}, h("h2", {"id": "photo-title"}, words.TITLE),
             _button("close", words.CLOSE, hidden=False))  # fmt: skip
    prompt = h("p", {"class": "photo-prompt", "data-photo-prompt": True, "role": "status"})
    result = h("div", {"class": "photo-result", "data-photo-result": True, "tabindex": -1})
    return h("div", attributes, head, choose, prompt, measuring, result)
