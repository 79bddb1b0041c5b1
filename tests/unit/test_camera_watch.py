"""What a camera's live picture means, by the page's own script: when a sheet is seen whole, and when it is taken."""

import json
import subprocess
from collections.abc import Sequence

from making.paths import ROOT

RUN = """
const { Watch } = await import(process.argv[1]);
const watch = new Watch();
const told = [];
for (const { texts, seen, places, took, foreign = false, inPile = false } of JSON.parse(process.argv[2])) {
  if (took !== undefined) watch.took(took);
  else told.push(watch.see({ texts, seen, places }, { foreign, inPile }));
}
console.log(JSON.stringify(told));
"""
CORNERS = [[0.2, 0.2], [0.8, 0.2], [0.8, 0.7], [0.2, 0.7], [0.5, 0.2], [0.8, 0.5], [0.5, 0.7], [0.2, 0.5]]


def whole(text: str = "A", shift: float = 0.0, **more: object) -> dict[str, object]:
    """A glance at a whole sheet, moved by a share of the picture."""
    return {"texts": [text], "seen": 8, "places": [[x + shift, y] for x, y in CORNERS], **more}


def part(texts: Sequence[str] = (), seen: int = 7, **more: object) -> dict[str, object]:
    """A glance in which a mark is not seen, or no code."""
    return {"texts": list(texts), "seen": seen, "places": None, **more}


NOTHING = part((), 0)


def told(*glances: dict[str, object]) -> list[tuple[str, bool]]:
    """What each glance means, and whether the sheet is to be taken."""
    done = subprocess.run(
        ["node", "--input-type=module", "-e", RUN, (ROOT / "site/js/camera-watch.js").as_uri(), json.dumps(glances)],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    return [(one["state"], one["isDue"]) for one in json.loads(done.stdout)]


def test_a_sheet_is_due_once_it_was_seen_whole_twice_running_and_still():
    assert [("ready", False), ("ready", True)] == told(whole(), whole())
    assert [("ready", False), ("code", False), ("ready", False)] == told(whole(), part("A"), whole())
    assert [("ready", False), ("ready", False), ("ready", True)] == told(whole(), whole(shift=0.05), whole(shift=0.06))
    assert [("ready", False), ("ready", False)] == told(whole("A"), whole("B")), "two sheets are not one"


def test_what_is_not_a_whole_sheet_is_said_and_never_due():
    states = [("none", part((), 3)), ("marks", part((), 8)), ("code", part("A")), ("several", part("AB", 14)),
              ("foreign", whole(foreign=True))]  # fmt: skip
    for state, glance in states:
        assert [(state, False)] * 3 == told(*[glance] * 3)


def test_a_sheet_that_was_taken_is_due_again_only_after_another_or_none_was_in_view():
    took = {"took": "A"}
    still = told(whole(), whole(), took, whole(), part((), 6), part("A"), NOTHING, whole(), whole())
    assert [("taken", False)] * 6 == still[2:]
    assert ("ready", True) == told(whole(), whole(), took, whole("B"), whole("B"))[-1]
    assert ("ready", True) == told(whole(), whole(), took, NOTHING, NOTHING, whole(), whole())[-1]
    assert ("known", False) == told(took, NOTHING, NOTHING, whole(inPile=True), whole(inPile=True))[-1]
    assert ("known", False) == told(part("A", inPile=True))[-1]


def test_what_follows_a_sheet_whose_code_was_not_seen_may_be_another():
    """A sheet laid upon it was called taken, and never was: one that is taken twice is told in its row."""
    took = {"took": ""}
    assert [("marks", False), ("taken", False), ("ready", False), ("ready", True)] == told(
        part(), took, part(), whole("B"), whole("B")
    )
