"""From the form to the sum that is drawn."""

import math

from pycore import phasor, quantity
from pycore.calculators.star_and_delta import words
from pycore.calculators.star_and_delta.circuit import StarDeltaSolution
from pycore.calculators.star_and_delta.fields import BEFORE, FIELDS, NAMES, NEXT
from pycore.constructions.construction import Arm, DrawingConvention
from pycore.forms import conventions
from pycore.forms.loads import read_load
from pycore.forms.phasor_text import is_polar, read_phasor
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.case import SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.trig import ROOT_THREE
from pycore.words import moves_list, plain
from pycore.words import sums as sum_words
from pycore.words.loads import OPEN
from pycore.words.phrase import Phrase, Symbol

Loads = tuple[complex | None, complex | None, complex | None]


def other_of(connection: str, line: int) -> int:
    """The number of the phasor that is subtracted: the next line's voltage, or the previous branch's current."""
    return NEXT[line] if connection == "star" else BEFORE[line]


def tags_of(connection: str, line: int, names: str) -> tuple[dict[int, Phrase], Symbol, Symbol]:
    """Tags of the three phasors, the symbol of what is drawn, and that of the voltage at 0°."""
    short = {number: name.removeprefix("L") for number, name in enumerate(conventions.NAMES[names], start=1)}
    between = {number: short[number] + short[NEXT[number]] for number in NEXT}
    if connection == "star":
        phases: dict[int, Phrase] = {number: (Symbol("V", short[number]),) for number in NEXT}
        return phases, Symbol("V", between[line]), Symbol("V", short[1])
    branches: dict[int, Phrase] = {number: (Symbol("I", between[number]),) for number in NEXT}
    return branches, Symbol("I", short[line]), Symbol("V", between[1])


def line_tags(names: str) -> tuple[Phrase, ...]:
    """The tags of the three line currents, by the names of the lines."""
    return tuple((Symbol("I", name.removeprefix("L")),) for name in conventions.NAMES[names])


