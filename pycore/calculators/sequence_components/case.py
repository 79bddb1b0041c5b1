"""One problem of sequence components: three phasors, turned for the chosen component, and the words of its sheets."""

from pycore import phasor, quantity
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.circuit import TURNS, Components, Three, components
from pycore.calculators.sequence_components.fields import FIELDS, NAMES
from pycore.constructions.construction import Arm, DrawingConvention
from pycore.forms import conventions
from pycore.forms.phasor_text import read_phasor
from pycore.forms.reading import Reader
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import inputs, plain
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, Symbol

LEAST_SHARE, MOST, LEAST = 1e-6, 1e5, 1e-6
PolarValues = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]


class SequenceCase(SumCase):
    """Three phasors, turned and added for one component.

    ``polar_values`` holds size (A or V) and angle (degrees, anticlockwise) of each.
    """

    slug = "sequence-components"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.ON_SHEET
    part_word = "line"

    @property
    def sheets(self) -> int:  # type: ignore[override]
        """One sheet, or a second one with all three sets."""
        return 2 if self.problem["sets"] == "yes" else 1

    last_moves = (words.DIVIDE,)

    def __init__(self, problem: SheetProblem, polar_values: PolarValues) -> None:
        self.polar_values, self.component = polar_values, problem["part"]
        self.result_word = words.result(self.component)
        one, two, three = (phasor.polar(size, angle) for size, angle in polar_values)
        self.values: Three = (one, two, three)
        self.components: Components = components(self.values)
        turns = TURNS[self.component]
        arms = tuple(
            Arm(f"i{number}", number, size, wrap(angle + turn))
            for number, ((size, angle), turn) in enumerate(zip(polar_values, turns, strict=True), start=1)
            if size > 0
        )
        letter = "I" if problem["unit"] == "A" else "V"
        tags = conventions.symbols(letter, problem["names"])
        self.own = {number: tags[f"i{number}"] for number in (1, 2, 3)}
        self.component_tag: Phrase = (Symbol(letter, words.INDEX[self.component]),)
        tags |= turned_tags(tags, self.component)
        self.turning_moves = words.turning_moves(
            [(plain(self.own[arm.number]), plain(tags[arm.key]), turns[arm.number - 1]) for arm in arms],
            clockwise=problem["rotation"] == "clockwise",
        )
        tags |= {"sum": ("3", *self.component_tag), "return": ("−3", *self.component_tag)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        notation = Notation(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in (1, 2, 3)),
            reference=tags[arms[0].key] if arms[0].angle == reference else words.ORIGIN,
            voltage=words.ORIGIN,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS[problem["unit"]],
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    @property
    def symbol(self) -> Symbol:
        """Three times the component, as one symbol of the formulas."""
        first = self.component_tag[0]
        return Symbol(f"3{first.letter}", first.index) if isinstance(first, Symbol) else Symbol("S")

    @property
    def part_letter(self) -> str:
        """The letter of the phasors that are added, not of three times their component."""
        return "I" if self.problem["unit"] == "A" else "V"

    def share(self, component: str, number: int) -> complex:
        """A component of one phasor (A or V): that of the first, turned back by as much as this phasor was turned to be
        added."""
        first: complex = getattr(self.components, component)
        return first * phasor.polar(1.0, -TURNS[component][number - 1])

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        return sheet_words(self, plan, kind, method, words.task(self.component), self.values_text())

    def value_texts(self) -> tuple[str, ...]:
        """Each phasor as size and angle."""
        return tuple(
            f"{quantity.plain(size)} {quantity.plain(round(angle, 1))}" if size else "0"
            for size, angle in self.polar_values
        )

    def values_text(self) -> str:
        """The three phasors as text, each as size and angle."""
        unit, mark = self.problem["unit"], self.notation.mark
        phasors = []
        for size, angle in self.polar_values:
            amount = f"{quantity.plain(size, mark)}{NO_BREAK_SPACE}{unit}"
            direction = f"{quantity.plain(round(angle, 1), mark)}°"
            phasors.append(sum_words.at_angle(amount, direction) if size else amount)
        return ", ".join(phasors)


def turned_tags(tags: dict[str, Phrase], component: str) -> dict[str, Phrase]:
    """Tags of the phasors as they are turned, and of their sums in pairs."""
    turned = {}
    for number, turn in enumerate(TURNS[component], start=1):
        tag = tags[f"i{number}"]
        turned[f"i{number}"] = tag if turn == 0.0 else words.times_a(tag, 1 if turn > 0 else 2)
    return turned | conventions.pair_tags(turned)


def read_phasors(reader: Reader, unit: str) -> PolarValues:
    """The three phasors of a form, each as size and angle in degrees; faults go to the reader."""
    phasors: list[tuple[float, float]] = []
    for name in NAMES:
        text, label = reader.text(name), reader.label(name)
        size, angle = 0.0, 0.0
        try:
            size, angle = read_phasor(text, unit) if text else (0.0, 0.0)
        except QuantityError as error:
            reader.fault(name, inputs.bad_phasor(label, text, unit), error.fragment)
        if size > MOST:
            reader.fault(name, inputs.too_large(label, text, quantity.engineering(MOST, unit)))
        elif 0 < size < LEAST:
            reader.fault(name, inputs.too_small(label, text, quantity.engineering(LEAST, unit)))
        phasors.append((size, angle))
    largest = max(size for size, _ in phasors)
    if not reader.faults and largest == 0:
        reader.fault("p1", words.nothing_here(reader.label("p1")))
    for name, (size, _) in zip(NAMES, phasors, strict=True):
        if not reader.faults and 0 < size < LEAST_SHARE * largest:
            reader.fault(name, inputs.apart(reader.label(name), reader.text(name), inputs.MILLIONTH))
    return phasors[0], phasors[1], phasors[2]
