"""From the form to the sum that is drawn."""

from dataclasses import dataclass

from pycore import phasor
from pycore.calculators.parallel_circuit import words
from pycore.calculators.parallel_circuit.circuit import (
    NoAdmittanceError,
    ParallelInput,
    ParallelSolution,
    ShortCircuitError,
    solve,
)
from pycore.calculators.parallel_circuit.fields import FIELDS, MOST
from pycore.circuits.elements import CAPACITOR, RESISTOR
from pycore.constructions.construction import DrawingConvention
from pycore.errors import Fault, InputError
from pycore.forms.conventions import MARKS
from pycore.forms.elements import MOST_ELEMENTS, TypedElement, read_elements, scaled
from pycore.forms.reading import Reader
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.circuit import (
    AMPS,
    LEAST_HERTZ,
    MOST_HERTZ,
    VOLTS,
    arms_of,
    companion_of,
    read_supply,
    supplied_text,
    supply_texts,
    tags_of,
)
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import circuits as circuit_words
from pycore.words import plain
from pycore.words.phrase import Phrase, Symbol


@dataclass(frozen=True, slots=True)
class ParallelProblem:
    """The checked input of the form: numbers of the branches that are used, their elements as typed, the circuit."""

    numbers: tuple[int, ...]
    typed: tuple[tuple[TypedElement, ...], ...]
    circuit: ParallelInput


class ParallelCase(SumCase):
    """One parallel circuit, its branch currents as arms of a sum."""

    slug = "parallel-circuit"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False
    part_word = "branch"
    sum_word: Phrase = words.SUM_WORD

    def __init__(self, problem: SheetProblem, entered: ParallelProblem, solution: ParallelSolution) -> None:
        self.entered, self.solution = entered, solution
        self.typed_companions = entered.circuit.amperes is None
        self.guess_word = "" if self.typed_companions else words.GUESS_KNOWN
        values = dict(zip(entered.numbers, solution.currents, strict=True))
        arms = arms_of([values.get(number, 0j) for number in range(1, MOST + 1)])
        symbols = [Symbol("I", str(number)) for number in range(1, MOST + 1)]
        tags = tags_of(symbols, AMPS, (VOLTS,))
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        mark = problem.writing.mark
        notation = Notation(
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
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)
        self.total = phasor.total(solution.currents)

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        known = scaled(self.entered.circuit.amperes or 0.0, "A", self.notation.mark)
        task = words.TASK if self.typed_companions else words.task_known(known)
        return sheet_words(self, plan, kind, method, task, self.values_text() + ".")

    def branch_text(self, place: int) -> str:
        """A branch as it is written: 20 Ω + 120 mH; a reactance in ohms by its kind, or with its j beside another: 20 +
        j68 Ω, with one unit."""
        branch = self.entered.typed[place]
        alone = branch[0] if len(branch) == 1 else None
        if alone is not None and alone.element.in_ohms and alone.element.kind != RESISTOR:
            return circuit_words.reactance_of(alone.element.kind, alone.text)
        following = (*branch[1:], None)
        return " + ".join(
            (("−j" if one.element.kind == CAPACITOR else "j") if one.element.in_ohms else "")
            + (one.number if after and after.element.in_ohms and after.unit == one.unit else one.text)
            for one, after in zip(branch, following, strict=True)
        ).replace("+ −j", "− j")

    def value_texts(self) -> tuple[str, ...]:
        """Each branch, the supply and its frequency."""
        branches = (" + ".join(one.value_text for one in branch) for branch in self.entered.typed)
        return (*branches, *supply_texts(self.entered.circuit))

    def values_text(self) -> str:
        """60 Ω, 20 Ω + 120 mH, 47 µF in parallel on 230 V, 50 Hz."""
        branches = (self.branch_text(place) for place in range(len(self.entered.numbers)))
        sentences = words.values_text, words.values_text_with_current
        return supplied_text(branches, self.entered.circuit, self.notation.mark, *sentences)


def read_parallel(reader: Reader) -> tuple[ParallelProblem, ParallelSolution]:
    """The circuit of a form and its solution. Raises InputError."""
    mark = MARKS[reader.choice("decimal")]
    numbers: list[int] = []
    typed: list[tuple[TypedElement, ...]] = []
    for number in range(1, MOST + 1):
        elements = read_elements(reader, f"b{number}", "Ω", mark)
        if len(elements) > MOST_ELEMENTS:
            reader.fault(f"b{number}", circuit_words.too_many(reader.label(f"b{number}"), MOST_ELEMENTS))
        elif elements:
            numbers.append(number)
            typed.append(elements)
    volts, amperes = read_supply(reader, "supply")
    hertz = reader.amount("frequency", "Hz", LEAST_HERTZ, MOST_HERTZ)
    if not reader.faults and not numbers:
        reader.fault("b1", words.NO_BRANCHES)
    if reader.faults or hertz is None:
        reader.finish()
    branches = tuple(tuple(one.element for one in branch) for branch in typed)
    circuit = ParallelInput(branches, hertz or 50.0, volts, amperes)
    try:
        return ParallelProblem(tuple(numbers), tuple(typed), circuit), solve(circuit)
    except ShortCircuitError as problem:
        name = f"b{numbers[problem.branch]}"
        raise InputError(Fault(name, reader.text(name), words.short_circuit(reader.label(name)))) from None
    except NoAdmittanceError:
        message = words.no_voltage_possible(reader.label("supply"))
        raise InputError(Fault("supply", reader.text("supply"), message)) from None


def resistive(branch: tuple[TypedElement, ...]) -> bool:
    """Whether a branch has resistors only."""
    return all(one.element.kind == RESISTOR for one in branch)
