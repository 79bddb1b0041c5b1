"""Marking a question paper: a line for each learner and question, marks for each part, follow-through, a total."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from pycore.errors import Fault, InputError
from pycore.pages import paper_columns, paper_lines
from pycore.pages.class_marks import verdict_of
from pycore.pages.mistake_names import short
from pycore.pages.paper_day import day_of
from pycore.pages.question_paper import Question, QuestionPaper, place_of
from pycore.pages.typed_answers import NO_ANSWER, ReadAnswer, judged
from pycore.practice import part_marks, tables
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
LONGEST_QUOTE = 80
WRONG_UNIT = "wrong-unit"
"""Counted with the mistakes, by its key in words/short_mistakes.py."""


@dataclass(frozen=True, slots=True)
class Choice:
    """Marks that a person chose from ranges, for these two answers as typed: of all parts together (None: nobody chose
    them), and of single parts by their keys."""

    given: tuple[str, str]
    total: int | None = None
    parts: Mapping[str, int] = field(default_factory=dict)


Settled = Mapping[tuple[int, int], Choice]
"""What was chosen, by the learner's place and the question."""


@dataclass(frozen=True, slots=True)
class QuestionMarks:
    """One line marked: the learner's place and name, the question, both answers as typed, the marks by part, what was
    found, the mistakes that could explain it (their keys), the marks of all parts together, the range that these
    were chosen from (None: nobody chose), the parts whose marks a person gave, and of those that were chosen from a
    range here, which range."""

    line: int
    place: int
    name: str
    question: int
    given: tuple[str, str]
    marks: tuple[tuple[str, Range], ...]
    remarks: tuple[str, ...]
    mistakes: tuple[str, ...]
    total: Range
    chosen_from: Range | None = None
    by_hand: tuple[str, ...] = ()
    parts_chosen_from: Mapping[str, Range] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class RefusedLine:
    """A line that could not be used: its number, and why, with the line itself."""

    line: int
    why: str


@dataclass(frozen=True, slots=True)
class LearnerTotal:
    """A learner's marks so far, what the marked questions have together, and the questions that are missing."""

    name: str
    marks: Range
    of: int
    missing: tuple[int, ...]


