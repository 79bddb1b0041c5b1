"""From the form to the sum that is drawn."""

import math
from dataclasses import replace

from pycore import quantity
from pycore.calculators.two_wattmeters import words
from pycore.calculators.two_wattmeters.circuit import BalancedLoad, WattmeterReadings, angles, from_load, from_meters
from pycore.calculators.two_wattmeters.fields import FIELDS
from pycore.constructions.construction import Arm, DrawingConvention
from pycore.constructions.methods import COMPONENTS, TIP_TO_TAIL
from pycore.forms import conventions
from pycore.forms.reading import Reader
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, QuantityError
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.circuit import factor_with_side, side_of, written_as_zero
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import circuits as circuit_words
from pycore.words import plain
from pycore.words.phrase import Phrase, Symbol

LEAST, LARGEST = 1e-3, 1e9
NOTHING = 1e-9
"""Share of the apparent power below which a reading is zero: what is left is rounding."""
ARM_ANGLES = (0.0, 0.0, 90.0)


def _arms(values: tuple[float, ...]) -> tuple[Arm, ...]:
    """Powers as arms: those below zero turned round, those of nothing left out."""
    arms = []
    for number, (value, angle) in enumerate(zip(values, ARM_ANGLES, strict=False), start=1):
        if value != 0.0:
            turned = angle if value > 0 else (180.0 if angle == 0.0 else -90.0)
            arms.append(Arm(f"i{number}", number, math.fabs(value), turned))
    return tuple(arms)


def without_rounding_noise(result: WattmeterReadings) -> tuple[float, float, float]:
    """Both readings and the reactive power, with 0 for a value that is only rounding."""
    one, two, three = (
        0.0 if math.fabs(value) < NOTHING * result.apparent else value
        for value in (result.first, result.second, result.reactive)
    )
    return one, two, three


class WattmeterCase(SumCase):
    """Both readings in line and the reactive power square to them: their sum is the apparent power."""

    slug = "two-wattmeters"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    methods = (TIP_TO_TAIL, COMPONENTS)

    def __init__(
        self, problem: SheetProblem, result: WattmeterReadings, load: BalancedLoad | None, *, balanced: bool
    ) -> None:
        self.result, self.load, self.balanced, self.meters = result, load, balanced, problem["meters"]
        self.readings = without_rounding_noise(result)
        drawn = self.readings if balanced else self.readings[:2]
        self.typed_sizes = not balanced
        self.result_word = words.RESULT if balanced else words.RESULT_UNBALANCED
        self.to_work_out = words.NOT_GIVEN if load is None else ""
        tags: dict[str, Phrase] = {f"i{number}": (words.TAGS[number - 1],) for number in (1, 2, 3)}
        tags |= {"sum": (words.TAGS[3] if balanced else Symbol("P"),), "return": ("−", words.TAGS[3])}
        tags |= conventions.pair_tags(tags)
        arms = _arms(drawn)
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        origin = words.ORIGIN if balanced and self.power >= 0 else words.POSITIVE
        writing = problem.writing if balanced else replace(problem.writing, unit=f"{problem.writing.unit[:-2]}W")
        notation = Notation(
            tags=tags,
            lines=words.LINES,
            reference=tags[arms[0].key] if arms[0].angle == reference else origin,
            voltage=origin,
            writing=writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS if balanced else words.WATTS,
            units={"i1": "W", "i2": "W", "i12": "W", "i3": "var"} if balanced else {},
        )
        picture = DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        task = words.TASK if self.balanced else words.TASK_UNBALANCED
        return sheet_words(self, plan, kind, method, task, f"{self.values_text()}. {words.meters_note(self.meters)}")

    def typed(self, key: str) -> bool:
        """The readings, where they are what is known; all else is to be worked out."""
        return self.load is None and key != "i3"

    def typed_angle(self, key: str) -> bool:
        """No direction is given: it follows from a reading's sign."""
        return False

    def typed_amount(self, arm: Arm) -> str:
        """A reading with its sign: the wattmeter's own, which its arrow shows by its direction."""
        amount = super().typed_amount(arm)
        return quantity.MINUS + amount if self.readings[arm.number - 1] < 0 else amount

    def watts(self, value: float, unit: str = "W") -> str:
        """A power as it is written everywhere, in the unit of its kind."""
        return self.notation.writing.number(value) + NO_BREAK_SPACE + self.prefix + unit

    @property
    def power(self) -> float:
        """Both readings together (W; below zero: it flows back), with 0 for a value that is only rounding."""
        result = self.result
        return 0.0 if math.fabs(result.power) <= NOTHING * result.apparent else result.power

    @property
    def tangent(self) -> float:
        """The angle that the arctangent of Q over P gives, in degrees: the angle of lag itself where the power is not
        below zero, else 180 degrees from it."""
        return self.result.lag if self.power >= 0 else wrap(self.result.lag + 180.0)

    @property
    def meter_angles(self) -> tuple[float, float]:
        """Degrees between voltage and current of each meter: -180 < x <= 180."""
        first, second = angles(self.result.lag, self.meters)
        return wrap(first), wrap(second)

    @property
    def side(self) -> str:
        """Whether the current lags or leads, as a word; "" if it does neither."""
        if self.readings[2] == 0:
            return ""
        return circuit_words.LAGGING if self.readings[2] > 0 else circuit_words.LEADING

    @property
    def angle_text(self) -> str:
        """The phase angle with lag or lead: 40.0° lagging."""
        beside = self.side and not written_as_zero(self.result.lag)
        size = math.fabs(self.result.lag) if beside else self.result.lag
        text = quantity.fixed(size, 1, self.notation.mark) + "°"
        return f"{text}{NO_BREAK_SPACE}{self.side}" if beside else text

    @property
    def power_factor_text(self) -> str:
        """The power factor with lag or lead: 0.766 lagging."""
        return factor_with_side(self.result.factor, self.result.lag, self.notation.mark)

    @property
    def prefix(self) -> str:
        """The SI prefix of the case's powers."""
        return self.notation.writing.unit.removesuffix("VA" if self.balanced else "W")

    def units_head(self) -> str:
        """None where each row names its own."""
        return "" if self.balanced else super().units_head()

    def row_tag(self, key: str) -> Phrase:
        """P₁/W, Q/var, S/VA: quantity over unit, as tables have it (ISO 80000-1); of one unit, without it."""
        tag = super().row_tag(key)
        return (*tag, f"/{self.notation.unit_of(key)}") if self.balanced else tag

    def value_texts(self) -> tuple[str, ...]:
        """Both readings (W), or voltage (V), current (A) and lag of the load."""
        if self.load is None:
            return quantity.plain(self.result.first), quantity.plain(self.result.second)
        load = self.load
        return tuple(quantity.plain(value) for value in (load.voltage, load.current, round(load.lag, 2)))

    def values_text(self) -> str:
        """What is known, in words."""
        mark = self.notation.mark
        if self.load is None:
            readings = zip(words.TAGS, (self.result.first, self.result.second), strict=False)
            return ", ".join(words.reading(plain((tag,)), self.watts(value)) for tag, value in readings)
        volts = quantity.plain(self.load.voltage, mark) + f"{NO_BREAK_SPACE}V"
        amps = quantity.plain(self.load.current, mark) + f"{NO_BREAK_SPACE}A"
        lag = quantity.plain(round(math.fabs(self.load.lag), 2), mark) + "°"
        return words.load_text(volts, amps, lag, side_of(self.load.lag))


