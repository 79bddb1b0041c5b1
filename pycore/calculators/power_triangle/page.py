"""The page ``/power-triangle/``: P, Q, S, and the capacitor that brings the power factor to a target."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from pycore import phasor, quantity
from pycore.calculators.power_triangle import words
from pycore.calculators.power_triangle.circuit import Correction, Load, NoLoad, capacitance, complex_power, correct
from pycore.constructions.construction import Construction, Picture, Step
from pycore.constructions.moves import Join
from pycore.forms.conventions import choice_field
from pycore.forms.elements import parts, scaled
from pycore.forms.reading import Lag, Reader
from pycore.practice.codes import Code
from pycore.practice.task import Mistake, Task
from pycore.quantity import Unreadable
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Field, Output, Working
from pycore.sums.case import SumCase
from pycore.sums.circuit import LEAST_HERTZ, MOST_HERTZ, arms_of, side_of
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper, small_notices
from pycore.sums.page import summary as sum_summary
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling, degrees_text
from pycore.words import Phrase, Symbol, say
from pycore.words import circuits as circuit_words

FIELDS: tuple[Field, ...] = (
    Field("power", words.LOAD, "phasor", "values", "10 kW", help=words.HELP),
    Field("factor", words.FACTOR, "phasor", "values", "0.7 lag"),
    Field("target", words.TARGET, "phasor", "values", "0.95"),
    Field("voltage", words.VOLTAGE, "quantity", "values", "400", "V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    choice_field("phases", words.PHASES, "values", "3", words.PHASE_CHOICES),
    *drawing_fields("units", words.REFERENCE),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
UNITS = ("W", "var", "VA", "A")
LEAST_POWER, MOST_POWER = 1e-3, 1e10
P, Q = Symbol("P"), Symbol("Q")


@dataclass(frozen=True, slots=True)
class PowerProblem:
    """What the form says: the load as typed (amount, unit), how it lags, the target (0: none) and its side."""

    amount: float
    unit: str
    lag: Lag
    target: float
    side: int
    load: Load


class PowerCase(SumCase):
    """One load, its powers as arms of a sum: active, reactive, and what corrects it."""

    slug = "power-triangle"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False
    part_word = "power"
    sum_word: Phrase = ("apparent power",)

    def __init__(self, problem: SheetProblem, given: PowerProblem, correction: Correction | None) -> None:
        self.given, self.correction = given, correction
        power = given.load.power
        self.corrected = correction is not None and correction.state == "needed"
        self.guess_word = words.GUESS if self.corrected else words.RESULT
        taken = correction.vars if correction and self.corrected else 0.0
        values = [complex(power.real, 0.0), complex(0.0, power.imag), complex(0.0, 0.0 - taken)]
        arms = arms_of(values)
        third = Symbol("Q", "C" if taken >= 0 else "L")
        tags: dict[str, Phrase] = {
            "i1": (P,), "i2": (Q,), "i3": (third,),
            "i12": (Symbol("S", "1"),), "i13": (P, " + ", third), "i23": (Q, " + ", third),
            "sum": (Symbol("S", "2" if self.corrected else ""),),
            "return": ("−", Symbol("S", "2" if self.corrected else "")),
        }  # fmt: skip
        on_first = problem["reference"] == "current"
        reference = arms[0].angle if on_first else 0.0
        telling = Telling(
            tags=tags,
            lines=("P", "Q", words.CAPACITOR if taken >= 0 else words.COIL),
            reference=tags[arms[0].key] if on_first and reference != 0.0 else (P,),
            voltage=(P,),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS,
            units={"i1": "W", "i2": "var", "i3": "var", "i23": "var"},
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)
        self.total = correction.after if correction and self.corrected else power

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order; tip to tail draws the apparent power before the correction too."""
        made = super().build(method, order)
        if not self.corrected or method != "tip-to-tail" or order != "12" or len(self.arms) != 3:
            return made
        place = next(index for index, step in enumerate(made.steps) if step.about == (1, 2)) + 1
        before = Step("on-the-way", (Join("before", "O", "P2", "partial", "i12"),), (1, 2))
        return replace(made, steps=(*made.steps[:place], before, *made.steps[place:]))

    def units_head(self) -> str:
        """None: each row names its own."""
        return ""

    def row_tag(self, key: str) -> Phrase:
        """P/kW, Q/kvar, S/kVA: quantity over unit, as tables have it (ISO 80000-1)."""
        prefix = self.telling.writing.unit.removesuffix("VA")
        tag = super().row_tag(key)
        return (*tag, f"/{prefix}{self.telling.units.get(key, 'VA')}")

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        task = words.TASK_TARGET if self.corrected else words.TASK
        return sheet_words(self, plan, kind, task, self.given_words() + ".")

    def factor_text(self, power: complex) -> str:
        """A power factor with its side: 0.700 lagging."""
        size = phasor.magnitude(power)
        factor = quantity.fixed(power.real / size if size else 1.0, 3, self.telling.mark)
        return circuit_words.factor_text(factor, side_of(phasor.angle(power)))

    def target_text(self) -> str:
        """The target as it is said."""
        told = quantity.plain(self.given.target, self.telling.mark)
        side = {1: circuit_words.LAGGING, -1: circuit_words.LEADING}.get(self.given.side, "")
        return circuit_words.factor_text(told, side) if self.given.target else ""

    def given_words(self) -> str:
        """10 kW at 0.700 lagging, to reach 0.95, on 400 V, 50 Hz, three phases."""
        given, mark = self.given, self.telling.mark
        supply = words.supply(
            scaled(given.load.volts, "V", mark), scaled(given.load.hertz, "Hz", mark), given.load.phases
        )
        load = scaled(given.amount, given.unit, mark)
        return words.given(load, self.factor_text(given.load.power), self.target_text(), supply)

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """What goes wrong between the load and its powers."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.power_triangle.practice import power_mistakes

        return power_mistakes(self)


def _read_load(reader: Reader) -> tuple[float, str] | None:
    text, label = reader.given("power"), reader.label("power")
    try:
        _, rest = quantity.split_number(text)
        if not rest:
            reader.fault("power", words.no_unit(label, text))
            return None
        for unit in UNITS:
            try:
                amount = quantity.read(text, unit)
            except Unreadable as problem:
                if problem.reason != "unit":
                    raise
                continue
            if not LEAST_POWER <= amount <= MOST_POWER:
                reader.fault("power", words.load_range(label, text))
                return None
            return amount, unit
    except Unreadable:
        pass
    reader.fault("power", words.bad_load(label, text))
    return None


def _read_lag(reader: Reader) -> Lag:
    """The load's angle; a bare number up to 1 is a power factor, lagging as most loads are."""
    text = reader.given("factor")
    try:
        value, rest = quantity.split_number(text)
        bare = not rest and 0.0 <= value <= 1.0
    except Unreadable:
        bare = False
    if not bare:
        lag = reader.lag("factor")
    else:
        reading = Reader({**reader.form, "factor": f"{text} lag"}, reader.fields)
        lag = reading.lag("factor")
        reader.faults += reading.faults
    if not -90.0 <= lag.degrees <= 90.0:
        reader.fault("factor", words.gives_power(reader.label("factor"), text))
    return lag


