"""Class keys typed back into "Mark the class": every line must be accepted with full marks.

`python -m bench.keys [count]` (tests/ and the project on the path) prints, for each topic and convention, how many
codes were tried and which were not accepted; tests/unit/test_class_keys.py holds a tenth.
"""

import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.pages import class_job, class_key
from pycore.pages.class_marks import MarkingRun, read_results
from pycore.pages.class_set import FIELDS, ClassSet, read_set
from pycore.pages.class_table import MarkedLine
from pycore.practice import tables
from pycore.practice.class_set import Learner
from pycore.practice.codes import METHODS, TIERS

COUNT = 5000
EACH = 4
"""Learners of a set."""
HOWS = ("drawn", "calculated")
CONVENTIONS: tuple[Mapping[str, str], ...] = (
    {}, {"angles": "polar"}, {"rotation": "clockwise"}, {"first": "up"}, {"decimal": "comma"},
    {"angles": "polar", "first": "up", "decimal": "comma"}, {"resultant": "returning"},
    {"resultant": "returning", "angles": "polar", "rotation": "clockwise"},
)  # fmt: skip


@dataclass(frozen=True)
class Tried:
    """One line of a key typed back: the set, the convention, how it was said to be found, and what came of it."""

    group: ClassSet
    convention: Mapping[str, str]
    how: str
    code: str
    result: MarkedLine | None
    refused: str = ""

    @property
    def full(self) -> bool:
        """Whether it is accepted with every mark."""
        whole = sum(self.group.marks)
        return self.result is not None and ("accept", (whole, whole)) == (self.result.band, self.result.marks)


@dataclass(frozen=True)
class Conventional(ClassSet):
    """A set with a convention that its form does not offer."""

    more: Mapping[str, str] = None  # type: ignore[assignment]

    @property
    def taken(self) -> dict[str, str]:
        """The classroom's conventions with that one."""
        return {**super().taken, **self.more}


def sets(count: int) -> Iterator[tuple[ClassSet, Mapping[str, str], str]]:
    """Sets of every topic, level, method and convention in turn, as many as hold so many codes."""
    slugs = list(CALCULATORS)
    methods = ("any", *METHODS)
    for number in range(-(-count // EACH)):
        slug, tier = slugs[number % len(slugs)], TIERS[number // len(slugs) % 3]
        turn = number // (3 * len(slugs))
        convention, method, how = CONVENTIONS[turn % 8], methods[turn // 2 % 4], HOWS[(turn + number) % 2]
        offered = {name: value for name, value in convention.items() if name != "resultant"}
        form = default_form(FIELDS) | {
            "topic": slug, "tier": tier, "method": method, "learners": str(EACH), "seed": str(number), **offered,
        }  # fmt: skip
        group = read_set(form)
        more = {name: value for name, value in convention.items() if name == "resultant"}
        known = {field.name for field in CALCULATORS[slug].fields}
        names = ("code", "learners", "names", "chosen", "limits", "marks", "notices", "link")
        values = {name: getattr(group, name) for name in names}
        yield Conventional(**values, more={k: v for k, v in more.items() if k in known}), convention, how


def typed_back(group: ClassSet, how: str) -> MarkingRun:
    """A set's key as the table that is saved, typed back as the answers of its learners."""
    learners: list[Learner] = [one for one in class_job.learners_of(group) if one is not None]
    head, *lines = class_key.table([class_job.row_for(group, learner) for learner in learners])
    mark = "," if group.chosen["decimal"] == "comma" else "."
    text = tables.write([[*head, "How"], *([*line, how] for line in lines)], mark)
    marking = MarkingRun(group, read_results(text, group))
    for _ in marking.steps():
        pass
    return marking


def tried(count: int) -> Iterator[Tried]:
    """Every line of every key."""
    for group, convention, how in sets(count):
        marking = typed_back(group, how)
        for result in marking.results:
            yield Tried(group, convention, how, result.code, result)
        for told in marking.refused:
            yield Tried(group, convention, how, "", None, told)


def main(arguments: list[str]) -> None:
    """Print what was not accepted, and how many lines were tried."""
    count = int(arguments[0]) if arguments else COUNT
    whole = missed = 0
    for one in tried(count):
        whole += 1
        if not one.full:
            missed += 1
            why = one.refused or f"{one.result.band} {one.result.marks} {one.result.verdict}"
            sys.stdout.write(f"{one.group.topic.slug} {dict(one.convention)} {one.how} {one.code}: {why}\n")
    sys.stdout.write(f"{whole} lines tried, {missed} without full marks\n")


if __name__ == "__main__":
    main(sys.argv[1:])
