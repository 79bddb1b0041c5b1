"""How accurate a drawing by hand can be for one problem: the methods compared, and what contributes most."""

import math
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy.agreement import COVERAGE
from pycore.constructions.construction import FLAT_CROSSING, flattest
from pycore.practice.task import beyond_marking
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.answer import Block, Grid, Paragraph, Working
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import degrees_text
from pycore.words import accuracy as words
from pycore.words import plain
from pycore.words.phrase import Phrase

LARGEST_SHARES = 6
ACCURACY = "accuracy"
"""Key of the working that compares hand, meter and calculation."""


@dataclass(frozen=True, slots=True)
class MethodAccuracy:
    """One method and order: half-width of its drawings (A), on paper (mm), and whether it was found by sampling."""

    title: str
    half_width: float
    millimetres: float
    sampled: bool


class SumAccuracy:
    """Numbers and sentences about the accuracy of one case's drawing."""

    title: Phrase = words.HAND_TITLE

    def __init__(self, case: SumCase) -> None:
        self.case = case
        self.who = case.hand
        self.writing = case.notation.writing

    def notices(self, plan: Plan) -> tuple[Phrase, ...]:
        """Return a warning if lines cross too flatly, or so flatly that no marking can be as wide as the drawings."""
        if self.too_flat(plan):
            half_width = self.case.scatter(plan).half_width
            amount = self.writing.fixed(half_width) + NO_BREAK_SPACE + self.writing.unit
            best, own = self.method_accuracies()[0].title, plan.construction
            if best == plain(self.case.method_title(own.method, own.order)):
                return (words.too_unsure(amount),)
            return (words.too_flat(amount, best),)
        angle = flattest(plan.construction)
        if angle >= FLAT_CROSSING:
            return ()
        return (words.flat(degrees_text(angle, self.writing.mark)),)

    def too_flat(self, plan: Plan) -> bool:
        """Return whether careful drawings of a plan scatter more than any marking allows."""
        largest = max((arm.size for arm in self.case.arms), default=0.0)
        # Every edit asks this: a sample would take longer than the rest of the answer.
        if self.case.closed or not beyond_marking(self.case.spread(plan).widest, largest):
            return False
        return beyond_marking(self.case.scatter(plan).half_width, largest)

    def tolerance(self, plan: Plan) -> float:
        """Return the half-width beside the headline: to first order, or where that warns of the plan, the warning's."""
        return (self.case.scatter if self.too_flat(plan) else self.case.spread)(plan).half_width

    def method_accuracies(self) -> tuple[MethodAccuracy, ...]:
        """Return every method and order, the most accurate first."""
        accuracies: list[MethodAccuracy] = []
        for method in self.case.methods:
            if self.case.possible(method) != method:
                continue
            for plan in self.case.plans(method, scale=self.scale()):
                title = plain(self.case.method_title(method, plan.construction.order))
                scatter = self.case.scatter(plan)
                half_width = scatter.half_width
                accuracies.append(MethodAccuracy(title, half_width, half_width * plan.factor, scatter.sampled))
        return tuple(sorted(accuracies, key=lambda accuracy: accuracy.half_width))

    def scale(self) -> float | None:
        """Return the scale that the user has chosen, if it fits."""
        return None if self.case.chosen.misfit else self.case.problem.scale

    def working(self, plan: Plan) -> Working:
        """Return the page's section on accuracy."""
        blocks = [*self.judge(plan), *self.compare(), *self.budget(plan)]
        return Working(ACCURACY, self.title, tuple(blocks))

    def compare(self) -> list[Block]:
        """Return the comparison of the methods."""
        mark = self.writing.mark
        full = self.case.problem["wording"] == "full"
        times = 1.0 if full else COVERAGE
        length = quantity.plain(times * self.who.length, mark) + f"{NO_BREAK_SPACE}mm"
        intro = words.hand_intro if full else words.hand_intro_plain
        blocks: list[Block] = [Paragraph(intro(length, degrees_text(times * self.who.angle, mark)))]
        ways, size = self.method_accuracies(), 0.0 if self.case.closed else self.case.size
        rows = []
        for method in ways:
            share = quantity.fixed(100 * method.half_width / size, 0, mark) + f"{NO_BREAK_SPACE}%" if size else ""
            on_paper = quantity.fixed(method.millimetres, 1, mark) + f"{NO_BREAK_SPACE}mm"
            title = words.marked(method.title) if method.sampled else method.title
            rows.append(((title,), (self.writing.amount(method.half_width),), (on_paper,), (share,)))
        blocks.append(Grid(words.HEAD, tuple(rows)))
        if len(ways) > 1:
            blocks.append(Paragraph(words.most_forgiving(ways[0].title)))
        if any(method.sampled for method in ways):
            blocks.append(Paragraph(words.FLAT_ROWS))
        return blocks

    def budget(self, plan: Plan) -> list[Block]:
        """Return the uncertainty budget, for those who choose the full vocabulary (form after the GUM)."""
        if self.case.problem["wording"] != "full" or self.case.closed:
            return []
        spread = self.case.spread(plan)
        variance = spread.length * spread.length
        moves = plan.construction.moves
        steps = [step for step in plan.construction.steps for _ in step.moves]
        sentences = StepSentences(plan, self.case.notation)
        rows = []
        for share in sorted(spread.shares, key=lambda one: -one.variance)[:LARGEST_SHARES]:
            name = words.FINAL_READING
            if share.move >= 0:
                sentence = plain(sentences.sentence(steps[share.move])[0][:1]).rstrip(".,")
                name = words.contribution(sentence, share.kind)
            deviation = math.sqrt(share.variance)
            percentage = quantity.fixed(100 * share.variance / variance, 0, self.writing.mark) + f"{NO_BREAK_SPACE}%"
            rows.append(((name,), (self.writing.amount(deviation),), (percentage,)))
        return [Paragraph(words.BUDGET_TITLE), Grid(words.BUDGET_HEAD, tuple(rows))] if moves else []

    def judge(self, plan: Plan) -> list[Block]:
        """Return what a page says about readings, if it has fields for them."""
        return []
