"""Further workings, with the numbers of the problem."""

from pycore import phasor
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.case import SequenceCase, turned_tags
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Grid, Paragraph
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
        # Each phase has its own component: the first's, turned back by as much as it was turned to be added.
        shares = [
            getattr(case.components, component) * phasor.polar(1.0, -turns[number - 1])
            for component, turns in TURNS.items()
        ]
        texts = [figures.polar(share, unit, mark) for share in shares]
        back.append((own[number], *((text,) for text in texts), (figures.polar(phasor.total(shares), unit, mark),)))
    head, back_head = (tuple((cell,) for cell in cells) for cells in (words.HEAD, words.BACK_HEAD))
    return [
        Paragraph(words.A_PARTS), Paragraph(words.TABLE_WORDS), Grid(head, tuple(rows)),
        Paragraph(words.BACK_WORDS), Grid(back_head, tuple(back)),
    ]  # fmt: skip
