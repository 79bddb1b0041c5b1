"""The page ``/open-neutral/``: the star point's displacement, and what each load then has."""

from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.open_neutral import TOPIC, words
from pycore.calculators.open_neutral.case import OpenCase, drawn_sizes, read_star
from pycore.calculators.open_neutral.circuit import is_outside
from pycore.calculators.open_neutral.construction import METHOD
from pycore.calculators.open_neutral.fields import BY_NAME, FIELDS, NAMES
from pycore.calculators.open_neutral.workings import comparison, load_figures, millman
from pycore.forms.common import lines_of
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Paragraph, Working
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.trig import ROOT_THREE
from pycore.words import boards
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, listed, say

TOO_MUCH, TOO_LITTLE = 1.05, 0.95
"""Shares of the normal voltage beyond which a load is said to have too much or too little."""
SAME = 1e-9
"""Difference, as a share of the line voltage, up to which two load voltages count as equal."""


class OpenNeutralPage(SumPage[OpenCase]):
    """The page ``/open-neutral/``."""

    slug = "open-neutral"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    warning = words.WARNING
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.THREE_PHASE

    def case(self, form: Mapping[str, str]) -> OpenCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        solution, loads = read_star(reader)
        sizes, unit = drawn_sizes(solution, reader.choice("method"))
        return OpenCase(read_sheet(reader, FIELDS, sizes, unit, computed=True), solution, loads)

    def outputs(self, case: OpenCase, plan: Plan) -> tuple[Output, ...]:
        """Displacement (V) and neutral current (A), then each load's voltage (V)."""
        solution, mark = case.solution, case.notation.mark
        writing = case.notation.writing
        shift, neutral = phasor.magnitude(solution.displacement), phasor.magnitude(solution.neutral)
        number_text = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        headline = Output("displacement", shift, number_text, writing.unit, say(words.SHIFT))
        second = Output("neutral-current", neutral, load_figures(neutral, mark), "A", say(words.NEUTRAL))
        if not case.open:
            headline = Output("neutral-current", neutral, number_text, writing.unit, say(words.NEUTRAL))
            second = Output("displacement", shift, load_figures(shift, mark), "V", say(words.SHIFT))
        voltages = [
            Output(f"voltage-{number}", phasor.magnitude(value), load_figures(phasor.magnitude(value), mark), "V",
                   say("{line}", line=case.lines[number - 1]))
            for number, value in enumerate(solution.voltages, start=1)
        ]  # fmt: skip
        return (headline, second, *voltages, *outputs_on_paper(case, plan, "sum-length"))

    def remarks(self, case: OpenCase) -> tuple[Phrase, ...]:
        """Which loads get too much or too little voltage, and what is assumed."""
        solution, mark = case.solution, case.notation.mark
        phrases: list[Phrase] = []
        if not case.open and solution.displacement != 0:
            shift = load_figures(phasor.magnitude(solution.displacement), mark)
            phrases.append(words.neutral_open(f"{shift}{NO_BREAK_SPACE}V"))
        connected = [number for number in (1, 2, 3) if case.loads[number - 1] is not None]
        if solution.displacement == 0:
            equal = all(load is not None and load == case.loads[0] for load in case.loads)
            phrases.append(words.EQUAL_LOADS if equal else words.SPECIAL_LOADS)
        else:
            phrases += [*self._unlike(case, connected), *self._rule(case, connected)]
        if case.open:
            neutral = load_figures(phasor.magnitude(solution.neutral), mark) + f"{NO_BREAK_SPACE}A"
            phrases.append(words.neutral_connected(neutral))
        return (*phrases, words.CONSTANT_IMPEDANCE)

    def _unlike(self, case: OpenCase, connected: list[int]) -> list[Phrase]:
        """The loads with too much voltage and those with too little, the furthest from normal first."""
        if len(connected) < 2:
            return []
        mark, line = case.notation.mark, case.solution.star.line_voltage
        phrases: list[Phrase] = []
        if len(connected) == 2:
            volts = quantity.plain(line, mark) + f"{NO_BREAK_SPACE}V"
            first, second = (case.lines[number - 1] for number in connected)
            phrases.append(words.in_series(first, second, volts))
        normal = line / ROOT_THREE
        sizes = {number: phasor.magnitude(case.solution.voltages[number - 1]) for number in connected}
        # Equal voltages stand in the order of their lines, whatever their last digits are.
        steps = {number: round(size / (SAME * line)) for number, size in sizes.items()}
        high = sorted((n for n in connected if sizes[n] > TOO_MUCH * normal), key=lambda n: (-steps[n], n))
        low = sorted((n for n in connected if sizes[n] < TOO_LITTLE * normal), key=lambda n: (steps[n], n))
        for numbers, one, several in (
            (high, words.too_much_voltage, words.several_too_much),
            (low, words.too_little_voltage, words.several_too_little),
        ):
            shares = {
                number: (
                    load_figures(sizes[number], mark) + f"{NO_BREAK_SPACE}V",
                    quantity.fixed(100.0 * sizes[number] / normal, 0, mark) + f"{NO_BREAK_SPACE}%",
                )
                for number in numbers
            }
            if len(numbers) == 1:
                number = numbers[0]
                phrases.append(one(case.lines[number - 1], *shares[number], case.load_text(number)))
            elif numbers:
                texts = [words.share_of_normal(*share, first=n == numbers[0]) for n, share in shares.items()]
                alike = len(set(shares.values())) == 1
                voltages = words.each(*shares[numbers[0]]) if alike else listed(texts, "and")
                phrases.append(several(listed([case.lines[n - 1] for n in numbers], "and"), voltages))
        return phrases

    def _rule(self, case: OpenCase, connected: list[int]) -> list[Phrase]:
        """Where the star point moves, in one sentence."""
        if len(connected) == 1:
            return [words.alone(case.lines[connected[0] - 1])]
        if is_outside(case.solution):
            return [words.OUTSIDE]
        loads = [load for load in case.loads if load is not None]
        if all(load == loads[0] for load in loads) or any(load.imag != 0 for load in loads):
            return []
        ohms = [load.real for load in loads]
        return [
            words.largest_resistance_rule(
                several_largest=ohms.count(max(ohms)) > 1, several_smallest=ohms.count(min(ohms)) > 1
            )
        ]

    def calculated(self, case: OpenCase, plan: Plan) -> tuple[Working, ...]:
        """Millman's theorem with numbers, both cases side by side, and what a hand can do."""
        return (
            Working("millman", say(words.CALCULATED), tuple(millman(case))),
            Working("compare", say(words.COMPARE), (comparison(case), Paragraph(words.CONSTANT_IMPEDANCE))),
            SumAccuracy(case).working(plan),
        )

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Labels of the loads, as the form's line names have it, and the scale in the unit of what is drawn."""
        loads = {name: words.load_label(line) for name, line in zip(NAMES, lines_of(form), strict=True)}
        unit = "V" if form.get("method", METHOD) == METHOD else "A"
        return {**loads, "scale": sum_words.scale_label(unit)}


PAGE = OpenNeutralPage()
