"""A learner of few ideas: follows the sentences of a construction with plane trigonometry of its own."""

import math
import re
from dataclasses import dataclass, field

LENGTH = r"([\d.,]+)\u00a0mm \([\d.,]+\u00a0cm\)"
LENGTH_OR_ABOUT = r"((?:about )?[\d.,]+)\u00a0mm(?: \([\d.,]+\u00a0cm\))?"
AS_DIAGONAL = r"as long as your diagonal \(about ([\d.,]+)\u00a0mm\)"
AMOUNT = r"[\d.,]+\u00a0\w+"
MEASURED = rf"about {LENGTH}\. At 1\u00a0cm\u00a0=\u00a0{AMOUNT}, that is {AMOUNT} \(calculated: {AMOUNT}\)\."
NAME = r"((?:the |The )?(?:diagonal|reference|[IV][₁₂₃]|[IV]_[A-Z]))"
ANGLE = r"((?:about )?[\d.,]+)°"
SENSE = r"(anticlockwise|clockwise)"
WAY = (
    r"(straight up|straight down|to the right|to the left|"
    r"[\d.,]+° (?:above|below) the horizontal, to the (?:right|left))"
)
MEETING = r"where the (?:last two )?dashed lines meet"
WAYS = {"straight up": 90.0, "straight down": -90.0, "to the right": 0.0, "to the left": 180.0}


def number(text: str) -> float:
    """A number with point or comma."""
    return float(text.removeprefix("about ").replace(",", "."))


def step(length: float, degrees: float) -> complex:
    """A step of so many mm in a direction."""
    return length * complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))


def direction(way: str) -> float:
    """A way in words as an angle from the right."""
    if way.lower() in WAYS:
        return WAYS[way.lower()]
    steep = number(way.split("°")[0])
    return (180.0 - steep if way.endswith("left") else steep) * (-1 if " below " in way else 1)


