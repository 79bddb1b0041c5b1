"""The series circuit calculated line by line, with the problem's numbers."""

import math

from pycore import phasor
from pycore.calculators.series_circuit import words
from pycore.calculators.series_circuit.case import SeriesCase
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, elastance, inductance
from pycore.sums.answer import Block, Equation, Paragraph
from pycore.sums.circuit import AMPS, VOLTS, factor_number, side_of
from pycore.sums.circuit_formula import PI, added, hypotenuse, number, reactance_line
from pycore.sums.wording import degrees_text
from pycore.words import circuits as circuit_words
from pycore.words.answers import MORE_DIGITS
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Symbol

R, X, Z, L, C = (Symbol(letter) for letter in "RXZLC")
PHI = Symbol("φ")


class _SeriesWorking:
    """One circuit's lines."""

    def __init__(self, case: SeriesCase) -> None:
        self.case, self.solution, self.mark = case, case.solution, case.notation.mark
        self.symbols = case.element_symbols()
        self.kinds = [one.element.kind for one in case.entered.typed]

    def number(self, value: float, unit: str) -> Number:
        return number(value, unit, self.mark)

    def of_kind(self, *kinds: str) -> list[tuple[Symbol, float, int]]:
        """Symbol, size and sign of the elements of some kinds."""
        return [
            (symbol, phasor.magnitude(value), -1 if kind == CAPACITOR else 1)
            for symbol, value, kind in zip(self.symbols, self.solution.impedances, self.kinds, strict=True)
            if kind in kinds
        ]

    def reactances(self) -> list[Block]:
        """Each element's reactance from the frequency."""
        lines = [
            reactance_line(one, symbol, Symbol(one.element.kind, symbol.index[1:]), phasor.magnitude(value),
                           self.case.entered.circuit.hertz, self.mark)
            for one, symbol, value in zip(self.case.entered.typed, self.symbols, self.solution.impedances, strict=True)
            if one.element.kind != RESISTOR
        ]  # fmt: skip
        return [Equation(tuple(lines), words.REACTANCES_INTRO)] if lines else [Paragraph(words.NO_REACTANCES)]

    def sums(self) -> list[Block]:
        """Resistance and reactance of the whole circuit."""
        total = self.solution.total_impedance
        resistors, reactive = self.of_kind(RESISTOR), self.of_kind(COIL, CAPACITOR)
        lines: list[Formula] = []
        if len(resistors) > 1:
            lines.append(added(R, resistors, "Ω", total.real, self.mark))
        if reactive:
            lines.append(added(X, reactive, "Ω", total.imag, self.mark))
        blocks: list[Block] = [Equation(tuple(lines), words.SUMS_INTRO)] if lines else []
        if reactive:
            triangle = hypotenuse(Z, (R, total.real), (X, total.imag), "Ω", self.mark)
            blocks.append(Equation(triangle, words.TRIANGLE_INTRO))
        return blocks

    def ohm(self) -> list[Block]:
        """The current from the voltage, or the other way round, and each voltage."""
        size, current = phasor.magnitude(self.solution.total_impedance), self.solution.current
        supply = phasor.magnitude(self.solution.supply)
        letter = Z if any(kind != RESISTOR for kind in self.kinds) else R
        volts, amperes, ohms = self.number(supply, "V"), self.number(current, "A"), self.number(size, "Ω")
        if self.case.typed_companions:
            line = row(VOLTS, "=", FormulaRow((AMPS, letter)), "=", amperes, "×", ohms, "=", volts)
        else:
            line = row(AMPS, "=", Fraction(VOLTS, letter), "=", Fraction(volts, ohms), "=", amperes)
        each = tuple(
            row(Symbol("V", name), "=", FormulaRow((AMPS, symbol)), "=", amperes, "×",
                self.number(phasor.magnitude(value), "Ω"), "=", self.number(phasor.magnitude(value) * current, "V"))
            for name, symbol, value in zip(self.case.names, self.symbols, self.solution.impedances, strict=True)
        )  # fmt: skip
        return [Equation((line,), words.OHM_INTRO), Equation(each, words.EACH_VOLTAGE_INTRO)]

    def supply_again(self) -> list[Block]:
        """Pythagoras over the voltages."""
        current, total = self.solution.current, self.solution.total_impedance
        if len(self.case.arms) < 2:
            return []
        across, up = Symbol("V", "R"), Symbol("V", "X")
        reactive = [
            (Symbol("V", name), phasor.magnitude(value) * current, -1 if kind == CAPACITOR else 1)
            for name, value, kind in zip(self.case.names, self.solution.impedances, self.kinds, strict=True)
            if kind != RESISTOR
        ]
        if not reactive:
            return []
        lines = (
            added(up, reactive, "V", total.imag * current, self.mark),
            *hypotenuse(VOLTS, (across, total.real * current), (up, total.imag * current), "V", self.mark),
        )
        opposite = {COIL, CAPACITOR} <= set(self.kinds)
        return [Equation(lines, words.OPPOSITE_INTRO if opposite else words.SUPPLY_CHECK_INTRO)]

    def angle(self) -> list[Block]:
        """Angle, power factor and powers."""
        total, angle = self.solution.total_impedance, self.solution.angle
        if angle is None or self.solution.factor is None:
            return []
        ratio = Fraction(R, Z)
        ohms = Fraction(self.number(total.real, "Ω"), self.number(phasor.magnitude(total), "Ω"))
        factor = factor_number(self.solution.factor, angle, self.mark)
        lines: list[Formula] = [row(Function("cos", PHI), "=", ratio, "=", ohms, "=", Number(factor))]
        if total.real > 0:
            angle_text = Number(("−" if angle < 0 else "") + degrees_text(angle, self.mark))
            of = Fraction(self.number(total.imag, "Ω"), self.number(total.real, "Ω"))
            lines.append(row(PHI, "=", Function("arctan", Bracketed(Fraction(X, R))), "=",
                             Function("arctan", Bracketed(of)), "=", angle_text))  # fmt: skip
        side = side_of(angle)
        side_text = circuit_words.current_is(side) if side else ()
        blocks: list[Block] = [Equation(tuple(lines), words.ANGLE_INTRO)]
        return [*blocks, Paragraph(side_text)] if side_text else blocks

    def powers(self) -> list[Block]:
        """P, Q and S."""
        power, current = self.solution.power, self.number(self.solution.current, "A")
        total = self.solution.total_impedance
        lines = (
            row(
                Symbol("P"), "=", FormulaRow((Square(AMPS), R)), "=", Square(current), "×",
                self.number(total.real, "Ω"), "=", self.number(power.real, "W"),
            ),
            row(Symbol("Q"), "=", FormulaRow((Square(AMPS), X)), "=", self.number(power.imag, "var")),
            row(Symbol("S"), "=", FormulaRow((VOLTS, AMPS)), "=", self.number(phasor.magnitude(power), "VA")),
        )  # fmt: skip
        return [Equation(lines, words.POWERS_INTRO)]

    def resonance(self) -> list[Block]:
        """The frequency at which the reactances are equal."""
        if self.solution.resonance is None:
            return []
        circuit = self.case.entered.circuit
        henries = math.fsum(inductance(one, circuit.hertz) for one in circuit.elements if one.kind == COIL)
        farads = 1.0 / math.fsum(elastance(one, circuit.hertz) for one in circuit.elements if one.kind == CAPACITOR)
        product = row(self.number(henries, "H"), "×", self.number(farads, "F"))
        line = row(
            Symbol("f", "0"), "=", Fraction(Number("1"), FormulaRow(("2", PI, Root(FormulaRow((L, C)))))), "=",
            Fraction(Number("1"), FormulaRow(("2", PI, Root(product)))), "=",
            self.number(self.solution.resonance, "Hz"),
        )  # fmt: skip
        return [Equation((line,), words.RESONANCE_INTRO)]

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        return (
            Paragraph(MORE_DIGITS), *self.reactances(), *self.sums(), *self.ohm(), *self.supply_again(),
            *self.angle(), *self.powers(), *self.resonance(),
        )  # fmt: skip


def series_blocks(case: SeriesCase) -> tuple[Block, ...]:
    """Reactances, impedance, current, each voltage, angle, powers and resonance, with this circuit's numbers."""
    return _SeriesWorking(case).blocks()
