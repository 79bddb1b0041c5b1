"""Further workings, with the numbers of the problem."""

from pycore import phasor
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.case import SequenceCase, turned_tags
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.calculators.sequence_components.figure import ComponentArrow, ComponentSet, component_sets
from pycore.forms import conventions
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Grid, Paragraph, WorkingPicture
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
    return [
        Paragraph(words.A_PARTS), Paragraph(words.TABLE_WORDS), Grid(head, tuple(rows)),
        Paragraph(words.BACK_WORDS), Grid(back_head, tuple(back)),
    ]  # fmt: skip


def sets_picture(case: SequenceCase) -> WorkingPicture:
    """The three sets at one scale, as they lie on the sheet."""
    largest = max(phasor.magnitude(case.share(component, 1)) for component in TURNS)
    inks, names = case.inks(), conventions.line_names(case.problem["names"])
    sets = []
    for component in TURNS:
        arrows = []
        for number in (1, 2, 3):
            value = case.share(component, number)
            degrees = case.picture.paper_angle(phasor.angle(value)) if value else 0.0
            arrows.append(
                ComponentArrow(names[number - 1], phasor.magnitude(value) / largest, degrees, inks[f"i{number}"])
            )
        size = case.amount(phasor.magnitude(case.share(component, 1)))
        title = f"{words.NAMES[component]}: {size}"
        sets.append(ComponentSet(title, arrows, together=component == "zero"))
    return WorkingPicture(component_sets(sets, words.sets_title(case.problem["unit"])), "sets")
