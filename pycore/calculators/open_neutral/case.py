"""One problem of the open neutral: loads and supply as phasors to draw, and the words of its sheets."""

from pycore import phasor, quantity
from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.circuit import FloatingStarPointError, OpenNeutral, UnbalancedStar, solve
from pycore.calculators.open_neutral.construction import DIVIDE, METHOD, displacement, ohms_of_one_angle
from pycore.calculators.open_neutral.fields import FIELDS, NAMES
from pycore.calculators.open_neutral.sentences import own_steps
from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.constructions.methods import COMPONENTS, FIRST_PAIR, PARALLELOGRAM, TIP_TO_TAIL
from pycore.drawing import Ink
from pycore.errors import Fault, InputError
from pycore.forms import conventions
from pycore.forms.loads import read_load
from pycore.forms.phasor_text import is_rectangular
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.trig import ROOT_THREE
from pycore.words import plain
from pycore.words.phrase import Phrase, Symbol, say


class OpenCase(SumCase):
    """Three loads with the neutral open or connected, as the form asks."""

    slug = "open-neutral"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    part_word = "line"

    def __init__(self, problem: SheetProblem, solution: OpenNeutral, loads: tuple[complex | None, ...]) -> None:
        self.solution, self.loads = solution, loads
        self.open = problem["method"] == METHOD
        self.is_sum = not self.open
        self.method_in_task = not self.open
        self.result_word = words.RESULT_OPEN if self.open else words.RESULT_WHOLE
        self.guess_word = words.GUESS_OPEN if self.open else ""
        self.methods = (METHOD,) if self.open else (TIP_TO_TAIL, PARALLELOGRAM, COMPONENTS)
        drawn = solution.phases if self.open else solution.currents
        arms = tuple(
            Arm(f"i{number}", number, phasor.magnitude(value), phasor.angle(value))
            for number, value in enumerate(drawn, start=1)
            if value != 0
        )
        letter = "V" if self.open else "I"
        self.ohms = ohms_of_one_angle(loads)
        self.connected = tuple(number for number, load in enumerate(loads, start=1) if load is not None)
        self.star_point = words.star_point_symbol(problem["names"])
        tags = conventions.symbols(letter, problem["names"])
        if self.open:
            tags["sum"] = (self.star_point,)
            tags |= {f"u{n}": (Symbol("U", name),) for n, name in enumerate(_short_names(problem["names"]), start=1)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        voltage = conventions.symbols("V", problem["names"])["i1"]
        notation = Notation(
            tags=tags,
            lines=conventions.line_names(problem["names"]),
            reference=tags[arms[0].key] if arms[0].angle == reference else voltage,
            voltage=voltage,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.VOLTS if self.open else words.AMPERES,
            unmarked=words.MEASURE_TOO if self.open else "",
            own_steps=own_steps(
                self.ohms, solution.star.line_voltage, self.connected, displaced=solution.displacement != 0
            ),
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)
        self.total = solution.displacement if self.open else solution.neutral

    def inks(self) -> dict[str, Ink]:
        """The lines' colours, those of their loads alike."""
        inks = super().inks()
        return inks | {f"u{number}": inks[f"i{number}"] for number in (1, 2, 3)}

    def possible(self, method: str) -> str:
        """The displacement, or the requested method for the sum of the currents."""
        return method if method == METHOD else super().possible(method)

    def orders(self, method: str, requested: str = "") -> tuple[str, ...]:
        """The displacement has only one order."""
        return (FIRST_PAIR,) if method == METHOD else super().orders(method, requested)

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order."""
        if method == METHOD:
            return displacement(self.arms, self.solution.displacement, self.picture.reference, self.ohms)
        return super().build(method, order)

    def method_title(self, method: str, order: str) -> Phrase:
        """Title of a construction among the workings."""
        return say(words.BY_DISPLACEMENT) if method == METHOD else super().method_title(method, order)

    def method_words(self, plan: Plan, *, any_method: bool = False) -> str:
        """The method as the title block says it."""
        if self.open:
            return words.BY_DISPLACEMENT
        return f"{words.TITLE_WHOLE}: {super().method_words(plan, any_method=any_method)}"

    def further(self, construction: Construction) -> tuple[ComponentRow, ...]:
        """Each load's voltage, where the neutral is open."""
        if not self.open:
            return ()
        return tuple(
            ComponentRow(self.notation.tags[f"u{number}"], phasor.magnitude(value), phasor.angle(value))
            for number, value in enumerate(self.solution.voltages, start=1)
        )

    def finding_moves(self, construction: Construction) -> tuple[str, ...]:
        """How the star point is found by drawing, in a problem for easy reading."""
        pairs = [step.arm_numbers for step in construction.steps if step.name == DIVIDE]
        moves: list[str] = []
        for place, (first, second) in enumerate(pairs):
            third = next(number for number in (1, 2, 3) if number not in (first, second))
            lines = [self.lines[number - 1] for number in (first, second)]
            tips = [plain(self.notation.tags[f"i{number}"]) for number in (first, second, third)]
            moves += words.again_with(lines, tips) if place else words.share_of_two(lines, tips)
            if len(pairs) > 1 and not place:
                moves.append(words.to_third_tip(tips))
        return (*moves, words.FIND_CROSSING if len(pairs) > 1 else words.FIND_MARK) if moves else ()

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        values = self.values_text(short=plan.layout.small)
        task = words.TASK_WHOLE
        if self.open:
            task = words.TASK_FOUND if self.ohms and not self.closed else words.TASK_OPEN
            task = f"{task}. {self.voltage_words(self.connected[0])}"
        return sheet_words(self, plan, kind, method, task, values)

    def zero_reason(self) -> Phrase:
        """Why there is no displacement to draw, or no neutral current."""
        return words.NEARLY_CENTRED if self.open and self.total != 0 else super().zero_reason()

    def voltage_words(self, number: int) -> str:
        """What the symbol of a load's voltage means."""
        return words.voltage_of_load(self.notation.tags[f"u{number}"], self.lines[number - 1])

    def load_text(self, number: int) -> str:
        """A load as text: 20 Ω, 20 + j10 Ω; to four figures if it was calculated from a polar form or a power."""
        value, text = self.loads[number - 1], self.problem.typed[NAMES[number - 1]]
        if value is None:
            return words.NOTHING_CONNECTED
        return figures.impedance(value if is_in_ohms(text) else rounded(value), self.notation.mark)

    def value_texts(self) -> tuple[str, ...]:
        """Each load, "" where nothing is connected, and the line voltage (V)."""
        texts = (self.load_text(number) if load is not None else "" for number, load in enumerate(self.loads, start=1))
        loads = (text.replace(self.notation.mark, ".") for text in texts)
        return (*loads, quantity.plain(self.solution.star.line_voltage))

    def values_text(self, *, short: bool = False) -> str:
        """The loads, the line voltage (V) and the sequence; with ``short``, the usual sequence is left out."""
        volts = quantity.plain(self.solution.star.line_voltage, self.notation.mark) + f"{NO_BREAK_SPACE}V"
        one, two, three = self.lines
        sequence = (one, two, three) if self.problem["sequence"] == "123" else (one, three, two)
        loads = [words.on_line(line, self.load_text(number)) for number, line in enumerate(self.lines, start=1)]
        sequence_text = "" if short and self.problem["sequence"] == "123" else ", ".join(sequence)
        return words.on_voltage(", ".join(loads), volts, sequence_text)


Loads = tuple[complex | None, ...]
"""The loads (ohms) on L1, L2 and L3; None for a line without one."""


def read_star(reader: Reader) -> tuple[OpenNeutral, Loads]:
    """The solved star of a form, and its loads. Raises InputError for values that cannot be used or that fix no star
    point."""
    volts = reader.amount("volts", "V", 1.0, 1e5) or 400.0
    loads = tuple(
        read_load(reader, name, words.bad_load, volts / ROOT_THREE) if reader.text(name) else None for name in NAMES
    )
    if not reader.faults and all(load is None for load in loads):
        reader.fault("z1", words.NO_LOADS)
    # The method's fault, if any, is said with those of the values.
    sequence, _ = reader.choice("sequence"), reader.choice("method")
    if reader.faults:
        reader.finish()
    one, two, three = (0j if load is None else 1.0 / load for load in loads)
    try:
        return solve(UnbalancedStar(volts, (one, two, three), sequence)), loads
    except FloatingStarPointError:
        raise InputError(*(Fault(name, reader.text(name), words.WITHOUT_BOUND) for name in NAMES)) from None


def drawn_sizes(solution: OpenNeutral, method: str) -> tuple[list[float], str]:
    """The sizes that a sheet draws, to three figures, and their unit: the phase voltage, or the line currents."""
    if method == METHOD:
        return [three_figures(solution.star.line_voltage / ROOT_THREE)], "V"
    return [three_figures(size) for size in sizes_of(solution.currents)], "A"


def _short_names(names: str) -> tuple[str, ...]:
    return tuple(name.removeprefix("L") for name in conventions.NAMES[names])


def sizes_of(values: tuple[complex, ...]) -> list[float]:
    """Sizes of values, in their order."""
    return [phasor.magnitude(value) for value in values]


def is_in_ohms(text: str) -> bool:
    """Whether a load that could be read was typed as a resistance or by its two parts."""
    if is_rectangular(text):
        return True
    try:
        quantity.read(text, "Ω")
    except QuantityError:
        return False
    return True


def rounded(value: complex) -> complex:
    """An impedance with both parts to as many decimals as give its size four figures."""
    decimals = quantity.decimals_for(phasor.magnitude(value), 4)
    return complex(round(value.real, decimals), round(value.imag, decimals))


def three_figures(size: float) -> float:
    """A size rounded to three figures."""
    return float(f"{size:.3g}")
