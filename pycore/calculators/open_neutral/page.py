"""The page ``/open-neutral/``: the star point's displacement, and what each load then has."""

import math
from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.neutral_current.fields import BY_NAME as NEUTRAL_FIELDS
from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.circuit import NoBalance, OpenNeutral, UnbalancedStar, solve
from pycore.calculators.open_neutral.construction import METHOD, displacement
from pycore.constructions.construction import Arm, Construction, Picture
from pycore.drawing import Ink
from pycore.errors import Fault, InputError
from pycore.forms import conventions
from pycore.forms.loads import read_load
from pycore.forms.reading import Reader
from pycore.practice.codes import Code
from pycore.practice.task import Task
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Block, Equation, Field, Grid, Output, Paragraph, Working
from pycore.sums.case import Part, SumCase
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SMALL_SHEET, SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling
from pycore.trig import ROOT_THREE
from pycore.words import Phrase, Symbol, say
from pycore.words.formula import Fraction, Number, row

NAMES = ("z1", "z2", "z3")
SUFFERS, STARVES = 1.05, 0.95
"""Shares of the usual voltage beyond which a load is said to suffer or to starve."""
SAME = 1e-9
"""Share of the line voltage within which two loads have the same."""
DEFAULTS = ("20", "40", "80")
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, words.load_label(f"L{number}"), "phasor", "values", DEFAULTS[number - 1], "Ω",
              help=words.LOAD_HELP, sample=f"i{number}")
        for number, name in enumerate(NAMES, start=1)
    ),
    Field("volts", words.VOLTAGE, "quantity", "values", "400", "V"),
    NEUTRAL_FIELDS["sequence"],
    NEUTRAL_FIELDS["names"],
    NEUTRAL_FIELDS["colours"],
    *drawing_fields("units", words.PHASE, METHOD, "up", words.METHODS, "all"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}


