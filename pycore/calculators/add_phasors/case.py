"""From the form to the sum that is drawn."""

import math
from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.add_phasors import words
from pycore.calculators.add_phasors.circuit import EnteredPhasor, PhasorSum, add
from pycore.calculators.add_phasors.fields import FIELDS, MOST
from pycore.constructions.construction import Arm, DrawingConvention
from pycore.constructions.methods import PAIR_ORDERS
from pycore.drawing import Ink
from pycore.forms import conventions
from pycore.forms.phasor_text import is_rectangular, read_phasor
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import inputs, moves_list, plain
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase

LEAST_SHARE = 1e-6


class AddCase(SumCase):
    """Phasors as they are drawn: those that are subtracted are turned by 180°."""

    slug = "add-phasors"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE

    def __init__(self, problem: SheetProblem, phasors: tuple[EnteredPhasor, ...]) -> None:
        self.phasors, self.difference = phasors, problem["combine"] == "difference"
        self.solution: PhasorSum = add(phasors, difference=self.difference)
        # The orders of three phasors name them 1 to 3, whichever fields they stand in.
        three = len(self.solution.parts) == 3
        self.places = {one.number: place if three else one.number
                       for place, one in enumerate(self.solution.parts, start=1)}  # fmt: skip
        placed = [(self.places[one.number], one) for one in self.solution.parts]
        arms = tuple(Arm(f"i{place}", place, one.size, one.angle) for place, one in placed)
        unit = problem["unit"]
        self.entered_tags = conventions.numbered("I" if unit == "A" else "V", MOST)
        self.result_word = words.RESULTS[problem["combine"]]
        self.turning_moves = moves_list.turn_round(
            [plain(self.entered_tags[f"i{one.number}"]) for one in self.subtracted]
        )
        tags = _drawn_tags(self.entered_tags, self.places, difference=self.difference)
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        notation = Notation(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in range(1, MOST + 1)),
            reference=tags[arms[0].key] if on_first or arms[0].angle == 0.0 else words.ORIGIN,
            voltage=words.ORIGIN,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS[unit],
            origins={
                f"i{self.places[one.number]}": words.opposite(self.entered_tags[f"i{one.number}"])
                for one in self.subtracted
            },
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    @property
    def subtracted(self) -> tuple[EnteredPhasor, ...]:
        """The phasors that a difference subtracts: all but number 1."""
        return tuple(one for one in self.phasors if one.number != 1) if self.difference else ()

    def inks(self) -> dict[str, Ink]:
        """The ink of each phasor's own field, wherever it is placed."""
        inks = super().inks()
        return inks | {f"i{place}": inks[f"i{number}"] for number, place in self.places.items()}

    def ticks(self) -> Mapping[str, int]:
        """The ticks of each phasor's own field, wherever it is placed."""
        ticks = super().ticks()
        return {**ticks, **{f"i{place}": ticks[f"i{number}"] for number, place in self.places.items()}}

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        return sheet_words(self, plan, kind, method, words.TASKS[self.problem["combine"]], self.values_text())

    def value_texts(self) -> tuple[str, ...]:
        """Each phasor in the form in which it was typed."""
        return tuple(
            self.typed_text(one).replace(self.notation.mark, ".") if one.rectangular
            else f"{quantity.plain(one.size)} {quantity.plain(round(one.angle, 1))}"
            for one in self.phasors
        )  # fmt: skip

    def values_text(self) -> str:
        """The phasors as they were typed: 20.0 A at 0°, 15.0 A at 60°; of a difference with their names."""
        if not self.difference:
            return ", ".join(self.typed_text(one) for one in self.phasors)
        named = [(plain(self.entered_tags[f"i{one.number}"]), self.typed_text(one)) for one in self.phasors]
        return ", ".join(words.named(name, text) for name, text in named)

    def typed_text(self, one: EnteredPhasor) -> str:
        """A phasor in the form in which it was typed."""
        if one.rectangular:
            return self.rectangular_text(phasor.polar(one.size, one.angle))
        return self.polar_text(one.size, one.angle)

    def polar_text(self, size: float, angle: float) -> str:
        """A phasor in polar form, its size as it was typed."""
        writing = self.notation.writing
        amount = f"{quantity.plain(size / writing.factor, writing.mark)}{NO_BREAK_SPACE}{writing.unit}"
        return sum_words.at_angle(amount, f"{quantity.plain(round(angle, 1), writing.mark)}°")

    def rectangular_text(self, value: complex) -> str:
        """A phasor in rectangular form, its parts to four figures of its size."""
        writing = self.notation.writing
        sign = "−" if value.imag < 0 else "+"
        least = 5e-5 * phasor.magnitude(value)
        decimals = quantity.decimals_for(phasor.magnitude(value) / writing.factor, 4)
        real, imaginary = (
            quantity.plain(round(part / writing.factor, decimals), writing.mark) if part > least else "0"
            for part in (math.fabs(value.real), math.fabs(value.imag))
        )
        minus = "−" if value.real < 0 and real != "0" else ""
        return f"{minus}{real} {sign} j{imaginary}{NO_BREAK_SPACE}{writing.unit}"