def read_meters(reader: Reader) -> tuple[WattmeterReadings, BalancedLoad | None]:
    """Both readings of a form, and the load if that is what is known. Raises InputError for values that cannot be
    used."""
    load: BalancedLoad | None = None
    meters = reader.choice("meters")
    balanced = reader.choice("balanced") == "yes"
    if reader.choice("known") == "load":
        volts = reader.amount("volts", "V", 1.0, 1e6) or 1.0
        amps = reader.amount("amps", "A", 1e-6, 1e5) or 1.0
        load = BalancedLoad(volts, amps, _lag(reader))
        result = from_load(load, meters)
        if not balanced:
            reader.fault("balanced", words.only_balanced(reader.label("balanced")))
    else:
        result = _both_readings(reader, meters)
    if reader.faults:
        reader.finish()
    return result, load


def sizes_to_print(result: WattmeterReadings, *, typed: bool) -> list[float]:
    """Both readings and the reactive power with the figures that set the number format: a typed reading with its own,
    a calculated one with as many decimals as the larger one has. The reactive power asks for no decimals beyond."""
    first, second, reactive = (math.fabs(value) for value in without_rounding_noise(result))
    decimals = quantity.decimals_for(max(first, second), 4)
    readings = [float(f"{size:.4g}") if typed else round(float(f"{size:.4g}"), decimals) for size in (first, second)]
    finest = max(decimals, *(quantity.decimals_of(quantity.plain(size)) for size in readings))
    return [*readings, round(float(f"{reactive:.3g}"), finest)]


def _lag(reader: Reader) -> float:
    lag = reader.lag("lag").degrees
    if math.fabs(lag) > 90.0:
        reader.fault("lag", words.bad_lag(reader.label("lag"), reader.text("lag")))
    return lag


def _both_readings(reader: Reader, meters: str) -> WattmeterReadings:
    first, second = read_reading(reader, "w1"), read_reading(reader, "w2")
    if not reader.faults and first == 0.0 and second == 0.0:
        for name in ("w1", "w2"):
            reader.fault(name, words.both_zero(reader.label(name)))
    return from_meters(first or 1.0, second, meters) if reader.faults else from_meters(first, second, meters)


def read_reading(reader: Reader, name: str) -> float:
    """A wattmeter's reading in watts; 0, with a fault, if it cannot be used or is not typed yet."""
    text, label = reader.text(name), reader.label(name)
    if not text:
        reader.awaited(name, words.enter_reading(label))
        return 0.0
    try:
        value = quantity.read(text, "W")
    except QuantityError as problem:
        reader.fault(name, words.bad_reading(label, text), problem.fragment)
        return 0.0
    if value != 0.0 and not LEAST <= math.fabs(value) <= LARGEST:
        reader.fault(name, words.reading_range(label, text))
    return value
