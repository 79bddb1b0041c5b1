"""How many problems of all calculators a robot draws right on blank paper, by the sentences of the moves alone.

`python -m bench.blank_paper [count]` with tests/ and the project on the path; `build.py bench blank-paper` runs it.
"""

import sys
from collections import Counter

from blank_paper import Problem, Robot, checked, drawn, problems

COUNT = 300
SEED = 20261129


def attempt(problem: Problem) -> tuple[str, str]:
    """The checker's band of one drawing, and what went wrong."""
    try:
        robot: Robot = drawn(problem)
        return checked(problem, robot) or "measured as told, not asked for", ""
    except (AssertionError, KeyError) as error:
        return "not drawn", f"{problem.slug}, {problem.form['method']}: {error}"


def count(problem_count: int = COUNT, seed: int = SEED) -> dict[str, int]:
    """Drawings by the band that they get. ``not drawn``: a sentence was not understood, or the drawing disagreed with
    it, or left the paper."""
    found: Counter = Counter()
    for problem in problems(problem_count, seed):
        band, trouble = attempt(problem)
        found[band] += 1
        if trouble:
            print(trouble, file=sys.stderr)
    return {"problems": problem_count, **dict(sorted(found.items()))}


if __name__ == "__main__":
    print(count(*(int(argument) for argument in sys.argv[1:2])))