def _read_target(reader: Reader) -> tuple[float, int]:
    """The power factor to be reached and its side (0: not said); 0 for none."""
    text = reader.given("target")
    if not text:
        return 0.0, 0
    sides = {"lag": 1, "lagging": 1, "lead": -1, "leading": -1}
    told = [sides[word] for word in text.lower().split() if word in sides]
    number = " ".join(word for word in text.split() if word.lower() not in sides)
    try:
        value, rest = quantity.split_number(number)
    except Unreadable:
        value, rest = 0.0, "unread"
    if rest or len(told) > 1 or not 0.01 <= value <= 1.0:
        reader.fault("target", words.bad_target(reader.label("target"), text), text)
        return 0.0, 0
    return value, told[0] if told else 0


def read_power(reader: Reader) -> PowerProblem:
    """The load of a form. Raises InputError."""
    typed, lag = _read_load(reader), _read_lag(reader)
    target, side = _read_target(reader)
    volts = reader.amount("voltage", "V", 1e-3, 1e6)
    hertz = reader.amount("frequency", "Hz", LEAST_HERTZ, MOST_HERTZ)
    phases = int(reader.choice("phases"))
    if reader.faults or typed is None or volts is None or hertz is None:
        reader.finish()
    amount, unit = typed or (1.0, "VA")
    try:
        power = complex_power(amount, unit, lag.degrees, volts or 1.0, phases)
    except NoLoad as problem:
        reader.fault("power", words.no_load(reader.label("power"), problem.reason))
        reader.finish()
        raise
    return PowerProblem(amount, unit, lag, target, side, Load(power, volts or 1.0, phases, hertz or 50.0))


