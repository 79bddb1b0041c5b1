"""A construction on its paper, in words and numbers for sentences."""

from pycore.constructions.companions import leads
from pycore.constructions.construction import Construction, Step
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.moves import ReadAngle, TurnAngle, length_of, turn_of
from pycore.constructions.names import AXIS_UP, DIAGONAL, DIAGONAL_LENGTH, FIRST_DIRECTION, arm_key
from pycore.phasor import wrap
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.media import ORIENTATIONS
from pycore.sheet.own_paper import distances
from pycore.sheet.plan import Plan, fits_paper, papers_that_take
from pycore.sheet.scale import fit_at
from pycore.sheet.strokes import figure_box
from pycore.sheet.styles import OWN_PAPER
from pycore.sums.misfit import over_text
from pycore.sums.wording import Notation, degrees_text, length_text
from pycore.words import constructions as words
from pycore.words import parallelogram as parallel
from pycore.words.answers import own_paper_name, paper_name
from pycore.words.phrase import Phrase

PROTRACTOR_REACH = 50.0
"""A line shorter than this many mm does not reach the numbers of a usual protractor (common practice)."""


class OnPaper:
    """One construction on its paper: names of lines, and lengths, angles and directions as text."""

    def __init__(self, plan: Plan, notation: Notation) -> None:
        self.plan, self.notation = plan, notation
        self.construction: Construction = plan.construction
        self.figure = plan.construction.figure
        self.picture = plan.picture
        tip_to_tail = plan.construction.method == TIP_TO_TAIL
        self.place = words.START if tip_to_tail else words.COMMON_POINT

    # Small things that many sentences need.

    def tag(self, number: int) -> Phrase:
        """Return the symbol of a phasor by its number."""
        return self.notation.tags[arm_key(number)]

    def millimetres(self, amount: float) -> float:
        """Return the length of an amount on the sheet, mm."""
        return amount * self.plan.factor

    def length(self, amount: float) -> str:
        """Return the length of an amount as text: the same to draw it and to read it."""
        return length_text(self.millimetres(amount), self.notation.mark)

    def measured(self, key: str, amount: float) -> Phrase:
        """A length read off a ruler, what it represents by the printed numbers, and the calculated value of
        ``amount`` beside it; ``key`` names the phasor, whose unit it has."""
        product = self.notation.measured(key, self.millimetres(amount), self.plan.scale)
        scale, calculated = self.notation.scale(self.plan.scale), self.notation.amount_of(key, amount)
        return words.measured(self.length(amount), scale, product, calculated)

    def degrees(self, angle: float) -> str:
        """Return the size of an angle as text."""
        return degrees_text(angle, self.notation.mark)

    def sense(self, turn: float) -> str:
        """Return the sense of a turn on paper, in words."""
        return words.sense(anticlockwise=self.picture.sense * turn > 0)

    def direction(self, degrees: float) -> str:
        """Return a direction on paper, in words."""
        paper = self.picture.paper_angle(degrees)
        left = paper > 90.0 or paper < -90.0
        size = -paper if paper < 0 else paper
        acute = 180.0 - size if left else size
        if round(acute, 1) in (0.0, 90.0):
            return words.DIRECTIONS[wrap(90.0 * round(paper / 90.0))]
        return words.slanting(self.degrees(acute), above=paper > 0, left=left)

    def size(self, number: int) -> float:
        """Return the size of a phasor by its number."""
        return next(arm.size for arm in self.construction.arms if arm.number == number)

    def zero_name(self, move: TurnAngle) -> Phrase:
        """Return the name of the line along the protractor's zero."""
        if move.zero.startswith("L"):
            return self.tag(int(move.zero[1:]))
        if move.zero == FIRST_DIRECTION:
            return words.as_line(self.notation.reference)
        return words.UPRIGHT_AXIS if move.zero == AXIS_UP else words.LEVEL_AXIS

    def zero_length(self, move: TurnAngle) -> float:
        """Return the length in mm of the line along the protractor's zero; axes are long enough."""
        if move.zero.startswith("L"):
            return self.millimetres(self.size(int(move.zero[1:])))
        if move.zero == DIAGONAL:
            return self.millimetres(self.figure.readings[DIAGONAL_LENGTH])
        if move.zero != FIRST_DIRECTION:
            return PROTRACTOR_REACH
        led = leads(self.construction)
        return PROTRACTOR_REACH if led is None else self.millimetres(length_of(led, self.figure.readings))

    def own_paper(self, *, longest: bool = True) -> Phrase:
        """Return where the common point goes on the learner's own paper, the scale, and how long the ``longest`` line
        is; or that there is no room."""
        plan, scale, sheet = self.plan, self.notation.scale(self.plan.scale), self.plan.layout
        paper = own_paper_name(sheet.paper, sheet.orientation)
        fit = fit_at(figure_box(plan.construction, plan.picture), sheet, plan.scale)
        if not fit.fits:
            shape = plan.construction, plan.picture, plan.scale
            turned = [way for way in ORIENTATIONS if fits_paper(*shape, sheet.paper, (way,), OWN_PAPER)]
            larger = papers_that_take(*shape, sheet.paper, ORIENTATIONS, OWN_PAPER)
            takers = (own_paper_name(sheet.paper, turned[0]) if turned else "", paper_name(larger[0]) if larger else "")
            return words.no_room(scale, paper, over_text(fit), next(filter(None, takers), ""))
        placed = words.place_point(scale, self.place, distances(plan, self.notation.mark), paper)
        return placed + self.longest_line() if longest else placed

    def longest_line(self) -> Phrase:
        """Return the longest length to mark, as a sentence that follows another."""
        longest = max(self.construction.arms, key=lambda arm: arm.size)
        return words.longest_line(self.notation.short_of(longest.key, longest.size), self.length(longest.size))

    def is_dot(self, amount: float) -> bool:
        """Return whether a phasor is too short for an arrow at this scale."""
        return self.millimetres(amount) < DOT_BELOW

    def sides(self, step: Step) -> tuple[Phrase, Phrase, float, float]:
        """Return the names and sizes of both sides of the parallelogram of a step."""
        if len(step.arm_numbers) == 2:
            first, second = step.arm_numbers
            return self.tag(first), self.tag(second), self.size(first), self.size(second)
        diagonal = self.figure.readings[DIAGONAL_LENGTH]
        return parallel.THE_DIAGONAL, self.tag(step.arm_numbers[-1]), diagonal, self.size(step.arm_numbers[-1])

    def has_protractor(self, step: Step) -> bool:
        """Return whether a step needs a protractor: an angle of 0° or 180° is along a line that is there."""
        turns = [turn_of(move, self.figure.readings) for move in step.moves if isinstance(move, TurnAngle)]
        return any(turn not in (0.0, 180.0) for turn in turns) or any(isinstance(m, ReadAngle) for m in step.moves)

    def before(self, step: Step) -> str:
        """Return the name of the previous step."""
        steps = self.construction.steps
        return steps[steps.index(step) - 1].name
