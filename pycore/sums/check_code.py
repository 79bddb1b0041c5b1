"""The check code of a case: a fingerprint of its values, however they were typed. It tells nothing of the answer."""

from pycore.forms.fields import VALUE_GROUPS, Field
from pycore.practice.codes import FINGERPRINTS, CheckCode
from pycore.practice.seeded_integers import integers_of
from pycore.sums.case import SumCase

DEFAULTS_OF = "3"
"""The version of the links whose defaults a check code leaves out, for ever: a choice that is new later changes none.
"""
_ASKED_BY = (*VALUE_GROUPS, "method")
"""Groups whose choices belong to the question: star or delta, lines or phases, which part."""


def _chosen(case: SumCase, field: Field) -> bool:
    """Whether a choice belongs to the question and is not the usual one. How it is drawn does not belong to it."""
    is_asked = field.kind == "choice" and field.group in _ASKED_BY and field.name != "method"
    return is_asked and field.counts(case.choices) and case.choices[field.name] != field.default_in(DEFAULTS_OF)


def check_code(topic: int, case: SumCase) -> CheckCode:
    """Return the check code of a case on the page with this topic number."""
    choices = (f"{field.name}={case.choices[field.name]}" for field in case.fields if _chosen(case, field))
    text = "|".join((*case.value_texts(), *choices))
    return CheckCode(topic, integers_of(topic, *text.encode()).below(FINGERPRINTS))
