"""What goes wrong in reckoning, as it is described: each worked out anew from the problem's lines (common practice)."""

import cmath
import math
from collections.abc import Iterator
from itertools import combinations

import numpy as np

from independent.answers import Attempt, name, rounded
from independent.problems import (
    ROOT_THREE,
    TURN,
    Problem,
    branches,
    degrees,
    impedance,
    loads,
    number,
    polar,
    reactances,
    star_point,
    wrapped,
)

Slip = tuple[str, complex | float, str]
"""A mistake's key, what it gives (a float: a number without a direction of its own) and the sentences that name it."""


def right(problem: Problem) -> Attempt:
    """The right answer to three figures."""
    return Attempt("right", "calculated", lambda hand: rounded(hand, problem.right))


def mistakes(problem: Problem, dice: np.random.Generator) -> Iterator[Attempt]:
    """Every described mistake of reckoning for this problem. With a number alone goes the right angle, or 0."""
    slips = [*_own(problem, dice), *_of_the_end(problem, dice)]
    if not problem.single and len(problem.lines) > 1:
        slips += [*_as_numbers(problem), *_in_the_formula(problem, dice), *_in_components(problem, dice)]
        slips += [*_of_the_machine(problem, dice), *_of_lags(problem)]
    for key, value, words in slips:
        angle = None
        if not isinstance(value, complex):
            if abs(value - abs(problem.right)) < 0.01 * abs(problem.right):
                continue  # The right number, as the root of the squares is for two phasors at a right angle.
            angle = float(dice.choice([0.0, degrees(problem.right)]))
        yield Attempt(key, "calculated", lambda hand, v=value, a=angle: rounded(hand, v, a), words)


def _as_numbers(problem: Problem) -> Iterator[Slip]:
    sizes = [abs(line.value) for line in problem.lines]
    yield "plain-sum", sum(sizes), "added as plain numbers"
    yield "largest-less-smallest", max(sizes) - min(sizes), "smallest value was taken from the largest|taken as plain"
    yield "mean", sum(sizes) / len(sizes), "the mean of the values"
    yield "root-of-squares", math.hypot(*sizes), "root of the sum of the squares"


