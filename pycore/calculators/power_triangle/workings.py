"""The power triangle calculated line by line, with the problem's numbers."""

import math

from pycore import phasor, trig
from pycore.calculators.power_triangle import words
from pycore.calculators.power_triangle.case import P, PowerCase, Q
from pycore.calculators.power_triangle.circuit import capacitance
from pycore.sums.answer import Block, Equation
from pycore.sums.circuit import side_of
from pycore.sums.circuit_formula import PI, F
from pycore.sums.figures import Figure, Figures, ratio, with_enough
from pycore.trig import ROOT_THREE as ROOT_OF_THREE
from pycore.words.formula import Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Symbol

S, VOLTS, AMPS = Symbol("S"), Symbol("V"), Symbol("I")
PHI = Symbol("φ")
ROOT_THREE = Root(Number("3"))


class _Angle:
    """A power factor and its angle, as they are printed: the angle is the arccosine of the printed power factor."""

    def __init__(self, power: complex, figures: Figures) -> None:
        self.leads = phasor.angle(power) < 0
        self.factor = figures.decimals(power.real / phasor.magnitude(power), figures.count)
        cosine = min(1.0, self.factor.value)
        size = trig.angle_of(cosine, math.sqrt((1.0 - cosine) * (1.0 + cosine)))
        self.degrees = figures.decimals(-size if self.leads else size, figures.count - 2, "°")

    def of(self, name: str) -> Function:
        """Sine or tangent of the angle."""
        return Function(name, self.degrees.signed)

    @property
    def sine(self) -> float:
        """The sine of the printed angle."""
        return trig.sine(self.degrees.value)

    @property
    def tangent(self) -> float:
        """The tangent of the printed angle; 0 at a right angle, where it leads to no answer."""
        return ratio(trig.sine(self.degrees.value), trig.cosine(self.degrees.value))

    def line(self, symbol: Symbol) -> Formula:
        """The angle from the power factor; one that leads takes a minus."""
        arccos = Function("arccos", self.factor.number)
        return row(symbol, "=", row("−", arccos) if self.leads else arccos, "=", self.degrees.number)


