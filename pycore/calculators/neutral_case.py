"""One neutral-current problem with all that more than one part of its answer needs."""

import math

from pycore import quantity
from pycore.accuracy import hand
from pycore.calculators import conventions, links, telling
from pycore.calculators.neutral_fields import FIELDS
from pycore.calculators.neutral_problem import NeutralProblem
from pycore.calculators.telling import Teller
from pycore.calculators.written import Telling
from pycore.circuits.star import StarSolution, solve
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, Picture
from pycore.constructions.parallelogram import parallelogram
from pycore.constructions.tip_to_tail import SEQUENCES, tip_to_tail
from pycore.errors import Fault, Offer
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.media import ORIENTATIONS
from pycore.sheet.plan import Plan, choose, papers_that_take
from pycore.words import Phrase
from pycore.words import neutral as words
from pycore.words.neutral_form import METHODS

ORDERS = ("12", "13", "23")
CHOSEN_TO_FIT = ("method", "order", "paper", "orientation", "scale")
"""What every printed link names, whether the user chose it or the sheet did."""
HANDS = {"practised": hand.PRACTISED, "ordinary": hand.ORDINARY}


class NeutralCase:
    """One problem with its solution and everything that more than one part of the answer needs."""

    def __init__(self, problem: NeutralProblem) -> None:
        self.problem = problem
        self.plan: Plan | None = None
        self._plans: dict[tuple[str, str, float | None], tuple[Plan, ...]] = {}
        self._spreads: dict[tuple[str, str, float], hand.Spread] = {}
        self.misfit: tuple[Fault, ...] = ()
        self.solution: StarSolution = solve(problem.load)
        self.lines = conventions.line_names(problem["names"])
        self.arms = tuple(
            Arm(f"i{index + 1}", index + 1, size, self.solution.angles[index])
            for index, size in enumerate(problem.load.currents)
            if size > 0
        )
        reference = 0.0 if problem["reference"] == "voltage" else self.arms[0].angle
        self.picture = Picture(problem["first"], problem["rotation"], reference)
        tags = conventions.symbols("I", problem["names"])
        voltage = conventions.symbols("V", problem["names"])["i1"]
        # A first current in phase with the voltage is itself the line that angles are counted from.
        on_voltage = self.arms[0].angle != reference
        self.telling = Telling(
            tags=tags,
            lines=self.lines,
            reference=voltage if on_voltage else tags[self.arms[0].key],
            voltage=voltage,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
        )
        self.method = self.possible(problem["method"])

    def possible(self, method: str) -> str:
        """The method asked for, or tip to tail where a single arrow leaves nothing to pair."""
        return "tip-to-tail" if method == "parallelogram" and len(self.arms) < 2 else method

    def orders(self, method: str, asked: str = "") -> tuple[str, ...]:
        """The orders that differ for this method and number of arrows."""
        if method == "components" or len(self.arms) == 1:
            return ("12",)
        if asked:
            return (asked,)
        return ORDERS if len(self.arms) == 3 else ("12",)

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order."""
        reference, resultant = self.picture.reference, self.problem["resultant"]
        if method == "components":
            return components(self.arms, self.picture, resultant)
        if method == "tip-to-tail":
            return tip_to_tail(self.arms, order, reference, resultant)
        return parallelogram(self.arms, order, reference, self.problem["parallels"], resultant)

    def ways(self) -> tuple[str, ...]:
        """The ways round that the paper may lie."""
        chosen = self.problem["orientation"]
        return (chosen,) if chosen else ORIENTATIONS

    def plans(self, method: str, order: str = "", scale: float | None = None) -> tuple[Plan, ...]:
        """Each order of a method on the problem's paper, the best first."""
        key = method, order, scale
        if key not in self._plans:
            candidates = [self.build(method, one) for one in self.orders(method, order)]
            self._plans[key] = choose(
                candidates, self.picture, self.problem["paper"], self.ways(), scale, self.problem["steps"]
            )
        return self._plans[key]

    def spread(self, plan: Plan) -> hand.Spread:
        """The scatter of a hand's drawings of a plan, to first order: found once, quick enough for every edit."""
        key = plan.construction.method, plan.construction.order, plan.factor
        if key not in self._spreads:
            who = HANDS[self.problem["hand"]]
            self._spreads[key] = hand.spread(plan.construction, plan.factor, who, first_order=True)
        return self._spreads[key]

    def shown(self) -> Plan:
        """The plan of the drawing on the sheet.

        A scale of the user's own that does not fit is noted as a fault, with what would fit, and
        the drawing stands at the scale that does: a link for a class must bear other values.
        """
        if self.plan is None:
            problem = self.problem
            self.plan = self.plans(self.method, problem["order"], problem.scale)[0]
            if problem.scale is not None and not self.plan.fit.fits:
                self.misfit = (self.too_large(self.plan),)
                self.plan = self.plans(self.method, problem["order"])[0]
        return self.plan

    def too_large(self, plan: Plan) -> Fault:
        """The fault of a scale that does not fit: by how much, and what would fit."""
        writing, paper = self.telling.writing, self.problem["paper"]
        over = [
            f"{math.ceil(side)}{NO_BREAK_SPACE}mm" if side > 1e-3 else ""
            for side in plan.fit.over
        ]
        fitting = self.plans(self.method, self.problem["order"])[0]
        papers = papers_that_take(plan.construction, self.picture, plan.scale, paper, self.ways())
        given, fits = writing.short(plan.scale), writing.short(fitting.scale)
        message = words.does_not_fit(given, paper, words.too_wide(*over), fits, papers[0] if papers else "")
        offers = [Offer(words.use_scale(fits), (("scale", quantity.exact(fitting.scale)),))]
        if papers:
            offers.append(Offer(words.use_paper(papers[0]), (("paper", papers[0]),)))
        return Fault("scale", self.problem.typed["scale"], message, offers=tuple(offers))

    def order_words(self, method: str, order: str) -> str:
        """An order in words, by the lines' names."""
        if method == "tip-to-tail":
            present = {arm.number for arm in self.arms}
            return ", ".join(self.lines[n - 1] for n in SEQUENCES[order] if n in present)
        return words.pair_first(self.lines[int(order[0]) - 1], self.lines[int(order[1]) - 1])

    def method_words(self, plan: Plan) -> str:
        """The method as the title block says it."""
        names = dict(METHODS)
        method = plan.construction.method
        if method == "components" or len(self.arms) < 3:
            return names[method]
        return f"{names[method]}, {self.order_words(method, plan.construction.order)}"

    def link(self, plan: Plan) -> tuple[tuple[str, str], ...]:
        """The link that gives this sheet again: what was chosen to fit is named, private fields are not.

        Version 1 fixes every default for ever, so a key at its default is left out.
        """
        resolved = dict(self.problem.typed)
        resolved["method"] = plan.construction.method
        resolved["order"] = plan.construction.order
        resolved["orientation"] = plan.layout.orientation
        resolved["scale"] = quantity.exact(plan.scale) if self.misfit or not resolved["scale"] else resolved["scale"]
        return links.form_pairs(resolved, FIELDS, CHOSEN_TO_FIT)

    # What stands beside the headline.

    def length(self, plan: Plan) -> str:
        """The neutral's length on the sheet."""
        millimetres = round(self.solution.current * plan.factor, 1)
        return quantity.plain(millimetres, self.telling.mark) + f"{NO_BREAK_SPACE}mm"

    def direction(self, plan: Plan) -> Phrase:
        """Where the neutral current points."""
        teller = Teller(plan, self.telling)
        angle = self.solution.angle or 0.0
        return telling.direction_phrase(teller, wrap(angle - self.picture.reference))

    def given(self) -> str:
        """The typed values in words, with lags where there are any."""
        told = []
        for size, lag in zip(self.problem.load.currents, self.problem.lags, strict=True):
            amount = self.telling.writing.short(size)
            told.append(amount if lag.degrees == 0 else f"{amount} {lag.echo(self.telling.mark)['degrees']}")
        return ", ".join(told)

    def amount(self, value: float) -> str:
        """A result as it is written everywhere."""
        return self.telling.writing.amount(value)
