"""Drawn, calculated and measured neutral current beside each other: a picture, and whether each two agree."""

import math
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy.agreement import COVERAGE, Verdict, coverage_factor, effective_freedom, verdict
from pycore.accuracy.instrument import Meter, computed, difference
from pycore.accuracy.propagation import type_a
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.causes import drawn_causes, measured_causes
from pycore.drawing import Ink, Page
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.intervals import Interval, intervals
from pycore.sheet.plan import Plan
from pycore.sums.answer import Block, BulletList, Paragraph, WorkingPicture
from pycore.words import verdict as words
from pycore.words.phrase import Phrase

FEW = 6
"""Readings below which their own scatter is too uncertain to pass over in silence."""
INKS: dict[str, tuple[Ink, str]] = {
    words.DRAWING: ("orange", "diamond"), words.CALCULATION: ("accent", "circle"), words.METER: ("blue", "square"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class ComparedAnswer:
    """One of the three answers (A): who says it, what, and its own half-width at about 95 %."""

    who: str
    value: float
    half: float


@dataclass(frozen=True, slots=True)
class Pair:
    """Two answers, the standard uncertainty of their difference (A) and its coverage factor, why they may
    differ, and what they share."""

    first: ComparedAnswer
    second: ComparedAnswer
    standard: float
    factor: float
    why: str
    shared: str


class NeutralVerdict:
    """What one case says of its three answers; ``plan`` is the drawing on the sheet."""

    def __init__(self, case: NeutralCase, plan: Plan) -> None:
        self.case, self.plan = case, plan
        self.problem, self.writing = case.problem, case.notation.writing
        self.meter = Meter(*case.problem.meter)
        self.one_meter = case.problem["meters"] == "one"
        self.full = case.problem["wording"] == "full"
        readings = case.problem.readings
        self.scatter = type_a(readings).deviations[0] if len(readings) > 1 else 0.0

    def amount(self, value: float) -> str:
        """A result in the problem's decimals and one more."""
        return self.writing.fixed(value, 1) + NO_BREAK_SPACE + self.writing.unit

    # Uncertainties.

    @property
    def drawing(self) -> float:
        """Standard uncertainty of what a hand draws."""
        return self.case.scatter(self.plan).length

    def between(self) -> float:
        """Standard uncertainty of calculation less reading."""
        lines, angles = self.case.solution.lines, self.case.solution.angles
        read = self.problem.measured or 0.0
        return difference(read, lines, angles, self.meter, one_meter=self.one_meter, scatter=self.scatter)

    def factor(self, standard: float) -> float:
        """The coverage factor of a difference in which the repeated readings have their share."""
        if standard <= 0.0:
            return COVERAGE
        return coverage_factor(effective_freedom(standard, self.scatter, len(self.problem.readings)))

    def results(self) -> dict[str, ComparedAnswer]:
        """The answers there are, each with the half-width of its bar."""
        solution, problem = self.case.solution, self.problem
        made: dict[str, ComparedAnswer] = {}
        if problem.drawn is not None:
            drawn = problem.drawn.value(self.plan.factor)
            made[words.DRAWING] = ComparedAnswer(words.DRAWING, drawn, COVERAGE * self.drawing)
        own = 0.0
        if problem.measured is not None:
            own = computed(solution.lines, solution.angles, self.meter, one_meter=self.one_meter).standard
        made[words.CALCULATION] = ComparedAnswer(words.CALCULATION, solution.current, COVERAGE * own)
        if problem.measured is not None:
            standard = math.hypot(self.meter.standard(problem.measured), self.scatter)
            made[words.METER] = ComparedAnswer(words.METER, problem.measured, self.factor(standard) * standard)
        return made

    def pairs(self) -> tuple[Pair, ...]:
        """Every two answers, with what parts them."""
        found = self.results()
        drawn, read, reckoned = found.get(words.DRAWING), found.get(words.METER), found[words.CALCULATION]
        made: list[Pair] = []
        if drawn:
            made.append(Pair(drawn, reckoned, self.drawing, COVERAGE, self.hand_words(), words.SHARED_VALUES))
        if read:
            standard = self.between()
            shared = words.SHARED_GAIN if self.one_meter else words.SHARED_NOTHING
            made.append(Pair(read, reckoned, standard, self.factor(standard), self.meter_words(), shared))
        if drawn and read:
            # The drawing starts from the same line readings as the calculation.
            standard = math.hypot(self.between(), self.drawing)
            why = words.both(self.hand_words(), self.meter_words())
            shared = words.SHARED_GAIN if self.one_meter else words.SHARED_NOTHING
            made.append(Pair(drawn, read, standard, self.factor(standard), why, shared))
        return tuple(made)

    def of_reading(self) -> Verdict | None:
        """Whether the meter's reading agrees with the calculation; None without a reading."""
        read = self.problem.measured
        if read is None:
            return None
        standard = self.between()
        return verdict(read, self.case.solution.current, standard, self.factor(standard))

    # Words.

    def hand_words(self) -> str:
        """The hand in words."""
        mark, who = self.writing.mark, self.case.hand
        length = quantity.plain(who.length, mark) + f"{NO_BREAK_SPACE}mm"
        return words.by_hand(length, quantity.plain(who.angle, mark) + "°")

    def meter_words(self) -> str:
        """The meters in words."""
        mark, meter = self.writing.mark, self.meter
        percent, digits = quantity.plain(meter.percent, mark), quantity.plain(meter.digits, mark)
        return words.by_meters(percent, digits, one=self.one_meter)

    def blocks(self) -> list[Block]:
        """The picture, a sentence for each two answers, and what could be why where two disagree."""
        pairs = self.pairs()
        if not pairs:
            return [Paragraph(words.hint())]
        made: list[Block] = [WorkingPicture(self.picture(), "intervals"), Paragraph(words.PICTURE_MEANING)]
        made += [Paragraph(phrase) for phrase in self.remarks()]
        doubtful: list[Pair] = []
        for pair in pairs:
            found = verdict(pair.first.value, pair.second.value, pair.standard, pair.factor)
            made += self.judged(pair, found)
            doubtful += [] if found.agree else [pair]
        if self.full:
            made.append(Paragraph(words.EN_MEANS))
        for pair in doubtful:
            made += self.causes(pair)
        return made

    def judged(self, pair: Pair, found: Verdict) -> list[Block]:
        """One sentence with its numbers; in full wording E_n and what is shared."""
        apart = self.amount(math.fabs(found.difference))
        told = words.compared(
            pair.first.who, self.amount(pair.first.value), pair.second.who, self.amount(pair.second.value), apart
        )
        say = words.agree if found.agree else words.disagree
        made: list[Block] = [Paragraph(say(told, self.amount(found.expanded), pair.why))]
        if self.full and found.number is not None:
            number = quantity.fixed(found.number, 2, self.writing.mark)
            factor = quantity.plain(pair.factor, self.writing.mark)
            made.append(Paragraph(words.en(number, apart, self.amount(found.expanded), factor, pair.shared)))
        return made

    def causes(self, pair: Pair) -> list[Block]:
        """What could be why, each with its size and the measurement that would tell."""
        if pair.second.who != words.CALCULATION:
            return []
        if pair.first.who == words.METER:
            told = measured_causes(self.case, pair.first.value, self.amount)
            return [Paragraph(words.WHY_MEASURED), BulletList(told), Paragraph(words.ONE_NUMBER)] if told else []
        told = drawn_causes(self.case, self.plan, pair.first.value, self.amount)
        return [Paragraph(words.WHY_DRAWN), BulletList(told)]

    def remarks(self) -> tuple[Phrase, ...]:
        """What is to be said of the readings and of the meter's limit before judging."""
        read = self.problem.measured
        if read is None:
            return ()
        meter, made = self.meter, list(self.repeats(read))
        if read == 0.0 and not self.case.solution.closed:
            made.append(words.NOTHING_READ)
        elif meter.digit >= read > 0.0:
            made.append(words.coarse(self.writing.short(meter.digit), self.amount(read)))
        elif meter.limit(read) >= read > 0.0:
            made.append(words.wide_limit(self.amount(meter.limit(read)), self.amount(read)))
        if meter.percent == 0.0 and meter.digits == 0.0:
            made.append(words.NO_LIMIT)
        return tuple(made)

    def repeats(self, read: float) -> tuple[Phrase, ...]:
        """What repeated readings say, or that there is only one."""
        count = len(self.problem.readings)
        if count == 1:
            return (words.READ_ONCE,) if self.full else ()
        if self.scatter == 0.0:
            return (words.repeated_alike(str(count), self.amount(read)),)
        told = words.repeated(str(count), self.amount(read), self.amount(self.scatter))
        factor = self.factor(self.between())
        if self.full and count < FEW and factor > COVERAGE:
            return (told, words.few_readings(str(count), quantity.plain(factor, self.writing.mark)))
        return (told,)

    def picture(self) -> Page:
        """The answers as intervals on one axis."""
        rows = [
            Interval(
                words.picture_row(
                    words.SHORT[one.who], self.amount(one.value), self.amount(one.half) if one.half > 0.0 else ""
                ),
                one.value / self.writing.factor, one.half / self.writing.factor, *INKS[one.who],
            )
            for one in self.results().values()
        ]  # fmt: skip
        told = words.picture_told("; ".join(row.label for row in rows))
        return intervals(rows, self.writing.unit, self.writing.mark, words.PICTURE_TITLE, told)
