"""The making of a question paper's files, piece by piece: the learners' papers, and the mark scheme."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from pycore.drawing import Page
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.geometry import Point
from pycore.pages import class_key
from pycore.pages.class_job import Job, Result, row_for
from pycore.pages.class_key import KeyHead
from pycore.pages.question_paper import Question, QuestionPaper
from pycore.practice.class_set import Learner
from pycore.practice.codes import PaperCode
from pycore.practice.key import KeyRow
from pycore.practice.task import CALCULATED, DRAWN
from pycore.sheet import exam_pages, ledger
from pycore.sheet.exam_pages import FrontPage, QuestionPage
from pycore.sheet.kinds import OVERLAY, PROBLEM, TWO
from pycore.sheet.ledger import ColumnHeading, Ledger
from pycore.sheet.sheet_text import Cell
from pycore.sums.exam_question import exam_question
from pycore.words import key as key_words
from pycore.words import plain
from pycore.words import question_paper as words
from pycore.words.sheet import FOOT

PAPERS, TABLES, OVERLAYS = 0, 0, 1
"""The parts of the two files, in their order."""
WAYS = {"both": (DRAWN, CALCULATED), "drawing": (DRAWN,), "calculation": (CALCULATED,)}


def _next(learners: Iterator[Learner | None]) -> Learner:
    """The next learner's problem; problems that were passed over are skipped."""
    return next(one for one in learners if one is not None)


def _front(paper: QuestionPaper, place: int, foot: str) -> FrontPage:
    time = words.minutes(paper.minutes) if paper.minutes else ""
    typed = [(words.GROUP, paper.texts["group"]), (words.DATE, paper.texts["date"])]
    name = paper.name(place).printed
    entries: list[Cell] = [(words.NAME, paper.letters.set(name) or name), *typed]
    entries += [(words.TIME, time)] if time else []
    rows = tuple((f"{words.question(one.number)}: {one.group.topic.title}", str(one.total)) for one in paper.questions)
    return FrontPage(
        paper.texts["college"], paper.texts["title"], tuple(entries), paper.texts["instructions"],
        (words.QUESTION, words.MARKS, words.MARKED), rows, (words.TOTAL, str(paper.total)), foot,
    )  # fmt: skip


def _parts(question: Question, symbol: str, *, angled: bool) -> tuple[str, ...]:
    """What a learner does, with the marks for it."""
    drawn, calculated = question.parts(words.OF_DRAWING), question.parts(words.OF_CALCULATION)
    parts = (words.to_draw(question.number, drawn),) if drawn else ()
    return (*parts, words.to_calculate(symbol, calculated, angled=angled)) if calculated else parts


@dataclass(slots=True)
class _Making:
    """Papers under way: what is asked for and its fingerprint, which takes every own case to find, the address of the
    site, and what the pages are written into."""

    paper: QuestionPaper
    fingerprint: int
    root: str
    writer: Any

    def code(self, place: int) -> PaperCode:
        """The code of the paper of the learner in a place."""
        return PaperCode(self.fingerprint, place)

    def front_page(self, place: int) -> Page:
        """A learner's front page."""
        paper, foot = self.paper, self._foot(place)
        return exam_pages.front_page(paper.paper, _front(paper, place, foot), foot)

    def papers(self, places: Sequence[int]) -> Iterator[tuple[str, float]]:
        """The papers of the learners in these places."""
        paper, made = self.paper, 0
        turns = [question.learners() for question in paper.questions]
        for place in range(1, places[-1] + 1):
            learners = [_next(turn) for turn in turns]
            if place not in places:
                yield words.working(place, paper.learners), 0.0
                continue
            self.writer.add(self.front_page(place), PAPERS)
            for question, learner in zip(paper.questions, learners, strict=True):
                for page in self._pages(question, learner):
                    self.writer.add(page, PAPERS)
                    yield words.working(place, paper.learners), made / len(places)
            made += 1

    def _foot(self, place: int) -> str:
        return words.which(str(self.code(place)), place, self.paper.learners)

    def _opening(self, question: Question, learner: Learner) -> ReopenInfo:
        """How a sheet of the paper is opened again: by the code of its problem, or by that of the paper alone."""
        paper, group = self.paper, question.group
        by_problem = paper.codes == "problem" and question.own is None
        code = str(learner.code) if by_problem else str(self.code(learner.place))
        begun = learner.form.get("start") == TWO
        issue = SetPlace(
            code, learner.place, paper.learners, any_method=group.method == "any" and question.own is None,
            own_scale=group.chosen["scale"] == "open" and not begun, question=words.question(question.number),
        )  # fmt: skip
        base = f"{self.root}{group.topic.slug}/" if self.root and by_problem else ""
        return ReopenInfo(base, by_problem, issue, paper.letters)

    def _pages(self, question: Question, learner: Learner) -> Iterator[Any]:
        """A learner's pages of one question: the question with room for working, then the sheet for the drawing."""
        page, opening = question.group.topic, self._opening(question, learner)
        case = page.case(learner.form)
        if question.working != "none" or not question.is_drawn or question.before:
            yield self._question_page(question, learner, case, opening)
        if question.is_drawn:
            for issued in page.issued_of(case, opening, (PROBLEM,)):
                yield from issued if isinstance(issued, tuple) else (issued,)

    def _question_page(self, question: Question, learner: Learner, case: Any, opening: ReopenInfo) -> Any:
        any_method = bool(opening.issue and opening.issue.any_method)
        asked = exam_question(case, case.sheet_plan(), any_method=any_method)
        task = question.group.topic.task_of_case(case)
        sentences = asked.given if not question.is_drawn else (asked.question, *asked.given)
        foot = self._foot(learner.place)
        content = QuestionPage(
            f"{words.question(question.number)}: {question.group.topic.title}", words.marks(question.total),
            tuple(sentence for sentence in (question.before, *sentences) if sentence),
            _parts(question, plain(task.symbol), angled=task.angled),
            question.working if question.working != "none" else "", words.ROOM_FOR_WORKING,
            words.ANSWER if question.parts(words.OF_CALCULATION) else "", foot,
        )  # fmt: skip
        return exam_pages.question_page(self.paper.paper, content, foot)

    def scheme(self) -> Iterator[tuple[str, float]]:
        """The mark scheme: marks, each question's answers and usual mistakes, then the overlays."""
        paper = self.paper
        ledgers = [_overview(paper)]
        for question in paper.questions:
            rows = list[KeyRow]()
            turn = question.learners()
            for _ in range(1 if question.own is not None else paper.learners):
                learner = _next(turn)
                row = row_for(question.group, learner)
                rows.append(replace(row, code=str(paper.code())) if question.own is not None else row)
                self._overlay(question, learner)
                yield words.scheme_working(question.number), 0.9 * question.number / len(paper.questions)
            ledgers += class_key.tables_of(_head(paper, question), rows, WAYS[question.asks])
        count = ledger.page_count(ledgers, paper.paper)
        numbers = [key_words.page_of(index + 1, count) for index in range(count)]
        for page in ledger.pages(ledgers, paper.paper, numbers, words.scheme_title(paper.texts["title"])):
            self.writer.add(page, TABLES)
            yield words.scheme_working(len(paper.questions)), 0.95

    def _overlay(self, question: Question, learner: Learner) -> None:
        if question.is_drawn and self.paper.overlays:
            page = question.group.topic
            for issued in page.issued_of(page.case(learner.form), self._opening(question, learner), (OVERLAY,)):
                self.writer.add(issued, OVERLAYS)


