"""The rows of a sheet's table: what is drawn with its lengths and angles, or what a problem gives and asks for."""

from dataclasses import replace

from pycore import quantity
from pycore.constructions.methods import THE_RETURNING
from pycore.constructions.names import DIAGONAL, DIAGONAL_LENGTH, RETURN_KEY, SUM_KEY, arm_key
from pycore.phasor import wrap
from pycore.sheet.plan import Plan
from pycore.sheet.sheet_text import LineSample, TableRow
from pycore.sheet.styles import USUAL
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import degrees_text
from pycore.words import moves_list
from pycore.words import sheet as words
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, plain, say


def sample_of(case: SumCase, key: str) -> LineSample:
    """Return how a phasor's own line looks."""
    if case.companions and key in [arm.key for arm in case.companions.arms]:
        return LineSample(case.companions.ink, 0, double=True)
    return LineSample(case.inks().get(key, "ink"), case.ticks().get(key, 0))


def row_of(
    case: SumCase, symbol: Phrase, size: float, angle: float | None, plan: Plan, *, as_typed: bool = False
) -> TableRow:
    """Return the row of a phasor: symbol, amount, length on the sheet, and angle."""
    amount = case.notation.writing.as_typed(size) if as_typed else case.notation.writing.number(size)
    return _direction_row(case, plan, symbol, amount, size * plan.factor, angle)


def _companion_rows(case: SumCase, plan: Plan, *, measured: bool) -> list[TableRow]:
    """Return the rows of companions, each amount with its unit; ``measured``: the rest is left empty to fill in."""
    rows = []
    for arm in case.companions.arms if case.companions else ():
        amount = case.companions.writing.amount(arm.size) if case.companions else ""
        row = _direction_row(case, plan, case.notation.tags[arm.key], amount, arm.size * 10.0 / plan.second, arm.angle)
        known = amount if case.typed_companions else words.ROOM
        shown = TableRow(row.symbol, known, words.ROOM, words.ROOM) if measured else row
        rows.append(replace(shown, sample=sample_of(case, arm.key)))
    return rows


def _direction_row(
    case: SumCase, plan: Plan, symbol: Phrase, amount: str, millimetres: float, angle: float | None
) -> TableRow:
    mark = case.notation.mark
    length = quantity.fixed(quantity.on_ruler(millimetres), 1, mark)
    if angle is None:
        none = (moves_list.NONE, "") if plan.layout.style.column else ("", words.NO_ANGLE)
        return TableRow(symbol, amount, length, *none)
    if case.notation.polar:
        return TableRow(symbol, amount, length, quantity.fixed(wrap(angle), 1, mark) + "°")
    if plan.layout.style.signed:
        # A line of the sheet says what a minus means.
        return TableRow(symbol, amount, length, quantity.fixed(wrap(angle - case.picture.reference), 1, mark) + "°")
    turn = wrap(angle - case.picture.reference)
    angle_text = degrees_text(turn, mark) if round(turn, 1) else "0°"
    straight = round(turn, 1) in (0.0, 180.0, -180.0)
    sense = "" if straight else StepSentences(plan, case.notation).sense(turn)
    return TableRow(symbol, amount, length, angle_text, sense)


def minus_words(case: SumCase, plan: Plan) -> str:
    """Return which way a negative angle turns, where the table has signs in place of words; else ""."""
    if not plan.layout.style.signed or case.notation.polar:
        return ""
    return moves_list.minus(StepSentences(plan, case.notation).sense(-1.0))


def directions_of(case: SumCase, plan: Plan) -> tuple[str, ...]:
    """Return the given directions of the arms as every kind of sheet writes them: 120° clockwise; along the first
    direction that direction in words; ``ROOM`` where they are to be found."""
    rows = alike(tuple(
        _direction_row(case, plan, (), "", 0.0, arm.angle) if case.typed_angle(arm.key)
        else TableRow((), "", "", words.ROOM)
        for arm in case.arms
    ), case.notation.mark)  # fmt: skip
    in_words = []
    for arm, row in zip(case.arms, rows, strict=True):
        first = not case.notation.polar and not round(wrap(arm.angle - case.picture.reference), 1)
        way = StepSentences(plan, case.notation).direction(arm.angle) if first else f"{row.angle} {row.sense}".strip()
        in_words.append(words.ROOM if row.angle == words.ROOM else way)
    return tuple(in_words)


