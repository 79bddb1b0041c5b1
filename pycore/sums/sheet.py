"""The sheet of a sum of phasors: table, words and styles."""

from dataclasses import dataclass, replace

from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.names import SUM_KEY, voltage_of
from pycore.drawing import Group, Page, mirrored
from pycore.forms import links
from pycore.forms.title_block import BY_HAND
from pycore.geometry import Box
from pycore.sheet import compose, kinds
from pycore.sheet.code import SMALLEST_MODULE, module_of
from pycore.sheet.moves_sheet import TextSection, moves_pages
from pycore.sheet.plan import Plan
from pycore.sheet.sheet_text import BlockText, FieldText, SheetText, TableRow
from pycore.sheet.strokes import FigureStrokes, PhasorStyles, Placement
from pycore.sheet.styles import PHONE, USUAL
from pycore.sheet.title_block import fits_block
from pycore.sums.answer import Move
from pycore.sums.case import ComponentRow, SumCase
from pycore.sums.request import SheetRequest
from pycore.sums.rows import alike, head_of, minus_words, phasors_drawn, problem_rows, row_of, rows_of
from pycore.sums.sentences import StepSentences
from pycore.sums.short_link import short_link
from pycore.sums.worksheet import worksheet_of
from pycore.words import moves_list
from pycore.words import sheet as words
from pycore.words import sums as sum_words
from pycore.words.answers import with_article
from pycore.words.codes import CHECKING
from pycore.words.furniture import NAME
from pycore.words.phrase import plain, stressed
from pycore.words.sums import DRAWN_ROUTINE, ROUTINE


def look_of(case: SumCase) -> PhasorStyles:
    """Return tags, inks and ticks by phasor key."""
    tags = dict(case.notation.tags)
    tags["reference"] = case.notation.reference
    owns = case.notation.own_voltages
    tags |= {voltage_of(arm.number): owns[arm.key].tag for arm in case.arms if arm.key in owns}
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
    return scale, both if fits_block(both, plan.layout) else scale


