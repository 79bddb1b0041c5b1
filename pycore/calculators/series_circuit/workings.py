"""The series circuit calculated line by line, with the problem's numbers."""

import math

from pycore import phasor, trig
from pycore.calculators.series_circuit import words
from pycore.calculators.series_circuit.case import SeriesCase
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, elastance, inductance
from pycore.sums.answer import Block, Equation, Paragraph
from pycore.sums.circuit import AMPS, VOLTS, factor_number, side_of
from pycore.sums.circuit_formula import PI, Term, added, hypotenuse, reactance, reactance_line, sum_of
from pycore.sums.figures import Figure, Figures, ratio, with_enough
from pycore.sums.wording import degrees_text
from pycore.words import circuits as circuit_words
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Symbol

R, X, Z, L, C = (Symbol(letter) for letter in "RXZLC")
PHI = Symbol("φ")


class _SeriesWorking:
    """One circuit's lines, and the numbers that they print."""

    def __init__(self, case: SeriesCase, figures: Figures) -> None:
        self.case, self.solution, self.figures, self.mark = case, case.solution, figures, case.notation.mark
        self.symbols = case.element_symbols()
        self.kinds = [one.element.kind for one in case.entered.typed]
        self.hertz = case.entered.circuit.hertz
        total = self.solution.total_impedance
        self.ohms = [
            reactance(one, phasor.magnitude(value), self.hertz, figures)
            for one, value in zip(case.entered.typed, self.solution.impedances, strict=True)
        ]
        resistors, reactive = self.of_kind(RESISTOR), self.of_kind(COIL, CAPACITOR)
        self.resistance = figures.result(sum_of(resistors), total.real, "Ω")
        if len(resistors) == 1:
            self.resistance = resistors[0][1]
        self.among = max(one.value for one in self.ohms)
        self.reactance = figures.total(sum_of(reactive), total.imag, "Ω", self.among)
        size = math.hypot(self.resistance.value, self.reactance.value)
        self.impedance = figures.result(size, phasor.magnitude(total), "Ω") if reactive else self.resistance
        self.current, self.supply = self._current_and_supply()
        self.voltages = [
            figures.result(self.current.value * one.value, phasor.magnitude(value) * self.solution.current, "V")
            for one, value in zip(self.ohms, self.solution.impedances, strict=True)
        ]

    def _current_and_supply(self) -> tuple[Figure, Figure]:
        """The one that is given, and the other one from it."""
        volts, amperes, ohms = phasor.magnitude(self.solution.supply), self.solution.current, self.impedance.value
        if self.case.typed_companions:
            current = self.figures.given(amperes, "A")
            return current, self.figures.result(current.value * ohms, volts, "V")
        supply = self.figures.given(volts, "V")
        return self.figures.result(ratio(supply.value, ohms), amperes, "A"), supply

    def of_kind(self, *kinds: str) -> list[Term]:
        """Symbol, size and sign of the elements of some kinds."""
        return [
            (symbol, one, -1 if kind == CAPACITOR else 1)
            for symbol, one, kind in zip(self.symbols, self.ohms, self.kinds, strict=True)
            if kind in kinds
        ]

    def reactances(self) -> list[Block]:
        """Each element's reactance from the frequency."""
        lines = [
            reactance_line(one, symbol, Symbol(one.element.kind, symbol.index[1:]), size, self.hertz, self.figures)
            for one, symbol, size in zip(self.case.entered.typed, self.symbols, self.ohms, strict=True)
            if one.element.kind != RESISTOR
        ]
        return [Equation(tuple(lines), words.REACTANCES_INTRO)] if lines else [Paragraph(words.NO_REACTANCES)]

    def sums(self) -> list[Block]:
        """Resistance and reactance of the whole circuit."""
        resistors, reactive = self.of_kind(RESISTOR), self.of_kind(COIL, CAPACITOR)
        lines: list[Formula] = []
        if len(resistors) > 1:
            lines.append(added(R, resistors, self.resistance))
        if reactive:
            lines.append(added(X, reactive, self.reactance))
        blocks: list[Block] = [Equation(tuple(lines), words.SUMS_INTRO)] if lines else []
        if reactive:
            triangle = hypotenuse(Z, (R, self.resistance), (X, self.reactance), self.impedance.number)
            blocks.append(Equation(triangle, words.TRIANGLE_INTRO))
        return blocks

    def ohm(self) -> list[Block]:
        """The current from the voltage, or the other way round, and each voltage."""
        letter = Z if any(kind != RESISTOR for kind in self.kinds) else R
        volts, amperes, ohms = self.supply.number, self.current.number, self.impedance.number
        if self.case.typed_companions:
            line = row(VOLTS, "=", FormulaRow((AMPS, letter)), "=", amperes, "×", ohms, "=", volts)
        else:
            line = row(AMPS, "=", Fraction(VOLTS, letter), "=", Fraction(volts, ohms), "=", amperes)
        each = tuple(
            row(Symbol("V", name), "=", FormulaRow((AMPS, symbol)), "=", amperes, "×", size.number, "=", voltage.number)
            for name, symbol, size, voltage in zip(self.case.names, self.symbols, self.ohms, self.voltages, strict=True)
        )
        return [Equation((line,), words.OHM_INTRO), Equation(each, words.EACH_VOLTAGE_INTRO)]

    def supply_again(self) -> list[Block]:
        """Pythagoras over the voltages."""
        current, total, figures = self.solution.current, self.solution.total_impedance, self.figures
        if len(self.case.arms) < 2:
            return []
        across, up = Symbol("V", "R"), Symbol("V", "X")
        each: list[Term] = [
            (Symbol("V", name), voltage, -1 if kind == CAPACITOR else 1)
            for name, voltage, kind in zip(self.case.names, self.voltages, self.kinds, strict=True)
        ]
        reactive = [one for one, kind in zip(each, self.kinds, strict=True) if kind != RESISTOR]
        resistive = [one for one, kind in zip(each, self.kinds, strict=True) if kind == RESISTOR]
        if not reactive:
            return []
        upward = figures.total(sum_of(reactive), total.imag * current, "V", self.among * current)
        along = figures.total(sum_of(resistive), total.real * current, "V", self.among * current)
        supply = figures.final(math.hypot(along.value, upward.value), phasor.magnitude(self.solution.supply), "V")
        lines = [added(up, reactive, upward), *hypotenuse(VOLTS, (across, along), (up, upward), supply)]
        if len(resistive) > 1:
            lines.insert(0, added(across, resistive, along))
        opposite = {COIL, CAPACITOR} <= set(self.kinds)
        return [Equation(tuple(lines), words.OPPOSITE_INTRO if opposite else words.SUPPLY_CHECK_INTRO)]

    def angle(self) -> list[Block]:
        """Angle, power factor and powers."""
        angle, factor = self.solution.angle, self.solution.factor
        if angle is None or factor is None or self.impedance.value == 0:
            return []
        ratio = self.resistance.value / self.impedance.value
        factors = [factor_number(one, angle, self.mark) for one in (ratio, factor)]
        filled = Fraction(self.resistance.number, self.impedance.number)
        lines: list[Formula] = [
            row(Function("cos", PHI), "=", Fraction(R, Z), "=", filled, "=", self.figures.text(*factors)),
        ]
        if self.resistance.value > 0:
            slope = trig.angle_of(self.resistance.value, self.reactance.value)
            texts = [("−" if one < 0 else "") + degrees_text(one, self.mark) for one in (slope, angle)]
            of = Fraction(self.reactance.number, self.resistance.number)
            lines.append(row(PHI, "=", Function("arctan", Bracketed(Fraction(X, R))), "=",
                             Function("arctan", Bracketed(of)), "=", self.figures.text(*texts)))  # fmt: skip
        side = side_of(angle)
        side_text = circuit_words.current_is(side) if side else ()
        blocks: list[Block] = [Equation(tuple(lines), words.ANGLE_INTRO)]
        return [*blocks, Paragraph(side_text)] if side_text else blocks

    def powers(self) -> list[Block]:
        """P, Q and S."""
        power, current = self.solution.power, self.current
        square = current.value * current.value
        lines: list[Formula] = []
        for letter, by, ohms, exact, unit in (
            ("P", R, self.resistance, power.real, "W"), ("Q", X, self.reactance, power.imag, "var"),
        ):  # fmt: skip
            result = self.figures.final(square * ohms.value, exact, unit, square * self.among)
            lines.append(row(Symbol(letter), "=", FormulaRow((Square(AMPS), by)), "=", Square(current.number), "×",
                             ohms.signed, "=", result))  # fmt: skip
        apparent = self.figures.final(self.supply.value * current.value, phasor.magnitude(power), "VA")
        lines.append(row(Symbol("S"), "=", FormulaRow((VOLTS, AMPS)), "=", self.supply.number, "×", current.number, "=",
                         apparent))  # fmt: skip
        return [Equation(tuple(lines), words.POWERS_INTRO)]

    def resonance(self) -> list[Block]:
        """The frequency at which the reactances are equal."""
        if self.solution.resonance is None:
            return []
        elements = self.case.entered.circuit.elements
        exact = math.fsum(inductance(one, self.hertz) for one in elements if one.kind == COIL)
        henries = self.figures.result(exact, exact, "H")
        exact = 1.0 / math.fsum(elastance(one, self.hertz) for one in elements if one.kind == CAPACITOR)
        farads = self.figures.result(exact, exact, "F")
        hertz = 1.0 / (math.tau * math.sqrt(henries.value * farads.value))
        line = row(
            Symbol("f", "0"), "=", Fraction(Number("1"), FormulaRow(("2", PI, Root(FormulaRow((L, C)))))), "=",
            Fraction(Number("1"), FormulaRow(("2", PI, Root(row(henries.number, "×", farads.number))))), "=",
            self.figures.final(hertz, self.solution.resonance, "Hz"),
        )  # fmt: skip
        return [Equation((line,), words.RESONANCE_INTRO)]

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        return (
            *self.reactances(), *self.sums(), *self.ohm(), *self.supply_again(), *self.angle(), *self.powers(),
            *self.resonance(),
        )  # fmt: skip


def series_blocks(case: SeriesCase) -> tuple[Block, ...]:
    """Reactances, impedance, current, each voltage, angle, powers and resonance, with this circuit's numbers."""
    return with_enough(case.notation.mark, lambda figures: _SeriesWorking(case, figures).blocks())
