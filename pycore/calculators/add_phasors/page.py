"""The page ``/add-phasors/``: two to six phasors, their sum, or the first minus the others."""

from collections.abc import Mapping

from pycore import phasor
from pycore.calculators.add_phasors import TOPIC, words
from pycore.calculators.add_phasors.case import AddCase, four_figures, read_phasors
from pycore.calculators.add_phasors.fields import BY_NAME, FIELDS
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.answer import Output
from pycore.sums.page import SumPage, angle_text, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.words import plain
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, say


class AddPhasors(SumPage[AddCase]):
    """The page ``/add-phasors/``."""

    slug = "add-phasors"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC

    def case(self, form: Mapping[str, str]) -> AddCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        unit = reader.choice("unit")
        phasors = read_phasors(reader, unit, difference=reader.choice("combine") == "difference")
        sizes = [four_figures(one.size) for one in phasors]
        computed = any(one.rectangular for one in phasors)
        return AddCase(read_sheet(reader, FIELDS, sizes, unit, computed=computed), phasors)

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """The scale in the unit of the phasors."""
        return {"scale": sum_words.scale_label("V" if form.get("unit") == "V" else "A")}

    def outputs(self, case: AddCase, plan: Plan) -> tuple[Output, ...]:
        """Size and angle, both parts, scale, length, tolerance."""
        writing = case.notation.writing
        name = words.DIFFERENCE if case.difference else words.RESULT
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        return (
            Output("sum", case.size, size, writing.unit, say(name)),
            Output("sum-angle", case.angle, angle_text(case), label=say(sum_words.ANGLE)),
            Output("sum-along", case.total.real, writing.fixed(case.total.real, 1), writing.unit, say(words.PARTS[0])),
            Output("sum-across", case.total.imag, writing.fixed(case.total.imag, 1), writing.unit, say(words.PARTS[1])),
            *outputs_on_paper(case, plan, "sum-length"),
        )

    def remarks(self, case: AddCase) -> tuple[Phrase, ...]:
        """What a difference is, and the first sanity check."""
        sentences: list[Phrase] = []
        if case.difference:
            names = ", ".join(plain(case.entered_tags[f"i{one.number}"]) for one in case.subtracted)
            sentences.append(words.subtracted(names))
        writing = case.notation.writing
        if not case.closed:
            plain_sum = writing.amount(sum_of(case))
            sentences.append(words.longest_check(case.amount(case.size), plain_sum, difference=case.difference))
        return tuple(sentences)

    def notices(self, case: AddCase, plan: Plan) -> tuple[Phrase, ...]:
        """What is too small to draw, and why there is no parallelogram where one was asked for."""
        notices = super().notices(case, plan)
        if case.problem["method"] == case.method:
            return notices
        count = words.COUNTS.get(len(case.arms), "")
        return (words.no_parallelogram(count) if count else words.NOTHING_TO_PAIR, *notices)

    def echo(self, case: AddCase) -> dict[str, Mapping[str, str]]:
        """Each phasor in both forms."""
        echoes: dict[str, Mapping[str, str]] = {}
        for one in case.phasors:
            polar = case.polar_text(four_figures(one.size) if one.rectangular else one.size, one.angle)
            rectangular = case.rectangular_text(phasor.polar(one.size, one.angle))
            both_forms = words.both_forms(*((rectangular, polar) if one.rectangular else (polar, rectangular)))
            echoes[f"p{one.number}"] = {"said": both_forms}
        return echoes


def sum_of(case: AddCase) -> float:
    """The sizes added as plain numbers."""
    return phasor.total(complex(one.size, 0.0) for one in case.phasors).real


PAGE = AddPhasors()
