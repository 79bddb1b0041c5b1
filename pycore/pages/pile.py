"""A pile of photographs as rows, and what they say of one another.

Rows come from the browser, which keeps them: nothing of them is trusted.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from pycore import geometry
from pycore.geometry import Point
from pycore.pages import class_set
from pycore.pages.class_marks import entry_of as entry_of_set
from pycore.pages.class_marks import marks_by_step
from pycore.pages.class_set import ClassSet
from pycore.pages.pile_papers import KeptPaper, PaperPlace, kept_papers, paper_marks_of
from pycore.pages.pile_sheet import kept_set, places_of, set_for
from pycore.practice import codes
from pycore.practice.codes import Code, CodeError
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED, WRONG
from pycore.practice.part_marks import Range, added, summed
from pycore.words import pile as words
from pycore.words.question_paper import OF_DRAWING

MOST_ROWS, LONGEST = 200, 300
SAME_DRAWING = 2.0
"""mm within which all points of two drawings are those of one."""


@dataclass(frozen=True, slots=True)
class MarkedDrawing:
    """A drawing as a row has it: the drawn result and the right one as numbers with their unit, how far it is off (as
    text, "" where it has no result), its band, the bands of first step, length and angle, and the short names of the
    mistakes that explain it."""

    found: str
    asked: str
    unit: str
    off: str
    band: str
    parts: tuple[str, ...]
    mistakes: tuple[str, ...]
    angle: str = ""
    """That of the drawn result with its side, "" for none."""
    by_part: tuple[str, ...] = ()
    """The bands of what question papers give marks for: scale, directions, lengths, result; empty: not known."""


@dataclass(frozen=True, slots=True)
class PileRow:
    """One photograph: its number (from 1), the name of its file, what tells the file from others, what is known of it.

    ``state``: ``waiting``, ``reading``, ``fault``, ``press`` (the points are to be pressed), ``asked`` (something of
    what was read is) or ``judged``; ``said``: what is wrong with it. ``fault``: what the rows together say of it, a
    sentence, "" for nothing.
    """

    id: str
    number: int
    file: str
    digest: str
    state: str
    said: str
    page: str
    code: str
    group: str
    place: int
    name: str
    drawing: MarkedDrawing | None
    points: Mapping[str, Point]
    accepted: bool
    was_accepted: bool
    """Whether somebody accepted it, with whatever marks it had."""
    settled: int | None
    marks: Range
    of: int
    fault: str = ""
    paper: PaperPlace | None = None
    """Where the sheet belongs, if it is one of a question paper."""
    by_step: tuple[Range, ...] = ()
    """How the marks of a class set's drawing fall on its steps; empty where they do not: somebody chose or has to."""
    unread: int = 0
    """How many pages of a PDF are not read, if others are."""

    @property
    def is_sure(self) -> bool:
        """Whether its marks can be taken over as they are."""
        return self.state == "judged" and not self.fault and self.marks[0] == self.marks[1]

    @property
    def is_asked(self) -> bool:
        """Whether a person has to look at it."""
        is_open = self.state in ("fault", "press", "asked") or (self.state == "judged" and not self.is_sure)
        return is_open or bool(self.fault)


@dataclass(frozen=True, slots=True)
class Pile:
    """All rows, the class set that most of them belong to (None: none does), and the question papers of the device."""

    rows: tuple[PileRow, ...]
    group: ClassSet | None
    papers: tuple[KeptPaper, ...] = ()

    @property
    def asked(self) -> tuple[PileRow, ...]:
        """The rows that a person has to look at."""
        return tuple(row for row in self.rows if row.is_asked and not row.accepted)

    @property
    def sure(self) -> tuple[PileRow, ...]:
        """The rows that can be accepted together."""
        return tuple(row for row in self.rows if row.is_sure and not row.accepted)

    @property
    def accepted(self) -> tuple[PileRow, ...]:
        """The rows whose marks are settled."""
        return tuple(row for row in self.rows if row.accepted)


