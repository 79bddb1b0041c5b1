"""The page ``/add-phasors/``: two to six phasors, their sum, or the first less the others."""

import math
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.add_phasors import words
from pycore.calculators.add_phasors.circuit import Given, PhasorSum, add
from pycore.constructions.construction import Arm, Picture
from pycore.forms import conventions
from pycore.forms.conventions import choice_field
from pycore.forms.phasor_text import is_rectangular, read_phasor
from pycore.forms.reading import Reader
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.quantity import NO_BREAK_SPACE, Unreadable
from pycore.sheet.plan import Plan
from pycore.sums.answer import Field, Output, default_form
from pycore.sums.case import SumCase
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling
from pycore.words import Phrase, inputs, plain, say
from pycore.words import sums as sum_words

MOST, IN_VIEW = 6, 3
LEAST_SHARE = 1e-6
FIELDS: tuple[Field, ...] = (
    Field("p1", words.label(1), "phasor", "values", "20 at 0", sample="i1"),
    Field("p2", words.label(2), "phasor", "values", "15 at 60", sample="i2"),
    *(
        Field(f"p{number}", words.label(number), "phasor", "values", sample=f"i{number}",
              help=words.HELP if number == IN_VIEW else "", folded=number > IN_VIEW)
        for number in range(3, MOST + 1)
    ),
    choice_field("combine", words.COMBINE, "method", "sum", words.COMBINES),
    choice_field("unit", words.UNIT, "loads", "A", words.UNITS),
    *drawing_fields("units", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}

if TYPE_CHECKING:
    from pycore.practice.codes import Code


class AddCase(SumCase):
    """Phasors as they are drawn: those that are taken off stand turned round."""

    slug = "add-phasors"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE

    def __init__(self, problem: SheetProblem, given: tuple[Given, ...]) -> None:
        self.given, self.difference = given, problem["combine"] == "difference"
        self.solution: PhasorSum = add(given, difference=self.difference)
        arms = tuple(Arm(f"i{part.number}", part.number, part.size, part.angle) for part in self.solution.parts)
        unit = problem["unit"]
        tags = conventions.numbered("I" if unit == "A" else "V", MOST)
        self.tags_given = dict(tags)
        self.result_word = words.RESULTS[problem["combine"]]
        if self.difference:
            tags |= {f"i{part.number}": ("−", *tags[f"i{part.number}"]) for part in self.taken_off}
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        telling = Telling(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in range(1, MOST + 1)),
            reference=tags[arms[0].key] if on_first or arms[0].angle == 0.0 else words.origin(),
            voltage=words.origin(),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS[unit],
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)

    @property
    def taken_off(self) -> tuple[Given, ...]:
        """The phasors that a difference takes off: all but number 1."""
        return tuple(one for one in self.given if one.number != 1) if self.difference else ()

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """Added for taken off, and slips of the rectangular form."""
        return tuple(self._mistakes())

    def _mistakes(self) -> Iterator[Mistake]:
        turn = phasor.polar(1.0, -self.picture.reference)
        values = {one.number: phasor.polar(one.size, one.angle) * turn for one in self.given}
        first = values.pop(1, 0j)
        others = phasor.total(values.values())
        if self.difference:
            yield _mistake("added", (DRAWN, CALCULATED), first + others)
            if first != 0:
                yield _mistake("first-turned", (DRAWN, CALCULATED), others - first)
        else:
            yield _mistake("taken-off", (DRAWN, CALCULATED), first - others)
        whole = self.total * turn
        for one, arm in zip(self.given, self.arms, strict=True):
            if one.rectangular:
                part = phasor.polar(arm.size, arm.angle)
                named = self.tags_given[arm.key]
                swapped = complex(part.imag, part.real) - part
                yield _mistake("parts-exchanged", (CALCULATED,), whole + swapped * turn, named)
                yield _mistake("j-sign", (CALCULATED,), whole + (part.conjugate() - part) * turn, named)

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        return sheet_words(self, plan, kind, words.TASKS[self.problem["combine"]], self.given_words())

    def given_words(self) -> str:
        """The phasors as they were given: 20.0 A at 0°, 15.0 A at 60°."""
        return ", ".join(self.as_given(one) for one in self.given)

    def as_given(self, one: Given) -> str:
        """A phasor in the form in which it was given."""
        if one.rectangular:
            return self.rectangular_text(phasor.polar(one.size, one.angle))
        return self.polar_text(one.size, one.angle)

    def polar_text(self, size: float, angle: float) -> str:
        """A phasor in polar form, its size as it was typed."""
        writing = self.telling.writing
        amount = f"{quantity.plain(size / writing.factor, writing.mark)}{NO_BREAK_SPACE}{writing.unit}"
        return sum_words.at_angle(amount, f"{quantity.plain(round(angle, 1), writing.mark)}°")

    def rectangular_text(self, value: complex) -> str:
        """A phasor in rectangular form, its parts to four figures of its size."""
        writing = self.telling.writing
        sign = "−" if value.imag < 0 else "+"
        least = 5e-5 * phasor.magnitude(value)
        decimals = quantity.decimals_for(phasor.magnitude(value) / writing.factor, 4)
        real, imaginary = (
            quantity.plain(round(part / writing.factor, decimals), writing.mark) if part > least else "0"
            for part in (math.fabs(value.real), math.fabs(value.imag))
        )
        minus = "−" if value.real < 0 and real != "0" else ""
        return f"{minus}{real} {sign} j{imaginary}{NO_BREAK_SPACE}{writing.unit}"


