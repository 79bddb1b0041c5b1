"""The neutral current of a star-connected load: from form to answer, stage after stage."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pycore import quantity
from pycore.calculators import conventions
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
from pycore.calculators.neutral_accuracy import NeutralAccuracy
from pycore.calculators.neutral_case import NeutralCase
from pycore.calculators.neutral_fields import BY_NAME, FIELDS, labels_of, options_of
from pycore.calculators.neutral_problem import NeutralProblem, read_problem
from pycore.calculators.neutral_sheet import sheet_of, view_of
from pycore.calculators.neutral_working import ComponentsWorking, formula_blocks, share_text
from pycore.calculators.telling import Teller
from pycore.calculators.written import length_text
from pycore.drawing import Page
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.plan import Plan
from pycore.words import Phrase, inputs, say
from pycore.words import accuracy as accuracy_words
from pycore.words import neutral as words

if TYPE_CHECKING:
    from pycore.calculators.lesson import Shown
    from pycore.practice.codes import Code
    from pycore.practice.task import Task

ALL_PARTS = ("answer", "sheet", "view", "workings")
KINDS = ("problem", "construction", "overlay")
NO_OPENING = Opening()
_NO_PAGE = Page(1.0, 1.0, ())


def _outputs(case: NeutralCase, plan: Plan) -> tuple[Output, ...]:
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
    if not solution.closed:
        tolerance = NeutralAccuracy(case).tolerance(plan)
        made.append(
            Output(
                "tolerance", tolerance, writing.fixed(tolerance), writing.unit, accuracy_words.tolerance_label()
            )
        )
    if case.problem.measured is not None:
        measured = case.problem.measured
        made.append(Output("measured", measured, writing.short(measured), label=say("meter on the neutral")))
    return tuple(made)


def _summary(case: NeutralCase, plan: Plan) -> tuple[Phrase, ...]:
    if case.solution.closed:
        return (words.no_arrow(),)
    tolerance = NeutralAccuracy(case).tolerance(plan)
    by_hand = accuracy_words.by_hand(case.telling.writing.fixed(tolerance) + NO_BREAK_SPACE + case.telling.writing.unit)
    return (case.direction(plan), words.on_sheet(case.length(plan)), by_hand)


def _remarks(case: NeutralCase) -> tuple[Phrase, ...]:
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


def _meter(case: NeutralCase) -> tuple[Phrase, ...]:
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
    difference = writing.fixed(size) + NO_BREAK_SPACE + writing.unit
    return (words.meter(reading, calculated, difference, share, gap > 0),)


def _notices(case: NeutralCase, plan: Plan) -> tuple[Phrase, ...]:
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
    made += NeutralAccuracy(case).notices(plan)
    if 0 < case.solution.current * plan.factor < DOT_BELOW:
        made.append(words.small_neutral(case.length(plan)))
    return tuple(made)


def _alternatives(case: NeutralCase, shown: Plan) -> tuple[Alternative, ...]:
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


def _workings(case: NeutralCase, shown: Plan) -> tuple[Working, ...]:
    """Every complete path to the answer, the one on the sheet first."""
    made: list[Working] = []
    on_paper = case.problem["sheet"] == "construction"
    for method in ("parallelogram", "tip-to-tail", "components"):
        if case.possible(method) != method:
            continue
        plans = sorted(case.plans(method), key=lambda plan: plan.construction.order)
        for plan in plans:
            on_sheet = (
                plan.construction.method == shown.construction.method
                and plan.construction.order == shown.construction.order
            )
            made.append(_working(case, shown if on_sheet else plan, on_sheet and on_paper))
    made.append(Working("formula", say("By the closed formula"), formula_blocks(case.solution, case.telling.writing)))
    made.append(NeutralAccuracy(case).working(shown))
    return tuple(sorted(made, key=lambda working: not working.shown))


def _working(case: NeutralCase, plan: Plan, on_sheet: bool) -> Working:
    method, order = plan.construction.method, plan.construction.order
    teller = Teller(plan, case.telling)
    blocks: tuple[Block, ...] = teller.tell()
    if method == "components":
        blocks = (*ComponentsWorking(case.solution, case.picture, teller).blocks(), *blocks)
    blocks = (Paragraph(words.predict_first()), *blocks)
    key = method if method == "components" else f"{method}-{order}"
    draws = (("method", method), ("order", order if case.orders(method) != ("12",) else ""), ("scale", ""))
    title = words.by_method(method, case.order_words(method, order), len(case.arms))
    return Working(key, title, blocks, draws, on_sheet)


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
    topic: int = 0
    """The page's number in the codes of practice sheets, for ever."""

    def answer(
        self, form: Mapping[str, str], parts: tuple[str, ...] = ALL_PARTS, opening: Opening = NO_OPENING
    ) -> Answer:
        """The answer to a form; parts not asked for are left empty. Raises InputError."""
        case = NeutralCase(read_problem(form))
        plan = case.shown()
        sheet = sheet_of(case, plan, opening) if "sheet" in parts else _NO_PAGE
        views = {"phone": view_of(case, plan)} if "view" in parts else {}
        chosen = case.problem.scale is None or bool(case.misfit)
        return Answer(
            slug=self.slug,
            title=self.title,
            outputs=_outputs(case, plan),
            given=(case.given(),),
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
            faults=(*case.problem.faults, *case.misfit),
            scenario=words.SCENARIO if case.problem.is_example else "",
            kind=case.problem["sheet"],
        )

    def pages(
        self, form: Mapping[str, str], opening: Opening = NO_OPENING, kinds: tuple[str, ...] = ()
    ) -> tuple[Page, ...]:
        """The sheet that the form asks for, or sheets of these kinds. Raises InputError."""
        made: list[Page] = []
        for kind in kinds or (form.get("sheet", BY_NAME["sheet"].default),):
            case = NeutralCase(read_problem({**form, "sheet": kind}))
            made.append(sheet_of(case, case.shown(), opening))
        return tuple(made)

    def sheet_page(self, form: Mapping[str, str]) -> Page:
        """The sheet that the form asks for. Raises InputError."""
        return self.pages(form)[0]

    def lesson(self, form: Mapping[str, str], view: str, step: int) -> "Shown":
        """One step of a classroom view; KeyError for no view of ours. Raises InputError."""
        # Only the classroom view needs it; the first answer need not wait for its import.
        from pycore.calculators.neutral_lesson import NeutralLesson

        return NeutralLesson(form).show(view, step)

    def task(self, form: Mapping[str, str]) -> "Task":
        """The form as a task that practice sets and marks. Raises InputError."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.neutral_practice import task

        return task(form)

    def practice_form(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's problem, with a class's own choices. Raises NoProblem."""
        from pycore.calculators.neutral_practice import form_of

        return form_of(code, choices)

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
