"""Practice problems of the neutral current: the form that holds what a code stands for."""

from collections.abc import Mapping

from pycore import quantity
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.neutral_current.practice import lines_of
from pycore.practice.codes import Code
from pycore.sums.answer import default_form

OF_TIER = {"support": {"start": "two"}, "core": {}, "stretch": {"further": "zero"}}
"""What a tier's problem sheets have, unless a class has choices of its own."""


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...)."""
    lines = lines_of(code)
    form = default_form(FIELDS) | OF_TIER[code.tier] | dict(choices or {})
    for number, (tenths, lag) in enumerate(zip(lines.tenths, lines.lags, strict=True), start=1):
        form[f"i{number}"] = quantity.plain(tenths / 10.0)
        form[f"a{number}"] = quantity.plain(float(lag)).replace(quantity.MINUS, "-")
    form["paper"] = code.paper
    if code.method != "any":
        form["method"] = code.method
    return form
