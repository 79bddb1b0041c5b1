"""A page that adds phasors: from form to answer.

A page's own module reads its form into a case (``SumCase``) and supplies what is special: outputs, remarks, notices and
further workings. Everything else is here.
"""

import importlib
from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, Any, Generic, Protocol, TypeVar

from pycore import quantity
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.names import SUM_KEY
from pycore.drawing import Page
from pycore.errors import Fault
from pycore.forms import conventions
from pycore.forms.fields import Field
from pycore.forms.opening import ReopenInfo
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.kinds import PROBLEM
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.alike import same_arms
from pycore.sums.answer import PROBLEM_SHEET, Alternative, Answer, Block, Output, Paragraph, Working, WorkingLink
from pycore.sums.captions import caption_of, left_blank, scale_echo, stands_upright
from pycore.sums.case import SumCase
from pycore.sums.request import SheetRequest
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import composed_of, figure_of, moves_of, sheet_of, view_of
from pycore.sums.short_link import form_of_code
from pycore.sums.wording import length_text
from pycore.sums.workings import ComponentsWorking
from pycore.words import accuracy as accuracy_words
from pycore.words import answers as words
from pycore.words import boards
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, listed_phrases, say

if TYPE_CHECKING:
    from pycore.practice.codes import CheckCode, Code
    from pycore.practice.task import AnswerRequest, Mistake, StepReference, Task
    from pycore.sums.lesson_frame import LessonFrame
    from pycore.sums.placed import PlacedFigure

ALL_PARTS = ("answer", "sheet", "view", "workings", "check")
FRONT = "front"
"""The part that only the front page has: the drawing for a phone, with its scale."""
NO_OPENING = ReopenInfo()
_NO_PAGE = Page(1.0, 1.0, ())
Case = TypeVar("Case", bound=SumCase)


def outputs_on_paper(case: SumCase, plan: Plan, name: str) -> tuple[Output, ...]:
    """Return the results of every drawn sum: scale, length on the sheet, tolerance of a hand."""
    writing = case.notation.writing
    length = case.size * plan.factor
    outputs = [
        Output("scale", plan.scale, case.notation.scale(plan.scale), label=say(sum_words.SCALE)),
        Output(name, length, length_text(length, writing.mark), label=say(sum_words.LENGTH)),
    ]
    if case.companions:
        label = sum_words.second_label(case.companions.words.plural)
        outputs.append(Output("second-scale", plan.second, case.notation.second(plan.second), label=label))
    if not case.closed:
        tolerance = SumAccuracy(case).tolerance(plan)
        label = accuracy_words.tolerance_label(case.notation.tags[SUM_KEY])
        outputs.append(Output("tolerance", tolerance, writing.fixed(tolerance), writing.unit, label))
    return tuple(outputs)


def angle_text(case: SumCase) -> str:
    """Return the angle of the sum as text; the word for none where there is no arrow."""
    if case.closed or case.angle is None:
        return sum_words.NONE
    return quantity.fixed(case.angle, 1, case.notation.mark) + "°"


def summary(case: SumCase, plan: Plan) -> tuple[Phrase, ...]:
    """Return the short lines beside the headline: direction, length on the sheet, tolerance by hand."""
    if case.closed:
        return (words.NO_ARROW,) if case.total == 0 else (case.zero_reason(),)
    writing = case.notation.writing
    half_width = writing.fixed(SumAccuracy(case).tolerance(plan)) + NO_BREAK_SPACE + writing.unit
    tag = case.notation.tags[SUM_KEY]
    length = words.on_paper(tag, case.length(plan), own=case.on_own_paper)
    return (case.direction(plan), length, accuracy_words.by_hand(tag, half_width))


def small_notices(case: SumCase, plan: Plan) -> list[Phrase]:
    """Return a notice for phasors that are too short for an arrow at this scale."""
    small = [case.notation.tags[arm.key] for arm in case.arms if arm.size * plan.factor < DOT_BELOW]
    if not small:
        return []
    names = listed_phrases(small)
    return [words.small_line(names) if len(small) == 1 else words.small_lines(names)]


