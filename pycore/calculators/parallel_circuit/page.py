"""The page ``/parallel-circuit/``: branches in parallel, their currents tip to tail on the common voltage."""

from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.parallel_circuit import TOPIC, words
from pycore.calculators.parallel_circuit.case import ParallelCase, read_parallel
from pycore.calculators.parallel_circuit.circuit import Resonance, branch_impedance, resistance_prevents
from pycore.calculators.parallel_circuit.fields import BY_NAME, FIELDS
from pycore.circuits.resonance import series_resonance
from pycore.forms.elements import parts, scaled
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.circuit import (
    angle_outputs,
    summary_with_angle,
    times_text,
)
from pycore.sums.page import SumPage, outputs_on_paper, small_notices
from pycore.sums.problem import read_sheet
from pycore.words import boards
from pycore.words import circuits as circuit_words
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, say

LOSSLESS = 1e12
"""An impedance in ohms at resonance from which nothing but rounding limits it."""


def resonance_texts(resonance: Resonance, mark: str) -> tuple[str, str]:
    """Frequency and impedance of a resonance with their units; "" for an impedance without limit."""
    ohms = scaled(resonance.ohms, "Ω", mark) if resonance.ohms < LOSSLESS else ""
    return scaled(resonance.hertz, "Hz", mark), ohms


class ParallelCircuit(SumPage[ParallelCase]):
    """The page ``/parallel-circuit/``."""

    slug = "parallel-circuit"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.CIRCUITS

    def case(self, form: Mapping[str, str]) -> ParallelCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        entered, solution = read_parallel(reader)
        sizes = [float(f"{phasor.magnitude(value):.3g}") for value in solution.currents]
        return ParallelCase(read_sheet(reader, FIELDS, sizes, "A", "V", computed=True), entered, solution)

    def outputs(self, case: ParallelCase, plan: Plan) -> tuple[Output, ...]:
        """Supply current or voltage (first the one not typed), admittance, power factor, each current, resonance."""
        solution, mark = case.solution, case.notation.mark

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, prefixed_unit = parts(value, unit, mark)
            return Output(name, value, number, prefixed_unit, label, "sum" if name == "current" else "")

        size = phasor.magnitude(solution.total_admittance)
        current = output("current", phasor.magnitude(solution.current), "A", say(words.CURRENT))
        voltage = output("supply-voltage", solution.volts, "V", say(words.VOLTAGE))
        outputs = [
            *((current, voltage) if case.typed_companions else (voltage, current)),
            output("admittance", size, "S", say(words.ADMITTANCE)),
            *((output("impedance", 1.0 / size, "Ω", say(words.IMPEDANCE)),) if size else ()),
            *angle_outputs(solution.angle, solution.factor, mark),
            output("active-power", solution.power.real, "W", say(words.POWER)),
        ]
        for number, value in zip(case.entered.numbers, solution.currents, strict=True):
            outputs.append(output(f"current-{number}", phasor.magnitude(value), "A", case.notation.tags[f"i{number}"]))
        if solution.resonance is not None:
            label = words.NEAREST_RESONANCE if len(solution.resonances) > 1 else words.RESONANCE
            outputs.append(output("resonance", solution.resonance.hertz, "Hz", say(label)))
            if solution.resonance.ohms < LOSSLESS:
                outputs.append(output("dynamic-impedance", solution.resonance.ohms, "Ω", say(words.DYNAMIC)))
        return (*outputs, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: ParallelCase, plan: Plan) -> tuple[Phrase, ...]:
        """Angle between supply current and voltage, and what the drawing gives."""
        solution = case.solution
        return summary_with_angle(super().summary(case, plan), solution.angle, solution.factor, case.notation.mark)

    def remarks(self, case: ParallelCase) -> tuple[Phrase, ...]:
        """Resonance, currents beyond the supply's, the first sanity check."""
        solution, mark = case.solution, case.notation.mark
        supply_current = phasor.magnitude(solution.current)
        remarks: list[Phrase] = []
        if solution.resonance is not None:
            frequency, ohms = resonance_texts(solution.resonance, mark)
            remarks.append(words.resonates(frequency, ohms) if ohms else words.resonates_without_loss(frequency))
            if len(solution.resonances) > 1:
                listed = [words.resonance_text(*resonance_texts(one, mark)) for one in solution.resonances]
                remarks.append(words.several_resonances(", ".join(listed), frequency))
        elif resistance_prevents(solution.circuit.branches, solution.circuit.hertz):
            remarks.append(words.RESISTANCE_TOO_LARGE)
        remarks += self.resonances_of_branches(case)
        sizes = [phasor.magnitude(value) for value in solution.currents]
        for number, size in zip(case.entered.numbers, sizes, strict=True):
            if supply_current > 0 and size > 1.05 * supply_current:
                times = times_text(size / supply_current, mark)
                remarks.append(words.branch_above_supply(case.notation.tags[f"i{number}"], times))
        if supply_current > 0 and len(case.arms) > 1:
            plain_sum = phasor.total(complex(size, 0.0) for size in sizes).real
            remarks.append(words.plain_sum_check(scaled(plain_sum, "A", mark), scaled(supply_current, "A", mark)))
        return tuple(remarks)

    def resonances_of_branches(self, case: ParallelCase) -> list[Phrase]:
        """Each branch whose own coil and capacitor cancel at a frequency that is no resonance of the whole."""
        solution, mark = case.solution, case.notation.mark
        said = {scaled(one.hertz, "Hz", mark) for one in solution.resonances}
        remarks = []
        for number, branch in zip(case.entered.numbers, solution.circuit.branches, strict=True):
            hertz = series_resonance(branch, solution.circuit.hertz)
            if hertz is None or scaled(hertz, "Hz", mark) in said:
                continue
            resistance = branch_impedance(branch, hertz, solution.circuit.hertz).real
            ohms = scaled(resistance, "Ω", mark) if resistance else ""
            remarks.append(words.branch_resonates(str(number), scaled(hertz, "Hz", mark), ohms))
        return remarks

    def notices(self, case: ParallelCase, plan: Plan) -> tuple[Phrase, ...]:
        """Currents too small for an arrow, crossings too flat."""
        drawn = [arm.number for arm in case.arms]
        left = [case.lines[number - 1] for number in case.entered.numbers if number not in drawn]
        notices = [circuit_words.too_small_to_draw(", ".join(left))] if left else []
        return (*notices, *small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: ParallelCase, plan: Plan) -> tuple[Working, ...]:
        """Each branch, the components of its current, their sums; admittance, powers, resonance, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.parallel_circuit.workings import parallel_blocks

        return Working("formula", say(words.CALCULATED), parallel_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: ParallelCase) -> dict[str, Mapping[str, str]]:
        """The impedance of each branch, shown beside its field."""
        echoes: dict[str, Mapping[str, str]] = {}
        mark = case.notation.mark
        for number, value in zip(case.entered.numbers, case.solution.impedances, strict=True):
            size = scaled(phasor.magnitude(value), "Ω", mark)
            angle = quantity.fixed(phasor.angle(value), 1, mark) + "°"
            text = sum_words.at_angle(size, angle)
            echoes[f"b{number}"] = {"said": f"Z{NO_BREAK_SPACE}={NO_BREAK_SPACE}{text}"}
        return echoes


PAGE = ParallelCircuit()
