"""Further workings, with the numbers of the problem."""

from typing import TYPE_CHECKING

from pycore import phasor
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Grid, Paragraph
from pycore.words.phrase import Symbol

if TYPE_CHECKING:
    pass
from pycore.calculators.sequence_components.case import SequenceCase, turned_tags


def table(case: SequenceCase) -> list[Block]:
    """Each component's sum and third, then all of them put together again."""
    unit, mark = case.problem["unit"], case.notation.mark
    letter = "I" if unit == "A" else "V"
    own, rows, symbols = case.own, [], {part: Symbol(letter, words.INDEX[part]) for part in TURNS}
    for part in TURNS:
        tags = turned_tags({f"i{number}": tag for number, tag in own.items()}, part)
        value: complex = getattr(case.components, part)
        formula = (*tags["i12"], " + ", *tags["i3"])
        whole = figures.rectangular(3.0 * value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}"
        rows.append(((symbols[part],), (*formula, " = ", whole),
                     (figures.rectangular(value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}",),
                     (figures.polar(value, unit, mark),)))  # fmt: skip
    back = []
    for number in (1, 2, 3):
        # Each phase has its own component: the first's, turned back by as much as it was turned to be added.
        shares = [
            getattr(case.components, part) * phasor.polar(1.0, -TURNS[part][number - 1]) for part in TURNS
        ]
        told = [figures.polar(share, unit, mark) for share in shares]
        back.append((own[number], *((text,) for text in told), (figures.polar(phasor.total(shares), unit, mark),)))
    head, back_head = (tuple((cell,) for cell in cells) for cells in (words.HEAD, words.BACK_HEAD))
    return [
        Paragraph(words.a_parts()), Paragraph(words.table_words()), Grid(head, tuple(rows)),
        Paragraph(words.back_words()), Grid(back_head, tuple(back)),
    ]  # fmt: skip
