"""The region ``marked``: what the page says of an answer; and the reply to a request for it."""

from collections.abc import Mapping
from typing import Any

from pycore.errors import InputError
from pycore.forms import links
from pycore.forms.common import OWN_PAPER_FIELDS
from pycore.forms.fields import VERSION
from pycore.pages.codes import another
from pycore.practice import answers
from pycore.practice.judgement_text import JudgementText, tell
from pycore.practice.limits import read_limits
from pycore.practice.marking import ACCEPT, WRONG
from pycore.practice.task import DRAWN, Limits, StepReference, Task
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.own_arrow import arrows_html
from pycore.render.phrase import phrase_html
from pycore.sums.page import SumPage
from pycore.words import checking
from pycore.words import marking as words


def limits_of(form: Mapping[str, str]) -> Limits:
    """The lecturer's own limits, if any are typed. Raises InputError."""
    limits, faults = read_limits(form, lambda one, text: words.bad_limit(text, one.unit, *one.bounds))
    if faults:
        raise InputError(*faults)
    return limits


SIGNS = {
    "accept": "M3 13L9.5 19.5L21 5",
    "look": "M10 3.5A6.5 6.5 0 1 0 10 16.5A6.5 6.5 0 1 0 10 3.5M14.8 14.8L21 21",
    "wrong": "M5 5L19 19M19 5L5 19",
}
"""A tick, a lens, a cross: what tells the bands apart besides their words, and without colour."""


def _sign(band: str) -> Markup:
    marks: Marks = {"class": "sign", "viewBox": "0 0 24 24", "width": 28, "height": 28, "aria-hidden": "true",
                    "focusable": "false"}  # fmt: skip
    return h("svg", marks, h("path", {"d": SIGNS[band]}))


def _way(where: StepReference | None, link: str, *, workings: bool) -> Markup | None:
    """The way to the step, or to the working, that a cause belongs to."""
    reveals = "reveals" if where is not None and where.reveals else ""
    if where is None or not (workings or (where.step and not reveals)):
        return None
    if where.step:
        place = f"{link}&view=lesson&step={where.step}&ask=1"
        marks: Marks = {"href": place, "data-to-step": where.step, "class": reveals or None}
        return h("p", {"class": f"way {reveals}".strip()}, h("a", marks, checking.step(where.listed)))
    button = h("button", {"type": "button", "class": "go", "data-to-working": where.working}, checking.WHERE_WORKING)
    return h("p", {"class": "way reveals"}, button)


def _hint(where: StepReference | None) -> Markup | None:
    """The move itself, folded: the hint between where to look and the move done."""
    if where is None or not where.sentence:
        return None
    says = h("p", None, phrase_html(words.step_says(where.listed, where.sentence)))
    return h("details", {"class": "hint"}, h("summary", None, words.HINT_MOVE), says)


def marked_html(
    judgement: JudgementText, link: str, *, workings: bool = True, picture: Markup | None = None,
    more: Markup | None = None,
) -> Markup:
    """A judgement as the page shows it; ``link`` opens the problem, ``workings`` whether its page is this one.

    ``picture``: the learner's arrow beside the right one; ``more``: the way to one more problem.
    """
    lines = [h("p", None, phrase_html(line)) for line in judgement.lines]
    causes = None
    if judgement.causes:
        ways = [_way(where, link, workings=workings) for where in judgement.places]
        items = [
            h("li", None, phrase_html(cause), _hint(where), way)
            for cause, where, way in zip(judgement.causes, judgement.places, ways, strict=True)
        ]
        introduction = h("p", None, phrase_html(judgement.introduction)) if judgement.introduction else None
        causes = join(introduction, h("ul", None, items))
    headline = h("p", {"class": "verdict"}, _sign(judgement.band), h("span", None, phrase_html(judgement.headline)))
    return h("div", {"class": "marked", "data-band": judgement.band}, headline, lines, picture, causes, more)


def link_of(task: Task) -> str:
    """The address of a problem's page, from any other page beside it."""
    return f"../{task.slug}/#{links.fragment(task.link)}"


def one_more(page: SumPage[Any], form: Mapping[str, str]) -> Markup | None:
    """The way to one more problem of the same kind, which opens with its answer held back."""
    following = another(page, form)
    if following is None:
        return None
    paper = [(name, form[name]) for name in OWN_PAPER_FIELDS if form.get(name)]
    pairs = links.fragment([("v", VERSION), ("code", str(following.code)), *paper])
    return h("p", {"class": "way"}, h("a", {"href": f"../{following.page.slug}/#{pairs}"}, words.ONE_MORE))


def numbers_only(form: Mapping[str, str]) -> bool:
    """Whether an answer says that it was read off a drawing, which nobody sees."""
    return form.get("answer-how") == DRAWN


def reply(
    page: SumPage[Any], problem: Mapping[str, str], form: Mapping[str, str], *, shown: bool,
    drawing_judged: bool = False,
) -> dict[str, Any]:
    """The reply to a request that marks an answer to a page's problem; ``shown``: whether the right answer is in view;
    ``drawing_judged``: the drawing has been judged line by line. Raises InputError for what cannot be read."""
    task = page.task(problem)
    judged = answers.judge(task, form, limits_of(form))
    unseen = numbers_only(form) and not drawing_judged
    judgement = tell(task, judged, page.places(problem), numbers_only=unseen)
    wrong = judgement.band == WRONG
    picture = arrows_html(page.case(problem).picture, task, judged) if wrong and shown else None
    # Whoever has solved a problem by its code goes on; a page's own values are no such problem.
    solved = judgement.band == ACCEPT and bool(form.get("answer", "").strip())  # and not a value on the way alone
    goes_on = wrong or (solved and bool(problem.get("code")))
    marked = marked_html(judgement, link_of(task), picture=picture, more=one_more(page, problem) if goes_on else None)
    return {
        "ok": True,
        "band": judgement.band,
        "solved": solved,
        "regions": {"marked": str(marked)},
        "announce": words.announced(judgement.phrases),
    }
