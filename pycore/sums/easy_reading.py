"""The further pages of a sheet for easy reading or on own paper: given values, moves, and what to check."""

from pycore.constructions.methods import THE_RETURNING
from pycore.constructions.moves import SetOff
from pycore.sheet import kinds
from pycore.sheet.moves_sheet import TextSection
from pycore.sheet.plan import Plan
from pycore.sums.answer import Move
from pycore.sums.case import SumCase
from pycore.sums.request import SheetRequest
from pycore.sums.rows import minus_words
from pycore.sums.sentences import StepSentences
from pycore.sums.worksheet import by_hand
from pycore.words import answers, moves_list, plain
from pycore.words import sheet as words
from pycore.words import sums as sum_words
from pycore.words.constructions import as_line
from pycore.words.moves_list import CompanionName, ProblemGoal, ProblemStart

ON_THE_WAY = "on-the-way"


def lists_of(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[TextSection, ...]:
    """Return the given values and the moves: of a problem without answers, of a construction with its numbers."""
    kind = request.kind
    bar = plan.layout.bar_text
    if kind == kinds.PROBLEM:
        more = (case.further_question(),) if case.further_question() else ()
        ticked = (*_problem_moves(case, plan), *more)
    elif kind == kinds.OVERLAY:
        ticked = case.sheet_words(plan, kind, case.method_words(plan)).notes
    else:
        blocks = StepSentences(plan, case.notation).all_moves()
        ticked = tuple(plain(block.phrase) for block in blocks if isinstance(block, Move))
    look = [words.print_note(bar)]
    if case.companions and not (request.opening.issue and request.opening.issue.own_scale):
        centimetres = plan.layout.bar / 10.0
        amounts = case.notation.writing, case.companions.writing
        scale_texts = (
            one.scale(scale * centimetres) for one, scale in zip(amounts, (plan.scale, plan.second), strict=True)
        )
        look.append(sum_words.second_check(bar, *scale_texts))
    if kind == kinds.PROBLEM:
        look.append(by_hand(plan, any_method=request.any_method)[0])
    if minus_words(case, plan):
        look.append(minus_words(case, plan))
    lists = (
        TextSection(moves_list.GIVEN, case.sheet_values_text(plan, any_method=request.any_method)),
        TextSection(moves_list.MOVES, ticked, ticked=True),
    )
    # Own paper has no bars to check.
    return lists if case.on_own_paper else (*lists, TextSection(moves_list.LOOK, tuple(look)))


def _problem_moves(case: SumCase, plan: Plan) -> tuple[str, ...]:
    sentences, notation = StepSentences(plan, case.notation), case.notation
    set_off = [move for move in plan.construction.moves if isinstance(move, SetOff) and not move.copy]
    keys = [arm.key for arm in case.arms]
    first_key = next((move.phasor for move in set_off if move.phasor in keys), keys[0])
    first = next(arm for arm in case.arms if arm.key == first_key)
    straight = first.angle == case.picture.reference
    # Where the first phasor's own angle is to be worked out, it is not given away.
    direction = sentences.direction(first.angle) if straight else ""
    beside = case.companions
    companions = tuple(
        CompanionName(
            plain(notation.tags[arm.key]), sentences.direction(arm.angle) if arm.angle == case.picture.reference else ""
        )
        for arm in (beside.arms if beside else ())
    )
    result = case.result_word or answers.with_article(plain(case.sum_word))
    on_the_way = any(step.name == ON_THE_WAY for step in plan.construction.steps)
    goal = ProblemGoal(
        result,
        case.guess_word or result,
        notation.words.quantity,
        case.to_work_out or notation.words.plural
        if beside is None or case.typed_companions
        else moves_list.both(beside.words.quantity, notation.words.plural),
        case.typed_sizes,
        plain(notation.tags["i12"]) if on_the_way else "",
        notation.words.opposite if plan.construction.resultant == THE_RETURNING else "",
        case.last_moves,
        tuple(plain(component.tag) for component in case.further(plan.construction)),
        case.finding_moves(plan.construction),
        case.turning_moves,
    )
    origin = plain(as_line(notation.voltage if notation.polar else notation.reference))
    begun = ProblemStart(case.problem["start"], plain(notation.tags[first_key]), direction, origin, case.begun(plan))
    return tuple(moves_list.problem_moves(plan.construction.method, goal, begun, len(case.arms), companions))
