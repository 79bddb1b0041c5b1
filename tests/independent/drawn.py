"""What goes wrong with ruler and protractor, as it is described: drawings carried out differently (common practice)."""

import cmath
import math
from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from independent.answers import Answer, Attempt, name, read
from independent.hand import RADIUS, RULER, Hand, Plan, plan_of
from independent.problems import Problem, degrees, polar, wrapped

LADDER = [step * 10.0**power for power in range(-3, 6) for step in (1.0, 2.0, 2.5, 4.0, 5.0)]
PAPER = "would be right at|another scale|paper.s scale"


def other_scale(turn: float) -> float:
    """The protractor's other row of figures read."""
    return math.copysign(180.0 - abs(turn), turn)


def wrong_way(turn: float) -> float:
    """Turned to the other side."""
    return -turn


def from_base_edge(gap: float, turn: float) -> float:
    """The base edge laid along the line where the zero line belongs, ``gap`` mm below it."""
    return math.degrees(cmath.phase(math.copysign(gap, turn) * 1j + RADIUS * polar(1.0, turn)))


def at_right_angle(turn: float) -> float:
    """A right angle in place of the turn."""
    return math.copysign(90.0, turn)


def turn_of(plan: Plan, k: int) -> float:
    """The turn that the protractor sets for a line, 0 where there is nothing to set."""
    if plan.method != "tip-to-tail" or k == plan.order[0]:
        return plan.angles[k]
    before = plan.order[plan.order.index(k) - 1]
    return wrapped(plan.angles[k] - plan.angles[before] - 180.0)


def right(problem: Problem, *, length: bool = False) -> Attempt:
    """The sheet's own drawing, answered in the quantity's unit or in millimetres."""

    def act(hand: Hand) -> Answer:
        answer = single(problem, hand) if problem.single else read(problem, hand, hand.draw(plan_of(problem)).end[0])
        return replace(answer, length=10.0 * answer.size / problem.scale) if length else answer

    return Attempt("right", "drawn", act)


def single(problem: Problem, hand: Hand, before: float = 1.0, after: float = 1.0) -> Answer:
    """The capacitor's power off a drawn triangle: what stands above the target's line; shares of each part kept."""
    active = float(problem.form["power"].split()[0]) * (1e3 if "k" in problem.form["power"] else 1.0)
    lags = [math.degrees(math.acos(float(problem.form[key].split()[0]))) for key in ("factor", "target")]
    base = 10.0 * active / problem.scale + hand.slip(RULER)
    heights = [base * np.tan(np.radians(lag + hand.slip(0.5))) for lag in lags]
    length = hand.read(np.abs(before * heights[0] - after * heights[1]))
    return Answer(float(length[0]) * problem.scale / 10.0)


def _of(problem: Problem, key: str, plan: Plan, named: str) -> Attempt:
    return Attempt(key, "drawn", lambda hand: read(problem, hand, hand.draw(plan).end[0], plan.edge), named)


