"""The register as data: papers with their learners' marks, brought together by learner and by mistake.

Whatever stands in it came out of a browser's storage or a file, so nothing of it is trusted.
"""

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass

from pycore.practice.part_marks import Range, added, summed
from pycore.words import paper_marks as mark_words

MOST_PAPERS, MOST_LEARNERS = 500, 2000
LONGEST = 100


@dataclass(frozen=True, slots=True)
class MarkedPaper:
    """One paper: its code, title, group and day (as text), its total, and by learner the marks and mistakes."""

    code: str
    title: str
    group: str
    day: str
    of: int
    marks: tuple[tuple[str, Range, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Register:
    """The papers of one group in the order of their days."""

    group: str
    papers: tuple[MarkedPaper, ...]

    def learners(self) -> tuple[tuple[str, tuple[Range | None, ...], Range, int], ...]:
        """Each learner's marks by paper (None: no marks), their sum, and the sum of the totals of those papers."""
        names = sorted({name for paper in self.papers for name, _, _ in paper.marks}, key=str.casefold)
        rows = []
        found = [{one: marks for one, marks, _ in paper.marks} for paper in self.papers]
        for name in names:
            marks = [paper_marks.get(name) for paper_marks in found]
            of = added(paper.of for paper, own in zip(self.papers, marks, strict=True) if own is not None)
            rows.append((name, tuple(marks), summed(own for own in marks if own is not None), of))
        return tuple(rows)

    def mistakes(self) -> tuple[tuple[str, tuple[int, ...]], ...]:
        """How many learners of each paper made a mistake, the commonest mistake first."""
        counts = [_counted(paper) for paper in self.papers]
        names = {name for one in counts for name in one}
        rows = [(name, tuple(one.get(name, 0) for one in counts)) for name in names]
        return tuple(sorted(rows, key=lambda row: (-added(row[1]), row[0])))


def _counted(paper: MarkedPaper) -> dict[str, int]:
    counts: dict[str, int] = {}
    for _, _, mistakes in paper.marks:
        for name in mistakes:
            counts[name] = counts.get(name, 0) + 1
    return counts


def _text(value: object) -> str:
    return " ".join(value[:LONGEST].split()) if isinstance(value, str) else ""


def _whole(value: object) -> int:
    return value if isinstance(value, int) and not isinstance(value, bool) and 0 <= value < 100_000 else 0


def _marks(value: object) -> tuple[str, Range, tuple[str, ...]] | None:
    """One learner's marks; None for anything else."""
    if not isinstance(value, dict):
        return None
    low, high = _whole(value.get("low")), _whole(value.get("high"))
    told = value.get("mistakes")
    mistakes = tuple(_text(one) for one in told if _text(one)) if isinstance(told, list) else ()
    name = mark_words.learner(_whole(value.get("place")), _text(value.get("name")))
    return name, (min(low, high), max(low, high)), tuple(dict.fromkeys(mistakes))


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
    listed = (_marks(one) for one in value["marks"][:MOST_LEARNERS])
    marks: dict[str, tuple[str, Range, tuple[str, ...]]] = {}
    for one in listed:
        if one is not None:
            name = _apart(one[0], marks)
            marks[name] = (name, *one[1:])
    texts = {key: _text(value.get(key)) for key in ("paper", "title", "group", "date")}
    if not texts["paper"] or not marks:
        return None
    return MarkedPaper(
        texts["paper"], texts["title"], texts["group"], texts["date"], _whole(value.get("of")), tuple(marks.values())
    )


def read(papers: object) -> tuple[Register, ...]:
    """The registers of the groups in a list of papers, which are in the order of their days."""
    listed = papers[:MOST_PAPERS] if isinstance(papers, list) else []
    read_papers = [paper for paper in map(_paper, listed) if paper is not None]
    groups: dict[str, list[MarkedPaper]] = {}
    for paper in read_papers:
        groups.setdefault(paper.group, []).append(paper)
    return tuple(Register(group, tuple(groups[group])) for group in sorted(groups))


def table(registers: Sequence[Register], heads: Mapping[str, str]) -> list[list[str]]:
    """Every register as rows of text: numbers as numbers, each learner with marks from and to for each paper."""
    rows: list[list[str]] = []
    for register in registers:
        columns = [f"{paper.title} {paper.day} ({heads['of']} {paper.of})" for paper in register.papers]
        pairs = [f"{column} {end}" for column in columns for end in ("from", "to")]
        rows.append([heads["group"], heads["learner"], *pairs, "Total from", "Total to", "Total of"])
        for name, marks, (low, high), of in register.learners():
            cells = [text for own in marks for text in (map(str, own) if own is not None else ("", ""))]
            rows.append([register.group, name, *cells, str(low), str(high), str(of)])
        rows.append([])
        rows.append([heads["group"], heads["mistake"], *columns])
        rows += [[register.group, name, *map(str, counts)] for name, counts in register.mistakes()]
        rows.append([])
    return rows
