"""The page ``/series-circuit/``: elements in series, their voltages tip to tail on the current."""

from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor
from pycore.calculators.series_circuit import words
from pycore.calculators.series_circuit.circuit import NoImpedance, Series, SeriesSolution, solve
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR
from pycore.constructions.construction import Picture
from pycore.errors import Fault, InputError
from pycore.forms.conventions import choice_field
from pycore.forms.elements import MOST_ELEMENTS, Typed, parts, read_elements, scaled
from pycore.forms.reading import Reader
from pycore.practice.codes import Code
from pycore.practice.task import Mistake, Task
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Field, Output, Working
from pycore.sums.case import SumCase
from pycore.sums.circuit import (
    LEAST_HERTZ,
    MOST_HERTZ,
    almost,
    angle_outputs,
    arms_of,
    companion_of,
    factor_phrase,
    read_supply,
    tags_of,
    times_text,
)
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper, small_notices
from pycore.sums.page import summary as sum_summary
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling
from pycore.words import Phrase, Symbol, say
from pycore.words import circuits as circuit_words

FIELDS: tuple[Field, ...] = (
    Field("r", words.RESISTANCE, "phasor", "values", "30 Ω", help=words.HELP),
    Field("l", words.INDUCTANCE, "phasor", "values", "0.2 H"),
    Field("c", words.CAPACITANCE, "phasor", "values", "100 µF"),
    Field("supply", words.SUPPLY, "phasor", "values", "230 V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    choice_field("drawn", words.DRAWN, "method", "voltages", words.DRAWINGS),
    *drawing_fields("units", words.REFERENCE, second="amperes"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
GROUPS = (("r", "Ω", RESISTOR), ("l", "H", COIL), ("c", "F", CAPACITOR))
LETTERS = {RESISTOR: "R", COIL: "L", CAPACITOR: "C"}
AMPS, VOLTS = Symbol("I"), Symbol("V")


@dataclass(frozen=True, slots=True)
class SeriesProblem:
    """What the form says: each element with its text, in the order of the fields, and the circuit."""

    typed: tuple[Typed, ...]
    circuit: Series


def names_of(typed: tuple[Typed, ...]) -> tuple[str, ...]:
    """Indexes of the elements: R, L, C, or R1, R2 where there are several of a kind."""
    kinds = [LETTERS[one.element.kind] for one in typed]
    made: list[str] = []
    for place, kind in enumerate(kinds):
        number = kinds[: place + 1].count(kind)
        made.append(f"{kind}{number}" if kinds.count(kind) > 1 else kind)
    return tuple(made)


def _said(one: Typed) -> str:
    """An element as it is given; what a reactance in ohms belongs to must be said."""
    kind = one.element.kind
    return circuit_words.reactance_of(kind, one.said) if one.element.in_ohms and kind != RESISTOR else one.said


def impedance_symbol(name: str) -> Symbol:
    """R, R with index 1, X with index L."""
    return Symbol("R", name[1:]) if name.startswith("R") else Symbol("X", name)


class SeriesCase(SumCase):
    """One series circuit, its voltages or its impedances as arms of a sum."""

    slug = "series-circuit"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False

    def __init__(self, problem: SheetProblem, given: SeriesProblem, solution: SeriesSolution) -> None:
        self.given, self.solution = given, solution
        self.names = names_of(given.typed)
        self.volts_drawn = problem["drawn"] == "voltages"
        self.typed_companions = given.circuit.amperes is not None
        self.result_word = words.RESULTS[problem["drawn"]]
        self.guess_word = "" if self.typed_companions or not self.volts_drawn else words.GUESS
        values = solution.voltages if self.volts_drawn else solution.impedances
        arms = arms_of(values)
        symbols = [Symbol("V", name) if self.volts_drawn else impedance_symbol(name) for name in self.names]
        tags = tags_of(symbols, VOLTS if self.volts_drawn else Symbol("Z"), (AMPS,))
        origin: Phrase = (AMPS,) if self.volts_drawn else (Symbol("R"),)
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        telling = Telling(
            tags=tags,
            lines=self.names,
            reference=tags[arms[0].key] if on_first and reference != 0.0 else origin,
            voltage=origin,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.VOLTS if self.volts_drawn else words.OHMS,
            companions=companion_of(solution.current, "A", words.AMPERES, words.WHY_CURRENT, problem.writing.mark)
            if self.volts_drawn
            else None,
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)
        self.total = phasor.total(values)
        self.sum_word = ("supply",) if self.volts_drawn else ("impedance",)

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        known = "-known" if self.volts_drawn and self.typed_companions else ""
        return sheet_words(self, plan, kind, words.TASKS[self.problem["drawn"] + known], self.given_words() + ".")

    def given_words(self) -> str:
        """30 Ω, 0.2 H, 100 µF in series on 230 V, 50 Hz."""
        circuit, mark = self.given.circuit, self.telling.mark
        known = circuit.volts if circuit.amperes is None else circuit.amperes
        supply = scaled(known or 0.0, "V" if circuit.amperes is None else "A", mark)
        elements = ", ".join(_said(one) for one in self.given.typed)
        tell = words.given if circuit.amperes is None else words.given_current
        return tell(elements, supply, scaled(circuit.hertz, "Hz", mark))

    def element_symbols(self) -> tuple[Symbol, ...]:
        """R, X with index L ... of each element."""
        return tuple(impedance_symbol(name) for name in self.names)

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """What goes wrong between the elements and their impedances."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.sums.circuit_practice import series_mistakes

        return series_mistakes(self)


def _faulty_elements(reader: Reader, typed: tuple[Typed, ...]) -> None:
    if reader.faults:
        return
    if not typed:
        reader.fault("r", circuit_words.no_elements())
    elif len(typed) > MOST_ELEMENTS:
        reader.fault("r", circuit_words.too_many(reader.label("r"), MOST_ELEMENTS))


def read_series(reader: Reader) -> tuple[SeriesProblem, SeriesSolution]:
    """The circuit of a form and its solution. Raises InputError."""
    mark = "," if reader.choice("decimal") == "comma" else "."
    typed: tuple[Typed, ...] = ()
    for name, unit, kind in GROUPS:
        reactive = "" if kind == RESISTOR else kind
        typed += read_elements(reader, name, unit, mark, reactive=reactive, only=kind)
    volts, amperes = read_supply(reader, "supply")
    hertz = reader.amount("frequency", "Hz", LEAST_HERTZ, MOST_HERTZ)
    _faulty_elements(reader, typed)
    if reader.faults or hertz is None:
        reader.finish()
    if typed and all(one.element.value == 0.0 for one in typed):
        names = [name for name, _, _ in GROUPS if reader.given(name)]
        raise InputError(*(Fault(name, reader.given(name), words.nothing_there(reader.label(name))) for name in names))
    circuit = Series(tuple(one.element for one in typed), hertz or 50.0, volts, amperes)
    try:
        return SeriesProblem(typed, circuit), solve(circuit)
    except NoImpedance:
        faults = [Fault(name, reader.given(name), words.nothing_limits(reader.label(name))) for name in ("r", "supply")]
        raise InputError(*faults) from None


class SeriesCircuit(SumPage[SeriesCase]):
    """The page ``/series-circuit/``."""

    slug = "series-circuit"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 3

    def case(self, form: Mapping[str, str]) -> SeriesCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        given, solution = read_series(reader)
        drawn = reader.choice("drawn") == "voltages"
        sizes = [phasor.magnitude(value) for value in (solution.voltages if drawn else solution.impedances)]
        unit = "V" if drawn else "Ω"
        problem = read_sheet(reader, FIELDS, [float(f"{size:.3g}") for size in sizes], unit, "A", computed=True)
        return SeriesCase(problem, given, solution)

    def outputs(self, case: SeriesCase, plan: Plan) -> tuple[Output, ...]:
        """What was not given first: current or supply; impedance, angle, power factor, each voltage, resonance."""
        solution, mark = case.solution, case.telling.mark
        known = case.typed_companions

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, written = parts(value, unit, mark)
            drawn = name == ("supply-voltage" if case.volts_drawn else "impedance")
            return Output(name, value, number, written, label, "sum" if drawn else "")

        supply = phasor.magnitude(solution.supply)
        current = output("current", solution.current, "A", say(words.CURRENT))
        voltage = output("supply-voltage", supply, "V", say(words.SUPPLY_VOLTAGE))
        impedance = output("impedance", phasor.magnitude(solution.whole), "Ω", say(words.IMPEDANCE))
        order = [voltage, current, impedance] if known else [current, voltage, impedance]
        if not case.volts_drawn:
            order = [impedance, current, voltage]
        made = [
            *order,
            *angle_outputs(solution.angle, solution.factor, mark),
            output("reactance", solution.whole.imag, "Ω", say(words.REACTANCE)),
            output("active-power", solution.power.real, "W", say(words.POWER)),
        ]
        for number, (name, value) in enumerate(zip(case.names, solution.voltages, strict=True), start=1):
            made.append(output(f"voltage-{number}", phasor.magnitude(value), "V", (Symbol("V", name),)))
        if solution.resonance is not None:
            made.append(output("resonance", solution.resonance, "Hz", say(words.RESONANCE)))
        return (*made, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: SeriesCase, plan: Plan) -> tuple[Phrase, ...]:
        """How the current stands to the supply, and what the drawing gives."""
        solution = case.solution
        if solution.angle is None or solution.factor is None:
            return sum_summary(case, plan)
        lies = factor_phrase(solution.angle, solution.factor, (AMPS,), (VOLTS,), case.telling.mark)
        return (lies, *sum_summary(case, plan)[1:])

    def given(self, case: SeriesCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: SeriesCase) -> tuple[Phrase, ...]:
        """Resonance, voltages beyond the supply, the first sanity check."""
        solution, mark = case.solution, case.telling.mark
        supply = phasor.magnitude(solution.supply)
        made: list[Phrase] = []
        if solution.resonance is not None:
            told = scaled(solution.resonance, "Hz", mark)
            near = almost(solution.resonance, case.given.circuit.hertz, 0.002)
            made.append(words.at_resonance(told, "") if near else words.resonates(told))
        sizes = [phasor.magnitude(value) for value in solution.voltages]
        for name, size in zip(case.names, sizes, strict=True):
            if supply > 0 and size > 1.05 * supply:
                times = times_text(size / supply, mark)
                made.append(words.magnified((Symbol("V", name),), times))
        if supply > 0 and len(case.arms) > 1:
            plain_sum = phasor.total(complex(size, 0.0) for size in sizes).real
            made.append(words.not_numbers(scaled(plain_sum, "V", mark), scaled(supply, "V", mark)))
        return tuple(made)

    def notices(self, case: SeriesCase, plan: Plan) -> tuple[Phrase, ...]:
        """Elements without an arrow, what is too short to draw, crossings too flat."""
        drawn = [arm.number for arm in case.arms]
        made: list[Phrase] = []
        values = case.solution.impedances
        for tell, nothing in ((words.nothing_across, True), (words.too_small_to_draw, False)):
            left = [
                case.lines[number - 1]
                for number in range(1, len(values) + 1)
                if number not in drawn and (values[number - 1] == 0) == nothing
            ]
            if left:
                made.append(tell(", ".join(left)))
        return (*made, *small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: SeriesCase, plan: Plan) -> tuple[Working, ...]:
        """Reactances, impedance, current and each voltage, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.series_circuit.workings import series_blocks

        return Working("formula", say(words.CALCULATED), series_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: SeriesCase) -> dict[str, Mapping[str, str]]:
        """How each field was understood: its reactance."""
        made: dict[str, Mapping[str, str]] = {}
        for name, _, kind in GROUPS[1:]:
            said = [
                scaled(phasor.magnitude(value), "Ω", case.telling.mark)
                for one, value in zip(case.given.typed, case.solution.impedances, strict=True)
                if one.element.kind == kind
            ]
            made[name] = {"said": words.reactance_echo(", ".join(said)) if said else ""}
        return made

    def task_of_case(self, case: SeriesCase) -> Task:
        """What is to be found, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.sums.circuit_practice import series_task

        return series_task(case)

    def practice_form(self, code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's circuit, with a class's own choices. Raises NoProblem."""
        from pycore.sums.circuit_practice import series_form

        return series_form(code, choices)