class StarDeltaCase(SumCase):
    """Two phasors of the three, the second turned round."""

    slug = "star-and-delta"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE

    def __init__(self, problem: SheetProblem, solution: StarDeltaSolution) -> None:
        self.solution, self.star = solution, problem["connection"] == "star"
        self.result_word = words.RESULTS[problem["connection"]]
        self.typed_sizes = self.star and problem["known"] == "phase"
        line = self.line = int(problem["line"])
        other = self.other = other_of(problem["connection"], line)
        own, symbol, origin = tags_of(problem["connection"], line, problem["names"])
        self.own = own
        values = solution.phases if self.star else solution.branches
        # In delta angles count from the voltage between the first two lines.
        turn = self.origin_turn = 1.0 + 0j if self.star else phasor.polar(1.0, -phasor.angle(solution.between[0]))
        self.values = tuple(value * turn for value in values)
        drawn = ((line, self.values[line - 1]), (other, -self.values[other - 1]))
        self.turning_moves = moves_list.turn_round([plain(own[other])] if values[other - 1] != 0 else [])
        arms = tuple(
            Arm(f"i{number}", number, phasor.magnitude(value), _tidy(phasor.angle(value)))
            for number, value in drawn if value != 0
        )  # fmt: skip
        tags = {f"i{number}": tag for number, tag in own.items()}
        tags[f"i{other}"] = ("−", *own[other])
        tags |= {"i12": ("",), "i13": ("",), "i23": ("",), "sum": (symbol,), "return": ("−", symbol)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        notation = Notation(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in (1, 2, 3)),
            reference=tags[arms[0].key] if arms[0].angle == reference else (origin,),
            voltage=(origin,),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.VOLTS if self.star else words.AMPERES,
            origins={f"i{other}": words.opposite(own[other])},
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    def difference(self, values: tuple[complex, ...]) -> complex:
        """The first phasor of the difference minus the other one, of three values."""
        return values[self.line - 1] - values[self.other - 1]

    @property
    def own_tags(self) -> tuple[Phrase, ...]:
        """The tags of all three phase voltages, or of all three branch currents."""
        return self.own[1], self.own[2], self.own[3]

    def on_paper(self, value: complex) -> complex:
        """A phasor in the directions of the paper."""
        return phasor.polar(phasor.magnitude(value), self.picture.paper_angle(phasor.angle(value)))

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        values_text = self.values_text(short=plan.layout.small)
        back = self.star and self.problem["known"] == "line"
        names = plain(self.notation.tags["sum"]), plain(self.own[self.line]), plain(self.own[self.other])
        task = words.task(*names, star=self.star, back=back)
        return sheet_words(self, plan, kind, method, task, values_text)

    @property
    def connected(self) -> bool:
        """Whether any load is there at all; in star the voltages can be drawn without."""
        return any(load is not None for load in self.solution.circuit.loads)

    @property
    def resistive(self) -> bool:
        """Whether every load that is there is a resistance."""
        return all(load is None or load.imag == 0.0 for load in self.solution.circuit.loads)

    def load_text(self, number: int) -> str:
        """The impedance of load ``number`` (from 1) as text, or the word for an open load."""
        load = self.solution.circuit.loads[number - 1]
        if load is None:
            return OPEN
        typed = self.problem.typed[NAMES[number - 1]] or self.problem.typed[NAMES[0]]
        if not is_polar(typed):
            return figures.impedance(load, self.notation.mark)
        mark = self.notation.mark
        size, angle = (quantity.exact(value).replace("-", quantity.MINUS).replace(".", mark)
                       for value in read_phasor(typed, "Ω"))  # fmt: skip
        return sum_words.at_angle(f"{size}{NO_BREAK_SPACE}Ω", f"{angle}°")

    def forms_of(self, number: int) -> tuple[str, str]:
        """A load in rectangular and in polar form, the one that was typed with the digits that were typed."""
        load, mark = self.solution.circuit.loads[number - 1], self.notation.mark
        if load is None:
            return OPEN, ""
        typed = self.problem.typed[NAMES[number - 1]] or self.problem.typed[NAMES[0]]
        if is_polar(typed):
            return figures.rectangular(load, "Ω", mark), self.load_text(number)
        return self.load_text(number), figures.polar(load, "Ω", mark)

    def echo_of(self, number: int) -> str:
        """How a load's field was understood: the form in which it was not typed, or the first load's text for an
        empty field; "" for a resistance, which has only one form."""
        load, typed = self.solution.circuit.loads[number - 1], self.problem.typed[NAMES[number - 1]]
        if load is None or not typed:
            return self.load_text(number)
        rectangular, polar = self.forms_of(number)
        return "" if load.imag == 0 else rectangular if is_polar(typed) else polar

    def value_texts(self) -> tuple[str, ...]:
        """Each load and the voltage that is known (V)."""
        loads = (self.load_text(number).replace(self.notation.mark, ".") for number in (1, 2, 3))
        return (*loads, quantity.plain(self.known_voltage))

    @property
    def known_voltage(self) -> float:
        """The voltage as it was typed, of a phase or between lines, to two decimals (V)."""
        volts = self.solution.circuit.line_voltage
        return round(volts / ROOT_THREE if self.problem["known"] == "phase" else volts, 2)

    def values_text(self, *, short: bool = False) -> str:
        """Loads, connection, voltage and sequence; ``short`` leaves out the usual sequence."""
        if not self.connected:
            loads = words.NO_LOADS
        elif self.solution.balanced:
            loads = words.three_equal_loads(self.load_text(1), resistive=self.resistive)
        else:
            named = zip(self.load_names(), (1, 2, 3), strict=True)
            loads = ", ".join(words.named_load(name, self.load_text(number)) for name, number in named)
            loads = words.all_resistive(loads) if self.resistive else loads
        volts = quantity.plain(self.known_voltage, self.notation.mark) + f"{NO_BREAK_SPACE}V"
        voltage_text = words.to_neutral(volts) if self.problem["known"] == "phase" else words.between_lines(volts)
        one, two, three = conventions.line_names(self.problem["names"])
        sequence = (one, two, three) if self.problem["sequence"] == "123" else (one, three, two)
        order = "" if short and self.problem["sequence"] == "123" else ", ".join(sequence)
        return words.values_text(loads, self.problem["connection"], voltage_text, order)

    def load_names(self) -> tuple[str, ...]:
        """Each load's symbol: by its line in star, by both its lines in delta."""
        short = [name.removeprefix("L") for name in conventions.line_names(self.problem["names"])]
        indices = short if self.star else [short[number - 1] + short[NEXT[number] - 1] for number in (1, 2, 3)]
        return tuple(plain((Symbol("Z", index),)) for index in indices)


def _tidy(angle: float) -> float:
    """An angle that is a whole degree but for rounding, as that degree: 30, not 29.999999999999996."""
    near = float(round(angle))
    return near if math.fabs(angle - near) < 1e-9 else angle


def read_loads(reader: Reader) -> Loads:
    """The three loads of a form; an empty field is like the first."""
    first = read_load(reader, "z1", words.bad_load)
    second, third = (read_load(reader, name, words.bad_load) if reader.text(name) else first for name in NAMES[1:])
    return first, second, third
