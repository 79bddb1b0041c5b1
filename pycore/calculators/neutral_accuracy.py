"""How near hand and meter can come for one problem: comparison of methods, verdict, what could explain."""

import math
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy import explain, hand
from pycore.accuracy.agreement import verdict
from pycore.accuracy.instrument import Meter, difference
from pycore.calculators.interface import Block, Grid, Paragraph, Working
from pycore.calculators.neutral_star import NeutralCase
from pycore.calculators.sum_case import HANDS, SumCase
from pycore.calculators.telling import Teller
from pycore.calculators.written import degrees_text
from pycore.constructions.construction import flattest
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.words import Phrase, plain
from pycore.words import accuracy as words

LARGEST_SHARES = 6
MOST_EXPLANATIONS = 4


@dataclass(frozen=True, slots=True)
class Way:
    """One method and order with the half-width of its drawings (A), in mm, and whether it is flat."""

    title: str
    half_width: float
    millimetres: float
    flat: bool


class SumAccuracy:
    """The figures and sentences of one case about the hand that draws."""

    def __init__(self, case: SumCase) -> None:
        self.case = case
        self.who = HANDS[case.problem["hand"]]
        self.writing = case.telling.writing

    def tolerance(self, plan: Plan) -> float:
        """Half-width in amperes of 95 in 100 drawings."""
        return self.case.spread(plan).half_width

    def notices(self, plan: Plan) -> tuple[Phrase, ...]:
        """A warning where lines cross too flatly."""
        angle = flattest(plan.construction)
        if angle >= hand.FLAT:
            return ()
        return (words.flat(degrees_text(angle, self.writing.mark)),)

    def ways(self) -> tuple[Way, ...]:
        """Every method and order, the most forgiving first, flat ones after those that are not."""
        made: list[Way] = []
        for method in self.case.methods:
            if self.case.possible(method) != method:
                continue
            for plan in self.case.plans(method):
                title = plain(self.case.way_title(method, plan.construction.order))
                half = self.tolerance(plan)
                made.append(Way(title, half, half * plan.factor, flattest(plan.construction) < hand.FLAT))
        return tuple(sorted(made, key=lambda way: (way.flat, way.half_width)))

    def working(self, plan: Plan) -> Working:
        """The section of the page."""
        blocks = [*self.compare(), *self.budget(plan), *self.judge()]
        return Working("accuracy", words.title(), tuple(blocks))

    def compare(self) -> list[Block]:
        """Which way is the most forgiving."""
        mark = self.writing.mark
        length = quantity.plain(self.who.length, mark) + f"{NO_BREAK_SPACE}mm"
        made: list[Block] = [Paragraph(words.hand_intro(length, degrees_text(self.who.angle, mark)))]
        ways, size = self.ways(), self.case.size
        rows = []
        for way in ways:
            share = quantity.fixed(100 * way.half_width / size, 0, mark) + f"{NO_BREAK_SPACE}%" if size else ""
            on_paper = quantity.fixed(way.millimetres, 1, mark) + f"{NO_BREAK_SPACE}mm"
            cells = [self.writing.amount(way.half_width), on_paper]
            cells = [words.at_least(cell) if way.flat else cell for cell in cells]
            rows.append(((way.title,), (cells[0],), (cells[1],), (share,)))
        made.append(Grid(words.head(), tuple(rows)))
        if len(ways) > 1:
            made.append(Paragraph(words.most_forgiving(ways[0].title)))
        if any(way.flat for way in ways):
            made.append(Paragraph(words.flat_rows()))
        return made

    def budget(self, plan: Plan) -> list[Block]:
        """What contributes how much, for those who ask for the full vocabulary (after the GUM's form)."""
        if self.case.problem["wording"] != "full" or self.case.closed:
            return []
        found = self.case.spread(plan)
        whole = found.length * found.length
        moves = plan.construction.moves
        steps = [step for step in plan.construction.steps for _ in step.moves]
        teller = Teller(plan, self.case.telling)
        rows = []
        for share in sorted(found.shares, key=lambda one: -one.variance)[:LARGEST_SHARES]:
            name = words.FINAL_READING
            if share.move >= 0:
                told = plain(teller.tell_one(steps[share.move])[0][:1]).rstrip(".,")
                name = words.contribution(told, share.kind)
            deviation = math.sqrt(share.variance)
            part = quantity.fixed(100 * share.variance / whole, 0, self.writing.mark) + f"{NO_BREAK_SPACE}%"
            rows.append(((name,), (self.writing.amount(deviation),), (part,)))
        return [Paragraph(words.budget_title()), Grid(words.budget_head(), tuple(rows))] if moves else []

    def judge(self) -> list[Block]:
        """What a page says of a reading, where it takes one."""
        return []


class NeutralAccuracy(SumAccuracy):
    """The same with the reading of a meter on the neutral."""

    case: NeutralCase

    def __init__(self, case: NeutralCase) -> None:
        super().__init__(case)

    def meter(self) -> Meter:
        """The meter that the form describes."""
        problem = self.case.problem
        return Meter(problem.meter[0], problem.meter[1], problem.meter[2])

    def judge(self) -> list[Block]:
        """Reading and calculation: whether they agree, and if not, what could be why."""
        problem = self.case.problem
        if problem.measured is None:
            return []
        solution, meter = self.case.solution, self.meter()
        one = problem["meters"] == "one"
        standard = difference(problem.measured, solution.lines, solution.angles, meter, one_meter=one)
        found = verdict(solution.current, problem.measured, standard)
        mark = self.writing.mark
        told = words.meters(quantity.plain(meter.percent, mark), quantity.plain(meter.digits, mark), one=one)
        apart = found.difference if found.difference >= 0 else -found.difference
        say = words.agrees if found.agree else words.disagrees
        made: list[Block] = [Paragraph(say(self.amount(apart), self.amount(found.expanded), told))]
        if problem["wording"] == "full":
            if found.number is not None:
                made.append(
                    Paragraph(words.en_number(quantity.fixed(found.number, 2, mark), self.amount(found.expanded)))
                )
            if one:
                made.append(Paragraph(words.shared_gain()))
        if not found.agree:
            made += [Paragraph(cause) for cause in self.causes()]
            made.append(Paragraph(words.one_number()))
        return made

    def amount(self, value: float) -> str:
        """A difference in the problem's decimals."""
        return self.writing.fixed(value, 1) + NO_BREAK_SPACE + self.writing.unit

    def causes(self) -> list[Phrase]:
        """What could explain the reading, the most plausible first, each with the size it would need."""
        measured, mark = self.case.problem.measured, self.writing.mark
        if measured is None:
            return []
        made: list[Phrase] = []
        for one in explain.explanations(self.case.solution.lines, measured)[:MOST_EXPLANATIONS]:
            line = self.case.lines[one.line - 1]
            size = -one.size if one.size < 0 else one.size
            if one.kind == explain.ANGLE:
                made.append(words.why_angle(line, degrees_text(size, mark), lags=one.size > 0))
            elif one.kind == explain.LINE:
                made.append(words.why_reading(line, self.amount(size), more=one.size > 0))
            elif one.kind == explain.HARMONIC:
                made.append(words.why_harmonic(quantity.fixed(size, 0, mark)))
            else:
                factor = quantity.plain(float(f"1e{int(one.size)}"), mark)
                made.append(words.why_range(factor))
        return made

