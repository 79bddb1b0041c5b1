"""The register as data: papers with their learners' marks, brought together by learner and by mistake.

Whatever stands in it came out of a browser's storage or a file, so nothing of it is trusted.
"""

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, replace

from pycore.practice.part_marks import Range, added, summed
from pycore.words import paper_marks as mark_words

MOST_PAPERS, MOST_LEARNERS, MOST_QUESTIONS = 500, 2000, 100
LONGEST = 100


@dataclass(frozen=True, slots=True)
class LearnerMarks:
    """A learner's marks of one paper: what the marked questions have together, the questions that are not marked yet,
    and the mistakes."""

    name: str
    marks: Range
    of: int
    missing: tuple[int, ...]
    mistakes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MarkedPaper:
    """One paper: its code, title, group and day (as text), its total, and the marks of each learner."""

    code: str
    title: str
    group: str
    day: str
    of: int
    marks: tuple[LearnerMarks, ...]

    @property
    def average(self) -> Range | None:
        """All learners' marks in per cent of what was marked; None where nobody's paper is marked whole."""
        if all(one.missing for one in self.marks):
            return None
        return per_cent(summed(one.marks for one in self.marks), added(one.of for one in self.marks))


@dataclass(frozen=True, slots=True)
class LearnerRow:
    """A learner's marks by paper (None: no marks), their sum, and what the marked questions have together."""

    name: str
    papers: tuple[LearnerMarks | None, ...]
    total: Range
    of: int

    @property
    def per_cent(self) -> Range | None:
        """The sum in per cent; None while a question of one of these papers is not marked."""
        return None if any(one and one.missing for one in self.papers) else per_cent(self.total, self.of)


@dataclass(frozen=True, slots=True)
class Register:
    """The papers of one group in the order of their days."""

    group: str
    papers: tuple[MarkedPaper, ...]

    def learners(self) -> tuple[LearnerRow, ...]:
        """Each learner's marks, in the order of names."""
        names = sorted({one.name for paper in self.papers for one in paper.marks}, key=_in_order)
        found = [{one.name: one for one in paper.marks} for paper in self.papers]
        rows = []
        for name in names:
            papers = tuple(one.get(name) for one in found)
            own = [one for one in papers if one is not None]
            rows.append(LearnerRow(name, papers, summed(one.marks for one in own), added(one.of for one in own)))
        return tuple(rows)

    def mistakes(self) -> tuple[tuple[str, tuple[int, ...]], ...]:
        """How many learners of each paper made a mistake, the commonest mistake first."""
        counts = [_counted(paper) for paper in self.papers]
        names = {name for one in counts for name in one}
        rows = [(name, tuple(one.get(name, 0) for one in counts)) for name in names]
        return tuple(sorted(rows, key=lambda row: (-added(row[1]), row[0])))


def _in_order(name: str) -> tuple[str, int, str]:
    """What names are sorted by: learners without a name by their number."""
    start, _, number = name.rpartition(" ")
    is_numbered = number.isascii() and number.isdigit() and len(number) < 6
    return (start.casefold(), int(number), name) if is_numbered else (name.casefold(), 0, name)


