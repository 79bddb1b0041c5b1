"""The neutral current of a star-connected load: from form to answer, stage after stage."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import quantity
from pycore.calculators import conventions, links, telling
from pycore.calculators.interface import (
    Alternative,
    Answer,
    Block,
    Field,
    Opening,
    Output,
    Paragraph,
    Working,
)
from pycore.calculators.neutral_fields import BY_NAME, FIELDS, labels_of, options_of
from pycore.calculators.neutral_problem import NeutralProblem, read_problem
from pycore.calculators.neutral_sheet import sheet_of, view_of
from pycore.calculators.neutral_working import ComponentsWorking, formula_blocks, share_text
from pycore.calculators.telling import Teller
from pycore.calculators.written import Telling, length_text
from pycore.circuits.star import StarSolution, solve
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, Picture
from pycore.constructions.parallelogram import parallelogram
from pycore.constructions.tip_to_tail import SEQUENCES, tip_to_tail
from pycore.drawing import Page
from pycore.errors import Fault, InputError, Offer
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.media import ORIENTATIONS
from pycore.sheet.plan import Plan, choose, papers_that_take
from pycore.words import Phrase, inputs, say
from pycore.words import neutral as words

ORDERS = ("12", "13", "23")
CHOSEN_TO_FIT = ("method", "order", "paper", "orientation", "scale")
"""What every printed link names, whether the user chose it or the sheet did."""
ALL_PARTS = ("answer", "sheet", "view", "workings")
KINDS = ("problem", "construction", "overlay")
NO_OPENING = Opening()
_NO_PAGE = Page(1.0, 1.0, ())


class _Case:
    """One problem with its solution and everything that more than one part of the answer needs."""

    def __init__(self, problem: NeutralProblem) -> None:
        self.problem = problem
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
        candidates = [self.build(method, one) for one in self.orders(method, order)]
        return choose(
            candidates, self.picture, self.problem["paper"], self.ways(), scale, self.problem["steps"]
        )

    def shown(self) -> Plan:
        """The plan of the drawing on the sheet; raises InputError when the user's scale does not fit."""
        problem = self.problem
        best = self.plans(self.method, problem["order"], problem.scale)[0]
        if problem.scale is not None and not best.fit.fits:
            raise InputError(self.too_large(best))
        return best

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
        names = {"parallelogram": "Parallelogram", "tip-to-tail": "Tip to tail", "components": "Components"}
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
        resolved["scale"] = resolved["scale"] or quantity.exact(plan.scale)
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

    def amount(self, value: float) -> str:
        """A result as it is written everywhere."""
        return self.telling.writing.amount(value)


def _outputs(case: _Case, plan: Plan) -> tuple[Output, ...]:
    solution, writing = case.solution, case.telling.writing
    angle_text = "" if solution.angle is None else quantity.fixed(solution.angle, 1, writing.mark) + "°"
    current = case.amount(solution.current).partition(NO_BREAK_SPACE)[0]
    made = [
        Output("neutral-current", solution.current, current, writing.unit, say("Neutral")),
        Output(
            "neutral-angle", solution.angle, angle_text or "none",
            label=words.angle_label(case.telling.voltage, case.lines[0], mirrored=case.picture.sense < 0),
        ),
        Output("scale", plan.scale, case.telling.scale(plan.scale), label=say("scale")),
        Output(
            "neutral-length", solution.current * plan.factor,
            length_text(solution.current * plan.factor, writing.mark), label=say("length on the sheet"),
        ),
    ]  # fmt: skip
    if case.problem.measured is not None:
        measured = case.problem.measured
        made.append(Output("measured", measured, writing.short(measured), label=say("meter on the neutral")))
    return tuple(made)


def _summary(case: _Case, plan: Plan) -> tuple[Phrase, ...]:
    if case.solution.closed:
        return (words.no_arrow(),)
    return (case.direction(plan), words.on_sheet(case.length(plan)))


