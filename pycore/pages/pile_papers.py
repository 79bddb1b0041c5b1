"""Question papers that the device keeps: which learner and question a sheet of a pile belongs to, and its marks."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from pycore.errors import Fault, InputError
from pycore.forms.fields import default_form
from pycore.pages.question_paper import FIELDS, Question, QuestionPaper, read_paper
from pycore.practice import codes
from pycore.practice.class_set import set_of
from pycore.practice.codes import CodeError, PaperCode
from pycore.practice.generator import NoProblemError
from pycore.practice.marking import ACCEPT, LOOK
from pycore.practice.part_marks import Range, added
from pycore.words import pile as words
from pycore.words.question_paper import OF_DRAWING

MOST_PAPERS = 40


@dataclass(frozen=True, slots=True)
class PaperPlace:
    """A sheet of a question paper: the paper's number among those of the device, the question, the learner's place and
    name, the sheet's form, the code by which its row is known, the class set that has the same problems ("": none)."""

    paper: int
    question: Question
    place: int
    name: str
    form: Mapping[str, str]
    code: str
    group: str


@dataclass(frozen=True, slots=True)
class KeptPaper:
    """A question paper of the device, and its sheets that are drawn on, by their codes."""

    paper: QuestionPaper
    places: Mapping[str, PaperPlace]


def kept_papers(listed: object) -> tuple[KeptPaper, ...]:
    """Return the papers of a request that can be read, each with its sheets."""
    found = []
    for number, one in enumerate(listed[:MOST_PAPERS] if isinstance(listed, list) else ()):
        form, roll = (one.get("form"), one.get("roll")) if isinstance(one, dict) else (None, None)
        if not isinstance(form, dict):
            continue
        pairs = tuple((str(key), text) for key, text in sorted(form.items()) if isinstance(text, str))
        try:
            found.append(_kept(number, pairs, roll if isinstance(roll, str) else ""))
        except (InputError, NoProblemError):
            continue
    return tuple(found)


@lru_cache(maxsize=MOST_PAPERS)
def _kept(number: int, pairs: tuple[tuple[str, str], ...], roll: str) -> KeptPaper:
    paper = read_paper(default_form(FIELDS) | dict(pairs), roll)
    places: dict[str, PaperPlace] = {}
    for question in paper.questions:
        if not question.is_drawn:
            continue
        for learner in question.learners():
            if learner is None:
                continue
            own = question.own is not None
            # A question with values of its own has one sheet for all: the paper's code says whose it is.
            code = sheet_code(paper, learner.place, question) if own else str(learner.code)
            form = {**learner.form, "code": "" if own else str(learner.code)}
            name, group = paper.name(learner.place).whole, "" if own else str(set_of(learner.code))
            places[code] = PaperPlace(number, question, learner.place, name, form, code, group)
    return KeptPaper(paper, places)


def sheet_code(paper: QuestionPaper, place: int, question: Question) -> str:
    """Return what a sheet that shows the paper's code alone is called: the code, and which question."""
    return f"{paper.code(place)}/{question.number}"


def paper_place(papers: Sequence[KeptPaper], text: str) -> PaperPlace | None:
    """Return the sheet that the code of a question paper and a question behind it name; None for any other text.

    Raises InputError where the paper is not on this device, or it is not said which question.
    """
    typed, _, question = text.partition("/")
    try:
        code = codes.read_any(typed) if "#" not in text else None
    except CodeError:
        return None
    if not isinstance(code, PaperCode):
        return None
    kept = next((one for one in papers if one.paper.fingerprint == code.fingerprint), None)
    if kept is None:
        raise InputError(Fault("code", text, words.NO_SUCH_PAPER))
    drawn = [one for one in kept.places.values() if one.place == code.number]
    named = [one for one in drawn if str(one.question.number) == question.strip()] if question.strip() else drawn
    if len(named) != 1:
        numbers = [one.question.number for one in drawn]
        raise InputError(Fault("code", text, words.which_question(str(code), numbers)))
    return named[0]


def paper_marks_of(worth: Mapping[str, int], by_part: Sequence[str]) -> Range:
    """Return the marks of a drawing from and to: a part that is to be looked at may have its marks or not."""
    bands = dict(zip(OF_DRAWING, by_part, strict=False))
    sure = added(marks for part, marks in worth.items() if bands.get(part) == ACCEPT)
    return sure, sure + added(marks for part, marks in worth.items() if bands.get(part, LOOK) == LOOK)
