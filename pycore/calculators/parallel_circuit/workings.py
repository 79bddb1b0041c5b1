"""The parallel circuit calculated line by line, with the problem's numbers."""

import math

from pycore import phasor, quantity
from pycore.calculators.parallel_circuit import words
from pycore.calculators.parallel_circuit.case import ParallelCase, resistive
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, elastance, inductance
from pycore.forms.elements import TypedElement, scaled
from pycore.sums.answer import Block, Equation, Grid, Paragraph
from pycore.sums.circuit import AMPS, VOLTS, factor_number
from pycore.sums.circuit_formula import PI, F, hypotenuse, number, reactance_line
from pycore.sums.wording import degrees_text
from pycore.words.answers import MORE_DIGITS
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Phrase, Symbol

R, L, C, G, B, Y = (Symbol(letter) for letter in "RLCGBY")
PHI = Symbol("φ")


class _ParallelWorking:
    """One circuit's lines."""

    def __init__(self, case: ParallelCase) -> None:
        self.case, self.solution, self.mark = case, case.solution, case.notation.mark
        self.hertz = case.entered.circuit.hertz
        self.branches = tuple(zip(case.entered.numbers, case.entered.typed, self.solution.impedances, strict=True))

    def number(self, value: float, unit: str) -> Number:
        return number(value, unit, self.mark)

    def reactances(self) -> list[Block]:
        """Each element's reactance from the frequency."""
        lines: list[Formula] = []
        for place, branch, _ in self.branches:
            for one in branch:
                if one.element.kind != RESISTOR:
                    lines.append(self.reactance(one, str(place)))
        return [Equation(tuple(lines), words.REACTANCES_INTRO)] if lines else []

    def reactance(self, one: TypedElement, place: str) -> Formula:
        omega = math.tau * self.hertz
        size = one.element.value
        if not one.element.in_ohms:
            size = omega * size if one.element.kind == COIL else 1.0 / (omega * size)
        kind = one.element.kind
        return reactance_line(one, Symbol("X", kind + place), Symbol(kind, place), size, self.hertz, self.mark)

    def alone(self) -> list[Block]:
        """Each branch's impedance and current."""
        blocks: list[Block] = []
        for (place, branch, value), current in zip(self.branches, self.solution.currents, strict=True):
            index = str(place)
            z, size = Symbol("Z", index), phasor.magnitude(value)
            lines: list[Formula] = []
            if not resistive(branch) and value.real:
                sides = (Symbol("R", index), value.real), (Symbol("X", index), value.imag)
                lines += hypotenuse(z, *sides, "Ω", self.mark)
            else:
                lines.append(row(z, "=", self.number(size, "Ω")))
            volts, amperes = self.number(self.solution.volts, "V"), self.number(phasor.magnitude(current), "A")
            lines.append(row(Symbol("I", index), "=", Fraction(VOLTS, z), "=",
                             Fraction(volts, self.number(size, "Ω")), "=", amperes))  # fmt: skip
            blocks.append(Equation(tuple(lines), words.one_branch(index)))
        return blocks

    def table(self) -> Grid:
        """All branches with the two parts of their currents."""
        rows: list[tuple[Phrase, ...]] = []
        for (place, _, value), current in zip(self.branches, self.solution.currents, strict=True):
            cells = (
                str(place), scaled(value.real, "Ω", self.mark), scaled(value.imag, "Ω", self.mark),
                scaled(phasor.magnitude(value), "Ω", self.mark), scaled(phasor.magnitude(current), "A", self.mark),
                quantity.fixed(phasor.angle(value), 1, self.mark) + "°", scaled(current.real, "A", self.mark),
                scaled(0.0 - current.imag, "A", self.mark),
            )  # fmt: skip
            rows.append(tuple((cell,) for cell in cells))
        supply_current = self.solution.current
        sums = [scaled(part, "A", self.mark) for part in (supply_current.real, 0.0 - supply_current.imag)]
        last = ("sum", "", "", "", "", "", *sums)
        return Grid(tuple((head,) for head in words.HEAD), (*rows, tuple((cell,) for cell in last)), total=True)

    def sums(self) -> list[Block]:
        """Table, and Pythagoras over its sums."""
        supply_current = self.solution.current
        along, across = Symbol("I", "a"), Symbol("I", "r")
        lines = hypotenuse(AMPS, (along, supply_current.real), (across, supply_current.imag), "A", self.mark)
        return [Paragraph(words.TABLE_INTRO), self.table(), Equation(lines, words.SUMS_INTRO)]

    def admittance(self) -> list[Block]:
        """Conductances and susceptances."""
        lines: list[Formula] = []
        for (place, _, value), one in zip(self.branches, self.solution.admittances, strict=True):
            index = str(place)
            square = Square(self.number(phasor.magnitude(value), "Ω"))
            reactance = self.number(value.imag, "Ω")
            for letter, over, minus, ohms, siemens in (
                ("G", "R", (), self.number(value.real, "Ω"), one.real),
                ("B", "X", ("−",), Bracketed(reactance) if value.imag < 0 else reactance, one.imag),
            ):
                general = row(*minus, Fraction(Symbol(over, index), Square(Symbol("Z", index))))
                filled = row(*minus, Fraction(ohms, square))
                lines.append(row(Symbol(letter, index), "=", general, "=", filled, "=", self.number(siemens, "S")))
        total, size = self.solution.total_admittance, phasor.magnitude(self.solution.total_admittance)
        lines += hypotenuse(Y, (G, total.real), (B, total.imag), "S", self.mark)
        current = self.number(phasor.magnitude(self.solution.current), "A")
        volts = self.number(self.solution.volts, "V")
        admittance = self.number(size, "S")
        if self.case.typed_companions:
            lines.append(row(AMPS, "=", FormulaRow((VOLTS, Y)), "=", volts, "×", admittance, "=", current))
        elif size:
            lines.append(row(VOLTS, "=", Fraction(AMPS, Y), "=", Fraction(current, admittance), "=", volts))
        return [Equation(tuple(lines), words.ADMITTANCE_INTRO)]

    def powers(self) -> list[Block]:
        """Power factor, P, Q, S."""
        solution, power = self.solution, self.solution.power
        if solution.angle is None or solution.factor is None:
            return []
        factor = Number(factor_number(solution.factor, solution.angle, self.mark))
        angle = Number(("−" if solution.angle < 0 else "") + degrees_text(solution.angle, self.mark))
        lines = (
            row(Function("cos", PHI), "=", Fraction(Symbol("I", "a"), AMPS), "=", factor),
            row(PHI, "=", angle),
            row(Symbol("P"), "=", FormulaRow((VOLTS, Symbol("I", "a"))), "=", self.number(power.real, "W")),
            row(Symbol("Q"), "=", FormulaRow((VOLTS, Symbol("I", "r"))), "=", self.number(power.imag, "var")),
            row(Symbol("S"), "=", FormulaRow((VOLTS, AMPS)), "=", self.number(phasor.magnitude(power), "VA")),
        )
        return [Equation(lines, words.ANGLE_INTRO)]

    def resonance(self) -> list[Block]:
        """The formula of a coil and a capacitor, or every resonance that was found numerically."""
        resonances, classic = self.solution.resonances, self.coil_and_capacitor()
        if not resonances:
            return []
        if classic is not None:
            intro = words.RESONANCE_INTRO if classic[0] else words.LOSSLESS_RESONANCE_INTRO
            return [Equation(self.classic_resonance(*classic, resonances[0].hertz), intro)]
        indexes = [f"0,{number}" for number in range(1, len(resonances) + 1)] if len(resonances) > 1 else ["0"]
        lines = [
            row(Symbol(F.letter, index), "=", self.number(one.hertz, "Hz"))
            for index, one in zip(indexes, resonances, strict=True)
        ]
        return [Equation(tuple(lines), words.NUMERICAL_RESONANCE_INTRO)]

    def classic_resonance(self, ohms: float, henries: float, farads: float, hertz: float) -> tuple[Formula, ...]:
        """Resonance of a coil with resistance and a capacitor: frequency, and impedance if nothing else is there."""
        general = row(Fraction(Number("1"), FormulaRow((L, C))), "−", Fraction(Square(R), Square(L)))
        coil, capacitor = self.number(henries, "H"), self.number(farads, "F")
        lines: list[Formula] = [
            row(Symbol(F.letter, "0"), "=", Fraction(Number("1"), FormulaRow(("2", PI))), Root(general), "=",
                self.number(hertz, "Hz")),
        ]  # fmt: skip
        if ohms and len(self.branches) == 2:
            filled = Fraction(coil, row(capacitor, "×", self.number(ohms, "Ω")))
            result = self.number(henries / (farads * ohms), "Ω")
            lines.append(row(Symbol("Z", "0"), "=", Fraction(L, FormulaRow((C, R))), "=", filled, "=", result))
        return tuple(lines)

    def coil_and_capacitor(self) -> tuple[float, float, float] | None:
        """Ohms, henries and farads where there are just a coil with its resistance and a capacitor."""
        kinds = ["".join(sorted({one.element.kind for one in branch})) for _, branch, _ in self.branches]
        if sorted(kind for kind in kinds if kind != "R") not in (["C", "L"], ["C", "LR"]):
            return None
        elements = [one.element for _, branch, _ in self.branches if not resistive(branch) for one in branch]
        ohms = math.fsum(one.value for one in elements if one.kind == RESISTOR)
        henries = math.fsum(inductance(one, self.hertz) for one in elements if one.kind == COIL)
        per_farad = math.fsum(elastance(one, self.hertz) for one in elements if one.kind == CAPACITOR)
        return ohms, henries, 1.0 / per_farad

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        first = [] if self.case.typed_companions else [Paragraph(words.VOLTAGE_INTRO)]
        return (
            Paragraph(MORE_DIGITS), *self.reactances(), *first, *self.alone(), *self.sums(), *self.admittance(),
            *self.powers(), *self.resonance(),
        )  # fmt: skip


def parallel_blocks(case: ParallelCase) -> tuple[Block, ...]:
    """Branches, sums, admittance, powers and resonance, with this circuit's numbers."""
    return _ParallelWorking(case).blocks()
