"""Further workings, with the numbers of the problem."""

import math

from pycore import quantity, trig
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.case import WattmeterCase
from pycore.calculators.two_wattmeters.circuit import METERS, larger_lagging
from pycore.calculators.two_wattmeters.figure import phasors
from pycore.sums.answer import Block, Equation, Paragraph, WorkingPicture
from pycore.sums.carried import agrees, fewest, number_of
from pycore.sums.wording import degrees_text
from pycore.trig import ROOT_THREE
from pycore.words.answers import MORE_DIGITS
from pycore.words.formula import Bracketed, Fraction, Function, Number, Root, row
from pycore.words.phrase import Symbol

MOST_EXTRA = 4
"""Decimals beyond the usual ones that may be printed so that results follow."""


def diagram(case: WattmeterCase) -> list[Block]:
    """The phasor diagram, and each reading as voltage × current × cosine."""
    mark, lag = case.notation.mark, case.result.lag
    first, second = METERS[case.meters]
    angles = (degrees_text(case.meter_angles[0], mark), degrees_text(case.meter_angles[1], mark))
    blocks: list[Block] = [
        Paragraph(words.connection(first.line, second.line, first.to, larger_lagging(case.meters))),
        WorkingPicture(phasors(lag, angles, words.picture_title(*angles), case.meters), "meters"),
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


def from_readings(case: WattmeterCase) -> list[Block]:
    """From both readings to power, reactive power, angle and power factor, with the digits that lead from one line to
    the next."""
    prefix = case.prefix
    extra = fewest(0, MOST_EXTRA, lambda count: _follows(case, count))
    one, two, power, reactive = _texts(case, extra or 0)
    blocks: list[Block] = [
        Equation((row(Symbol("P"), "=", words.TAGS[0], "+", words.TAGS[1], "=", _bracketed(one), "+", _bracketed(two),
                      "=", Number(power, prefix + "W")),)),
    ]  # fmt: skip
    if not case.balanced:
        return [*blocks, Paragraph(words.REFUSED)]
    root, larger = Root(Number("3")), larger_lagging(case.meters)
    minuend, subtrahend = (two, one) if larger == 2 else (one, two)
    tags = words.TAGS[larger - 1], words.TAGS[2 - larger]
    lines = [
        row(Symbol("Q"), "=", root, Bracketed(row(tags[0], "−", tags[1])), "=", root,
            Bracketed(row(_bracketed(minuend), "−", _bracketed(subtrahend))), "=", Number(reactive, prefix + "var")),
    ]  # fmt: skip
    if case.power != 0:
        ratio = Fraction(Number(reactive), Number(power))
        lines.append(row(Symbol("φ"), "=", Function("arctan", Bracketed(ratio)), "=", _degrees(case, case.tangent)))
    factor = row(Function("cos", Symbol("φ")), "=", Number(case.power_factor_text))
    note = [] if extra is not None else [Paragraph(MORE_DIGITS)]
    if case.power >= 0:
        return [*blocks, Equation((*lines, factor)), *note]
    turned = row(Symbol("φ"), "=", _degrees(case, case.tangent), "−" if case.tangent > 0 else "+", Number("180°"), "=",
                 _degrees(case, case.result.lag))  # fmt: skip
    return [*blocks, Equation(tuple(lines)), Equation((turned, factor), words.TURNED_BACK), *note]


def _texts(case: WattmeterCase, extra: int) -> tuple[str, str, str, str]:
    """Both readings, power and reactive power as printed, with ``extra`` decimals beyond the usual ones; the reactive
    power with one less, for √3 enlarges what the readings are rounded by."""
    writing = case.notation.writing

    def text(value: float, more: int) -> str:
        usual = writing.number(value)
        return quantity.fixed(value / writing.factor, quantity.decimals_of(usual) + more, writing.mark)

    first, second, reactive = case.readings
    return text(first, extra), text(second, extra), text(case.power, extra), text(reactive, max(0, extra - 1))


def _follows(case: WattmeterCase, extra: int) -> bool:
    """Whether power, reactive power and angle follow from the printed readings."""
    texts = _texts(case, extra)
    one, two, power, reactive = (number_of(text) for text in texts)
    difference = two - one if larger_lagging(case.meters) == 2 else one - two
    if not agrees(one + two, texts[2]):
        return False
    if not case.balanced:
        return True
    angle = trig.angle_of(math.fabs(power), reactive if power > 0 else -reactive)
    return agrees(ROOT_THREE * difference, texts[3]) and (
        not case.power or agrees(angle, quantity.fixed(case.tangent, 1, "."))
    )


def _bracketed(text: str) -> Number | Bracketed:
    """A number, in brackets if it is negative."""
    return Bracketed(Number(text)) if text.startswith(quantity.MINUS) else Number(text)


def _degrees(case: WattmeterCase, degrees: float) -> Number:
    return Number(quantity.fixed(degrees, 1, case.notation.mark) + "°")
