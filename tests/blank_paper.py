"""A robot that draws on blank paper by the sentences of the moves alone, on every calculator, at a scale of its own.

It knows ruler, protractor and set square, not the problem: where its common point goes, every length and every angle
come from a sentence, every reading from its own drawing. What it measures in the end is handed in for checking.
"""

import cmath
import importlib
import json
import math
import random
from collections.abc import Iterator
from dataclasses import dataclass, field

from calculators.neutral_current import follower
from calculators.neutral_current.follower import ANGLE, LENGTH, MEASURED, SENSE, Learner, number, step

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.practice.task import AnswerRequest
from pycore.sheet.media import size_of
from pycore.sums.answer import Answer, Move
from pycore.words import plain

NAME = r"(.+?)"
POINT = r"(common point|start)"
LINES_MEET = "where the faint line meets the perpendicular"
DISTANCE = r"([\d.,]+)\u00a0cm"
PART = r"([\d.,]+)\u00a0mm \([\d.,]+\u00a0cm\)"
LEVEL = rf"(?:{PART} to the (right|left)|no horizontal component)"
UPRIGHT = rf"(?:{PART} (up|down)|no vertical component)"
PAPERS = ("A5", "A4", "A4", "A3", "letter")
NEAR = 1.3
"""Millimetres by which a length on paper may differ from the sentence: both are read to half a millimetre, the robot's
lengths and angles are set off as they are printed, and what follows is drawn from that."""


def degrees(way: complex) -> float:
    """The direction of a line on paper."""
    return math.degrees(cmath.phase(way))


