"""The neutral current's sheet: its table, its words, its look."""

from typing import Protocol

from pycore import quantity
from pycore.accuracy.hand import Spread
from pycore.calculators import conventions, links
from pycore.calculators.interface import Opening
from pycore.calculators.neutral_problem import NeutralProblem
from pycore.calculators.telling import Teller, describe
from pycore.calculators.written import Telling, degrees_text
from pycore.circuits.star import StarSolution
from pycore.constructions.construction import Arm, Picture
from pycore.drawing import Page, mirrored
from pycore.geometry import Box
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet import compose
from pycore.sheet.code import SMALLEST_MODULE, module_of
from pycore.sheet.figure import Look
from pycore.sheet.furniture import TableRow, Writing
from pycore.sheet.media import PHONE
from pycore.sheet.plan import Plan
from pycore.words import Phrase, plain, say
from pycore.words import neutral as neutral_words
from pycore.words import sheet as words
from pycore.words.accuracy import ellipse_note

SLUG = "neutral-current"


class Case(Protocol):
    """What a sheet needs of a solved problem."""

    problem: NeutralProblem
    solution: StarSolution
    arms: tuple[Arm, ...]
    picture: Picture
    telling: Telling

    def method_words(self, plan: Plan) -> str:
        """The method as the title block says it."""

    def spread(self, plan: Plan) -> Spread:
        """The scatter of a hand's drawings of a plan."""

    def link(self, plan: Plan) -> tuple[tuple[str, str], ...]:
        """The link that gives this sheet again, as key-value pairs."""


def look_of(case: Case) -> Look:
    """Tags, inks and ticks by phasor key."""
    tags = dict(case.telling.tags)
    tags["reference"] = case.telling.reference
    return Look(
        tags, conventions.inks(case.problem["colours"]), conventions.TICKS, case.telling.mark
    )


def _row(
    case: Case, symbol: Phrase, size: float, angle: float | None, plan: Plan, *, given: bool = False
) -> TableRow:
    mark = case.telling.mark
    amount = case.telling.writing.given(size) if given else case.telling.writing.number(size)
    length = quantity.fixed(size * plan.factor, 1, mark)
    if angle is None:
        return TableRow(symbol, amount, length, "", words.NO_ANGLE)
    if case.telling.polar:
        return TableRow(symbol, amount, length, quantity.fixed(wrap(angle), 1, mark) + "°")
    turn = wrap(angle - case.picture.reference)
    told = degrees_text(turn, mark) if round(turn, 1) else "0°"
    straight = round(turn, 1) in (0.0, 180.0, -180.0)
    sense = "" if straight else Teller(plan, case.telling).sense(turn)
    return TableRow(symbol, amount, length, told, sense)


def _rows(case: Case, plan: Plan) -> tuple[TableRow, ...]:
    tags, figure = case.telling.tags, plan.construction.figure
    rows = [_row(case, tags[arm.key], arm.size, arm.angle, plan, given=True) for arm in case.arms]
    if "r" in figure.readings:
        order = plan.construction.order
        size, angle = figure.readings["r"], figure.lines["R"].degrees
        rows.append(_row(case, tags[f"i{order}"], size, angle, plan))
    neutral = case.solution
    rows.append(_row(case, tags["sum"], neutral.current, neutral.angle, plan))
    if case.problem["resultant"] == "returning" and neutral.angle is not None:
        rows.append(_row(case, tags["return"], neutral.current, wrap(neutral.angle + 180.0), plan))
    return tuple(rows)


def _problem_rows(case: Case, plan: Plan) -> tuple[TableRow, ...]:
    """What is given of each line, and room for what the learner finds."""
    tags, room = case.telling.tags, words.ROOM
    rows = [TableRow(tags[arm.key], case.telling.writing.given(arm.size), room, room) for arm in case.arms]
    if "r" in plan.construction.figure.readings:
        rows.append(TableRow(tags[f"i{plan.construction.order}"], room, room, room))
    rows.append(TableRow(tags["sum"], words.ROOM, words.ROOM, words.ROOM))
    return tuple(rows)


def _head(case: Case, kind: str) -> tuple[Phrase, Phrase, Phrase, Phrase]:
    unit = say("{unit}", unit=case.telling.writing.unit)
    origin = case.telling.voltage if case.telling.polar else case.telling.reference
    return (say("phasor"), unit, say("mm"), say("angle from {origin}", origin=origin))


