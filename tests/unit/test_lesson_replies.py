"""What the lesson view is told of each step: where it is, what is hidden, what is read out; and its waves."""

import json
import math
import re

import pytest

from pycore import api
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.drawing import Circle, walk
from pycore.sheet.wave_view import MIDDLE
from pycore.sums import lesson as lessons
from pycore.sums.classroom import SumLesson

EXAMPLE = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
SLUG = "neutral-current"


def ask(**request: object) -> dict:
    reply = api.handle(json.dumps({"do": "lesson", "page": SLUG, "form": EXAMPLE, **request}))[0]
    return json.loads(reply)


def test_a_step_out_of_range_opens_the_nearest_and_says_so() -> None:
    last = ask(step="99")
    assert (21, 21) == (last["step"], last["steps"])
    assert "99" in last["notice"] and "Finished drawing" in last["notice"]
    assert 1 == ask(step="0")["step"]
    assert ask(step="-3")["notice"]
    assert ask(step="four")["notice"]
    assert "" == ask(step="4")["notice"]


def test_an_unknown_view_is_told_and_the_drawing_shown() -> None:
    reply = ask(view="cinema", step="2")
    assert ("lesson", 2) == (reply["view"], reply["step"])
    assert "cinema" in reply["notice"]


def test_a_hidden_reading_is_given_away_by_nothing_that_is_read_out() -> None:
    """Neither the sentence asked nor the picture's title holds the reading."""
    for step in range(1, 21):
        reply = ask(step=str(step))
        if not reply["hidden"]:
            continue
        told = re.search(r'data-reading="".*?</p>', reply["regions"]["lesson-text"]).group()
        amount = re.findall(r"(\d[\d.]*)(?:°|\s?mm)", re.sub(r"<[^>]*>", "", told))[-1]
        title = re.search(r"<title[^>]*>(.*?)</title>", reply["regions"]["lesson-picture"]).group(1)
        assert reply["hidden"] in reply["asked"]
        assert amount not in reply["asked"].partition(".")[2]
        assert amount not in title
        assert amount in reply["announce"]


def test_the_second_stages_angle_is_measured_not_given() -> None:
    """Of all steps of the parallelogram only that one is marked so."""
    measured = [step for step in range(1, 21) if ask(step=str(step))["measured"]]
    assert [13] == measured
    assert "Read the angle to I₃: about 157°." in ask(step="13")["announce"]


def test_the_answer_can_be_blanked() -> None:
    """The frames that tell it are marked; what is read out then is not it."""
    for step in (19, 20, 21):
        reply = ask(step=str(step))
        assert "data-answer-part" in reply["regions"]["lesson-text"]
        assert reply["blanked"] and "11.6" not in reply["blanked"] and "58" not in reply["blanked"]
    assert "" == ask(step="10")["blanked"]
    balanced = ask(form={"i1": "9", "i2": "9", "i3": "9"}, step="99")
    assert balanced["blanked"]
    assert "11.6" not in ask(view="together", step="1")["blanked"]


def test_waves_are_the_heights_of_their_arrows() -> None:
    """At every tenth degree the neutral's dot stands at the sum of the other dots."""
    for step in range(1, 37):
        page = SumLesson(NeutralCurrent().case(EXAMPLE)).show("waves", step).picture
        dots = {item.ink: item for item in walk(page.items) if isinstance(item, Circle) and item.radius == 1.0}
        heights = {ink: dot.centre.y - MIDDLE for ink, dot in dots.items()}
        assert 4 == len(heights)
        total = math.fsum(height for ink, height in heights.items() if ink != "blue")
        assert math.isclose(total, heights["blue"], abs_tol=1e-9)


def test_a_lesson_is_laid_out_once_for_all_its_steps(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each step of the handout laid it out twice more, and each answer marked did so for every cause."""
    laid = []
    monkeypatch.setattr(lessons, "stage_of", lambda *given, lay=lessons.stage_of, **more: laid.append(1) or
                        lay(*given, **more))  # fmt: skip
    form = {**EXAMPLE, "i1": "18.6"}
    assert ask(do="handout", form=form, style="", script="")["ok"]
    assert all(ask(form=form, step=str(step))["ok"] for step in (1, 5, 9))
    assert [1] == laid
    assert ask(do="mark", form=form, given={"answer": "3.1", "answer-how": "drawn"})["ok"]
    assert [1] == laid
