"""Lesson plans, made from their data and from the answers of the topic's own page."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Protocol

from pycore.calculators.registry import MAIN, MAIN_FIRST, module_of
from pycore.forms import links
from pycore.forms.fields import VERSION, Field, default_form
from pycore.pages.reading import LinkList, ReadBlock, ReadingPage, Section, Steps
from pycore.practice.task import Task
from pycore.sums.answer import Answer, Grid, Paragraph
from pycore.words import lesson_plans as words
from pycore.words import mistakes, plain
from pycore.words.lesson_plans import Handout, LessonPlan
from pycore.words.phrase import Phrase, say


class Topic(Protocol):
    """What a lesson plan needs from a calculator."""

    @property
    def slug(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def fields(self) -> tuple[Field, ...]: ...
    @property
    def cautions(self) -> Iterable[Phrase | str]: ...
    @property
    def warning(self) -> str: ...
    def answer(self, form: Mapping[str, str], parts: tuple[str, ...]) -> Answer: ...
    def task(self, form: Mapping[str, str]) -> Task: ...


def plans() -> dict[str, LessonPlan]:
    """Return every calculator's lesson plan by slug, the neutral current first."""
    return {slug: module_of(slug, "teaching").PLAN for slug in MAIN_FIRST}


def folder(slug: str, topic: str) -> str:
    """Return the folder of a topic's page; the first topic has the plain name."""
    return slug if topic == MAIN else f"{slug}-{topic}"


def lessons_of(topic: str, title: str) -> tuple[tuple[str, str], ...]:
    """Return folder and title of a topic's plan and cover lesson; none for the first topic, which every foot lists."""
    kinds = ((words.SLUG, words.ONE), (words.COVER_SLUG, words.COVER_ONE))
    return () if topic == MAIN else tuple((folder(slug, topic), words.page_title(kind, title)) for slug, kind in kinds)


def _texts(answer: Answer) -> dict[str, str]:
    return {output.name: f"{output.text} {output.unit}".strip() for output in answer.outputs}


def _example_texts(plan: LessonPlan, topic: Topic) -> dict[str, str]:
    """What the page says of its example, and of the exit question's values, for the braces of a plan."""
    form = default_form(topic.fields)
    answer = topic.answer(form, ("answer",))
    outputs = _texts(answer)
    texts = {
        "values": plain(answer.values_text),
        "answer": outputs[answer.outputs[0].name],
        "angle": plain(answer.summary[0]),
        "length": next(text for name, text in outputs.items() if name.endswith("length")),
        **{name.replace("-", "_"): text for name, text in outputs.items()},
    }
    if plan.exit_values:
        exit_texts = _texts(topic.answer(form | dict(plan.exit_values), ("answer",)))
        texts |= {"exit_" + name.replace("-", "_"): text for name, text in exit_texts.items()}
    return texts


def _filled(text: str, texts: Mapping[str, str]) -> Phrase:
    return say(text, **texts)


def _steps(items: Iterable[str], texts: Mapping[str, str]) -> Steps:
    return Steps(tuple(_filled(item, texts) for item in items))


def _address(handout: Handout, topic: Topic, answer: Answer) -> str:
    """Return the address of a handout from the page of plans, with the example's values and every choice resolved."""
    fields = {field.name for field in topic.fields}
    own = dict(answer.link) if handout.slug == topic.slug else {"v": VERSION} if handout.values else {}
    pairs = {**own, **dict(handout.values)}
    ordered = [pair for pair in pairs.items() if pair[0] in fields or pair[0] not in own] if own else []
    version = [pair for pair in ordered if pair[0] == "v"] or ([("v", VERSION)] if ordered else [])
    rest = [pair for pair in ordered if pair[0] != "v"]
    return f"../{handout.slug}/" + (f"#{links.fragment([*version, *rest])}" if rest else "")


def _ways(handouts: tuple[Handout, ...], topic: Topic, answer: Answer) -> LinkList:
    return LinkList(tuple((handout.name, _address(handout, topic, answer)) for handout in handouts))


LINES, PHASORS = {"a": "a line", "b": "another"}, {"a": "a phasor", "b": "another"}


def _listen(plan: LessonPlan, topic: Topic) -> Steps:
    """Return the commonest mistakes with advice: in general words if possible, else as for the example."""
    items = []
    named = {mistake.key: mistake for mistake in reversed(topic.task(default_form(topic.fields)).mistakes)}
    for key in plan.listen:
        mistake = named[key]
        mistake_name, look = mistake.name, mistake.look
        name, where = mistakes.NAMES.get(key, ("", ""))
        if name and "{unit}" not in name + where and "{scale}" not in name + where:
            mistake_name = say(name, **(LINES if plan.of_lines else PHASORS))
            look = say(mistakes.IN_GENERAL.get(key, where), a="it", b="the other")
        items.append((_capital(plain(mistake_name)) + ". ", plain(look)))
    return Steps(tuple(items))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _warning(topic: Topic) -> tuple[Paragraph, ...]:
    """Return the caution at the start of a topic's page."""
    return (Paragraph(say(topic.warning), caution=True),) if topic.warning else ()


