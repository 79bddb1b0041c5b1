"""What a learner hands in, how it is posted for marking, and what the marking names."""

import html
import re
from collections.abc import Callable
from dataclasses import dataclass

from independent.hand import Hand
from independent.problems import Problem, ask, degrees, wrapped

PLAIN = str.maketrans("₀₁₂₃²", "01232", "_")


@dataclass(frozen=True)
class Answer:
    """A size in base units and degrees from the sheet's line; ``length`` (mm) where a length is given instead."""

    size: float
    angle: float | None = None
    length: float | None = None


@dataclass(frozen=True)
class Attempt:
    """One way of working: its key, how it is done, the sentences that name it, and what it gives in a hand."""

    key: str
    how: str
    act: Callable[[Hand], Answer]
    named: str = ""


@dataclass(frozen=True)
class Verdict:
    """The band of an answer and each cause that is named, tags and subscripts taken off."""

    band: str
    causes: tuple[str, ...]


def plain(text: str) -> str:
    """Text without tags, subscripts as digits: ``I₁`` and its markup both read ``I1``."""
    return html.unescape(re.sub("<[^>]+>", "", text)).translate(PLAIN).replace("\u00a0", " ")


def name(line: str) -> str:
    """A line's name as a pattern that matches it alone."""
    return r"(?<![\w−])" + re.escape(plain(line))


def post(problem: Problem, answer: Answer, how: str, *, angle: bool = True, side: bool = True, **more: str) -> Verdict:
    """Have an answer marked by pycore's door, with its angle or without, with its side or without."""
    given = {"answer-how": how, **more}
    if answer.length is not None:
        given |= {"answer": f"{answer.length:.1f}", "answer-unit": "mm"}
    else:
        given["answer"] = f"{answer.size / problem.per:.7g}"
    if angle and answer.angle is not None and problem.angled:
        given |= turned(problem, answer.angle, side=side)
    return verdict(ask(do="mark", page=problem.slug, form=problem.form, given=given))


def turned(problem: Problem, angle: float, *, side: bool = True) -> dict[str, str]:
    """An angle in the form's own convention: signed from the voltage, or an amount and the side on the paper."""
    if problem.form["angles"] == "polar":
        return {"answer-angle": f"{wrapped(angle + problem.reference):.1f}"}
    angle = wrapped(angle)
    away = (angle >= 0) == (problem.form["rotation"] == "anticlockwise")
    given = {"answer-angle": f"{abs(angle):.1f}"}
    return {**given, "answer-side": "anticlockwise" if away else "clockwise"} if side else given


def verdict(reply: dict) -> Verdict:
    """A reply to ``mark``, read as a learner reads it."""
    if not reply["ok"]:
        raise ValueError(reply["announce"])
    region = reply["regions"]["marked"]
    listed = [re.split("<p class=.way", item)[0] for item in re.findall("<li>(.*?)</li>", region, re.DOTALL)]
    causes = [plain(item) for item in listed if "Enter the angle too" not in item]
    causes += re.findall(r"It would be right at.*?, but|it is correct in \w+, not in \w+", plain(region))
    return Verdict(reply["band"], tuple(causes))


def read(problem: Problem, hand: Hand, end: complex, edge: float = 0.0) -> Answer:
    """The answer that is read off a drawing's end point (mm)."""
    length = float(hand.read(abs(end) - edge)[0]) if not hand.steady else abs(end) - edge
    angle = hand.read_angle(degrees(end))
    size = max(0.0, length) * problem.scale / 10.0
    return Answer(size, wrapped(float(angle if hand.steady else angle[0])))


def rounded(hand: Hand, point: complex | float, angle: float | None = None) -> Answer:
    """A calculated answer to three figures and a tenth of a degree; ``angle`` where only a number was worked out."""
    size = abs(point)
    if angle is None:
        angle = degrees(complex(point))
    return Answer(size, angle) if hand.steady else Answer(float(f"{size:.3g}"), round(angle, 1))
