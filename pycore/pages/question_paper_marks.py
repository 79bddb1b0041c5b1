"""Marking a question paper: a line for each learner and question, marks for each part, follow-through, a total."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from pycore.errors import Fault, InputError
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.pages.class_marks import verdict_of
from pycore.pages.mistake_names import short
from pycore.pages.question_paper import Question, QuestionPaper, place_of
from pycore.practice import answers, part_marks, tables
from pycore.practice.answers import AnswerJudgement
from pycore.practice.class_set import Learner
from pycore.practice.marking import ACCEPT, MOST_NAMED
from pycore.practice.part_marks import Range, agreed, calculation_marks, drawing_marks, summed
from pycore.practice.tables import TableLine
from pycore.practice.task import CALCULATED, DRAWN, Task
from pycore.words import marks as mark_words
from pycore.words import paper_marks as words
from pycore.words import question_paper as paper_words

MOST_LINES = 5000
IN_ORDER = ("learner", "question", "drawn", "calculated", *paper_words.PARTS)
"""What the columns are where no head line says it."""


@dataclass(frozen=True, slots=True)
class QuestionMarks:
    """One line marked: the learner's place and name, the question, both answers as typed, the marks by part, what was
    found, the mistakes that could explain it (their keys), and the marks of all parts together."""

    line: int
    place: int
    name: str
    question: int
    given: tuple[str, str]
    marks: tuple[tuple[str, Range], ...]
    remarks: tuple[str, ...]
    mistakes: tuple[str, ...]
    total: Range


@dataclass(slots=True)
class PaperMarking:
    """A table under way: the paper, its lines, those marked so far, and those that could not be used, with why."""

    paper: QuestionPaper
    lines: tuple[TableLine, ...]
    roles: tuple[str, ...]
    results: list[QuestionMarks] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    found: dict[int, list[Learner]] = field(default_factory=dict)
    turns: dict[int, Iterator[Learner | None]] = field(default_factory=dict)

    @property
    def mark(self) -> str:
        """The decimal mark of the paper."""
        return DECIMAL_MARKS[self.paper.questions[0].group.chosen.get("decimal", "point")]

    def steps(self) -> Iterator[tuple[str, float]]:
        """Mark each line."""
        seen: dict[tuple[int, int], int] = {}
        for number, line in enumerate(self.lines, start=1):
            try:
                marked = self._marked(line)
                again = seen.setdefault((marked.place, marked.question), line.number)
                if again != line.number:
                    raise ValueError(words.again(again))
                self.results.append(marked)
            except InputError as error:
                self._refuse(line, " ".join(fault.message for fault in error.faults))
            except ValueError as error:
                self._refuse(line, str(error))
            yield mark_words.progress(number, len(self.lines)), number / len(self.lines)

    def _refuse(self, line: TableLine, why: str) -> None:
        self.refused.append(mark_words.refused(line.number, why))

    def _marked(self, line: TableLine) -> QuestionMarks:
        if line.open_quote:
            raise ValueError(mark_words.OPEN_QUOTE)
        cells: dict[str, str] = {}
        for role, cell in zip(self.roles, line.cells, strict=False):
            # A table of ours has a number and a name: the first that is filled says who it is.
            cells[role] = cells.get(role) or cell
        place = place_of(self.paper, cells.get("learner", ""))
        question = self._question(cells.get("question", ""))
        learner = self._learner(question, place)
        task: Task = question.group.topic.task(learner.form)
        typed = _typed_marks(question, cells)
        given = _answers(question, cells)
        replies = agreed({how: self._judged(task.by(how), how, given[how]) for how in (DRAWN, CALCULATED)})
        if not any(replies.values()) and not typed:
            raise ValueError(words.NOTHING_ON_LINE)
        marks, total = _parts(question, replies, typed)
        return QuestionMarks(
            line.number, place, learner.name, question.number, (given[DRAWN], given[CALCULATED]),
            marks, _remarks(replies), _mistakes(replies), total,
        )  # fmt: skip

    def _question(self, cell: str) -> Question:
        questions = self.paper.questions
        text = "".join(sign for sign in cell if sign.isdigit())
        if not cell and len(questions) == 1:
            return questions[0]
        if not text.isascii() or not 0 < len(text) < 4 or not 1 <= int(text) <= len(questions):
            raise ValueError(words.no_question(cell, len(questions)))
        return questions[int(text) - 1]

    def _learner(self, question: Question, place: int) -> Learner:
        """The problem of the learner in a place; problems are found in turn, and kept."""
        found = self.found.setdefault(question.number, [])
        turn = self.turns.setdefault(question.number, question.learners())
        while len(found) < place:
            following = next(turn)
            if following is not None:
                found.append(following)
        return found[place - 1]

    def _judged(self, task: Task, how: str, cell: str) -> AnswerJudgement | None:
        """An answer judged; None for an empty cell."""
        if not cell.strip():
            return None
        return answers.judge(task, {"answer": cell, "answer-how": how}, on_paper=True)

    def table(self) -> bytes:
        """The marks as a table of text: numbers as numbers."""
        rows = [[*words.TABLE_HEAD[:5], *paper_words.PARTS.values(), *words.TABLE_HEAD[5:]]]
        for one in self.results:
            marks = dict(one.marks)
            parts = [_written(marks[key]) if key in marks else "" for key in paper_words.PARTS]
            low, high = one.total
            rows.append([
                str(one.place), one.name, str(one.question), *one.given, *parts, str(low), str(high),
                "; ".join(one.remarks),
            ])  # fmt: skip
        return tables.write(rows, self.mark).encode()

    def totals(self) -> dict[int, tuple[str, Range, int]]:
        """Each learner's name, marks, and how many questions were marked, by place."""
        found: dict[int, tuple[str, Range, int]] = {}
        for one in self.results:
            name, marks, count = found.get(one.place, (one.name, (0, 0), 0))
            found[one.place] = (name, summed((marks, one.total)), count + 1)
        return dict(sorted(found.items()))

    def counted(self) -> tuple[tuple[str, int], ...]:
        """How many learners' answers each mistake could explain, by its short name, the commonest first."""
        counts: dict[str, int] = {}
        for one in self.results:
            for key in one.mistakes:
                counts[short(key)] = counts.get(short(key), 0) + 1
        return tuple(sorted(counts.items(), key=lambda pair: (-pair[1], pair[0])))

    def entries(self) -> list[dict[str, object]]:
        """Each learner's marks as the register keeps them."""
        told: dict[int, dict[str, None]] = {}
        for one in self.results:
            told.setdefault(one.place, {}).update(dict.fromkeys(map(short, one.mistakes)))
        return [
            {"place": place, "name": name, "low": low, "high": high, "mistakes": list(told[place])}
            for place, (name, (low, high), _) in self.totals().items()
        ]  # fmt: skip


