"""What a problem sheet gives and asks for: the question, the given values, and the results to be found."""

from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.names import DIAGONAL_LENGTH, arm_key
from pycore.sheet.plan import Plan
from pycore.sheet.sheet_text import GivenRow, ResultColumn, Worksheet
from pycore.sums.case import SumCase
from pycore.sums.rows import directions_of, further_of, result_key, sample_of, tag_of
from pycore.words import sheet as words
from pycore.words.moves_list import HEAD_ANGLE
from pycore.words.phrase import Phrase


def worksheet_of(
    case: SumCase, plan: Plan, question: str, *, any_method: bool = False, calculated: bool = True,
    of_paper: bool = False,
) -> Worksheet:
    """Return the worksheet of a problem with its question; ``calculated``: it has room for a calculated answer too;
    ``of_paper``: a question paper marks one result, so there is room for no other."""
    given = (*_companions(case), *_arms(case, plan))
    some = any(words.ROOM not in (row.amount, row.direction) for row in given)
    origin = case.notation.voltage if case.notation.polar else case.notation.reference
    to_find = words.TO_FIND if case.notation.words.alternates else words.SIDE_TO_FIND
    stages = words.EXAM_STAGES if of_paper else words.STAGES
    drawn = words.EXAM_STAGES[:1] if of_paper else words.DRAWN_STAGES
    return Worksheet(
        question=question,
        head=(
            (words.GIVEN if some else to_find,), (case.units_head(),), (words.LENGTH_UNIT,),
            words.directions_from(origin),
        ),
        given=given, result=(words.RESULT,), stages=stages if calculated else drawn,
        results=_asked(case, plan, origin) if of_paper else _results(case, plan, origin, any_method=any_method),
        working=words.WORKING, by_hand=by_hand(plan, any_method=any_method),
    )  # fmt: skip


def by_hand(plan: Plan, *, any_method: bool) -> tuple[str, ...]:
    """Return how to draw so that a photograph can be read, the shortest last; tip to tail has no dashes."""
    return words.by_hand(dashes=any_method or plan.construction.method != TIP_TO_TAIL)


def _companions(case: SumCase) -> tuple[GivenRow, ...]:
    """Phasors of a second quantity, each amount with its unit."""
    beside = case.companions
    if beside is None:
        return ()
    return tuple(
        GivenRow(
            case.notation.tags[arm.key], sample_of(case, arm.key),
            beside.writing.amount(arm.size) if case.typed_companions else words.ROOM, words.ROOM,
        )
        for arm in beside.arms
    )  # fmt: skip


def _arms(case: SumCase, plan: Plan) -> tuple[GivenRow, ...]:
    return tuple(
        GivenRow(
            case.row_tag(arm.key), sample_of(case, arm.key),
            case.typed_amount(arm) if case.typed(arm.key) else words.ROOM,
            direction,
        )
        for arm, direction in zip(case.arms, directions_of(case, plan), strict=True)
    )  # fmt: skip


def _results(case: SumCase, plan: Plan, origin: Phrase, *, any_method: bool) -> tuple[ResultColumn, ...]:
    """The first sum if the method has one, the sum or the arrow that returns, its angle, and what is found besides."""
    unit = case.units_head()
    columns = []
    if DIAGONAL_LENGTH in plan.construction.figure.readings and not any_method:
        columns.append(ResultColumn(case.row_tag(arm_key(plan.construction.order)), unit))
    columns += _drawn_result(case, plan, origin)
    further, results = further_of(case, plan)
    columns += [ResultColumn(tag_of(case, component), unit) for component in further]
    columns += [ResultColumn(tag, "") for tag, _ in results]
    return tuple(columns)


def _asked(case: SumCase, plan: Plan, origin: Phrase) -> tuple[ResultColumn, ...]:
    """The one result that is marked; the direction of an arm is known beforehand."""
    arm = case.notation.asked_arm
    return (ResultColumn(case.row_tag(arm), case.units_head()),) if arm else _drawn_result(case, plan, origin)


def _drawn_result(case: SumCase, plan: Plan, origin: Phrase) -> tuple[ResultColumn, ...]:
    """The sum or the arrow that returns, and its angle."""
    key = result_key(plan)
    # In large letters there is no room to say from where.
    found = (HEAD_ANGLE,) if plan.layout.style.column else words.found_from(case.notation.tags[key], origin)
    return ResultColumn(case.row_tag(key), case.units_head()), ResultColumn(found, "°")
