"""The neutral current of a star-connected load: from form to answer, stage after stage."""

from collections.abc import Mapping

from pycore import quantity
from pycore.calculators.neutral_current import TOPIC, words
from pycore.calculators.neutral_current.accuracy import NeutralAccuracy
from pycore.calculators.neutral_current.case import SLUG, NeutralCase
from pycore.calculators.neutral_current.fields import FIELDS, options_of
from pycore.calculators.neutral_current.problem import read_problem
from pycore.calculators.neutral_current.verdict import NeutralVerdict, just_outside
from pycore.calculators.neutral_current.workings import formula_blocks
from pycore.forms.common import labels_of
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.figure import DOT_BELOW
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import ACCURACY
from pycore.sums.answer import Output, Working, WorkingLink
from pycore.sums.page import SumPage, angle_text, outputs_on_paper, small_notices
from pycore.words import boards
from pycore.words import verdict as verdict_words
from pycore.words.phrase import Phrase, listed, say


def _outputs(case: NeutralCase, plan: Plan) -> tuple[Output, ...]:
    solution, writing = case.solution, case.notation.writing
    current = case.amount(solution.current).partition(NO_BREAK_SPACE)[0]
    outputs = [
        Output("neutral-current", solution.current, current, writing.unit, say(words.NEUTRAL)),
        Output(
            "neutral-angle", solution.angle, angle_text(case),
            label=words.angle_label(case.notation.voltage, case.lines[0], mirrored=case.picture.sense < 0),
        ),
        *outputs_on_paper(case, plan, "neutral-length"),
    ]  # fmt: skip
    if case.entered.measured is not None:
        measured = case.entered.measured
        outputs.append(Output("measured", measured, case.reading(), label=say(words.METER_ON_NEUTRAL)))
    return tuple(outputs)


def _remarks(case: NeutralCase) -> tuple[Phrase, ...]:
    solution = case.solution
    phrases: list[Phrase] = []
    if solution.balanced:
        phrases.append(words.BALANCED)
    elif solution.closed:
        phrases.append(words.CLOSED_NOT_BALANCED)
    elif solution.equal_angles:
        largest = case.notation.writing.short(max(case.entered.load.currents))
        phrases.append(words.below_largest(case.amount(solution.current), largest))
    else:
        phrases.append(words.UNEQUAL_POWER_FACTORS)
    return (*phrases, *_meter(case))


def _meter(case: NeutralCase) -> tuple[Phrase, ...]:
    measured = case.entered.measured
    if measured is None:
        return ()
    writing = case.notation.writing
    reading, calculated = case.reading(), case.amount(case.solution.current)
    if case.closed:
        return (words.meter_without_share(reading, writing.short(0.0) if case.solution.closed else calculated),)
    # The same only to the last digit that the meter shows.
    number_text = reading.partition(NO_BREAK_SPACE)[0]
    decimals = quantity.decimals_of(number_text)
    if quantity.fixed(case.solution.current / writing.factor, decimals, writing.mark) == number_text:
        return (words.meter_same(reading),)
    judgement = NeutralVerdict(case, case.sheet_plan())
    comparison = judgement.of_reading()
    if comparison is None:
        return ()
    shown = judgement.printed_reading(comparison)
    return (words.meter(reading, shown.second, shown.apart, shown.share, measured > case.solution.current),)


def _notices(case: NeutralCase, plan: Plan) -> tuple[Phrase, ...]:
    phrases: list[Phrase] = []
    load = case.entered.load.currents
    zero = [case.lines[index] for index, size in enumerate(load) if size == 0]
    if zero:
        names = listed(zero, "and")
        phrases.append(words.zero_line(names) if len(zero) == 1 else words.zero_lines(names))
    if case.method != case.problem["method"]:
        phrases.append(words.one_line(case.lines[case.arms[0].number - 1]))
    phrases += small_notices(case, plan)
    phrases += NeutralAccuracy(case).notices(plan)
    if not case.closed and case.solution.current * plan.factor < DOT_BELOW:
        phrases.append(words.small_neutral(case.length(plan)))
    return tuple(phrases)