def alternatives(case: SumCase, sheet_plan: Plan) -> tuple[Alternative, ...]:
    """Return the other orders on this paper, each with its best scale."""
    others: list[Alternative] = []
    own_scale = () if case.on_own_paper else (("scale", ""),)
    for plan in case.plans_to_tell(case.method):
        order = plan.construction.order
        if order == sheet_plan.construction.order or len(case.arms) < 3 or not plan.fit.fits:
            continue
        method = case.order_words(case.method, order)
        phrase = sum_words.alternative(method, case.notation.scale(plan.scale), case.sum_word, case.length(plan))
        others.append(Alternative(phrase, (("order", order), *own_scale)))
    return tuple(others)


def _working(case: SumCase, plan: Plan, on_sheet: bool) -> Working:
    method, order = plan.construction.method, plan.construction.order
    sentences = StepSentences(plan, case.notation)
    blocks: tuple[Block, ...] = sentences.all_moves()
    if method == COMPONENTS:
        blocks = (*ComponentsWorking(case, sentences).blocks(), *blocks)
    needed = case.before_steps(plan.construction)
    before = (words.PREDICT_FIRST, needed) if needed else (words.PREDICT_FIRST,)
    blocks = (*(Paragraph(phrase) for phrase in before), *blocks)
    key = method if method == COMPONENTS else f"{method}-{order}"
    title = case.method_title(method, order)
    return Working(key, title, blocks, on_sheet)


def constructed(case: SumCase, sheet_plan: Plan) -> list[Working]:
    """Return every construction of the problem, move by move; that of the sheet, drawn or blank, is on it."""
    workings: list[Working] = []
    for method in case.methods:
        if case.possible(method) != method:
            continue
        orders = {plan.construction.order: plan for plan in case.plans_to_tell(method)}
        for order in sorted(orders, key=lambda order: (order != case.taught_order, order)):
            plan = orders[order]
            on_sheet = (
                plan.construction.method == sheet_plan.construction.method
                and plan.construction.order == sheet_plan.construction.order
            )
            workings.append(_working(case, sheet_plan if on_sheet else plan, on_sheet))
    return workings


Practised = TypeVar("Practised", bound=SumCase, contravariant=True)