def _remarks(case: _Case) -> tuple[Phrase, ...]:
    solution = case.solution
    made: list[Phrase] = []
    if solution.balanced:
        made.append(words.balanced())
    elif solution.closed:
        made.append(words.closed_not_balanced())
    elif solution.equal_angles:
        largest = case.telling.writing.short(max(case.problem.load.currents))
        made.append(words.below_largest(case.amount(solution.current), largest))
    else:
        made.append(words.unequal_power_factors())
    return (*made, *_meter(case))


def _meter(case: _Case) -> tuple[Phrase, ...]:
    measured = case.problem.measured
    if measured is None:
        return ()
    writing = case.telling.writing
    reading, calculated = writing.short(measured), case.amount(case.solution.current)
    if case.solution.closed:
        return (words.meter_zero(reading),)
    # The same only to the last digit that the meter shows.
    shown = quantity.decimals_of(writing.given(measured))
    if quantity.fixed(case.solution.current / writing.factor, shown, writing.mark) == writing.given(measured):
        return (words.meter_same(reading),)
    gap = measured - case.solution.current
    size = -gap if gap < 0 else gap
    share = share_text(size / case.solution.current, case.telling.mark)
    return (words.meter(reading, calculated, case.amount(size), share, gap > 0),)


def _notices(case: _Case, plan: Plan) -> tuple[Phrase, ...]:
    made: list[Phrase] = []
    load = case.problem.load.currents
    zero = [case.lines[index] for index, size in enumerate(load) if size == 0]
    if zero:
        told = " and ".join(zero)
        made.append(words.zero_line(told) if len(zero) == 1 else words.zero_lines(told))
    if case.method != case.problem["method"]:
        made.append(words.one_line(case.lines[case.arms[0].number - 1]))
    labels = labels_of(case.problem.choices)
    for index, lag in enumerate(case.problem.lags):
        if lag.doubtful:
            name = f"a{index + 1}"
            made.append((inputs.doubtful_angle(labels[name], case.problem.typed[name]),))
    made += [words.prints_blank(label) for label in case.problem.unprintable]
    small = [case.lines[arm.number - 1] for arm in case.arms if arm.size * plan.factor < DOT_BELOW]
    if small:
        told = " and ".join(small)
        made.append(words.small_line(told) if len(small) == 1 else words.small_lines(told))
    if 0 < case.solution.current * plan.factor < DOT_BELOW:
        made.append(words.small_neutral(case.length(plan)))
    return tuple(made)


def _alternatives(case: _Case, shown: Plan) -> tuple[Alternative, ...]:
    """The other orders on this paper, each with its own best scale."""
    made: list[Alternative] = []
    for plan in case.plans(case.method):
        order = plan.construction.order
        if order == shown.construction.order or len(case.arms) < 3:
            continue
        what = case.order_words(case.method, order)
        told = words.alternative(what, case.telling.scale(plan.scale), case.length(plan))
        made.append(Alternative(told, (("order", order), ("scale", ""))))
    return tuple(made)


def _title(method: str, case: _Case, order: str) -> Phrase:
    if method == "components":
        return say("By components")
    if method == "tip-to-tail":
        return say("Tip to tail: {order}", order=case.order_words(method, order))
    if len(case.arms) < 3:
        return say("By parallelogram")
    return say("By parallelogram: {order}", order=case.order_words(method, order))


def _workings(case: _Case, shown: Plan) -> tuple[Working, ...]:
    """Every complete path to the answer, the one on the sheet first."""
    made: list[Working] = []
    for method in ("parallelogram", "tip-to-tail", "components"):
        if case.possible(method) != method:
            continue
        plans = sorted(case.plans(method), key=lambda plan: plan.construction.order)
        for plan in plans:
            on_sheet = (
                plan.construction.method == shown.construction.method
                and plan.construction.order == shown.construction.order
            )
            made.append(_working(case, shown if on_sheet else plan, on_sheet))
    made.append(Working("formula", say("By the closed formula"), formula_blocks(case.solution, case.telling.writing)))
    return tuple(sorted(made, key=lambda working: not working.shown))