@dataclass
class Learner:
    """What is on the paper: each named line's direction and tip (mm from the common point), and what was read."""

    ways: dict[str, float] = field(default_factory=dict)
    tips: dict[str, complex] = field(default_factory=dict)
    corners: list[complex] = field(default_factory=list)
    drawn: dict[str, complex] = field(default_factory=dict)
    told: dict[str, float] = field(default_factory=dict)
    done: int = 0

    def known(self) -> tuple:
        """The sentences that are understood, each with its move."""
        return MOVES

    def follow(self, sentence: str) -> None:
        """Make the one move that a sentence describes; a sentence that is not understood is an error."""
        for pattern, move in self.known():
            found = re.fullmatch(pattern, sentence)
            if found:
                move(self, *found.groups())
                self.done += 1
                return
        raise AssertionError(f"not understood: {sentence}")

    def way_of(self, line: str) -> float:
        """A named line's direction; a voltage that is not drawn lies along the first current, which is in phase."""
        name = line.lower()
        return self.ways[next(iter(self.ways)) if name[0] == "v" and name not in self.ways else name]

    def turned(self, line: str, angle: str, sense: str, back: bool) -> float:
        """A direction set off by protractor from a line or back along it."""
        sign = 1 if sense == "anticlockwise" else -1
        size = number(angle)
        if angle.startswith("about "):  # 180° minus the learner's own reading.
            own = 180.0 - self.told["between found"]
            # Lengths are set off to half a millimetre: that turns a short diagonal by more.
            assert abs(own - size) < 1.0 + math.degrees(0.5 / abs(self.tips["the diagonal"]))
            size = own
        return self.way_of(line) + (180.0 if back else 0.0) + sign * size

    def nothing(self, *_: str) -> None:
        """A move that puts no new point on the paper."""

    def reference(self, name: str, way: str) -> None:
        self.ways[name.lower()] = direction(way)

    def first(self, name: str, way: str, length: str) -> None:
        self.arrow(name, 0j, number(length), direction(way))

    def arrow(self, name: str, start: complex, length: float, degrees: float) -> None:
        self.ways[name.lower()], self.tips[name.lower()] = degrees, start + step(length, degrees)
        self.drawn[name.lower()] = step(length, degrees)

    def further(self, name: str, zero: str, angle: str, sense: str, length: str) -> None:
        self.arrow(name, 0j, number(length), self.turned(zero, angle, sense, False))

    def at_tip(self, name: str, before: str, _: str, angle: str, sense: str, length: str) -> None:
        self.arrow(name, self.tips[before.lower()], number(length), self.turned(before, angle, sense, True))

    def dot(self, name: str, length: str, angle: str, sense: str, zero: str) -> None:
        self.further(name, zero, angle, sense, length)

    def dot_straight(self, name: str, length: str, way: str) -> None:
        self.first(name, way, length)

    def dot_at_tip(self, name: str, length: str, before: str, angle: str, sense: str, _: str) -> None:
        self.at_tip(name, before, _, angle, sense, length)

    def dot_straight_at_tip(self, name: str, length: str, before: str, way: str, _: str) -> None:
        self.straight(name, before, way, length)

    def read_short(self, length: str) -> None:
        self.told["length"] = number(length)

    def straight(self, name: str, before: str, way: str, length: str) -> None:
        degrees = self.ways[before.lower()] + (180.0 if way == "straight back" else 0.0)
        self.arrow(name, self.tips[before.lower()], number(length), degrees)

    def parallel(self, angle: str, sense: str, _tip: str, side: str, length: str, _to: str) -> None:
        turned = self.turned(side, angle, sense, True)
        self.corners.append(self.tips[side.lower()] + step(number(length), turned))

    def close(self, _tip: str, side: str, angle: str, sense: str, length: str, to: str) -> None:
        self.parallel(angle, sense, _tip, side, length, to)

    def own(self, length: str) -> str:
        """The length of the learner's own diagonal, which is about what the sentence says."""
        own = abs(self.tips["the diagonal"])
        assert abs(own - number(length)) < 0.5 + 0.06 * self.done
        return str(own)

    def close_as_diagonal(self, _tip: str, side: str, angle: str, sense: str, length: str) -> None:
        self.parallel(angle, sense, _tip, side, self.own(length), "")

    def slide(self, side: str, to: str, _side: str, length: str) -> None:
        self.corners.append(self.tips[side.lower()] + step(number(length), self.ways[to.lower()]))

    def slide_close(self, to: str, side: str, length: str) -> None:
        self.slide(side, to, side, length)

    def slide_as_diagonal(self, to: str, side: str, length: str) -> None:
        self.slide(side, to, side, self.own(length))

    def arcs(self, second: str, one: str, first: str, _first: str, other: str, _second: str) -> None:
        a, b = self.tips[first.lower()], self.tips[second.lower()]
        other = self.own(other) if other.startswith("about ") else other
        apart, r, s = abs(b - a), number(one), number(other)
        if apart == 0.0:  # Both too short to draw at this scale.
            self.corners.append(a)
            return
        along = (apart * apart + r * r - s * s) / (2 * apart)
        height = math.sqrt(max(0.0, r * r - along * along))
        unit = (b - a) / apart
        both = [a + unit * complex(along, sign * height) for sign in (1, -1)]
        self.corners.append(max(both, key=abs))

    def carry_on(self, first: str, _second: str, _first: str, length: str, second: str) -> None:
        self.corners.append(self.tips[first.lower()] + step(number(length), self.ways[second.lower()]))

    def diagonal(self, length: str) -> None:
        corner = self.corners[-1]
        self.tips["the diagonal"], self.told["diagonal"] = corner, number(length)
        self.ways["the diagonal"] = math.degrees(math.atan2(corner.imag, corner.real))

    def measure_angle(self, first: str, second: str, angle: str) -> None:
        between = abs((self.ways[second.lower()] - self.ways[first.lower()] + 180) % 360 - 180)
        self.told["between"], self.told["between found"] = number(angle), between

    def read(self, length: str, direction_words: str) -> None:
        self.told["length"] = number(length)
        found = re.fullmatch(rf"{ANGLE} {SENSE} from {NAME}", direction_words)
        if found:
            self.told["way"] = self.turned(found[3], found[1], found[2], False)
        elif direction_words.startswith("in line with "):
            self.told["way"] = self.way_of(direction_words.removeprefix("in line with "))
        else:
            polar = re.fullmatch(rf"at (−?[\d.,]+)° from {NAME}", direction_words)
            assert polar, direction_words
            self.told["polar"] = number(polar[1].replace("−", "-"))