def rows_of(case: SumCase, plan: Plan) -> tuple[TableRow, ...]:
    """Return the table of a construction: every phasor with its size, length and angle, and what is found besides."""
    figure = plan.construction.figure
    rows = _companion_rows(case, plan, measured=False)
    rows += [
        replace(
            row_of(case, case.row_tag(arm.key), arm.size, arm.angle, plan, as_typed=case.typed(arm.key)),
            sample=sample_of(case, arm.key),
        )
        for arm in case.arms
    ]
    if DIAGONAL_LENGTH in figure.readings:
        order = plan.construction.order
        size, angle = figure.readings[DIAGONAL_LENGTH], figure.lines[DIAGONAL].degrees
        rows.append(row_of(case, case.row_tag(arm_key(order)), size, angle, plan))
    total = row_of(case, case.row_tag(SUM_KEY), case.size, None if case.closed else case.angle, plan)
    rows.append(replace(total, ruled=True, sample=None if case.closed else sample_of(case, SUM_KEY)))
    if plan.construction.resultant == THE_RETURNING and case.angle is not None and not case.closed:
        rows.append(row_of(case, case.row_tag(RETURN_KEY), case.size, wrap(case.angle + 180.0), plan))
    further, results = further_of(case, plan)
    after = [row_of(case, tag_of(case, component), component.size, component.angle, plan) for component in further]
    after += [TableRow(tag, number, "", "") for tag, number in results]
    return alike((*rows, *_ruled_off(after)), case.notation.mark)


def _ruled_off(rows: list[TableRow]) -> list[TableRow]:
    """Return rows that a rule parts from those above."""
    return [replace(rows[0], ruled=True), *rows[1:]] if rows else []


def alike(rows: tuple[TableRow, ...], mark: str) -> tuple[TableRow, ...]:
    """Return rows in which all angles have a decimal if one has: 120.0° above 37.2°."""
    if not any(mark in row.angle for row in rows):
        return rows
    return tuple(
        replace(row, angle=f"{row.angle[:-1]}{mark}0°") if row.angle.endswith("°") and mark not in row.angle else row
        for row in rows
    )


def further_of(case: SumCase, plan: Plan) -> tuple[tuple[ComponentRow, ...], tuple[tuple[Phrase, str], ...]]:
    """Further rows of the table, drawn and not; none on a sheet that was laid out without them."""
    if not plan.construction.further:
        return (), ()
    return case.further(plan.construction), case.table_results(plan.construction)


def tag_of(case: SumCase, component: ComponentRow) -> Phrase:
    """The symbol of a further row, with its unit where rows have units of their own."""
    return case.row_tag(component.key) if component.key else component.tag


def result_key(plan: Plan) -> str:
    """Return the key of what the drawing ends with: the sum, or the arrow that returns."""
    return RETURN_KEY if plan.construction.resultant == THE_RETURNING else SUM_KEY


def problem_rows(
    case: SumCase, plan: Plan, *, any_method: bool = False, of_paper: bool = False
) -> tuple[TableRow, ...]:
    """Return what is given of each phasor, and room for the learner's results; ``of_paper``: for the one that is
    marked."""
    room = words.ROOM
    rows = _companion_rows(case, plan, measured=True)
    sizes = [case.typed_amount(arm) if case.typed(arm.key) else room for arm in case.arms]
    rows += [TableRow(case.row_tag(arm.key), size, room, room) for arm, size in zip(case.arms, sizes, strict=True)]
    if of_paper:
        # An arm that is asked for has its room in its own row.
        total = TableRow(case.row_tag(result_key(plan)), room, room, room, ruled=True)
        return (*rows, *(() if case.notation.asked_arm else (total,)))
    if DIAGONAL_LENGTH in plan.construction.figure.readings and not any_method:
        rows.append(TableRow(case.row_tag(arm_key(plan.construction.order)), room, room, room))
    rows.append(TableRow(case.row_tag(SUM_KEY), words.ROOM, words.ROOM, words.ROOM, ruled=True))
    further, results = further_of(case, plan)
    after = [TableRow(tag_of(case, component), room, room, room) for component in further]
    after += [TableRow(tag, room, "", "") for tag, _ in results]
    return (*rows, *_ruled_off(after))


def phasors_drawn(case: SumCase, rows: tuple[TableRow, ...]) -> str:
    """Return a table's rows as text, for people who cannot see the drawing."""
    origin = case.notation.voltage if case.notation.polar else case.notation.reference
    read = [(plain(row.symbol), row.amount, row.length, f"{row.angle} {row.sense}".strip()) for row in rows]
    return words.phasors_drawn(case.units_head(), plain(sum_words.angle_from(origin)), read)


def head_of(case: SumCase) -> tuple[Phrase, Phrase, Phrase, Phrase]:
    """Return the heads of the table's columns; in large and easy print the symbols speak for themselves."""
    unit = say("{unit}", unit=case.units_head())
    origin = case.notation.voltage if case.notation.polar else case.notation.reference
    if case.printed != USUAL:
        return ((), unit, ("mm",), say(moves_list.HEAD_ANGLE))
    name = sum_words.PHASOR if case.notation.words.alternates else sum_words.SIDE
    return (say(name), unit, ("mm",), sum_words.angle_from(origin))
