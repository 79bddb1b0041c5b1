"""The making of a question paper's files, piece by piece: the learners' papers, and the mark scheme."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from pycore.drawing import Page
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.forms.title_block import PLACE_CAPITALS, PLACE_WIDTH
from pycore.geometry import Point
from pycore.pages import class_key, question_paper_scheme
from pycore.pages.class_job import Job, Result
from pycore.pages.class_set import shortened
from pycore.pages.question_paper import Question, QuestionPaper
from pycore.pages.question_paper_scheme import Answered
from pycore.practice.class_set import Learner
from pycore.practice.codes import PaperCode
from pycore.practice.task import Task
from pycore.sheet import exam_pages, ledger
from pycore.sheet.exam_pages import FrontPage, QuestionPage
from pycore.sheet.kinds import OVERLAY, PROBLEM, TWO
from pycore.sheet.sheet_text import Cell
from pycore.sheet.title_block import LEAST_TYPED, lower_cells
from pycore.sums.exam_question import ExamQuestion, exam_question
from pycore.words import key as key_words
from pycore.words import question_paper as words

PAPERS, TABLES, OVERLAYS = 0, 0, 1
"""The parts of the two files, in their order."""


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
        (words.QUESTION, words.MARKS, words.MARKED), rows, (words.TOTAL, str(paper.total)), words.MARKER, foot,
    )  # fmt: skip


def _parts(question: Question, asked: ExamQuestion) -> tuple[str, ...]:
    """What a learner does, with the marks for it."""
    drawn, calculated = question.parts(words.OF_DRAWING), question.parts(words.OF_CALCULATION)
    parts = (words.to_draw(asked.question, question.number, drawn),) if drawn else ()
    return (*parts, words.to_calculate(asked.asked, calculated)) if calculated else parts


def _has_page(question: Question, task: Task) -> bool:
    """Whether a question has a page of its own before its sheet: for working, for what stands before it, or because
    something else is calculated than what the sheet has cells for."""
    calculated = bool(question.parts(words.OF_CALCULATION))
    apart = calculated and task.drawing is not None
    return question.working != "none" or not question.is_drawn or bool(question.before) or apart


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

    def front_page(self, place: int, pages: int = 0) -> Page:
        """A learner's front page, the first of so many pages (0: not counted)."""
        paper, foot = self.paper, self._foot(place, min(pages, 1), pages)
        return exam_pages.front_page(paper.paper, _front(paper, place, foot), foot)

    def papers(self, places: Sequence[int]) -> Iterator[tuple[str, float]]:
        """The papers of the learners in these places."""
        paper, made = self.paper, 0
        turns = [question.learners() for question in paper.questions]
        count = 1 + 2 * len(turns)
        for place in range(1, places[-1] + 1):
            learners = [_next(turn) for turn in turns]
            said = words.working(place, paper.learners)
            if place not in places:
                yield said, 0.0
                continue
            pages: list[Page] = []
            # Each page says how many there are: where it is not as many as before, they are made once more.
            while len(pages) != count:
                count, pages = len(pages) or count, []
                for page in self._paper(place, learners, count):
                    pages.append(page)
                    yield said, made / len(places)
            for page in pages:
                self.writer.add(page, PAPERS)
                yield said, made / len(places)
            made += 1

    def _paper(self, place: int, learners: Sequence[Learner], count: int) -> Iterator[Page]:
        """One learner's pages, which are so many."""
        yield self.front_page(place, count)
        number = 2
        for question, learner in zip(self.paper.questions, learners, strict=True):
            for page in self._pages(question, learner, number, count):
                number += 1
                yield page

    def _foot(self, place: int, page: int = 0, pages: int = 0) -> str:
        return words.which(str(self.code(place)), place, self.paper.learners, page, pages)

    def _opening(self, question: Question, learner: Learner, **place: Any) -> ReopenInfo:
        """How a sheet of the paper is opened again: by the code of its problem, or by that of the paper alone;
        ``place``: fields of ``SetPlace`` that differ."""
        paper, group = self.paper, question.group
        by_problem = paper.codes == "problem" and question.own is None
        code = str(learner.code) if by_problem else str(self.code(learner.place))
        begun = learner.form.get("start") == TWO
        issue = SetPlace(
            code, learner.place, paper.learners, any_method=question.any_method,
            own_scale=group.chosen["scale"] == "open" and not begun, question=words.question(question.number),
        )  # fmt: skip
        base = f"{self.root}{group.topic.slug}/" if self.root and by_problem else ""
        return ReopenInfo(base, by_problem, replace(issue, **place), paper.letters)

    def _pages(self, question: Question, learner: Learner, number: int, count: int) -> Iterator[Page]:
        """A learner's pages of one question, the first with this number of so many: the question with room for working,
        then the sheet for the drawing."""
        page = question.group.topic
        case = page.case({**learner.form, **self._block()})
        task: Task = page.task_of_case(case)
        apart = _has_page(question, task)
        if apart:
            yield self._question_page(question, learner, case, task, self._foot(learner.place, number, count))
            number += 1
        if question.is_drawn:
            here = bool(question.parts(words.OF_CALCULATION)) and not apart
            opening = self._opening(question, learner, page=number, pages=count, calculated=here)
            for issued in page.issued_of(case, opening, (PROBLEM,)):
                yield from issued if isinstance(issued, tuple) else (issued,)

    def _block(self) -> dict[str, str]:
        """What the sheets' title blocks say of the whole paper, as it fits them."""
        paper, texts = self.paper, self.paper.texts
        _, group, date = lower_cells(paper.paper)
        return {
            "place": shortened(texts["college"], PLACE_WIDTH, PLACE_CAPITALS),
            "group": shortened(texts["group"], group, LEAST_TYPED),
            "date": shortened(texts["date"], date, LEAST_TYPED),
        }

    def _question_page(self, question: Question, learner: Learner, case: Any, task: Task, foot: str) -> Page:
        opening = self._opening(question, learner)
        any_method = bool(opening.issue and opening.issue.any_method)
        asked = exam_question(case, case.sheet_plan(), task, any_method=any_method, drawn=question.is_drawn)
        content = QuestionPage(
            f"{words.question(question.number)}: {question.group.topic.title}", words.marks(question.total),
            tuple(sentence for sentence in (question.before, *asked.given) if sentence),
            _parts(question, asked),
            question.working if question.working != "none" else "", words.ROOM_FOR_WORKING,
            words.ANSWER if question.parts(words.OF_CALCULATION) else "", foot,
        )  # fmt: skip
        return exam_pages.question_page(self.paper.paper, content, foot)

    def scheme(self) -> Iterator[tuple[str, float]]:
        """The mark scheme: marks, each question's answers, one worked solution and usual mistakes, then the overlays.
        """
        paper = self.paper
        ledgers = [question_paper_scheme.overview(paper)]
        for question in paper.questions:
            found: list[Answered] = []
            turn = question.learners()
            for _ in range(1 if question.own is not None else paper.learners):
                learner = _next(turn)
                if question.own is not None:
                    learner = replace(learner, name=words.ALL_LEARNERS, form={**learner.form, "who": ""})
                found.append((learner, question.group.topic.task(learner.form)))
                self._overlay(question, learner)
                yield words.scheme_working(question.number), 0.9 * question.number / len(paper.questions)
            ledgers += question_paper_scheme.tables(paper, question, found)
            yield words.scheme_working(question.number), 0.9 * question.number / len(paper.questions)
        count = ledger.page_count(ledgers, paper.paper)
        numbers = [key_words.page_of(index + 1, count) for index in range(count)]
        for page in ledger.pages(ledgers, paper.paper, numbers, words.scheme_title(paper.texts["title"])):
            self.writer.add(page, TABLES)
            yield words.scheme_working(len(paper.questions)), 0.95

    def _overlay(self, question: Question, learner: Learner) -> None:
        if question.is_drawn and self.paper.overlays:
            page = question.group.topic
            whose = {} if question.own is None else {"code": str(self.code(0)), "of": 0}
            opening = self._opening(question, learner, **whose)
            for issued in page.issued_of(page.case(learner.form), opening, (OVERLAY,)):
                self.writer.add(issued, OVERLAYS)


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

    return Job(making.papers(places), result, making.writer.take)


def scheme_job(paper: QuestionPaper, correction: Point) -> Job:
    """The making of a paper's mark scheme."""
    from pycore.writers.pdf import Writer

    making = _Making(paper, paper.fingerprint, "", Writer(correction=correction))

    def result() -> Result:
        data: bytes = making.writer.finish(words.scheme_title(paper.texts["title"]), subject=words.TITLE)
        name = words.file_name(str(paper.code()), "mark-scheme")
        counts = making.writer.pages_of(TABLES), making.writer.pages_of(OVERLAYS)
        told = words.saved_scheme(*class_key.ranges_of(counts))
        return {"filename": name, "type": "application/pdf", "told": told}, data

    return Job(making.scheme(), result)
