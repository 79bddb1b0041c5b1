"""A class set: a problem of its own for each learner, from one seed.

Which number a learner's problem has depends only on the set: numbers whose values repeat those of an earlier
one are passed over until all numbers have been tried, then they are used after all.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from pycore.practice.codes import MOST_LEARNERS, Code

Form = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Learner:
    """One learner of a set: the place in it (from 1), the code of the problem, its form, the name ("" where
    none was given)."""

    place: int
    code: Code
    form: Form
    name: str = ""


def set_of(code: Code) -> Code:
    """The code of the whole set that a learner's code belongs to: number 0."""
    return replace(code, number=0)


def problems(code: Code, form_of: Callable[[Code], Form]) -> Iterator[tuple[Code, Form] | None]:
    """The problems of a set, one for each learner in turn; None where a number was passed over.

    At most ``MOST_LEARNERS``.
    """
    seen: set[tuple[tuple[str, str], ...]] = set()
    passed: list[tuple[Code, Form]] = []
    for number in range(1, MOST_LEARNERS + 1):
        own = replace(code, number=number)
        form = form_of(own)
        values = tuple(sorted(form.items()))
        if values in seen:
            passed.append((own, form))
            yield None
        else:
            seen.add(values)
            yield own, form
    yield from passed
