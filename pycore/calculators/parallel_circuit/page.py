"""The page ``/parallel-circuit/``: branches side by side, their currents tip to tail on the common voltage."""

from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor, quantity
from pycore.calculators.parallel_circuit import words
from pycore.calculators.parallel_circuit.circuit import NoAdmittance, Parallel, ParallelSolution, ShortCircuit, solve
from pycore.circuits.elements import CAPACITOR, RESISTOR
from pycore.constructions.construction import Picture
from pycore.errors import Fault, InputError
from pycore.forms.elements import MOST_ELEMENTS, Typed, parts, read_elements, scaled
from pycore.forms.reading import Reader
from pycore.practice.codes import Code
from pycore.practice.task import Mistake, Task
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Field, Output, Working
from pycore.sums.case import SumCase
from pycore.sums.circuit import (
    LEAST_HERTZ,
    MOST_HERTZ,
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
from pycore.words import Phrase, Symbol, plain, say
from pycore.words import circuits as circuit_words
from pycore.words import sums as sum_words

MOST = 4
DEFAULTS = ("60 Ω", "20 Ω + 120 mH", "47 µF", "")
FIELDS: tuple[Field, ...] = (
    *(
        Field(f"b{number}", words.label(number), "phasor", "values", DEFAULTS[number - 1], sample=f"i{number}",
              help=words.HELP if number == 1 else "")
        for number in range(1, MOST + 1)
    ),
    Field("supply", words.SUPPLY, "phasor", "values", "230 V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    *drawing_fields("amperes", words.REFERENCE, second="volts"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
AMPS, VOLTS = Symbol("I"), Symbol("V")


@dataclass(frozen=True, slots=True)
class ParallelProblem:
    """What the form says: the numbers of the branches that are there, their elements as typed, and the circuit."""

    numbers: tuple[int, ...]
    typed: tuple[tuple[Typed, ...], ...]
    circuit: Parallel


class ParallelCase(SumCase):
    """One parallel circuit, its branch currents as arms of a sum."""

    slug = "parallel-circuit"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False
    part_word = "branch"
    sum_word: Phrase = ("whole current",)

    def __init__(self, problem: SheetProblem, given: ParallelProblem, solution: ParallelSolution) -> None:
        self.given, self.solution = given, solution
        self.typed_companions = given.circuit.amperes is None
        values = dict(zip(given.numbers, solution.currents, strict=True))
        arms = arms_of([values.get(number, 0j) for number in range(1, MOST + 1)])
        symbols = [Symbol("I", str(number)) for number in range(1, MOST + 1)]
        tags = tags_of(symbols, AMPS, (VOLTS,))
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        mark = problem.writing.mark
        telling = Telling(
            tags=tags,
            lines=tuple(plain((symbol,)) for symbol in symbols),
            reference=tags[arms[0].key] if on_first and reference != 0.0 else (VOLTS,),
            voltage=(VOLTS,),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.AMPERES,
            companions=companion_of(solution.volts, "V", words.VOLTS, words.WHY_VOLTAGE, mark),
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)
        self.total = phasor.total(solution.currents)

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        task = words.TASK if self.typed_companions else words.TASK_KNOWN
        return sheet_words(self, plan, kind, task, self.given_words() + ".")

    def branch_text(self, place: int) -> str:
        """A branch as it is written: 20 Ω + 120 mH; a reactance in ohms by its kind, or with its j beside another."""
        alone = self.given.typed[place][0] if len(self.given.typed[place]) == 1 else None
        if alone is not None and alone.element.in_ohms and alone.element.kind != RESISTOR:
            return circuit_words.reactance_of(alone.element.kind, alone.said)
        return " + ".join(
            ("−j" if one.element.kind == CAPACITOR else "j") + one.said if one.element.in_ohms else one.said
            for one in self.given.typed[place]
        ).replace("+ −j", "− j")

    def given_words(self) -> str:
        """60 Ω, 20 Ω + 120 mH, 47 µF side by side on 230 V, 50 Hz."""
        circuit, mark = self.given.circuit, self.telling.mark
        known = circuit.volts if circuit.amperes is None else circuit.amperes
        supply = scaled(known or 0.0, "V" if circuit.amperes is None else "A", mark)
        branches = ", ".join(self.branch_text(place) for place in range(len(self.given.numbers)))
        tell = words.given if circuit.amperes is None else words.given_current
        return tell(branches, supply, scaled(circuit.hertz, "Hz", mark))

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """What goes wrong between the branches and their currents."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.parallel_circuit.practice import parallel_mistakes

        return parallel_mistakes(self) if self.typed_companions else ()


def read_parallel(reader: Reader) -> tuple[ParallelProblem, ParallelSolution]:
    """The circuit of a form and its solution. Raises InputError."""
    mark = "," if reader.choice("decimal") == "comma" else "."
    numbers: list[int] = []
    typed: list[tuple[Typed, ...]] = []
    for number in range(1, MOST + 1):
        found = read_elements(reader, f"b{number}", "Ω", mark)
        if len(found) > MOST_ELEMENTS:
            reader.fault(f"b{number}", circuit_words.too_many(reader.label(f"b{number}"), MOST_ELEMENTS))
        elif found:
            numbers.append(number)
            typed.append(found)
    volts, amperes = read_supply(reader, "supply")
    hertz = reader.amount("frequency", "Hz", LEAST_HERTZ, MOST_HERTZ)
    if not reader.faults and not numbers:
        reader.fault("b1", words.no_branches())
    if reader.faults or hertz is None:
        reader.finish()
    branches = tuple(tuple(one.element for one in branch) for branch in typed)
    circuit = Parallel(branches, hertz or 50.0, volts, amperes)
    try:
        return ParallelProblem(tuple(numbers), tuple(typed), circuit), solve(circuit)
    except ShortCircuit as problem:
        name = f"b{numbers[problem.branch]}"
        raise InputError(Fault(name, reader.given(name), words.short(reader.label(name)))) from None
    except NoAdmittance:
        raise InputError(Fault("supply", reader.given("supply"), words.no_way(reader.label("supply")))) from None


class ParallelCircuit(SumPage[ParallelCase]):
    """The page ``/parallel-circuit/``."""

    slug = "parallel-circuit"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 4

    def case(self, form: Mapping[str, str]) -> ParallelCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        given, solution = read_parallel(reader)
        sizes = [float(f"{phasor.magnitude(value):.3g}") for value in solution.currents]
        return ParallelCase(read_sheet(reader, FIELDS, sizes, "A", "V", computed=True), given, solution)

    def outputs(self, case: ParallelCase, plan: Plan) -> tuple[Output, ...]:
        """What was not given first: whole current or voltage; admittance, power factor, each current, resonance."""
        solution, mark = case.solution, case.telling.mark

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, written = parts(value, unit, mark)
            return Output(name, value, number, written, label, "sum" if name == "current" else "")

        size = phasor.magnitude(solution.whole)
        current = output("current", phasor.magnitude(solution.current), "A", say(words.CURRENT))
        voltage = output("supply-voltage", solution.volts, "V", say(words.VOLTAGE))
        made = [
            *((current, voltage) if case.typed_companions else (voltage, current)),
            output("admittance", size, "S", say(words.ADMITTANCE)),
            *((output("impedance", 1.0 / size, "Ω", say(words.IMPEDANCE)),) if size else ()),
            *angle_outputs(solution.angle, solution.factor, mark),
            output("active-power", solution.power.real, "W", say(words.POWER)),
        ]
        for number, value in zip(case.given.numbers, solution.currents, strict=True):
            made.append(output(f"current-{number}", phasor.magnitude(value), "A", case.telling.tags[f"i{number}"]))
        if solution.resonance is not None:
            made.append(output("resonance", solution.resonance.hertz, "Hz", say(words.RESONANCE)))
            if solution.resonance.ohms < 1e12:
                made.append(output("dynamic-impedance", solution.resonance.ohms, "Ω", say(words.DYNAMIC)))
        return (*made, *outputs_on_paper(case, plan, "sum-length"))

    def summary(self, case: ParallelCase, plan: Plan) -> tuple[Phrase, ...]:
        """How the whole current stands to the voltage, and what the drawing gives."""
        solution = case.solution
        if solution.angle is None or solution.factor is None:
            return sum_summary(case, plan)
        lies = factor_phrase(solution.angle, solution.factor, (AMPS,), (VOLTS,), case.telling.mark)
        return (lies, *sum_summary(case, plan)[1:])

    def given(self, case: ParallelCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: ParallelCase) -> tuple[Phrase, ...]:
        """Resonance, currents beyond the supply's, the first sanity check."""
        solution, mark = case.solution, case.telling.mark
        whole = phasor.magnitude(solution.current)
        made: list[Phrase] = []
        if solution.resonance is not None:
            told = scaled(solution.resonance.hertz, "Hz", mark)
            ohms = solution.resonance.ohms
            loss = ohms < 1e12
            made.append(words.resonates(told, scaled(ohms, "Ω", mark)) if loss else words.resonates_without_loss(told))
        sizes = [phasor.magnitude(value) for value in solution.currents]
        for number, size in zip(case.given.numbers, sizes, strict=True):
            if whole > 0 and size > 1.05 * whole:
                times = times_text(size / whole, mark)
                made.append(words.larger(case.telling.tags[f"i{number}"], times))
        if whole > 0 and len(case.arms) > 1:
            plain_sum = phasor.total(complex(size, 0.0) for size in sizes).real
            made.append(words.not_numbers(scaled(plain_sum, "A", mark), scaled(whole, "A", mark)))
        return tuple(made)

    def notices(self, case: ParallelCase, plan: Plan) -> tuple[Phrase, ...]:
        """Currents too small for an arrow, crossings too flat."""
        drawn = [arm.number for arm in case.arms]
        left = [case.lines[number - 1] for number in case.given.numbers if number not in drawn]
        made = [words.too_small_to_draw(", ".join(left))] if left else []
        return (*made, *small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: ParallelCase, plan: Plan) -> tuple[Working, ...]:
        """Each branch, the parts of its current, their sums; admittance, powers, resonance, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.parallel_circuit.workings import parallel_blocks

        return Working("formula", say(words.CALCULATED), parallel_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: ParallelCase) -> dict[str, Mapping[str, str]]:
        """How each branch was understood: its impedance."""
        made: dict[str, Mapping[str, str]] = {}
        mark = case.telling.mark
        for number, value in zip(case.given.numbers, case.solution.impedances, strict=True):
            size = scaled(phasor.magnitude(value), "Ω", mark)
            angle = quantity.fixed(phasor.angle(value), 1, mark) + "°"
            told = sum_words.at_angle(size, angle)
            made[f"b{number}"] = {"said": f"Z{NO_BREAK_SPACE}={NO_BREAK_SPACE}{told}"}
        return made

    def task_of_case(self, case: ParallelCase) -> Task:
        """What is to be found, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.parallel_circuit.practice import parallel_task

        return parallel_task(case)

    def practice_form(self, code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's circuit, with a class's own choices. Raises NoProblem."""
        from pycore.calculators.parallel_circuit.practice import parallel_form

        return parallel_form(code, choices)


def resistive(branch: tuple[Typed, ...]) -> bool:
    """Whether a branch has resistors only."""
    return all(one.element.kind == RESISTOR for one in branch)
