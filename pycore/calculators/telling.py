"""The sentence of every step, from the step's own moves and how it stands on the paper."""

from collections.abc import Callable
from dataclasses import dataclass

from pycore import quantity
from pycore.calculators.interface import Block, Move
from pycore.constructions.construction import Construction, Step
from pycore.constructions.moves import (
    CrossArcs,
    DrawParallel,
    SetOff,
    Supplement,
    TurnAngle,
    length_of,
    turn_of,
)
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, Writing
from pycore.sheet.plan import Plan
from pycore.words import Phrase, plain
from pycore.words import constructions as words
from pycore.words import neutral as neutral_words

WAYS = {0.0: "to the right", 90.0: "straight up", 180.0: "to the left", -90.0: "straight down"}


def degrees_text(degrees: float, mark: str) -> str:
    """The size of an angle to a tenth of a degree, no needless zero: 120°, 87.5°."""
    size = -degrees if degrees < 0 else degrees
    return quantity.plain(round(size, 1), mark) + "°"


def length_text(millimetres: float, mark: str) -> str:
    """A length as both rulers' figures: 92 mm (9.2 cm)."""
    size = -millimetres if millimetres < 0 else millimetres
    in_mm = quantity.plain(round(size, 1), mark)
    in_cm = quantity.plain(round(size, 1) / 10, mark)
    return f"{in_mm}{NO_BREAK_SPACE}mm ({in_cm}{NO_BREAK_SPACE}cm)"


@dataclass(frozen=True, slots=True)
class Telling:
    """What sentences need to know: tags by phasor key, line names, writing, protractor."""

    tags: dict[str, Phrase]
    lines: tuple[str, str, str]
    reference: Phrase
    voltage: Phrase
    writing: Writing
    protractor: str = "180"
    polar: bool = False

    @property
    def mark(self) -> str:
        """The decimal mark."""
        return self.writing.mark

    def scale(self, scale: float) -> str:
        """The scale in words: 1 cm = 2 A."""
        return f"1{NO_BREAK_SPACE}cm{NO_BREAK_SPACE}= {self.writing.short(scale)}".replace(
            "= ", f"={NO_BREAK_SPACE}"
        )