MOVES = [
    (r"Choose the scale\. .*", Learner.nothing),
    (rf"Draw the direction of {NAME} faintly, {WAY} from the (?:common point|start)\.", Learner.reference),
    (r"Draw thin lines for .*", Learner.nothing),
    (rf"Draw {NAME}\. (?i:{WAY}) from the (?:common point|start), {LENGTH}\.", Learner.first),
    (rf"Draw {NAME}\. Protractor’s centre on the (?:common point|start), zero line along {NAME}\. "
     rf"Mark {ANGLE} {SENSE} and draw {LENGTH}\.",
     Learner.further),
    (rf"Draw {NAME} from the tip of {NAME}\. Protractor’s centre on the tip, zero line back along {NAME}\. "
     rf"Mark {ANGLE} {SENSE} and draw {LENGTH}\.", Learner.at_tip),
    (rf"Draw {NAME} from the tip of {NAME}, (straight back|straight on) along the same line, {LENGTH}\.",
     Learner.straight),
    (rf"Mark {ANGLE} {SENSE} at the tip of {NAME}\. Protractor’s centre on that tip, zero line back along {NAME}\. "
     rf"Draw a dashed line, {LENGTH}\. It is parallel to {NAME}\.", Learner.parallel),
    (rf"Complete the (?:first |second )?parallelogram\. Protractor’s centre on the tip of {NAME}, zero line back "
     rf"along {NAME}: mark {ANGLE} {SENSE}\. Draw a dashed line, {LENGTH}, parallel to {NAME}\. "
     r"The two dashed lines meet\.", Learner.close),
    (rf"Complete the second parallelogram\. Protractor’s centre on the tip of {NAME}, zero line back along {NAME}: "
     rf"mark {ANGLE} {SENSE}\. Draw a dashed line {AS_DIAGONAL}, parallel to it\. The two dashed lines meet\.",
     Learner.close_as_diagonal),
    (rf"Complete the second parallelogram\. Set square along {NAME}\. Slide it to the tip of {NAME} and draw a dashed "
     rf"line {AS_DIAGONAL}\. The two dashed lines meet\.", Learner.slide_as_diagonal),
    (rf"Draw a parallel through the tip of {NAME}\. Set square along {NAME}, ruler against its other side\. "
     rf"Slide the set square to the tip of {NAME} and draw a dashed line, {LENGTH}\.", Learner.slide),
    (rf"Complete the (?:first |second )?parallelogram\. Set square along {NAME}\. Slide it to the tip of {NAME} and "
     rf"draw a dashed line, {LENGTH}\. The two dashed lines meet\.", Learner.slide_close),
    (rf"Draw two arcs that cross\. Open the compasses to the length of {NAME}, {LENGTH}\. Point on the tip of "
     rf"{NAME}: draw an arc\. Then open them to the length of {NAME}, {LENGTH_OR_ABOUT}\. Point on the tip of "
     rf"{NAME}: draw a second arc across the first\.", Learner.arcs),
    (rf"Complete the (?:first |second )?parallelogram\. Draw dashed lines from the tips of {NAME} and {NAME} to the "
     r"point where the arcs cross\.", Learner.nothing),
    (rf"No parallelogram: {NAME} and {NAME} are on one line, or almost\. Use tip to "
     rf"tail: from the tip of {NAME}, draw {LENGTH} in the direction of {NAME}\.", Learner.carry_on),
    (rf"Mark {NAME} as a dot, {LENGTH} {WAY} from the (?:common point|start): too short for an arrow\.",
     Learner.dot_straight),
    (rf"Mark {NAME} as a dot, {LENGTH} from the (?:common point|start), {ANGLE} {SENSE} from {NAME}: too short for an "
     r"arrow\.", Learner.dot),
    (rf"Mark {NAME} as a dot, {LENGTH} from the tip of {NAME}, {ANGLE} {SENSE} from the line back along {NAME}: too "
     r"short for an arrow\.", Learner.dot_at_tip),
    (rf"Mark {NAME} as a dot, {LENGTH} from the tip of {NAME}, (straight back|straight on) along "
     rf"(?:the line of )?{NAME}: too short for an arrow\.", Learner.dot_straight_at_tip),
    (rf"Draw the diagonal\. From the common point to (?:{MEETING}|the end of the line just drawn)\. "
     rf"Measure it: {MEASURED}",
     Learner.diagonal),
    (rf"Measure the angle between {NAME} and {NAME}\. Protractor’s centre on the common point\. Expect {ANGLE}\.",
     Learner.measure_angle),
    (rf"Draw {NAME}\. From the (?:common point|start) to (?:the last tip|{MEETING}|the end of the line just "
     r"drawn)\.", Learner.nothing),
    (rf"Measure I_N\. Length: {MEASURED} It is too short to measure its angle\.", Learner.read_short),
    (rf"Measure −I_N\. Length: {MEASURED} .*\.", Learner.read_short),
    (rf"Measure I_N\. Length: {MEASURED} Direction: (.*)\.", Learner.read),
    (r"Draw the returning current\. .*", Learner.nothing),
    (r"The figure closes\. .*", Learner.nothing),
    (r"The figure closes, as nearly as a drawing can show\. .*", Learner.nothing),
]  # fmt: skip
"""What each sentence looks like, and the move it asks for."""
