"""One problem of harmonics: the phasors of the order to draw, beside the whole spectrum."""

import math

from pycore import phasor, quantity
from pycore.calculators.harmonics_in_the_neutral import words
from pycore.calculators.harmonics_in_the_neutral.circuit import (
    DistortedCurrents,
    HarmonicOrder,
    Spectrum,
    fundamental_from_total,
)
from pycore.calculators.harmonics_in_the_neutral.fields import FIELDS, ORDERS
from pycore.constructions import construction
from pycore.constructions.construction import Arm
from pycore.forms import conventions
from pycore.forms.phasor_text import read_phasor
from pycore.forms.reading import LagAngle, Reader
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, QuantityError, writing_for
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.notes import sheet_words
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation, SheetWords
from pycore.words import inputs, sheet
from pycore.words.phrase import Phrase, Symbol

LEAST_SHARE, MOST_SHARE = 0.01, 200.0
NEAR = 1e-9
"""Difference, as a share of all sizes, up to which two results count as equal."""
SAME_ANGLE = 1e-9
"""Degrees up to which two lags count as equal."""


class HarmonicCase(SumCase):
    """The phasors of one harmonic order as they are drawn, with the whole spectrum."""

    slug = "harmonics-in-the-neutral"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    sum_word: Phrase = ("neutral",)
    result_word = words.RESULT
    part_word = "line"

    def __init__(
        self, problem: SheetProblem, spectrum_: Spectrum, order: HarmonicOrder, load: DistortedCurrents
    ) -> None:
        self.spectrum, self.order, self.load = spectrum_, order, load
        fundamentals = [float(f"{phasor.magnitude(value):.3g}") for value in spectrum_.orders[0].lines]
        self.fundamental_format = writing_for(fundamentals, "A", problem.writing.mark)
        arms = tuple(
            Arm(f"i{number}", number, phasor.magnitude(value), phasor.angle(value))
            for number, value in enumerate(order.lines, start=1)
            if value != 0
        )
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        tags = _tags(problem["names"], order.number, alone=len(spectrum_.orders) == 1)
        notation = Notation(
            tags=tags,
            lines=conventions.line_names(problem["names"]),
            reference=tags[arms[0].key] if arms[0].angle == reference else words.ANGLE_NAME,
            voltage=words.ANGLE_NAME,
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.WORDS,
        )
        picture = construction.DrawingConvention(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, notation.lines, picture, notation)

    def number(self, value: float) -> str:
        """A current (A) as a number in the unit of the fundamental, whatever order is drawn, with at least two
        figures."""
        scaled = value / self.fundamental_format.factor
        least = quantity.decimals_for(scaled, 2)
        if least <= self.fundamental_format.decimals + 1:
            return self.fundamental_format.number(value)
        return quantity.fixed(scaled, least, self.fundamental_format.mark)

    def amount_text(self, value: float) -> str:
        """A current (A) as text with its unit."""
        return self.number(value) + NO_BREAK_SPACE + self.fundamental_format.unit

    @property
    def equal_lags(self) -> bool:
        """Whether all lines that carry current lag by the same angle."""
        lags = [lag for lag, size in zip(self.load.lags, self.load.currents, strict=True) if size]
        return all(math.fabs(wrap(lag - lags[0])) <= SAME_ANGLE for lag in lags)

    def in_phase(self, order: HarmonicOrder) -> bool:
        """Whether an order has one direction in all lines, so that its sizes add up as numbers."""
        sizes = math.fsum(phasor.magnitude(value) for value in order.lines)
        return sizes - phasor.magnitude(order.neutral) <= NEAR * sizes

    def typed_angle(self, key: str) -> bool:
        """No direction is given: each follows from order and lag."""
        return False

    def value_texts(self) -> tuple[str, ...]:
        """Each fundamental current (A) with its lag, and each order with its share (%) and angle."""
        load = self.load
        lines = zip(load.currents, load.lags, strict=True)
        orders = ((order, 100.0 * share, load.phases.get(order, 0.0)) for order, share in load.shares.items())
        return (
            *(f"{quantity.plain(size)} {quantity.plain(round(lag, 2))}" for size, lag in lines),
            *(f"{order}: {quantity.plain(share)} {quantity.plain(round(angle, 2))}" for order, share, angle in orders),
        )

    def values_text(self) -> str:
        """The fundamental line currents as text, each with its lag if the lines do not all have a lag of zero."""
        sizes = [self.amount_text(phasor.magnitude(value)) for value in self.spectrum.orders[0].lines]
        if not any(self.load.lags):
            return ", ".join(sizes)
        lags = [LagAngle(lag).echo(self.notation.mark)["degrees"] for lag in self.load.lags]
        return ", ".join(f"{size} {lag}" for size, lag in zip(sizes, lags, strict=True))

    def amounts(self, values: tuple[complex, ...]) -> str:
        """The sizes of several phasors (A) as text: 2 A, 1.2 A, 0.8 A."""
        return ", ".join(self.amount_text(phasor.magnitude(value)) for value in values)

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        number, mark = self.order.number, self.notation.mark
        own = quantity.plain(round(self.load.phases.get(number, 0.0), 2), mark) + "°"
        short = plan.layout.small
        instructions = words.order_instructions(number, own if self.load.phases.get(number) else "", short=short)
        return sheet_words(self, plan, kind, method, words.TASK, f"{instructions} {self._lags(short=short)}")

    def _lags(self, *, short: bool) -> str:
        """How the fundamental currents lag, and in which sequence they come."""
        sequence, load = ", ".join(self.lines), self.load
        echoes = {
            name: LagAngle(lag).echo(self.notation.mark)
            for name, lag, size in zip(self.lines, load.lags, load.currents, strict=True)
            if size
        }
        if self.equal_lags:
            return sheet.equal_load(sequence, next(iter(echoes.values())), short=short)
        lag_texts = [sheet.line_lag(name, echo) for name, echo in echoes.items()]
        return sheet.unequal_load(", ".join(lag_texts), sequence, short=short)

    def method_words(self, plan: Plan, *, any_method: bool = False) -> str:
        """The method and the order as the title block says them."""
        return f"{words.share_label(self.order.number)}: {super().method_words(plan, any_method=any_method)}"