def _drawn_tags(entered: Mapping[str, Phrase], places: Mapping[int, int], *, difference: bool) -> dict[str, Phrase]:
    """Tags of the phasors as they are drawn, by the places that their numbers have, and of the sums of two: I1 + I4, or
    I1 − I2 and −I2 − I3 of a difference."""
    tags = dict(entered)
    numbers = {place: number for number, place in places.items()}
    for place, number in numbers.items():
        own = entered[f"i{number}"]
        tags[f"i{place}"] = ("−", *own) if difference and number != 1 else own
    for first, second in ((int(pair[0]), int(pair[1])) for pair in PAIR_ORDERS):
        if first in numbers and second in numbers:
            joined = " − " if difference else " + "
            tags[f"i{first}{second}"] = (*tags[f"i{first}"], joined, *entered[f"i{numbers[second]}"])
    return tags


def read_phasors(reader: Reader, unit: str, *, difference: bool = False) -> tuple[EnteredPhasor, ...]:
    """The phasors that were typed, without those of size 0; at least two fields must be filled, and the first
    if a ``difference`` is to be found."""
    phasors: list[EnteredPhasor] = []
    for number in range(1, MOST + 1):
        name = f"p{number}"
        text, label = reader.text(name), reader.label(name)
        if not text:
            continue
        try:
            size, angle = read_phasor(text, unit)
        except QuantityError as problem:
            reader.fault(name, inputs.bad_phasor(label, text, unit), problem.fragment)
            continue
        if size > 1e5:
            reader.fault(name, inputs.too_large(label, text, quantity.engineering(1e5, unit)))
        elif 0 < size < 1e-6:
            reader.fault(name, inputs.too_small(label, text, quantity.engineering(1e-6, unit)))
        else:
            phasors.append(EnteredPhasor(number, size, angle, is_rectangular(text)))
    nonzero = [one for one in phasors if one.size > 0]
    if not reader.faults and (len(phasors) < 2 or not nonzero):
        for name in ("p1", "p2"):
            reader.fault(name, words.NOTHING_HERE)
    elif difference and not reader.text("p1"):
        reader.fault("p1", words.no_first(reader.label("p1")))
    largest = max((one.size for one in nonzero), default=0.0)
    for one in nonzero:
        if one.size < LEAST_SHARE * largest:
            name = f"p{one.number}"
            reader.fault(name, inputs.apart(reader.label(name), reader.text(name), inputs.MILLIONTH))
    return tuple(nonzero)


def four_figures(size: float) -> float:
    """A size as finely as it is worth writing: rectangular parts give endless decimals."""
    return float(f"{size:.4g}")