def _echo(case: NeutralCase) -> dict[str, Mapping[str, str]]:
    mark = case.notation.mark
    echoes: dict[str, Mapping[str, str]] = {
        f"a{index + 1}": lag.echo(mark) for index, lag in enumerate(case.entered.lags)
    }
    return echoes | {"measured": {"said": _readings_text(case)}, "drawn": {"said": _drawn_text(case)}}


def _readings_text(case: NeutralCase) -> str:
    """How repeated readings were understood; nothing of a single one."""
    readings = case.entered.readings
    if len(readings) < 2:
        return ""
    return verdict_words.mean_of(str(len(readings)), case.reading())


def _drawn_text(case: NeutralCase) -> str:
    """How what was read off a drawing was understood: as a length of this sheet, or as a current."""
    drawn, plan = case.entered.drawn, case.sheet_plan()
    if drawn is None:
        return ""
    value, mark = drawn.value(plan.factor), case.notation.mark
    length = quantity.plain(round(value * plan.factor, 1), mark) + f"{NO_BREAK_SPACE}mm"
    amount = case.notation.writing.fixed(value, 1) + NO_BREAK_SPACE + case.notation.writing.unit
    if drawn.millimetres is None:
        return verdict_words.drawn_amount(amount, length)
    return verdict_words.drawn_length(length, case.notation.scale(plan.scale), amount)


class NeutralCurrent(SumPage[NeutralCase]):
    """The page ``/neutral-current/``."""

    slug = SLUG
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.THREE_PHASE
    job = words.JOB

    def case(self, form: Mapping[str, str]) -> NeutralCase:
        """The form as a case. Raises InputError."""
        return NeutralCase(read_problem(form))

    def outputs(self, case: NeutralCase, plan: Plan) -> tuple[Output, ...]:
        """Current, angle, scale, length, tolerance, and the reading if there is one."""
        return _outputs(case, plan)

    def remarks(self, case: NeutralCase) -> tuple[Phrase, ...]:
        """Sanity check, balance, meter."""
        return _remarks(case)

    def see(self, case: NeutralCase, plan: Plan) -> WorkingLink | None:
        """Whether a reading agrees with the calculation, with a link to the comparison or the possible reasons."""
        judgement = NeutralVerdict(case, plan)
        comparison = judgement.of_reading()
        if comparison is None:
            return None
        shown = judgement.printed_reading(comparison)
        say_it, button = verdict_words.reading_disagrees, verdict_words.SEE_WHY
        if comparison.agree:
            say_it, button = verdict_words.reading_agrees, verdict_words.SEE_COMPARISON
        elif just_outside(comparison):
            say_it = verdict_words.reading_just_outside
        apart = verdict_words.reading_apart(shown.first, shown.second, shown.apart)
        return WorkingLink((*apart, " ", *say_it(shown.normal)), ACCURACY, button)

    def notices(self, case: NeutralCase, plan: Plan) -> tuple[Phrase, ...]:
        """Lines without current, what is too small to draw."""
        return _notices(case, plan)

    def calculated(self, case: NeutralCase, plan: Plan) -> tuple[Working, ...]:
        """The closed formula, and how near hand and meter can come."""
        formula = Working(
            "formula", say(words.BY_FORMULA), formula_blocks(case.symbol, case.solution, case.notation.writing)
        )
        return formula, NeutralAccuracy(case).working(plan)

    def echo(self, case: NeutralCase) -> dict[str, Mapping[str, str]]:
        """How angles of lag, repeated readings and what was drawn were understood."""
        return _echo(case)

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Labels of the fields that name a line, as the form's line names have it."""
        return labels_of(form)

    def options(self, form: Mapping[str, str]) -> dict[str, dict[str, str]]:
        """Options that name lines, by field and value, as the form's line names have it."""
        return options_of(form)


PAGE = NeutralCurrent()
