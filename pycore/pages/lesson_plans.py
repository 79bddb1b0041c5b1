"""Lesson plans made of their data and of what the topic's own page says of its example."""

from collections.abc import Callable, Iterable, Mapping
from typing import Protocol

from pycore.calculators import links
from pycore.calculators.interface import Answer, Field, Grid, Paragraph, default_form
from pycore.pages.reading import ReadBlock, ReadingPage, Section, Steps, Ways
from pycore.words import Phrase, mistakes, plain, say
from pycore.words import lesson_plans as words
from pycore.words.lesson_plans import PLANS, Handout, LessonPlan


class Topic(Protocol):
    """What a lesson plan needs of a calculator."""

    @property
    def slug(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def fields(self) -> tuple[Field, ...]: ...
    @property
    def cautions(self) -> Iterable[Phrase | str]: ...
    def answer(self, form: Mapping[str, str], parts: tuple[str, ...]) -> Answer: ...


def _said(answer: Answer) -> dict[str, str]:
    """What the page says of its example, for the braces of a plan."""
    texts = {output.name: f"{output.text} {output.unit}".strip() for output in answer.outputs}
    return {
        "values": plain(answer.given),
        "answer": texts[answer.outputs[0].name],
        "angle": plain(answer.summary[0]),
        "length": next(text for name, text in texts.items() if name.endswith("length")),
        "scale": texts["scale"],
        "tolerance": texts["tolerance"].partition(" ")[0].partition("\u00a0")[0],
    }


def _filled(text: str, said: Mapping[str, str]) -> Phrase:
    return say(text, **said)


def _steps(items: Iterable[str], said: Mapping[str, str]) -> Steps:
    return Steps(tuple(_filled(item, said) for item in items))


def _address(handout: Handout, topic: Topic, answer: Answer) -> str:
    """The address of a handout from the page of plans, with the example's values and every choice resolved."""
    fields = {field.name for field in topic.fields}
    own = dict(answer.link) if handout.slug == topic.slug else {"v": links.VERSION} if handout.values else {}
    pairs = {**own, **dict(handout.values)}
    ordered = [pair for pair in pairs.items() if pair[0] in fields or pair[0] not in own] if own else []
    version = [pair for pair in ordered if pair[0] == "v"] or ([("v", links.VERSION)] if ordered else [])
    rest = [pair for pair in ordered if pair[0] != "v"]
    return f"../{handout.slug}/" + (f"#{links.fragment([*version, *rest])}" if rest else "")


def _ways(handouts: tuple[Handout, ...], topic: Topic, answer: Answer) -> Ways:
    return Ways(tuple((handout.name, _address(handout, topic, answer)) for handout in handouts))


LINES = {"a": "a line", "b": "another"}


def _listen(plan: LessonPlan) -> Steps:
    """The catalogue's words for the commonest mistakes, and where to look."""
    made = []
    for key in plan.listen:
        name, look = mistakes.NAMES[key]
        told = say(name, **LINES)
        made.append((_capital(plain(told)) + ". ", plain(say(look, a="it", b="the other"))))
    return Steps(tuple(made))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _plan_sections(plan: LessonPlan, topic: Topic, first: bool) -> tuple[Section, ...]:
    answer = topic.answer(default_form(topic.fields), ("answer",))
    said = _said(answer)
    minutes = _minutes(plan)
    made = [Section((words.topic_heading(topic.title, minutes),), (Paragraph(_filled(plan.aim, said)),), not first)]
    made += [Section((words.part_heading(part.name, part.minutes),), (_steps(part.does, said),)) for part in plan.parts]
    told = ((caution,) if isinstance(caution, str) else caution for caution in topic.cautions)
    cautions = tuple(caution for caution in told if words.BODY not in plain(caution))
    made += [
        Section(say(words.LISTEN), (_listen(plan),)),
        Section(say(words.PRINTS), (_ways(plan.handouts, topic, answer),)),
        Section(say(words.CARE), (Steps(cautions),)),
        Section(say(words.METHOD), (Paragraph(say(words.ACCEPTED)),)),
    ]
    return tuple(made)


def _minutes(plan: LessonPlan) -> int:
    whole = 0
    for part in plan.parts:
        whole += part.minutes
    return whole


def _cover_sections(plan: LessonPlan, topic: Topic, first: bool) -> tuple[Section, ...]:
    answer = topic.answer(default_form(topic.fields), ("answer",))
    said = _said(answer)
    key = tuple(((name,), (said[which],)) for name, which in words.KEY_ROWS)
    blocks: tuple[ReadBlock, ...] = (
        Grid(words.KEY_HEAD, key),
        Paragraph(_filled(words.KEY_LIMIT, said)),
    )
    return (
        Section((words.topic_heading(topic.title, _minutes(plan)),), (Paragraph(say(words.WITH_YOU)),), not first),
        Section(say(words.COVER_SAY), (_steps(plan.cover_says, said),)),
        Section(say(words.COVER_HAND), (_ways(plan.cover_handouts, topic, answer),)),
        Section(say(words.COVER_KEY), blocks),
        Section(say(words.COVER_STOP), (_steps(plan.cover_stops, said),)),
    )


def _page(
    slug: str, title: str, description: str, lead: str, topics: Mapping[str, Topic],
    sections: Callable[[LessonPlan, Topic, bool], tuple[Section, ...]],
) -> ReadingPage:
    made: list[Section] = []
    for plan in PLANS:
        made += sections(plan, topics[plan.slug], not made)
    return ReadingPage(slug, title, description, say(lead), tuple(made), one_sheet=True)  # fmt: skip


def lesson_pages(topics: Mapping[str, Topic]) -> tuple[ReadingPage, ...]:
    """The lecturer's plans and the cover teacher's, of every topic that has one."""
    return (
        _page(words.SLUG, words.TITLE, words.DESCRIPTION, words.LEAD, topics, _plan_sections),
        _page(words.COVER_SLUG, words.COVER_TITLE, words.COVER_DESCRIPTION, words.COVER_LEAD, topics, _cover_sections),
    )
