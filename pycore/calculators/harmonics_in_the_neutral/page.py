"""The page ``/harmonics-in-the-neutral/``: each order's phasors, and what the neutral carries of all."""

from collections.abc import Mapping

from pycore import phasor
from pycore.calculators.harmonics_in_the_neutral import TOPIC, words
from pycore.calculators.harmonics_in_the_neutral.case import HarmonicCase, read_load
from pycore.calculators.harmonics_in_the_neutral.circuit import solve
from pycore.calculators.harmonics_in_the_neutral.fields import BY_NAME, FIELDS
from pycore.calculators.harmonics_in_the_neutral.workings import by_order, pictures
from pycore.forms.common import labels_of
from pycore.forms.reading import Reader
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, outputs_on_paper, summary
from pycore.sums.problem import read_sheet
from pycore.words import boards
from pycore.words.phrase import Phrase, say


class HarmonicsInTheNeutral(SumPage[HarmonicCase]):
    """The page ``/harmonics-in-the-neutral/``."""

    slug = "harmonics-in-the-neutral"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.THREE_PHASE

    def case(self, form: Mapping[str, str]) -> HarmonicCase:
        """The form as a case: of the order that is drawn, or the fundamental where there is none of it."""
        reader = Reader(form, BY_NAME, self.labels(form))
        load, _ = read_load(reader)
        order_number = int(reader.choice("drawn"))
        reader.finish()
        spectrum = solve(load)
        order = next((one for one in spectrum.orders if one.number == order_number), spectrum.orders[0])
        sizes = [float(f"{phasor.magnitude(value):.3g}") for value in order.lines]
        problem = read_sheet(reader, FIELDS, sizes, "A", computed=order.number != 1)
        return HarmonicCase(problem, spectrum, order, load)

    def outputs(self, case: HarmonicCase, plan: Plan) -> tuple[Output, ...]:
        """The neutral's r.m.s. value, each order's part of it, the lines' r.m.s. values."""
        spectrum, unit = case.spectrum, case.fundamental_format.unit
        outputs = [Output("neutral-current", spectrum.neutral, case.number(spectrum.neutral), unit, say(words.NEUTRAL))]
        for order in spectrum.orders:
            size = phasor.magnitude(order.neutral)
            label = words.of_one_order(order.number)
            outputs.append(Output(f"neutral-{order.number}", size, case.number(size), unit, label))
        for number, size in enumerate(spectrum.lines, start=1):
            label = words.of_all_orders(case.lines[number - 1])
            outputs.append(Output(f"line-{number}", size, case.number(size), unit, label))
        return (*outputs, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: HarmonicCase, plan: Plan) -> tuple[Phrase, ...]:
        """Which order is on the sheet, and what a hand can do with it."""
        drawn_text = words.drawn(case.order.number, case.amount(case.size), case.length(plan))
        lines = summary(case, plan)
        return (drawn_text, *(lines if case.closed else lines[2:]))

    def remarks(self, case: HarmonicCase) -> tuple[Phrase, ...]:
        """Whether the neutral carries more than any line, and what each order does."""
        spectrum = case.spectrum
        largest = max(spectrum.lines)
        compare = words.more_than_lines if spectrum.neutral > largest else words.less_than_lines
        phrases = [compare(case.amount_text(spectrum.neutral), case.amount_text(largest))]
        for order in spectrum.orders[1:]:
            neutral = case.amount_text(phasor.magnitude(order.neutral))
            lines = case.amounts(order.lines)
            equal = case.in_phase(order) if order.sequence == "zero" else case.equal_lags
            phrases.append(words.of_order(order.number, order.sequence, lines, neutral, equal=equal))
        if any(order.sequence == "zero" for order in spectrum.orders):
            phrases.append(words.TRIPLEN_RULE if case.equal_lags else words.TRIPLEN_RULE_UNEQUAL)
        return (*phrases, words.METER_WORDS)

    def calculated(self, case: HarmonicCase, plan: Plan) -> tuple[Working, ...]:
        """Order by order, pictures, and what a hand can do."""
        waves = Working("pictures", say(words.WAVES), tuple(pictures(case)))
        table = Working("orders", say(words.CALCULATED), tuple(by_order(case)))
        return waves, table, SumAccuracy(case).working(plan)

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Labels of the fields that name a line, as the form's line names have it."""
        return labels_of(form)


PAGE = HarmonicsInTheNeutral()
