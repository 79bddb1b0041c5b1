"""What the device stores of the site: the question where loading it may cost something, what there is, and the offer of
a newer version once all of it is there."""

from pycore.render.elements import Marks, Markup, h
from pycore.words import furniture


def _button(what: str, label: str) -> Markup:
    return h("button", {"type": "button", "data-store": what}, label)


def stored_html() -> Markup:
    """Return the line of the foot that says whether the site is stored, and changes it; hidden until that is known."""
    sentences = {
        "stored": furniture.STORED, "partly": furniture.PARTLY_STORED, "not-stored": furniture.NOT_STORED,
        "refused": furniture.CANNOT_STORE,
    }  # fmt: skip
    said = h("span", {f"data-{name}": sentence for name, sentence in sentences.items()})
    marks: Marks = {"class": "foot-stored", "data-stored-line": True, "hidden": True}
    return h("p", marks, said, " ", _button("yes", furniture.STORE), _button("no", furniture.REMOVE))


def ask_html() -> Markup:
    """Return the strip that asks before the site is stored over a connection that is metered or slow."""
    marks: Marks = {"class": "edition", "data-store-ask": True, "role": "status", "hidden": True}
    buttons = _button("yes", furniture.STORE_YES), _button("no", furniture.STORE_NO)
    return h("div", marks, h("p", None, furniture.STORE_ASK), buttons)


def edition_html() -> Markup:
    """Return the strip with the offer; hidden until JavaScript has something to offer."""
    button = h("button", {"type": "button"}, furniture.TAKE_EDITION)
    marks: Marks = {
        "class": "edition", "data-edition-offer": True, "role": "status", "hidden": True,
        "data-lost": furniture.EDITION_LOSES,
    }  # fmt: skip
    return h("div", marks, h("p", None, furniture.NEWER_EDITION), button)


def not_kept_html() -> Markup:
    """Return the strip that says what the browser did not keep, with a file of it; hidden until that happens."""
    buttons = [
        h("button", {"type": "button", "data-not-kept-do": do}, label)
        for do, label in (("save", furniture.SAVE_FILE), ("close", furniture.CLOSE))
    ]
    sentences: Marks = {f"data-{thing}": sentence for thing, sentence in furniture.NOT_KEPT.items()}
    marks: Marks = {"class": "edition", "data-not-kept": True, "role": "status", "hidden": True, **sentences}
    return h("div", marks, h("p"), buttons)
