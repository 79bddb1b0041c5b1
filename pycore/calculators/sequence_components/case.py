"""From the form to the sum that is drawn."""

from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.circuit import TURNS, Components, Three, components
from pycore.constructions.construction import Arm, DrawingConvention
from pycore.drawing import Ink
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

if TYPE_CHECKING:
    pass
from pycore.calculators.sequence_components.fields import FIELDS, NAMES
from pycore.constructions.methods import PAIR_ORDERS

LEAST_SHARE, MOST, LEAST = 1e-6, 1e5, 1e-6
Given = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]


class SequenceCase(SumCase):
    """Three phasors as they are turned and added for one component."""

    slug = "sequence-components"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.ON_SHEET
    part_word = "line"
    last_moves = (words.DIVIDE,)

    def __init__(self, problem: SheetProblem, given: Given) -> None:
        self.given, self.part = given, problem["part"]
        self.result_word = words.result(self.part)
        one, two, three = (phasor.polar(size, angle) for size, angle in given)
        self.values: Three = (one, two, three)
        self.components: Components = components(self.values)
        arms = tuple(
            Arm(f"i{number}", number, size, wrap(angle + turn))
            for number, ((size, angle), turn) in enumerate(zip(given, TURNS[self.part], strict=True), start=1)
            if size > 0
        )
        letter = "I" if problem["unit"] == "A" else "V"
        tags = conventions.symbols(letter, problem["names"])
        self.own = {number: tags[f"i{number}"] for number in (1, 2, 3)}
        self.component: Phrase = (Symbol(letter, words.INDEX[self.part]),)
        tags |= turned_tags(tags, self.part)
        tags |= {"sum": ("3", *self.component), "return": ("−3", *self.component)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        notation = Notation(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in (1, 2, 3)),
            reference=tags[arms[0].key] if arms[0].angle == reference else words.origin(),
            voltage=words.origin(),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS[problem["unit"]],
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    def inks(self) -> dict[str, Ink]:
        """The lines' colours, as the class has chosen them."""
        return conventions.inks(self.problem["colours"])

    @property
    def symbol(self) -> Symbol:
        """Three times the component, as one symbol of the formulas."""
        first = self.component[0]
        return Symbol(f"3{first.letter}", first.index) if isinstance(first, Symbol) else Symbol("S")

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        return sheet_words(self, plan, kind, method, words.task(self.part), self.given_words())

    def given_words(self) -> str:
        """The three phasors as they were given."""
        unit, mark = self.problem["unit"], self.notation.mark
        told = []
        for size, angle in self.given:
            amount = f"{quantity.plain(size, mark)}{NO_BREAK_SPACE}{unit}"
            pointing = f"{quantity.plain(round(angle, 1), mark)}°"
            told.append(sum_words.at_angle(amount, pointing) if size else amount)
        return ", ".join(told)


def turned_tags(tags: dict[str, Phrase], part: str) -> dict[str, Phrase]:
    """Tags of the phasors as they are turned, and of their sums in pairs."""
    made = {}
    for number, turn in enumerate(TURNS[part], start=1):
        tag = tags[f"i{number}"]
        made[f"i{number}"] = tag if turn == 0.0 else words.times_a(tag, 1 if turn > 0 else 2)
    for first, second in map(tuple, PAIR_ORDERS):
        made[f"i{first}{second}"] = (*made[f"i{first}"], " + ", *made[f"i{second}"])
    return made




def read_phasors(reader: Reader, unit: str) -> Given:
    """The three phasors of a form, each as its size and angle."""
    made: list[tuple[float, float]] = []
    for name in NAMES:
        text, label = reader.text(name), reader.label(name)
        size, angle = 0.0, 0.0
        try:
            size, angle = read_phasor(text, unit) if text else (0.0, 0.0)
        except QuantityError as problem:
            reader.fault(name, inputs.bad_phasor(label, text, unit), problem.fragment)
        if size > MOST:
            reader.fault(name, inputs.too_large(label, text, quantity.engineering(MOST, unit)))
        elif 0 < size < LEAST:
            reader.fault(name, inputs.too_small(label, text, quantity.engineering(LEAST, unit)))
        made.append((size, angle))
    largest = max(size for size, _ in made)
    if not reader.faults and largest == 0:
        reader.fault("p1", words.nothing_here(reader.label("p1")))
    for name, (size, _) in zip(NAMES, made, strict=True):
        if not reader.faults and 0 < size < LEAST_SHARE * largest:
            reader.fault(name, inputs.apart(reader.label(name), reader.text(name), inputs.MILLIONTH))
    return made[0], made[1], made[2]