def _working(case: _Case, plan: Plan, on_sheet: bool) -> Working:
    method, order = plan.construction.method, plan.construction.order
    teller = Teller(plan, case.telling)
    blocks: tuple[Block, ...] = teller.tell()
    if method == "components":
        blocks = (*ComponentsWorking(case.solution, case.picture, teller).blocks(), *blocks)
    blocks = (Paragraph(words.predict_first()), *blocks)
    key = method if method == "components" else f"{method}-{order}"
    draws = (("method", method), ("order", order if case.orders(method) != ("12",) else ""), ("scale", ""))
    return Working(key, _title(method, case, order), blocks, draws, on_sheet)


def _echo(problem: NeutralProblem) -> dict[str, Mapping[str, str]]:
    mark = problem.writing.mark
    return {f"a{index + 1}": lag.echo(mark) for index, lag in enumerate(problem.lags)}


@dataclass(frozen=True, slots=True)
class NeutralCurrent:
    """The page ``/neutral-current/``."""

    slug: str = "neutral-current"
    title: str = words.TITLE
    description: str = words.DESCRIPTION
    scenario: str = words.SCENARIO
    fields: tuple[Field, ...] = FIELDS
    cautions: tuple[str, ...] = words.CAUTIONS

    def answer(
        self, form: Mapping[str, str], parts: tuple[str, ...] = ALL_PARTS, opening: Opening = NO_OPENING
    ) -> Answer:
        """The answer to a form; parts not asked for are left empty. Raises InputError."""
        case = _Case(read_problem(form))
        plan = case.shown()
        sheet = sheet_of(case, plan, opening) if "sheet" in parts else _NO_PAGE
        views = {"phone": view_of(case, plan)} if "view" in parts else {}
        chosen = case.problem.scale is None
        return Answer(
            slug=self.slug,
            title=self.title,
            outputs=_outputs(case, plan),
            given=(", ".join(case.telling.writing.short(size) for size in case.problem.load.currents),),
            summary=_summary(case, plan),
            remarks=_remarks(case),
            notices=_notices(case, plan),
            caption=words.caption(
                plan.layout.paper, plan.layout.orientation, case.telling.scale(plan.scale), chosen
            ),
            alternatives=_alternatives(case, plan),
            sheet=sheet,
            views=views,
            workings=_workings(case, plan) if "workings" in parts else (),
            echo=_echo(case.problem),
            link=case.link(plan),
            page_key=plan.layout.page_key,
            kind=case.problem["sheet"],
        )

    def pages(
        self, form: Mapping[str, str], opening: Opening = NO_OPENING, kinds: tuple[str, ...] = ()
    ) -> tuple[Page, ...]:
        """The sheet that the form asks for, or sheets of these kinds. Raises InputError."""
        made: list[Page] = []
        for kind in kinds or (form.get("sheet", BY_NAME["sheet"].default),):
            case = _Case(read_problem({**form, "sheet": kind}))
            made.append(sheet_of(case, case.shown(), opening))
        return tuple(made)

    def sheet_page(self, form: Mapping[str, str]) -> Page:
        """The sheet that the form asks for. Raises InputError."""
        return self.pages(form)[0]

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Labels of the fields that name a line, as the form's line names have it."""
        return labels_of(form)

    def options(self, form: Mapping[str, str]) -> dict[str, dict[str, str]]:
        """Options that name lines, by field and value, as the form's line names have it."""
        return options_of(form)

    def inks(self, form: Mapping[str, str]) -> dict[str, str]:
        """Ink of the line samples beside the labels, by phasor key."""
        colours = form.get("colours", BY_NAME["colours"].default)
        known = colours if colours in conventions.COLOURS else BY_NAME["colours"].default
        return dict(conventions.inks(known))


