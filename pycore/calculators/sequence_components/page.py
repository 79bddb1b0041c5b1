"""The page ``/sequence-components/``: zero, positive and negative sequence, one of them drawn."""

from collections.abc import Mapping
from dataclasses import replace

from pycore import phasor, quantity
from pycore.calculators.sequence_components import TOPIC, words
from pycore.calculators.sequence_components.case import SequenceCase, read_phasors
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.calculators.sequence_components.fields import BY_NAME, FIELDS, NAMES
from pycore.calculators.sequence_components.workings import sets_picture, sets_sheet, table
from pycore.drawing import Page
from pycore.forms.common import lines_of
from pycore.forms.phasor_text import is_rectangular
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, angle_text, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.sums.request import SheetRequest
from pycore.words import boards
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, say


class SequenceComponents(SumPage[SequenceCase]):
    """The page ``/sequence-components/``."""

    slug = "sequence-components"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.THREE_PHASE

    def case(self, form: Mapping[str, str]) -> SequenceCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        unit = reader.choice("unit")
        polar_values = read_phasors(reader, unit)
        sizes = [float(f"{size:.4g}") for size, _ in polar_values]
        computed = any(is_rectangular(reader.text(name)) for name in NAMES)
        return SequenceCase(read_sheet(reader, FIELDS, sizes, unit, computed=computed), polar_values)

    def outputs(self, case: SequenceCase, plan: Plan) -> tuple[Output, ...]:
        """Three times the component that is drawn, then all three, and the neutral."""
        writing, mark = case.notation.writing, case.notation.mark
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        outputs = [
            Output("threefold", case.size, size, writing.unit, say(words.three_times(case.component))),
            Output("threefold-angle", case.angle, angle_text(case), label=say(sum_words.ANGLE)),
        ]
        for name in TURNS:
            value: complex = getattr(case.components, name)
            number_text = case.amount(phasor.magnitude(value)).partition(NO_BREAK_SPACE)[0]
            direction = None if value == 0 else phasor.angle(value)
            own_angle = sum_words.NONE if direction is None else quantity.fixed(direction, 1, mark) + "°"
            outputs.append(Output(name, phasor.magnitude(value), number_text, writing.unit, say(words.NAMES[name])))
            outputs.append(Output(f"{name}-angle", direction, own_angle, label=say(words.ITS_ANGLE)))
        if case.problem["unit"] == "A":
            neutral_current = phasor.magnitude(case.components.neutral_current)
            number_text = case.amount(neutral_current).partition(NO_BREAK_SPACE)[0]
            outputs.append(Output("neutral-current", neutral_current, number_text, writing.unit, say(words.NEUTRAL)))
        return (*outputs, *outputs_on_paper(case, plan, "threefold-length"))

    def remarks(self, case: SequenceCase) -> tuple[Phrase, ...]:
        """The operator, the component itself, and what the neutral carries."""
        by_name = {name: getattr(case.components, name) for name in TURNS}
        phrases = [words.operator(case.component, clockwise=case.picture.sense < 0)]
        if not case.closed:
            amount = case.amount(phasor.magnitude(by_name[case.component]))
            phrases.append(words.one_third(case.component_tag, amount, case.notation.tags["sum"]))
        if case.problem["unit"] == "A":
            neutral_current = case.components.neutral_current
            amount = case.amount(phasor.magnitude(neutral_current))
            phrases.append(words.neutral_carries(amount) if neutral_current else words.NO_ZERO)
        present = [name for name, value in by_name.items() if value != 0]
        if len(present) == 1:
            phrases.append(words.symmetrical(present[0]))
        return tuple(phrases)

    def calculated(self, case: SequenceCase, plan: Plan) -> tuple[Working, ...]:
        """All three components with numbers, the check by putting them together, and what a hand can do."""
        return (
            Working("components-all", say(words.CALCULATED), tuple(table(case))),
            Working("sets", say(words.SETS), (sets_picture(case),)),
            SumAccuracy(case).working(plan),
        )

    def further_pages(self, case: SequenceCase, plan: Plan, request: SheetRequest) -> tuple[Page, ...]:
        """The moves, for easy reading, and the sheet with all three sets."""
        further = super().further_pages(case, plan, request)
        return (*further, *sets_sheet(case, plan, replace(request, number=2))) if case.sheets > 1 else further

    def echo(self, case: SequenceCase) -> dict[str, Mapping[str, str]]:
        """Each phasor in the other form."""
        unit, mark = case.problem["unit"], case.notation.mark
        echoes: dict[str, Mapping[str, str]] = {}
        for name, value in zip(NAMES, case.values, strict=True):
            write = figures.polar if is_rectangular(case.problem.typed[name]) else figures.rectangular
            echoes[name] = {"said": write(value, unit, mark) if value else ""}
        return echoes

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """The lines' names, and the scale in the unit of the phasors."""
        unit = "V" if form.get("unit") == "V" else "A"
        return {**dict(zip(NAMES, lines_of(form), strict=True)), "scale": sum_words.scale_label(unit)}


PAGE = SequenceComponents()