def _load_words(case: Case) -> str:
    """How the lines lag, and in which sequence they come."""
    one, two, three = case.telling.lines
    sequence = (one, two, three) if case.problem["sequence"] == "123" else (one, three, two)
    if case.solution.equal_angles:
        return words.equal_load(", ".join(sequence))
    lags = [
        words.line_lag(case.telling.lines[arm.number - 1], case.problem.lags[arm.number - 1].echo(case.telling.mark))
        for arm in case.arms
    ]
    return words.unequal_load(", ".join(lags), ", ".join(sequence))


def _lie_words(case: Case, plan: Plan) -> str:
    """Which way the first direction points, and the sense of lag on this paper."""
    teller = Teller(plan, case.telling)
    return words.lies(plain(case.telling.reference), teller.way(case.picture.reference), teller.sense(-1.0))


def _notes(case: Case, plan: Plan, kind: str) -> tuple[str, ...]:
    bar = quantity.fixed(plan.layout.bar, 0) + f"{NO_BREAK_SPACE}mm"
    short = plan.layout.paper == "A5"
    if kind == compose.PROBLEM:
        return words.problem_notes(case.method_words(plan), _load_words(case), _lie_words(case, plan), bar, short=short)
    if kind == compose.OVERLAY:
        first = plain(case.telling.tags[case.arms[0].key])
        notes = words.overlay_notes(first, bar, short=short, mirrored=case.problem["mirror"] == "yes")
        return notes if case.solution.closed or short else (*notes, ellipse_note())
    return words.print_notes(bar)


def _opening(case: Case, plan: Plan, opening: Opening) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The QR code's rows (none if there is no address to open) and the words beside it."""
    link = case.link(plan)
    fragment = links.fragment(link)
    # The place is printed in the title block: a link typed by hand need not repeat it.
    by_hand = f"/{SLUG}/#" + links.fragment(pair for pair in link if pair[0] != "place")
    turned_over = case.problem["sheet"] == compose.OVERLAY and case.problem["mirror"] == "yes"
    if not (opening.code and opening.reachable) or turned_over:
        return (), words.opens_with(by_hand)
    # Its library is loaded only when a sheet with a code is wanted.
    from pycore.writers import qr

    try:
        rows = qr.matrix(f"{opening.base}#{fragment}")
    except (ImportError, ValueError):
        return (), words.opens_without_code(by_hand)
    side = plan.layout.style.code
    if module_of(rows, Box(0.0, 0.0, side, side)) < SMALLEST_MODULE:
        return (), words.opens_without_code(by_hand)
    return rows, words.OPENS_BY_CODE


def _writing(case: Case, plan: Plan, opening: Opening) -> Writing:
    scale = case.telling.scale(plan.scale)
    kind = case.problem["sheet"]
    rows = _problem_rows(case, plan) if kind == compose.PROBLEM else _rows(case, plan)
    code, code_words = _opening(case, plan, opening)
    given = case.problem.given
    told = words.problem_description(case.method_words(plan)) if kind == compose.PROBLEM else describe(
        Teller(plan, case.telling).tell()
    )
    return Writing(
        title=words.TITLES[kind],
        subtitle=case.problem.place or (neutral_words.SCENARIO if case.problem.is_example else ""),
        method=case.method_words(plan),
        head=_head(case, kind),
        rows=rows,
        scale_words=scale,
        notes=_notes(case, plan, kind),
        foot=words.FOOT,
        block=(
            (words.SCALE, scale), (words.PAPER, plan.layout.paper), (words.SHEET, words.one_of_one()),
            (words.NAME, given["who"]), (words.GROUP, given["group"]), (words.DATE, given["date"]),
        ),
        code_words=code_words,
        page_title=words.page_title(words.TITLES[kind], case.method_words(plan), scale),
        description=told,
        code=code,
    )  # fmt: skip


def sheet_of(case: Case, plan: Plan, opening: Opening) -> Page:
    """The sheet of the kind that the form asks for, on its paper."""
    kind = case.problem["sheet"]
    start = case.problem["start"] == "yes"
    tolerance = None
    if kind == compose.OVERLAY and not case.solution.closed:
        tolerance = compose.Tolerance(*case.spread(plan).ellipse())
    composed = compose.compose(plan, look_of(case), _writing(case, plan, opening), kind, start, tolerance)
    turned_over = kind == compose.OVERLAY and case.problem["mirror"] == "yes"
    return mirrored(composed.page) if turned_over else composed.page


def view_of(case: Case, plan: Plan) -> Page:
    """The figure laid out for a phone."""
    teller = Teller(plan, case.telling)
    title = words.page_title(words.TITLE, case.method_words(plan), case.telling.scale(plan.scale))
    return compose.view(
        plan.construction, plan.picture, look_of(case), PHONE, title, describe(teller.tell())
    )