@dataclass(slots=True)
class PaperMarking:
    """A table under way: the paper, its lines, what a person settled, the lines marked so far, and those that could not
    be used, with why, and how many answers nobody can read, which have no marks."""

    paper: QuestionPaper
    lines: tuple[TableLine, ...]
    roles: tuple[str, ...]
    settled: Settled = field(default_factory=dict)
    results: list[QuestionMarks] = field(default_factory=list)
    refused: list[RefusedLine] = field(default_factory=list)
    found: dict[int, list[Learner]] = field(default_factory=dict)
    turns: dict[int, Iterator[Learner | None]] = field(default_factory=dict)
    unread: int = 0

    @property
    def mark(self) -> str:
        """The decimal mark of the paper."""
        return self.paper.mark

    def steps(self) -> Iterator[tuple[str, float]]:
        """Mark each line."""
        seen: dict[tuple[int, int], int] = {}
        for number, line in enumerate(self.lines, start=1):
            who: list[str] = []
            try:
                marked = self._marked(line, who)
                again = seen.setdefault((marked.place, marked.question), line.number)
                if again != line.number:
                    raise ValueError(words.again(again))
                self.results.append(marked)
            except InputError as error:
                self._refuse(line, who, " ".join(fault.message for fault in error.faults))
            except ValueError as error:
                self._refuse(line, who, str(error))
            yield mark_words.progress(number, len(self.lines)), number / len(self.lines)
        self.results.sort(key=lambda one: (one.name.casefold(), one.place, one.question))

    def _refuse(self, line: TableLine, who: Sequence[str], why: str) -> None:
        if not who and any(one.line == line.number for one in self.refused):
            return  # a row of a learner whom nobody knows is told once, not once for each question
        whole = "; ".join(line.cells).rstrip("; ")
        quote = whole if len(whole) <= LONGEST_QUOTE else f"{whole[:LONGEST_QUOTE]}…"
        self.refused.append(RefusedLine(line.number, words.refused(who, why, line.number, quote)))

    def _marked(self, line: TableLine, who: list[str]) -> QuestionMarks:
        """A line marked; ``who`` takes up the learner and the question as soon as they are known."""
        if line.open_quote:
            raise ValueError(mark_words.OPEN_QUOTE)
        cells = paper_lines.headed(self.roles or paper_lines.BEFORE, line.cells)
        place = place_of(self.paper, cells.get("learner", ""))
        who.append(words.learner(place, self.paper.name(place).whole))
        question = question_of(self.paper, cells.get("question", ""))
        who.append(words.of_number(question.number))
        if not self.roles:
            cells |= paper_lines.in_order(question, line.cells[len(paper_lines.BEFORE) :])
        learner = self._learner(question, place)
        task: Task = question.group.topic.task(learner.form)
        typed, decided = paper_lines.marks_of(question, cells), paper_lines.decided_of(question, cells)
        given = paper_lines.answers_of(question, cells)
        tasks = {how: task.by(how) for how in (DRAWN, CALCULATED)}
        found = {how: self._judged(tasks[how], how, given[how]) for how in tasks}
        self.unread += len([one for one in found.values() if one.reply is None and one.notes])
        replies = agreed({how: one.reply for how, one in found.items()})
        both = (given[DRAWN], given[CALCULATED])
        chosen = self.settled.get((place, question.number))
        if chosen is None or chosen.given != both:
            chosen = Choice(both)
        before = dict(_parts(question, replies, typed, {})[0])
        by_part = {key: before[key] for key, count in chosen.parts.items()
                   if key not in typed and _is_within(count, before.get(key))}  # fmt: skip
        marks, total = _parts(question, replies, typed, {key: chosen.parts[key] for key in by_part})
        if decided is None and _is_within(chosen.total, total):
            decided = chosen.total
        blank = _unanswered(question, replies, typed)
        mistakes = (*_mistakes(replies), *((NO_ANSWER,) if blank else ()))
        apart = () if summed(one for _, one in marks) == total else (words.NOT_TOGETHER,)
        remarks = (*_read_remarks(question, blank, found), *_remarks(tasks, replies, self.mark), *apart)
        return QuestionMarks(
            line.number, place, learner.name, question.number, both, marks, remarks, mistakes,
            total if decided is None else (decided, decided), None if decided is None else total, (*typed, *by_part),
            by_part,
        )  # fmt: skip

    def _learner(self, question: Question, place: int) -> Learner:
        """The problem of the learner in a place; problems are found in turn, and kept."""
        found = self.found.setdefault(question.number, [])
        turn = self.turns.setdefault(question.number, question.learners())
        while len(found) < place:
            following = next(turn)
            if following is not None:
                found.append(following)
        return found[place - 1]

    def _judged(self, task: Task, how: str, cell: str) -> ReadAnswer:
        """An answer judged; none of an empty cell."""
        form = {"answer": cell, "answer-how": how}
        return judged(task, form, on_paper=True) if cell.strip() else ReadAnswer(None, form)

    def table(self) -> bytes:
        """The marks as a table of text: numbers as numbers."""
        rows = [[*words.TABLE_HEAD[:5], *paper_words.PARTS.values(), *words.TABLE_HEAD[5:], words.DECIDED,
                 words.MARKED_HERE]]  # fmt: skip
        for one in self.results:
            marks = dict(one.marks)
            parts = [_written(marks[key]) if key in marks else "" for key in paper_words.PARTS]
            low, high = one.total
            here = {key: str(least) for key, (least, most) in one.marks if least == most and key not in one.by_hand}
            given = map(tables.answer, one.given)
            rows.append([
                str(one.place), one.name, str(one.question), *given, *parts, str(low), str(high),
                "; ".join(one.remarks), str(low) if one.chosen_from else "", paper_lines.marked_here(one.given, here),
            ])  # fmt: skip
        return tables.write(rows, self.mark).encode()

    def totals(self) -> dict[int, LearnerTotal]:
        """What each learner has so far, by place, in the order of names."""
        worth = {one.number: one.total for one in self.paper.questions}
        found: dict[int, list[QuestionMarks]] = {}
        for one in self.results:
            found.setdefault(one.place, []).append(one)
        totals = dict[int, LearnerTotal]()
        for place, marked in found.items():
            done = [one.question for one in marked]
            missing = tuple(number for number in worth if number not in done)
            of = part_marks.added(worth[number] for number in done)
            totals[place] = LearnerTotal(marked[0].name, summed(one.total for one in marked), of, missing)
        return totals

    def without_marks(self) -> list[str]:
        """The learners of whom no line was marked."""
        done = {one.place for one in self.results}
        places = [place for place in range(1, self.paper.learners + 1) if place not in done]
        return [words.learner(place, self.paper.name(place).whole) for place in places]

    def counted(self) -> tuple[tuple[str, int], ...]:
        """How many learners' answers each mistake could explain, by its short name, the commonest first."""
        counts: dict[str, int] = {}
        for one in self.results:
            for key in one.mistakes:
                counts[short(key)] = counts.get(short(key), 0) + 1
        return tuple(sorted(counts.items(), key=lambda pair: (-pair[1], pair[0])))

    def entry(self) -> dict[str, object]:
        """What the register keeps of this: each learner's marks by question, and the paper with its own day."""
        paper, day = self.paper, day_of(self.paper.texts["date"])
        marks = []
        for place, total in self.totals().items():
            own = [one for one in self.results if one.place == place]
            questions = [
                {"number": one.question, "low": one.total[0], "high": one.total[1],
                 "mistakes": list(dict.fromkeys(map(short, one.mistakes)))}
                for one in own
            ]  # fmt: skip
            told = dict.fromkeys(name for one in own for name in map(short, one.mistakes))
            low, high = total.marks
            marks.append({"place": place, "name": total.name, "low": low, "high": high, "mistakes": list(told),
                          "questions": questions})  # fmt: skip
        return {
            "paper": str(paper.code()), "title": paper.texts["title"], "group": paper.texts["group"],
            "of": paper.total, "date": paper.texts["date"], **({} if day is None else {"day": day}),
            "learners": paper.learners, "marks": marks,
            "questions": [{"number": one.number, "of": one.total} for one in paper.questions],
        }  # fmt: skip


