"""Practice codes as links to the pages of their problems."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pycore.calculators.registry import CALCULATORS, by_topic
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.links import ParsedLink
from pycore.practice import codes
from pycore.practice.codes import Code, CodeError
from pycore.practice.generator import NoProblemError
from pycore.sums.page import SumPage
from pycore.words import codes as words


@dataclass(frozen=True, slots=True)
class CodeProblem:
    """The problem of a code: its page, the complete form, and the fragment that opens it."""

    page: SumPage[Any]
    code: Code
    form: Mapping[str, str]

    @property
    def fragment(self) -> str:
        """The part of the link after #."""
        return links.fragment(links.form_pairs(self.form, self.page.fields))


def find(text: str) -> CodeProblem:
    """Return the problem of a typed code. Raises InputError."""
    try:
        if not text.strip():
            raise CodeError("empty")
        code = codes.read(text)
        slug = by_topic().get(code.topic)
        if slug is None:
            raise CodeError("topic")
        page = CALCULATORS[slug]
        form = page.practice_form(code)
    except CodeError as error:
        reason, part = error.reason, error.part
        if reason == "check" and (group := codes.suspect(part)):
            reason, part = "group", group
        raise InputError(Fault("code", text, words.unusable(text, reason, part), _as_typed(text, part))) from None
    except NoProblemError:
        raise InputError(Fault("code", text, words.unusable(text, "topic", ""))) from None
    return CodeProblem(page, code, {**form, "code": str(code)})


def _as_typed(text: str, part: str) -> str:
    """Return a stretch of a code as it was typed: small letters, dashes and spaces in it."""
    found = re.search("[^0-9A-Za-z]*".join(map(re.escape, part)), text, re.IGNORECASE) if part else None
    return found[0] if found else part


@dataclass(frozen=True, slots=True)
class ResolvedLink:
    """The form of a link after its code was read: notices, and the page and fragment to go to if the code belongs to
    another page."""

    form: dict[str, str]
    notices: tuple[str, ...] = ()
    page: str = ""
    fragment: str = ""


def fill(page: SumPage[Any], opened: ParsedLink) -> ResolvedLink:
    """Fill the form of a link with a code: values in the link stay, the others come from the code.

    A code that cannot be used, or that has other values, is left out with a notice.
    """
    text, without = opened.form.get("code", ""), {**opened.form, "code": ""}
    if not text.strip():
        return ResolvedLink(without)
    mine = {field.name for field in page.fields if field.group in ("values", "loads")}
    valued = any(name in mine for name in opened.named)
    try:
        problem = find(text)
    except InputError as error:
        message = error.faults[0].message
        return ResolvedLink(without, (words.kept_values(message) if valued else message,))
    code = str(problem.code)
    if problem.page.slug != page.slug:
        if not valued:
            return ResolvedLink(without, (), problem.page.slug, problem.fragment)
        return ResolvedLink(without, (words.other_page(code, problem.page.title),))
    if not valued:
        named = {name: opened.form[name] for name in opened.named if name != "code"}
        return ResolvedLink({**problem.form, **named})
    return ResolvedLink({**opened.form, "code": code}) if _holds(page, opened.form, code) else ResolvedLink(
        without, (words.other_values(code),)
    )


def _holds(page: SumPage[Any], form: Mapping[str, str], code: str) -> bool:
    """Return whether a form has the values of its code; unreadable values are reported at their field."""
    try:
        return page.code_of(form) == code
    except InputError:
        return True
