"""Line and phase values of three loads, line by line with this problem's numbers."""

import math

from pycore import phasor, quantity
from pycore.calculators.star_and_delta import words
from pycore.calculators.star_and_delta.case import StarDeltaCase, line_tags
from pycore.calculators.star_and_delta.fields import BEFORE
from pycore.calculators.star_and_delta.figure import PhasorGroup, diagram
from pycore.forms import conventions
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums import amounts as figures
from pycore.sums.answer import Block, Equation, Grid, Paragraph, Working, WorkingPicture
from pycore.sums.carried import as_printed, fewest
from pycore.words import plain
from pycore.words.formula import Bracketed, Fraction, Number, Root, row
from pycore.words.phrase import Phrase, Symbol, say


def working(case: StarDeltaCase) -> Working:
    """The section of the page."""
    blocks: list[Block] = [Paragraph(words.VOLTAGE_INTROS[case.problem["known"]]), _voltages(case)]
    blocks += [Paragraph(words.LOADS_INTRO), _loads(case)]
    if not case.star:
        blocks += [Paragraph(words.CORNER_LAW), _differences(case)]
    return Working("values", say(words.CALCULATED), (*blocks, Paragraph(words.POWERS_INTRO), _powers(case)))


def all_three(case: StarDeltaCase) -> Working:
    """All three lines in one picture and one table: in star phase voltages and currents, in delta branch and line
    currents."""
    mark, solution = case.notation.mark, case.solution
    turn = case.origin_turn
    tags = line_tags(case.problem["names"])
    first, second = (solution.lines, solution.branches) if not case.star else (solution.phases, solution.lines)
    first_tags, second_tags = (tags, case.own_tags) if not case.star else (case.own_tags, tags)
    groups = (
        PhasorGroup(tuple(case.on_paper(value * turn) for value in first), first_tags),
        PhasorGroup(tuple(case.on_paper(value * turn) for value in second), second_tags, dashed=True),
    )
    units = ("V", "A") if case.star else ("A", "A")
    rows = [
        ((str(number),), *(
            cell for values, names, unit in zip((first, second), (first_tags, second_tags), units, strict=True)
            for cell in (names[number - 1], (figures.polar(values[number - 1] * turn, unit, mark),))
        ))
        for number in (1, 2, 3)
    ]  # fmt: skip
    key = case.problem["connection"]
    title = words.all_three_description(key, [f"{plain(row[1])} {plain(row[2])}" for row in rows])
    head = tuple((text,) for text in words.ALL_THREE_HEADS[key])
    return Working("all-three", say(words.ALL_THREE_TITLES[key]), (
        Paragraph(words.ALL_THREE_INTROS[key]),
        WorkingPicture(diagram(groups, title, one_scale=not case.star), "all-three"),
        Grid(head, tuple(rows)),
    ))  # fmt: skip


def _voltages(case: StarDeltaCase) -> Equation:
    mark, solution = case.notation.mark, case.solution
    low, high, root = Symbol("V", "ph"), Symbol("V", "L"), Root(Number("3"))
    line_voltage, phase_voltage = solution.circuit.line_voltage, phasor.magnitude(solution.phases[0])
    if case.problem["known"] == "phase":
        known, result = Number(quantity.plain(phase_voltage, mark), "V"), figures.amount(line_voltage, "V", mark)
        return Equation((row(high, "=", root, "×", low, "=", root, "×", known, "=", Number(result)),))
    known, result = Number(quantity.plain(line_voltage, mark), "V"), figures.amount(phase_voltage, "V", mark)
    return Equation((row(low, "=", Fraction(high, root), "=", Fraction(known, root), "=", Number(result)),))


def _loads(case: StarDeltaCase) -> Grid:
    mark, solution = case.notation.mark, case.solution
    across = solution.phases if case.star else solution.between
    turn = 1.0 + 0j if case.star else phasor.polar(1.0, -phasor.angle(solution.between[0]))
    rows = []
    for number, (volts, flows) in enumerate(zip(across, solution.branches, strict=True), 1):
        cells = (str(number), *case.forms_of(number), figures.polar(volts * turn, "V", mark),
                 figures.polar(flows * turn, "A", mark))  # fmt: skip
        rows.append(tuple((cell,) for cell in cells))
    return Grid(tuple((head,) for head in words.Z_HEAD), tuple(rows))


def _differences(case: StarDeltaCase) -> Grid:
    mark, solution = case.notation.mark, case.solution
    turn = phasor.polar(1.0, -phasor.angle(solution.between[0]))
    rows: list[tuple[Phrase, ...]] = []
    for number, value in enumerate(solution.lines, start=1):
        less = BEFORE[number]
        own, off = (figures.rectangular(solution.branches[n - 1] * turn, "A", mark) for n in (number, less))
        name = conventions.NAMES[case.problem["names"]][number - 1]
        rows.append((
            (name,), (*case.own[number], " − ", *case.own[less]), (f"({own}) − ({off})",),
            (figures.polar(value * turn, "A", mark),),
        ))  # fmt: skip
    return Grid(tuple((head,) for head in words.DIFFERENCE_HEAD), tuple(rows))


def _powers(case: StarDeltaCase) -> Equation:
    mark, solution = case.notation.mark, case.solution
    loads = [0j if load is None else load for load in solution.circuit.loads]
    shares = []
    for load, flows in zip(loads, solution.branches, strict=True):
        size = phasor.magnitude(flows)
        shares.append((size * size * load.real, size * size * load.imag))
    lines = []
    for symbol, unit, part, total in (
        (Symbol("P"), "W", 0, solution.power.real), (Symbol("Q"), "var", 1, solution.power.imag),
    ):  # fmt: skip
        # Resistive loads have no reactive power, whatever rounding leaves of it.
        if not part or math.fabs(total) > phasor.ZERO_SHARE * phasor.magnitude(solution.power):
            parts = [share[part] for share in shares]
            added = [piece for one in _addends(parts, total, mark) for piece in (one, "+")]
            lines.append(row(symbol, "=", *added[:-1], *_total(parts, total, unit, mark)))
    return Equation(tuple(lines))


def _total(values: list[float], total: float, unit: str, mark: str) -> tuple[str | Number, ...]:
    """What the printed addends give, in their own unit, and with a prefix where it is written with one."""
    result = figures.amount(total, unit, mark)
    if result.endswith(f"{NO_BREAK_SPACE}{unit}"):
        return "=", Number(result)
    decimals = _decimals(values, total)
    plain = quantity.fixed(math.fsum(as_printed(value, decimals) for value in values), decimals, mark)
    return "=", Number(f"{plain}{NO_BREAK_SPACE}{unit}"), "=", Number(result)


def _decimals(values: list[float], total: float) -> int:
    """With how many decimals numbers that are added are written, so that the printed ``total`` follows from them."""
    finest = quantity.decimals_for(total, figures.FIGURES)
    limit = float(f"5e{quantity.order_of_magnitude(total) - figures.FIGURES}")
    rounded = float(f"{total:.{figures.FIGURES - 1}e}")
    decimals = fewest(
        finest, finest + 4,
        lambda count: math.fabs(math.fsum(as_printed(value, count) for value in values) - rounded) <= limit,
    )  # fmt: skip
    return finest if decimals is None else decimals


def _addends(values: list[float], total: float, mark: str) -> list[Number | Bracketed]:
    """Numbers that are added, all with as many decimals."""
    decimals = _decimals(values, total)
    numbers = [quantity.fixed(value, decimals, mark) for value in values]
    return [
        Bracketed(Number(text)) if place and text.startswith(quantity.MINUS) else Number(text)
        for place, text in enumerate(numbers)
    ]