def question_of(paper: QuestionPaper, cell: str) -> Question:
    """The question that a cell names; where there is one alone, none need be named. Raises ValueError."""
    questions = paper.questions
    text = "".join(sign for sign in cell if sign.isdigit())
    if not cell and len(questions) == 1:
        return questions[0]
    if not text.isascii() or not 0 < len(text) < 4 or not 1 <= int(text) <= len(questions):
        raise ValueError(words.no_question(cell, len(questions)))
    return questions[int(text) - 1]


def columns_of(lines: Sequence[TableLine]) -> tuple[str, ...]:
    """What the columns of a table are, by its head line; empty where it has none."""
    roles = tuple(paper_lines.role(cell) for cell in lines[0].cells) if lines else ()
    return roles if "question" in roles or "learner" in roles else ()


def lines_of(paper: QuestionPaper, lines: Sequence[TableLine]) -> tuple[tuple[str, ...], tuple[TableLine, ...]]:
    """What the columns of a table are (empty: they come in order), and its lines, each of one question: those of a row
    with several come one by one. Raises InputError."""
    if by_question := paper_columns.unfolded(paper, lines):
        return paper_columns.ROLES, by_question
    roles = columns_of(lines)
    return roles, tuple(lines[1:] if roles else lines)


def _is_within(count: int | None, marks: Range | None) -> bool:
    return count is not None and marks is not None and marks[0] <= count <= marks[1]


def _written(marks: Range) -> str:
    return str(marks[0]) if marks[0] == marks[1] else words.between(*marks)