@dataclass
class Robot(Learner):
    """A learner with blank paper; points are mm from the common point, ``place`` is that of the common point."""

    place: complex = 0j
    paper: tuple[str, str] = ("", "")
    lines: list[tuple[complex, complex]] = field(default_factory=list)
    sums: tuple[float, float] = (0.0, 0.0)
    parts: list[tuple[float, float]] = field(default_factory=list)
    measured: str = ""
    last: complex = 0j
    met: complex = 0j

    def known(self) -> tuple:
        """The sentences of every calculator."""
        return PATTERNS

    def read_all(self, sentences: list[str]) -> None:
        """Follow the sentences, the first of which says where the common point is."""
        for sentence in sentences:
            self.follow(sentence)

    def start(self, _point: str, paper: str, way: str, across: str, upward: str) -> None:
        named = paper if paper.startswith("A") else paper.lower()
        self.paper, self.place = (named, way), complex(10 * number(across), 10 * number(upward))

    def arrow(self, name: str, start: complex, length: float, degrees: float) -> None:
        super().arrow(name, start, length, degrees)
        self.last = self.tips[name.lower()]
        self.lines.append((start, self.last))

    def way_of(self, line: str) -> float:
        known = {"the horizontal axis": 0.0, "the vertical axis": 90.0} | self.ways
        return known[{"0°": "the 0° line"}.get(line, line).lower()]

    def drawn_to(self, name: str, start: complex, end: complex) -> None:
        """An arrow between two points that are there."""
        self.tips[name.lower()] = self.last = end
        self.drawn[name.lower()], self.ways[name.lower()] = end - start, degrees(end - start)
        self.lines.append((start, end))

    def result(self, name: str, _point: str, end: str) -> None:
        ends = {"the last tip": self.last, LINES_MEET: self.met}
        # Two arrows that cancel leave no line: the one just drawn is then the third.
        corner = self.corners[-1] if self.corners and abs(self.corners[-1]) > 1e-6 else self.last
        tip = self.tips[end.removeprefix("the tip of ").lower()] if end.startswith("the tip of ") else corner
        self.drawn_to(name, 0j, ends.get(end, tip))

    def between(self, name: str, first: str, end: str) -> None:
        other = self.met if end == LINES_MEET else self.tips[end.removeprefix("the tip of ").lower()]
        self.drawn_to(name, self.tips[first.lower()], other)

    # By components.

    def found(self, name: str, across: str, side: str, upward: str, height: str) -> None:
        self.one_part(name, number(across or "0") * (-1 if side == "left" else 1),
                      number(upward or "0") * (-1 if height == "down" else 1))  # fmt: skip

    def level_part(self, name: str, across: str, side: str) -> None:
        self.one_part(name, number(across) * (-1 if side == "left" else 1), 0.0)

    def upright_part(self, name: str, upward: str, height: str) -> None:
        self.one_part(name, 0.0, number(upward) * (-1 if height == "down" else 1))

    def one_part(self, name: str, across: float, upward: float) -> None:
        """What the sentence reads must be on the paper; the robot adds what it reads itself, to half a millimetre."""
        own = self.drawn[name.lower()]
        assert abs(own - complex(across, upward)) < NEAR, (name, own, across, upward)
        self.parts.append((round(2 * own.real) / 2, round(2 * own.imag) / 2))

    def add(self, *told: str) -> None:
        self.sums = math.fsum(x for x, _ in self.parts), math.fsum(y for _, y in self.parts)
        self.corners.append(complex(*self.sums))

    # Where lines cross.

    def on_side(self, length: str, first: str, second: str, _first: str) -> None:
        tail, tip = self.tips[first.lower()], self.tips[second.lower()]
        self.met = tail + number(length) * (tip - tail) / abs(tip - tail)

    def join(self, tip: str) -> None:
        self.lines.append((self.met, self.tips[tip.lower()]))

    def star_at_crossing(self, name: str, length: str) -> None:
        (a, b), (c, d) = self.lines[-2:]
        self.star(name, a + (b - a) * cross(c - a, d - c) / cross(b - a, d - c), length)

    def star_at_mark(self, name: str, length: str) -> None:
        self.star(name, self.met, length)

    def star(self, name: str, at: complex, length: str) -> None:
        self.drawn_to(name, 0j, at)
        assert abs(abs(at) - number(length)) < NEAR
        self.told |= {"length": abs(at), "way": degrees(at)}
        self.measured = name

    def star_by_angle(self, name: str, zero: str, angle: str, sense: str, length: str) -> None:
        self.further(name, zero, angle, sense, length)
        self._star_drawn(name)

    def star_on_line(self, name: str, way: str, length: str) -> None:
        self.first(name, way, length)
        self._star_drawn(name)

    def _star_drawn(self, name: str) -> None:
        self.told |= {"length": abs(self.last), "way": degrees(self.last)}
        self.measured = name

    def measured_between(self, name: str, first: str, second: str, length: str) -> None:
        start = 0j if first == "the common point" else self.tips[first.removeprefix("the tip of ").lower()]
        assert abs(abs(self.tips[second.lower()] - start) - number(length)) < NEAR, name

    def target(self, zero: str, angle: str, sense: str, tip: str) -> None:
        """A faint line from the start to the line that stands upright on the first arrow at its tip."""
        at, way = self.tips[tip.lower()], step(1.0, self.turned(zero, angle, sense, False))
        along = at / abs(at)
        self.met = way * abs(at) / (way * along.conjugate()).real

    def target_level(self, tip: str) -> None:
        self.met = self.tips[tip.lower()]

    def companion_first(self, name: str, way: str, length: str) -> None:
        kept = self.last
        self.first(name, way, length)
        self.last = kept

    def companion(self, name: str, angle: str, sense: str, zero: str, length: str) -> None:
        kept = self.last
        self.arrow(name, 0j, number(length), self.turned(zero, angle, sense, False))
        self.last = kept

    # What is read in the end.

    def measure(self, name: str, length: str, way: str | None) -> None:
        own = self.drawn.get(name.lower(), -self.last if name.startswith("−") else self.last)
        assert abs(abs(own) - number(length)) < NEAR + 0.02 * self.done, (name, abs(own), length)
        self.told["length"], self.measured = round(2 * abs(own)) / 2, name
        if way:
            self.told["way"] = degrees(own)

    def returning(self, _name: str) -> None:
        self.nothing()

    @property
    def points(self) -> list[complex]:
        """Every end of every line, mm from the left and from the lower edge of the paper."""
        return [self.place + end for line in self.lines for end in line]


def cross(one: complex, other: complex) -> float:
    """Twice the area that two steps span."""
    return one.real * other.imag - one.imag * other.real


