"""Practice codes as links to the pages of their problems."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from pycore.calculators.registry import CALCULATORS, by_topic
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.links import ParsedLink, needed_of
from pycore.practice import codes
from pycore.practice.codes import METHODS, MOST_LEARNERS, SEEDS, TIERS, Code, CodeError
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
        raise InputError(fault_of(text, error)) from None
    except NoProblemError:
        raise InputError(Fault("code", text, words.unusable(text, "topic", ""))) from None
    return CodeProblem(page, code, {**form, "code": str(code)})


def fault_of(text: str, error: CodeError, sheet: str = "your sheet") -> Fault:
    """What is wrong with a typed code, and where in it, as narrowly as its check can tell; ``sheet``: what the code
    stands on."""
    group = codes.suspect(error.part) if error.reason == "check" else 0
    part = error.part[codes.GROUP * (group - 1) :][: codes.GROUP] if group else error.part
    part = _as_typed(text, part)
    return Fault("code", text, words.unusable(text, error.reason, part, group, sheet), part)


def _as_typed(text: str, part: str) -> str:
    """Return a stretch of a code as it was typed: small letters, dashes and spaces in it."""
    found = re.search("[^0-9A-Za-z]*".join(map(re.escape, part)), text, re.IGNORECASE) if part else None
    return found[0] if found else part


@dataclass(frozen=True, slots=True)
class ResolvedLink:
    """The form of a link after its code was read: notices, and the page and fragment to go to if the code belongs to
    another page; or what is wrong with the code of a link that has nothing else, which then has no values at all.
    ``held``: the answer to what is typed next is held back."""

    form: dict[str, str]
    notices: tuple[str, ...] = ()
    page: str = ""
    fragment: str = ""
    fault: Fault | None = None
    held: bool = False


def is_valued(page: SumPage[Any], opened: ParsedLink) -> bool:
    """Return whether a link names values of its problem."""
    mine = {field.name for field in page.fields if field.group in ("values", "loads")}
    return any(name in mine for name in opened.named)


def fill(page: SumPage[Any], opened: ParsedLink) -> ResolvedLink:
    """Fill the form of a link with a code: values in the link stay, the others come from the code.

    A code that cannot be used, or that has other values, is left out with a notice; where it is all that there is, no
    other problem takes its place.
    """
    text, without = opened.form.get("code", ""), {**opened.form, "code": ""}
    if not text.strip():
        return ResolvedLink(without)
    valued = is_valued(page, opened)
    try:
        problem = find(text)
    except InputError as error:
        fault = error.faults[0]
        if valued:
            return ResolvedLink(without, (words.kept_values(fault.message),))
        return ResolvedLink(without | dict.fromkeys(needed_of(page.fields), ""), fault=fault)
    code = str(problem.code)
    if problem.page.slug != page.slug:
        if not valued:
            return ResolvedLink(without, (), problem.page.slug, problem.fragment)
        return ResolvedLink(without, (words.other_page(code, problem.page.title),))
    # The code of a whole set opens a problem for ever, though it is no learner's.
    notices = () if problem.code.number else (words.of_set(code),)
    if not valued:
        named = {name: opened.form[name] for name in opened.named if name != "code"}
        return ResolvedLink({**problem.form, **named}, notices)
    return ResolvedLink({**opened.form, "code": code}, notices) if holds(page, opened.form, code) else ResolvedLink(
        without, (words.other_values(code),)
    )


MOST_PASSED = 20
"""So many problems in a row are passed over at the most, because their drawing is too flat to be marked."""


def another(page: SumPage[Any], form: Mapping[str, str]) -> CodeProblem | None:
    """Return one more problem of the same kind as a form's: the next number of its code, else the first of a set that
    follows from its values, so that the same values lead to the same problem. None if the page has none."""
    try:
        code = codes.read(form.get("code", ""))
    except CodeError:
        code = Code(page.topic, TIERS[1], _method_of(page, form), seed=_seed_of(page, form))
    for _ in range(MOST_PASSED):
        number = code.number % MOST_LEARNERS + 1
        code = replace(code, number=number, seed=(code.seed + (number == 1)) % SEEDS)
        try:
            found = find(str(code))
        except InputError:
            return None
        if not found.page.task(found.form).too_flat:
            return found
    return None


def _method_of(page: SumPage[Any], form: Mapping[str, str]) -> str:
    """The method of a form, if the page's problems can ask for it."""
    method = form.get("method", "")
    wanted = method in METHODS and page.practice_form(Code(page.topic, TIERS[0], method)).get("method") == method
    return method if wanted else METHODS[0]


def _seed_of(page: SumPage[Any], form: Mapping[str, str]) -> int:
    """A seed that follows from the values of a form."""
    values = "&".join(form.get(field.name, "") for field in page.fields if field.group in ("values", "loads"))
    seed = 0
    for sign in values:
        seed = (31 * seed + ord(sign)) % SEEDS
    return seed


def holds(page: SumPage[Any], form: Mapping[str, str], code: str) -> bool:
    """Return whether a form has the values of its code; unreadable values are reported at their field."""
    try:
        return page.code_of(form) == code
    except InputError:
        return True
