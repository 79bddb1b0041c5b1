"""A lecturer's own values as a problem that holds its answer back, and the code that checks whoever types them again.

The link of such a problem has the values and ``sheet=problem``; its ``code`` is a check code (practice/codes.py), which
brings no values. Values that a practice code has already keep that code.
"""

from collections.abc import Mapping
from typing import Any

from pycore.calculators.registry import CALCULATORS, by_topic
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.fields import VERSION
from pycore.forms.links import ParsedLink, needed_of
from pycore.pages.codes import ResolvedLink, fault_of, find, holds, is_valued
from pycore.pages.codes import fill as fill_from_code
from pycore.practice import codes
from pycore.practice.codes import CheckCode, CodeError
from pycore.sheet.kinds import PROBLEM
from pycore.sums.page import SumPage
from pycore.words import codes as words

READ_OFF = ("readings", "length")
"""Kinds of fields that hold what somebody read off a meter or a drawing: they would tell the answer."""


def as_problem(page: SumPage[Any], form: Mapping[str, str]) -> dict[str, str]:
    """Return a form as a problem: the blank sheet, with the code of its values, without what was read off.

    Raises InputError.
    """
    case = page.case(form)
    read_off = {field.name: "" for field in page.fields if field.kind in READ_OFF}
    return {**form, **read_off, "sheet": PROBLEM, "code": page.code_for(case) or str(page.check_code(case))}


def _check_code_of(text: str) -> CheckCode | None:
    """Return the check code in a text; None for any other text."""
    try:
        code = codes.read_any(text)
    except CodeError:
        return None
    return code if isinstance(code, CheckCode) else None


def _page_of(code: CheckCode, text: str) -> SumPage[Any]:
    slug = by_topic().get(code.topic)
    if slug is None:
        raise InputError(fault_of(text, CodeError("topic")))
    return CALCULATORS[slug]


def _with_code_alone(code: str) -> str:
    """The fragment that asks for the values of a check code."""
    return links.fragment((("v", VERSION), ("code", code)))


def opened_by(text: str, slug: object, form: Mapping[str, str]) -> tuple[str, str, str]:
    """Return page, fragment and written form of a code that was typed on a page with these values: the problem of the
    code, or these values as a problem if it checks them and they are right. Raises InputError."""
    checking = _check_code_of(text)
    if checking is None:
        problem = find(text)
        return problem.page.slug, problem.fragment, str(problem.code)
    page, code = _page_of(checking, text), str(checking)
    if slug != page.slug:
        return page.slug, _with_code_alone(code), code
    try:
        case = page.case(form)
    except InputError:
        raise InputError(Fault("code", text, words.VALUES_FIRST)) from None
    if page.check_code(case) != checking:
        raise InputError(Fault("code", text, words.other_typed(code)))
    return page.slug, links.fragment(links.form_pairs({**as_problem(page, form), "code": code}, page.fields)), code


def fill(page: SumPage[Any], opened: ParsedLink) -> ResolvedLink:
    """Fill the form of a link with a code, as pages/codes.py does; a check code stays with the values that it checks,
    is removed from others, and asks for them where the link has none: the answer is then held back."""
    text, without = opened.form.get("code", ""), {**opened.form, "code": ""}
    checking = _check_code_of(text)
    if checking is None:
        return fill_from_code(page, opened)
    code, valued = str(checking), is_valued(page, opened)
    empty = without | dict.fromkeys(needed_of(page.fields), "")
    try:
        own = _page_of(checking, text)
    except InputError as error:
        fault = error.faults[0]
        return ResolvedLink(without, (words.kept_values(fault.message),)) if valued else ResolvedLink(
            empty, fault=fault
        )
    if not valued and own.slug == page.slug:
        return ResolvedLink(empty, fault=Fault("code", text, words.VALUES_FIRST), held=True)
    if not valued:
        return ResolvedLink(without, (), own.slug, _with_code_alone(code))
    if own.slug != page.slug:
        return ResolvedLink(without, (words.other_page(code, own.title),))
    if holds(page, opened.form, code):
        return ResolvedLink({**opened.form, "code": code})
    return ResolvedLink(without, (words.not_checked(code),))