def mistakes(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    """Every described mistake that this problem's drawing allows, its line chosen by the rng."""
    if problem.single:
        yield Attempt("remaining-taken", "drawn", lambda hand: single(problem, hand, 0.0), "power that remains")
        whole = "all the reactive power"
        yield Attempt("whole-corrected", "drawn", lambda hand: single(problem, hand, 1.0, 0.0), whole)
    else:
        yield from _of_lines(problem, rng)
        yield from _of_the_protractor(problem, rng)
        yield from _of_stages(problem, rng)
        yield from _of_lags(problem)
        yield from _of_the_sheet(problem, rng)
    yield from _at_the_end(problem, rng)


def _changed(plan: Plan, k: int, length: float) -> Plan:
    return replace(plan, lengths=[length if j == k else one for j, one in enumerate(plan.lengths)])


def _of_lines(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    plan, names = plan_of(problem), [name(line.name) for line in problem.lines]
    count = len(names)
    if count < 2:
        return
    k = int(rng.integers(count))
    diagonal = "stops at the first diagonal" if count == 3 and k == plan.order[2] else "no such"
    left = replace(plan, order=tuple(j for j in plan.order if j != k))
    yield _of(problem, "left-out", left, f"{names[k]} was left out|{diagonal}")
    k = int(rng.integers(count))
    yield _of(problem, "reversed", _changed(plan, k, -plan.lengths[k]), f"{names[k]} points the opposite way")
    one, two = (int(j) for j in rng.choice(count, 2, replace=False))
    swapped = _changed(_changed(plan, one, plan.lengths[two]), two, plan.lengths[one])
    pair = (f"{names[first]} and {names[second]} are swapped" for first, second in ((one, two), (two, one)))
    exchanged = "|".join(pair).replace(r"(?<![\w−])", "")
    yield _of(problem, "swapped", swapped, exchanged)
    k, scale = int(rng.integers(count)), _neighbour(problem, rng)
    there = _changed(plan, k, plan.lengths[k] * problem.scale / scale)
    yield _of(problem, "line-at-other-scale", there, f"{names[k]}.*(scale of the paper|at another scale)")
    taken = [j for j, line in enumerate(problem.lines) if line.name.startswith("−")]
    if taken:
        added = plan
        for j in taken:
            added = _changed(added, j, -added.lengths[j])
        yield _of(problem, "added", added, "added instead of subtracted|points the opposite way")


def _of_the_protractor(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    plan, names = plan_of(problem), [name(line.name) for line in problem.lines]
    tips = plan.method == "tip-to-tail"
    turning = [k for k in plan.order if abs(turn_of(plan, k)) % 180.0 > 0.1]
    if not turning:
        return
    at_tip = [k for k in turning if tips and k != plan.order[0]]
    k = int(rng.choice(turning))
    place = f"before {names[k]} " if k in at_tip else f"{names[k]} was "
    if abs(abs(turn_of(plan, k)) - 90.0) > 1.0:
        dial = replace(plan, dial={k: other_scale})
        words = f"{place}(drawn with )?the wrong scale of the protractor"
        yield _of(problem, "other-scale", dial, words)
    words = f"{place}the turn goes the wrong|{place}turned the wrong way"
    yield _of(problem, "wrong-way", replace(plan, dial={k: wrong_way}), words)
    if len(at_tip) > 1:
        all_tips = replace(plan, dial=dict.fromkeys(at_tip, other_scale))
        yield _of(problem, "other-scale-throughout", all_tips, "at each tip the wrong scale of the protractor")
    if len(turning) > 1:
        mirrored = replace(plan, dial=dict.fromkeys(turning, wrong_way))
        yield _of(problem, "mirrored", mirrored, "the angles turn the other way round throughout")
    gap = float(rng.uniform(4.0, 8.0))
    base = replace(plan, dial=dict.fromkeys(turning, lambda turn: from_base_edge(gap, turn)))
    yield _of(problem, "base-edge", base, "base edge|zero line")
    away = [k for k in (at_tip or turning) if k != 0 or tips]
    if away and plan.angles[0] == 0.0:
        k = int(rng.choice(away))
        yield _of(problem, "centre-off", replace(plan, off_centre=k), "protractor.s centre|centre of the protractor")
    if problem.equal_angles:
        yield _of(problem, "right-angles", replace(plan, dial=dict.fromkeys(turning, at_right_angle)), "90° .*between")


def _of_stages(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    plan, names = plan_of(problem), [name(line.name) for line in problem.lines]
    if plan.method != "parallelogram" or len(names) != 3:
        return
    third = plan.order[2]
    words = f"stops at the first diagonal|{names[third]} was left out"
    yield Attempt("stopped", "drawn", lambda hand: read(problem, hand, hand.draw(plan).diagonal[0]), words)

    def across(hand: Hand) -> Answer:
        drawn = hand.draw(plan)
        return read(problem, hand, drawn.parts[third][0] - drawn.diagonal[0])

    yield Attempt("other-diagonal", "drawn", across, "the other diagonal|points the opposite way")
    shared = plan.order[int(rng.integers(2))]

    def twice(hand: Hand) -> Answer:
        drawn = hand.draw(plan)
        second = hand._fourth(plan.parallels, drawn.parts[shared], drawn.parts[third])
        return read(problem, hand, hand._fourth(plan.parallels, drawn.diagonal, second)[0])

    yield Attempt("two-diagonals", "drawn", twice, f"{names[shared]} was used twice")


def _of_lags(problem: Problem) -> Iterator[Attempt]:
    if not problem.voltages:
        return
    turned = {}
    for key, sense in (("factor-ignored", 0.0), ("lead-for-lag", 1.0)):
        lags = [float(problem.form.get(f"a{k}") or 0) for k in (1, 2, 3)]
        angles = [v + sense * lag for v, lag in zip(problem.voltages, lags, strict=True)]
        turned[key] = [wrapped(angle - angles[0]) for angle in angles]
        if any(lags):
            words = "power factors were left out" if key == "factor-ignored" else "lead was used instead of lag"
            yield _of(problem, key, replace(plan_of(problem), angles=turned[key]), words)


def _neighbour(problem: Problem, rng: np.random.Generator) -> float:
    """Another scale of the ladder, not far from the sheet's."""
    near = [one for one in LADDER if 0.35 < one / problem.scale < 3.0 and abs(one / problem.scale - 1.0) > 0.01]
    return float(rng.choice(near))


def _of_the_sheet(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    plan, scale = plan_of(problem), _neighbour(problem, rng)
    edge = float(rng.uniform(3.0, 6.0))
    yield _of(problem, "ruler-edge", replace(plan, edge=edge), "edge of the ruler|ruler.s edge|ruler.s zero")

    def in_millimetres(hand: Hand) -> Answer:
        answer = read(problem, hand, hand.draw(plan_of(problem, scale)).end[0])
        return replace(answer, length=10.0 * answer.size / problem.scale)

    yield Attempt("drawn-at-other-scale", "drawn", in_millimetres, PAPER)
    if plan.method == "tip-to-tail" and len(plan.order) > 1:

        def at_the_tip(hand: Hand) -> Answer:
            drawn = hand.draw(plan)
            inside = abs(wrapped(degrees(-drawn.end[0]) - float(drawn.last[0]) - 180.0))
            answer = read(problem, hand, drawn.end[0])
            there = float(hand.read_angle(np.array([inside]))[0])
            return replace(answer, angle=math.copysign(there, answer.angle))

        yield Attempt("angle-at-tip", "drawn", at_the_tip, "angle at (the|its) tip|at the other end")


def _at_the_end(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    draw = right(problem).act
    each = problem.scale / problem.per
    times = float(rng.choice([10.0, 0.1]))

    def grown(factor: float, turn: float = 0.0):
        def act(hand: Hand) -> Answer:
            answer = draw(hand)
            angle = None if answer.angle is None else wrapped(answer.angle + turn)
            return Answer(answer.size * factor, angle)

        return act

    yield Attempt("decimal", "drawn", grown(times), "decimal mark is one place")
    scale = _neighbour(problem, rng)
    yield Attempt("read-at-other-scale", "drawn", grown(scale / problem.scale), PAPER)
    if each != 1.0:
        yield Attempt("centimetres", "drawn", grown(1.0 / each), "centimetres were read as|correct in cm")
    if each != 1.0 and 0.2 <= each <= 5.0:
        yield Attempt("divided", "drawn", grown(each**-2), "divided by the scale")
        yield Attempt("multiplied-lines", "drawn", grown(each**2), "multiplied by the scale when")
    if problem.angled:
        yield Attempt("turned-round", "drawn", grown(1.0, 180.0), "opposite direction|arrow.*revers|wrong end")