class Teller:
    """Words one construction, step by step."""

    def __init__(self, plan: Plan, telling: Telling) -> None:
        self.plan, self.telling = plan, telling
        self.construction: Construction = plan.construction
        self.figure = plan.construction.figure
        self.picture = plan.picture
        self.stage = 0

    # Small things that many sentences need.

    def tag(self, number: int) -> Phrase:
        return self.telling.tags[f"i{number}"]

    def length(self, amount: float) -> str:
        return length_text(amount * self.plan.factor, self.telling.mark)

    def degrees(self, angle: float) -> str:
        return degrees_text(angle, self.telling.mark)

    def sense(self, turn: float) -> str:
        return "anticlockwise" if self.picture.sense * turn > 0 else "clockwise"

    def way(self, degrees: float) -> str:
        paper = self.picture.paper_angle(degrees)
        return WAYS.get(paper) or f"{self.degrees(paper)} from the right"

    def size(self, number: int) -> float:
        return next(arm.size for arm in self.construction.arms if arm.number == number)

    def zero_name(self, move: TurnAngle) -> Phrase:
        if move.zero.startswith("L"):
            return self.tag(int(move.zero[1:]))
        return self.telling.reference if move.zero == "D" else ("the axis",)

    def sides(self, step: Step) -> tuple[Phrase, Phrase, float, float]:
        """Names and sizes of the two sides of the parallelogram that a step is about."""
        if len(step.about) == 2:
            first, second = step.about
            return self.tag(first), self.tag(second), self.size(first), self.size(second)
        diagonal = self.figure.readings["r"]
        return words.the_diagonal(), self.tag(step.about[-1]), diagonal, self.size(step.about[-1])

    # One method for each kind of step.

    def tell(self) -> tuple[Block, ...]:
        """Every step as a numbered move."""
        told: list[Block] = []
        for number, step in enumerate(self.construction.steps, start=1):
            handler: Callable[[Step], tuple[Phrase, Phrase]] = getattr(
                self, "step_" + step.name.replace("-", "_")
            )
            sentence, why = handler(step)
            told.append(Move(number, sentence, why))
        return tuple(told)

    def step_scale(self, step: Step) -> tuple[Phrase, Phrase]:
        longest = max(arm.size for arm in self.construction.arms)
        sentence = words.choose_scale(
            self.telling.scale(self.plan.scale), self.telling.writing.short(longest), self.length(longest)
        )
        return sentence, words.scale_why()

    def step_reference(self, step: Step) -> tuple[Phrase, Phrase]:
        way = self.way(self.picture.reference)
        return words.draw_reference(self.telling.reference, way), words.reference_why()

    def step_draw_first(self, step: Step) -> tuple[Phrase, Phrase]:
        number = step.about[0]
        arm = next(arm for arm in self.construction.arms if arm.number == number)
        sentence = words.draw_first(self.tag(number), self.way(arm.angle), self.length(arm.size))
        return sentence, words.first_why()

    def step_draw_along(self, step: Step) -> tuple[Phrase, Phrase]:
        return self.step_draw_first(step)

    def step_draw(self, step: Step) -> tuple[Phrase, Phrase]:
        turn = next(move for move in step.moves if isinstance(move, TurnAngle))
        number = step.about[0]
        angle = turn_of(turn, self.figure.readings)
        if angle == 180.0 or angle == 0.0:
            return self.step_draw_first(step)
        size, sense = self.degrees(angle), self.sense(angle)
        long_way = 360.0 - (-angle if angle < 0 else angle)
        anticlockwise = self.sense(angle) == "anticlockwise"
        why: Phrase = words.right_angle_check(size, self.size_of(angle) > 90.0)
        if self.telling.protractor == "360" and anticlockwise:
            size, sense = self.degrees(long_way), "clockwise"
            why = words.NOTHING
        elif anticlockwise and long_way > 180.0:
            why = words.opposite_why(size, f"{self.degrees(long_way)} clockwise")
        sentence = words.draw(
            self.tag(number), self.zero_name(turn), size, sense, self.length(self.size(number))
        )
        return sentence, why

    @staticmethod
    def size_of(angle: float) -> float:
        return -angle if angle < 0 else angle

    def step_parallel(self, step: Step) -> tuple[Phrase, Phrase]:
        first, second, _, length = self.sides(step)
        move = step.moves[0]
        if isinstance(move, DrawParallel):
            sentence = words.parallel_by_set_squares(first, second, self.length(length))
            return sentence, words.slide_why()
        assert isinstance(move, TurnAngle)
        angle = turn_of(move, self.figure.readings)
        size = self.degrees(angle)
        why = words.neighbouring_why(self.degrees(180.0 - self.size_of(angle)), size)
        sentence = words.parallel_by_protractor(
            first, self.about(move, size), self.sense(angle), self.length(length), second
        )
        return sentence, why

    def about(self, move: TurnAngle, size: str) -> str:
        """A set-off angle; "about" when it comes from the learner's own reading."""
        return f"about {size}" if isinstance(move.turn, Supplement) else size

    def step_close(self, step: Step) -> tuple[Phrase, Phrase]:
        self.stage += 1
        which = "second" if len(step.about) == 3 else ("first" if "r" in self.figure.readings else "only")
        which = "" if which == "only" else which
        first, second, size, _ = self.sides(step)
        move = step.moves[0]
        if isinstance(move, TurnAngle):
            angle = turn_of(move, self.figure.readings)
            told = self.about(move, self.degrees(angle))
            sentence = words.close_by_protractor(
                which, second, told, self.sense(angle), self.length(size), first
            )
            return sentence, words.NOTHING
        if isinstance(move, DrawParallel):
            return words.close_by_set_squares(which, second, first, self.length(size)), words.NOTHING
        return words.close_by_compasses(which, first, second), words.NOTHING

    def step_arcs(self, step: Step) -> tuple[Phrase, Phrase]:
        first, second, size, other = self.sides(step)
        assert isinstance(step.moves[0], CrossArcs)
        sentence = words.cross_arcs(first, self.length(other), second, self.length(size))
        return sentence, words.arcs_why()

    def step_diagonal(self, step: Step) -> tuple[Phrase, Phrase]:
        reading = self.figure.readings["r"]
        sentence = words.diagonal(self.length(reading), self.telling.writing.amount(reading))
        third = next(arm.number for arm in self.construction.arms if arm.number not in step.about)
        return sentence, words.diagonal_why(self.telling.lines[third - 1])

    def step_measure(self, step: Step) -> tuple[Phrase, Phrase]:
        first, second, _, _ = self.sides(step)
        expected = self.degrees(self.figure.readings["between"])
        return words.measure_between(first, second, expected), words.measure_why()

    def step_carry_on(self, step: Step) -> tuple[Phrase, Phrase]:
        first, second, _, size = self.sides(step)
        capital = tuple(first)
        if capital and isinstance(capital[0], str):
            capital = (capital[0][:1].upper() + capital[0][1:], *capital[1:])
        return words.carry_on(capital, second, self.length(size)), words.NOTHING

    def step_result(self, step: Step) -> tuple[Phrase, Phrase]:
        symbol = self.telling.tags["sum"]
        if self.construction.method == "tip-to-tail":
            return words.result_tip_to_tail(symbol), words.result_why()
        return words.result(symbol), words.result_why()

    def step_read(self, step: Step) -> tuple[Phrase, Phrase]:
        reading = self.figure.readings["n"]
        sentence = words.read(
            self.telling.tags["sum"],
            self.length(reading),
            self.telling.scale(self.plan.scale),
            self.telling.writing.amount(reading),
            self.direction(),
        )
        return sentence, words.read_why()

    def direction(self) -> Phrase:
        """Where the sum points, from the line drawn first."""
        turn = wrap(self.figure.lines["N"].degrees - self.picture.reference)
        return direction_phrase(self, turn)

    def step_zero(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.closes(), words.NOTHING

    def step_follow(self, step: Step) -> tuple[Phrase, Phrase]:
        before, number = step.about
        move = next(move for move in step.moves if isinstance(move, TurnAngle))
        turn = turn_of(move, self.figure.readings)
        length = self.length(self.size(number))
        if turn == 180.0 or turn == 0.0:
            told = words.follow_straight(self.tag(number), self.tag(before), turn == 0.0, length)
            return told, words.NOTHING
        sentence = words.follow(
            self.tag(number), self.tag(before), self.degrees(turn), self.sense(turn), length
        )
        return sentence, words.follow_why(self.degrees(180.0 - self.size_of(turn)), self.degrees(turn))

    def step_return_close(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.return_close(), words.return_why()

    def step_return(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.return_opposite(self.length(self.figure.readings["n"])), words.return_why()

    def step_axes(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.axes("one level", "one upright"), words.NOTHING

    def step_drop(self, step: Step) -> tuple[Phrase, Phrase]:
        number = step.about[0]
        across, upward = self.figure.readings[f"x{number}"], self.figure.readings[f"y{number}"]
        return words.drop(self.tag(number), *self.parts(across, upward)), words.NOTHING

    def parts(self, across: float, upward: float) -> tuple[str, str]:
        return (
            words.across_part(self.length(across), across >= 0),
            words.upward_part(self.length(upward), upward >= 0),
        )

    def sums(self) -> tuple[str, str]:
        marks = [move for step in self.construction.steps for move in step.moves if _is_mark(move)]
        across, upward = (length_of(move, self.figure.readings) for move in marks if isinstance(move, SetOff))
        return self.parts(across, upward)

    def step_add(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.add_parts(*self.sums()), words.NOTHING

    def step_corner(self, step: Step) -> tuple[Phrase, Phrase]:
        return words.corner(*self.sums()), words.NOTHING


def _is_mark(move: object) -> bool:
    return isinstance(move, SetOff) and move.role == "mark"


def direction_phrase(teller: Teller, turn: float) -> Phrase:
    """A direction as this class says it; ``turn`` counts from the line drawn first.

    As a protractor reads it from that line, or as a polar angle from the L1 phase voltage.
    """
    if teller.telling.polar:
        signed = wrap(turn + teller.picture.reference)
        told = quantity.fixed(signed, 1, teller.telling.mark) + "°"
        return neutral_words.angle_polar(told, teller.telling.voltage)
    if round(turn, 1) == 0.0:
        return neutral_words.angle_on(teller.telling.reference)
    return neutral_words.angle_by_protractor(
        teller.degrees(turn), teller.sense(turn), teller.telling.reference
    )


def describe(blocks: tuple[Block, ...]) -> str:
    """All sentences in one text: what a screen reader is told of the drawing."""
    return " ".join(f"{block.step}. {plain(block.phrase)}" for block in blocks if isinstance(block, Move))