class PowerTriangle(SumPage[PowerCase]):
    """The page ``/power-triangle/``."""

    slug = "power-triangle"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 5

    def case(self, form: Mapping[str, str]) -> PowerCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME)
        given = read_power(reader)
        correction = correct(given.load, given.target, given.side) if given.target else None
        taken = correction.vars if correction else 0.0
        power = given.load.power
        sizes = [power.real, math.fabs(power.imag), math.fabs(taken), phasor.magnitude(power)]
        problem = read_sheet(reader, FIELDS, [float(f"{size:.3g}") for size in sizes], "VA", computed=True)
        return PowerCase(problem, given, correction)

    def outputs(self, case: PowerCase, plan: Plan) -> tuple[Output, ...]:
        """The capacitor first where one is needed, else apparent power; the triangle before and after."""
        load, mark = case.given.load, case.telling.mark
        power = load.power

        def output(name: str, value: float, unit: str, label: Phrase) -> Output:
            number, written = parts(value, unit, mark)
            return Output(name, value, number, written, label)

        size = phasor.magnitude(power)
        angle = phasor.angle(power)
        told = quantity.fixed(angle, 1, mark) + "°"
        triangle = [
            output("apparent-power", size, "VA", say(words.APPARENT)),
            output("active-power", power.real, "W", say(words.ACTIVE)),
            output("reactive-power", power.imag, "var", say(words.REACTIVE)),
            Output("power-factor", power.real / size, case.factor_text(power), label=say(words.FACTOR_OUT)),
            Output("phase-angle", angle, told, label=say(words.ANGLE)),
            output("line-current", load.current(power), "A", say(words.CURRENT)),
        ]
        made = [*self.correction_outputs(case), *triangle]
        if case.corrected:
            after = case.total
            made += [
                output("apparent-power-after", phasor.magnitude(after), "VA", say(words.APPARENT_AFTER)),
                Output("power-factor-after", after.real / phasor.magnitude(after), case.factor_text(after),
                       label=say(words.FACTOR_AFTER)),
                output("line-current-after", load.current(after), "A", say(words.CURRENT_AFTER)),
            ]  # fmt: skip
        return (*made, *outputs_on_paper(case, plan, "sum-length"))

    def correction_outputs(self, case: PowerCase) -> list[Output]:
        """The capacitor in vars and farads, or the coil."""
        if case.correction is None or not case.corrected:
            return []
        mark, taken = case.telling.mark, case.correction.vars
        number, unit = parts(math.fabs(taken), "var", mark)
        label = words.CAPACITOR_POWER if taken > 0 else words.COIL_POWER
        made = [Output("correction", taken, number, unit, say(label), "i3")]
        for connection in (("delta", "star") if case.given.load.phases == 3 else ("",)) if taken > 0 else ():
            farads = capacitance(case.given.load, taken, connection)
            name = f"capacitance-{connection}" if connection else "capacitance"
            made.append(Output(name, farads, *parts(farads, "F", mark), label=say(words.CAPACITY[connection])))
        return made

    def summary(self, case: PowerCase, plan: Plan) -> tuple[Phrase, ...]:
        """What the correction does, or the power factor; then what the drawing gives."""
        angle = phasor.angle(case.total)
        told = (quantity.MINUS if round(angle, 1) < 0 else "") + degrees_text(angle, case.telling.mark)
        line = words.stands_at(case.telling.tags["sum"], told, case.factor_text(case.total))
        return (line, *sum_summary(case, plan)[1:])

    def given(self, case: PowerCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: PowerCase) -> tuple[Phrase, ...]:
        """What is needed and what it does, or why nothing is."""
        correction, load, mark = case.correction, case.given.load, case.telling.mark
        made: list[Phrase] = []
        if correction is None:
            return (words.never_less(),)
        if correction.state != "needed":
            return (words.impossible() if correction.state == "impossible" else words.reached(case.target_text()),)
        kind = words.CAPACITOR if correction.vars > 0 else words.COIL
        if correction.vars < 0:
            made.append(words.leading())
        made.append(words.needs(kind, scaled(math.fabs(correction.vars), "var", mark), case.target_text()))
        before, after = load.current(load.power), load.current(case.total)
        if after < before:
            share = quantity.fixed(100.0 * (1.0 - after / before), 0, mark) + " %"
            made.append(words.current_falls(scaled(before, "A", mark), scaled(after, "A", mark), share))
        if correction.vars > 0 and load.phases == 3:
            made.append(words.three_times())
        return tuple(made)

    def notices(self, case: PowerCase, plan: Plan) -> tuple[Phrase, ...]:
        """What is too short to draw, crossings too flat."""
        return (*small_notices(case, plan), *SumAccuracy(case).notices(plan))

    def calculated(self, case: PowerCase, plan: Plan) -> tuple[Working, ...]:
        """The triangle, the current, the correction and the capacitors, with numbers."""
        # Only the workings need it; the first answer need not wait for its import.
        from pycore.calculators.power_triangle.workings import power_blocks

        return Working("formula", say(words.CALCULATED), power_blocks(case)), SumAccuracy(case).working(plan)

    def echo(self, case: PowerCase) -> dict[str, Mapping[str, str]]:
        """How the power factor was understood."""
        lag, mark = case.given.lag, case.telling.mark
        said = replace(lag, factor=lag.factor or "1").echo(mark)["said"]
        return {"factor": {"said": said}}

    def task_of_case(self, case: PowerCase) -> Task:
        """What is to be found, and what mistakes give."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.power_triangle.practice import power_task

        return power_task(case)

    def practice_form(self, code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's load, with a class's own choices. Raises NoProblem."""
        from pycore.calculators.power_triangle.practice import power_form

        return power_form(code, choices)
