"""Line and phase values of three loads, line by line with this problem's numbers."""

from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.star_and_delta import words
from pycore.forms import conventions
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Equation, Grid, Paragraph, Working
from pycore.words.formula import Fraction, Number, Root, row
from pycore.words.phrase import Phrase, Symbol, say

if TYPE_CHECKING:
    from pycore.calculators.star_and_delta.case import StarDeltaCase


def working(case: "StarDeltaCase") -> Working:
    """The section of the page."""
    blocks: list[Block] = [Paragraph(words.PHASE_VOLTAGE_INTRO), _voltages(case)]
    blocks += [Paragraph(words.LOADS_INTRO), _loads(case)]
    if not case.star:
        blocks += [Paragraph(words.CORNER_LAW), _differences(case)]
    return Working("values", say(words.CALCULATED), (*blocks, Paragraph(words.POWERS_INTRO), _powers(case)))


def _voltages(case: "StarDeltaCase") -> Equation:
    mark, solution = case.notation.mark, case.solution
    line = Number(figures.amount(solution.circuit.line_voltage, "V", mark))
    phase = Number(figures.amount(phasor.magnitude(solution.phases[0]), "V", mark))
    low, high = Symbol("V", "ph"), Symbol("V", "L")
    root = Root(Number("3"))
    return Equation((row(low, "=", Fraction(high, root), "=", Fraction(line, root), "=", phase),))


def _loads(case: "StarDeltaCase") -> Grid:
    mark, solution = case.notation.mark, case.solution
    across = solution.phases if case.star else solution.between
    turn = 1.0 + 0j if case.star else phasor.polar(1.0, -phasor.angle(solution.between[0]))
    rows = []
    each = zip(solution.circuit.loads, across, solution.branches, strict=True)
    for number, (load, volts, flows) in enumerate(each, 1):
        size = "" if load is None else figures.polar(load, "Ω", mark)
        cells = (str(number), case.load_text(number), size, figures.polar(volts * turn, "V", mark),
                 figures.polar(flows * turn, "A", mark))  # fmt: skip
        rows.append(tuple((cell,) for cell in cells))
    return Grid(tuple((head,) for head in words.Z_HEAD), tuple(rows))


def _differences(case: "StarDeltaCase") -> Grid:
    from pycore.calculators.star_and_delta.fields import BEFORE

    mark, solution = case.notation.mark, case.solution
    turn = phasor.polar(1.0, -phasor.angle(solution.between[0]))
    rows: list[tuple[Phrase, ...]] = []
    for number, value in enumerate(solution.lines, start=1):
        less = BEFORE[number]
        own, off = (figures.rectangular(solution.branches[n - 1] * turn, "A", mark) for n in (number, less))
        name = conventions.NAMES[case.problem["names"]][number - 1]
        rows.append((
            (name,), (*case.own[number], " − ", *case.own[less]), (f"({own}) − ({off})",),
            (figures.polar(value * turn, "A", mark),),
        ))  # fmt: skip
    return Grid(tuple((head,) for head in words.DIFFERENCE_HEAD), tuple(rows))


def _powers(case: "StarDeltaCase") -> Equation:
    mark, solution = case.notation.mark, case.solution
    loads = [0j if load is None else load for load in solution.circuit.loads]
    shares = []
    for load, flows in zip(loads, solution.branches, strict=True):
        size = phasor.magnitude(flows)
        shares.append((size * size * load.real, size * size * load.imag))
    lines = []
    for symbol, unit, part, total in (
        (Symbol("P"), "W", 0, solution.power.real), (Symbol("Q"), "var", 1, solution.power.imag),
    ):  # fmt: skip
        numbers = [quantity.fixed(share[part], max(0, quantity.decimals_for(share[part], 4)), mark) for share in shares]
        if total or not part:
            added = [piece for one in numbers for piece in (Number(one), "+")][:-1]
            lines.append(row(symbol, "=", *added, "=", Number(figures.amount(total, unit, mark))))
    return Equation(tuple(lines))