def _opening(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the rows of the QR code (none without an address) and the words beside it."""
    if case.on_own_paper:
        return (), ()
    opening = request.opening
    over = request.kind == kinds.OVERLAY
    # A mirrored code cannot be read, and nobody opens a learner's problem from its overlay.
    useless = over and (case.problem["mirror"] == "yes" or opening.issue is not None)
    if not (opening.code and opening.reachable) or useless:
        return (), _how_it_opens(request)
    # The QR library is loaded only when a sheet with a code is requested.
    from pycore.writers import qr

    fragment = links.fragment(_link(case, plan, request))
    try:
        rows = qr.matrix(f"{opening.base}#{fragment}")
    except (ImportError, ValueError):
        return (), _how_it_opens(request)
    side = plan.layout.style.code if plan.layout.style.whole else plan.layout.code.height
    if module_of(rows, Box(0.0, 0.0, side, side)) < SMALLEST_MODULE:
        return (), _how_it_opens(request)
    return rows, words.OPENS_OR_CHECKED if request.code.startswith(CHECKING) else words.OPENS_BY_CODE


def _how_it_opens(request: SheetRequest) -> tuple[str, ...]:
    """Return the words beside a code to type, if the problem has one: no learner types a whole link."""
    if request.opening.issue and request.opening.issue.question:
        return words.OF_PAPER
    if request.code.startswith(CHECKING):
        return words.OPENS_CHECKED
    return words.OPENS_ISSUED if request.opening.issue or request.code else ()


def _link(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[tuple[str, str], ...]:
    """Return the link that reproduces this sheet; for a class set it contains the code. A problem sheet is opened by
    its code, where that brings its values."""
    link, issue = case.link(plan, request.kind, request.code), request.opening.issue
    if request.kind == kinds.PROBLEM and request.by_code:
        short = short_link(case.problem.typed, case.fields, request.by_code, issue.code if issue else request.code)
        if short:
            return short
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


def _sheet_number(case: SumCase, request: SheetRequest) -> tuple[str, str]:
    """Return the number of the sheet with its label; in a class set it has the learner's number, in a question paper
    that of the learner's page."""
    issue = request.opening.issue
    if issue is None:
        return words.SHEET, words.sheet_of(request.number, case.sheets)
    if issue.page:
        return words.PAGE, words.sheet_of(issue.page + request.number - 1, issue.pages)
    number = words.sheet_of(issue.number, issue.of) if issue.of else words.EVERY_LEARNER
    number = number if request.number == 1 else words.further_sheet(number, request.number)
    return words.LEARNER if issue.question else words.SHEET, number


def _block(case: SumCase, plan: Plan, request: SheetRequest, method: str, scale: str) -> BlockText:
    """Return the title block: of a problem with cells to fill in, else with those of a solved sheet."""
    kind, sheet, letters = request.kind, plan.layout, request.opening.letters
    # What cannot be set is told on the page, and left to be written by hand.
    who, group, date = (letters.set(case.problem.form[name]) or "" for name in BY_HAND)
    way, issue = words.ORIENTATIONS[sheet.orientation], request.problem_of_set
    return BlockText(
        title=case.sheet_title(kinds.CONSTRUCTION), kind=(issue.question if issue else "") or words.KINDS[kind],
        place=case.problem.place or (case.scenario if case.problem.is_example else ""), method=method,
        name=(words.NAME, who), group=(words.GROUP, group), date=(words.DATE, date),
        scale=(words.SCALE, scale), paper=(words.PAPER, f"{sheet.paper}, {way}"),
        sheet=_sheet_number(case, request),
        by_hand=kind == kinds.PROBLEM, marked=kind != kinds.CONSTRUCTION, maker=NAME,
    )  # fmt: skip


def _field(case: SumCase, plan: Plan) -> FieldText:
    """Return the words in the field of the drawing."""
    bar = "" if plan.layout.small else plan.layout.bar_text
    # Angles count from the first direction, unless they are those of the calculation.
    at_zero = not case.notation.polar or not case.picture.reference
    return FieldText(
        turning=words.TURNING if case.notation.words.alternates else words.POSITIVE,
        anticlockwise=case.picture.sense > 0, zero=words.ZERO if at_zero else "",
        up=case.picture.first == "up", point=words.START if plan.construction.method == TIP_TO_TAIL else words.POINT,
        print_check=words.print_check(bar), teaching=words.FOOT,
    )  # fmt: skip


def _has_steps(case: SumCase, request: SheetRequest) -> bool:
    """Whether a sheet has numbered steps: a solved one, but not while someone types, when they would take too long."""
    return request.kind == kinds.CONSTRUCTION and case.printed == USUAL and not request.opening.comes_again


def _steps(plan: Plan, case: SumCase) -> tuple[tuple[str, str], ...]:
    """Return the steps of a solved sheet with the numbers of the page's list: each whole, and what it stresses."""
    moves = [block.phrase for block in StepSentences(plan, case.notation).all_moves() if isinstance(block, Move)]
    return tuple((plain(phrase), stressed(phrase)) for phrase in moves)


def _answer(case: SumCase, plan: Plan) -> str:
    """Return what was found in one sentence, for the head of a solved sheet."""
    if case.closed:
        return plain(case.zero_reason())
    name = case.result_word or with_article(plain(case.sum_word))
    symbol, direction = plain(case.notation.tags[SUM_KEY]), plain(case.direction(plan))
    sentence = sum_words.answer_sentence(name, symbol, case.amount(case.size), direction)
    beside = case.companions
    if beside is None or case.typed_companions:
        return sentence
    # What goes along was to be found too: the current of a series circuit.
    amounts = ((plain(case.notation.tags[arm.key]), beside.writing.amount(arm.size)) for arm in beside.arms)
    return " ".join((*(sum_words.found_beside(*one) for one in amounts), sentence))


def question_of(
    case: SumCase, plan: Plan, kind: str, notes: tuple[str, ...], *, calculated: bool = True, of_paper: bool = False
) -> tuple[str, tuple[str, ...]]:
    """Return what stands above all else, question or answer, and the notes below it; ``calculated``: there is room for
    a calculated answer too; ``of_paper``: the question asks for what a question paper marks."""
    if of_paper and case.notation.unmarked:
        notes = tuple(note.replace(case.notation.unmarked, "") for note in notes)
    if kind == kinds.CONSTRUCTION:
        return _answer(case, plan), notes
    question = next((note for note in notes if note.endswith(ROUTINE)), "")
    if kind == kinds.PROBLEM and question:
        # On the smallest paper the rows of results say it.
        routine = () if plan.layout.small or of_paper else (ROUTINE if calculated else DRAWN_ROUTINE,)
        return question.removesuffix(ROUTINE).strip(), (*routine, *(note for note in notes if note != question))
    return (notes[0], notes[1:]) if notes else ("", ())


def writing_of(case: SumCase, plan: Plan, request: SheetRequest) -> SheetText:
    """Return all words of the requested sheet."""
    issue, kind = request.opening.issue, request.kind
    scale, scale_cell = _scale_words(case, plan, request)
    is_problem = kind == kinds.PROBLEM
    asked = {"any_method": request.any_method, "of_paper": request.of_paper}
    rows = problem_rows(case, plan, **asked) if is_problem else rows_of(case, plan)
    # The link is on the first sheet.
    code, code_words = _opening(case, plan, request) if request.number == 1 else ((), ())
    method = case.method_words(plan, any_method=request.any_method)
    sheet_words = case.sheet_words(plan, kind, method)
    second, check = _second_scale(case, plan, request)
    sentence, notes = question_of(
        case, plan, kind, sheet_words.notes, calculated=request.calculated, of_paper=request.of_paper
    )
    further = (*words.issued_notes(request.problem_of_set),) if request.problem_of_set else ()
    more = case.further_question() if is_problem else ""
    sheet_text = SheetText(
        sentence=sentence,
        field=_field(case, plan),
        block=_block(case, plan, request, method, scale_cell),
        head=head_of(case),
        rows=rows,
        scale_words=scale,
        notes=(*notes, more, check, *further),
        second_scale=second,
        code_words=code_words,
        page_title=words.page_title(
            case.sheet_title(kind), method, case.notation.scales(plan.scale, plan.second)
        ),
        description=sheet_words.description or phasors_drawn(case, rows),
        alternative=sheet_words.description or words.drawing_shows([plain(row.symbol) for row in rows], scale),
        minus=minus_words(case, plan),
        steps=_steps(plan, case) if _has_steps(case, request) else (),
        code=code,
        short_code=issue.code if issue else request.code,
        work=worksheet_of(
            case, plan, sentence, calculated=request.calculated, **asked
        ) if is_problem else None,
    )  # fmt: skip
    if case.printed == USUAL:
        return sheet_text
    # Beside a drawing that is to be read easily stand few words; the others have pages of their own.
    bare = replace(sheet_text.field, print_check="", teaching="", point="")
    return replace(sheet_text, sentence="", notes=(), field=bare, code_words=())


def _has_moves(case: SumCase, request: SheetRequest) -> bool:
    """Whether the moves have pages of their own."""
    if case.on_own_paper:
        return request.kind == kinds.CONSTRUCTION and not request.opening.comes_again
    return case.printed != USUAL


def moves_of(case: SumCase, plan: Plan, request: SheetRequest) -> tuple[Page, ...]:
    """Return the pages with the moves: of a sheet for easy reading, and of a drawing on the learner's own paper, which
    has no room for them; else none."""
    if not _has_moves(case, request):
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
    table = writing_of(case, plan, request) if plan.layout.style.whole else None
    return moves_pages(plan.layout, title, lists, words.FOOT, named, moves_list.description(lines), table)


def composed_of(
    case: SumCase, plan: Plan, request: SheetRequest, placed: tuple[Placement, FigureStrokes] | None = None
) -> compose.ComposedSheet:
    """Return the requested sheet and how its figure stands: ``placed``, if another kind has settled it."""
    kind = request.kind
    tolerance = None
    if kind == kinds.OVERLAY and not case.closed:
        tolerance = compose.ToleranceEllipse(*case.scatter(plan).ellipse())
    writing, start = writing_of(case, plan, request), case.problem["start"]
    composed = compose.compose(plan, look_of(case), writing, kind, start, tolerance, placed)
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


def further_pages(
    case: SumCase, sheet: FurtherSheet, request: SheetRequest, groups: tuple[Group, ...]
) -> tuple[Page, ...]:
    """Return a further sheet, of the requested number, with these groups drawn on it; where the drawing has a page to
    itself, its table and notes follow on the next."""
    plan, room = sheet.plan, words.ROOM
    title = sum_words.sheet_titles(sheet.name)[request.kind]
    rows = tuple(
        TableRow(row.tag, room, room, room) if request.kind == kinds.PROBLEM
        else row_of(case, row.tag, row.size, row.angle if row.size else None, plan)
        for row in sheet.rows
    )
    rows = alike((*rows[:-1], replace(rows[-1], ruled=True)), case.notation.mark)
    named = words.page_title(title, sheet.method, case.notation.scale(plan.scale))
    whole = writing_of(case, plan, request)
    usual = case.printed == USUAL
    name = sum_words.sheet_titles(sheet.name)[kinds.CONSTRUCTION]
    writing = replace(
        whole, block=replace(whole.block, title=name, method=sheet.method),
        rows=rows, work=None, steps=(), sentence="",
        notes=sheet.notes if usual else (), page_title=named,
        description=sheet.description, alternative=sheet.description,
    )  # fmt: skip
    page = compose.page_of(plan.layout, writing, groups, compose.surround(plan.layout, writing))
    page = mirrored(page) if request.kind == kinds.OVERLAY and case.problem["mirror"] == "yes" else page
    if not plan.layout.style.whole:
        return (page,)
    lists = (TextSection(moves_list.LOOK, (*sheet.notes, words.print_note(plan.layout.bar_text))),)
    below = replace(writing, second_scale=(), short_code="")
    return (page, *moves_pages(plan.layout, title, lists, words.FOOT, (named,), sheet.description, below))


def sheet_of(case: SumCase, plan: Plan, request: SheetRequest) -> Page:
    """Return the requested sheet."""
    return composed_of(case, plan, request).page


def view_of(case: SumCase, plan: Plan) -> Page:
    """Return the figure laid out for a phone."""
    name, scale = case.sheet_title(kinds.CONSTRUCTION), case.notation.scales(plan.scale, plan.second)
    title = words.page_title(name, case.method_words(plan), scale)
    description = phasors_drawn(case, rows_of(case, plan))
    view = compose.view_on_paper if case.on_own_paper else compose.view
    return view(plan, look_of(case), PHONE, title, description)


def figure_of(case: SumCase, plan: Plan) -> Page:
    """Return the figure of the sheet alone, without letters, at the sheet's own scale."""
    scale = case.notation.scales(plan.scale, plan.second)
    title = words.page_title(case.sheet_title(kinds.CONSTRUCTION), case.method_words(plan), scale)
    return compose.bare(plan, look_of(case), title)
