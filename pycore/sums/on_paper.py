"""A construction as it stands on its paper, in the words and figures of a sentence."""

from pycore.constructions.companions import leads
from pycore.constructions.construction import Construction, Step
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.moves import TurnAngle, length_of
from pycore.constructions.names import AXIS_UP, DIAGONAL, DIAGONAL_LENGTH, FIRST_DIRECTION, arm_key
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.plan import Plan
from pycore.sums.wording import Notation, degrees_text, length_text, reading_text
from pycore.words import constructions as words
from pycore.words import parallelogram as parallel
from pycore.words.phrase import Phrase

PROTRACTOR_REACH = 50.0
"""A line shorter than this many mm does not reach the figures of a usual protractor (common practice)."""


class OnPaper:
    """One construction as it stands on its paper: its lines' names, and lengths, angles and directions as they are
    said."""

    def __init__(self, plan: Plan, notation: Notation) -> None:
        self.plan, self.notation = plan, notation
        self.construction: Construction = plan.construction
        self.figure = plan.construction.figure
        self.picture = plan.picture
        tip_to_tail = plan.construction.method == TIP_TO_TAIL
        self.place = words.START if tip_to_tail else words.COMMON_POINT

    # Small things that many sentences need.

    def tag(self, number: int) -> Phrase:
        """The symbol of a line current."""
        return self.notation.tags[arm_key(number)]

    def millimetres(self, amount: float) -> float:
        """An amount as a length on the sheet."""
        return amount * self.plan.factor

    def length(self, amount: float) -> str:
        """An amount as a length to be set off."""
        return length_text(self.millimetres(amount), self.notation.mark)

    def reading(self, amount: float) -> str:
        """An amount as a length to be read off a ruler."""
        return reading_text(self.millimetres(amount), self.notation.mark)

    def measured(self, key: str, amount: float) -> Phrase:
        """A length read off a ruler, what it represents by the printed numbers, and the calculated value of
        ``amount`` beside it; ``key`` names the phasor, whose unit it has."""
        product = self.notation.measured(key, self.millimetres(amount), self.plan.scale)
        scale, calculated = self.notation.scale(self.plan.scale), self.notation.amount_of(key, amount)
        return words.measured(self.reading(amount), scale, product, calculated)

    def degrees(self, angle: float) -> str:
        """The size of an angle."""
        return degrees_text(angle, self.notation.mark)

    def sense(self, turn: float) -> str:
        """The sense of a turn as it is seen on the paper."""
        return words.sense(anticlockwise=self.picture.sense * turn > 0)

    def direction(self, degrees: float) -> str:
        """A direction on the paper in words."""
        paper = self.picture.paper_angle(degrees)
        return words.DIRECTIONS.get(paper) or words.slanting(self.degrees(paper), above=paper > 0)

    def size(self, number: int) -> float:
        """The size of a line current."""
        return next(arm.size for arm in self.construction.arms if arm.number == number)

    def zero_name(self, move: TurnAngle) -> Phrase:
        """The line on which the protractor's zero lies."""
        if move.zero.startswith("L"):
            return self.tag(int(move.zero[1:]))
        if move.zero == FIRST_DIRECTION:
            return self.notation.reference
        return words.UPRIGHT_AXIS if move.zero == AXIS_UP else words.LEVEL_AXIS

    def zero_length(self, move: TurnAngle) -> float:
        """Length in mm of the line on which the protractor's zero lies; axes are long enough."""
        if move.zero.startswith("L"):
            return self.millimetres(self.size(int(move.zero[1:])))
        if move.zero == DIAGONAL:
            return self.millimetres(self.figure.readings[DIAGONAL_LENGTH])
        if move.zero != FIRST_DIRECTION:
            return PROTRACTOR_REACH
        led = leads(self.construction)
        return PROTRACTOR_REACH if led is None else self.millimetres(length_of(led, self.figure.readings))

    def is_dot(self, amount: float) -> bool:
        """Whether a phasor is too short for an arrow at this scale."""
        return self.millimetres(amount) < DOT_BELOW

    def sides(self, step: Step) -> tuple[Phrase, Phrase, float, float]:
        """Names and sizes of the two sides of the parallelogram that a step is about."""
        if len(step.arm_numbers) == 2:
            first, second = step.arm_numbers
            return self.tag(first), self.tag(second), self.size(first), self.size(second)
        diagonal = self.figure.readings[DIAGONAL_LENGTH]
        return parallel.THE_DIAGONAL, self.tag(step.arm_numbers[-1]), diagonal, self.size(step.arm_numbers[-1])

    def before(self, step: Step) -> str:
        """The name of the step before one."""
        steps = self.construction.steps
        return steps[steps.index(step) - 1].name
