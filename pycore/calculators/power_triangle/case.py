"""From the form to the sum that is drawn."""

from dataclasses import dataclass, replace

from pycore import phasor, quantity
from pycore.calculators.power_triangle import words
from pycore.calculators.power_triangle.circuit import (
    Load,
    NoLoadError,
    PowerFactorCorrection,
    capacitance,
    complex_power,
)
from pycore.calculators.power_triangle.construction import ACTIVE, CORRECTING, correction_found, is_found
from pycore.calculators.power_triangle.fields import FIELDS
from pycore.calculators.power_triangle.sentences import OWN_STEPS
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.methods import FIRST_PAIR, TIP_TO_TAIL
from pycore.constructions.names import DIAGONAL_LENGTH
from pycore.forms.elements import parts, scaled
from pycore.forms.reading import LagAngle, Reader
from pycore.quantity import QuantityError
from pycore.sheet.plan import Plan
from pycore.sheet.space import Space
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.circuit import LEAST_HERTZ, MOST_HERTZ, arms_of, factor_with_side, side_of
from pycore.sums.notes import sheet_words
from pycore.sums.planner import candidate
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import circuits as circuit_words
from pycore.words import plain
from pycore.words.phrase import Phrase, Symbol

UNITS = ("W", "var", "VA", "A")
LEAST_POWER, MOST_POWER = 1e-3, 1e10
P, Q = Symbol("P"), Symbol("Q")


@dataclass(frozen=True, slots=True)
class PowerProblem:
    """The checked input of the form: the load as typed (amount, unit), its angle, target (0: none) and side."""

    amount: float
    unit: str
    lag: LagAngle
    target: float
    side: int
    load: Load


class PowerCase(SumCase):
    """One load, its powers as arms of a sum: active, reactive, and the correction."""

    slug = "power-triangle"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False
    part_word = "power"
    sum_word: Phrase = words.SUM_WORD

    def __init__(self, problem: SheetProblem, entered: PowerProblem, correction: PowerFactorCorrection | None) -> None:
        self.entered, self.correction = entered, correction
        power = entered.load.power
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
        notation = Notation(
            tags=tags,
            lines=("P", "Q", words.CAPACITOR if taken >= 0 else words.COIL),
            reference=tags[arms[0].key] if on_first and reference != 0.0 else (P,),
            voltage=(P,),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS,
            asked_arm="i3" if self.corrected else "",
            units={"i1": "W", "i2": "var", "i3": "var", "i23": "var"},
            own_steps=OWN_STEPS,
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)
        self.total = correction.after if correction and self.corrected else power

    @property
    def finds_correction(self) -> bool:
        """Whether active power and the correction are both drawn: then a tip to tail can find the correction."""
        return self.corrected and {ACTIVE, CORRECTING} <= {arm.number for arm in self.arms}

    def spaces(self, method: str, order: str) -> tuple[Space, ...]:
        """The space of each order of a method; with further rows only its construction tells."""
        return () if self.finds_correction else super().spaces(method, order)

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order; tip to tail, P first, finds the correction."""
        construction = super().build(method, order)
        if not self.finds_correction:
            return construction
        if method == TIP_TO_TAIL and order == FIRST_PAIR:
            construction = correction_found(construction, phasor.angle(self.total))
        return replace(construction, further=len(self.further(construction)) + len(self.table_results(construction)))

    def plans(
        self, method: str, order: str = "", scale: float | None = None, second: float | None = None
    ) -> tuple[Plan, ...]:
        """Each order of a method, the best first; a sheet of a given scale or orientation that has no room for the
        further rows of the table goes without them."""
        plans = super().plans(method, order, scale, second)
        fits = (scale is None or plans[0].fit.fits) and plans[0].layout.orientation in self.ways()
        if fits or not plans[0].construction.further:
            return plans
        bare = [candidate(self, replace(plan.construction, further=0)) for plan in plans]
        return self.planner.choose(self, bare, order, scale, second)

    def further(self, construction: Construction) -> tuple[ComponentRow, ...]:
        """The apparent power before the correction, where the table has no other row for it."""
        has_row = DIAGONAL_LENGTH in construction.figure.readings and construction.order == FIRST_PAIR
        if not self.finds_correction or has_row:
            return ()
        power = self.entered.load.power
        return (ComponentRow(self.notation.tags["i12"], phasor.magnitude(power), phasor.angle(power), "i12"),)

    def table_results(self, construction: Construction) -> tuple[tuple[Phrase, str], ...]:
        """The capacitance of each capacitor."""
        if not self.finds_correction:
            return ()
        results = []
        for connection, farads in self.capacitances():
            number, unit = parts(farads, "F", self.notation.mark)
            results.append(((words.CAPACITANCE_TAGS[connection], f"/{unit}"), number))
        return tuple(results)

    def capacitances(self) -> tuple[tuple[str, float], ...]:
        """Connection (delta, star; "" on one phase) and farads of the capacitors; none where a coil corrects."""
        if self.correction is None or not self.corrected or self.correction.vars <= 0:
            return ()
        load, needed = self.entered.load, self.correction.vars
        connections = ("delta", "star") if load.phases == 3 else ("",)
        return tuple((connection, capacitance(load, needed, connection)) for connection in connections)

    def before_steps(self, construction: Construction) -> Phrase:
        """That a construction which does not find the correction needs it beforehand."""
        needs = self.finds_correction and not is_found(construction)
        return words.calculate_first(self.notation.tags["i3"]) if needs else ()

    def finding_moves(self, construction: Construction) -> tuple[str, ...]:
        """The target's angle, and the correction between two tips."""
        if not is_found(construction):
            return ()
        reactive = any(arm.key == "i2" for arm in self.arms)
        return words.finding_moves(plain(self.notation.tags["i3"]), plain((Q if reactive else P,)), reactive=reactive)

    def units_head(self) -> str:
        """None: each row names its own."""
        return ""

    def row_tag(self, key: str) -> Phrase:
        """P/kW, Q/kvar, S/kVA: quantity over unit, as tables have it (ISO 80000-1)."""
        prefix = self.notation.writing.unit.removesuffix("VA")
        tag = super().row_tag(key)
        return (*tag, f"/{prefix}{self.notation.units.get(key, 'VA')}")

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        task = words.TASK_TARGET if self.corrected else words.TASK
        values = words.question_text(*self._values_said())
        return replace(sheet_words(self, plan, kind, method, task, self.values_text() + "."), values=values)

    def factor_text(self, power: complex) -> str:
        """A power factor with its side: 0.700 lagging."""
        size = phasor.magnitude(power)
        return factor_with_side(power.real / size if size else 1.0, phasor.angle(power), self.notation.mark)

    def target_text(self) -> str:
        """The target power factor with its side, or ""."""
        factor = quantity.plain(self.entered.target, self.notation.mark)
        side = {1: circuit_words.LAGGING, -1: circuit_words.LEADING}.get(self.entered.side, "")
        return circuit_words.factor_text(factor, side) if self.entered.target else ""

    def reached_text(self) -> str:
        """The power factor after the correction, as the target was typed, with its side."""
        side = side_of(phasor.angle(self.total))
        return circuit_words.factor_text(quantity.plain(self.entered.target, self.notation.mark), side)

    def value_texts(self) -> tuple[str, ...]:
        """The load, its power factor and side, the target and its side, voltage and frequency."""
        entered, lag = self.entered, self.entered.lag.echo(".")
        target = f"{quantity.plain(entered.target)} {entered.side}"
        supply = scaled(entered.load.volts, "V", "."), scaled(entered.load.hertz, "Hz", ".")
        return scaled(entered.amount, entered.unit, "."), f"{lag['factor']} {lag['sense']}", target, *supply

    def values_text(self) -> str:
        """10 kW at 0.700 lagging, to reach 0.95, on 400 V, 50 Hz, three phases."""
        return words.values_text(*self._values_said())

    def _values_said(self) -> tuple[str, str, str, str]:
        """The load, its power factor, the target, and the supply, as they are said."""
        entered, mark = self.entered, self.notation.mark
        supply = words.supply(
            scaled(entered.load.volts, "V", mark), scaled(entered.load.hertz, "Hz", mark), entered.load.phases
        )
        load = scaled(entered.amount, entered.unit, mark)
        return load, self.factor_text(entered.load.power), self.target_text(), supply