OWN = [
    (r"Draw thin lines for .*", Robot.nothing),
    (rf"Mark the {POINT} on your (\w+) paper \((\w+)\): {DISTANCE} from the left edge, {DISTANCE} from the lower "
     r"edge\. 1\u00a0cm\u00a0=\u00a0.*", Robot.start),
    (rf"Draw (?:the direction of )?{NAME} faintly, {follower.WAY} from the {POINT}\.",
     lambda robot, name, way, _: robot.reference(name, way)),
    (r"Draw two axes faintly through the common point: .*", Robot.nothing),
    (rf"Find the components of {NAME}\. With a set square, draw a line from the tip at right angles to each axis\. "
     rf"Read {LEVEL} and {UPRIGHT}\.", Robot.found),
    (rf"Find the components of {NAME}\. It is on the horizontal axis: {PART} to the (right|left), nothing up or down\.",
     Robot.level_part),
    (rf"Find the components of {NAME}\. It is on the vertical axis: {PART} (up|down), nothing to the side\.",
     Robot.upright_part),
    (rf"Add the components\. Right minus left: {LEVEL}\. Up minus down: {UPRIGHT}\.", Robot.add),
    (r"Mark both sums on the axes: .* Complete the rectangle with two dashed lines\.", Robot.nothing),
    (r"Mark the sum on its axis: .*", Robot.nothing),
    (r"Join the three tips with dashed lines: .*", Robot.nothing),
    (r"The star point stays at the centre\. .*", Robot.nothing),
    (rf"Mark {LENGTH} on the dashed line from the tip of {NAME} to the tip of {NAME}, starting at the tip of {NAME}\. "
     r".*", Robot.on_side),
    (rf"Join this mark with the tip of {NAME} by a dashed line\.", Robot.join),
    (rf"Draw {NAME} from the common point to the crossing of the two dashed lines through the triangle, which is .*\. "
     rf"Length: {MEASURED}", Robot.star_at_crossing),
    (rf"Draw {NAME} from the common point to the mark, which is the load’s star point\. Length: {MEASURED}",
     Robot.star_at_mark),
    (rf"Draw {NAME}\. Protractor’s centre on the common point, zero line along {NAME}\. Mark {ANGLE} {SENSE} and draw "
     rf"{LENGTH}\. Its tip is the load’s star point\.", Robot.star_by_angle),
    (rf"Draw {NAME}\. (?i:{follower.WAY}) from the common point, {LENGTH}\. Its tip is the load’s star point\.",
     Robot.star_on_line),
    (rf"Draw and measure {NAME}, from (the common point|the tip of .+?) to the tip of {NAME}: {MEASURED}",
     Robot.measured_between),
    (rf"Mark the target angle\. Protractor’s centre on the start, zero line along {NAME}\. Mark {ANGLE} {SENSE} and "
     rf"draw faintly to the perpendicular at the tip of {NAME}; extend it if necessary\.", Robot.target),
    (rf"The target angle is 0°\. The new apparent power ends at the tip of {NAME}\.", Robot.target_level),
    (rf"Draw {NAME}\. (?i:{follower.WAY}) from the {POINT}, {LENGTH}: a double line with an open arrowhead\.",
     lambda robot, name, way, _, length: robot.companion_first(name, way, length)),
    (rf"Draw {NAME}\. At the {POINT}, mark {ANGLE} {SENSE} from {NAME}\. Draw {LENGTH}: a double line with an open "
     r"arrowhead\.",
     lambda robot, name, _, *rest: robot.companion(name, *rest)),
    (rf"Measure {NAME}\. Length: {MEASURED} Direction: (.*)\.", Robot.measure),
    (rf"Measure {NAME}\. Length: {MEASURED}", lambda robot, name, length: robot.measure(name, length, None)),
    (rf"Measure {NAME}\. Length: {MEASURED} It is too short to measure its angle\.",
     lambda robot, name, length: robot.measure(name, length, None)),
    (rf"Draw {NAME}\. From the last tip back to the start\.", Robot.returning),
    (rf"Draw {NAME}\. Extend the sum backwards through the common point\. .*", Robot.returning),
    (rf"Draw {NAME}\. From the tip of {NAME} to (the tip of .+?|{LINES_MEET})\.", Robot.between),
    (rf"Draw {NAME}\. From the {POINT} to (the last tip|the corner of the rectangle|the marked sum|{follower.MEETING}|"
     rf"the end of the line just drawn|the tip of .+?|{LINES_MEET})\.", Robot.result),
]  # fmt: skip
"""The sentences that need more than the follower of one calculator knows, and those that it only reads over."""
KNOWN = (Learner.reference, Learner.first, Learner.further, Learner.at_tip, Learner.straight, Learner.parallel,
         Learner.close, Learner.close_as_diagonal, Learner.slide, Learner.slide_close, Learner.slide_as_diagonal,
         Learner.arcs, Learner.carry_on, Learner.dot, Learner.dot_straight, Learner.dot_at_tip,
         Learner.dot_straight_at_tip, Learner.diagonal, Learner.measure_angle)  # fmt: skip
SHARED = [(pattern.replace(follower.NAME, NAME), getattr(Robot, move.__name__))
          for pattern, move in follower.MOVES if move in KNOWN or "returning" in pattern or "closes" in pattern
          or "from the tips of" in pattern]  # fmt: skip
