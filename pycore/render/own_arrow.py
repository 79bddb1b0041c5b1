"""A learner's own arrow, drawn beside the right one from the same point: only where the answer is not held back."""

import math

from pycore import phasor
from pycore.constructions.construction import DrawingConvention
from pycore.practice.answers import AnswerJudgement
from pycore.practice.explaining import points_of
from pycore.practice.task import Task
from pycore.render.elements import Marks, Markup, h, join
from pycore.words import marking as words
from pycore.words import plain
from pycore.words.phrase import Phrase, Symbol

WIDE, MARGIN, HEAD = 100.0, 16.0, 4.0
"""Units of the picture: the longer side of what both arrows take up, room for names, length of a head."""


def own_point(task: Task, reply: AnswerJudgement) -> complex | None:
    """Where a wrong answer ends, counted from the direction drawn first; None if it says no direction, and no mistake
    that is sure gives it one."""
    points = points_of(reply.answer)
    if reply.partial or reply.answer.size == 0.0:
        return None
    if len(points) == 1:
        return points[0]
    causes = reply.marked.causes
    if not points and len(causes) == 1 and causes[0].sure:
        return causes[0].mistakes[0].point
    return None


def _on_paper(picture: DrawingConvention, point: complex) -> tuple[float, float]:
    """A phasor on the paper: to the right and down."""
    base = 90.0 if picture.first == "up" else 0.0
    turned = complex(point.real, picture.sense * point.imag) * phasor.polar(1.0, base)
    return turned.real, -turned.imag


def label(name: Phrase) -> list[Markup | str]:
    """A name as text of a picture, with its indices lowered."""
    parts: list[Markup | str] = []
    for piece in name:
        if isinstance(piece, Symbol):
            parts.append(h("tspan", {"font-style": "italic"}, piece.letter))
            parts.append(h("tspan", {"dy": "1.6", "font-size": "70%"}, piece.index) if piece.index else "")
        else:
            parts.append(plain((piece,)))
    return parts


def _arrow(kind: str, end: tuple[float, float], name: Phrase) -> Markup:
    """An arrow from (0, 0), with its name beyond its head."""
    x, y = end
    size = math.hypot(x, y) or 1.0
    along, across = (x / size, y / size), (-y / size, x / size)
    base = (x - HEAD * along[0], y - HEAD * along[1])
    wings = ((base[0] + side * across[0], base[1] + side * across[1]) for side in (1.4, -1.4))
    corners = " ".join(f"{right:.2f},{down:.2f}" for right, down in wings)
    text: Marks = {"x": f"{x + 7.0 * along[0]:.2f}", "y": f"{y + 7.0 * along[1] + 1.8:.2f}", "text-anchor": "middle"}
    line = h("line", {"x1": 0, "y1": 0, "x2": f"{base[0]:.2f}", "y2": f"{base[1]:.2f}"})
    head = h("polygon", {"points": f"{x:.2f},{y:.2f} {corners}"})
    return h("g", {"class": kind}, line, head, h("text", text, label(name)))


def arrows_html(picture: DrawingConvention, task: Task, reply: AnswerJudgement) -> Markup:
    """Return both arrows as a picture; nothing if the answer has no direction."""
    own = own_point(task, reply)
    if own is None:
        return join()
    ends = _on_paper(picture, own), _on_paper(picture, task.result)
    xs, ys = ([0.0, *(end[axis] for end in ends)] for axis in (0, 1))
    scale = WIDE / max(max(xs) - min(xs), max(ys) - min(ys), 1e-12)
    (mine, right) = ((scale * x, scale * y) for x, y in ends)
    left, top = scale * min(xs) - MARGIN, scale * min(ys) - MARGIN
    wide, high = (scale * (max(side) - min(side)) + 2 * MARGIN for side in (xs, ys))
    box = f"{left:.1f} {top:.1f} {wide:.1f} {high:.1f}"
    marks: Marks = {"class": "own-arrow", "viewBox": box, "aria-hidden": "true", "focusable": "false"}
    dot = h("circle", {"r": "1.2", "cx": 0, "cy": 0})
    drawing = h("svg", marks, _arrow("right", right, task.symbol), _arrow("mine", mine, (words.YOURS,)), dot)
    return h("figure", {"class": "own-arrows"}, drawing, h("figcaption", None, words.BOTH_ARROWS))
