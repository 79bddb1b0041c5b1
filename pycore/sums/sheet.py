"""The sheet of a sum of phasors: table, words and styles."""

from dataclasses import dataclass, replace

from pycore.drawing import Group, Page, mirrored
from pycore.forms import links
from pycore.geometry import Box
from pycore.sheet import compose, furniture, kinds
from pycore.sheet.code import SMALLEST_MODULE, module_of
from pycore.sheet.furniture import SheetText, TableRow
from pycore.sheet.media import PHONE, USUAL
from pycore.sheet.moves_sheet import moves_pages
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import PhasorStyles, Placement
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.request import SheetRequest
from pycore.sums.rows import alike, head_of, phasors_drawn, problem_rows, row_of, rows_of
from pycore.sums.worksheet import worksheet_of
from pycore.words import moves_list
from pycore.words import sheet as words
from pycore.words import sums as sum_words


def look_of(case: SumCase) -> PhasorStyles:
    """Return tags, inks and ticks by phasor key."""
    tags = dict(case.notation.tags)
    tags["reference"] = case.notation.reference
    inks = dict(case.inks())
    if case.companions:
        inks |= {arm.key: case.companions.ink for arm in case.companions.arms}
    return PhasorStyles(tags, inks, case.ticks(), case.notation.mark)


