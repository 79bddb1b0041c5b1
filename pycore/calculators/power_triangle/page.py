"""The page ``/power-triangle/``: P, Q, S, and the capacitor that brings the power factor to a target."""

import math
from collections.abc import Mapping
from dataclasses import replace

from pycore import phasor, quantity
from pycore.calculators.power_triangle import TOPIC, words
from pycore.calculators.power_triangle.case import PowerCase, read_power
from pycore.calculators.power_triangle.circuit import correct
from pycore.calculators.power_triangle.fields import BY_NAME, FIELDS
from pycore.forms.elements import parts, scaled
from pycore.forms.reading import LagAngle, Reader
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, outputs_on_paper, small_notices
from pycore.sums.page import summary as sum_summary
from pycore.sums.problem import read_sheet
from pycore.sums.wording import degrees_text
from pycore.words import boards
from pycore.words.phrase import Phrase, say

LEAST_RISE = 1e-9
"""A share by which the current must rise before it is said to: less is rounding."""


class PowerTriangle(SumPage[PowerCase]):
    """The page ``/power-triangle/``."""

    slug = "power-triangle"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.POWER

    def case(self, form: Mapping[str, str]) -> PowerCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        entered = read_power(reader)
        correction = correct(entered.load, entered.target, entered.side) if entered.target else None
        taken = correction.vars if correction else 0.0
        power = entered.load.power
        sizes = [power.real, math.fabs(power.imag), math.fabs(taken), phasor.magnitude(power)]
        problem = read_sheet(reader, FIELDS, [float(f"{size:.3g}") for size in sizes], "VA", computed=True)
        return PowerCase(problem, entered, correction)

    def outputs(self, case: PowerCase, plan: Plan) -> tuple[Output, ...]:
        """The capacitor first where one is needed, else apparent power; the triangle before and after."""
        load, mark = case.entered.load, case.notation.mark
        power = load.power

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, prefixed_unit = parts(value, unit, mark)
            return Output(name, value, number, prefixed_unit, label)

        size = phasor.magnitude(power)
        angle = phasor.angle(power)
        angle_text = quantity.fixed(angle, 1, mark) + "°"
        triangle = [
            output("apparent-power", size, "VA", say(words.APPARENT)),
            output("active-power", power.real, "W", say(words.ACTIVE)),
            output("reactive-power", power.imag, "var", say(words.REACTIVE)),
            Output("power-factor", power.real / size, case.factor_text(power), label=say(words.FACTOR_OUT)),
            Output("phase-angle", angle, angle_text, label=say(words.ANGLE)),
            output("line-current", load.current(power), "A", say(words.CURRENT)),
        ]
        outputs = [*self.correction_outputs(case), *triangle]
        if case.corrected:
            after = case.total
            outputs += [
                output("apparent-power-after", phasor.magnitude(after), "VA", say(words.APPARENT_AFTER)),
                Output("power-factor-after", after.real / phasor.magnitude(after), case.factor_text(after),
                       label=say(words.FACTOR_AFTER)),
                output("line-current-after", load.current(after), "A", say(words.CURRENT_AFTER)),
            ]  # fmt: skip
        return (*outputs, *outputs_on_paper(case, plan, "sum-length"))

    def correction_outputs(self, case: PowerCase) -> list[Output]:
        """The capacitor in vars and farads, or the coil."""
        if case.correction is None or not case.corrected:
            return []
        mark, taken = case.notation.mark, case.correction.vars
        number, unit = parts(math.fabs(taken), "var", mark)
        kind = words.CAPACITOR if taken > 0 else words.COIL
        label = words.CORRECTION_POWER[kind][case.entered.load.phases]
        outputs = [Output("correction", taken, number, unit, say(label), "i3")]
        for connection, farads in case.capacitances():
            name = f"capacitance-{connection}" if connection else "capacitance"
            outputs.append(Output(name, farads, *parts(farads, "F", mark), label=say(words.CAPACITY[connection])))
        return outputs

    def summary(self, case: PowerCase, plan: Plan) -> tuple[Phrase, ...]:
        """What the correction does, or the power factor; then what the drawing gives."""
        angle = phasor.angle(case.total)
        angle_text = (quantity.MINUS if round(angle, 1) < 0 else "") + degrees_text(angle, case.notation.mark)
        line = words.apparent_power_line(case.notation.tags["sum"], angle_text, case.factor_text(case.total))
        return (line, *sum_summary(case, plan)[1:])

    def remarks(self, case: PowerCase) -> tuple[Phrase, ...]:
        """What is needed and what it does, or why nothing is."""
        correction, load, mark = case.correction, case.entered.load, case.notation.mark
        remarks: list[Phrase] = list(_angle_for_factor(case.entered.lag))
        if correction is None:
            return (*remarks, words.APPARENT_POWER_CHECK)
        if correction.state != "needed":
            impossible = correction.state == "impossible"
            none = words.NO_CORRECTION_POSSIBLE if impossible else words.target_already_reached(case.target_text())
            return (*remarks, none)
        kind = words.CAPACITOR if correction.vars > 0 else words.COIL
        if correction.vars < 0:
            remarks.append(words.COIL_NEEDED)
        amount = scaled(math.fabs(correction.vars), "var", mark)
        remarks.append(words.correction_needed(kind, amount, case.reached_text(), load.phases))
        before, after = load.current(load.power), load.current(case.total)
        if after < before:
            share = quantity.fixed(100.0 * (1.0 - after / before), 0, mark) + " %"
            remarks.append(words.current_falls(scaled(before, "A", mark), scaled(after, "A", mark), share))
        elif after > before * (1.0 + LEAST_RISE):
            remarks.append(words.current_rises(scaled(before, "A", mark), scaled(after, "A", mark)))
        if correction.vars > 0 and load.phases == 3:
            remarks.append(words.STAR_AND_DELTA)
        return tuple(remarks)

    def notices(self, case: PowerCase, plan: Plan) -> tuple[Phrase, ...]:
        """What is too short to draw, crossings too flat."""
        return (*small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: PowerCase, plan: Plan) -> tuple[Working, ...]:
        """The triangle, the current, the correction and the capacitors, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.power_triangle.workings import power_blocks

        return Working("formula", say(words.CALCULATED), power_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: PowerCase) -> dict[str, Mapping[str, str]]:
        """The angle of the power factor, shown beside its field."""
        lag, mark = case.entered.lag, case.notation.mark
        text = replace(lag, factor=lag.factor or "1").echo(mark)["said"]
        return {"factor": {"said": text}}


def _angle_for_factor(lag: LagAngle) -> tuple[Phrase, ...]:
    """What a bare number above 1 was read as, where a power factor is asked for."""
    if not lag.bare or quantity.split_number(lag.bare)[0] <= 1.0:
        return ()
    return (words.read_as_angle(lag.bare.replace(",", ".")),)


PAGE = PowerTriangle()
