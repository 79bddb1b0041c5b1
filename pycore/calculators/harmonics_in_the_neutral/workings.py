"""Further workings, with the numbers of the problem."""

from pycore import phasor
from pycore.calculators.harmonics_in_the_neutral import words
from pycore.calculators.harmonics_in_the_neutral.case import HarmonicCase
from pycore.calculators.harmonics_in_the_neutral.figure import Bar, Wave, spectrum, waveforms
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums.answer import Block, Equation, Grid, Paragraph, WorkingPicture
from pycore.words.formula import Number, Root, Square, row
from pycore.words.phrase import Symbol


def pictures(case: HarmonicCase) -> list[Block]:
    """Waves of lines and neutral, and the spectrum."""
    solution, inks = case.spectrum, case.inks()
    lines = [
        Wave(case.lines[index], {order.number: order.lines[index] for order in solution.orders}, inks[f"i{index + 1}"])
        for index in range(len(case.lines))
    ]
    neutral = Wave(words.IN_NEUTRAL, {order.number: order.neutral for order in solution.orders}, inks["sum"])
    waves = waveforms((lines, (neutral,)), words.waves_title(case.amount_text(solution.neutral)))
    bars = [
        Bar(order.number, max(phasor.magnitude(value) for value in order.lines), phasor.magnitude(order.neutral),
            case.number(phasor.magnitude(order.neutral)))
        for order in solution.orders
    ]  # fmt: skip
    amounts = ", ".join(f"{bar.order}: {bar.amount_text}{NO_BREAK_SPACE}{case.fundamental_format.unit}" for bar in bars)
    by_order = spectrum(bars, (words.LARGEST_LINE, words.IN_NEUTRAL), words.spectrum_title(amounts))
    return [WorkingPicture(waves, "waves"), WorkingPicture(by_order, "spectrum")]


def by_order(case: HarmonicCase) -> list[Block]:
    """The table of orders, and the root of the sum of their squares."""
    solution, number = case.spectrum, case.number
    head = (*((name,) for name in words.HEAD), *((line,) for line in case.lines), ("N",))
    rows = [
        (
            (str(order.number),), (order.sequence,),
            *((number(phasor.magnitude(value)),) for value in order.lines),
            (number(phasor.magnitude(order.neutral)),),
        )
        for order in solution.orders
    ]  # fmt: skip
    total = (("r.m.s.",), ("",), *((number(size),) for size in solution.lines), (number(solution.neutral),))
    symbol = Symbol("I", "N")
    squares: list[str | Square] = []
    for order in solution.orders:
        size = case.fundamental_format.fixed(phasor.magnitude(order.neutral), 3)
        squares += [*(("+",) if squares else ()), Square(Number(size))]
    result = Number(number(solution.neutral), case.fundamental_format.unit)
    return [
        Grid(head, (*rows, total), total=True),
        Paragraph(words.SQUARES),
        Equation((row(symbol, "=", Root(row(*squares)), "=", result),)),
    ]
