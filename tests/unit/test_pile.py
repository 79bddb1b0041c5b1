"""A pile of photographs in pycore: which sheet a code opens, how a drawing is marked, what rows say together."""

import json
import re
from typing import Any

import pytest
from host.piles import ROLL, SET, SET_CODE, learners, seen_from_above

from pycore import api
from pycore.errors import InputError
from pycore.pages.pile import entry_of, read_pile
from pycore.pages.pile_sheet import sheet_of
from pycore.practice.class_set import Learner

RIGHT = {
    "found": "6.2", "asked": "6.2", "unit": "A", "off": "0.0", "band": "accept", "parts": ["accept"] * 3,
    "mistakes": [],
}  # fmt: skip


def ask(**request: Any) -> dict[str, Any]:
    """A reply of the api."""
    reply: dict[str, Any] = json.loads(api.handle(json.dumps(request))[0])
    return reply


def judged(learner: Learner, slip: float = 0.0, method: str = "") -> dict[str, Any]:
    """A judged drawing, its end moved along so many mm by ``slip``."""
    return ask(do="pile", move="judge", sheet="neutral-current", set=SET, roll=ROLL, group=SET_CODE,
               **seen_from_above(learner, slip, method))  # fmt: skip


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail"])
def test_a_right_drawing_has_every_mark(method: str):
    reply = judged(learners()[0], method=method)
    assert reply["ok"]
    drawing = reply["drawing"]
    assert ("accept", ["accept"] * 3, []) == (drawing["band"], drawing["parts"], drawing["mistakes"])
    assert drawing["found"] == drawing["asked"] and reply["overlay"] and "Every line is correct" in reply["result"]


def test_a_wrong_end_loses_the_marks_of_length_or_angle_and_keeps_those_of_the_first_step():
    drawing = judged(learners()[0], slip=14.0)["drawing"]
    assert "wrong" in drawing["parts"][1:] and "accept" == drawing["parts"][0]
    assert drawing["band"] != "accept" and float(drawing["off"]) > 0.0


@pytest.mark.parametrize(("angle", "said"), [
    ("144.9° clockwise", "First step 1, length 0 to 2, angle 1."), ("", "First step 1, size 1 to 3."),
])  # fmt: skip
def test_the_marks_of_a_drawing_are_told_by_step_until_somebody_chooses_them(angle: str, said: str):
    drawing = RIGHT | {"band": "look", "parts": ["accept", "look", "accept"], "angle": angle}
    told = ask(do="pile", move="look", rows=[row(1, drawing=drawing)], row="r1", set=SET, roll=ROLL)
    assert said in told["regions"]["look"]
    for plain in (row(1, drawing=drawing, settled=3), row(1), row(1, drawing=drawing | {"parts": ["wrong"] * 3})):
        told = ask(do="pile", move="look", rows=[plain], row="r1", set=SET, roll=ROLL)
        assert "irst step" not in told["regions"]["look"]


@pytest.mark.parametrize(("parts", "said"), [
    (["accept", "accept", "look"], "The direction of the result is at the edge of what a careful hand can do."),
    (["look", "look", "accept"], "The first step and the length of the result are at the edge"),
    (["accept"] * 3, "The result is right, but a line is not."),
])  # fmt: skip
def test_what_a_person_has_to_look_at_is_named(parts: list[str], said: str):
    """A mark was in doubt by the angle, and the sentence said that the drawing was at the edge."""
    drawing = RIGHT | {"band": "look", "parts": parts, "angle": "144.9° clockwise"}
    assert said in ask(do="pile", move="look", rows=[row(1, drawing=drawing)], row="r1")["regions"]["look"]


def test_the_direction_of_the_drawn_result_is_compared():
    off = re.findall(r"Its direction differs by ([\d.]+)°", judged(learners()[0], slip=14.0)["result"])
    assert 1 == len(off) and float(off[0]) > 2.0
    assert "Its direction differs by 0.0°" in judged(learners()[0])["result"]


