"""The page ``/sequence-components/``: zero, positive and negative sequence, one of them drawn."""

from collections.abc import Mapping
from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.sequence_components import TOPIC, words
from pycore.calculators.sequence_components.circuit import TURNS
from pycore.forms import conventions
from pycore.forms.phasor_text import is_rectangular
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, TopicPractice, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, say

if TYPE_CHECKING:
    pass
from pycore.calculators.sequence_components.case import SequenceCase, read_phasors
from pycore.calculators.sequence_components.fields import BY_NAME, FIELDS, NAMES
from pycore.calculators.sequence_components.workings import table


class SequenceComponents(SumPage[SequenceCase]):
    """The page ``/sequence-components/``."""

    slug = "sequence-components"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC

    def case(self, form: Mapping[str, str]) -> SequenceCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        unit = reader.choice("unit")
        given = read_phasors(reader, unit)
        sizes = [float(f"{size:.4g}") for size, _ in given]
        computed = any(is_rectangular(reader.text(name)) for name in NAMES)
        return SequenceCase(read_sheet(reader, FIELDS, sizes, unit, computed=computed), given)

    def practice(self) -> "TopicPractice[SequenceCase]":
        """Its problems from codes, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.sequence_components import practice

        return practice

    def outputs(self, case: SequenceCase, plan: Plan) -> tuple[Output, ...]:
        """Three times the component that is drawn, then all three, and the neutral."""
        writing, mark = case.notation.writing, case.notation.mark
        angle = sum_words.NONE if case.angle is None else quantity.fixed(case.angle, 1, mark) + "°"
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        made = [
            Output("threefold", case.size, size, writing.unit, say(words.three_times(case.part))),
            Output("threefold-angle", case.angle, angle, label=say(sum_words.ANGLE)),
        ]
        for part in TURNS:
            value: complex = getattr(case.components, part)
            told = case.amount(phasor.magnitude(value)).partition(NO_BREAK_SPACE)[0]
            pointing = None if value == 0 else phasor.angle(value)
            says = sum_words.NONE if pointing is None else quantity.fixed(pointing, 1, mark) + "°"
            made.append(Output(part, phasor.magnitude(value), told, writing.unit, say(words.NAMES[part])))
            made.append(Output(f"{part}-angle", pointing, says, label=say(words.ITS_ANGLE)))
        if case.problem["unit"] == "A":
            together = phasor.magnitude(case.components.together)
            told = case.amount(together).partition(NO_BREAK_SPACE)[0]
            made.append(Output("neutral-current", together, told, writing.unit, say(words.NEUTRAL)))
        return (*made, *outputs_on_paper(case, plan, "threefold-length"))

    def values_text(self, case: SequenceCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: SequenceCase) -> tuple[Phrase, ...]:
        """The operator, the component itself, and what the neutral carries."""
        parts = {part: getattr(case.components, part) for part in TURNS}
        made = [words.operator(case.part)]
        if not case.closed:
            third = case.amount(phasor.magnitude(parts[case.part]))
            made.append(words.one_third(case.component, third, case.notation.tags["sum"]))
        if case.problem["unit"] == "A":
            together = case.components.together
            made.append(words.neutral_carries(case.amount(phasor.magnitude(together))) if together else words.no_zero())
        there = [part for part, value in parts.items() if value != 0]
        if len(there) == 1:
            made.append(words.symmetrical(there[0]))
        return tuple(made)

    def calculated(self, case: SequenceCase, plan: Plan) -> tuple[Working, ...]:
        """All three components with numbers, the check by putting them together, and what a hand can do."""
        return (
            Working("components-all", say(words.CALCULATED), tuple(table(case))),
            SumAccuracy(case).working(plan),
        )

    def echo(self, case: SequenceCase) -> dict[str, Mapping[str, str]]:
        """Each phasor in the other form."""
        unit, mark = case.problem["unit"], case.notation.mark
        made: dict[str, Mapping[str, str]] = {}
        for name, value in zip(NAMES, case.values, strict=True):
            write = figures.polar if is_rectangular(case.problem.typed[name]) else figures.rectangular
            made[name] = {"said": write(value, unit, mark) if value else ""}
        return made

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """The lines' names."""
        names = conventions.NAMES.get(form.get("names", "L123"), conventions.NAMES["L123"])
        return dict(zip(NAMES, names, strict=True))


PAGE = SequenceComponents()
