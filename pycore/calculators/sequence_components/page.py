"""The page ``/sequence-components/``: zero, positive and negative sequence, one of them drawn."""

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.neutral_current.fields import BY_NAME as NEUTRAL_FIELDS
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.circuit import TURNS, Components, Three, components, turned
from pycore.constructions.construction import Arm, Picture
from pycore.drawing import Ink
from pycore.forms import conventions
from pycore.forms.conventions import choice_field
from pycore.forms.phasor_text import is_rectangular, read_phasor
from pycore.forms.reading import Reader
from pycore.phasor import wrap
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.quantity import NO_BREAK_SPACE, Unreadable
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Block, Field, Grid, Output, Paragraph, Working
from pycore.sums.case import SumCase
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling
from pycore.words import Phrase, Symbol, inputs, plain, say
from pycore.words import sums as sum_words

if TYPE_CHECKING:
    from pycore.practice.codes import Code

NAMES = ("p1", "p2", "p3")
LEAST_SHARE, MOST, LEAST = 1e-6, 1e5, 1e-6
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, f"L{number}", "phasor", "values", default, help=words.HELP if number == 3 else "",
              sample=f"i{number}")
        for number, (name, default) in enumerate(zip(NAMES, ("30 at 0", "20 at -120", "12 at 90"), strict=True), 1)
    ),
    choice_field("part", words.PART, "method", "zero", words.PARTS),
    choice_field("unit", words.UNIT, "loads", "A", words.UNITS),
    NEUTRAL_FIELDS["names"],
    NEUTRAL_FIELDS["colours"],
    *drawing_fields("units", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
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
        tags |= _turned_tags(tags, self.part)
        tags |= {"sum": ("3", *self.component), "return": ("−3", *self.component)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        telling = Telling(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in (1, 2, 3)),
            reference=tags[arms[0].key] if arms[0].angle == reference else words.origin(),
            voltage=words.origin(),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS[problem["unit"]],
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)

    def inks(self) -> dict[str, Ink]:
        """The lines' colours, as the class has chosen them."""
        return conventions.inks(self.problem["colours"])

    @property
    def symbol(self) -> Symbol:
        """Three times the component, as one symbol of the formulas."""
        first = self.component[0]
        return Symbol(f"3{first.letter}", first.index) if isinstance(first, Symbol) else Symbol("S")

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """Another component for the one asked for, and dividing too soon."""
        return tuple(self._mistakes())

    def _mistakes(self) -> Iterator[Mistake]:
        turn = phasor.polar(1.0, -self.picture.reference)
        ends = {part: phasor.total(turned(self.values, part)) * turn for part in TURNS}
        others = {"positive": "negative", "negative": "positive"}
        if self.part == "zero":
            for part in ("positive", "negative"):
                yield _mistake("turned", ends[part], other=words.NAMES[part])
        else:
            yield _mistake("not-turned", ends["zero"])
            yield _mistake("a-exchanged", ends[others[self.part]], other=words.NAMES[others[self.part]])
            yield from self._one_turned(turn)
        yield _mistake("divided-already", ends[self.part] / 3.0)

    def _one_turned(self, turn: complex) -> Iterator[Mistake]:
        """The operator turned the wrong way for one phasor."""
        parts = turned(self.values, self.part)
        for number in (2, 3):
            own, angle = self.values[number - 1], TURNS[self.part][number - 1]
            if own != 0:
                end = phasor.total(parts) - parts[number - 1] + own * phasor.polar(1.0, -angle)
                yield _mistake("wrong-way-a", end * turn, which=self.own[number])

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        return sheet_words(self, plan, kind, words.task(self.part), self.given_words())

    def given_words(self) -> str:
        """The three phasors as they were given."""
        unit, mark = self.problem["unit"], self.telling.mark
        told = []
        for size, angle in self.given:
            amount = f"{quantity.plain(size, mark)}{NO_BREAK_SPACE}{unit}"
            pointing = f"{quantity.plain(round(angle, 1), mark)}°"
            told.append(sum_words.at_angle(amount, pointing) if size else amount)
        return ", ".join(told)


def _turned_tags(tags: dict[str, Phrase], part: str) -> dict[str, Phrase]:
    """Tags of the phasors as they are turned, and of their sums in pairs."""
    made = {}
    for number, turn in enumerate(TURNS[part], start=1):
        tag = tags[f"i{number}"]
        made[f"i{number}"] = tag if turn == 0.0 else words.times_a(tag, 1 if turn > 0 else 2)
    for first, second in ("12", "13", "23"):
        made[f"i{first}{second}"] = (*made[f"i{first}"], " + ", *made[f"i{second}"])
    return made


def _mistake(key: str, point: complex, **named: "str | Phrase") -> Mistake:
    name, look = words.mistake(key, **named)
    return Mistake(key, (DRAWN, CALCULATED), phasor.magnitude(point), point, name, look)


def _read(reader: Reader, unit: str) -> Given:
    made: list[tuple[float, float]] = []
    for name in NAMES:
        text, label = reader.given(name), reader.label(name)
        size, angle = 0.0, 0.0
        try:
            size, angle = read_phasor(text, unit) if text else (0.0, 0.0)
        except Unreadable as problem:
            reader.fault(name, inputs.bad_phasor(label, text, unit), problem.part)
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
            reader.fault(name, inputs.apart(reader.label(name), reader.given(name), inputs.MILLIONTH))
    return made[0], made[1], made[2]


class SequenceComponents(SumPage[SequenceCase]):
    """The page ``/sequence-components/``."""

    slug = "sequence-components"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 9

    def case(self, form: Mapping[str, str]) -> SequenceCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        unit = reader.choice("unit")
        given = _read(reader, unit)
        sizes = [float(f"{size:.4g}") for size, _ in given]
        computed = any(is_rectangular(reader.given(name)) for name in NAMES)
        return SequenceCase(read_sheet(reader, FIELDS, sizes, unit, computed=computed), given)

    def outputs(self, case: SequenceCase, plan: Plan) -> tuple[Output, ...]:
        """Three times the component that is drawn, then all three, and the neutral."""
        writing, mark = case.telling.writing, case.telling.mark
        angle = sum_words.NONE if case.angle is None else quantity.fixed(case.angle, 1, mark) + "°"
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        made = [
            Output("threefold", case.size, size, writing.unit, say(words.three_times(case.part))),
            Output("threefold-angle", case.angle, angle, label=say(sum_words.ANGLE)),
        ]
        for part in TURNS:
            value: complex = getattr(case.components, part)
            told = case.amount(phasor.magnitude(value)).partition(NO_BREAK_SPACE)[0]
            pointing = None if value == 0 else phasor.angle(value)
            says = sum_words.NONE if pointing is None else quantity.fixed(pointing, 1, mark) + "°"
            made.append(Output(part, phasor.magnitude(value), told, writing.unit, say(words.NAMES[part])))
            made.append(Output(f"{part}-angle", pointing, says, label=say(words.ITS_ANGLE)))
        if case.problem["unit"] == "A":
            together = phasor.magnitude(case.components.together)
            told = case.amount(together).partition(NO_BREAK_SPACE)[0]
            made.append(Output("neutral-current", together, told, writing.unit, say(words.NEUTRAL)))
        return (*made, *outputs_on_paper(case, plan, "threefold-length"))

    def given(self, case: SequenceCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: SequenceCase) -> tuple[Phrase, ...]:
        """The operator, the component itself, and what the neutral carries."""
        parts = {part: getattr(case.components, part) for part in TURNS}
        made = [words.operator(case.part)]
        if not case.closed:
            third = case.amount(phasor.magnitude(parts[case.part]))
            made.append(words.one_third(case.component, third, case.telling.tags["sum"]))
        if case.problem["unit"] == "A":
            together = case.components.together
            made.append(words.neutral_carries(case.amount(phasor.magnitude(together))) if together else words.no_zero())
        there = [part for part, value in parts.items() if value != 0]
        if len(there) == 1:
            made.append(words.symmetrical(there[0]))
        return tuple(made)

    def calculated(self, case: SequenceCase, plan: Plan) -> tuple[Working, ...]:
        """All three components with numbers, the check by putting them together, and what a hand can do."""
        return (
            Working("components-all", say(words.CALCULATED), tuple(_table(case))),
            SumAccuracy(case).working(plan),
        )

    def echo(self, case: SequenceCase) -> dict[str, Mapping[str, str]]:
        """Each phasor in the other form."""
        unit, mark = case.problem["unit"], case.telling.mark
        made: dict[str, Mapping[str, str]] = {}
        for name, value in zip(NAMES, case.values, strict=True):
            write = figures.polar if is_rectangular(case.problem.typed[name]) else figures.rectangular
            made[name] = {"said": write(value, unit, mark) if value else ""}
        return made

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """The lines' names."""
        names = conventions.NAMES.get(form.get("names", "L123"), conventions.NAMES["L123"])
        return dict(zip(NAMES, names, strict=True))

    def practice_form(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's problem, with a class's own choices. Raises NoProblem."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.sequence_components.practice_form_tmp import form_of

        return form_of(code, choices)


def _table(case: SequenceCase) -> list[Block]:
    """Each component's sum and third, then all of them put together again."""
    unit, mark = case.problem["unit"], case.telling.mark
    letter = "I" if unit == "A" else "V"
    own, rows, symbols = case.own, [], {part: Symbol(letter, words.INDEX[part]) for part in TURNS}
    for part in TURNS:
        tags = _turned_tags({f"i{number}": tag for number, tag in own.items()}, part)
        value: complex = getattr(case.components, part)
        formula = (*tags["i12"], " + ", *tags["i3"])
        whole = figures.rectangular(3.0 * value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}"
        rows.append(((symbols[part],), (*formula, " = ", whole),
                     (figures.rectangular(value, unit, mark) if value else f"0{NO_BREAK_SPACE}{unit}",),
                     (figures.polar(value, unit, mark),)))  # fmt: skip
    back = []
    for number in (1, 2, 3):
        # Each phase has its own component: the first's, turned back by as much as it was turned to be added.
        shares = [
            getattr(case.components, part) * phasor.polar(1.0, -TURNS[part][number - 1]) for part in TURNS
        ]
        told = [figures.polar(share, unit, mark) for share in shares]
        back.append((own[number], *((text,) for text in told), (figures.polar(phasor.total(shares), unit, mark),)))
    head, back_head = (tuple((cell,) for cell in cells) for cells in (words.HEAD, words.BACK_HEAD))
    return [
        Paragraph(words.a_parts()), Paragraph(words.table_words()), Grid(head, tuple(rows)),
        Paragraph(words.back_words()), Grid(back_head, tuple(back)),
    ]  # fmt: skip
