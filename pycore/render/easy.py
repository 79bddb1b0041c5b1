"""The moves for easy reading on the screen: large, one action on a line, to be ticked off and read aloud.

A small picture of each use of a tool follows when it is seen.
"""

from collections.abc import Mapping
from typing import Any

from pycore.render.elements import Marks, Markup, h
from pycore.render.phrase import phrase_html
from pycore.render.workings import protractor_link
from pycore.sums.page import SumPage
from pycore.sums.tool_uses import ToolMove, ToolMoves, ToolUse
from pycore.words import spoken as words
from pycore.words.phrase import Phrase
from pycore.writers import svg


def place_html() -> Markup:
    """Return the place of the moves and their buttons, empty until they are asked for."""
    back = h("button", {"type": "button", "data-easy-close": True}, words.CLOSE)
    aloud = h("button", {"type": "button", "data-aloud": words.ALOUD, "data-stop": words.STOP, "hidden": True},
              words.ALOUD)  # fmt: skip
    bar = h("div", {"class": "easy-bar"}, back, aloud)
    marks: Marks = {"class": "easy", "data-easy": True, "hidden": True, "aria-labelledby": "easy-title"}
    title = h("h2", {"id": "easy-title", "tabindex": -1}, words.TITLE)
    return h("section", marks, title, bar, h("div", {"data-region": "easy"}))


def button_html() -> Markup:
    """Return the button that shows them."""
    return h("button", {"type": "button", "class": "plain", "data-action": "easy"}, words.OPEN)


def _line(label: str, phrase: Phrase) -> Markup:
    head = h("span", {"class": "easy-label"}, label, ": ") if label else None
    spoken = f"{label}: {words.spoken(phrase)}" if label else words.spoken(phrase)
    return h("p", {"data-spoken": spoken, "class": "labelled" if label else None}, head, phrase_html(phrase))


def _use(use: ToolUse) -> Markup:
    """One use of a tool: its lines, and the place of its picture, which is made when it comes into view."""
    picture = h("div", {"class": "easy-picture", "data-easy-frame": use.frame}) if use.frame else None
    how = h("div", {"class": "easy-how"}, protractor_link()) if use.protractor else None
    return h("div", {"class": "easy-use"}, picture, [_line(line.label, line.phrase) for line in use.lines], how)


def _move(move: ToolMove) -> Markup:
    tick: Marks = {"type": "button", "class": "tick", "data-tick": move.number, "aria-pressed": "false",
                   "aria-label": words.done(move.number)}  # fmt: skip
    title = _line("", move.title) if move.title else None
    number = h("span", {"class": "easy-number", "aria-hidden": "true"}, str(move.number))
    return h("li", None, h("div", None, number, h("button", tick)), h("div", None, title, map(_use, move.uses)))


def reply(page: SumPage[Any], form: Mapping[str, str], frame: object = 0) -> dict[str, Any] | None:
    """Return the region ``easy``; for a ``frame`` its small picture, as ``picture``; None if there is no such frame.
    Raises InputError."""
    moves = ToolMoves(page.case(form))
    if frame != 0:
        if not isinstance(frame, int) or not 1 <= frame <= len(moves.lesson.frames):
            return None
        picture = svg.write(moves.picture(frame), prefix=f"easy-{frame}", role="view", view="easy")
        return {"ok": True, "regions": {"picture": picture}}
    listed = h("ol", {"class": "easy-moves", "role": "list"}, map(_move, moves.all()))
    return {"ok": True, "regions": {"easy": str(listed)}}
