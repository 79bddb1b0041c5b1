"""Practice problems of star and delta: the form that holds what a code stands for."""

from collections.abc import Mapping

from pycore.calculators.star_and_delta.page import BY_NAME, FIELDS, NAMES
from pycore.calculators.star_and_delta.practice import three_of
from pycore.practice.codes import Code
from pycore.sums.answer import default_form


def _ohms(load: tuple[int, int]) -> str:
    resistance, reactance = load
    if reactance == 0:
        return str(resistance)
    return f"{resistance} {'-' if reactance < 0 else '+'} j{reactance if reactance > 0 else -reactance}"


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...). Raises NoProblem."""
    problem = three_of(code)
    form = default_form(FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
    form |= {name: _ohms(load) for name, load in zip(NAMES, problem.loads, strict=True)}
    form |= {"volts": str(problem.volts), "connection": problem.connection, "line": str(problem.line), "known": "line"}
    form |= {"sequence": problem.sequence, "paper": code.paper}
    return form if code.method == "any" else form | {"method": code.method}