def _read_load(reader: Reader) -> tuple[float, str] | None:
    text, label = reader.text("power"), reader.label("power")
    try:
        _, rest = quantity.split_number(text)
        if not rest:
            reader.fault("power", words.no_unit(label, text))
            return None
        for unit in UNITS:
            try:
                amount = quantity.read(text, unit)
            except QuantityError as problem:
                if problem.reason != "unit":
                    raise
                continue
            if not LEAST_POWER <= amount <= MOST_POWER:
                reader.fault("power", words.load_range(label, text))
                return None
            return amount, unit
    except QuantityError:
        pass
    reader.fault("power", words.bad_load(label, text))
    return None


def _read_lag(reader: Reader) -> LagAngle:
    """The load's angle; a bare number up to 1 is a power factor, lagging as most loads are."""
    text = reader.text("factor")
    try:
        value, rest = quantity.split_number(text)
        bare = not rest and 0.0 <= value <= 1.0
    except QuantityError:
        bare = False
    if not bare:
        lag = reader.lag("factor")
    else:
        reading = Reader({**reader.form, "factor": f"{text} lag"}, reader.fields)
        lag = reading.lag("factor")
        reader.faults += reading.faults
    if not -90.0 <= lag.degrees <= 90.0:
        reader.fault("factor", words.angle_above_right(reader.label("factor"), text))
    return lag


def _read_target(reader: Reader) -> tuple[float, int]:
    """The target power factor and its side (0: not named); 0 for no target."""
    text = reader.text("target")
    if not text:
        return 0.0, 0
    sides = {"lag": 1, "lagging": 1, "lead": -1, "leading": -1}
    named_sides = [sides[word] for word in text.lower().split() if word in sides]
    number = " ".join(word for word in text.split() if word.lower() not in sides)
    try:
        value, rest = quantity.split_number(number)
    except QuantityError:
        value, rest = 0.0, "unread"
    if rest or len(named_sides) > 1 or not 0.01 <= value <= 1.0:
        reader.fault("target", words.bad_target(reader.label("target"), text), text)
        return 0.0, 0
    return value, named_sides[0] if named_sides else 0


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
    except NoLoadError as problem:
        reader.fault("power", words.no_load(reader.label("power"), problem.reason))
        reader.finish()
        raise
    return PowerProblem(amount, unit, lag, target, side, Load(power, volts or 1.0, phases, hertz or 50.0))