def row(number: int, **more: Any) -> dict[str, Any]:
    """A row as the page keeps it: judged and right, of one of the set's learners."""
    code = str(learners()[number - 1].code)
    own = {
        "id": f"r{number}", "file": f"{number}.jpg", "digest": f"d{number}", "state": "judged",
        "page": "neutral-current", "code": code, "group": SET_CODE, "drawing": RIGHT,
        "points": {"O": [100, 100], "N": [120, 90]},
    }  # fmt: skip
    return own | more


def test_rows_have_the_names_of_the_kept_set_and_go_into_the_register_once_accepted():
    rows = [row(1, accepted=True), row(2, settled=3, accepted=True), row(3)]
    pile = read_pile({"rows": rows, "set": SET, "roll": ROLL})
    assert ["Ada Lark", "Bo Finch", "Cy Wren"] == [one.name for one in pile.rows]
    entry: Any = entry_of(pile)
    assert SET_CODE == entry["paper"] and 4 == entry["of"] and 3 == entry["learners"]
    assert [(1, "Ada Lark", 4, 4), (2, "Bo Finch", 3, 3)] == [
        (one["place"], one["name"], one["low"], one["high"]) for one in entry["marks"]
    ]
    assert entry_of(read_pile({"rows": [row(1)], "set": SET, "roll": ROLL})) is None


@pytest.mark.parametrize(("unread", "said"), [
    (1, "1 page of this PDF was not read. It may be"), (3, "3 pages of this PDF were not read. They may be"),
    (0, "No photograph was found in this PDF."), (-1, "No photograph"), ("2", "No photograph"), (None, "No photograph"),
])  # fmt: skip
def test_the_row_of_a_pdf_says_how_many_pages_are_not_read(unread: object, said: str):
    scan = {"id": "r1", "file": "scan.pdf", "digest": "d1", "state": "fault", "said": "pdf", "unread": unread}
    assert said in ask(do="answer", page="photographs", form={}, rows=[scan])["regions"]["pile"]
    look = ask(do="pile", move="look", rows=[scan], row="r1")["regions"]["look"]
    assert said in look and "pile-code" not in look


@pytest.mark.parametrize(("second", "said"), [
    ({"digest": "d1"}, "same photograph as in row 1"),
    ({"code": "one", "points": {"O": [100.5, 100], "N": [120, 90.4]}}, "second photograph of the sheet in row 1"),
    ({"code": "one", "points": {"O": [100, 100], "N": [150, 90]}}, "another drawing"),
    ({"code": "one", "points": {}}, "Row 1 has the same code"),
    ({"group": "533-22D-227"}, "another class set"),
])  # fmt: skip
def test_what_is_wrong_with_a_row_beside_the_others(second: dict[str, Any], said: str):
    own = {**second, "code": str(learners()[0].code)} if second.get("code") else second
    rows = [row(1), row(2, **own), row(3)]
    pile = read_pile({"rows": rows, "set": SET, "roll": ROLL})
    assert ("", "") == (pile.rows[0].fault, pile.rows[2].fault)
    assert said in pile.rows[1].fault
    assert ["r1", "r3"] == [one.id for one in pile.sure] and ["r2"] == [one.id for one in pile.asked]


def test_a_code_and_the_address_in_a_qr_code_open_the_same_sheet():
    learner = learners()[0]
    typed, read = sheet_of(str(learner.code)), sheet_of(f"https://x.example/neutral-current/#v=3&code={learner.code}")
    assert typed.form == read.form and typed.code == read.code == str(learner.code)
    assert SET_CODE == str(read.group)


@pytest.mark.parametrize("text", ["https://x.example/", "https://x.example/#a", "hello", "", "https://x.example/none/#v=3&i1=2"])
def test_what_is_no_sheet_of_ours_is_said(text: str):
    with pytest.raises(InputError):
        sheet_of(text)


STRANGE = {"id": 1, "drawing": {"parts": 3}, "points": [1], "accepted": True}


@pytest.mark.parametrize("rows", [None, 3, [None], [{}], [STRANGE]])
def test_rows_that_are_none_break_nothing(rows: Any):
    assert ask(do="answer", page="photographs", form={}, rows=rows)["ok"]
    assert not ask(do="pile", move="none")["ok"]
    assert not ask(do="pile", move="judge", rows=rows)["ok"]
    assert ask(do="pile", move="look", rows=rows)["ok"]
