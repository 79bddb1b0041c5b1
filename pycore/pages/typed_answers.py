"""Answers as a class types them: what a person would read in them is read, and what nobody can read is no answer.

Nobody can ask the learner again, so that an answer never takes its learner out of the totals.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore.errors import InputError
from pycore.practice import answers
from pycore.practice.answers import AnswerJudgement
from pycore.practice.task import NO_LIMITS, Limits, Task
from pycore.practice.typed import parted
from pycore.words import marks as words

NO_ANSWER = "no-answer"
"""Counted with the mistakes, by its key in words/short_mistakes.py."""
_ABOUT = re.compile(
    r"(?:(?<=\bat )|(?<=@)|^)\s*(?:about|abt\.?|around|approximately|approx\.?|roughly|circa|ca\.?|c\.|~|≈)"
    r"\s*(?=[-−–+\d.,])",
    re.IGNORECASE,
)
_ABOUT_BEHIND = re.compile(r"\s*\(?\b(?:about|approximately|approx\.?|roughly|circa|ca\.?)\)?\s*$", re.IGNORECASE)
_NAMED = re.compile(r"^\s*[A-Za-z][A-Za-z0-9_]{0,2}\s*=\s*(?=[-−–+\d.,~≈ac])")
_DASH = re.compile(r"–(?=\s*[\d.,])")
_MINUS = re.compile(r"^\s*[-−–]\s*(?=[\d.,])")


@dataclass(frozen=True, slots=True)
class ReadAnswer:
    """An answer judged (None: there is none), what was read as the checker takes it, and what is to be said of the
    reading."""

    reply: AnswerJudgement | None
    form: Mapping[str, str]
    notes: tuple[str, ...] = ()


def _plainly(form: Mapping[str, str]) -> tuple[dict[str, str], list[str]]:
    """An answer without "about", without its name ("I = 11.6 A") and without a minus before a size, and what is to be
    said of that. A dash before a number is a minus: word processors write one."""
    plain, notes = dict(form), list[str]()
    for field in ("answer", "answer-first"):
        typed = form.get(field, "")
        exact = _ABOUT_BEHIND.sub("", _ABOUT.sub("", _NAMED.sub("", typed)))
        if exact != typed:
            notes.append(words.read_as(typed.strip(), exact))
        plain[field] = _MINUS.sub("", exact)
        if plain[field] != exact:
            notes.append(words.WRONG_SIGN)
        plain[field] = _DASH.sub("−", plain[field])
    return plain, notes


def _less(form: Mapping[str, str]) -> Iterator[tuple[Mapping[str, str], tuple[str, ...]]]:
    """An answer, then what is left of it without a part that cannot be read, and these parts."""
    yield form, ()
    size, behind = parted(form["answer"])
    angle, first = form.get("answer-angle", "") or behind, form["answer-first"]
    no_angle = {"answer": size, "answer-angle": "", "answer-side": ""}
    no_first = {"answer-first": "", "answer-first-angle": "", "answer-first-side": ""}
    if angle:
        yield {**form, **no_angle}, (angle,)
    if first:
        yield {**form, **no_first}, (first,)
    if angle and first:
        yield {**form, **no_angle, **no_first}, (angle, first)


def judged(
    task: Task, form: Mapping[str, str], limits: Limits = NO_LIMITS, *, on_paper: bool = False
) -> ReadAnswer:
    """An answer of a class judged as ``answers.judge`` does. Never raises for an answer that cannot be read: that is no
    answer, and is said."""
    plain, notes = _plainly(form)
    for left, unread in _less(plain):
        try:
            reply = answers.judge(task, left, limits, on_paper=on_paper, is_final=True)
        except InputError:
            continue
        return ReadAnswer(reply, left, (*notes, *map(words.not_read, unread)))
    return ReadAnswer(None, plain, (words.read_as_nothing(form["answer"].strip()),))
