"""Drawing on the screen: the view as it opens. Its sentences are in attributes; JavaScript shows and fills them."""

import json
from collections.abc import Collection, Iterable, Mapping
from typing import Any

from pycore.practice.task import AnswerRequest
from pycore.render.checking import labels_of
from pycore.render.draw_way import practice_way_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.words import checking, plain
from pycore.words import draw_here as words
from pycore.words.phrase import Phrase


def _button(do: str, label: object, kind: str = "plain", said: str = "", **more: Any) -> Markup:
    marks: Marks = {"type": "button", "class": kind, "data-draw-do": do, "aria-label": said or None}
    return h("button", {**marks, **{f"data-{name}": value for name, value in more.items()}}, label)


def _group(label: str, name: str, buttons: Iterable[Markup], *, hidden: bool = False) -> Markup:
    marks: Marks = {"class": "draw-group", "role": "group", "aria-label": label, f"data-draw-{name}": True,
                    "hidden": hidden}  # fmt: skip
    return h("div", marks, list(buttons))


def _pressed(do: str, choices: Mapping[str, str], first: str) -> list[Markup]:
    """Buttons of which one is pressed."""
    return [
        h("button", {"type": "button", "class": "plain", "data-draw-do": do, "data-value": value,
                     "aria-pressed": "true" if value == first else "false"}, label)
        for value, label in choices.items()
    ]  # fmt: skip


TOOLS = {"ruler": words.RULER, "protractor": words.PROTRACTOR, "square-60": words.SQUARE_60,
         "square-45": words.SQUARE_45, "compasses": words.COMPASSES}  # fmt: skip


def _tools(front: Collection[str]) -> list[Markup]:
    """The instruments, those that the method needs in front; the others come when they are asked for."""
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-draw-do": "tool", "data-value": name,
                     "aria-pressed": "true" if name == "ruler" else "false",
                     "data-draw-other": name not in front or None, "hidden": name not in front}, label)
        for name, label in sorted(TOOLS.items(), key=lambda tool: tool[0] not in front)
    ]  # fmt: skip
    others = h("button", {"type": "button", "class": "plain", "data-draw-do": "others", "aria-expanded": "false",
                          "aria-label": words.OTHERS_SAID}, words.OTHERS)  # fmt: skip
    return [*buttons, others]


def _bar(front: Collection[str]) -> Markup:
    """What can be done, at the foot: what helps with the verb in hand, instruments, verbs."""
    verbs = {"place": words.PLACE, "turn": words.TURN, "mark": words.MARK, "draw": words.DRAW}
    kinds = {"arrow": words.ARROW, "full": words.LINE, "dashed": words.DASHED}
    further = (
        _button("onto", words.ONTO), _button("along", words.ALONG),
        _button("against", words.SENTENCES["against-ruler"]),
        _button("less", words.LESS, said=words.LESS_SAID), _button("more", words.MORE_TURN, said=words.MORE_SAID),
    )
    steps = (
        _button("undo", words.UNDO), _button("redo", words.REDO),
        h("button", {"type": "button", "class": "plain", "data-draw-do": "rubber", "aria-pressed": "false"},
          words.RUBBER),
    )  # fmt: skip
    zoom = (
        _button("farther", words.FARTHER, said=words.FARTHER_SAID),
        _button("closer", words.CLOSER, said=words.CLOSER_SAID), _button("whole", words.WHOLE),
    )
    return h(
        "div", {"class": "draw-bar"},
        _group(words.INSTRUMENTS, "tools", _tools(front)),
        _group(words.VERBS, "verbs", _pressed("verb", verbs, "place")),
        _group(words.LINE_KINDS, "kinds", _pressed("kind", kinds, "arrow"), hidden=True),
        _group(words.FURTHER, "further", further), _group(words.FURTHER, "steps", steps),
        _group(words.FURTHER, "zoom", zoom),
    )  # fmt: skip


def _fold(title: str, *parts: object, name: str = "") -> Markup:
    return h("details", {"class": "draw-fold", "data-draw-fold": name or None}, h("summary", None, title), parts)


def _names(names: Mapping[str, Phrase]) -> Markup:
    """The problem's own names, for the arrow that was drawn last or that is asked for."""
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-draw-do": "name", "data-value": key,
                     "aria-label": plain(tag)}, phrase_html(tag))
        for key, tag in names.items()
    ]  # fmt: skip
    buttons.append(_button("name", words.NO_NAME, value=""))
    lead = h("p", {"data-draw-asked": True}, words.SENTENCES["name-it"])
    marks: Marks = {"class": "draw-names", "data-draw-names": True, "hidden": True}
    return h("div", marks, lead, h("div", {"class": "draw-row", "role": "group", "aria-label": words.NAMES}, buttons))


def _entry(name: str, label: Phrase | str, unit: str) -> Markup:
    control = h("input", {"id": f"draw-{name}", "name": name, "type": "text", "inputmode": "decimal",
                          "autocomplete": "off", "spellcheck": "false", "maxlength": 40,
                          "aria-describedby": f"draw-m-{name}"})  # fmt: skip
    return h("div", {"class": "draw-field"}, h("label", {"for": f"draw-{name}"}, phrase_html(label), f" ({unit})"),
             control, h("p", {"class": "message", "id": f"draw-m-{name}", "data-draw-message": name,
                              "hidden": True}))  # fmt: skip