class TopicPractice(Protocol[Practised]):
    """The practice module of a calculator, as its page uses it."""

    def form_of(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """Return the form with a code's problem and a class's own choices. Raises NoProblemError."""

    def task_of(self, case: Practised) -> "Task":
        """Return a solved case as a task: question, right answer, and results of mistakes."""


class SumPage(Generic[Case]):
    """A page that adds phasors. Its own module sets its name and supplies what is special."""

    slug: str = ""
    room: str = ""
    """The package of the page's module, which holds its practice module too."""
    title: str = ""
    description: str = ""
    scenario: str = ""
    fields: tuple[Field, ...] = ()
    cautions: tuple[str, ...] = ()
    warning: str = ""
    """A caution that stands before anything else; "" for none."""
    topic: int = -1
    """The page's number in the codes of practice sheets, for ever."""
    board: str = boards.ANY
    """The group in which it stands on the front page."""
    job: str = ""
    """What one does with it, as the front page says; "": its title."""

    def case(self, form: Mapping[str, str]) -> Case:
        """Return the form as a case. Raises InputError."""
        raise NotImplementedError

    def practice(self) -> "TopicPractice[Case]":
        """The practice module of the page's room: its problems from codes, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        module: Any = importlib.import_module(f"{self.room}.practice")
        practice: TopicPractice[Case] = module
        return practice

    def outputs(self, case: Case, plan: Plan) -> tuple[Output, ...]:
        """Return the results, the headline first."""
        raise NotImplementedError

    def summary(self, case: Case, plan: Plan) -> tuple[Phrase, ...]:
        """Return the short lines beside the headline."""
        return summary(case, plan)

    def remarks(self, case: Case) -> tuple[Phrase, ...]:
        """Return the sentences below the headline."""
        return ()

    def see(self, case: Case, plan: Plan) -> WorkingLink | None:
        """A sentence that must not be missed, with a link to the working that says more."""
        return None

    def notices(self, case: Case, plan: Plan) -> tuple[Phrase, ...]:
        """Return what the page had to change or could not do."""
        return (*small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: Case, plan: Plan) -> tuple[Working, ...]:
        """Return further workings, after the constructions."""
        return (SumAccuracy(case).working(plan),)

    def echo(self, case: Case) -> dict[str, Mapping[str, str]]:
        """Return how inputs were understood, by field."""
        return {}

    def faults(self, case: Case) -> tuple[Fault, ...]:
        """Return inputs that could not be used although there is an answer: optional ones, and scales that do not fit.
        """
        return (*case.problem.faults, *case.chosen.misfit)

    # What all pages do alike.

    def code_for(self, case: Case) -> str:
        """Return the code in a case's form, as printed, if the case has the values of that code; else ""."""
        typed = case.problem.typed.get("code", "")
        if not typed.strip():
            return ""
        # Only a sheet with a code needs it; the first answer need not wait for its import.
        from pycore.practice import codes

        try:
            code = codes.read_any(typed)
            if not isinstance(code, codes.Code):
                return str(code) if code == self.check_code(case) else ""
            meant = self.case(self.practice_form(code)) if code.topic == self.topic else None
        except ValueError:
            return ""
        return str(code) if meant is not None and same_arms(case.arms, meant.arms) else ""

    def check_code(self, case: Case) -> "CheckCode":
        """Return the code that checks the values of a case."""
        from pycore.sums.check_code import check_code

        return check_code(self.topic, case)

    def answer(
        self, form: Mapping[str, str], parts: tuple[str, ...] = ALL_PARTS, opening: ReopenInfo = NO_OPENING,
        kind: str = "",
    ) -> Answer:
        """Return the answer to a form, with a kind of sheet ("": the one in the form).

        Parts that are not requested are left empty. Raises InputError.
        """
        case = self.case(form)
        plan, problem, code = case.sheet_plan(), case.problem, self.code_for(case)
        request = SheetRequest(kind or problem["sheet"], opening, code, by_code=form_of_code(self, opening, code))
        workings = (
            (*constructed(case, plan), *self.calculated(case, plan)) if "workings" in parts else ()
        )
        return Answer(
            slug=self.slug,
            title=self.title,
            outputs=self.outputs(case, plan),
            values_text=(case.values_text(),),
            summary=self.summary(case, plan),
            remarks=self.remarks(case),
            see=self.see(case, plan),
            notices=(*self.notices(case, plan), *stands_upright(case, plan)),
            caption=caption_of(case, plan),
            alternatives=alternatives(case, plan),
            sheet=sheet_of(case, plan, request) if "sheet" in parts or PROBLEM_SHEET in parts else _NO_PAGE,
            further_pages=self.further_pages(case, plan, request) if "sheet" in parts else (),
            views={"phone": view_of(case, plan)} if "view" in parts or FRONT in parts else {},
            workings=tuple(sorted(workings, key=lambda working: not working.on_sheet)),
            echo={**self.echo(case), "scale": scale_echo(case, plan)},
            link=case.link(plan, request.kind, request.code),
            page_key=plan.layout.page_key,
            faults=(*self.faults(case), *left_blank(case, opening.letters)),
            scenario=self.scenario if problem.is_example else "",
            kind=request.kind,
            code=request.code,
            answer_request=self._asked(case, plan) if "check" in parts else None,
            inks=self.inks(form),
            labels=self.labels(form),
            options=self.options(form),
        )

    def further_pages(self, case: Case, plan: Plan, request: SheetRequest) -> tuple[Page, ...]:
        """Return the pages that follow a sheet: the moves, for easy reading or on own paper."""
        return moves_of(case, plan, request)

    def pages(
        self, form: Mapping[str, str], opening: ReopenInfo = NO_OPENING, kinds: tuple[str, ...] = ()
    ) -> tuple[Page, ...]:
        """Return the sheet that the form asks for, or sheets of these kinds. Raises InputError."""
        case = self.case(form)
        return tuple(page for pages in self._sheets(case, opening, kinds or (case.problem["sheet"],)) for page in pages)

    def _sheets(self, case: Case, opening: ReopenInfo, kinds: tuple[str, ...]) -> Iterator[tuple[Page, ...]]:
        """Yield sheets of these kinds, each with its further pages; the figure is in the same place on all."""
        plan, code, placed = case.sheet_plan(), self.code_for(case), None
        for kind in kinds:
            request = SheetRequest(kind, opening, code, by_code=form_of_code(self, opening, code))
            composed = composed_of(case, plan, request, placed)
            placed = composed.settled
            yield (composed.page, *self.further_pages(case, plan, request))

    def issued(
        self, form: Mapping[str, str], opening: ReopenInfo, kinds: tuple[str, ...]
    ) -> "Iterator[Page | tuple[Page, ...] | Task]":
        """Yield a learner's sheets of a class set, then the problem as a task.

        Each piece is yielded alone, so that other work can be done in between. Raises InputError.
        """
        case = self.case(form)
        yield from self.issued_of(case, opening, kinds)
        if kinds:
            yield self.task_of_case(case)

    def issued_of(self, case: Case, opening: ReopenInfo, kinds: tuple[str, ...]) -> "Iterator[Page | tuple[Page, ...]]":
        """Yield the sheets of these kinds, a problem sheet with the pages that follow it."""
        for kind, (page, *further) in zip(kinds, self._sheets(case, opening, kinds), strict=True):
            yield (page, *further) if further and kind == PROBLEM else page

    def sheet_page(self, form: Mapping[str, str]) -> Page:
        """Return the sheet that the form asks for. Raises InputError."""
        return self.pages(form)[0]

    def figure(self, form: Mapping[str, str]) -> Page:
        """Return the figure of a form's sheet at its own scale, without letters. Raises InputError."""
        case = self.case(form)
        return figure_of(case, case.sheet_plan())

    def placed(self, form: Mapping[str, str]) -> "PlacedFigure":
        """Return where the figure of a form's sheet stands on its page. Raises InputError."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.sums.placed import placed_in

        return placed_in(self.case(form))

    def lesson(self, form: Mapping[str, str], view: str, step: float) -> "LessonFrame":
        """Return one step of a lesson view. Raises InputError, and KeyError for an unknown view."""
        # Only the lesson view needs it; the first answer need not wait for its import.
        from pycore.sums.classroom import lesson_of

        return lesson_of(self, form).show(view, step)

    def lesson_number(self, form: Mapping[str, str], step: int) -> int:
        """Return the number of the first frame of a step of the drawing, as the page numbers it. Raises InputError."""
        from pycore.sums.classroom import lesson_of

        return lesson_of(self, form).number_of_step(step)

    def task(self, form: Mapping[str, str]) -> "Task":
        """Return the form as a task for practice and marking. Raises InputError."""
        from pycore.sums.task import task_of_form  # Only practice and marking need it.

        return task_of_form(self, form)

    def task_of_case(self, case: Case) -> "Task":
        """Return a solved case as a task."""
        return self.practice().task_of(case)

    def _asked(self, case: Case, plan: Plan) -> "AnswerRequest":
        # Only the answer checker needs it; the first answer need not wait for its import.
        from pycore.sums.asked import asked_of

        return asked_of(case, plan, self.task_of_case(case))

    def places(self, form: Mapping[str, str]) -> "Callable[[Mistake], StepReference | None]":
        """Return a function that finds the step or working to which a mistake belongs. Raises InputError."""
        # Only the answer checker needs it; the first answer need not wait for its import.
        from pycore.sums.where import places_in

        return places_in(self.case(form))

    def practice_form(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """Return the form with a code's problem and a class's own choices. Raises NoProblemError."""
        return self.practice().form_of(code, choices)

    def code_of(self, form: Mapping[str, str]) -> str:
        """Return the code in a form, as printed, if the form has its values, else "". Raises InputError."""
        return self.code_for(self.case(form))

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Return labels of fields that depend on the form's own choices."""
        return {}

    def value_labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Return labels of the values of a problem where they are listed: what is asked for may depend on its unit."""
        return self.labels(form)

    def options(self, form: Mapping[str, str]) -> dict[str, dict[str, str]]:
        """Return options that depend on the form's own choices, by field and value."""
        return {}

    def inks(self, form: Mapping[str, str]) -> dict[str, str]:
        """Return the ink of the line samples beside the labels, by phasor key."""
        return dict(conventions.form_inks(form, self.fields))