def _text(value: object) -> str:
    return value[:LONGEST] if isinstance(value, str) else ""


def _whole(value: object) -> int:
    return value if isinstance(value, int) and value > 0 else 0


def _drawing(value: object) -> MarkedDrawing | None:
    if not isinstance(value, dict):
        return None
    parts, mistakes = value.get("parts"), value.get("mistakes")
    bands = tuple(one for one in parts if one in (ACCEPT, LOOK, WRONG)) if isinstance(parts, list) else ()
    band = value.get("band")
    if len(bands) != 3 or band not in (ACCEPT, LOOK, WRONG):
        return None
    texts = (_text(value.get(key)) for key in ("found", "asked", "unit", "off"))
    found, asked, unit, off = texts
    names = tuple(_text(one) for one in mistakes[:MOST_NAMED]) if isinstance(mistakes, list) else ()
    by_part = value.get("byPart")
    told = tuple(one for one in by_part if one in (ACCEPT, LOOK, WRONG)) if isinstance(by_part, list) else ()
    return MarkedDrawing(
        found, asked, unit, off, band, bands, names, _text(value.get("angle")), told if len(told) == 4 else ()
    )


def _points(value: object) -> Mapping[str, Point]:
    found: dict[str, Point] = {}
    for name, place in value.items() if isinstance(value, dict) else ():
        if isinstance(place, list) and len(place) == 2 and all(isinstance(one, int | float) for one in place):
            found[str(name)] = Point(float(place[0]), float(place[1]))
    return found


def _group_of(
    rows: Sequence[Mapping[str, Any]], kept: ClassSet | None, of_papers: Mapping[str, PaperPlace]
) -> ClassSet | None:
    """The set that most sheets belong to that are of no question paper; of as many, the first."""
    counts: dict[str, int] = {}
    for row in rows:
        name = _text(row.get("group"))
        if name and _text(row.get("code")) not in of_papers:
            counts[name] = counts.get(name, 0) + 1
    if not counts:
        return None
    try:
        return set_for(codes.read(max(counts, key=lambda name: counts[name])), kept)
    except CodeError:
        return None


def read_pile(request: Mapping[str, Any]) -> Pile:
    """Return the rows of a request, with what they say of one another."""
    listed = request.get("rows")
    found = [one for one in listed[:MOST_ROWS] if isinstance(one, dict)] if isinstance(listed, list) else []
    kept = kept_set(request.get("set"), request.get("roll"))
    papers = kept_papers(request.get("papers"))
    of_papers = {code: place for paper in reversed(papers) for code, place in paper.places.items()}
    if kept is not None:  # A class set that has the same problems is what was photographed.
        of_papers = {code: at for code, at in of_papers.items() if at.group != str(kept.code)}
    group = _group_of(found, kept, of_papers)
    is_kept = kept is not None and group is not None and kept.code == group.code
    places = places_of(request.get("set"), request.get("roll")) if is_kept else {}
    worths = group.marks if group is not None else class_set.default_set().marks
    rows = [
        _row_of_paper(row, of_papers[row.code]) if row.code in of_papers else row
        for row in (_row(one, number, places, worths) for number, one in enumerate(found, start=1))
    ]
    return Pile(_together(rows, group, places), group, papers)


def _row_of_paper(row: PileRow, at: PaperPlace) -> PileRow:
    """A row whose sheet belongs to a question paper: marked by the parts of its drawing."""
    worth = dict(at.question.parts(OF_DRAWING))
    of, drawing = added(worth.values()), row.drawing
    marks = (0, of) if drawing is None else paper_marks_of(worth, drawing.by_part)
    return replace(row, paper=at, place=at.place, name=at.name, marks=marks, of=of, settled=None, by_step=(),
                   accepted=row.was_accepted)  # fmt: skip


