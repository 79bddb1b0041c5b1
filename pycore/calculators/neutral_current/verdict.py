"""Drawn, calculated and measured neutral current beside each other: a picture, and whether each two agree."""

import math
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy.agreement import COVERAGE, Verdict, coverage_factor, effective_freedom, verdict
from pycore.accuracy.instrument import Meter, computed, difference
from pycore.accuracy.propagation import type_a
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.causes import drawn_causes, measured_causes
from pycore.calculators.neutral_current.comparison import PrintedComparison, printed
from pycore.drawing import Ink, Page
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.intervals import Interval, intervals
from pycore.sheet.plan import Plan
from pycore.sums.answer import Block, BulletList, Paragraph, WorkingPicture
from pycore.words import verdict as words
from pycore.words.phrase import Phrase

FEW = 6
"""Number of readings below which the page says that their scatter is uncertain."""
JUST_OUTSIDE = 1.1
"""E_n up to which a difference is called just outside."""
INKS: dict[str, tuple[Ink, str]] = {
    words.DRAWING: ("orange", "diamond"), words.CALCULATION: ("accent", "circle"), words.METER: ("blue", "square"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class ComparedAnswer:
    """One of the three answers (A): its source, its value and its half-width at about 95 %."""

    source: str
    value: float
    half: float


@dataclass(frozen=True, slots=True)
class Pair:
    """Two answers, the standard uncertainty of their difference (A) and its coverage factor, the reason why they
    can differ, and what they share."""

    first: ComparedAnswer
    second: ComparedAnswer
    standard: float
    factor: float
    why: str
    shared: str


def just_outside(comparison: Verdict) -> bool:
    """Whether two answers disagree by so little that another reading comes before any reason."""
    return not comparison.agree and comparison.number is not None and comparison.number <= JUST_OUTSIDE


class NeutralVerdict:
    """The comparison of the three answers of a case; ``plan`` is the drawing on the sheet."""

    def __init__(self, case: NeutralCase, plan: Plan) -> None:
        self.case, self.plan = case, plan
        self.entered, self.writing = case.entered, case.notation.writing
        self.meter = Meter(*case.entered.meter)
        self.one_meter = case.problem["meters"] == "one"
        self.full = case.problem["wording"] == "full"
        readings = case.entered.readings
        self.scatter = type_a(readings).deviations[0] if len(readings) > 1 else 0.0

    def amount(self, value: float) -> str:
        """A result in the problem's decimals and one more."""
        return self.writing.fixed(value, 1) + NO_BREAK_SPACE + self.writing.unit

    def printed(
        self, first: float, second: float, comparison: Verdict, *, with_number: bool = False
    ) -> PrintedComparison:
        """Two answers (A) and their comparison as text, as finely as the readings were typed."""
        return printed(first, second, comparison, self.writing, self.finest, with_number=with_number)

    @property
    def finest(self) -> int:
        """Decimals of the reading as it is printed."""
        return quantity.decimals_of(self.case.reading().partition(NO_BREAK_SPACE)[0]) if self.entered.readings else 0

    # Uncertainties.

    @property
    def drawing(self) -> float:
        """Standard uncertainty (A) of a drawn result."""
        return self.case.scatter(self.plan).length

    def between(self) -> float:
        """Standard uncertainty (A) of the difference between calculation and reading."""
        lines, angles = self.case.solution.lines, self.case.solution.angles
        reading = self.entered.measured or 0.0
        return difference(reading, lines, angles, self.meter, one_meter=self.one_meter, scatter=self.scatter)

    def factor(self, standard: float) -> float:
        """The coverage factor of a standard uncertainty (A) that contains the scatter of the readings."""
        if standard <= 0.0:
            return COVERAGE
        return coverage_factor(effective_freedom(standard, self.scatter, len(self.entered.readings)))

    def results(self) -> dict[str, ComparedAnswer]:
        """The answers there are, each with the half-width of its bar."""
        solution, entered = self.case.solution, self.entered
        answers: dict[str, ComparedAnswer] = {}
        if entered.drawn is not None:
            drawn = entered.drawn.value(self.plan.factor)
            answers[words.DRAWING] = ComparedAnswer(words.DRAWING, drawn, COVERAGE * self.drawing)
        own = 0.0
        if entered.measured is not None:
            own = computed(solution.lines, solution.angles, self.meter, one_meter=self.one_meter).standard
        answers[words.CALCULATION] = ComparedAnswer(words.CALCULATION, solution.current, COVERAGE * own)
        if entered.measured is not None:
            standard = math.hypot(self.meter.standard(entered.measured), self.scatter)
            answers[words.METER] = ComparedAnswer(words.METER, entered.measured, self.factor(standard) * standard)
        return answers

    def pairs(self) -> tuple[Pair, ...]:
        """Every pair of answers, with the uncertainty of their difference."""
        answers = self.results()
        drawing, reading, calculation = answers.get(words.DRAWING), answers.get(words.METER), answers[words.CALCULATION]
        pairs: list[Pair] = []
        if drawing:
            pairs.append(Pair(drawing, calculation, self.drawing, COVERAGE, self.hand_words(), words.SHARED_VALUES))
        if reading:
            standard = self.between()
            shared = words.SHARED_GAIN if self.one_meter else words.SHARED_NOTHING
            pairs.append(Pair(reading, calculation, standard, self.factor(standard), self.meter_words(), shared))
        if drawing and reading:
            # The drawing starts from the same line readings as the calculation.
            standard = math.hypot(self.between(), self.drawing)
            why = words.both(self.hand_words(), self.meter_words())
            shared = words.SHARED_GAIN if self.one_meter else words.SHARED_NOTHING
            pairs.append(Pair(drawing, reading, standard, self.factor(standard), why, shared))
        return tuple(pairs)

    def of_reading(self) -> Verdict | None:
        """Whether the meter's reading agrees with the calculation; None without a reading."""
        reading = self.entered.measured
        if reading is None:
            return None
        standard = self.between()
        return verdict(reading, self.case.solution.current, standard, self.factor(standard))

    def printed_reading(self, comparison: Verdict) -> PrintedComparison:
        """The meter's reading beside the calculation, as text."""
        return self.printed(self.entered.measured or 0.0, self.case.solution.current, comparison)

    # Words.

    def hand_words(self) -> str:
        """The hand in words."""
        mark, hand = self.writing.mark, self.case.hand
        if not self.full and self.case.problem["hand"] in words.PLAIN_HANDS:
            return words.PLAIN_HANDS[self.case.problem["hand"]]
        length = quantity.plain(hand.length, mark) + f"{NO_BREAK_SPACE}mm"
        return words.by_hand(length, quantity.plain(hand.angle, mark) + "°")

    def meter_words(self) -> str:
        """The meters in words."""
        mark, meter = self.writing.mark, self.meter
        percent, digits = quantity.plain(meter.percent, mark), quantity.plain(meter.digits, mark)
        return words.by_meters(percent, digits, self.writing.short(meter.digit), one=self.one_meter)

    def blocks(self) -> list[Block]:
        """The picture, a sentence for each pair, and possible reasons if a pair disagrees."""
        pairs = self.pairs()
        if not pairs:
            return [Paragraph(words.hint())]
        blocks: list[Block] = [WorkingPicture(self.picture(), "intervals"), Paragraph(words.PICTURE_MEANING)]
        blocks += [Paragraph(phrase) for phrase in self.remarks()]
        doubtful: list[Pair] = []
        for pair in pairs:
            comparison = verdict(pair.first.value, pair.second.value, pair.standard, pair.factor)
            blocks += self.judgement_of(pair, comparison)
            doubtful += [] if comparison.agree else [pair]
        if self.full:
            blocks.append(Paragraph(words.EN_MEANS))
        for pair in doubtful:
            blocks += self.causes(pair)
        return blocks

    def judgement_of(self, pair: Pair, comparison: Verdict) -> list[Block]:
        """One sentence with its numbers; in full wording E_n and what is shared."""
        shown = self.printed(pair.first.value, pair.second.value, comparison, with_number=self.full)
        compared = words.compared(pair.first.source, shown.first, pair.second.source, shown.second, shown.apart)
        sentence = words.agree if comparison.agree else words.disagree
        if just_outside(comparison):
            sentence = words.just_outside
        blocks: list[Block] = [Paragraph(sentence(compared, shown.normal, pair.why))]
        if self.full and shown.number:
            factor = quantity.plain(pair.factor, self.writing.mark)
            blocks.append(Paragraph(words.en(shown.number, shown.apart, shown.normal, factor, pair.shared)))
        return blocks

    def causes(self, pair: Pair) -> list[Block]:
        """Possible reasons, each with its size and the next measurement."""
        if pair.second.source != words.CALCULATION:
            return []
        if pair.first.source == words.METER:
            reasons = measured_causes(self.case, pair.first.value, self.amount)
            if not reasons:
                return []
            return [Paragraph(words.WHY_MEASURED), BulletList(reasons), Paragraph(words.ONE_NUMBER)]
        reasons = drawn_causes(self.case, self.plan, pair.first.value)
        return [Paragraph(words.WHY_DRAWN), BulletList(reasons)]

    def remarks(self) -> tuple[Phrase, ...]:
        """Notes on the readings and on the meter's limit, before the comparison."""
        reading = self.entered.measured
        if reading is None:
            return ()
        meter, phrases = self.meter, list(self.repeats(reading))
        if self.entered.digit_from_readings and meter.digits > 0.0:
            phrases.append(words.digit_from_readings(self.writing.short(meter.digit)))
        if not self.full:
            phrases.append(words.ONE_METER if self.one_meter else words.SEVERAL_METERS)
        if reading == 0.0 and not self.case.solution.closed:
            phrases.append(words.NOTHING_READ)
        elif meter.digit >= reading > 0.0:
            phrases.append(words.coarse(self.writing.short(meter.digit), self.amount(reading)))
        elif meter.limit(reading) >= reading > 0.0:
            phrases.append(words.wide_limit(self.amount(meter.limit(reading)), self.amount(reading)))
        if meter.percent == 0.0 and meter.digits == 0.0:
            phrases.append(words.NO_LIMIT)
        return tuple(phrases)

    def repeats(self, reading: float) -> tuple[Phrase, ...]:
        """The scatter of repeated readings (mean in A), or a note that there is only one."""
        count = len(self.entered.readings)
        if count == 1:
            return (words.READ_ONCE,) if self.full else ()
        if self.scatter == 0.0:
            return (words.repeated_alike(str(count), self.amount(reading)),)
        sentence = words.repeated(str(count), self.amount(reading), self.amount(self.scatter))
        if not self.full:
            half = self.amount(coverage_factor(count - 1) * self.scatter)
            sentence = words.repeated_plainly(str(count), self.amount(reading), half)
        if count >= FEW:
            return (sentence,)
        if not self.full:
            return (sentence, words.few_readings(str(count)))
        alone, whole = (
            quantity.plain(factor, self.writing.mark)
            for factor in (coverage_factor(count - 1), self.factor(self.between()))
        )
        return (sentence, words.few_readings_factors(str(count), alone, whole))

    def picture(self) -> Page:
        """The answers as intervals on one axis."""
        rows = [
            Interval(
                words.picture_row(
                    words.SHORT[answer.source], self.amount(answer.value),
                    self.amount(answer.half) if answer.half > 0.0 else "",
                ),
                answer.value / self.writing.factor, answer.half / self.writing.factor, *INKS[answer.source],
            )
            for answer in self.results().values()
        ]  # fmt: skip
        description = words.picture_told("; ".join(row.label for row in rows))
        return intervals(rows, self.writing.unit, self.writing.mark, words.PICTURE_TITLE, description)
