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
    """A result in another unit than the drawing: three figures, or four from 100 upwards."""
    return quantity.fixed(value, quantity.decimals_for(value, 4 if value >= 100 else 3), mark)


def comparison(case: OpenCase) -> Grid:
    """Voltage (V) and current (A) of each load with the neutral connected and open."""
    mark, solution = case.notation.mark, case.solution
    normal = solution.star.line_voltage / ROOT_THREE
    rows = []
    for number in (1, 2, 3):
        connected = phasor.magnitude(solution.phases[number - 1])
        open_voltage = phasor.magnitude(solution.voltages[number - 1])
        currents = [phasor.magnitude(one[number - 1]) for one in (solution.currents, solution.open_currents)]
        cells = (
            case.lines[number - 1], case.load_text(number), load_figures(connected, mark) + " V",
            load_figures(currents[0], mark) + " A", load_figures(open_voltage, mark) + " V",
            quantity.fixed(100.0 * open_voltage / normal, 0, mark) + " %", load_figures(currents[1], mark) + " A",
        )  # fmt: skip
        rows.append(tuple((cell,) for cell in cells))
    return Grid(tuple((head,) for head in words.HEAD), tuple(rows))


def millman(case: OpenCase) -> list[Block]:
    """Millman's theorem with this problem's numbers."""
    mark, solution = case.notation.mark, case.solution
    rows = []
    for number in (1, 2, 3):
        admittance, current = solution.star.admittances[number - 1], solution.currents[number - 1]
        voltage = solution.phases[number - 1]
        parts = ((voltage, "V"), (1000.0 * admittance, "mS"), (current, "A"))
        rows.append(((case.lines[number - 1],), *((figures.rectangular(value, unit, mark),) for value, unit in parts)))
    admittance_sum = phasor.total(solution.star.admittances)
    added = ((1000.0 * admittance_sum, "mS"), (solution.neutral, "A"))
    total = ((words.SUM,), ("",), *((figures.rectangular(value, unit, mark),) for value, unit in added))
    v, y = Symbol("V"), Symbol("Y")
    head = ((words.LINE,), (v,), (y,), (v, " × ", y))
    below = figures.rectangular(admittance_sum, "S", mark)
    size = quantity.fixed(phasor.magnitude(solution.displacement), 1, mark)
    above = figures.rectangular(solution.neutral, "A", mark)
    result = Number(figures.rectangular(solution.displacement, "V", mark))
    formula = row(case.star_point, "=", Fraction(Number(above), Number(below)), "=", result)
    return [
        Paragraph(words.MILLMAN),
        Grid(head, (*rows, total), total=True),
        Equation((formula, row(case.star_point, "=", Number(size, "V")))),
        Paragraph(MORE_DIGITS),
    ]