def _by_step(drawing: MarkedDrawing, worths: tuple[int, int, int]) -> tuple[Range, ...]:
    """Marks from and to of first step, length and angle; without the last where the result has no angle."""
    first, *others = marks_by_step(drawing.parts, worths)
    return (first, *others) if drawing.angle else (first, summed(others))


def _row(
    one: Mapping[str, Any], number: int, places: Mapping[str, tuple[int, str]], worths: tuple[int, int, int]
) -> PileRow:
    drawing, code, settled = _drawing(one.get("drawing")), _text(one.get("code")), one.get("settled")
    of, state = added(worths), _text(one.get("state"))
    place, name = places.get(code, (_number_of(code), ""))
    by_step = _by_step(drawing, worths) if drawing is not None else ()
    marks = summed(by_step)
    if drawing is not None and drawing.band == LOOK and marks[0] == marks[1]:
        by_step = ()
        marks = (marks[0] if marks[0] < of else worths[0], of)  # somebody has to look, whatever the parts say
    decided = settled if isinstance(settled, int) and not isinstance(settled, bool) and 0 <= settled <= of else None
    if decided is not None:
        marks, by_step = (decided, decided), ()
    state = "press" if state == "judged" and drawing is None else state
    was_accepted = one.get("accepted") is True and state == "judged"
    return PileRow(
        _text(one.get("id")), number, _text(one.get("file")), _text(one.get("digest")), state, _text(one.get("said")),
        _text(one.get("page")), code, _text(one.get("group")), place, name, drawing, _points(one.get("points")),
        was_accepted and marks[0] == marks[1], was_accepted, decided, marks, of, by_step=by_step,
        unread=_whole(one.get("unread")),
    )  # fmt: skip


def _number_of(code: str) -> int:
    try:
        read = codes.read_any(code)
    except CodeError:
        return 0
    return read.number if isinstance(read, Code | codes.PaperCode) else 0


def _together(
    rows: Sequence[PileRow], group: ClassSet | None, places: Mapping[str, tuple[int, str]]
) -> tuple[PileRow, ...]:
    """The rows with what is wrong with them beside the others: a file twice, a code twice, a sheet of another set."""
    files: dict[str, PileRow] = {}
    sheets: dict[str, PileRow] = {}
    told: list[PileRow] = []
    for row in rows:
        fault = ""
        same_file = files.setdefault(row.digest, row) if row.digest else row
        same_code = sheets.setdefault(row.code, row) if row.code and row.group else row
        if same_file is not row:
            fault = words.same_file(same_file.number)
        elif same_code is not row:
            fault = _code_twice(row, same_code)
        elif row.paper is not None:
            pass
        elif row.group and group is not None and row.group != str(group.code):
            fault = words.other_set(row.group, str(group.code))
            row = replace(row, place=0)  # it is nobody's in this class
        elif row.group and places and row.code not in places:
            fault = words.beyond_set(len(places))
        told.append(replace(row, fault=fault))
    return tuple(told)


def _code_twice(row: PileRow, other: PileRow) -> str:
    if not (row.points and other.points):
        return words.code_twice(other.number)
    names = set(row.points) & set(other.points)
    apart = [geometry.distance(row.points[name], other.points[name]) for name in sorted(names)]
    is_same = len(names) == len(row.points) == len(other.points) and max(apart) <= SAME_DRAWING
    return words.same_sheet(other.number) if is_same else words.other_drawing(other.number)


def entry_of(pile: Pile) -> dict[str, object] | None:
    """Return what the register keeps of the accepted rows; None where there is no set, or nothing is accepted."""
    group = pile.group
    own = str(group.code) if group else ""
    rows = [row for row in pile.accepted if row.place and row.paper is None and row.group == own]
    if group is None or not rows:
        return None
    return entry_of_set(group, [
        (row.place, row.name, row.marks, row.drawing.mistakes if row.drawing else ()) for row in rows
    ])  # fmt: skip
