"""The region ``marked``: what the page says of an answer; and the reply to a request for it."""

from collections.abc import Mapping
from typing import Any

from pycore import quantity
from pycore.errors import Fault, InputError
from pycore.practice import answers
from pycore.practice.task import Limits, Task
from pycore.practice.telling import Told, tell
from pycore.quantity import Unreadable
from pycore.render.elements import Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.words import marking as words

ALLOWED = (("allow-percent", "%", 0.1, 50.0), ("allow-degrees", "°", 0.1, 45.0))


def limits_of(form: Mapping[str, str]) -> Limits:
    """The lecturer's own limits, if any are given. Raises InputError."""
    found: list[float | None] = []
    faults: list[Fault] = []
    for name, unit, least, most in ALLOWED:
        text = form.get(name, "").strip()
        try:
            value = quantity.read(text, unit) if text else None
        except Unreadable:
            value = -1.0
        if value is not None and not least <= value <= most:
            faults.append(Fault(name, text, words.bad_limit(text, unit, quantity.plain(least), quantity.plain(most))))
        found.append(value)
    if faults:
        raise InputError(*faults)
    return Limits(found[0], found[1])


def marked_html(told: Told) -> Markup:
    """A judgement as the page shows it."""
    lines = [h("p", None, phrase_html(line)) for line in told.lines]
    causes = None
    if told.causes:
        introduction = h("p", None, phrase_html(told.introduction)) if told.introduction else None
        causes = join(introduction, h("ul", None, [h("li", None, phrase_html(cause)) for cause in told.causes]))
    headline = h("p", {"class": "verdict"}, phrase_html(told.headline))
    return h("div", {"class": "marked", "data-band": told.band}, headline, lines, causes)


def reply(task: Task, given: Mapping[str, str]) -> dict[str, Any]:
    """The reply to a request that marks an answer. Raises InputError for what cannot be read."""
    told = tell(task, answers.judge(task, given, limits_of(given)))
    return {
        "ok": True,
        "band": told.band,
        "regions": {"marked": str(marked_html(told))},
        "announce": words.announced(told.phrases),
    }
