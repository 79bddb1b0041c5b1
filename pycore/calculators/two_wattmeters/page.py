"""The page ``/two-wattmeters/``: both readings, power, reactive power and angle of a load on three wires."""

from collections.abc import Mapping

from pycore.calculators.two_wattmeters import TOPIC, words
from pycore.calculators.two_wattmeters.case import WattmeterCase, read_meters, sizes_to_print
from pycore.calculators.two_wattmeters.circuit import (
    METERS,
    larger_lagging,
)
from pycore.calculators.two_wattmeters.fields import BY_NAME, FIELDS
from pycore.calculators.two_wattmeters.workings import diagram, from_readings
from pycore.forms.reading import Reader
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.sums.wording import degrees_text
from pycore.words import boards
from pycore.words.phrase import Phrase, say


class TwoWattmeters(SumPage[WattmeterCase]):
    """The page ``/two-wattmeters/``."""

    slug = "two-wattmeters"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.POWER

    def case(self, form: Mapping[str, str]) -> WattmeterCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        result, load = read_meters(reader)
        sheet = read_sheet(reader, FIELDS, sizes_to_print(result, typed=load is None), "VA", computed=True)
        return WattmeterCase(sheet, result, load, balanced=sheet["balanced"] == "yes")

    def outputs(self, case: WattmeterCase, plan: Plan) -> tuple[Output, ...]:
        """Power first, then the power factor, what the drawing ends on, both readings, reactive power and angle."""
        result = case.result
        first, second, _ = case.readings
        number = case.notation.writing.number

        def watts(name: str, value: float, label: Phrase, unit: str = "W") -> Output:
            return Output(name, value, number(value), case.prefix + unit, label)

        outputs = [watts("power", result.power, say(words.ACTIVE))]
        if case.balanced:
            outputs.append(Output("power-factor", result.factor, case.power_factor_text, label=say(words.FACTOR)))
            outputs.append(watts("apparent-power", result.apparent, say(words.APPARENT), "VA"))
        outputs += [watts("reading-1", first, (words.TAGS[0],)), watts("reading-2", second, (words.TAGS[1],))]
        if case.balanced:
            outputs.append(watts("reactive-power", result.reactive, say(words.REACTIVE), "var"))
            outputs.append(Output("lag", result.lag, case.angle_text, label=say(words.ANGLE)))
        return (*outputs, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: WattmeterCase, plan: Plan) -> tuple[Phrase, ...]:
        """The apparent power on the sheet and the power factor come before the usual lines."""
        lines = super().summary(case, plan)
        if not case.balanced or case.closed:
            return lines
        drawn = words.drawn(case.amount(case.size), case.direction(plan))
        return (drawn, words.power_factor(case.power_factor_text), *lines[1:])

    def remarks(self, case: WattmeterCase) -> tuple[Phrase, ...]:
        """What each meter sees, which one reads backwards, where the method holds."""
        first, second, _ = case.readings
        if not case.balanced:
            return words.REFUSED, words.THREE_WIRES
        sentences = [
            words.reads(number, degrees_text(angle, case.notation.mark), case.watts(value))
            for number, angle, value in zip((1, 2), case.meter_angles, (first, second), strict=True)
        ]
        if case.power < 0:
            sentences.append(words.flows_back(case.watts(-case.power)))
        elif case.power == 0:
            sentences.append(words.OPPOSITE)
        elif case.readings[2] == 0:
            sentences.append(words.ALIKE)
        else:
            larger = larger_lagging(case.meters)
            sentences.append(words.larger_reading(larger if case.readings[2] > 0 else 3 - larger, case.side))
            for number, value in ((1, first), (2, second)):
                if value < 0:
                    sentences.append(words.negative(number))
                elif value == 0:
                    sentences.append(words.one_is_zero(number))
        return (*sentences, words.THREE_WIRES)

    def calculated(self, case: WattmeterCase, plan: Plan) -> tuple[Working, ...]:
        """Both calculations, the phasor diagram, and what a hand can do."""
        workings = [Working("back", say(words.BACK_TITLE), tuple(from_readings(case)))]
        if case.balanced:
            workings.insert(0, Working("meters", say(words.PHASORS), tuple(diagram(case))))
        return (*workings, SumAccuracy(case).working(plan))

    def echo(self, case: WattmeterCase) -> dict[str, Mapping[str, str]]:
        """How the angle of lag was understood."""
        reader = Reader(case.problem.typed, BY_NAME)
        return {"lag": reader.lag("lag").echo(case.notation.mark)}

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Each reading's label names the line of its meter."""
        usual = BY_NAME["meters"].default
        meters = METERS.get(form.get("meters", usual), METERS[usual])
        return {f"w{number}": words.reading_label(number, meter.line) for number, meter in enumerate(meters, start=1)}


PAGE = TwoWattmeters()
