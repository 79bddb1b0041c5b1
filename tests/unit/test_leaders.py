"""A name that stands off its phasor has a leader, which leads to no other's arrow."""

import pytest
from host.seeded import SeededChoices
from unit.sheets import NEUTRAL

from pycore import geometry
from pycore.geometry import Box, Point
from pycore.sheet import labels

METHODS = ("parallelogram", "tip-to-tail", "components")
Placed = tuple[list[labels.Segment], labels.PlacedLabel]


def placed(form: dict[str, str], monkeypatch: pytest.MonkeyPatch) -> list[Placed]:
    """Every name of an arrow on a sheet and on the phone's view, each with the arrows that bear other names."""
    found: list[Placed] = []
    place = labels.place

    def watch(ground: labels.LabelArea, requests: list[labels.LabelRequest]):
        arrows = [piece.segment for piece in ground.pieces]
        asked = {request.owner for request in requests if not request.owner.startswith("angle")}
        done, left = place(ground, requests)
        for label in done:
            owner = label.request.owner
            if owner in asked:
                found.append(([one for one in arrows if one.owner in asked - {owner, "reference"}], label))
        return done, left

    with monkeypatch.context() as patch:
        patch.setattr(labels, "place", watch)
        NEUTRAL.answer(form, ("sheet", "view"))
    return found


def crosses(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two straight pieces cross, by the sides on which their ends are."""

    def side(start: Point, end: Point, at: Point) -> float:
        return (end.x - start.x) * (at.y - start.y) - (end.y - start.y) * (at.x - start.x)

    return side(a, b, c) * side(a, b, d) < -1e-6 and side(c, d, a) * side(c, d, b) < -1e-6


def misleading(names: list[Placed]) -> list[str]:
    """The names whose leaders cross another's arrow."""
    return [
        f"{label.request.owner} over {arrow.owner}"
        for arrows, label in names
        for arrow in arrows
        if label.leader and crosses(label.leader.start, label.leader.end, arrow.start, arrow.end)
    ]


@pytest.mark.parametrize("method", METHODS)
def test_the_neutrals_name_does_not_stand_beyond_another_current(method: str, monkeypatch: pytest.MonkeyPatch):
    names = placed({"i1": "12.5", "i2": "9", "i3": "17", "method": method, "paper": "A4"}, monkeypatch)
    assert {"i1", "i2", "i3", "sum"} <= {label.request.owner for _, label in names}
    assert [] == misleading(names)


def test_hardly_a_leader_of_a_hundred_loads_crosses_another_current(monkeypatch: pytest.MonkeyPatch):
    """Where a figure leaves no other place, a leader may."""
    rng, said, count = SeededChoices(7), [], 0
    for number in range(100):
        form = {f"i{line}": f"{(10 + rng.below(50)) / 2:g}" for line in (1, 2, 3)}
        names = placed(form | {"method": METHODS[number % 3], "paper": "A4"}, monkeypatch)
        count += len(names)
        said += misleading(names)
    assert count > 600
    assert len(said) <= 2, said


def test_a_text_does_not_stand_on_a_piece_of_no_length():
    """An arrow too short to draw is a dot."""
    dot = Point(20.0, 20.0)
    area = labels.LabelArea(Box(0.0, 0.0, 40.0, 40.0), [labels.Segment(dot, dot)])
    assert not area.clear(Box(15.0, 18.0, 25.0, 22.0))
    assert area.clear(Box(15.0, 24.0, 25.0, 28.0))


def test_the_distance_of_a_text_from_a_stroke_is_the_least_of_all_corners_and_ends():
    """The quick way looks at one corner alone."""
    rng, checked = SeededChoices(5), 0
    for _ in range(3000):
        left, bottom, width, height = (rng.below(60) / 2 for _ in range(4))
        box = Box(left, bottom, left + width + 0.5, bottom + height + 0.5)
        start, end = (Point(rng.below(120) / 2, rng.below(120) / 2) for _ in range(2))
        if box.meets_segment(start, end):
            continue
        to_ends = [geometry.segment_distance(at, *side) for at in (start, end) for side in sides(box)]
        to_corners = [geometry.segment_distance(corner, start, end) for corner in box.corners]
        found = labels._box_to_segment(box, labels.Segment(start, end))
        assert found == pytest.approx(min(*to_ends, *to_corners), abs=1e-9)
        checked += 1
    assert checked > 1500


def sides(box: Box) -> list[tuple[Point, Point]]:
    """The four sides of a rectangle."""
    corners = box.corners
    return list(zip(corners, (*corners[1:], corners[0]), strict=True))