class _PowerWorking:
    """One load's lines, and the numbers that they print."""

    def __init__(self, case: PowerCase, figures: Figures) -> None:
        self.case, self.entered, self.load, self.figures = case, case.entered, case.entered.load, figures
        power, unit = self.load.power, self.entered.unit
        self.exact_size = phasor.magnitude(power)
        self.angle = _Angle(power, figures)
        self.volts, self.hertz = figures.given(self.load.volts, "V"), figures.given(self.load.hertz, "Hz")
        if unit == "W":
            self.p = figures.given(self.entered.amount, "W")
            self.s = self.apparent(ratio(self.p.value, self.angle.factor.value))
            self.q = self.reactive(self.p.value * self.angle.tangent)
        elif unit == "var":
            self.q = figures.given(power.imag, "var")
            self.s = self.apparent(ratio(self.q.value, self.angle.sine))
            self.p = self.active()
        else:
            self.amperes = figures.given(self.entered.amount, unit)
            root = ROOT_OF_THREE if self.load.phases == 3 else 1.0
            current = root * self.volts.value * self.amperes.value
            self.s = self.apparent(current) if unit == "A" else self.amperes
            self.p = self.active()
            self.q = self.reactive(self.s.value * self.angle.sine)

    def apparent(self, value: float) -> Figure:
        """The apparent power, as it follows."""
        return self.figures.result(value, self.exact_size, "VA")

    def active(self) -> Figure:
        """The active power, from the apparent power."""
        return self.figures.result(self.s.value * self.angle.factor.value, self.load.power.real, "W")

    def reactive(self, value: float) -> Figure:
        """The reactive power, as it follows."""
        return self.figures.result(value, self.load.power.imag, "var")

    def triangle(self) -> list[Block]:
        """The powers from what was given."""
        unit, angle, factor = self.entered.unit, self.angle, self.angle.factor.number
        cos, tan, sin = (Function(name, PHI) for name in ("cos", "tan", "sin"))
        active, apparent, vars_ = (one.number for one in (self.p, self.s, self.q))
        lines: list[Formula] = [angle.line(PHI)]
        if unit == "W":
            lines += [
                row(S, "=", Fraction(P, cos), "=", Fraction(active, factor), "=", apparent),
                row(Q, "=", FormulaRow((P, tan)), "=", active, "×", angle.of("tan"), "=", vars_),
            ]
        elif unit == "var":
            lines += [
                row(S, "=", Fraction(Q, sin), "=", Fraction(vars_, angle.of("sin")), "=", apparent),
                row(P, "=", FormulaRow((S, cos)), "=", apparent, "×", factor, "=", active),
            ]
        else:
            if unit == "A":
                lines.append(self.from_current(apparent))
            lines += [
                row(P, "=", FormulaRow((S, cos)), "=", apparent, "×", factor, "=", active),
                row(Q, "=", FormulaRow((S, sin)), "=", apparent, "×", angle.of("sin"), "=", vars_),
            ]
        check = row(S, "=", Root(row(Square(P), "+", Square(Q))))
        intro = words.LEADING_TRIANGLE_INTRO if self.load.power.imag < 0 else words.TRIANGLE_INTRO
        return [Equation((*lines, check), intro)]

    def from_current(self, apparent: Number) -> Formula:
        """S = V I, on three phases times the root of three."""
        volts, amperes = self.volts.number, self.amperes.number
        if self.load.phases == 3:
            return row(
                S, "=", FormulaRow((ROOT_THREE, VOLTS, AMPS)), "=", ROOT_THREE, "×", volts, "×", amperes, "=", apparent
            )
        return row(S, "=", FormulaRow((VOLTS, AMPS)), "=", volts, "×", amperes, "=", apparent)

    def current(self, size: Figure, exact: complex, apparent: Symbol, amperes: Symbol) -> Formula:
        """The line current at so much apparent power."""
        volts, three = self.volts, self.load.phases == 3
        value = size.value / (ROOT_OF_THREE * volts.value if three else volts.value)
        result = self.figures.final(value, self.load.current(exact), "A")
        below: Formula = FormulaRow((ROOT_THREE, VOLTS)) if three else VOLTS
        filled: Formula = row(ROOT_THREE, "×", volts.number) if three else volts.number
        return row(amperes, "=", Fraction(apparent, below), "=", Fraction(size.number, filled), "=", result)

    def correction(self) -> list[Block]:
        """From the target to the capacitor, and what is left."""
        correction, figures = self.case.correction, self.figures
        if correction is None or not self.case.corrected:
            return []
        after, target = self.case.total, _Angle(self.case.total, figures)
        phi, left = Symbol("φ", "2"), Symbol("Q", "2")
        third = self.case.notation.tags["i3"][0]
        name = third if isinstance(third, Symbol) else Q
        remaining = figures.result(self.p.value * target.tangent, after.imag, "var")
        ends = [(Q, self.q), (left, remaining)]
        (first, larger), (second, less) = ends if correction.vars > 0 else ends[::-1]
        among = max(math.fabs(larger.value), math.fabs(less.value))
        taken = figures.total(larger.value - less.value, math.fabs(correction.vars), "var", among)
        lines = (
            target.line(phi),
            row(left, "=", FormulaRow((P, Function("tan", phi))), "=", self.p.number, "×", target.of("tan"), "=",
                remaining.number),
            row(name, "=", first, "−", second, "=", larger.number, "−", less.signed, "=", taken.number),
        )  # fmt: skip
        turns = self.load.power.imag > 0 > after.imag or self.load.power.imag < 0 < after.imag
        side = side_of(phasor.angle(after))
        blocks: list[Block] = [Equation(lines, words.other_side_intro(side) if turns else words.TARGET_INTRO)]
        if correction.vars > 0:
            blocks.append(Equation(self.capacitors(taken), words.CAPACITORS_INTRO[self.load.phases]))
        apparent = Symbol("S", "2")
        size = figures.result(math.hypot(self.p.value, remaining.value), phasor.magnitude(after), "VA")
        triangle = row(apparent, "=", Root(row(Square(P), "+", Square(left))), "=",
                       Root(row(Square(self.p.number), "+", Square(remaining.size.number))), "=",
                       size.number)  # fmt: skip
        current = self.current(size, after, apparent, Symbol("I", "2"))
        return [*blocks, Equation((triangle, current), words.POWERS_AFTER_INTRO)]

    def capacitors(self, taken: Figure) -> tuple[Formula, ...]:
        """Farads of one capacitor, or of each of three in delta and in star."""
        vars_ = self.case.correction.vars if self.case.correction else 0.0
        volts = Square(self.volts.number)
        lines: list[Formula] = []
        for connection in ("delta", "star") if self.load.phases == 3 else ("",):
            three: tuple[Formula, ...] = ("3", "×") if connection == "delta" else ()
            below = FormulaRow((*three, "2", PI, F, Square(VOLTS)))
            filled = FormulaRow((*three, "2", PI, "×", self.hertz.number, "×", volts))
            value = taken.value / (math.tau * self.hertz.value * self.volts.value * self.volts.value)
            value = value / 3.0 if three else value
            farads = self.figures.final(value, capacitance(self.load, vars_, connection), "F")
            general = Fraction(Symbol("Q", "C"), below)
            lines.append(row(Symbol("C", connection), "=", general, "=", Fraction(taken.number, filled), "=", farads))
        return tuple(lines)

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        current = self.current(self.s, self.load.power, S, AMPS)
        line_current = Equation((current,), words.LINE_CURRENT_INTRO)
        return (*self.triangle(), line_current, *self.correction())


def power_blocks(case: PowerCase) -> tuple[Block, ...]:
    """The triangle, the line current, the correction and its capacitors, with this load's numbers."""
    return with_enough(case.notation.mark, lambda figures: _PowerWorking(case, figures).blocks())