def _scale_words(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[str, str]:
    """Return the scale in words and for its cell; in a class set the learner may choose it."""
    scale = case.notation.scale(plan.scale)
    if request.own_scale:
        return words.own_scale(case.notation.writing.unit), ""
    both = case.notation.scales(plan.scale, plan.second)
    return scale, both if furniture.fits_block(both, plan.layout) else scale


def _opening(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the rows of the QR code (none without an address) and the words beside it."""
    opening, link = request.opening, _link(case, plan, request)
    fragment = links.fragment(link)
    over = request.kind == kinds.OVERLAY
    # A mirrored code cannot be read, and nobody opens a learner's problem from its overlay.
    useless = over and (case.problem["mirror"] == "yes" or opening.issue is not None)
    if not (opening.code and opening.reachable) or useless:
        return (), _how_it_opens(request)
    # The QR library is loaded only when a sheet with a code is requested.
    from pycore.writers import qr

    try:
        rows = qr.matrix(f"{opening.base}#{fragment}")
    except (ImportError, ValueError):
        return (), _how_it_opens(request)
    side = plan.layout.style.code
    if module_of(rows, Box(0.0, 0.0, side, side)) < SMALLEST_MODULE:
        return (), _how_it_opens(request)
    return rows, words.OPENS_BY_CODE


def _how_it_opens(request: SheetRequest) -> tuple[str, ...]:
    """Return the words beside a code to type, if the problem has one: no learner types a whole link."""
    return words.OPENS_ISSUED if request.opening.issue or request.code else ()


def _link(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[tuple[str, str], ...]:
    """Return the link that reproduces this sheet; for a class set it contains the code."""
    link, issue = case.link(plan, request.kind, request.code), request.opening.issue
    return link if issue is None else (*(pair for pair in link if pair[0] != "code"), ("code", issue.code))


def _second_scale(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[tuple[str, ...], str]:
    """Return the companions' scale, and what a check bar represents at both scales (one line on small paper).

    Empty if the learner chooses a scale.
    """
    beside = case.companions
    if beside is None or request.own_scale:
        return (), ""
    centimetres, scale = plan.layout.bar / 10.0, case.notation.second(plan.second)
    amounts = case.notation.writing.scale(plan.scale * centimetres), beside.writing.scale(plan.second * centimetres)
    if plan.layout.small:
        plural = beside.words.plural
        return (sum_words.second_scale_short(plural, scale, *amounts), sum_words.second_scale(plural, scale)), ""
    return (sum_words.second_scale(beside.words.plural, scale),), sum_words.second_check(plan.layout.bar_text, *amounts)


def _sheet_number(case: SumCase, request: SheetRequest) -> str:
    """Return the number of the sheet; the first of a problem in a class set has the learner's number."""
    issue = request.opening.issue
    if issue is not None and request.number == 1:
        return words.sheet_of(issue.number, issue.of)
    return words.sheet_of(request.number, case.sheets)


def _writing(case: SumCase, plan: Plan, request: SheetRequest) -> SheetText:
    issue, kind = request.opening.issue, request.kind
    scale, scale_cell = _scale_words(case, plan, request)
    is_problem = kind == kinds.PROBLEM
    rows = problem_rows(case, plan, any_method=request.any_method) if is_problem else rows_of(case, plan)
    # The link is on the first sheet.
    code, code_words = _opening(case, plan, request) if request.number == 1 else ((), ())
    printed = case.problem.form
    method = case.method_words(plan, any_method=request.any_method)
    sheet_words = case.sheet_words(plan, kind, method)
    further = words.issued_notes(request.problem_of_set) if request.problem_of_set else ()
    second, check = _second_scale(case, plan, request)
    sheet_text = SheetText(
        title=case.sheet_title(kind),
        subtitle=case.problem.place or (case.scenario if case.problem.is_example else ""),
        method=method,
        head=head_of(case),
        rows=rows,
        scale_words=scale,
        notes=(*sheet_words.notes[:-1], f"{sheet_words.notes[-1]} {check}".strip(), *further),
        foot=words.FOOT,
        second_scale=second,
        block=(
            (words.SCALE, scale_cell), (words.PAPER, plan.layout.paper),
            (words.SHEET, _sheet_number(case, request)),
            (words.NAME, printed["who"]), (words.GROUP, printed["group"]), (words.DATE, printed["date"]),
        ),
        code_words=code_words,
        page_title=words.page_title(
            case.sheet_title(kind), method, case.notation.scales(plan.scale, plan.second)
        ),
        description=sheet_words.description or phasors_drawn(case, rows),
        code=code,
        short_code=issue.code if issue else request.code,
        more=case.further_question() if is_problem else "",
        work=worksheet_of(case, plan, sheet_words.notes, any_method=request.any_method) if is_problem else None,
    )  # fmt: skip
    # Beside a drawing that is to be read easily stand few words; the others have pages of their own.
    return replace(sheet_text, notes=(), foot="", code_words=(), more="") if case.printed != USUAL else sheet_text


def moves_of(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[Page, ...]:
    """Return the further pages of a sheet for easy reading; none for other print styles."""
    if case.printed == USUAL:
        return ()
    # Only such a sheet needs it; the first answer need not wait for its import.
    from pycore.sums.easy_reading import lists_of

    lists = lists_of(case, plan, request)
    title = case.sheet_title(request.kind)
    if request.problem_of_set:
        *others, last = lists
        lists = (*others, replace(last, lines=(*last.lines, *words.issued_notes(request.problem_of_set))))
    lines = len([line for listed in lists for line in listed.lines])
    named = [moves_list.page_title(title, number) for number in range(2, 9)]
    table = _writing(case, plan, request) if plan.layout.style.whole else None
    return moves_pages(plan.layout, title, lists, words.FOOT, named, moves_list.description(lines), table)


def composed_of(
    case: SumCase, plan: Plan, request: SheetRequest, stand: Placement | None = None
) -> compose.ComposedSheet:
    """Return the requested sheet and the placement of its figure: ``stand``, if another kind has set it."""
    kind = request.kind
    tolerance = None
    if kind == kinds.OVERLAY and not case.closed:
        tolerance = compose.ToleranceEllipse(*case.scatter(plan).ellipse())
    writing, start = _writing(case, plan, request), case.problem["start"]
    composed = compose.compose(plan, look_of(case), writing, kind, start, tolerance, stand)
    turned_over = kind == kinds.OVERLAY and case.problem["mirror"] == "yes"
    return replace(composed, page=mirrored(composed.page)) if turned_over else composed


@dataclass(frozen=True, slots=True)
class FurtherSheet:
    """A sheet with another drawing of the same problem: its name in titles, its method, its own layout and scale in
    ``plan``, the rows of its table, its notes, and its description for people who cannot see it."""

    name: str
    method: str
    plan: Plan
    rows: tuple[ComponentRow, ...]
    notes: tuple[str, ...]
    description: str


def further_page(case: SumCase, sheet: FurtherSheet, request: SheetRequest, groups: tuple[Group, ...]) -> Page:
    """Return a further sheet, of the requested number, with these groups drawn on it."""
    plan, room = sheet.plan, words.ROOM
    title = sum_words.sheet_titles(sheet.name)[request.kind]
    rows = tuple(
        TableRow(row.tag, room, room, room) if request.kind == kinds.PROBLEM
        else row_of(case, row.tag, row.size, row.angle if row.size else None, plan)
        for row in sheet.rows
    )
    rows = alike((*rows[:-1], replace(rows[-1], ruled=True)), case.notation.mark)
    named = words.page_title(title, sheet.method, case.notation.scale(plan.scale))
    writing = replace(
        _writing(case, plan, request), title=title, method=sheet.method, rows=rows, more="", work=None,
        notes=() if case.printed != USUAL else sheet.notes, page_title=named, description=sheet.description,
    )  # fmt: skip
    page = compose.page_of(plan.layout, writing, groups)
    return mirrored(page) if request.kind == kinds.OVERLAY and case.problem["mirror"] == "yes" else page


def sheet_of(case: SumCase, plan: Plan, request: SheetRequest) -> Page:
    """Return the requested sheet."""
    return composed_of(case, plan, request).page


def view_of(case: SumCase, plan: Plan) -> Page:
    """Return the figure laid out for a phone."""
    name, scale = case.sheet_title(kinds.CONSTRUCTION), case.notation.scales(plan.scale, plan.second)
    title = words.page_title(name, case.method_words(plan), scale)
    description = phasors_drawn(case, rows_of(case, plan))
    return compose.view(plan.construction, plan.picture, look_of(case), PHONE, title, description)


def figure_of(case: SumCase, plan: Plan) -> Page:
    """Return the figure of the sheet alone, without letters, at the sheet's own scale."""
    scale = case.notation.scales(plan.scale, plan.second)
    title = words.page_title(case.sheet_title(kinds.CONSTRUCTION), case.method_words(plan), scale)
    return compose.bare(plan, look_of(case), title)