def _in_the_formula(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    if not problem.equal_angles:
        return
    sizes = [abs(line.value) / problem.per for line in problem.lines]
    pairs = list(combinations(range(3), 2))
    squares, products = sum(s * s for s in sizes), [sizes[i] * sizes[j] for i, j in pairs]
    net = squares - sum(products)
    k = int(dice.integers(3))
    one, other = (name(problem.lines[j].name).replace(r"(?<![\w−])", "") for j in pairs[k])
    yield "no-root", net * problem.per, "square root was forgotten"
    yield "signs-slipped", math.sqrt(squares + sum(products)) * problem.per, "the products were added"
    for key, share, words in (("product-dropped", 1.0, "was left out"), ("sign-slipped", 2.0, "slipped")):
        if net + share * products[k] > 0:
            pattern = f"product {one} × {other} {words}|sign of the product {one} × {other}"
            yield key, math.sqrt(net + share * products[k]) * problem.per, pattern
    if net - products[k] > 0:
        yield "product-doubled", math.sqrt(net - products[k]) * problem.per, f"product {one} × {other} was used twice"


def _in_components(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    values, whole = [line.value for line in problem.lines], problem.right
    names = [name(line.name) for line in problem.lines]
    yield "across-only", complex(whole.real), "only the parts along (one|the other) axis"
    yield "up-only", 1j * whole.imag, "only the parts along (one|the other) axis"
    yield "parts-added", abs(whole.real) + abs(whole.imag), "two sums of components were added as plain"
    k = int(dice.integers(len(values)))
    swapped = whole - values[k] + complex(values[k].imag, values[k].real)
    yield "sine-for-cosine", swapped, f"sine and cosine are swapped for {names[k]}"
    yield "all-sine-for-cosine", complex(whole.imag, whole.real), "cosine are exchanged throughout|from the other axis"
    yield "one-sign", complex(whole.real, sum(abs(v.imag) for v in values)), "have the same sign"
    k = int(dice.integers(len(values)))
    yield "left-out", whole - values[k], f"{names[k]} was left out|{names[k]} itself|alone"
    k = int(dice.integers(len(values)))
    yield "wrong-sign", whole - 2.0 * values[k], f"{names[k]} points the opposite|opposite way"
    if problem.equal_angles:
        turned = [v if abs(wrapped(degrees(v))) < 1 else polar(abs(v), math.copysign(90.0, degrees(v))) for v in values]
        yield "right-angles", sum(turned), "90° was used between"


def _of_the_machine(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    upward = bool(dice.integers(2))
    for key, unit in (("radians", 1.0), ("gradians", math.pi / 200.0)):
        angles = [degrees(line.value) % 360.0 if upward else degrees(line.value) for line in problem.lines]
        end = sum(cmath.rect(abs(line.value), unit * a) for line, a in zip(problem.lines, angles, strict=True))
        if any(round(a) % 90 for a in angles) or key == "radians":
            yield key, end, f"calculator was set to {key}"


def _of_the_end(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    whole = problem.right
    times = float(dice.choice([10.0, 0.1]))
    yield "decimal", whole * times, "decimal point is one place"
    if not problem.single:
        yield "times-root-three", whole * ROOT_THREE, "multiplied by √3|line voltage was used"
        yield "over-root-three", whole / ROOT_THREE, "divided by √3"
        yield "complement", complex(whole.imag, whole.real), "from the other axis|exchanged throughout"
        yield "turned-round", -whole, "opposite direction|other way round"


def _of_lags(problem: Problem) -> Iterator[Slip]:
    lags = [float(problem.form.get(f"a{k}") or 0) for k in (1, 2, 3)]
    if not problem.voltages or not any(lags):
        return
    ways = (("factor-ignored", 0.0, "power factors were left out"), ("lead-for-lag", 1.0, "lead was used instead of lag"))
    for key, sense, words in ways:
        angles = [v + sense * lag for v, lag in zip(problem.voltages, lags, strict=True)]
        ends = [polar(abs(line.value), a - angles[0]) for line, a in zip(problem.lines, angles, strict=True)]
        yield key, sum(ends), words


def _own(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    """What goes wrong with one topic alone."""
    topics = {
        "series-circuit": _series, "parallel-circuit": _parallel, "power-triangle": _power, "open-neutral": _open,
        "two-wattmeters": _wattmeters, "sequence-components": _sequence, "star-and-delta": _difference,
        "harmonics-in-the-neutral": _harmonics, "add-phasors": _difference,
    }  # fmt: skip
    if problem.slug == "open-neutral":
        yield from _open(problem, dice)
    elif problem.slug in topics:
        yield from topics[problem.slug](problem)


def _series(problem: Problem) -> Iterator[Slip]:
    form = problem.form
    current, frequency = number(form["supply"]), number(form["frequency"])
    resistances, coil, capacitor = reactances(form)
    ohms = sum(resistances)
    yield "impedances-as-numbers", current * (ohms + abs(coil + capacitor)), "added as plain numbers"
    yield "kinds-exchanged", current * (ohms - coil - capacitor), "coil and capacitor are swapped"
    if coil and capacitor:
        yield "reactances-added", current * (ohms + coil - capacitor), "the reactances were added"
    if any(unit in form.get(key, "") for key, unit in (("l", "H"), ("c", "F"))):
        turns = 2.0 * math.pi
        yield "two-pi-forgotten", current * (ohms + coil / turns + capacitor * turns), "2π was left out"
    if "F" in form.get("c", ""):
        wrong = complex(0, -2.0 * math.pi * frequency * number(form["c"]))
        yield "reactance-inverted", current * (ohms + coil + wrong), "calculated as 2πfC"
        yield "micro-as-milli", current * (ohms + coil + capacitor / 1e3), "used as millifarads"
    if "mH" in form.get("l", ""):
        yield "milli-forgotten", current * (ohms + 1e3 * coil + capacitor), "used as henries"


def _parallel(problem: Problem) -> Iterator[Slip]:
    form, volts = problem.form, number(problem.form["supply"])
    ohms, frequency = branches(form), number(form["frequency"])
    yield "impedances-in-series", volts / sum(ohms), "as a series circuit"
    yield "kinds-exchanged", sum(volts / z.conjugate() for z in ohms), "coil and capacitor are swapped"
    texts = [form[f"b{k}"] for k in range(1, 7) if form.get(f"b{k}")]
    if any("H" in text or "F" in text for text in texts):
        wrong = [complex(z.real, z.imag / (2 * math.pi) if z.imag > 0 else z.imag * 2 * math.pi) for z in ohms]
        yield "two-pi-forgotten", sum(volts / z for z in wrong), "2π was left out"
    if any("mH" in text for text in texts):
        wrong = [impedance(text.replace("mH", "H"), frequency) for text in texts]
        yield "milli-forgotten", sum(volts / z for z in wrong), "used as henries"


def _power(problem: Problem) -> Iterator[Slip]:
    form, active = problem.form, number(problem.form["power"])
    factor = float(form["factor"].split()[0])
    lag = math.acos(factor)
    if not problem.single:
        along = problem.right / abs(problem.right)
        yield "apparent-for-active", active * along, "active power was used as the apparent"
        yield "factor-multiplied", active * factor * along, "multiplied by the power factor"
        yield "powers-as-numbers", active * (1.0 + math.tan(lag)), "P and Q were added as plain|added as plain"
        return
    after = math.acos(float(form["target"]))
    yield "remaining-taken", active * math.tan(after), "power that remains"
    yield "whole-corrected", active * math.tan(lag), "all the reactive power"
    yield "cosines-subtracted", active * (math.cos(after) - math.cos(lag)), "factors were subtracted"
    yield "apparent-subtracted", active * (1 / math.cos(lag) - 1 / math.cos(after)), "apparent powers were subtracted"


def _open(problem: Problem, dice: np.random.Generator) -> Iterator[Slip]:
    volts, admittances = loads(problem.form)
    k = int(dice.integers(3))
    left = [0j if j == k else y for j, y in enumerate(admittances)]
    yield "load-left-out", star_point(volts, left), f"load on L{k + 1} was left out"
    yield "impedance-for-admittance", star_point(volts, [1.0 / y for y in admittances]), "instead of admittances"
    sizes = [abs(y) for y in admittances]
    if any(y.imag for y in admittances):
        yield "angles-ignored", star_point(volts, [complex(y) for y in sizes]), "angles of the loads|as plain"


def _wattmeters(problem: Problem) -> Iterator[Slip]:
    one, two = number(problem.form["w1"]), number(problem.form["w2"])
    yield "root-three-forgotten", complex(one + two, two - one), "√3 was left out of"
    yield "readings-exchanged", complex(one + two, ROOT_THREE * (one - two)), "two readings are swapped"
    if one < 0:
        yield "minus-forgotten", complex(two - one, ROOT_THREE * (two + one)), "minus sign of a reading"


def _sequence(problem: Problem) -> Iterator[Slip]:
    own = {"zero": (1, 1), "positive": (TURN, TURN**2), "negative": (TURN**2, TURN)}[problem.form["part"]]
    one, *rest = (line.value for line in problem.lines)
    two, three = (value / turn for value, turn in zip(rest, own, strict=True))
    yield "divided-already", problem.right / 3.0, "divided by three already"
    if problem.form["part"] == "zero":
        yield "turned", one + TURN * two + TURN**2 * three, "phasors were turned"
    else:
        yield "a-exchanged", one + own[1] * two + own[0] * three, "were swapped, which gives"
        yield "not-turned", one + two + three, "added without turning them"


def _difference(problem: Problem) -> Iterator[Slip]:
    signs = [-1.0 if line.name.startswith("−") else 1.0 for line in problem.lines]
    if -1.0 in signs:
        added = sum(sign * line.value for sign, line in zip(signs, problem.lines, strict=True))
        yield "added", added, "added, not taken off"
        yield "difference-turned", -problem.right, "other way round|opposite direction"


def _harmonics(problem: Problem) -> Iterator[Slip]:
    form, order = problem.form, int(problem.form["drawn"])
    if order > 1:
        angles = [angle - float(form.get(f"a{k}") or 0) for k, angle in enumerate((0.0, -120.0, 120.0), 1)]
        ends = [polar(abs(line.value), angle) for line, angle in zip(problem.lines, angles, strict=True)]
        yield "order-not-multiplied", sum(ends), "angles are those of the fundamental"