def _overview(paper: QuestionPaper) -> Ledger:
    """The marks of each question by part, and for what they are given."""
    asked = [key for key in words.PARTS if any(key in dict(one.marks) for one in paper.questions)]
    heads = (ColumnHeading((words.QUESTION,), "start"), *(ColumnHeading((words.PARTS[key],)) for key in asked),
             ColumnHeading((words.TOTAL,)))  # fmt: skip
    rows = [
        ((f"{one.number}: {one.group.topic.title}",),
         *((str(dict(one.marks).get(key, "")),) for key in asked), (str(one.total),))
        for one in paper.questions
    ]  # fmt: skip
    rows.append(((words.TOTAL,), *(("",) for _ in asked), (str(paper.total),)))
    notes = (*(words.part_line(key) for key in asked), words.FOLLOW_THROUGH)
    return Ledger(words.scheme_title(paper.texts["title"]), str(paper.code()), notes, (), heads, rows, FOOT)


def _head(paper: QuestionPaper, question: Question) -> KeyHead:
    """What stands over the answers to a question."""
    title = words.scheme_question(question.number, question.group.topic.title, question.total)
    notes = (words.parts_sentence(question.marks),)
    about = words.CODES_OPEN if question.own is None else words.SAME_FOR_ALL
    return KeyHead(title, str(paper.code()), (*notes, about), paper.paper, paper.letters)


def first_page(paper: QuestionPaper) -> Page:
    """The front page of the first learner's paper."""
    return _Making(paper, paper.fingerprint, "", None).front_page(1)


def papers_job(paper: QuestionPaper, places: Sequence[int], root: str, correction: Point) -> Job:
    """The making of the papers of the learners in these places; ``root``: the site's address, "" if unknown."""
    # Only papers that are made need the writer; the form's page need not wait for its import.
    from pycore.writers.pdf import Writer

    making = _Making(paper, paper.fingerprint, root, Writer(correction=correction))
    code = str(paper.code(places[0] if len(places) == 1 else 0))

    def result() -> Result:
        data: bytes = making.writer.finish(paper.texts["title"], subject=words.TITLE)
        name = words.file_name(code, "question-paper")
        told = {"told": words.saved(len(places)), "code": str(paper.code())}
        return {"filename": name, "type": "application/pdf", **told}, data

    return Job(making.papers(places), result)


def scheme_job(paper: QuestionPaper, correction: Point) -> Job:
    """The making of a paper's mark scheme."""
    from pycore.writers.pdf import Writer

    making = _Making(paper, paper.fingerprint, "", Writer(correction=correction))

    def result() -> Result:
        data: bytes = making.writer.finish(words.scheme_title(paper.texts["title"]), subject=words.TITLE)
        name = words.file_name(str(paper.code()), "mark-scheme")
        return {"filename": name, "type": "application/pdf", "told": words.SAVED_SCHEME}, data

    return Job(making.scheme(), result)
