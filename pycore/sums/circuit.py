"""What the cases of all circuits share: tags, arms, companions, power factor in words."""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from typing import Protocol

from pycore import phasor, quantity
from pycore.constructions.construction import Arm
from pycore.constructions.names import arm_key
from pycore.forms import conventions
from pycore.forms.elements import scaled
from pycore.forms.reading import Reader
from pycore.quantity import QuantityError, writing_for
from pycore.sums.answer import Output
from pycore.sums.wording import CompanionPhasors, degrees_text
from pycore.words import circuits as words
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import NONE, SumWords

AMPS, VOLTS = Symbol("I"), Symbol("V")

DRAWN_SHARE = 1e-6
"""An arm below this share of the largest is not drawn; no sheet could show it."""
MOST_TIMES = 1000.0
"""The largest ratio of two voltages or currents that is stated; beyond it the divisor is only rounding."""
FACTOR_DECIMALS, MOST_FACTOR_DECIMALS = 3, 7
"""Decimals of a power factor: usual, and at most, which tell the cosine of the least angle that is written from 1."""
LEAST_SUPPLY, MOST_SUPPLY = 1e-6, 1e6
LEAST_HERTZ, MOST_HERTZ = 0.01, 1e9


def tags_of(symbols: Sequence[Symbol], total: Symbol, companion: Phrase) -> dict[str, Phrase]:
    """Return the tags of arms numbered from 1, of sums of two of the first three, of the sum, the returning phasor and
    the companion."""
    return conventions.tags_of(symbols, total) | {"c1": companion}


def arms_of(values: Sequence[complex]) -> tuple[Arm, ...]:
    """Return values as arms numbered from 1, without those that no sheet could show."""
    largest = max((phasor.magnitude(value) for value in values), default=0.0)
    return tuple(
        Arm(arm_key(number), number, phasor.magnitude(value), phasor.angle(value))
        for number, value in enumerate(values, start=1)
        if phasor.magnitude(value) > DRAWN_SHARE * largest
    )


def companion_of(size: float, unit: str, sum_words: SumWords, why: Phrase, mark: str) -> CompanionPhasors:
    """Return one phasor of the other quantity, at 0 degrees."""
    writing = replace(writing_for([float(f"{size:.3g}")], unit, mark), computed=True)
    return CompanionPhasors((Arm("c1", 1, size, 0.0),), writing, sum_words, why)


def side_of(angle: float) -> str:
    """Return the side of a current with this angle of lag: "lagging", "leading", or "" in phase."""
    if round(angle, 4) == 0.0:
        return ""
    return words.LAGGING if angle > 0 else words.LEADING


def written_as_zero(angle: float) -> bool:
    """Return whether an angle is written as 0°, to a tenth of a degree."""
    return round(angle, 1) == 0.0


def factor_number(factor: float, angle: float, mark: str) -> str:
    """Return a power factor to three decimals, or to as many more as show that it is not 1 where the ``angle`` of lag
    is not written as 0."""
    enough = (
        decimals for decimals in range(FACTOR_DECIMALS, MOST_FACTOR_DECIMALS)
        if math.fabs(round(factor, decimals)) != 1.0
    )
    decimals = FACTOR_DECIMALS if written_as_zero(angle) else next(enough, MOST_FACTOR_DECIMALS)
    return quantity.fixed(factor, decimals, mark)


def factor_with_side(factor: float, angle: float, mark: str) -> str:
    """Return a power factor with its side: 0.8 lagging; without, where the angle of lag is written as 0."""
    side = "" if written_as_zero(angle) else side_of(angle)
    return words.factor_text(factor_number(factor, angle, mark), side)


def angle_outputs(angle: float | None, factor: float | None, mark: str) -> tuple[Output, ...]:
    """Return the results for phase angle and power factor; without values if they are undefined."""
    if angle is None or factor is None:
        angle_text, written = NONE, NONE
    else:
        angle_text = quantity.fixed(angle, 1, mark) + "°"
        written = factor_with_side(factor, angle, mark)
    return (
        Output("phase-angle", angle, angle_text, label=say(words.ANGLE)),
        Output("power-factor", factor, written, label=say(words.FACTOR)),
    )


def factor_phrase(angle: float, factor: float, mark: str) -> Phrase:
    """Return whether the current lags or leads, with the power factor, in words."""
    side, current, voltage = side_of(angle), (AMPS,), (VOLTS,)
    if not side:
        return words.in_phase(current, voltage)
    if written_as_zero(angle):
        return words.almost_in_phase(current, voltage)
    sentence = words.lags if angle > 0 else words.leads
    return sentence(current, voltage, degrees_text(angle, mark), factor_with_side(factor, angle, mark))


def summary_with_angle(
    summary: tuple[Phrase, ...], angle: float | None, factor: float | None, mark: str
) -> tuple[Phrase, ...]:
    """Return a page's short lines with the angle between current and voltage, if there is one, for the direction."""
    if angle is None or factor is None:
        return summary
    return (factor_phrase(angle, factor, mark), *summary[1:])


class Supplied(Protocol):
    """A circuit on a supply of which the volts or the amperes are known."""

    @property
    def hertz(self) -> float: ...
    @property
    def volts(self) -> float | None: ...
    @property
    def amperes(self) -> float | None: ...


def supplied_text(
    parts: Iterable[str], circuit: Supplied, mark: str, with_voltage: Callable[[str, str, str], str],
    with_current: Callable[[str, str, str], str],
) -> str:
    """Return a circuit in words: its parts, the known volts or amperes, and the frequency."""
    amperes = circuit.amperes
    known, unit, sentence = (circuit.volts, "V", with_voltage) if amperes is None else (amperes, "A", with_current)
    return sentence(", ".join(parts), scaled(known or 0.0, unit, mark), scaled(circuit.hertz, "Hz", mark))


def supply_texts(circuit: Supplied) -> tuple[str, str]:
    """Return what is known of the supply, volts or amperes, and the frequency, as a check code knows them."""
    amperes = circuit.amperes
    known, unit = (circuit.volts, "V") if amperes is None else (amperes, "A")
    return scaled(known or 0.0, unit, "."), scaled(circuit.hertz, "Hz", ".")


def read_supply(reader: Reader, name: str) -> tuple[float | None, float | None]:
    """Return volts, or amperes if the text is in amperes; None and a fault if it is neither."""
    text, label = reader.text(name), reader.label(name)
    example = reader.fields[name].default or "230 V"
    for unit in ("V", "A"):
        try:
            value = quantity.read(text, unit)
        except QuantityError as problem:
            if problem.reason == "unit" and unit == "V":
                continue
            reader.fault(name, words.bad_supply(label, text, example), problem.fragment)
            return None, None
        if not LEAST_SUPPLY <= value <= MOST_SUPPLY:
            bounds = (quantity.engineering(bound, unit) for bound in (LEAST_SUPPLY, MOST_SUPPLY))
            reader.fault(name, words.supply_range(label, text, *bounds))
            return None, None
        return (value, None) if unit == "V" else (None, value)
    return None, None


def times_text(times: float, mark: str) -> str:
    """Return a ratio to two figures: 2.5, or "more than 1000"."""
    if times > MOST_TIMES:
        return words.more_than(quantity.plain(MOST_TIMES, mark))
    return quantity.fixed(times, quantity.decimals_for(times, 2), mark)


def almost(first: float, second: float, share: float) -> bool:
    """Return whether two sizes differ by less than a share of the second."""
    return math.fabs(first - second) <= share * math.fabs(second)