def _tags(names: str, order: int, *, alone: bool) -> dict[str, Phrase]:
    """Tags of one order's phasors with their order; where there is only the fundamental, as everywhere."""
    if alone:
        return conventions.symbols("I", names)
    short = [name.removeprefix("L") for name in conventions.NAMES[names]]
    return conventions.tags_of([Symbol("I", f"{name},{order}") for name in short], Symbol("I", f"N,{order}"))


def _share(reader: Reader, order: int) -> tuple[float, float]:
    """Share and angle of an order; 0 for an empty field."""
    name = f"h{order}"
    text, label = reader.text(name), reader.label(name)
    if not text:
        return 0.0, 0.0
    try:
        size, angle = read_phasor(text, "%")
    except QuantityError as error:
        reader.fault(name, words.bad_share(label, text), error.fragment)
        return 0.0, 0.0
    if size != 0.0 and not LEAST_SHARE <= size <= MOST_SHARE:
        reader.fault(name, words.share_range(label, text))
    return size / 100.0, angle


def read_load(reader: Reader) -> tuple[DistortedCurrents, dict[int, float]]:
    """The load of a form (fundamentals in A, lags in degrees) and its harmonic shares; faults go to the reader."""
    currents = [reader.current(name) or 0.0 for name in ("i1", "i2", "i3")]
    lags = [reader.lag(name).degrees for name in ("a1", "a2", "a3")]
    share_angles = {order: _share(reader, order) for order in ORDERS}
    shares = {order: share for order, (share, _) in share_angles.items() if share > 0}
    if not reader.faults and not any(currents):
        for name in ("i1", "i2", "i3"):
            reader.fault(name, inputs.all_zero(reader.label(name), reader.text(name)))
    stated, of_total = reader.choice("stated") == "total", reader.choice("of") == "total"
    if not reader.faults:
        currents, shares = _fundamentals(reader, currents, shares, stated=stated, of_total=of_total)
    phases = {order: share_angles[order][1] for order in shares}
    load = DistortedCurrents((currents[0], currents[1], currents[2]), (lags[0], lags[1], lags[2]), shares, phases)
    return load, shares


def _fundamentals(
    reader: Reader, currents: list[float], shares: dict[int, float], *, stated: bool, of_total: bool
) -> tuple[list[float], dict[int, float]]:
    """Fundamental currents, and shares of them, from what the form's words make of the numbers."""
    try:
        ratio = fundamental_from_total(1.0, shares, of_total=of_total)
    except ValueError:
        for order in shares:
            reader.fault(f"h{order}", words.too_much(reader.label(f"h{order}")))
        return currents, shares
    if of_total:
        # A share of the total, as a share of the fundamental.
        shares = {order: share / ratio for order, share in shares.items()}
    return ([current * ratio for current in currents] if stated else currents), shares
