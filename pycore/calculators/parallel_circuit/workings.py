"""The parallel circuit calculated line by line, with the problem's numbers."""

import math

from pycore import phasor, trig
from pycore.calculators.parallel_circuit import words
from pycore.calculators.parallel_circuit.case import ParallelCase, resistive
from pycore.calculators.parallel_circuit.lines import BranchLines
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, elastance, inductance
from pycore.sums.answer import Block, Equation, Grid, Paragraph
from pycore.sums.circuit import AMPS, VOLTS, factor_number
from pycore.sums.circuit_formula import PI, F, hypotenuse, reactance_line
from pycore.sums.figures import Figure, Figures, ratio, with_enough
from pycore.sums.wording import degrees_text
from pycore.words.formula import Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Phrase, Symbol

R, L, C, G, B, Y = (Symbol(letter) for letter in "RLCGBY")
PHI = Symbol("φ")


class _ParallelWorking:
    """One circuit's lines, and the numbers that they print."""

    def __init__(self, case: ParallelCase, figures: Figures) -> None:
        self.case, self.solution, self.figures, self.mark = case, case.solution, figures, case.notation.mark
        self.hertz = case.entered.circuit.hertz
        self.branches = tuple(
            BranchLines(place, branch, value, admittance, self.hertz, figures)
            for place, branch, value, admittance in zip(
                case.entered.numbers, case.entered.typed, self.solution.impedances, self.solution.admittances,
                strict=True,
            )
        )  # fmt: skip
        total = self.solution.total_admittance
        among = max(phasor.magnitude(value) for value in self.solution.admittances)
        self.g = figures.total(math.fsum(one.g.value for one in self.branches), total.real, "S", among)
        self.b = figures.total(math.fsum(one.b.value for one in self.branches), total.imag, "S", among)
        self.y = figures.result(math.hypot(self.g.value, self.b.value), phasor.magnitude(total), "S")
        self.volts, self.amperes = self._volts_and_amperes()
        for branch, current in zip(self.branches, self.solution.currents, strict=True):
            branch.take(self.volts, current)
        current, self.among = self.solution.current, max(one.current.value for one in self.branches)
        along, across = (math.fsum(values) for values in (
            [one.along.value for one in self.branches], [one.across.value for one in self.branches],
        ))  # fmt: skip
        self.along = figures.total(along, current.real, "A", self.among)
        self.across = figures.total(across, 0.0 - current.imag, "A", self.among)

    def _volts_and_amperes(self) -> tuple[Figure, Figure]:
        """Voltage and supply current: the one that is given, and the other one by the admittance."""
        volts, amperes = self.solution.volts, phasor.magnitude(self.solution.current)
        if self.case.typed_companions:
            given = self.figures.given(volts, "V")
            return given, self.figures.result(given.value * self.y.value, amperes, "A")
        given = self.figures.given(amperes, "A")
        return self.figures.result(ratio(given.value, self.y.value), volts, "V"), given

    def reactances(self) -> list[Block]:
        """Each element's reactance from the frequency."""
        lines: list[Formula] = []
        for branch in self.branches:
            for one, size in zip(branch.typed, branch.sizes, strict=True):
                kind, place = one.element.kind, branch.index
                if kind != RESISTOR:
                    symbols = Symbol("X", kind + place), Symbol(kind, place)
                    lines.append(reactance_line(one, *symbols, size, self.hertz, self.figures))
        return [Equation(tuple(lines), words.REACTANCES_INTRO)] if lines else []

    def alone(self) -> list[Block]:
        """Each branch's impedance and current."""
        blocks: list[Block] = []
        for branch in self.branches:
            z = Symbol("Z", branch.index)
            lines: list[Formula] = []
            if not resistive(branch.typed) and branch.impedance.real:
                sides = (Symbol("R", branch.index), branch.r), (Symbol("X", branch.index), branch.x)
                lines += hypotenuse(z, *sides, branch.z.number)
            else:
                lines.append(row(z, "=", branch.z.number))
            lines.append(row(Symbol("I", branch.index), "=", Fraction(VOLTS, z), "=",
                             Fraction(self.volts.number, branch.z.number), "=", branch.current.number))  # fmt: skip
            blocks.append(Equation(tuple(lines), words.one_branch(branch.index)))
        return blocks

    def table(self) -> Grid:
        """All branches with the two parts of their currents."""
        rows: list[tuple[Phrase, ...]] = []
        for branch in self.branches:
            figures = (branch.r, branch.x, branch.z, branch.current, branch.phi, branch.along, branch.across)
            rows.append(((branch.index,), *((one.text,) for one in figures)))
        last = ("sum", "", "", "", "", "", self.along.text, self.across.text)
        return Grid(tuple((head,) for head in words.HEAD), (*rows, tuple((cell,) for cell in last)), total=True)

    def sums(self) -> list[Block]:
        """Table, and Pythagoras over its sums."""
        size = math.hypot(self.along.value, self.across.value)
        result = self.figures.final(size, phasor.magnitude(self.solution.current), "A")
        lines = hypotenuse(AMPS, (Symbol("I", "a"), self.along), (Symbol("I", "r"), self.across), result)
        return [Paragraph(words.TABLE_INTRO), self.table(), Equation(lines, words.SUMS_INTRO)]

    def admittance(self) -> list[Block]:
        """Conductances and susceptances."""
        lines: list[Formula] = []
        for branch in self.branches:
            square = Square(branch.z.number)
            for letter, over, minus, ohms, siemens in (
                ("G", "R", (), branch.r.number, branch.g), ("B", "X", ("−",), branch.x.signed, branch.b),
            ):  # fmt: skip
                general = row(*minus, Fraction(Symbol(over, branch.index), Square(Symbol("Z", branch.index))))
                filled = row(*minus, Fraction(ohms, square))
                lines.append(row(Symbol(letter, branch.index), "=", general, "=", filled, "=", siemens.number))
        if len(self.branches) > 1:
            for symbol, parts, total in ((G, [one.g for one in self.branches], self.g),
                                         (B, [one.b for one in self.branches], self.b)):  # fmt: skip
                added: list[Formula] = []
                for one in parts:
                    added += ["+", one.signed] if added else [one.number]
                lines.append(row(symbol, "=", *added, "=", total.number))
        lines += hypotenuse(Y, (G, self.g), (B, self.b), self.y.number)
        if self.case.typed_companions:
            lines.append(row(AMPS, "=", FormulaRow((VOLTS, Y)), "=", self.volts.number, "×", self.y.number, "=",
                             self.amperes.number))  # fmt: skip
        elif self.y.value:
            lines.append(row(VOLTS, "=", Fraction(AMPS, Y), "=", Fraction(self.amperes.number, self.y.number), "=",
                             self.volts.number))  # fmt: skip
        return [Equation(tuple(lines), words.ADMITTANCE_INTRO)]

    def powers(self) -> list[Block]:
        """Power factor, P, Q, S."""
        solution, power, figures = self.solution, self.solution.power, self.figures
        if solution.angle is None or solution.factor is None or self.amperes.value == 0:
            return []
        angle, along, across, amperes = solution.angle, self.along, self.across, self.amperes
        texts = [factor_number(one, angle, self.mark) for one in (along.value / amperes.value, solution.factor)]
        turns = [
            ("−" if one < 0 else "") + degrees_text(one, self.mark)
            for one in (trig.angle_of(along.value, across.value), angle)
        ]
        filled = Fraction(along.number, amperes.number)
        lines: list[Formula] = [
            row(Function("cos", PHI), "=", Fraction(Symbol("I", "a"), AMPS), "=", filled, "=", figures.text(*texts)),
            row(PHI, "=", figures.text(*turns)),
        ]
        for letter, by, one, exact, unit in (
            ("P", Symbol("I", "a"), along, power.real, "W"), ("Q", Symbol("I", "r"), across, power.imag, "var"),
            ("S", AMPS, amperes, phasor.magnitude(power), "VA"),
        ):  # fmt: skip
            result = figures.final(self.volts.value * one.value, exact, unit, self.volts.value * self.among)
            lines.append(row(Symbol(letter), "=", FormulaRow((VOLTS, by)), "=", self.volts.number, "×", one.signed, "=",
                             result))  # fmt: skip
        return [Equation(tuple(lines), words.ANGLE_INTRO)]

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
            row(Symbol(F.letter, index), "=", self.figures.final(one.hertz, one.hertz, "Hz"))
            for index, one in zip(indexes, resonances, strict=True)
        ]
        return [Equation(tuple(lines), words.NUMERICAL_RESONANCE_INTRO)]

    def classic_resonance(self, ohms: float, henries: float, farads: float, hertz: float) -> tuple[Formula, ...]:
        """Resonance of a coil with resistance and a capacitor: frequency, and impedance if nothing else is there."""
        figures, one, two_pi = self.figures, Number("1"), FormulaRow(("2", PI))
        under = row(Fraction(one, FormulaRow((L, C))), "−", Fraction(Square(R), Square(L)))
        with_loss, without = FormulaRow((Fraction(one, two_pi), Root(under))), Root(FormulaRow((L, C)))
        general = with_loss if ohms else Fraction(one, FormulaRow(("2", PI, without)))
        lines: list[Formula] = [
            row(Symbol(F.letter, "0"), "=", general, "=", figures.final(hertz, hertz, "Hz")),
        ]
        if ohms and len(self.branches) == 2:
            coil, capacitor = figures.result(henries, henries, "H"), figures.result(farads, farads, "F")
            resistance = figures.result(ohms, ohms, "Ω")
            filled = Fraction(coil.number, row(capacitor.number, "×", resistance.number))
            result = figures.final(coil.value / (capacitor.value * resistance.value), henries / (farads * ohms), "Ω")
            lines.append(row(Symbol("Z", "0"), "=", Fraction(L, FormulaRow((C, R))), "=", filled, "=", result))
        return tuple(lines)

    def coil_and_capacitor(self) -> tuple[float, float, float] | None:
        """Ohms, henries and farads where there are just a coil with its resistance and a capacitor."""
        typed = self.case.entered.typed
        kinds = ["".join(sorted({one.element.kind for one in branch})) for branch in typed]
        if sorted(kind for kind in kinds if kind != "R") not in (["C", "L"], ["C", "LR"]):
            return None
        elements = [one.element for branch in typed if not resistive(branch) for one in branch]
        ohms = math.fsum(one.value for one in elements if one.kind == RESISTOR)
        henries = math.fsum(inductance(one, self.hertz) for one in elements if one.kind == COIL)
        per_farad = math.fsum(elastance(one, self.hertz) for one in elements if one.kind == CAPACITOR)
        return ohms, henries, 1.0 / per_farad

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        first = [] if self.case.typed_companions else [Paragraph(words.VOLTAGE_INTRO)]
        return (
            *self.reactances(), *first, *self.alone(), *self.sums(), *self.admittance(), *self.powers(),
            *self.resonance(),
        )  # fmt: skip


def parallel_blocks(case: ParallelCase) -> tuple[Block, ...]:
    """Branches, sums, admittance, powers and resonance, with this circuit's numbers."""
    return with_enough(case.notation.mark, lambda figures: _ParallelWorking(case, figures).blocks())
