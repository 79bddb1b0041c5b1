"""Drawing on the screen: the request ``draw``. It opens the view, or judges lines in mm."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from pycore import quantity
from pycore.geometry import Point
from pycore.practice import arcs_here
from pycore.practice.drawn import JudgedLine
from pycore.practice.drawn_here import JudgedDrawing, judge_strokes
from pycore.practice.lines_here import KINDS, Stroke
from pycore.practice.marking import ACCEPT
from pycore.practice.photograph import Path
from pycore.render.draw_panel import panel_html
from pycore.render.draw_tools import instruments, needed
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.own_arrow import label
from pycore.render.phrase import phrase_html
from pycore.render.refusals import BadRequestError
from pycore.sums.drawn_here import Candidate, DrawingTask, drawing_task
from pycore.sums.on_screen import link_on_screen
from pycore.sums.page import SumPage
from pycore.words import arcs_here as arc_words
from pycore.words import draw_here as words
from pycore.words import photograph as photo_words
from pycore.words import plain
from pycore.words.phrase import Phrase, listed_phrases
from pycore.writers import svg

MOST_LINES, LARGEST, LONGEST_NAME, LONGEST_TEXT = 300, 5_000.0, 20, 20_000


# The view as it opens.


def _opened(page: SumPage[Any], form: Mapping[str, str], task: DrawingTask, *, held: bool) -> dict[str, Any]:
    case, plan = task.case, task.plan
    names, inks = task.names(), case.inks()
    moves = () if held else task.moves()
    asked = page.answer(form, ("check",)).answer_request
    head = case.values_text(), case.notation.scale(plan.scale)
    front = needed(plan.construction)
    panel = panel_html(names, head, task.problem(), moves, asked, front, begun=bool(task.printed))
    zero = task.zero()
    sheet = svg.write(task.page, prefix="draw-paper", role="view", view="draw")
    return {
        "ok": True,
        "regions": {"draw": str(panel)},
        "paper": {"svg": sheet, "width": task.page.width, "height": task.page.height, "page": plan.layout.page_key},
        "start": [task.origin.x, task.page.height - task.origin.y],
        "printed": [_printed(line, task.page.height) for line in task.printed],
        "zero": None if zero is None else [zero.x, task.page.height - zero.y],
        "tools": instruments(task, form),
        "front": front,
        "names": {
            key: {"plain": plain(tag), "label": str(join(*label(tag))), "ink": inks.get(key, "ink")}
            for key, tag in names.items()
        },
        "problem": link_on_screen(case),
    }


def _printed(line: Stroke, height: float) -> dict[str, Any]:
    """An arrow that the sheet has drawn already: learners draw on from its tip, and do not draw it."""
    (x1, y1), (x2, y2) = line.start, line.end
    return {"kind": line.kind, "x1": x1, "y1": height - y1, "x2": x2, "y2": height - y2, "name": line.name}


# What is said of lines.


def _number(value: float, mark: str) -> str:
    return quantity.fixed(math.fabs(value), 1, mark)


def _name(line: JudgedLine) -> Phrase:
    if line.kind == arcs_here.KIND:
        return arc_words.arc(line.symbol)
    return photo_words.dashed(line.symbol) if line.kind == "dashed" else line.symbol


def _off(line: JudgedLine, mark: str) -> Phrase:
    """By how much a line is off, in what it is off."""
    if line.kind == arcs_here.KIND and line.bands[0] == ACCEPT:
        return arc_words.centre_off(line.symbol, _number(line.off, mark))
    if line.kind == arcs_here.KIND:
        return arc_words.radius_off(line.symbol, _number(line.length - line.expected, mark))
    if line.expected == 0.0:
        return words.gap(_name(line), _number(line.length, mark))
    length = _number(line.length - line.expected, mark) if line.bands[0] != ACCEPT else ""
    angle = _number(line.off, mark) if line.bands[1] != ACCEPT else ""
    return words.off_by(_name(line), length, angle)


def _first_off(judged: JudgedDrawing) -> tuple[JudgedLine, int] | None:
    """The first line that is not right, with the move that draws it; a wrong one before one that is near its limit."""
    off = [(line, wanted.index) for line, _, wanted in judged.lines if line.band != ACCEPT]
    wrong = [one for one in off if one[0].band == "wrong"]
    return next(iter(wrong or off), None)


def _all_alike(judged: JudgedDrawing, mark: str) -> Phrase | None:
    if judged.longer:
        share = quantity.plain(round(100 * math.fabs(judged.longer), 1), mark)
        return photo_words.all_longer(share, longer=judged.longer > 0)
    return photo_words.all_shifted(quantity.plain(round(math.fabs(judged.shifted)), mark)) if judged.shifted else None


def _about(judged: JudgedDrawing, candidate: Candidate, task: DrawingTask, *, held: bool) -> list[Phrase]:
    """What is said of the first line that is off."""
    mark = task.case.notation.mark
    alike = _all_alike(judged, mark)
    if alike:
        return [alike]
    first = _first_off(judged)
    if first is None:
        return []
    line, index = first
    astray = any(slip.key in ("start", "arc-centre") for slip in line.slips)
    said: list[Phrase] = [] if held or astray else [_off(line, mark)]
    said += [words.looks_like(slip.name) for slip in line.slips]
    said += [slip.look for slip in line.slips]
    if not line.slips and line.band == "wrong":
        said.append(photo_words.no_slip(_name(line)))
    said.append(words.look_at(candidate.move_of(index, task.case)[0]))
    return [*said, words.ONE_WRONG_NEXT]


def _headline(judged: JudgedDrawing, task: DrawingTask) -> Phrase:
    if judged.unknown:
        return words.ASKED
    if not judged.lines:
        return words.nothing_yet(task.begun()) if task.printed else words.NOTHING
    if judged.mirrored:
        return photo_words.MIRRORED_DRAWING
    wrong = len([line for line, _, _ in judged.lines if line.band == "wrong"])
    if wrong:
        return photo_words.some_off(wrong)
    if judged.band != ACCEPT:
        return photo_words.look_again()
    return photo_words.GOOD_SO_FAR if judged.missing else photo_words.ALL_GOOD


def _rows(judged: JudgedDrawing) -> Markup:
    rows = []
    for line, stroke, _ in judged.lines:
        marks: Marks = {"data-band": line.band, "data-draw-line": stroke, "data-ends": "-".join(line.ends)}
        rows.append(h("li", marks, h("span", None, phrase_html(_name(line))), " ",
                      h("strong", None, photo_words.BANDS[line.band])))  # fmt: skip
    return h("ul", {"class": "draw-judged", "role": "list"}, rows) if rows else join()


def _judged(task: DrawingTask, strokes: Sequence[Stroke], *, held: bool) -> dict[str, Any]:
    best: tuple[int, Candidate, JudgedDrawing] | None = None
    for candidate in task.candidates():
        judged = judge_strokes(candidate.drawing, strokes, task.origin, task.printed)
        if best is None or judged.right > best[0]:
            best = judged.right, candidate, judged
    if best is None:
        raise BadRequestError
    _, candidate, judged = best
    phrases = [_headline(judged, task), *_about(judged, candidate, task, held=held)]
    if candidate is not task.own and judged.lines:
        phrases.append(words.follows(task.case.method_title(candidate.method, candidate.order)))
    done = bool(judged.lines) and not judged.missing and not judged.unknown
    if done and judged.band == ACCEPT:
        phrases.append(words.DONE)
    first, *others = phrases
    said = h("p", {"class": "draw-headline", "data-draw-band": judged.band}, phrase_html(first))
    back: Marks = {"type": "button", "class": "plain draw-to-paper", "data-draw-do": "paper"}
    html = join(said, [h("p", None, phrase_html(one)) for one in others], _rows(judged),
                h("button", back, words.TO_PAPER))  # fmt: skip
    right = list(dict.fromkeys(_name(line) for line, _, _ in judged.lines if line.band == ACCEPT))
    aloud = (*phrases, words.is_true(listed_phrases(right))) if judged.band != ACCEPT and right else phrases
    return {
        "ok": True,
        "regions": {"draw-result": str(html)},
        "announce": photo_words.announced(tuple(aloud)),
        "bands": [[stroke, line.band] for line, stroke, _ in judged.lines],
        "ask": list(judged.unknown),
        "done": done,
        "method": candidate.method,
        "true": [] if held or not done else [_true(path, task) for path in judged.true],
    }


def _true(path: Path, task: DrawingTask) -> dict[str, Any]:
    height = task.page.height
    return {"role": path.role, "points": [[round(x, 2), round(height - y, 2)] for x, y in path.points]}


# The request.


def _stroke(line: object, height: float) -> Stroke:
    if not isinstance(line, list) or len(line) != 6 or line[0] not in KINDS:
        raise BadRequestError
    arc = line[0] == arcs_here.KIND
    numbers, name = (line[1:], "") if arc else (line[1:5], line[5])
    if not isinstance(name, str):
        raise BadRequestError
    if not all(isinstance(n, int | float) and not isinstance(n, bool) and math.fabs(n) <= LARGEST for n in numbers):
        raise BadRequestError
    x1, y1, x2, y2, sweep = (*(float(n) for n in numbers), 0.0)[:5]
    return Stroke(line[0], Point(x1, height - y1), Point(x2, height - y2), name[:LONGEST_NAME], sweep)


def reply(page: SumPage[Any], request: Mapping[str, Any], form: Mapping[str, str]) -> dict[str, Any]:
    """Answer a request ``draw``: without ``lines`` the view, with them what they are worth.

    A line is ``[kind, x1, y1, x2, y2, name]``, in mm from the left and from the top of the sheet; an arc has its centre
    first, then where it begins, and how far it goes (degrees, anticlockwise) in the place of a name. With ``veiled`` no
    right value is in the reply. With ``text``, that of a picture to be saved, only the lettering for it. Raises
    InputError for a form that cannot be used, BadRequestError for an unknown request.
    """
    text = request.get("text")
    if isinstance(text, str):
        from pycore.lettering.embedded import faces_css  # The fonts are wanted for no other request of the view.

        return {"ok": True, "faces": faces_css(text[:LONGEST_TEXT])}
    task, held, lines = drawing_task(page, form), request.get("veiled") is True, request.get("lines")
    if lines is None:
        return _opened(page, form, task, held=held)
    if not isinstance(lines, list) or len(lines) > MOST_LINES:
        raise BadRequestError
    return _judged(task, [_stroke(line, task.page.height) for line in lines], held=held)