def _mistake(key: str, how: tuple[str, ...], point: complex, named: Phrase = ()) -> Mistake:
    name, look = words.mistake(key, a=named)
    return Mistake(key, how, phasor.magnitude(point), point, name, look)


def read_given(reader: Reader, unit: str, *, difference: bool = False) -> tuple[Given, ...]:
    """The phasors that were given, those of no size left out; at least two fields must be filled, and the first
    where a ``difference`` is wanted."""
    given: list[Given] = []
    for number in range(1, MOST + 1):
        name = f"p{number}"
        text, label = reader.given(name), reader.label(name)
        if not text:
            continue
        try:
            size, angle = read_phasor(text, unit)
        except Unreadable as problem:
            reader.fault(name, inputs.bad_phasor(label, text, unit), problem.part)
            continue
        if size > 1e5:
            reader.fault(name, inputs.too_large(label, text, quantity.engineering(1e5, unit)))
        elif 0 < size < 1e-6:
            reader.fault(name, inputs.too_small(label, text, quantity.engineering(1e-6, unit)))
        else:
            given.append(Given(number, size, angle, is_rectangular(text)))
    shown = [one for one in given if one.size > 0]
    if not reader.faults and (len(given) < 2 or not shown):
        for name in ("p1", "p2"):
            reader.fault(name, words.nothing_here())
    elif difference and not reader.given("p1"):
        reader.fault("p1", words.no_first(reader.label("p1")))
    largest = max((one.size for one in shown), default=0.0)
    for one in shown:
        if one.size < LEAST_SHARE * largest:
            name = f"p{one.number}"
            reader.fault(name, inputs.apart(reader.label(name), reader.given(name), inputs.MILLIONTH))
    return tuple(shown)


class AddPhasors(SumPage[AddCase]):
    """The page ``/add-phasors/``."""

    slug = "add-phasors"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 1

    def case(self, form: Mapping[str, str]) -> AddCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        unit = reader.choice("unit")
        given = read_given(reader, unit, difference=reader.choice("combine") == "difference")
        sizes = [four_figures(one.size) for one in given]
        computed = any(one.rectangular for one in given)
        return AddCase(read_sheet(reader, FIELDS, sizes, unit, computed=computed), given)

    def outputs(self, case: AddCase, plan: Plan) -> tuple[Output, ...]:
        """Size and angle, both parts, scale, length, tolerance."""
        writing = case.telling.writing
        angle = sum_words.NONE if case.angle is None else quantity.fixed(case.angle, 1, writing.mark) + "°"
        name = words.DIFFERENCE if case.difference else words.RESULT
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        return (
            Output("sum", case.size, size, writing.unit, say(name)),
            Output("sum-angle", case.angle, angle, label=say(sum_words.ANGLE)),
            Output("sum-along", case.total.real, writing.fixed(case.total.real, 1), writing.unit, say(words.PARTS[0])),
            Output("sum-across", case.total.imag, writing.fixed(case.total.imag, 1), writing.unit, say(words.PARTS[1])),
            *outputs_on_paper(case, plan, "sum-length"),
        )

    def given(self, case: AddCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: AddCase) -> tuple[Phrase, ...]:
        """What a difference is, and the first sanity check."""
        made: list[Phrase] = []
        if case.difference:
            names = ", ".join(plain(case.tags_given[f"i{one.number}"]) for one in case.taken_off)
            made.append(words.taken_off(names))
        writing = case.telling.writing
        if not case.closed:
            plain_sum = writing.amount(sum_of(case))
            made.append(words.longest_check(case.amount(case.size), plain_sum))
        return tuple(made)

    def notices(self, case: AddCase, plan: Plan) -> tuple[Phrase, ...]:
        """What is too small to draw, and why there is no parallelogram where one was asked for."""
        made = super().notices(case, plan)
        if case.problem["method"] == case.method:
            return made
        count = words.COUNTS.get(len(case.arms), "")
        return (words.no_parallelogram(count) if count else words.nothing_to_pair(), *made)

    def practice_form(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's problem, with a class's own choices. Raises NoProblem."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.add_phasors.practice import phasors_of

        problem = phasors_of(code)
        form = default_form(FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
        for number, (tenths, angle) in enumerate(zip(problem.tenths, problem.angles, strict=True), start=1):
            form[f"p{number}"] = f"{quantity.plain(tenths / 10.0)} at {angle}"
        form |= {"paper": code.paper, "combine": "difference" if problem.difference else "sum"}
        return form if code.method == "any" else form | {"method": code.method}

    def echo(self, case: AddCase) -> dict[str, Mapping[str, str]]:
        """Each phasor in both forms."""
        made: dict[str, Mapping[str, str]] = {}
        for one in case.given:
            polar = case.polar_text(four_figures(one.size) if one.rectangular else one.size, one.angle)
            rectangular = case.rectangular_text(phasor.polar(one.size, one.angle))
            said = words.both_forms(*((rectangular, polar) if one.rectangular else (polar, rectangular)))
            made[f"p{one.number}"] = {"said": said}
        return made


def four_figures(size: float) -> float:
    """A size as finely as it is worth writing: rectangular parts give endless decimals."""
    return float(f"{size:.4g}")


def sum_of(case: AddCase) -> float:
    """The sizes added as plain numbers."""
    return phasor.total(complex(one.size, 0.0) for one in case.given).real