def _plan_sections(plan: LessonPlan, topic: Topic) -> tuple[Section, ...]:
    answer = topic.answer(default_form(topic.fields), ("answer",))
    texts = _example_texts(plan, topic)
    minutes = _minutes(plan)
    first = (*_warning(topic), Paragraph(_filled(plan.aim, texts)))
    sections = [Section((words.topic_heading(topic.title, minutes),), first)]
    sections += [
        Section((words.part_heading(stage.name, stage.minutes),), (_steps(stage.does, texts),)) for stage in plan.parts
    ]
    phrases = ((caution,) if isinstance(caution, str) else caution for caution in topic.cautions)
    # The reminder of the method has a part of its own, and a warning stands at the head.
    said_before = (topic.warning,)
    cautions = tuple(one for one in phrases if words.BODY not in plain(one) and plain(one) not in said_before)
    sections += [
        Section(say(words.LISTEN), (_listen(plan, topic),)),
        Section(say(words.PRINTS), (_ways(plan.handouts, topic, answer),)),
        Section(say(words.CARE), (Steps(cautions),)),
        Section(say(words.METHOD), (Paragraph(say(words.ACCEPTED)),)),
    ]
    return tuple(sections)


def _minutes(plan: LessonPlan) -> int:
    minutes = 0
    for stage in plan.parts:
        minutes += stage.minutes
    return minutes


SAID_ALREADY, SAID_BY_NAME = ("angle", "length"), ("scale", "tolerance")


def _cover_sections(plan: LessonPlan, topic: Topic) -> tuple[Section, ...]:
    answer = topic.answer(default_form(topic.fields), ("answer",))
    texts = _example_texts(plan, topic)
    rows = [((name,) if name else answer.outputs[0].label, (texts[which],)) for name, which in words.KEY_ROWS]
    # Every other result too, but for those that the first rows say already.
    rows += [
        (output.label, (f"{output.text} {output.unit}".strip(),))
        for output in answer.outputs[1:]
        if output.label and output.name not in SAID_BY_NAME and not output.name.endswith(SAID_ALREADY)
    ]
    key = tuple(rows)
    first = (*_warning(topic), Paragraph(say(words.WITH_YOU)))
    blocks: tuple[ReadBlock, ...] = (
        Grid(words.KEY_HEAD, key),
        Paragraph(_filled(words.KEY_LIMIT, texts)),
    )
    return (
        Section((words.topic_heading(topic.title, _minutes(plan)),), first),
        Section(say(words.COVER_SAY), (_steps(plan.cover_says, texts),)),
        Section(say(words.COVER_HAND), (_ways(plan.cover_handouts, topic, answer),)),
        Section(say(words.COVER_KEY), blocks),
        Section(say(words.COVER_STOP), (_steps(plan.cover_stops, texts),)),
    )


def _ways_on(slug: str, topics: Mapping[str, Topic], plan: LessonPlan) -> Section:
    """Return links to the topic's page, and to the same kind of lesson of every other topic; screen only."""
    others = tuple((topics[topic].title, f"../{folder(slug, topic)}/") for topic in plans() if topic != plan.slug)
    own = (words.TO_TOPIC, f"../{plan.slug}/")
    return Section(say(words.OTHERS), (LinkList((own, *others)),), screen=True)


Sections = Callable[[LessonPlan, Topic], tuple[Section, ...]]


def _pages(
    slug: str, titles: tuple[str, str], description: str, leads: tuple[str, str], topics: Mapping[str, Topic],
    sections: Sections,
) -> Iterator[ReadingPage]:
    """Yield a page for each topic, the first with the plain name."""
    for plan in plans().values():
        topic = topics[plan.slug]
        first = plan.slug == MAIN
        title, lead = (titles[0], leads[0]) if first else (words.page_title(titles[1], topic.title), leads[1])
        text = description if first else words.page_description(topic.title)
        parts = (*sections(plan, topic), _ways_on(slug, topics, plan))
        yield ReadingPage(folder(slug, plan.slug), title, text, say(lead), parts, one_sheet=True)


def lesson_pages(topics: Mapping[str, Topic]) -> tuple[ReadingPage, ...]:
    """Return the plans for the lecturer and the cover teacher, of every topic that has one."""
    return (
        *_pages(words.SLUG, (words.TITLE, words.ONE), words.DESCRIPTION, (words.LEAD, words.LEAD_ONE), topics,
                _plan_sections),
        *_pages(words.COVER_SLUG, (words.COVER_TITLE, words.COVER_ONE), words.COVER_DESCRIPTION,
                (words.COVER_LEAD, words.COVER_LEAD), topics, _cover_sections),
    )  # fmt: skip