PATTERNS = [*OWN, *SHARED]


@dataclass(frozen=True)
class Problem:
    """A problem on a paper and at a scale of the robot's own."""

    slug: str
    form: dict[str, str]


def own_scale(rng: random.Random, slug: str, form: dict[str, str]) -> str:
    """A scale that fits, on no ladder: two digits, somewhat coarser than the page's own choice."""
    outputs = {output.name: output.value for output in CALCULATORS[slug].answer(form, ("answer",)).outputs}
    digits = f"{outputs['scale'] * rng.uniform(1.0, 1.7):.1e}"
    return f"{float(digits) + 10.0 ** int(digits.partition('e')[2]) / 10.0:.6g}"


def problems(count: int, seed: int) -> Iterator[Problem]:
    """Problems of all calculators in turn, each on its own paper, by its own method and at its own scale."""
    rng, slugs = random.Random(seed), list(CALCULATORS)
    forms = {slug: importlib.import_module(f"calculators.{slug.replace('-', '_')}.forms") for slug in slugs}
    for index in range(count):
        slug = slugs[index % len(slugs)]
        method = next(one for one in CALCULATORS[slug].fields if one.name == "method")
        form = {
            **forms[slug].form(rng.randrange(10_000)), "method": rng.choice(method.options).value, "print": "usual",
            "own-paper": rng.choice(PAPERS), "own-way": rng.choice(("", "landscape", "portrait")), "scale": "",
            "order": "",
        }  # fmt: skip
        if "second-scale" in form:
            form["second-scale"] = ""
        yield Problem(slug, {**form, "scale": own_scale(rng, slug, form)})


def sentences_of(answer: Answer) -> list[str]:
    """The moves of the drawing on the sheet, as plain sentences."""
    drawn = next(working for working in answer.workings if working.on_sheet)
    return [plain(block.phrase) for block in drawn.blocks if isinstance(block, Move)]


def drawn(problem: Problem) -> Robot:
    """The robot, with everything drawn. Fails for a sentence that it does not understand or cannot carry out."""
    answer = CALCULATORS[problem.slug].answer(problem.form)
    assert all(fault.question for fault in answer.faults), [fault.message for fault in answer.faults]
    robot = Robot()
    robot.read_all(sentences_of(answer))
    width, height = size_of(*robot.paper)
    for at in robot.points:
        assert 7.0 <= at.real <= width - 7.0 and 7.0 <= at.imag <= height - 7.0, (at, robot.paper)
    return robot


def angle_from(problem: Problem, robot: Robot, asked: AnswerRequest) -> dict[str, str]:
    """The angle that the robot's protractor shows, as the checker asks for it; nothing where it cannot be measured."""
    origin = plain(asked.origin)
    level = 90.0 if problem.form["first"] == "up" else 0.0
    counted = level if origin == "0°" and problem.form["reference"] == "zero" else None
    zero = robot.ways.get({"0°": "the 0° line"}.get(origin, origin.lower()), counted)
    if "way" not in robot.told or zero is None:
        return {}
    # The sum is measured, and what is asked for may be the arrow that returns.
    back = 180.0 if plain(asked.symbol).startswith("−") != robot.measured.startswith("−") else 0.0
    turn = (robot.told["way"] + back - zero + 180.0) % 360.0 - 180.0
    clockwise = problem.form["rotation"] == "clockwise"
    if asked.signed:
        return {"answer-angle": f"{-turn if clockwise else turn:.1f}"}
    return {"answer-angle": f"{abs(turn):.1f}", "answer-side": "anticlockwise" if turn >= 0 else "clockwise"}


def checked(problem: Problem, robot: Robot) -> str:
    """The band that the answer checker gives to what the robot measures; "" where it asks for something that is not
    measured on paper. Without an angle the best that a length can get is ``look``, which is right here too."""
    asked = CALCULATORS[problem.slug].answer(problem.form, ("answer", "check")).answer_request
    if not (asked and "mm" in asked.units and robot.measured.lstrip("−") == plain(asked.symbol).lstrip("−")):
        return ""
    given = {"answer-how": "drawn", "answer": f"{robot.told['length']:.1f}", "answer-unit": "mm"}
    angle = angle_from(problem, robot, asked) if asked.angled else {}
    text, _ = api.handle(
        json.dumps({"do": "mark", "page": problem.slug, "form": problem.form, "given": {**given, **angle}})
    )
    reply = json.loads(text)
    assert reply["ok"], reply
    return "accept" if reply["band"] == "look" and asked.angled and not angle else reply["band"]
