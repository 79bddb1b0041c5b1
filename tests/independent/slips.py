"""A mistake of calculation as it is described, and one that several topics share."""

from collections.abc import Iterator

from independent.problems import Problem

Slip = tuple[str, complex | float, str]
"""A mistake's key, what it gives (a float: a number without a direction of its own) and the sentences that name it."""


def of_a_difference(problem: Problem) -> Iterator[Slip]:
    signs = [-1.0 if line.name.startswith("−") else 1.0 for line in problem.lines]
    if -1.0 in signs:
        added = sum(sign * line.value for sign, line in zip(signs, problem.lines, strict=True))
        yield "added", added, "added instead of subtracted"
        yield "difference-turned", -problem.right, "wrong order|opposite direction"