class OpenCase(SumCase):
    """One load with its neutral open or whole, as the form asks for it to be drawn."""

    slug = "open-neutral"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    part_word = "line"

    def __init__(self, problem: SheetProblem, solution: OpenNeutral, loads: tuple[complex | None, ...]) -> None:
        self.solution, self.loads = solution, loads
        self.open = problem["method"] == METHOD
        self.method_in_task = not self.open
        self.result_word = words.RESULT_OPEN if self.open else words.RESULT_WHOLE
        self.guess_word = words.GUESS_OPEN if self.open else ""
        self.methods = (METHOD,) if self.open else ("tip-to-tail", "parallelogram", "components")
        drawn = solution.phases if self.open else solution.currents
        arms = tuple(
            Arm(f"i{number}", number, phasor.magnitude(value), phasor.angle(value))
            for number, value in enumerate(drawn, start=1)
            if value != 0
        )
        letter = "V" if self.open else "I"
        tags = conventions.symbols(letter, problem["names"])
        if self.open:
            tags["sum"] = (words.S,)
            tags |= {f"u{n}": (Symbol("U", name),) for n, name in enumerate(_short_names(problem["names"]), start=1)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        voltage = conventions.symbols("V", problem["names"])["i1"]
        telling = Telling(
            tags=tags,
            lines=conventions.line_names(problem["names"]),
            reference=tags[arms[0].key] if arms[0].angle == reference else voltage,
            voltage=voltage,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.VOLTS if self.open else words.AMPERES,
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)
        self.total = solution.displacement if self.open else solution.neutral

    def inks(self) -> dict[str, Ink]:
        """The lines' colours, those of their loads alike."""
        inks = conventions.inks(self.problem["colours"])
        return inks | {f"u{number}": inks[f"i{number}"] for number in (1, 2, 3)}

    def possible(self, method: str) -> str:
        """The star point's shift, or the currents' sum by the method asked for."""
        return method if method == METHOD else super().possible(method)

    def orders(self, method: str, asked: str = "") -> tuple[str, ...]:
        """The shift has one order only."""
        return ("12",) if method == METHOD else super().orders(method, asked)

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order."""
        if method == METHOD:
            return displacement(self.arms, self.solution.displacement, self.picture.reference)
        return super().build(method, order)

    def way_title(self, method: str, order: str) -> Phrase:
        """Title of a construction among the workings."""
        return say(words.BY_DISPLACEMENT) if method == METHOD else super().way_title(method, order)

    def method_words(self, plan: Plan) -> str:
        """The method as the title block says it."""
        return words.BY_DISPLACEMENT if self.open else f"{words.TITLE_WHOLE}: {super().method_words(plan)}"

    def further(self) -> tuple[Part, ...]:
        """Each load's voltage, where the neutral is open."""
        if not self.open:
            return ()
        return tuple(
            Part(self.telling.tags[f"u{number}"], phasor.magnitude(value), phasor.angle(value))
            for number, value in enumerate(self.solution.voltages, start=1)
        )

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        given = self.given_words(short=plan.layout.paper == SMALL_SHEET)
        return sheet_words(self, plan, kind, words.TASK_OPEN if self.open else words.TASK_WHOLE, given)

    def load_text(self, number: int) -> str:
        """A load as it is written: 20 Ω, 20 + j10 Ω."""
        value = self.loads[number - 1]
        return words.nothing_connected() if value is None else figures.impedance(value, self.telling.mark)

    def given_words(self, *, short: bool = False) -> str:
        """The loads, the line voltage and the sequence; where room is ``short``, the usual sequence is left out."""
        volts = quantity.plain(self.solution.star.line_voltage, self.telling.mark) + f"{NO_BREAK_SPACE}V"
        one, two, three = self.lines
        sequence = (one, two, three) if self.problem["sequence"] == "123" else (one, three, two)
        loads = [words.on_line(line, self.load_text(number)) for number, line in enumerate(self.lines, start=1)]
        told = "" if short and self.problem["sequence"] == "123" else ", ".join(sequence)
        return words.on_voltage(", ".join(loads), volts, told)


def _short_names(names: str) -> tuple[str, ...]:
    return tuple(name.removeprefix("L") for name in conventions.NAMES[names])


class OpenNeutralPage(SumPage[OpenCase]):
    """The page ``/open-neutral/``."""

    slug = "open-neutral"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    warning = words.WARNING
    cautions = words.CAUTIONS
    topic = 7

    def case(self, form: Mapping[str, str]) -> OpenCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        volts = reader.amount("volts", "V", 1.0, 1e5) or 400.0
        loads = tuple(
            read_load(reader, name, words.bad_load, volts / ROOT_THREE) if reader.given(name) else None
            for name in NAMES
        )
        if not reader.faults and all(load is None for load in loads):
            reader.fault("z1", words.no_loads())
        sequence, method = reader.choice("sequence"), reader.choice("method")
        if reader.faults:
            reader.finish()
        one, two, three = (0j if load is None else 1.0 / load for load in loads)
        try:
            solution = solve(UnbalancedStar(volts, (one, two, three), sequence))
        except NoBalance:
            raise InputError(*(Fault(name, reader.given(name), words.without_bound()) for name in NAMES)) from None
        sizes, unit = ([volts / ROOT_THREE], "V") if method == METHOD else (_sizes(solution.currents), "A")
        problem = read_sheet(reader, FIELDS, [_three_figures(size) for size in sizes], unit, computed=True)
        return OpenCase(problem, solution, loads)

    def outputs(self, case: OpenCase, plan: Plan) -> tuple[Output, ...]:
        """Shift and neutral current, each load's voltage."""
        solution, mark = case.solution, case.telling.mark
        writing = case.telling.writing
        shift, neutral = phasor.magnitude(solution.displacement), phasor.magnitude(solution.neutral)
        told = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        headline = Output("displacement", shift, told, writing.unit, say(words.SHIFT))
        second = Output("neutral-current", neutral, _figures(neutral, mark), "A", say(words.NEUTRAL))
        if not case.open:
            headline = Output("neutral-current", neutral, told, writing.unit, say(words.NEUTRAL))
            second = Output("displacement", shift, _figures(shift, mark), "V", say(words.SHIFT))
        voltages = [
            Output(f"voltage-{number}", phasor.magnitude(value), _figures(phasor.magnitude(value), mark), "V",
                   say("{line}", line=case.lines[number - 1]))
            for number, value in enumerate(solution.voltages, start=1)
        ]  # fmt: skip
        return (headline, second, *voltages, *outputs_on_paper(case, plan, "sum-length"))

    def given(self, case: OpenCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: OpenCase) -> tuple[Phrase, ...]:
        """Which load suffers, and what is taken for granted."""
        solution, mark = case.solution, case.telling.mark
        made: list[Phrase] = []
        if not case.open and solution.displacement != 0:
            made.append(words.opened(_figures(phasor.magnitude(solution.displacement), mark) + f"{NO_BREAK_SPACE}V"))
        connected = [number for number in (1, 2, 3) if case.loads[number - 1] is not None]
        if solution.displacement == 0:
            made.append(words.equal_loads())
        else:
            made += [*self._unlike(case, connected), *self._rule(case, connected)]
        if case.open:
            made.append(words.whole(_figures(phasor.magnitude(solution.neutral), mark) + f"{NO_BREAK_SPACE}A"))
        return (*made, words.constant())

    def _unlike(self, case: OpenCase, connected: list[int]) -> list[Phrase]:
        """Which loads suffer and which starve: those with the most and the least voltage, equal ones together."""
        if len(connected) < 2:
            return []
        mark, line = case.telling.mark, case.solution.star.line_voltage
        made: list[Phrase] = []
        if len(connected) == 2:
            volts = quantity.plain(line, mark) + f"{NO_BREAK_SPACE}V"
            first, second = (case.lines[number - 1] for number in connected)
            made.append(words.in_series(first, second, volts))
        sizes = {number: phasor.magnitude(case.solution.voltages[number - 1]) for number in connected}
        most, least = max(sizes.values()), min(sizes.values())
        for tell, bound, beyond in ((words.suffers, most, most > SUFFERS * line / ROOT_THREE),
                                    (words.starves, least, least < STARVES * line / ROOT_THREE)):  # fmt: skip
            for number in connected:
                if beyond and math.fabs(sizes[number] - bound) <= SAME * line:
                    share = quantity.fixed(100.0 * sizes[number] / line * ROOT_THREE, 0, mark) + f"{NO_BREAK_SPACE}%"
                    volts = _figures(sizes[number], mark) + f"{NO_BREAK_SPACE}V"
                    made.append(tell(case.lines[number - 1], volts, share, case.load_text(number)))
        return made

    def _rule(self, case: OpenCase, connected: list[int]) -> list[Phrase]:
        """Where the star point goes, in one sentence."""
        if len(connected) == 1:
            return [words.alone(case.lines[connected[0] - 1])]
        reaches = max(phasor.magnitude(voltage) for voltage in case.solution.voltages)
        if reaches > 1.0001 * case.solution.star.line_voltage:
            return [words.outside()]
        loads = [load for load in case.loads if load is not None]
        unlike = any(load != loads[0] for load in loads)
        return [words.least_suffers()] if unlike and all(load.imag == 0 for load in loads) else []

    def calculated(self, case: OpenCase, plan: Plan) -> tuple[Working, ...]:
        """Millman's theorem with numbers, both cases side by side, and what a hand can do."""
        return (
            Working("millman", say(words.CALCULATED), tuple(_millman(case))),
            Working("compare", say(words.COMPARE), (_compare(case), Paragraph(words.constant()))),
            SumAccuracy(case).working(plan),
        )

    def task_of_case(self, case: OpenCase) -> Task:
        """What is to be found, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.open_neutral.practice import task_of

        return task_of(case)

    def practice_form(self, code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's loads, with a class's own choices. Raises NoProblem."""
        from pycore.calculators.open_neutral.practice import form_of

        return form_of(code, choices)

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """Labels of the loads, as the form's line names have it."""
        names = conventions.NAMES.get(form.get("names", "L123"), conventions.NAMES["L123"])
        return {name: words.load_label(line) for name, line in zip(NAMES, names, strict=True)}


def _sizes(values: tuple[complex, ...]) -> list[float]:
    return [phasor.magnitude(value) for value in values]


def _three_figures(size: float) -> float:
    return float(f"{size:.3g}")


def _figures(value: float, mark: str) -> str:
    """A result of another unit than the drawing's: three figures, four from a hundred on."""
    return quantity.fixed(value, quantity.decimals_for(value, 4 if value >= 100 else 3), mark)


def _compare(case: OpenCase) -> Grid:
    """Voltages and currents of each load with its neutral and without."""
    mark, solution = case.telling.mark, case.solution
    usual = solution.star.line_voltage / ROOT_THREE
    rows = []
    for number in (1, 2, 3):
        whole, opened = phasor.magnitude(solution.phases[number - 1]), phasor.magnitude(solution.voltages[number - 1])
        flows = [phasor.magnitude(one[number - 1]) for one in (solution.currents, solution.open_currents)]
        cells = (
            case.lines[number - 1], case.load_text(number), _figures(whole, mark) + " V",
            _figures(flows[0], mark) + " A", _figures(opened, mark) + " V",
            quantity.fixed(100.0 * opened / usual, 0, mark) + " %", _figures(flows[1], mark) + " A",
        )  # fmt: skip
        rows.append(tuple((cell,) for cell in cells))
    return Grid(tuple((head,) for head in words.HEAD), tuple(rows))


def _millman(case: OpenCase) -> list[Block]:
    mark, solution = case.telling.mark, case.solution
    rows = []
    for number in (1, 2, 3):
        admittance, flowing = solution.star.admittances[number - 1], solution.currents[number - 1]
        voltage = solution.phases[number - 1]
        parts = ((voltage, "V"), (1000.0 * admittance, "mS"), (flowing, "A"))
        rows.append(((case.lines[number - 1],), *((figures.rectangular(value, unit, mark),) for value, unit in parts)))
    together = phasor.total(solution.star.admittances)
    added = ((1000.0 * together, "mS"), (solution.neutral, "A"))
    total = ((words.SUM,), ("",), *((figures.rectangular(value, unit, mark),) for value, unit in added))
    v, y = Symbol("V"), Symbol("Y")
    head = ((words.LINE,), (v,), (y,), (v, " × ", y))
    below = figures.rectangular(together, "S", mark)
    size = quantity.fixed(phasor.magnitude(solution.displacement), 1, mark)
    above = figures.rectangular(solution.neutral, "A", mark)
    found = Number(figures.rectangular(solution.displacement, "V", mark))
    formula = row(words.S, "=", Fraction(Number(above), Number(below)), "=", found)
    return [
        Paragraph(words.millman()),
        Grid(head, (*rows, total), total=True),
        Equation((formula, row(words.S, "=", Number(size, "V")))),
    ]
