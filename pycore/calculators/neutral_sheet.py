"""The neutral current's sheet: its table, its words, its look."""

from typing import Protocol

from pycore import quantity
from pycore.calculators import conventions
from pycore.calculators.neutral_problem import NeutralProblem
from pycore.calculators.telling import Teller, Telling, degrees_text, describe
from pycore.circuits.star import StarSolution
from pycore.constructions.construction import Arm, Picture
from pycore.drawing import Page
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet import compose
from pycore.sheet.compose import TableRow, Writing
from pycore.sheet.figure import Look
from pycore.sheet.media import PHONE
from pycore.sheet.plan import Plan
from pycore.words import Phrase, say
from pycore.words import sheet as words


class Case(Protocol):
    """What a sheet needs of a solved problem."""

    problem: NeutralProblem
    solution: StarSolution
    arms: tuple[Arm, ...]
    picture: Picture
    telling: Telling

    def method_words(self, plan: Plan) -> str:
        """The method as the title block says it."""


def look_of(case: Case) -> Look:
    """Tags, inks and ticks by phasor key."""
    tags = dict(case.telling.tags)
    tags["reference"] = case.telling.reference
    return Look(
        tags, conventions.inks(case.problem["colours"]), conventions.TICKS, case.telling.mark
    )


def _row(case: Case, symbol: Phrase, size: float, angle: float | None, plan: Plan) -> TableRow:
    mark = case.telling.mark
    amount = case.telling.writing.number(size)
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
    rows = [_row(case, tags[arm.key], arm.size, arm.angle, plan) for arm in case.arms]
    if "r" in figure.readings:
        order = plan.construction.order
        size, angle = figure.readings["r"], figure.lines["R"].degrees
        rows.append(_row(case, tags[f"i{order}"], size, angle, plan))
    neutral = case.solution
    rows.append(_row(case, tags["sum"], neutral.current, neutral.angle, plan))
    return tuple(rows)


def _writing(case: Case, plan: Plan) -> Writing:
    scale = case.telling.scale(plan.scale)
    origin = case.telling.voltage if case.telling.polar else case.telling.reference
    bar = f"{plan.layout.bar:.0f}{NO_BREAK_SPACE}mm"
    teller = Teller(plan, case.telling)
    return Writing(
        title=words.TITLE,
        subtitle=case.problem.place,
        method=case.method_words(plan),
        head=(
            say("phasor"), say("{unit}", unit=case.telling.writing.unit), say("mm"),
            say("angle from {origin}", origin=origin),
        ),
        rows=_rows(case, plan),
        scale_words=scale,
        notes=words.print_notes(bar),
        foot=words.FOOT,
        block=(
            (words.SCALE, scale), (words.PAPER, plan.layout.paper), (words.SHEET, words.one_of_one()),
            (words.DRAWN_BY, ""), (words.DATE, ""), ("", words.MAKER),
        ),
        page_title=words.page_title(case.method_words(plan), scale),
        description=describe(teller.tell()),
    )  # fmt: skip


def sheet_of(case: Case, plan: Plan) -> Page:
    """The construction sheet on its paper."""
    composed = compose.compose(
        plan.construction, plan.picture, plan.layout, plan.scale, look_of(case), _writing(case, plan)
    )
    return composed.page


def view_of(case: Case, plan: Plan) -> Page:
    """The figure laid out for a phone."""
    teller = Teller(plan, case.telling)
    title = words.page_title(case.method_words(plan), case.telling.scale(plan.scale))
    return compose.view(
        plan.construction, plan.picture, look_of(case), PHONE, title, describe(teller.tell())
    )
