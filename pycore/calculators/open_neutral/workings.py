"""Further workings, with the numbers of the problem."""

from pycore import phasor, quantity
from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.case import OpenCase
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Equation, Grid, Paragraph
from pycore.trig import ROOT_THREE
from pycore.words.answers import MORE_DIGITS
from pycore.words.formula import Fraction, Number, row
from pycore.words.phrase import Symbol


def load_figures(value: float, mark: str) -> str:
    """A result of another unit than the drawing's: three figures, four from a hundred on."""
    return quantity.fixed(value, quantity.decimals_for(value, 4 if value >= 100 else 3), mark)


def comparison(case: OpenCase) -> Grid:
    """Voltages and currents of each load with its neutral and without."""
    mark, solution = case.notation.mark, case.solution
    usual = solution.star.line_voltage / ROOT_THREE
    rows = []
    for number in (1, 2, 3):
        whole, opened = phasor.magnitude(solution.phases[number - 1]), phasor.magnitude(solution.voltages[number - 1])
        flows = [phasor.magnitude(one[number - 1]) for one in (solution.currents, solution.open_currents)]
        cells = (
            case.lines[number - 1], case.load_text(number), load_figures(whole, mark) + " V",
            load_figures(flows[0], mark) + " A", load_figures(opened, mark) + " V",
            quantity.fixed(100.0 * opened / usual, 0, mark) + " %", load_figures(flows[1], mark) + " A",
        )  # fmt: skip
        rows.append(tuple((cell,) for cell in cells))
    return Grid(tuple((head,) for head in words.HEAD), tuple(rows))


def millman(case: OpenCase) -> list[Block]:
    """Millman's theorem with this problem's numbers."""
    mark, solution = case.notation.mark, case.solution
    rows = []
    for number in (1, 2, 3):
        admittance, flowing = solution.star.admittances[number - 1], solution.currents[number - 1]
        voltage = solution.phases[number - 1]
        parts = ((voltage, "V"), (1000.0 * admittance, "mS"), (flowing, "A"))
        rows.append(((case.lines[number - 1],), *((figures.rectangular(value, unit, mark),) for value, unit in parts)))
    together = phasor.total(solution.star.admittances)
    added = ((1000.0 * together, "mS"), (solution.neutral, "A"))
    total = ((words.SUM,), ("",), *((figures.rectangular(value, unit, mark),) for value, unit in added))
    v, y = Symbol("V"), Symbol("Y")
    head = ((words.LINE,), (v,), (y,), (v, " × ", y))
    below = figures.rectangular(together, "S", mark)
    size = quantity.fixed(phasor.magnitude(solution.displacement), 1, mark)
    above = figures.rectangular(solution.neutral, "A", mark)
    found = Number(figures.rectangular(solution.displacement, "V", mark))
    formula = row(words.S, "=", Fraction(Number(above), Number(below)), "=", found)
    return [
        Paragraph(words.millman()),
        Grid(head, (*rows, total), total=True),
        Equation((formula, row(words.S, "=", Number(size, "V")))),
        Paragraph(MORE_DIGITS),
    ]
