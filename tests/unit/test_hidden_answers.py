"""A hidden answer cannot be found from what stays in the picture: no line of a construction meets the sum's tip."""

from collections.abc import Iterator

import pytest
from calculators.neutral_current.forms import form as problem

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arc, Arrow, Group, Item, Line, walk
from pycore.geometry import Point, distance
from pycore.sums.classroom import SumLesson

HIDDEN = ("answer", "to-answer", "tag-sum", "tag-return")
"""Groups that site/css/lesson.css hides with the answer, besides those of the sum's own arrow."""
NEAR = 0.1
WAYS = (
    {"method": "parallelogram", "parallels": "protractor"}, {"method": "parallelogram", "parallels": "set-squares"},
    {"method": "parallelogram", "parallels": "compasses"}, {"method": "components"},
)  # fmt: skip


def left(items: tuple[Item, ...]) -> Iterator[Item]:
    """Every item that stays in the picture while the answer is hidden."""
    for item in items:
        if not isinstance(item, Group):
            yield item
        elif item.name not in HIDDEN and item.phasor not in ("sum", "return"):
            yield from left(item.items)


def meeting(items: tuple[Item, ...], tip: Point) -> list[Item]:
    """The lines among them that end at a point, or run through it as a short arc."""

    def meets(item: Item) -> bool:
        match item:
            case Line():
                return min(distance(item.start, tip), distance(item.end, tip)) < NEAR
            case Arrow():
                return distance(item.tip, tip) < NEAR
            case Arc():
                middle = item.centre.moved(item.radius, item.start + item.sweep / 2)
                return abs(distance(item.centre, tip) - item.radius) < NEAR and distance(middle, tip) < 5.0
        return False

    return [item for item in left(items) if meets(item)]


def arrows(items: tuple[Item, ...], name: str) -> list[Arrow]:
    """The arrows in groups of a name or a phasor."""
    groups = [one for one in walk(items) if isinstance(one, Group) and name in (one.name, one.phasor)]
    return [one for group in groups for one in walk(group.items) if isinstance(one, Arrow)]


@pytest.mark.parametrize("way", WAYS, ids=lambda way: "-".join(way.values()))
def test_once_the_sum_is_drawn_no_dashed_side_tells_where_it_ends(way: dict[str, str]) -> None:
    """In the lesson: neither at the frame that draws it, nor where it is measured."""
    seen = 0
    for number in range(20):
        lesson = SumLesson(CALCULATORS["neutral-current"].case(problem(number) | way | {"resultant": "sum"})).lesson
        given = [*(arm.key for arm in lesson.plan.construction.arms), "i12", "i13", "i23"]
        for step in range(1, len(lesson.frames) + 1):
            items = lesson.show(step).picture.items
            drawn = arrows(items, "sum")
            # A sum that is a given arrow or the first diagonal again is hidden by nothing.
            if not drawn or any(distance(one.tip, drawn[0].tip) < 1.0 for key in given for one in arrows(items, key)):
                continue
            dashed = [item for item in meeting(items, drawn[0].tip) if not isinstance(item, Line) or item.dash]
            assert [] == dashed
            seen += 1
    assert seen > 20


@pytest.mark.parametrize("slug", CALCULATORS)
def test_neither_all_methods_together_nor_ropes_tell_where_the_sum_ends(slug: str) -> None:
    lesson = SumLesson(CALCULATORS[slug].case({}))
    if "together" not in lesson.views:
        assert not lesson.case.is_sum
        return
    for step in range(1, lesson.count("together") + 1):
        items = lesson.show("together", step).picture.items
        ring = [one for group in items if isinstance(group, Group) and group.name == "answer" for one in group.items]
        assert [] == meeting(items, ring[-1].centre)
    items = lesson.show("numbers", 2).picture.items
    drawn = arrows(items, "answer")
    assert lesson.case.size == 0.0 or [] == meeting(items, drawn[-1].tip)
    items = lesson.show("pull", lesson.count("pull") - 1).picture.items
    assert [] == meeting(items, arrows(items, "answer")[0].tip)
