"""From the form to the sum that is drawn."""

from dataclasses import dataclass

from pycore import phasor
from pycore.calculators.series_circuit import words
from pycore.calculators.series_circuit.circuit import NoImpedanceError, SeriesInput, SeriesSolution, solve
from pycore.calculators.series_circuit.fields import FIELDS
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR
from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.constructions.methods import COMPONENTS, PAIR_ORDERS
from pycore.constructions.names import arm_key
from pycore.errors import Fault, InputError
from pycore.forms.conventions import MARKS
from pycore.forms.elements import MOST_ELEMENTS, TypedElement, read_elements
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
from pycore.words.phrase import Phrase, Symbol

GROUPS = (("r", "Ω", RESISTOR), ("l", "H", COIL), ("c", "F", CAPACITOR))
LETTERS = {RESISTOR: "R", COIL: "L", CAPACITOR: "C"}


@dataclass(frozen=True, slots=True)
class SeriesProblem:
    """The checked input of the form: its elements as typed, in the order of the fields, and the circuit."""

    typed: tuple[TypedElement, ...]
    circuit: SeriesInput


def names_of(typed: tuple[TypedElement, ...]) -> tuple[str, ...]:
    """Indexes of the elements: R, L, C, or R1, R2 where there are several of a kind."""
    kinds = [LETTERS[one.element.kind] for one in typed]
    names: list[str] = []
    for place, kind in enumerate(kinds):
        number = kinds[: place + 1].count(kind)
        names.append(f"{kind}{number}" if kinds.count(kind) > 1 else kind)
    return tuple(names)


def _element_text(typed: TypedElement) -> str:
    """An element as typed; a reactance in ohms also names coil or capacitor."""
    kind = typed.element.kind
    return circuit_words.reactance_of(kind, typed.text) if typed.element.in_ohms and kind != RESISTOR else typed.text


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

    def __init__(self, problem: SheetProblem, entered: SeriesProblem, solution: SeriesSolution) -> None:
        self.entered, self.solution = entered, solution
        self.names = names_of(entered.typed)
        self.volts_drawn = problem["drawn"] == "voltages"
        self.typed_companions = entered.circuit.amperes is not None
        self.result_word = words.RESULTS[problem["drawn"]]
        self.guess_word = "" if self.typed_companions or not self.volts_drawn else words.GUESS
        values = solution.voltages if self.volts_drawn else solution.impedances
        arms = arms_of(values)
        symbols = [Symbol("V", name) if self.volts_drawn else impedance_symbol(name) for name in self.names]
        tags = tags_of(symbols, VOLTS if self.volts_drawn else Symbol("Z"), (AMPS,))
        origin: Phrase = (AMPS,) if self.volts_drawn else (Symbol("R"),)
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        notation = Notation(
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
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)
        self.total = phasor.total(values)
        self.sum_word = words.SUM_WORDS[problem["drawn"]]
        self.taught_order = self.opposite_pair()

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        known = "-known" if self.volts_drawn and self.typed_companions else ""
        task = words.TASKS[self.problem["drawn"] + known]
        return sheet_words(self, plan, kind, method, task, self.values_text() + ".")

    def value_texts(self) -> tuple[str, ...]:
        """Each element, the supply and its frequency."""
        return (*(one.value_text for one in self.entered.typed), *supply_texts(self.entered.circuit))

    def values_text(self) -> str:
        """30 Ω, 0.2 H, 100 µF in series on 230 V, 50 Hz."""
        elements = (_element_text(one) for one in self.entered.typed)
        sentences = words.values_text, words.values_text_with_current
        return supplied_text(elements, self.entered.circuit, self.notation.mark, *sentences)

    def opposite_pair(self) -> str:
        """The order that begins with a coil and a capacitor, whose phasors are opposite; "" if it is no order."""
        numbers = {kind: [arm.number for arm in self.arms if self.kind_of(arm) == kind] for kind in (COIL, CAPACITOR)}
        pairs = {f"{coil}{capacitor}" for coil in numbers[COIL] for capacitor in numbers[CAPACITOR]}
        return next((order for order in PAIR_ORDERS if order in pairs and len(self.arms) == 3), "")

    def kind_of(self, arm: Arm) -> str:
        """The kind of element that an arm stands for."""
        return self.entered.typed[arm.number - 1].element.kind

    def before_steps(self, construction: Construction) -> Phrase:
        """That opposite phasors are subtracted first, and which order does so."""
        if not self.taught_order or construction.method == COMPONENTS:
            return ()
        coil, capacitor = (self.notation.tags[arm_key(number)] for number in self.taught_order)
        if construction.order == self.taught_order:
            return words.opposite_first(coil, capacitor)
        return words.opposite_elsewhere(coil, capacitor, self.order_words(construction.method, self.taught_order))

    def element_symbols(self) -> tuple[Symbol, ...]:
        """R, X with index L ... of each element."""
        return tuple(impedance_symbol(name) for name in self.names)


def _faulty_elements(reader: Reader, typed: tuple[TypedElement, ...]) -> None:
    if reader.faults:
        return
    if not typed:
        reader.fault("r", circuit_words.NO_ELEMENTS)
    elif len(typed) > MOST_ELEMENTS:
        reader.fault("r", circuit_words.too_many(reader.label("r"), MOST_ELEMENTS))


def read_series(reader: Reader) -> tuple[SeriesProblem, SeriesSolution]:
    """The circuit of a form and its solution. Raises InputError."""
    mark = MARKS[reader.choice("decimal")]
    typed: tuple[TypedElement, ...] = ()
    for name, unit, kind in GROUPS:
        reactive = "" if kind == RESISTOR else kind
        typed += read_elements(reader, name, unit, mark, reactive=reactive, only=kind)
    volts, amperes = read_supply(reader, "supply")
    hertz = reader.amount("frequency", "Hz", LEAST_HERTZ, MOST_HERTZ)
    _faulty_elements(reader, typed)
    if reader.faults or hertz is None:
        reader.finish()
    if typed and all(one.element.value == 0.0 for one in typed):
        names = [name for name, _, _ in GROUPS if reader.text(name)]
        raise InputError(*(Fault(name, reader.text(name), words.zero_circuit(reader.label(name))) for name in names))
    circuit = SeriesInput(tuple(one.element for one in typed), hertz or 50.0, volts, amperes)
    try:
        return SeriesProblem(typed, circuit), solve(circuit)
    except NoImpedanceError:
        faults = [Fault(name, reader.text(name), words.nothing_limits(reader.label(name))) for name in ("r", "supply")]
        raise InputError(*faults) from None
