"""The camera's window as HTML: the live picture, what is seen in it, and the button that takes a sheet."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import camera as words


def _button(do: str, label: str, kind: str, *, first: bool = False) -> Markup:
    return h("button", {"type": "button", "class": kind, "data-camera-do": do, "autofocus": first}, label)


def window_html(app: Markup) -> Markup:
    """Return the window, closed; its sentences are in attributes. ``app``: the file field that opens the device's own
    camera app, which is the way where there is no live picture."""
    sentences = {f"data-{name}": text for name, text in (*words.SEEN.items(), *words.WITHOUT.items())}
    marks: Marks = {"class": "camera over-page", "data-camera": True, "data-state": "starting",
                    "data-count": words.COUNT, "data-unread": words.UNREAD, "aria-labelledby": "camera-title",
                    **sentences}  # fmt: skip
    head = h("div", {"class": "camera-head"}, h("h2", {"id": "camera-title"}, words.TITLE),
             _button("close", words.CLOSE, "plain"))  # fmt: skip
    picture = h("div", {"class": "camera-picture", "data-camera-picture": True},
                h("video", {"data-camera-video": True, "aria-label": words.PICTURE, "playsinline": True,
                            "muted": True}),
                h("span", {"class": "camera-sign", "aria-hidden": "true"}))  # fmt: skip
    by_itself = h("p", {"class": "camera-choice"},
                  h("label", None, h("input", {"type": "checkbox", "data-camera-by-itself": True, "checked": True,
                                               "autocomplete": "off"}),
                    h("span", None, words.BY_ITSELF)))  # fmt: skip
    live = h("div", {"data-camera-live": True}, _button("take", words.TAKE, "first camera-take", first=True), by_itself)
    side = h("div", {"class": "camera-side"},
             h("p", {"class": "camera-said", "role": "status", "data-camera-said": True}), live,
             h("p", {"class": "camera-count", "data-camera-count": True}),
             h("p", {"class": "help"}, words.APP), app, h("p", {"class": "help"}, words.PRIVATE))  # fmt: skip
    return h("dialog", marks, head, h("div", {"class": "camera-body"}, picture, side))
