"""The sheets of a pile of photographs: found by their QR codes or by typed codes; the class set that they belong to."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from pycore.calculators.registry import CALCULATORS
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages import class_set
from pycore.pages.class_job import learners_of
from pycore.pages.class_set import ClassSet
from pycore.pages.codes import find
from pycore.pages.own_problem import fill
from pycore.practice import codes
from pycore.practice.class_set import set_of
from pycore.practice.codes import Code, CodeError
from pycore.sums.page import SumPage
from pycore.words import pile as words


@dataclass(frozen=True, slots=True)
class PileSheet:
    """A sheet found by its code: its page, its form, its code as printed ("" for values without one), and the class set
    that it belongs to (None: to none)."""

    page: SumPage[Any]
    form: Mapping[str, str]
    code: str = ""
    group: Code | None = None


def sheet_of(text: str, group: ClassSet | None = None) -> PileSheet:
    """Return the sheet that the text of a QR code or a typed code opens. ``group``: the set whose signs a typed code's
    sheet has, if it belongs to it. Raises InputError."""
    return _of_address(text) if "#" in text else _of_code(text, group)


def _of_address(text: str) -> PileSheet:
    address, _, fragment = text.partition("#")
    page = CALCULATORS.get(address.rstrip("/").rpartition("/")[2])
    opened = links.open_fragment(fragment, page.fields, links.RESERVED) if page is not None else None
    if page is None or opened is None or not opened.named:
        raise InputError(Fault("code", text, words.NOT_OURS))
    filled = fill(page, opened)
    if filled.fault:
        raise InputError(filled.fault)
    if filled.page:
        return _of_address(f"{filled.page}/#{filled.fragment}")
    # The code of a question paper brings no values; it stays with those of its sheet.
    page.case(filled.form)
    return _with_code(page, filled.form, opened.form.get("code", ""))


def _of_code(text: str, group: ClassSet | None) -> PileSheet:
    found = find(text)
    form = found.form
    if group is not None and set_of(found.code) == group.code:
        form = {**group.form_of(found.code), "code": str(found.code)}
    return _with_code(found.page, form, str(found.code))


def _with_code(page: SumPage[Any], form: Mapping[str, str], text: str) -> PileSheet:
    try:
        code = codes.read_any(text)
    except CodeError:
        return PileSheet(page, form)
    is_of_set = isinstance(code, Code) and code.number > 0
    return PileSheet(page, form, str(code), set_of(code) if is_of_set and isinstance(code, Code) else None)


def kept_set(fragment: object, roll: object) -> ClassSet | None:
    """Return the class set that the device keeps, with its names; None for none, or for one that cannot be read."""
    if not isinstance(fragment, str) or not fragment:
        return None
    try:
        return _kept_set(fragment, roll if isinstance(roll, str) else "")
    except InputError:
        return None


@lru_cache(maxsize=4)
def _kept_set(fragment: str, roll: str) -> ClassSet:
    form = links.open_fragment(fragment, class_set.FIELDS, links.RESERVED).form
    return class_set.read_set(form, roll)


def set_for(code: Code, kept: ClassSet | None) -> ClassSet:
    """Return the class set of this code: the one that is kept, else one with the usual marks."""
    if kept is not None and kept.code == code:
        return kept
    return class_set.read_set(default_form(class_set.FIELDS) | class_set.values_of(str(code)))


@lru_cache(maxsize=4)
def _places(fragment: str, roll: str) -> Mapping[str, tuple[int, str]]:
    group = _kept_set(fragment, roll)
    return {str(one.code): (one.place, one.name) for one in learners_of(group) if one is not None}


def places_of(fragment: object, roll: object) -> Mapping[str, tuple[int, str]]:
    """Return place and name of each learner of the kept set by code; none without a set."""
    if kept_set(fragment, roll) is None:
        return {}
    return _places(str(fragment), roll if isinstance(roll, str) else "")
