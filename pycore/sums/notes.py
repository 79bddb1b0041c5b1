"""The notes of a sheet: given values, task, how to lay an overlay, how to print."""

from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.tip_to_tail import listed_order
from pycore.sheet import kinds
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import SheetWords
from pycore.words import plain
from pycore.words import sums as sum_words
from pycore.words.accuracy import ELLIPSE_NOTE
from pycore.words.constructions import as_line


def sheet_words(
    case: SumCase, plan: Plan, kind: str, method: str, task: str, values_text: str, *, drawing_note: str = ""
) -> SheetWords:
    """Return the notes of a kind of sheet, and the description of a problem.

    ``method``: as the title block names it. ``task``: what to find. ``values_text``: values that are not in the table.
    ``drawing_note``: how the drawing lies on the paper, if a page has words of its own for it.
    """
    short = plan.layout.small
    if kind == kinds.PROBLEM:
        sentences = StepSentences(plan, case.notation)
        direction, sense = sentences.direction(case.picture.reference), sentences.sense(1.0)
        reference = plain(as_line(case.notation.reference))
        begun = case.begun(plan)
        drawn = plain(case.notation.reference) in begun
        direction_note = drawing_note or sum_words.drawing_direction(
            reference, direction, sense, drawn=drawn, short=short
        )
        task = f"{task}: {method}" if case.method_in_task and not short else task
        notes = sum_words.problem_notes(task, values_text, direction_note)
        description = sum_words.problem_description(case.notation.words.plural, method, begun)
        return SheetWords(notes, description, direction_note)
    if kind == kinds.OVERLAY:
        first = plain(case.notation.tags[case.arms[0].key])
        notes = sum_words.overlay_notes(first, short=short, mirrored=case.problem["mirror"] == "yes")
        construction = plan.construction
        if construction.method == TIP_TO_TAIL and listed_order(construction.arms, construction.order) and not short:
            notes = (*notes, sum_words.AS_LISTED)
        return SheetWords(notes if case.closed or short else (*notes, ELLIPSE_NOTE))
    return SheetWords(())
