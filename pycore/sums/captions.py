"""What is said of a drawing's paper and scale: below the sheet, beside the field of the scale, among the notices."""

from collections.abc import Mapping

from pycore import quantity
from pycore.errors import Fault
from pycore.forms.common import SHARED
from pycore.forms.title_block import BY_HAND
from pycore.lettering.glyphs import Letters
from pycore.sheet.media import OWN_MARGIN
from pycore.sheet.own_paper import distance_text
from pycore.sheet.plan import Plan
from pycore.sheet.scale import STEPS, is_finest
from pycore.sums.case import SumCase
from pycore.words import answers as words
from pycore.words import moves_list
from pycore.words.phrase import Phrase, say


def caption_of(case: SumCase, plan: Plan) -> Phrase:
    """Return what stands below the sheet: paper and scale."""
    sheet, scales = plan.layout, case.notation.scales(plan.scale, plan.second)
    if case.on_own_paper:
        return words.own_caption(sheet.paper, sheet.orientation, scales)
    return words.caption(sheet.paper, sheet.orientation, scales, _reason(case, plan) if is_chosen(case) else "")


def _reason(case: SumCase, plan: Plan) -> str:
    """Return which scales a chosen one was chosen from: another one, such as 1.5, could be larger and fit."""
    steps, mark = case.choices["steps"], case.notation.mark
    usual = (", " if mark == "." else "; ").join(quantity.plain(step, mark) for step in STEPS[steps])
    return words.largest_scale(usual, shared=not is_finest(plan.fit, plan.layout, steps))


def is_chosen(case: SumCase) -> bool:
    """Whether the scale was chosen to fit: none was typed, or one that does not fit."""
    return case.problem.scale is None or bool(case.chosen.misfit)


def scale_echo(case: SumCase, plan: Plan) -> Mapping[str, str]:
    """Return what stands below the field of the scale: the scale of the drawing, and what its paper keeps free."""
    sheet = plan.layout
    lines = [words.scale_now(case.notation.scales(plan.scale, plan.second), chosen=is_chosen(case))]
    if case.on_own_paper:
        margin = distance_text(OWN_MARGIN, case.notation.mark)
        lines.append(words.own_margin(sheet.paper, sheet.orientation, margin))
    return {"said": " ".join(lines)}


def left_blank(case: SumCase, letters: Letters) -> tuple[Fault, ...]:
    """Name, group and date that cannot be set, because no font has their letters or it could not be fetched."""
    typed = case.problem.form
    unset = (name for name in BY_HAND if letters.set(typed[name]) is None)
    return tuple(Fault(name, typed[name], words.left_blank(SHARED[name].label)) for name in unset)


def stands_upright(case: SumCase, plan: Plan) -> tuple[Phrase, ...]:
    """Return a notice if the sheet is portrait although landscape was chosen: large print has room only so."""
    requested = case.problem["orientation"]
    return () if requested in ("", plan.layout.orientation) else (say(moves_list.UPRIGHT),)
