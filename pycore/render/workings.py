"""The workings: every calculation and construction, as sections of one document."""

from collections.abc import Sequence

from pycore.render.answer import old_label, set_values
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.mathml import formula_html, is_long
from pycore.render.phrase import phrase_html
from pycore.sums.answer import (
    Alternative,
    Answer,
    Block,
    BulletList,
    Equation,
    Grid,
    Move,
    Paragraph,
    Working,
    WorkingPicture,
)
from pycore.words import furniture, readings
from pycore.words.phrase import Phrase
from pycore.writers import svg


def protractor_link() -> Markup:
    """Return the way from a move to the page that shows how a protractor is read."""
    return h("a", {"href": f"../{readings.PROTRACTOR_SLUG}/"}, readings.PROTRACTOR_TITLE)


def _move(move: Move, tabindex: int | None) -> Markup:
    how = (" ", protractor_link()) if move.protractor else ()
    why = h("span", {"class": "why"}, " ", phrase_html(move.why), *how) if move.why or how else None
    return h("li", {"data-for-step": move.step, "tabindex": tabindex}, phrase_html(move.phrase), why)


def _moves(moves: Sequence[Move], start: int, *, held: bool) -> Markup:
    """Return moves as a list; of those that can be taken in hand (``held``) the first is reached by Tab."""
    places = (0, -1) if held else (None, None)
    marks: Marks = {"class": "moves", "role": "list", "start": start if start > 1 else None}
    return h("ol", marks, [_move(move, places[index > 0 or start > 1]) for index, move in enumerate(moves)])


def _scroller(wide: bool, name: str, label: str, *children: object) -> Markup:
    """Return a block that scrolls by itself and by keyboard, if it may be wider than a phone."""
    marks: Marks = {"class": name}
    if wide:
        marks |= {"tabindex": 0, "role": "group", "aria-label": label}
    return h("div", marks, *children)


def _equation(equation: Equation) -> Markup:
    before = h("p", {"class": "before"}, phrase_html(equation.before)) if equation.before else None
    wide = any(is_long(line) for line in equation.lines)
    lines = [formula_html(line) for line in equation.lines]
    return join(before, _scroller(wide, "equation", furniture.CALCULATION, lines))


def _row(cells: Sequence[Phrase], last: bool) -> Markup:
    first = h("th", {"scope": "row"}, phrase_html(cells[0]))
    rest = [h("td", None, phrase_html(cell)) for cell in cells[1:]]
    return h("tr", {"class": "total" if last else None}, first, rest)


def _grid(grid: Grid) -> Markup:
    head = h("thead", None, h("tr", None, [h("th", {"scope": "col"}, phrase_html(cell)) for cell in grid.head]))
    end = len(grid.rows) - 1
    body = h("tbody", None, [_row(row, grid.total and index == end) for index, row in enumerate(grid.rows)])
    caption = h("caption", None, phrase_html(grid.caption)) if grid.caption else None
    return _scroller(True, "grid", furniture.CALCULATION, h("table", None, caption, head, body))


def _picture(picture: WorkingPicture) -> Markup:
    drawing = svg.write(picture.page, prefix=f"picture-{picture.name}", role="view", view=picture.name)
    return h("div", {"class": "inset"}, Markup.trusted(drawing))


def block_html(block: Paragraph | Equation | Grid | BulletList | WorkingPicture) -> Markup:
    """Return one block that is not a numbered move."""
    if isinstance(block, WorkingPicture):
        return _picture(block)
    if isinstance(block, BulletList):
        items = [h("li", None, phrase_html(item)) for item in block.items]
        return h("ul", {"class": "points", "role": "list"}, items)
    if isinstance(block, Equation):
        return _equation(block)
    if isinstance(block, Grid):
        return _grid(block)
    return h("p", {"class": "caution" if block.caution else "words"}, phrase_html(block.phrase))


def blocks_html(blocks: Sequence[Block], *, held: bool = False) -> Markup:
    """Return blocks in order; consecutive moves share a list and are numbered throughout.

    ``held``: the moves of the drawing on the sheet, each of which can be taken in hand.
    """
    parts: list[Markup] = []
    waiting: list[Move] = []
    counted = 0
    for block in (*blocks, None):
        if isinstance(block, Move):
            waiting.append(block)
            continue
        if waiting:
            parts.append(_moves(waiting, counted + 1, held=held))
            counted += len(waiting)
            waiting = []
        if block is not None:
            parts.append(block_html(block))
    return join(parts)


def _alternatives(alternatives: Sequence[Alternative]) -> Markup | None:
    """Return the other orders of the method on the sheet, each with the values that bring it."""
    if not alternatives:
        return None
    items = [
        h("li", None, h("button", {"type": "button", "class": "plain", "data-set": set_values(one.values)},
                        phrase_html(one.phrase)))
        for one in alternatives
    ]  # fmt: skip
    return h("details", {"class": "alternatives", "data-keep": "alternatives"},
             h("summary", None, furniture.OTHER_ORDER), h("ul", None, items))  # fmt: skip


def _working(working: Working, alternatives: Sequence[Alternative] = ()) -> Markup:
    body = h("div", {"class": "body"}, blocks_html(working.blocks, held=working.on_sheet))
    heading = h("h2", None, phrase_html(working.title))
    marks: Marks = {"class": "working", "data-working": working.key}
    if working.on_sheet:
        return h("section", marks | {"data-shown": True}, heading, _alternatives(alternatives), body)
    return h("details", marks | {"data-keep": f"working-{working.key}"}, h("summary", None, heading), body)


def workings_html(answer: Answer) -> Markup:
    """Return the region ``workings``: the one on the sheet first and open, the others folded below it."""
    on_sheet = [working for working in answer.workings if working.on_sheet]
    others = [working for working in answer.workings if not working.on_sheet]
    shown = [_working(working, answer.alternatives if index == 0 else ()) for index, working in enumerate(on_sheet)]
    return join(old_label(answer, furniture.OLD_WORKINGS), shown, [_working(working) for working in others])
