"""One neutral-current problem: the lines of a star as arms of a sum, and what its sheets say."""

from dataclasses import replace

from pycore import phasor, quantity
from pycore.accuracy.hand import Hand
from pycore.calculators.neutral_current import words as neutral_words
from pycore.calculators.neutral_current.circuit import StarSolution, solve
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.neutral_current.problem import NeutralProblem
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.constructions.voltages import with_voltages
from pycore.forms import conventions
from pycore.practice.task import FurtherQuestion
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import Notation, OwnVoltage, SheetWords
from pycore.words import moves_list, plain
from pycore.words import sheet as words
from pycore.words.phrase import Phrase

SLUG = "neutral-current"
LAST_LINE = 3


class NeutralCase(SumCase):
    """A neutral-current problem with its solution and everything that its answer needs."""

    slug = SLUG
    fields = FIELDS
    scenario = neutral_words.SCENARIO
    on_sheet = neutral_words.TITLE
    method_in_task = False

    def __init__(self, entered: NeutralProblem) -> None:
        problem = entered.sheet
        self.entered = entered
        self.solution: StarSolution = solve(entered.load)
        lines = conventions.line_names(problem["names"])
        arms = tuple(
            Arm(f"i{index + 1}", index + 1, size, self.solution.angles[index])
            for index, size in enumerate(entered.load.currents)
            if size > 0
        )
        reference = 0.0 if problem["reference"] == "voltage" else arms[0].angle
        tags = conventions.symbols("I", problem["names"])
        voltage = conventions.symbols("V", problem["names"])["i1"]
        # A first current in phase with the voltage is itself the line that angles are counted from.
        on_voltage = arms[0].angle != reference
        notation = Notation(
            tags=tags,
            lines=lines,
            reference=voltage if on_voltage else tags[arms[0].key],
            voltage=voltage,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=neutral_words.WORDS,
        )
        angles = VOLTAGE_ANGLES[problem["sequence"]]
        voltages = conventions.symbols("V", problem["names"])
        if not self.solution.equal_angles:
            notation = replace(notation, own_voltages={
                arm.key: OwnVoltage(voltages[arm.key], angles[arm.number - 1], entered.lags[arm.number - 1].degrees)
                for arm in arms
            })  # fmt: skip
        super().__init__(
            problem, arms, lines, DrawingConvention(problem["first"], problem["rotation"], reference), notation
        )

    @property
    def hand(self) -> Hand:
        """The hand that draws, which may be one of the user's own figures."""
        return self.entered.hand

    def reading(self) -> str:
        """The meter reading of the neutral as typed, with its unit; of several the mean, with one figure more."""
        writing, readings = self.notation.writing, self.entered.readings
        mean = self.entered.measured or 0.0
        if len(readings) > 1:
            finest = max(quantity.decimals_of(writing.as_typed(value)) for value in readings)
            mean = round(mean / writing.factor, finest + 1) * writing.factor
        elif readings:
            # 12.0 A says more than 12 A: how finely the meter was read.
            digit = quantity.last_digit(self.problem.typed["measured"], "A") / writing.factor
            decimals = quantity.decimals_of(quantity.plain(digit))
            if decimals > quantity.decimals_of(writing.short(mean).partition(NO_BREAK_SPACE)[0]):
                return quantity.fixed(mean / writing.factor, decimals, writing.mark) + NO_BREAK_SPACE + writing.unit
        return writing.short(mean)

    sum_word: Phrase = ("neutral",)
    part_word = "line"
    has_formula = True

    def parts(self) -> tuple[ComponentRow, ...]:
        """All three lines: one that carries nothing has its row too."""
        tags, solution = self.notation.tags, self.solution
        return tuple(
            ComponentRow(tags[f"i{index + 1}"], size, solution.angles[index])
            for index, size in enumerate(solution.load.currents)
        )

    def build(self, method: str, order: str) -> Construction:
        """A method's construction; where the lags differ, it begins with thin lines for the voltages."""
        construction, owns = super().build(method, order), self.notation.own_voltages
        if not owns:
            return construction
        voltages = {arm.number: owns[arm.key].angle for arm in self.arms}
        return with_voltages(construction, voltages, self.picture.reference)

    def voltages(self) -> dict[str, float]:
        """Each line current's own phase voltage."""
        angles = VOLTAGE_ANGLES[self.problem["sequence"]]
        return {arm.key: angles[arm.number - 1] for arm in self.arms}

    result_word = moves_list.NEUTRAL

    def sheet_values_text(self, plan: Plan, *, any_method: bool = False) -> tuple[str, ...]:
        """The currents, power factors and sequence, and the direction of the drawing."""
        sizes = [
            f"{self.lines[arm.number - 1]}: {self.notation.writing.as_typed(arm.size)}{NO_BREAK_SPACE}"
            f"{self.notation.writing.unit}"
            for arm in self.arms
        ]
        direction = self._direction_note(plan).replace(";", ",")
        return (", ".join(sizes), *moves_list.lines_of(self._load_words(short=False)), direction)

    def others_than_third(self) -> list[complex]:
        """The currents of the first two lines, from the direction drawn first."""
        return [
            phasor.polar(arm.size, arm.angle - self.picture.reference) for arm in self.arms if arm.number < LAST_LINE
        ]

    def further_question(self) -> str:
        """The question which third current makes the sum zero; "" if it is not asked."""
        requested = self.problem["further"] == "zero" and self.others_than_third()
        return neutral_words.further(self.lines[LAST_LINE - 1]) if requested else ""

    def beyond(self) -> FurtherQuestion | None:
        """The answer to the further question."""
        if not self.further_question():
            return None
        value = -phasor.total(self.others_than_third())
        return FurtherQuestion(self.lines[LAST_LINE - 1], self.notation.tags[f"i{LAST_LINE}"], value)

    def known(self, plan: Plan, *, any_method: bool = False) -> tuple[str, ...]:
        """Power factors and sequence; what is drawn first, and the sense of lag."""
        return (self._load_words(short=False), self._direction_note(plan))

    def zero_reason(self) -> Phrase:
        """A balanced load, or a figure that closes by itself."""
        if not self.solution.closed:
            return super().zero_reason()
        return neutral_words.BALANCED if self.solution.balanced else neutral_words.CLOSED_NOT_BALANCED

    def typed_angle(self, key: str) -> bool:
        """Whether a direction is given: with unequal lags it is to be found from the lag of its line."""
        return self.solution.equal_angles and super().typed_angle(key)

    def value_texts(self) -> tuple[str, ...]:
        """Each current (A) with its lag."""
        lines = zip(self.entered.load.currents, self.entered.lags, strict=True)
        return tuple(f"{quantity.plain(size)} {quantity.plain(round(lag.degrees, 2))}" for size, lag in lines)

    def values_text(self) -> str:
        """The typed currents as text, with their lags if there are any."""
        amounts = []
        for size, lag in zip(self.entered.load.currents, self.entered.lags, strict=True):
            amount = self.notation.writing.short(size)
            amounts.append(amount if lag.degrees == 0 else f"{amount} {lag.echo(self.notation.mark)['degrees']}")
        return ", ".join(amounts)

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        load = self._load_words(short=plan.layout.small)
        return sheet_words(
            self, plan, kind, method, neutral_words.TASK, load, drawing_note=self._direction_note(plan)
        )

    def _load_words(self, *, short: bool) -> str:
        """The lags of the lines, and the phase sequence."""
        one, two, three = self.notation.lines
        sequence = (one, two, three) if self.problem["sequence"] == "123" else (one, three, two)
        echoes = {arm.number: self.entered.lags[arm.number - 1].echo(self.notation.mark) for arm in self.arms}
        if self.solution.equal_angles:
            return words.equal_load(
                ", ".join(sequence), next(iter(echoes.values())), short=short, apart=True,
                from_voltage=self.notation.polar,
            )  # fmt: skip
        lags = [words.line_lag(self.lines[number - 1], echo) for number, echo in echoes.items()]
        return words.unequal_load(", ".join(lags), ", ".join(sequence), short=short)

    def _direction_note(self, plan: Plan) -> str:
        """Which way the first direction points, and the sense of lag on this paper."""
        sentences, first = StepSentences(plan, self.notation), plain(self.notation.reference)
        direction, drawn = sentences.direction(self.picture.reference), first in self.begun(plan)
        return neutral_words.drawing_direction(first, direction, sentences.sense(-1.0), drawn=drawn)