def per_cent(marks: Range, of: int) -> Range:
    """Marks in whole per cent, halves up; 0 of nothing."""
    low, high = ((200 * one + of) // (2 * of) if of else 0 for one in marks)
    return low, high


def _counted(paper: MarkedPaper) -> dict[str, int]:
    counts: dict[str, int] = {}
    for one in paper.marks:
        for name in one.mistakes:
            counts[name] = counts.get(name, 0) + 1
    return counts


def _text(value: object) -> str:
    return " ".join(value[:LONGEST].split()) if isinstance(value, str) else ""


def _whole(value: object) -> int:
    return value if isinstance(value, int) and not isinstance(value, bool) and 0 <= value < 100_000 else 0


def _mistakes(value: object) -> tuple[str, ...]:
    return tuple(dict.fromkeys(_text(one) for one in value if _text(one))) if isinstance(value, list) else ()


def _range(value: Mapping[str, object]) -> Range:
    low, high = _whole(value.get("low")), _whole(value.get("high"))
    return min(low, high), max(low, high)


def _worth(value: object) -> dict[int, int]:
    """The marks of each question of a paper by its number; nothing where they are not told."""
    listed = value[:MOST_QUESTIONS] if isinstance(value, list) else []
    return {_whole(one.get("number")): _whole(one.get("of")) for one in listed if isinstance(one, dict)}


def _marks(value: object, whole: int, worth: Mapping[int, int]) -> LearnerMarks | None:
    """One learner's marks; None for anything else. Earlier versions told the whole paper's marks only."""
    if not isinstance(value, dict):
        return None
    name = mark_words.learner(_whole(value.get("place")), _text(value.get("name")))
    questions = value.get("questions")
    listed = questions[:MOST_QUESTIONS] if isinstance(questions, list) else []
    told = {_whole(one.get("number")): one for one in listed if isinstance(one, dict)}
    told = {number: one for number, one in told.items() if number in worth}
    if not told:
        return LearnerMarks(name, _range(value), whole, (), _mistakes(value.get("mistakes")))
    mistakes = dict.fromkeys(name for one in told.values() for name in _mistakes(one.get("mistakes")))
    missing = tuple(number for number in sorted(worth) if number not in told)
    of = added(worth[number] for number in told)
    return LearnerMarks(name, summed(map(_range, told.values())), of, missing, tuple(mistakes))


def _apart(name: str, taken: Container[str]) -> str:
    """A learner's name, told from others of the same name on one paper by a number behind it."""
    number = 1
    own = name
    while own in taken:
        number += 1
        own = f"{name} ({number})"
    return own


def _paper(value: object) -> MarkedPaper | None:
    if not isinstance(value, dict) or not isinstance(value.get("marks"), list):
        return None
    whole, worth = _whole(value.get("of")), _worth(value.get("questions"))
    marks: dict[str, LearnerMarks] = {}
    for one in value["marks"][:MOST_LEARNERS]:
        learner = _marks(one, whole, worth)
        if learner is not None:
            name = _apart(learner.name, marks)
            marks[name] = replace(learner, name=name)
    texts = {key: _text(value.get(key)) for key in ("paper", "title", "group", "date")}
    if not texts["paper"] or not marks:
        return None
    return MarkedPaper(
        texts["paper"], texts["title"], texts["group"], texts["date"], whole, tuple(marks.values())
    )


def read(papers: object) -> tuple[Register, ...]:
    """The registers of the groups in a list of papers, which are in the order of their days."""
    listed = papers[:MOST_PAPERS] if isinstance(papers, list) else []
    read_papers = [paper for paper in map(_paper, listed) if paper is not None]
    groups: dict[str, list[MarkedPaper]] = {}
    for paper in read_papers:
        groups.setdefault(paper.group, []).append(paper)
    return tuple(Register(group, tuple(groups[group])) for group in sorted(groups))


ENDS = ("from", "to", "possible", "from %", "to %")
"""The columns of a paper in the table for spreadsheets, by the names of their heads."""


def _ends(share: Range | None) -> tuple[str, ...]:
    """Per cent from and to; empty where there is none."""
    return ("", "") if share is None else tuple(map(str, share))


def _cells(own: LearnerMarks | None) -> tuple[str, ...]:
    """A learner's cells of one paper; empty for one that was not marked, without per cent for one marked in part."""
    if own is None:
        return ("",) * len(ENDS)
    share = None if own.missing else per_cent(own.marks, own.of)
    return (*map(str, (*own.marks, own.of)), *_ends(share))


def table(registers: Sequence[Register], heads: Mapping[str, str]) -> list[list[str]]:
    """Every register as rows of text: numbers as numbers, each learner with the marks of what was marked, from and to,
    and per cent of them; below it the average of the per cent, and how many learners made a mistake."""
    rows: list[list[str]] = []
    for register in registers:
        papers = [f"{paper.title} {paper.day}: " for paper in register.papers]
        ends = [f"{of}{heads[end]}" for of in (*papers, f"{heads['total']}: ") for end in ENDS]
        rows.append([heads["group"], heads["learner"], *ends])
        for row in register.learners():
            cells = [text for one in row.papers for text in _cells(one)]
            rows.append([register.group, row.name, *cells, *map(str, (*row.total, row.of)), *_ends(row.per_cent)])
        averages = [text for paper in register.papers for text in ("", "", "", *_ends(paper.average))]
        rows.append([register.group, heads["average"], *averages])
        rows.append([])
        rows.append([heads["group"], heads["mistake"], *(f"{paper}{heads['learners']}" for paper in papers)])
        rows += [[register.group, name, *map(str, counts)] for name, counts in register.mistakes()]
        rows.append([])
    return rows
