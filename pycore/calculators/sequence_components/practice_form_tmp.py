"""Practice problems of sequence components: the form that holds what a code stands for."""

from collections.abc import Mapping

from pycore import quantity
from pycore.calculators.sequence_components.page import BY_NAME, FIELDS, NAMES
from pycore.calculators.sequence_components.practice import sequence_of
from pycore.practice.codes import Code
from pycore.sums.answer import default_form


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...). Raises NoProblem."""
    problem = sequence_of(code)
    form = default_form(FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
    for name, tenths, angle in zip(NAMES, problem.tenths, problem.angles, strict=True):
        form[name] = f"{quantity.plain(tenths / 10.0)} at {angle}"
    form |= {"part": problem.part, "paper": code.paper}
    return form if code.method == "any" else form | {"method": code.method}