def _reading(asked: AnswerRequest | None) -> Markup | None:
    """The reading off the drawing, to be marked as one from paper; none where nothing is read in millimetres."""
    if asked is None or "mm" not in asked.units:
        return None
    labels = labels_of(asked)
    fields = [_entry("answer", labels["answer"], "mm")]
    if "answer-angle" in labels:
        fields.append(_entry("answer-angle", labels["answer-angle"], "°"))
    if "answer-side" in labels:
        options = [h("option", {"value": value}, label) for value, label in checking.SIDES]
        fields.append(h("div", {"class": "draw-field"}, h("label", {"for": "draw-answer-side"}, checking.SIDE),
                        h("select", {"id": "draw-answer-side", "name": "answer-side", "autocomplete": "off"},
                          options)))  # fmt: skip
    ways = h("p", {"class": "draw-row"}, h("button", {"type": "submit", "class": "first"}, words.READ_MARK),
             practice_way_html())  # fmt: skip
    marked = h("div", {"data-draw-marked": True, "tabindex": -1, "class": "marked-place"})
    form = h("form", {"data-draw-read": True, "novalidate": True, "autocomplete": "off"},
             h("p", None, words.READ_LEAD), fields, ways, marked)  # fmt: skip
    return _fold(words.READ, form, name="read")


def _options() -> Markup:
    def check(mark: str, label: str, *, checked: bool) -> Markup:
        box: Marks = {"type": "checkbox", mark: True, "checked": checked, "autocomplete": "off"}
        return h("label", {"class": "draw-check"}, h("input", box), h("span", None, label))

    checks = (
        check("data-draw-each", words.EACH, checked=False), check("data-draw-catch", words.CATCH, checked=True),
    )  # fmt: skip
    file: Marks = {"type": "file", "id": "draw-open", "data-draw-open": True, "accept": ".json,application/json"}
    open_file = h("p", {"class": "draw-file"}, h("input", file), h("label", {"for": "draw-open"}, words.OPEN))
    buttons = (
        _button("replay", words.REPLAY), _button("print", words.PRINT), _button("save", words.SAVE),
        _button("save-svg", words.SAVE_SVG), open_file, _button("afresh", words.AFRESH),
    )  # fmt: skip
    return _fold(words.MORE, *checks, h("div", {"class": "draw-row"}, buttons), name="more")


def panel_html(
    names: Mapping[str, Phrase],
    head: tuple[str, str],
    problem: Iterable[Phrase],
    moves: Iterable[Phrase],
    asked: AnswerRequest | None,
    front: Collection[str],
    *,
    begun: bool,
) -> Markup:
    """Return the view, with the instruments in ``front``: head with values and scale, words, board, bar; ``begun``: the
    sheet has drawn phasors already."""
    sentences = {**words.SENTENCES, **{f"prompt-{verb}": said for verb, said in words.PROMPTS.items()},
                 **{f"kind-{kind}": said for kind, said in words.KIND_NAMES.items()},
                 **({"afresh": words.AFRESH_BEGUN} if begun else {}),
                 "remove": words.REMOVE, "rename": words.RENAME, "no-lines": words.NO_LINES,
                 **{f"tool-{name}": label for name, label in TOOLS.items()},
                 "verb-place": words.PLACE, "verb-turn": words.TURN, "verb-open": words.OPEN_COMPASSES,
                 "verb-mark": words.MARK, "verb-draw": words.DRAW}  # fmt: skip
    question, *given = problem
    above = h("header", {"class": "draw-head"}, h("h2", {"id": "draw-title"}, words.TITLE),
              h("p", {"class": "draw-values"}, [(h("span", None, one), " ") for one in head]),
              h("button", {"type": "button", "class": "plain", "data-draw-do": "full", "aria-pressed": "false",
                           "hidden": True}, words.FULL_SCREEN),
              _button("close", words.CLOSE))  # fmt: skip
    listed = [h("li", None, phrase_html(move)) for move in moves]
    folds = (
        _fold(words.PROBLEM, [h("p", None, phrase_html(one)) for one in (question, *given)], name="problem"),
        _reading(asked),
        _fold(words.MOVES, h("ol", None, listed), name="moves") if listed else None,
        _fold(words.LINES, h("ol", {"data-draw-lines": True}), name="lines"),
        _fold(words.KEYS, [h("p", None, line) for line in words.KEY_LINES], name="keys"),
        _options(),
    )
    beside = h(
        "div", {"class": "draw-words", "data-draw-words": True},
        h("p", {"class": "draw-question"}, phrase_html(question)),
        h("div", {"class": "draw-now"},
          h("p", {"class": "draw-prompt", "data-draw-prompt": True}, words.PROMPTS["place"]),
          _button("judge", words.JUDGE, "first")),
        _names(names),
        h("div", {"class": "draw-result", "data-draw-result": True, "tabindex": -1}),
        h("button", {"type": "button", "class": "plain", "data-draw-do": "true", "aria-pressed": "false",
                     "hidden": True}, words.TRUE),
        h("details", {"class": "draw-all", "data-draw-fold": "all"}, h("summary", None, words.FURTHER_HEAD), folds),
    )  # fmt: skip
    board = h("div", {"class": "draw-board", "data-draw-board": True, "tabindex": 0, "role": "application",
                      "aria-label": words.BOARD, "aria-describedby": "draw-steer"})  # fmt: skip
    steer = h("p", {"class": "away", "id": "draw-steer"}, " ".join(words.KEY_LINES))
    live = h("p", {"class": "away", "data-draw-live": True, "role": "status"})
    marks: Marks = {"class": "draw-panel", "data-draw-panel": True, "data-sentences": json.dumps(sentences)}
    return h("div", marks, above, beside, board, _bar(front), join(steer, live))
