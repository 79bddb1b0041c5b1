"""Further workings, with the numbers of the problem."""

from pycore import quantity
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.case import WattCase
from pycore.calculators.two_wattmeters.figure import phasors
from pycore.sums.answer import Block, Equation, Paragraph, Picture
from pycore.sums.wording import degrees_text
from pycore.words.formula import Fenced, Fraction, Function, Number, Root, row
from pycore.words.phrase import Symbol, say


def diagram(case: WattCase) -> list[Block]:
    """The phasor diagram, and each reading as voltage × current × cosine."""
    mark, lag = case.telling.mark, case.found.lag
    angles = (degrees_text(case.seen[0], mark), degrees_text(case.seen[1], mark))
    made: list[Block] = [
        Paragraph(say(words.CONNECTION)),
        Picture(phasors(lag, angles, words.picture_title(*angles)), "meters"),
        Paragraph(words.picture_words()),
    ]
    if case.load is None:
        return made
    volts, amps = (Number(quantity.plain(value, mark)) for value in (case.load.voltage, case.load.current))
    lines = []
    for tag, angle, value in zip(words.TAGS, case.seen, case.readings, strict=False):
        told = Number(quantity.plain(round(angle, 2), mark) + "°")
        result = Number(case.telling.writing.number(value), case.prefix + "W")
        lines.append(row(tag, "=", volts, "×", amps, "×", Function("cos", Fenced(told)), "=", result))
    return [*made, Equation(tuple(lines))]


def _signed(case: WattCase, value: float) -> Number | Fenced:
    number = Number(case.telling.writing.number(value))
    return Fenced(number) if value < 0 else number


def from_readings(case: WattCase) -> list[Block]:
    """From both readings to power, reactive power, angle and power factor."""
    found, told, prefix = case.found, case.telling.writing.number, case.prefix
    first, second, third = case.readings
    one, two = _signed(case, first), _signed(case, second)
    power, reactive = Symbol("P"), Symbol("Q")
    made: list[Block] = [
        Equation((row(power, "=", words.TAGS[0], "+", words.TAGS[1], "=", one, "+", two, "=",
                      Number(told(case.power), prefix + "W")),)),
    ]  # fmt: skip
    if not case.balanced:
        return [*made, Paragraph(words.refused())]
    three = Root(Number("3"))
    lines = [
        row(reactive, "=", three, Fenced(row(words.TAGS[1], "−", words.TAGS[0])), "=", three,
            Fenced(row(two, "−", one)), "=", Number(told(third), prefix + "var")),
    ]  # fmt: skip
    if case.power != 0:
        ratio = Fraction(Number(told(third)), Number(told(case.power)))
        lines.append(row(Symbol("φ"), "=", Function("arctan", Fenced(ratio)), "=", _degrees(case, case.tangent)))
    factor = row(Function("cos", Symbol("φ")), "=", Number(quantity.fixed(found.factor, 3, case.telling.mark)))
    if case.power >= 0:
        return [*made, Equation((*lines, factor))]
    turned = row(Symbol("φ"), "=", _degrees(case, case.tangent), "−" if case.tangent > 0 else "+", Number("180°"), "=",
                 _degrees(case, found.lag))  # fmt: skip
    return [*made, Equation(tuple(lines)), Equation((turned, factor), words.turned_back())]


def _degrees(case: WattCase, degrees: float) -> Number:
    return Number(quantity.fixed(degrees, 1, case.telling.mark) + "°")