def _unanswered(
    question: Question, replies: Mapping[str, AnswerJudgement | None], typed: Mapping[str, int]
) -> tuple[str, ...]:
    """What was left blank, an answer that is missing with no marks given for its parts: how it was to be found; "" for
    all that was asked."""
    parts = {DRAWN: paper_words.OF_DRAWING, CALCULATED: paper_words.OF_CALCULATION}
    asked = paper_lines.HOW[question.asks]
    blank = [how for how in asked if replies[how] is None and not any(key in typed for key in parts[how])]
    return ("",) if len(blank) == len(asked) else tuple(blank)


def _read_remarks(question: Question, blank: Sequence[str], found: Mapping[str, ReadAnswer]) -> tuple[str, ...]:
    """What is to be said of how answers were read, and of those that are missing."""
    notes = [words.of_way(how, note) for how, one in found.items() for note in one.notes]
    ways = paper_lines.HOW[question.asks] if notes and "" in blank else blank
    missing = [how for how in ways if not how or not found[how].notes]
    return (*(words.of_way(how, words.NO_ANSWER) if how else words.NO_ANSWER for how in missing), *notes)


def _parts(
    question: Question, replies: Mapping[str, AnswerJudgement | None], typed: Mapping[str, int],
    chosen: Mapping[str, int],
) -> tuple[tuple[tuple[str, Range], ...], Range]:
    """The marks of every part, and of all together: as a person gave them (``typed``) or chose them from what the
    answers say, else as these say."""
    found: dict[str, Range] = {}
    totals: list[Range] = []
    for how, keys, mark in (
        (DRAWN, paper_words.OF_DRAWING, drawing_marks), (CALCULATED, paper_words.OF_CALCULATION, calculation_marks),
    ):  # fmt: skip
        worth, reply = dict(question.parts(keys)), replies[how]
        options = mark(reply, worth) if reply is not None else (dict.fromkeys(worth, 0),)
        settled = [{part: typed.get(part, marks) for part, marks in one.items()}
                   for one in part_marks.narrowed(options, chosen)]  # fmt: skip
        found |= part_marks.spread(settled)
        totals.append(part_marks.total(settled))
    return tuple((key, found[key]) for key, _ in question.marks), summed(totals)


def _remark(task: Task, reply: AnswerJudgement, mark: str) -> str:
    """What an answer's marks rest on."""
    firsts = [cause.mistakes[0].key for cause in reply.marked.causes]
    others = [one.key for cause in reply.marked.causes for one in cause.mistakes[1:]]
    named = list(dict.fromkeys(map(short, (*firsts, *others))))
    return verdict_of(task, reply, words.could_be(named[:MOST_NAMED]), mark)


def _remarks(
    tasks: Mapping[str, Task], replies: Mapping[str, AnswerJudgement | None], mark: str
) -> tuple[str, ...]:
    told = ((how, _remark(tasks[how], reply, mark)) for how, reply in replies.items() if reply is not None)
    return tuple(words.of_way(how, remark) for how, remark in told if remark)


def _mistakes(replies: Mapping[str, AnswerJudgement | None]) -> tuple[str, ...]:
    """The likeliest mistake of each wrong answer; of one that is right but for its unit, that."""
    judged = [reply for reply in replies.values() if reply is not None and reply.marked.band != ACCEPT]
    named = [WRONG_UNIT if reply.unit_meant else reply.marked.causes[0].mistakes[0].key
             for reply in judged if reply.unit_meant or reply.marked.causes]  # fmt: skip
    return tuple(dict.fromkeys(named))


def marking_of(paper: QuestionPaper, text: str, settled: Settled | None = None) -> PaperMarking:
    """The marking of a pasted table. Raises InputError where there is nothing, or too much."""
    lines = tables.read(text, paper_lines.is_row)
    roles, lines = lines_of(paper, lines)
    if not lines:
        raise InputError(Fault("results", "", words.NOTHING))
    if len(lines) > MOST_LINES:
        raise InputError(Fault("results", "", mark_words.too_many(len(lines), MOST_LINES)))
    return PaperMarking(paper, lines, roles, settled or {})