def _written(marks: Range) -> str:
    return str(marks[0]) if marks[0] == marks[1] else words.between(*marks)


def _answers(question: Question, cells: Mapping[str, str]) -> dict[str, str]:
    """Both answers of a line by how they were found; where one thing is asked, the only answer is that."""
    given = {how: cells.get(how, "").strip() for how in (DRAWN, CALCULATED)}
    if question.asks != "both":
        asked, other = (CALCULATED, DRAWN) if question.asks == "calculation" else (DRAWN, CALCULATED)
        given = {asked: given[asked] or given[other], other: ""}
    return given


def _typed_marks(question: Question, cells: Mapping[str, str]) -> dict[str, int]:
    """The marks that a person has given for parts. Raises ValueError."""
    typed: dict[str, int] = {}
    worth = dict(question.marks)
    for key, part in paper_words.PARTS.items():
        cell = cells.get(key, "").strip()
        # A range in a table of ours is a mark that nobody has decided yet.
        if not cell or words.is_range(cell):
            continue
        most = worth.get(key, 0)
        if key not in worth and cell != "0":
            raise ValueError(words.no_part(part, question.number))
        if not (cell.isascii() and cell.isdigit() and len(cell) < 4 and int(cell) <= most):
            raise ValueError(words.bad_part(part, cell, most))
        typed[key] = int(cell)
    return {key: marks for key, marks in typed.items() if key in worth}


def _parts(
    question: Question, replies: Mapping[str, AnswerJudgement | None], typed: Mapping[str, int]
) -> tuple[tuple[tuple[str, Range], ...], Range]:
    """The marks of every part, and of all together: as a person gave them, else as the answers say."""
    found: dict[str, Range] = {}
    totals: list[Range] = []
    for how, keys, mark in (
        (DRAWN, paper_words.OF_DRAWING, drawing_marks), (CALCULATED, paper_words.OF_CALCULATION, calculation_marks),
    ):  # fmt: skip
        worth, reply = dict(question.parts(keys)), replies[how]
        options = mark(reply, worth) if reply is not None else (dict.fromkeys(worth, 0),)
        settled = [{part: typed.get(part, marks) for part, marks in one.items()} for one in options]
        found |= part_marks.spread(settled)
        totals.append(part_marks.total(settled))
    return tuple((key, found[key]) for key, _ in question.marks), summed(totals)


def _remark(reply: AnswerJudgement) -> str:
    """What an answer's marks rest on."""
    named = [short(cause.mistakes[0].key) for cause in reply.marked.causes[:MOST_NAMED]]
    return verdict_of(reply, words.could_be(named))


def _remarks(replies: Mapping[str, AnswerJudgement | None]) -> tuple[str, ...]:
    told = ((how, _remark(reply)) for how, reply in replies.items() if reply is not None)
    return tuple(words.of_way(how, remark) for how, remark in told if remark)


def _mistakes(replies: Mapping[str, AnswerJudgement | None]) -> tuple[str, ...]:
    """The likeliest mistake of each wrong answer."""
    judged = [reply for reply in replies.values() if reply is not None and reply.marked.band != ACCEPT]
    return tuple(dict.fromkeys(reply.marked.causes[0].mistakes[0].key for reply in judged if reply.marked.causes))


def _role(cell: str) -> str:
    plain = " ".join(cell.partition("(")[0].lower().split())
    return next((role for role, names in words.ROLES.items() if plain in names), "")


def _is_row(cells: Sequence[str]) -> bool:
    return len(cells) > 2


def marking_of(paper: QuestionPaper, text: str) -> PaperMarking:
    """The marking of a pasted table. Raises InputError where there is nothing, or too much."""
    lines = tables.read(text, _is_row)
    roles = tuple(_role(cell) for cell in lines[0].cells) if lines else ()
    headed = "question" in roles or "learner" in roles
    lines = lines[1:] if headed else lines
    if not lines:
        raise InputError(Fault("results", "", words.NOTHING))
    if len(lines) > MOST_LINES:
        raise InputError(Fault("results", "", mark_words.too_many(len(lines), MOST_LINES)))
    return PaperMarking(paper, lines, roles if headed else IN_ORDER)
