"""Further workings, with the numbers of the problem."""

from pycore import quantity
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.case import WattmeterCase
from pycore.calculators.two_wattmeters.figure import phasors
from pycore.sums.answer import Block, Equation, Paragraph, WorkingPicture
from pycore.sums.wording import degrees_text
from pycore.words.formula import Bracketed, Fraction, Function, Number, Root, row
from pycore.words.phrase import Symbol, say


def diagram(case: WattmeterCase) -> list[Block]:
    """The phasor diagram, and each reading as voltage × current × cosine."""
    mark, lag = case.notation.mark, case.result.lag
    angles = (degrees_text(case.meter_angles[0], mark), degrees_text(case.meter_angles[1], mark))
    blocks: list[Block] = [
        Paragraph(say(words.CONNECTION)),
        WorkingPicture(phasors(lag, angles, words.picture_title(*angles)), "meters"),
        Paragraph(words.PICTURE_WORDS),
    ]
    if case.load is None:
        return blocks
    volts, amps = (Number(quantity.plain(value, mark)) for value in (case.load.voltage, case.load.current))
    lines = []
    for tag, angle, value in zip(words.TAGS, case.meter_angles, case.readings, strict=False):
        angle_number = Number(quantity.plain(round(angle, 2), mark) + "°")
        watts = Number(case.notation.writing.number(value), case.prefix + "W")
        lines.append(row(tag, "=", volts, "×", amps, "×", Function("cos", Bracketed(angle_number)), "=", watts))
    return [*blocks, Equation(tuple(lines))]


def _signed(case: WattmeterCase, value: float) -> Number | Bracketed:
    number = Number(case.notation.writing.number(value))
    return Bracketed(number) if value < 0 else number


def from_readings(case: WattmeterCase) -> list[Block]:
    """From both readings to power, reactive power, angle and power factor."""
    result, number, prefix = case.result, case.notation.writing.number, case.prefix
    first, second, third = case.readings
    one, two = _signed(case, first), _signed(case, second)
    power, reactive = Symbol("P"), Symbol("Q")
    blocks: list[Block] = [
        Equation((row(power, "=", words.TAGS[0], "+", words.TAGS[1], "=", one, "+", two, "=",
                      Number(number(case.power), prefix + "W")),)),
    ]  # fmt: skip
    if not case.balanced:
        return [*blocks, Paragraph(words.REFUSED)]
    three = Root(Number("3"))
    lines = [
        row(reactive, "=", three, Bracketed(row(words.TAGS[1], "−", words.TAGS[0])), "=", three,
            Bracketed(row(two, "−", one)), "=", Number(number(third), prefix + "var")),
    ]  # fmt: skip
    if case.power != 0:
        ratio = Fraction(Number(number(third)), Number(number(case.power)))
        lines.append(row(Symbol("φ"), "=", Function("arctan", Bracketed(ratio)), "=", _degrees(case, case.tangent)))
    factor = row(Function("cos", Symbol("φ")), "=", Number(quantity.fixed(result.factor, 3, case.notation.mark)))
    if case.power >= 0:
        return [*blocks, Equation((*lines, factor))]
    turned = row(Symbol("φ"), "=", _degrees(case, case.tangent), "−" if case.tangent > 0 else "+", Number("180°"), "=",
                 _degrees(case, result.lag))  # fmt: skip
    return [*blocks, Equation(tuple(lines)), Equation((turned, factor), words.TURNED_BACK)]


def _degrees(case: WattmeterCase, degrees: float) -> Number:
    return Number(quantity.fixed(degrees, 1, case.notation.mark) + "°")
