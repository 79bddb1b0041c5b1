"""The page ``/two-wattmeters/``: both readings, power, reactive power and angle of a load on three wires."""

import math
from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.circuit import BalancedLoad, Readings, back, read
from pycore.calculators.two_wattmeters.figure import phasors
from pycore.constructions.construction import Arm
from pycore.constructions.construction import Picture as Lie
from pycore.forms import conventions
from pycore.forms.conventions import choice_field
from pycore.forms.reading import Reader
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.practice.sums import made as mistake
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.quantity import NO_BREAK_SPACE, Unreadable
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Block, Equation, Field, Output, Paragraph, Picture, Working, default_form
from pycore.sums.case import SumCase
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling, degrees_text
from pycore.trig import ROOT_THREE
from pycore.words import Phrase, Symbol, plain, say
from pycore.words.form import METHODS
from pycore.words.formula import Fenced, Fraction, Function, Number, Root, row

LEAST, LARGEST = 1e-3, 1e9
NOTHING = 1e-9
"""Share of the apparent power below which a reading is zero: what is left is rounding."""
FIELDS: tuple[Field, ...] = (
    choice_field("known", words.KNOWN, "method", "load", words.KNOWNS),
    Field("volts", words.VOLTS, "quantity", "values", "400", "V", only=(("known", "load"),)),
    Field("amps", words.AMPS, "quantity", "values", "10", "A", only=(("known", "load"),)),
    Field("lag", words.LAG, "angle", "values", "40", "°", help=words.LAG_HELP, only=(("known", "load"),)),
    Field("w1", words.FIRST, "quantity", "values", "", "W", help=words.READING_HELP, only=(("known", "readings"),)),
    Field("w2", words.SECOND, "quantity", "values", "", "W", only=(("known", "readings"),)),
    choice_field("balanced", words.BALANCED, "loads", "yes", words.BALANCEDS),
    *drawing_fields("volt-amperes", words.ZERO, "tip-to-tail", "right", METHODS[1:]),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
ARM_ANGLES = (0.0, 0.0, 90.0)


def _arms(values: tuple[float, ...]) -> tuple[Arm, ...]:
    """Powers as arms: those below zero turned round, those of nothing left out."""
    made = []
    for number, (value, angle) in enumerate(zip(values, ARM_ANGLES, strict=False), start=1):
        if value != 0.0:
            turned = angle if value > 0 else (180.0 if angle == 0.0 else -90.0)
            made.append(Arm(f"i{number}", number, math.fabs(value), turned))
    return tuple(made)


def tidied(found: Readings) -> tuple[float, float, float]:
    """Both readings and the reactive power, with what is only rounding made zero."""
    one, two, three = (
        0.0 if math.fabs(value) < NOTHING * found.apparent else value
        for value in (found.first, found.second, found.reactive)
    )
    return one, two, three


class WattCase(SumCase):
    """Both readings in line and the reactive power square to them: their sum is the apparent power."""

    slug = "two-wattmeters"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    methods = ("tip-to-tail", "components")
    result_word = words.RESULT

    def __init__(self, problem: SheetProblem, found: Readings, load: BalancedLoad | None, *, balanced: bool) -> None:
        self.found, self.load, self.balanced = found, load, balanced
        self.readings = tidied(found)
        drawn = self.readings if balanced else self.readings[:2]
        self.typed_sizes = not balanced
        self.to_work_out = words.NOT_GIVEN if load is None else ""
        tags: dict[str, Phrase] = {f"i{number}": (words.TAGS[number - 1],) for number in (1, 2, 3)}
        tags |= {"sum": (words.TAGS[3] if balanced else Symbol("P"),), "return": ("−", words.TAGS[3])}
        tags |= {f"i{a}{b}": (words.TAGS[a - 1], " + ", words.TAGS[b - 1]) for a, b in ((1, 2), (1, 3), (2, 3))}
        arms = _arms(drawn)
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        telling = Telling(
            tags=tags,
            lines=words.LINES,
            reference=tags[arms[0].key] if arms[0].angle == reference else words.origin(),
            voltage=words.origin(),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS,
        )
        super().__init__(problem, arms, telling.lines, Lie(problem["first"], problem["rotation"], reference), telling)

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        task = words.TASK if self.balanced else words.TASK_UNBALANCED
        return sheet_words(self, plan, kind, task, f"{self.given_words()}. {words.METERS}")

    def typed(self, key: str) -> bool:
        """The readings, where they are what is known; all else is to be worked out."""
        return self.load is None and key != "i3"

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """The root of three forgotten, a reading's minus forgotten, both readings exchanged."""
        if not self.balanced:
            return ()
        first, second, reactive = self.readings
        turned, both = phasor.polar(1.0, -self.picture.reference), (DRAWN, CALCULATED)
        made = [mistake("root-three-forgotten", both, complex(first + second, second - first) * turned)]
        if reactive != 0.0:
            made.append(mistake("readings-exchanged", both, complex(first + second, -reactive) * turned))
        if min(first, second) < 0.0:
            sizes = math.fabs(first), math.fabs(second)
            reckoned = complex(sizes[0] + sizes[1], ROOT_THREE * (sizes[1] - sizes[0]))
            made.append(mistake("minus-forgotten", both, reckoned * turned))
        return tuple(made)

    def watts(self, value: float, unit: str = "W") -> str:
        """A power as it is written everywhere, in the unit of its kind."""
        return self.telling.writing.number(value) + NO_BREAK_SPACE + self.prefix + unit

    @property
    def power(self) -> float:
        """Both readings together (W; below zero: it flows back), with what is only rounding made zero."""
        found = self.found
        return 0.0 if math.fabs(found.power) <= NOTHING * found.apparent else found.power

    @property
    def tangent(self) -> float:
        """The angle that the arctangent of Q over P gives, in degrees: the angle of lag itself where the power is not
        below zero, else 180 degrees from it."""
        return self.found.lag if self.power >= 0 else wrap(self.found.lag + 180.0)

    @property
    def seen(self) -> tuple[float, float]:
        """Degrees between voltage and current of each meter: -180 < x <= 180."""
        return wrap(30.0 + self.found.lag), wrap(30.0 - self.found.lag)

    @property
    def prefix(self) -> str:
        """The SI prefix of the case's powers."""
        return self.telling.writing.unit.removesuffix("VA")

    def given_words(self) -> str:
        """What is known, in words."""
        mark = self.telling.mark
        if self.load is None:
            readings = zip(words.TAGS, (self.found.first, self.found.second), strict=False)
            return ", ".join(words.reading(plain((tag,)), self.watts(value)) for tag, value in readings)
        volts = quantity.plain(self.load.voltage, mark) + f"{NO_BREAK_SPACE}V"
        amps = quantity.plain(self.load.current, mark) + f"{NO_BREAK_SPACE}A"
        return f"{volts}, {amps}, {quantity.plain(round(self.load.lag, 2), mark)}°"


def _reading(reader: Reader, name: str) -> float:
    text, label = reader.given(name), reader.label(name)
    try:
        value = quantity.read(text, "W")
    except Unreadable as problem:
        reader.fault(name, words.bad_reading(label, text), problem.part)
        return 0.0
    if value != 0.0 and not LEAST <= math.fabs(value) <= LARGEST:
        reader.fault(name, words.reading_range(label, text))
    return value


class TwoWattmeters(SumPage[WattCase]):
    """The page ``/two-wattmeters/``."""

    slug = "two-wattmeters"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 8

    def case(self, form: Mapping[str, str]) -> WattCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        load: BalancedLoad | None = None
        balanced = reader.choice("balanced") == "yes"
        if reader.choice("known") == "load":
            volts = reader.amount("volts", "V", 1.0, 1e6) or 1.0
            amps = reader.amount("amps", "A", 1e-6, 1e5) or 1.0
            load = BalancedLoad(volts, amps, self._lag(reader))
            found = read(load)
            if not balanced:
                reader.fault("balanced", words.only_balanced(reader.label("balanced")))
        else:
            found = self._from_readings(reader)
        if reader.faults:
            reader.finish()
        # The reactive power is worked out: its figures do not ask for decimals that no reading has.
        sizes = [float(format(math.fabs(value), f".{figures}g"))
                 for value, figures in zip(tidied(found), (4, 4, 3), strict=True)]  # fmt: skip
        return WattCase(read_sheet(reader, FIELDS, sizes, "VA", computed=True), found, load, balanced=balanced)

    def _lag(self, reader: Reader) -> float:
        lag = reader.lag("lag").degrees
        if math.fabs(lag) > 90.0:
            reader.fault("lag", words.bad_lag(reader.label("lag"), reader.given("lag")))
        return lag

    def _from_readings(self, reader: Reader) -> Readings:
        first, second = _reading(reader, "w1"), _reading(reader, "w2")
        if not reader.faults and first == 0.0 and second == 0.0:
            for name in ("w1", "w2"):
                reader.fault(name, words.both_zero(reader.label(name)))
        return back(first or 1.0, second) if reader.faults else back(first, second)

    def outputs(self, case: WattCase, plan: Plan) -> tuple[Output, ...]:
        """The headline is what the drawing ends on; then both readings, power, reactive power, angle."""
        found, mark = case.found, case.telling.mark
        first, second, _ = case.readings
        told = case.telling.writing.number

        def watts(name: str, value: float, label: Phrase, unit: str = "W") -> Output:
            return Output(name, value, told(value), case.prefix + unit, label)

        made = [watts("power", found.power, say(words.ACTIVE))]
        if case.balanced:
            made = [watts("apparent-power", found.apparent, say(words.APPARENT), "VA"), *made]
        made += [watts("reading-1", first, (words.TAGS[0],)), watts("reading-2", second, (words.TAGS[1],))]
        if case.balanced:
            made.append(watts("reactive-power", found.reactive, say(words.REACTIVE), "var"))
            angle = quantity.fixed(found.lag, 1, mark) + "°"
            made.append(Output("lag", found.lag, angle, label=say(words.ANGLE)))
            factor = quantity.fixed(found.factor, 3, mark)
            made.append(Output("power-factor", found.factor, factor, label=say(words.FACTOR)))
        return (*made, *outputs_on_paper(case, plan, "sum-length"))

    def given(self, case: WattCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: WattCase) -> tuple[Phrase, ...]:
        """What each meter sees, which one reads backwards, where the method holds."""
        first, second, _ = case.readings
        if not case.balanced:
            return words.refused(), words.three_wires()
        made = [
            words.reads(number, degrees_text(angle, case.telling.mark), case.watts(value))
            for number, angle, value in zip((1, 2), case.seen, (first, second), strict=True)
        ]
        if case.power < 0:
            made.append(words.flows_back(case.watts(-case.power)))
        elif case.power == 0:
            made.append(words.opposite())
        elif case.readings[2] == 0:
            made.append(words.alike())
        else:
            for number, value in ((1, first), (2, second)):
                if value < 0:
                    made.append(words.negative(number))
                elif value == 0:
                    made.append(words.one_is_zero(number))
        return (*made, words.three_wires())

    def calculated(self, case: WattCase, plan: Plan) -> tuple[Working, ...]:
        """Both ways of reckoning, the phasor diagram, and what a hand can do."""
        made = [Working("back", say(words.back_title()), tuple(_back(case)))]
        if case.balanced:
            made.insert(0, Working("meters", say(words.PHASORS), tuple(_diagram(case))))
        return (*made, SumAccuracy(case).working(plan))

    def practice_form(self, code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's readings, with a class's own choices. Raises NoProblem."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.harmonics_in_the_neutral.practice import watts_of

        readings = watts_of(code)
        form = default_form(FIELDS) | dict(choices or {}) | {"known": "readings"}
        form |= {"w1": str(readings.first), "w2": str(readings.second), "paper": code.paper}
        known = [choice.value for choice in BY_NAME["method"].choices]
        return form | ({"method": code.method} if code.method in known else {})

    def echo(self, case: WattCase) -> dict[str, Mapping[str, str]]:
        """How the angle of lag was understood."""
        reader = Reader(case.problem.typed, BY_NAME)
        return {"lag": reader.lag("lag").echo(case.telling.mark)}

    def inks(self, form: Mapping[str, str]) -> dict[str, str]:
        """Ink of the line samples beside the labels, by phasor key."""
        return dict(conventions.PLAIN_INKS)


def _diagram(case: WattCase) -> list[Block]:
    """The phasor diagram, and each reading as voltage × current × cosine."""
    mark, lag = case.telling.mark, case.found.lag
    angles = (degrees_text(case.seen[0], mark), degrees_text(case.seen[1], mark))
    made: list[Block] = [
        Paragraph(say(words.CONNECTION)),
        Picture(phasors(lag, angles, words.picture_title(*angles)), "meters"),
        Paragraph(words.picture_words()),
    ]
    if case.load is None:
        return made
    volts, amps = (Number(quantity.plain(value, mark)) for value in (case.load.voltage, case.load.current))
    lines = []
    for tag, angle, value in zip(words.TAGS, case.seen, case.readings, strict=False):
        told = Number(quantity.plain(round(angle, 2), mark) + "°")
        result = Number(case.telling.writing.number(value), case.prefix + "W")
        lines.append(row(tag, "=", volts, "×", amps, "×", Function("cos", Fenced(told)), "=", result))
    return [*made, Equation(tuple(lines))]


def _signed(case: WattCase, value: float) -> Number | Fenced:
    number = Number(case.telling.writing.number(value))
    return Fenced(number) if value < 0 else number


def _back(case: WattCase) -> list[Block]:
    """From both readings to power, reactive power, angle and power factor."""
    found, told, prefix = case.found, case.telling.writing.number, case.prefix
    first, second, third = case.readings
    one, two = _signed(case, first), _signed(case, second)
    power, reactive = Symbol("P"), Symbol("Q")
    made: list[Block] = [
        Equation((row(power, "=", words.TAGS[0], "+", words.TAGS[1], "=", one, "+", two, "=",
                      Number(told(case.power), prefix + "W")),)),
    ]  # fmt: skip
    if not case.balanced:
        return [*made, Paragraph(words.refused())]
    three = Root(Number("3"))
    lines = [
        row(reactive, "=", three, Fenced(row(words.TAGS[1], "−", words.TAGS[0])), "=", three,
            Fenced(row(two, "−", one)), "=", Number(told(third), prefix + "var")),
    ]  # fmt: skip
    if case.power != 0:
        ratio = Fraction(Number(told(third)), Number(told(case.power)))
        lines.append(row(Symbol("φ"), "=", Function("arctan", Fenced(ratio)), "=", _degrees(case, case.tangent)))
    factor = row(Function("cos", Symbol("φ")), "=", Number(quantity.fixed(found.factor, 3, case.telling.mark)))
    if case.power >= 0:
        return [*made, Equation((*lines, factor))]
    turned = row(Symbol("φ"), "=", _degrees(case, case.tangent), "−" if case.tangent > 0 else "+", Number("180°"), "=",
                 _degrees(case, found.lag))  # fmt: skip
    return [*made, Equation(tuple(lines)), Equation((turned, factor), words.turned_back())]


def _degrees(case: WattCase, degrees: float) -> Number:
    return Number(quantity.fixed(degrees, 1, case.telling.mark) + "°")
