"""The page ``/series-circuit/``: elements in series, their voltages tip to tail on the current."""

import math
from collections.abc import Mapping

from pycore import phasor
from pycore.calculators.series_circuit import TOPIC, words
from pycore.calculators.series_circuit.case import GROUPS, SeriesCase, read_series
from pycore.calculators.series_circuit.fields import BY_NAME, FIELDS
from pycore.forms.elements import parts, scaled
from pycore.forms.reading import Reader
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.circuit import (
    almost,
    angle_outputs,
    summary_with_angle,
    times_text,
)
from pycore.sums.page import SumPage, outputs_on_paper, small_notices
from pycore.sums.problem import read_sheet
from pycore.words import boards
from pycore.words import circuits as circuit_words
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, Symbol, say


class SeriesCircuit(SumPage[SeriesCase]):
    """The page ``/series-circuit/``."""

    slug = "series-circuit"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.CIRCUITS

    def case(self, form: Mapping[str, str]) -> SeriesCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        entered, solution = read_series(reader)
        drawn = reader.choice("drawn") == "voltages"
        sizes = [phasor.magnitude(value) for value in (solution.voltages if drawn else solution.impedances)]
        unit = "V" if drawn else "Ω"
        problem = read_sheet(reader, FIELDS, [float(f"{size:.3g}") for size in sizes], unit, "A", computed=True)
        return SeriesCase(problem, entered, solution)

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """The scale in the unit of what is drawn."""
        return {"scale": sum_words.scale_label("Ω" if form.get("drawn") == "impedances" else "V")}

    def outputs(self, case: SeriesCase, plan: Plan) -> tuple[Output, ...]:
        """Current or supply (first the one not typed), impedance, angle, power factor, each voltage, resonance."""
        solution, mark = case.solution, case.notation.mark
        known = case.typed_companions

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, prefixed_unit = parts(value, unit, mark)
            drawn = name == ("supply-voltage" if case.volts_drawn else "impedance")
            return Output(name, value, number, prefixed_unit, label, "sum" if drawn else "")

        supply = phasor.magnitude(solution.supply)
        current = output("current", solution.current, "A", say(words.CURRENT))
        voltage = output("supply-voltage", supply, "V", say(words.SUPPLY_VOLTAGE))
        impedance = output("impedance", phasor.magnitude(solution.total_impedance), "Ω", say(words.IMPEDANCE))
        order = [voltage, current, impedance] if known else [current, voltage, impedance]
        if not case.volts_drawn:
            order = [impedance, current, voltage]
        outputs = [
            *order,
            *angle_outputs(solution.angle, solution.factor, mark),
            output("reactance", solution.total_impedance.imag, "Ω", say(words.REACTANCE)),
            output("active-power", solution.power.real, "W", say(words.POWER)),
        ]
        for number, (name, value) in enumerate(zip(case.names, solution.voltages, strict=True), start=1):
            outputs.append(output(f"voltage-{number}", phasor.magnitude(value), "V", (Symbol("V", name),)))
        if solution.resonance is not None:
            outputs.append(output("resonance", solution.resonance, "Hz", say(words.RESONANCE)))
        return (*outputs, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: SeriesCase, plan: Plan) -> tuple[Phrase, ...]:
        """Angle between current and supply voltage, and what the drawing gives."""
        solution = case.solution
        return summary_with_angle(super().summary(case, plan), solution.angle, solution.factor, case.notation.mark)

    def remarks(self, case: SeriesCase) -> tuple[Phrase, ...]:
        """Resonance, voltages beyond the supply, the first sanity check."""
        solution, mark = case.solution, case.notation.mark
        supply = phasor.magnitude(solution.supply)
        remarks: list[Phrase] = []
        if solution.resonance is not None:
            frequency = scaled(solution.resonance, "Hz", mark)
            near = almost(solution.resonance, case.entered.circuit.hertz, 0.002)
            remarks.append(self.at_resonance(case, frequency) if near else words.resonates(frequency))
        sizes = [phasor.magnitude(value) for value in solution.voltages]
        for name, size in zip(case.names, sizes, strict=True):
            if supply > 0 and size > 1.05 * supply:
                times = times_text(size / supply, mark)
                peak = scaled(math.sqrt(2.0) * size, "V", mark)
                remarks.append(words.voltage_above_supply((Symbol("V", name),), times, peak))
        if supply > 0 and len(case.arms) > 1:
            plain_sum = phasor.total(complex(size, 0.0) for size in sizes).real
            remarks.append(words.plain_sum_check(scaled(plain_sum, "V", mark), scaled(supply, "V", mark)))
        return tuple(remarks)

    def at_resonance(self, case: SeriesCase, frequency: str) -> Phrase:
        """What the resonant frequency does to the quantity that is not given."""
        impedance, known = case.solution.total_impedance, case.typed_companions
        if impedance.real:
            return words.at_resonance(frequency, current_known=known)
        exact = impedance == 0
        return words.at_resonance_without_resistance(frequency, current_known=known, exact=exact)

    def notices(self, case: SeriesCase, plan: Plan) -> tuple[Phrase, ...]:
        """Elements without an arrow, what is too short to draw, crossings too flat."""
        drawn = [arm.number for arm in case.arms]
        notices: list[Phrase] = []
        values = case.solution.impedances
        for sentence, nothing in ((words.zero_impedance, True), (circuit_words.too_small_to_draw, False)):
            left = [
                case.lines[number - 1]
                for number in range(1, len(values) + 1)
                if number not in drawn and (values[number - 1] == 0) == nothing
            ]
            if left:
                notices.append(sentence(", ".join(left)))
        return (*notices, *small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: SeriesCase, plan: Plan) -> tuple[Working, ...]:
        """Reactances, impedance, current and each voltage, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.series_circuit.workings import series_blocks

        return Working("formula", say(words.CALCULATED), series_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: SeriesCase) -> dict[str, Mapping[str, str]]:
        """The reactances of each field, shown beside it."""
        echoes: dict[str, Mapping[str, str]] = {}
        for name, _, kind in GROUPS[1:]:
            reactances = [
                scaled(phasor.magnitude(value), "Ω", case.notation.mark)
                for one, value in zip(case.entered.typed, case.solution.impedances, strict=True)
                if one.element.kind == kind
            ]
            echoes[name] = {"said": words.reactance_echo(", ".join(reactances)) if reactances else ""}
        return echoes

    def value_labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """What is given of a coil or a capacitor in ohms is its reactance."""
        given = {name: said for name, said in words.REACTANCES.items() if form.get(name, "").rstrip().endswith("Ω")}
        return {**self.labels(form), **given}


PAGE = SeriesCircuit()
