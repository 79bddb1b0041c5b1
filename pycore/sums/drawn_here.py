"""What is needed to judge lines drawn on the screen: the sheet's own start and scale, and every construction that the
lines may follow."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from pycore.constructions import roles
from pycore.constructions.moves import SetOff
from pycore.constructions.names import START_POINT
from pycore.drawing import Group, Item, Line, Page
from pycore.geometry import Point
from pycore.practice.drawn import ReferenceDrawing, aligned
from pycore.practice.lines_here import ARROW, Stroke, wanted_lines
from pycore.practice.photograph import true_paths
from pycore.sheet import compose
from pycore.sheet.kinds import PROBLEM
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.on_screen import on_screen
from pycore.sums.page import SumPage
from pycore.sums.request import SheetRequest
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import composed_of, look_of, writing_of
from pycore.words import draw_here as words
from pycore.words.phrase import Phrase, say
from pycore.words.sheet import ROOM


@dataclass(frozen=True, slots=True)
class Candidate:
    """A construction that lines may follow, on the sheet's paper at its scale."""

    method: str
    order: str
    plan: Plan
    drawing: ReferenceDrawing

    def move_of(self, index: int, case: SumCase) -> tuple[int, Phrase]:
        """The number of the step that has a move of the construction, and its sentence."""
        last = 0
        for number, step in self.plan.construction.numbered:
            last += len(step.moves)
            if index < last:
                return number, StepSentences(self.plan, case.notation).sentence(step)[0]
        raise IndexError(index)


@dataclass(frozen=True, slots=True)
class DrawingTask:
    """A problem to be drawn on the screen: its case, its blank sheet, where its start is (mm, y up), and the arrows
    that the sheet has drawn already."""

    case: SumCase
    plan: Plan
    page: Page
    origin: Point
    own: Candidate
    printed: tuple[Stroke, ...] = ()

    def candidates(self) -> Iterator[Candidate]:
        """Every construction that lines may follow, the sheet's own first."""
        yield self.own
        methods = next(field.options for field in self.case.fields if field.name == "method")
        seen = {(self.own.method, self.own.order)}
        for option in methods:
            method = self.case.possible(option.value)
            for order in self.case.orders(method):
                if (method, order) not in seen:
                    seen.add((method, order))
                    yield _candidate(self.case, self.plan, method, order)

    def names(self) -> dict[str, Phrase]:
        """What the arrows of the problem may be called, by key, in the order in which they are drawn."""
        keys = [
            line.key for one in self.candidates() for line in wanted_lines(one.drawing.construction) if line.arrow
        ]
        tags = self.case.notation.tags
        return {key: tags[key] for key in dict.fromkeys(keys) if tags.get(key)}


    def problem(self) -> tuple[Phrase, ...]:
        """What is asked and given, as the problem sheet has it: the question first."""
        writing = writing_of(self.case, self.plan, SheetRequest(PROBLEM))
        unit = writing.head[1]
        rows = writing.work.given if writing.work else ()
        given = [words.given(row.symbol, (row.amount, *unit), row.direction.replace(ROOM, ""))
                 for row in rows if row.amount != ROOM]  # fmt: skip
        asked = (*say(writing.sentence), " ", *self.begun()) if self.printed else say(writing.sentence)
        return (asked, *given, *(say(note) for note in writing.notes if note))

    def begun(self) -> Phrase:
        """Which phasors the sheet has drawn already, in a sentence; () where it has none."""
        tags = self.case.notation.tags
        return words.begun([tags[line.name] for line in self.printed]) if self.printed else ()

    def moves(self) -> tuple[Phrase, ...]:
        """The moves of the sheet's own construction; of those that draw what the sheet has, that it is done."""
        sentences, tags = StepSentences(self.plan, self.case.notation), self.case.notation.tags
        printed = {line.name for line in self.printed}
        moves: list[Phrase] = []
        for _, step in self.plan.construction.numbered:
            drawn = [move.phasor for move in step.moves if isinstance(move, SetOff) and move.role == roles.GIVEN]
            begun = [tags[key] for key in drawn if key in printed]
            moves.append(words.begun(begun) if begun else sentences.sentence(step)[0])
        return tuple(moves)

    def zero(self) -> Point | None:
        """The inner end of the mark that the sheet has in its first direction (mm, y up); None if it has none."""
        return next((line.end for line in _named(self.page.items, "zero") if isinstance(line, Line)), None)


def _named(items: Sequence[Item], name: str) -> Iterator[Item]:
    for item in items:
        if isinstance(item, Group):
            yield from item.items if item.name == name else _named(item.items, name)


def _candidate(case: SumCase, plan: Plan, method: str, order: str) -> Candidate:
    construction = plan.construction
    if (method, order) != (construction.method, construction.order):
        plan = replace(plan, construction=case.build(method, order))
    tags = {**case.notation.tags, "reference": case.notation.reference}
    drawing = ReferenceDrawing(plan.construction, plan.picture, plan.factor, plan.scale, case.hand, 0.0, tags)
    return Candidate(method, order, plan, drawing)


def drawing_task(page: SumPage[Any], form: Mapping[str, str]) -> DrawingTask:
    """Return what a page's form asks to be drawn. Raises InputError."""
    case = page.case(on_screen(form))
    plan = case.sheet_plan()
    stand, _ = compose.settled(plan, look_of(case))
    sheet = composed_of(case, plan, SheetRequest(PROBLEM)).page
    own = _candidate(case, plan, plan.construction.method, plan.construction.order)
    return DrawingTask(case, plan, sheet, stand.origin, own, _printed(case, own, stand.origin))


def _printed(case: SumCase, own: Candidate, origin: Point) -> tuple[Stroke, ...]:
    """The arrows of a problem sheet that shows two phasors."""
    keys = case.begun_keys(own.plan)
    if not keys:
        return ()
    paths = true_paths(own.drawing, aligned(own.drawing, {START_POINT: origin}))
    first: dict[str, Stroke] = {}
    for path in paths:
        if path.role == roles.GIVEN and path.phasor in keys:
            first.setdefault(path.phasor, Stroke(ARROW, path.points[0], path.points[1], path.phasor))
    return tuple(first.values())
