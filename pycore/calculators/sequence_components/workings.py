"""Further workings, with the numbers of the problem."""

from dataclasses import replace

from pycore import phasor, quantity
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.case import SequenceCase, turned_tags
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.calculators.sequence_components.figure import (
    ComponentArrow,
    ComponentSet,
    component_sets,
    drawn_sets,
    empty_sets,
    on_paper,
)
from pycore.drawing import Page
from pycore.forms import conventions
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet import kinds
from pycore.sheet.compose import thin
from pycore.sheet.media import layout
from pycore.sheet.plan import Plan
from pycore.sheet.scale import Fit
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Grid, Paragraph, WorkingPicture
from pycore.sums.case import ComponentRow
from pycore.sums.request import SheetRequest
from pycore.sums.sheet import FurtherSheet, further_pages
from pycore.words.phrase import Symbol


def table(case: SequenceCase) -> list[Block]:
    """Each component's sum and third, then all of them put together again."""
    unit, mark = case.problem["unit"], case.notation.mark
    letter = "I" if unit == "A" else "V"
    own, rows, symbols = case.own, [], {component: Symbol(letter, words.INDEX[component]) for component in TURNS}
    for component in TURNS:
        tags = turned_tags({f"i{number}": tag for number, tag in own.items()}, component)
        value: complex = getattr(case.components, component)
        formula = (*tags["i12"], " + ", *tags["i3"])
        sum_text = figures.rectangular(3.0 * value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}"
        rows.append(((symbols[component],), (*formula, " = ", sum_text),
                     (figures.rectangular(value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}",),
                     (figures.polar(value, unit, mark),)))  # fmt: skip
    back = []
    for number in (1, 2, 3):
        shares = [case.share(component, number) for component in TURNS]
        texts = [figures.polar(share, unit, mark) for share in shares]
        back.append((own[number], *((text,) for text in texts), (figures.polar(phasor.total(shares), unit, mark),)))
    head, back_head = (tuple((cell,) for cell in cells) for cells in (words.HEAD, words.BACK_HEAD))
    parts = words.a_parts(*(quantity.plain(number, mark) for number in (0.5, 0.866)))
    return [
        Paragraph(parts), Paragraph(words.TABLE_WORDS), Grid(head, tuple(rows)),
        Paragraph(words.BACK_WORDS), Grid(back_head, tuple(back)),
    ]  # fmt: skip


def component_sets_of(case: SequenceCase, *, amounts: bool) -> tuple[ComponentSet, ...]:
    """The three sets as they lie on the sheet; ``amounts``: the size stands in each title."""
    inks, names = case.inks(), conventions.line_names(case.problem["names"])
    sets = []
    for component in TURNS:
        arrows = []
        for number in (1, 2, 3):
            value = case.share(component, number)
            degrees = case.picture.paper_angle(phasor.angle(value)) if value else 0.0
            arrows.append(
                ComponentArrow(names[number - 1], phasor.magnitude(value), degrees, inks[f"i{number}"])
            )
        size = case.amount(phasor.magnitude(case.share(component, 1)))
        title = f"{words.NAMES[component]}: {size}" if amounts else component
        sets.append(ComponentSet(title, tuple(arrows), together=component == "zero"))
    return tuple(sets)


def sets_picture(case: SequenceCase) -> WorkingPicture:
    """The three sets at one scale."""
    sets = component_sets_of(case, amounts=True)
    return WorkingPicture(component_sets(sets, words.sets_title(case.problem["unit"])), "sets")


def sets_sheet(case: SequenceCase, plan: Plan, request: SheetRequest) -> tuple[Page, ...]:
    """The sheet with all three sets, on the paper of the first one: drawn, to be drawn, or to be laid over; in large
    print with its table on the next."""
    letter, first = "I" if case.problem["unit"] == "A" else "V", plan.layout
    own = layout(first.paper, first.orientation, len(TURNS), printed=case.printed)
    sets = component_sets_of(case, amounts=False)
    placed = on_paper(sets, own, case.problem["steps"])
    values = [(Symbol(letter, words.INDEX[component]), case.share(component, 1)) for component in TURNS]
    rows = tuple(
        ComponentRow((symbol,), phasor.magnitude(value), phasor.angle(value) if value else 0.0)
        for symbol, value in values
    )
    note = f"{words.SETS_TASK} {words.SETS_NOTE}" if request.kind == kinds.PROBLEM else words.SETS_NOTE
    notes = () if own.small else (note,)
    to_scale = replace(plan, layout=own, fit=Fit(placed.scale, (0.0, 0.0), (0.0, 0.0)))
    sheet = FurtherSheet(
        words.SETS_NAME, words.SETS_METHOD, to_scale, rows,
        notes, words.sets_title(case.problem["unit"]),
    )  # fmt: skip
    if request.kind == kinds.PROBLEM:
        return further_pages(case, sheet, request, (empty_sets(sets, placed, own.style),))
    style = thin(own.style) if request.kind == kinds.OVERLAY else own.style
    return further_pages(case, sheet, request, (drawn_sets(sets, placed, style),))
