"""Free practice: the rule of its levels, its problems, its record, and the files that others may have written."""

import json
import re

import pytest

from pycore.api import handle
from pycore.pages import practice as page
from pycore.phasor import wrap
from pycore.practice import codes, ladder
from pycore.practice.codes import MOST_LEARNERS, TIERS, Code
from pycore.practice.ladder import LONGEST_FILE, Record, RecordError
from pycore.render.practice import kept_html

WAY = "0.parallelogram"


def fresh(seed: int = 77, **more: object) -> Record:
    return ladder.begun(Record(seed, WAY, **more))  # type: ignore[arg-type]


def solved(record: Record, tries: int = 1) -> Record:
    for _ in range(tries - 1):
        record = ladder.tried(record, right=False)
    return ladder.following(ladder.tried(record, right=True))


def given_up(record: Record) -> Record:
    return ladder.following(ladder.shown(record))


# The rule.


def test_two_right_at_the_first_try_bring_the_next_level_and_no_more_than_the_last():
    record, levels = fresh(), []
    for _ in range(7):
        record = solved(record)
        levels.append(record.current_track.level)
    assert [0, 1, 1, 2, 2, 2, 2] == levels
    assert (7, 7) == (record.streak, record.best)


def test_two_shown_bring_the_level_before_and_no_less_than_the_first():
    record, levels = solved(solved(solved(solved(fresh())))), []
    assert 2 == record.current_track.level
    for _ in range(6):
        record = given_up(record)
        levels.append(record.current_track.level)
    assert [2, 1, 1, 0, 0, 0] == levels
    assert (0, 4) == (record.streak, record.best)


def test_a_later_try_and_a_shown_answer_break_the_run_upwards():
    assert 0 == solved(solved(solved(fresh()), tries=2)).current_track.level
    assert 1 == solved(solved(solved(solved(fresh()), tries=2))).current_track.level
    assert 0 == solved(given_up(solved(fresh()))).current_track.level
    assert 2 == solved(fresh(), tries=3).streak + 1


def test_a_run_of_the_other_kind_begins_at_one():
    record = given_up(solved(fresh()))
    assert -1 == record.current_track.run
    assert 1 == solved(record).current_track.run


def test_a_problem_that_is_done_changes_nothing_more():
    done = ladder.tried(fresh(), right=True)
    assert done == ladder.tried(done, right=True) == ladder.tried(done, right=False, mistakes=["left-out"])
    assert done == ladder.shown(done)
    shown = ladder.shown(fresh())
    assert shown == ladder.tried(shown, right=True)


def test_each_way_keeps_its_own_level_and_its_own_problem():
    record = solved(solved(fresh()))
    mine = record.current_track
    other = ladder.turned_to(record, "0.components")
    assert (0, 1) == (other.current_track.level, other.current_track.problems)
    assert mine == ladder.turned_to(other, WAY).current_track
    assert 2 == ladder.turned_to(other, WAY).streak


def test_mistakes_are_counted_by_their_key():
    record = ladder.tried(fresh(), right=False, mistakes=["left-out"])
    record = ladder.tried(record, right=False, mistakes=["left-out", "reversed"])
    assert {"left-out": 2, "reversed": 1} == record.mistakes


def test_a_problem_that_was_only_looked_at_is_not_counted():
    """The record said "0 of 5 problems solved" to somebody who had opened five ways and done nothing."""
    record = fresh()
    for way in ("0.tip-to-tail", "0.components", WAY):
        record = ladder.turned_to(record, way)
    assert [0, 0, 0] == [track.unsolved for track in record.tracks.values()]
    assert "Problems solved: 0. Answer shown, or not solved yet: 0." in kept_html(record)
    assert 1 == ladder.tried(record, right=False).current_track.unsolved
    assert 1 == ladder.shown(record).current_track.unsolved
    assert 0 == ladder.tried(record, right=True).current_track.unsolved
    left = given_up(solved(solved(record)))
    assert (2, 1) == (left.current_track.solved, left.current_track.unsolved)
    assert "Problems solved: 2. Answer shown, or not solved yet: 1." in kept_html(left)
    assert 1 == ladder.merged(fresh(78), left).current_track.unsolved


# Its problems.


def test_the_same_record_gives_the_same_problem_and_no_problem_comes_twice():
    assert fresh() == fresh()
    record, seen = fresh(), []
    for _ in range(40):
        seen.append(record.current_track.code)
        record = solved(record)
    assert 40 == len(set(seen))
    assert all("parallelogram" == codes.read(code).method for code in seen)
    assert [TIERS[0], TIERS[0], TIERS[1], TIERS[1], TIERS[2]] == [codes.read(code).tier for code in seen[:5]]


def test_numbers_that_are_used_up_go_on_with_the_next_seed():
    way = ladder.TrackProgress(problems=MOST_LEARNERS - 1)
    record = Record(codes.SEEDS - 1, WAY, tracks={WAY: way})
    last = ladder.following(record)
    read = codes.read(last.current_track.code)
    assert (codes.SEEDS - 1, MOST_LEARNERS) == (read.seed, read.number)
    following = codes.read(ladder.following(last).current_track.code)
    assert (0, 1) == (following.seed, following.number)


# Its record, and files.


def kept(**changes: object) -> dict[str, object]:
    record = ladder.written(ladder.tried(solved(fresh()), right=False, mistakes=["left-out"]))
    return {**json.loads(json.dumps(record)), **changes}


def way_with(**changes: object) -> dict[str, object]:
    whole = kept()
    return {**whole, "ways": {WAY: {**whole["ways"][WAY], **changes}}}  # type: ignore[index]


def test_a_record_is_read_as_it_was_written():
    record = ladder.turned_to(ladder.tried(solved(fresh()), right=False, mistakes=["left-out"]), "0.components")
    assert record == ladder.read(json.loads(json.dumps(ladder.written(record))))
    assert record == ladder.read_text("\ufeff" + json.dumps(ladder.written(record), indent=2))


@pytest.mark.parametrize("topic", [10, 12, 99, 100, codes.MOST_TOPICS - 1])
def test_a_record_holds_ways_of_every_topic_beside_those_of_today(topic: int):
    way = ladder.track_key(topic, "parallelogram")
    record = ladder.following(ladder.turned_to(solved(fresh()), way))
    assert (topic, "parallelogram") == ladder.parts_of(way)
    assert (4, 3) == (record.current_track.code.count("-") + 1, record.tracks[WAY].code.count("-") + 1)
    assert topic == codes.read(record.current_track.code).topic
    assert record == ladder.read_text(json.dumps(ladder.written(record)))


def test_a_record_whose_code_is_in_the_longer_writing_keeps_it_in_its_own():
    longer = codes.write_as(2, codes.read(fresh().current_track.code))
    read = ladder.read(way_with(code=longer))
    assert fresh().current_track.code == read.current_track.code


@pytest.mark.parametrize(("value", "reason"), [
    (None, "kind"), ([], "kind"), ("text", "kind"), ({}, "kind"), (kept(kind="other"), "kind"),
    (kept(version=2), "version"), (kept(version="1"), "version"), (kept(more=1), "key"),
    ({**kept(), "__proto__": {"polluted": 1}}, "key"), ({**kept(), "constructor": {}}, "key"),
    (kept(seed=-1), "value"), (kept(seed=1.5), "value"), (kept(seed=True), "value"), (kept(seed=40000), "value"),
    (kept(way="0.any-other"), "value"), (kept(way=7), "value"), (kept(way="1000.components"), "value"),
    (kept(way="012.components"), "value"), (kept(way="+1.components"), "value"), (kept(way="٣.components"), "value"),
    (kept(way="9" * 5000 + ".components"), "value"), (kept(way="0components"), "value"), (kept(way="1.0"), "value"),
    (kept(ways={"12.parallelogram": kept()["ways"][WAY]}), "value"),  # type: ignore[index]
    (kept(streak=10), "value"), (kept(best=10**9), "value"), (kept(ways=[]), "value"),
    (kept(ways={"__proto__": {}}), "value"), (kept(mistakes={"__proto__": 1}), "key"),
    (kept(mistakes={"<b>": 1}), "key"), (kept(mistakes={"left-out": -1}), "value"),
    (kept(mistakes={f"m{number}": 1 for number in range(300)}), "value"),
    (way_with(level=3), "value"), (way_with(run=2), "value"), (way_with(code="333-JDL-2GB"), "value"),
    (way_with(code=str(Code(0, "core", "components"))), "value"), (way_with(code=5), "value"),
    (way_with(done="maybe"), "value"), (way_with(done=[]), "value"), (way_with(solved=99), "value"),
    (way_with(toString=1), "key"),
])  # fmt: skip
def test_what_is_no_record_is_refused_with_the_reason(value: object, reason: str):
    with pytest.raises(RecordError) as caught:
        ladder.read(value)
    assert reason == caught.value.reason


@pytest.mark.parametrize(("text", "reason"), [
    ("", "text"), ("{", "text"), (json.dumps(kept())[:-9], "text"), ("[" * 90_000, "deep"),
    ('{"a":' * 9 + "1" + "}" * 9, "deep"), (" " * (LONGEST_FILE + 1), "long"), ("NaN", "kind"), ("1e999", "kind"),
    ('{"kind": "' + "[" * 50 + '"}', "kind"), ('"' + "\\" * 3, "text"),
])  # fmt: skip
def test_hostile_files_are_refused_with_the_reason(text: str, reason: str):
    with pytest.raises(RecordError) as caught:
        ladder.read_text(text)
    assert reason == caught.value.reason


def test_two_records_merged_lose_nothing():
    mine = ladder.tried(solved(solved(fresh())), right=False, mistakes=["left-out"])
    other = ladder.tried(solved(solved(solved(fresh(5)))), right=False, mistakes=["left-out", "mean"])
    both = ladder.merged(mine, other)
    assert {"left-out": 2, "mean": 1} == both.mistakes
    assert (3, 3, mine.current_track.code) == (both.streak, both.best, both.current_track.code)
    assert mine.current_track.solved + other.current_track.solved == both.current_track.solved
    elsewhere = ladder.turned_to(other, "0.components")
    assert elsewhere.current_track == ladder.merged(mine, elsewhere).tracks["0.components"]
    assert both == ladder.read(ladder.written(both))


def test_an_own_file_taken_again_and_again_changes_nothing():
    """Its counts were added each time."""
    mine = ladder.tried(solved(solved(fresh())), right=False, mistakes=["left-out"])
    assert mine == ladder.merged(mine, mine)
    earlier, later = mine, solved(solved(mine))
    assert later == ladder.merged(later, earlier)
    ahead = ladder.merged(earlier, later)
    assert (later.tracks[later.track].solved, later.mistakes) == (ahead.tracks[ahead.track].solved, ahead.mistakes)
    assert ahead == ladder.merged(ahead, later) == ladder.merged(ladder.merged(ahead, later), later)


# By the api.


def ask(move: str, **more: object) -> dict:
    return json.loads(handle(json.dumps({"do": "practice", "move": move, **more}))[0])


def test_a_new_device_gets_its_own_first_problem():
    one, two = ask("open", seed=1), ask("open", seed=2)
    assert ("asking", True) == (one["state"], one["ok"])
    assert one["record"]["ways"] != two["record"]["ways"]
    assert one["record"] == ask("open", seed=9, record=one["record"])["record"]


def test_every_way_has_problems_that_can_be_solved():
    listed = [choice.key for choice in page.choices()]
    assert {"0.parallelogram", "0.tip-to-tail", "0.components"} <= set(listed)
    record = ask("open", seed=3)["record"]
    for way in listed:
        reply = ask("way", record=record, way=way)
        assert way == reply["way"]
        found = page.problem_of(ladder.read(reply["record"]))
        task = found.page.task(found.form)
        given = {"answer-how": "calculated", "answer": f"{task.size / task.writing.factor!r}",
                 "answer-unit": task.writing.unit}  # fmt: skip
        if task.angled:
            turned = task.sense * wrap(task.angle - task.turn)
            given |= {"answer-angle": f"{abs(turned):.3f} {'anticlockwise' if turned > 0 else 'clockwise'}"}
        marked = ask("mark", record=reply["record"], given=given)
        assert ("accept", "solved") == (marked["band"], marked["state"]), way
        assert "<svg" in marked["regions"]["drawn"]


def test_the_answer_is_not_told_before_it_is_found_or_asked_for():
    reply = ask("open", seed=11)
    found = page.problem_of(ladder.read(reply["record"]))
    shown = found.page.answer(found.form)
    # Numbers of a drawing's own, such as where a word stands, are no answer.
    said = re.sub("<[^>]*>", " ", " ".join(reply["regions"].values()))
    for output in shown.outputs[:2]:
        assert output.text not in said
    assert "" == reply["regions"]["drawn"]
    assert shown.outputs[0].text in ask("show", record=reply["record"])["regions"]["drawn"]


def test_a_wrong_answer_is_a_try_and_one_to_look_at_again_is_none():
    record = ask("open", seed=11)["record"]
    size = page.problem_of(ladder.read(record)).page.task(page.problem_of(ladder.read(record)).form).size
    wrong = ask("mark", record=record, given={"answer-how": "calculated", "answer": str(5.77 * size)})
    assert ("wrong", 1) == (wrong["band"], wrong["record"]["ways"][WAY]["tries"])
    near = ask("mark", record=record, given={"answer-how": "calculated", "answer": str(1.015 * size)})
    assert ("look", 0) == (near["band"], near["record"]["ways"][WAY]["tries"])


def test_an_answer_that_cannot_be_read_is_refused_at_its_field():
    reply = ask("mark", record=ask("open", seed=4)["record"], given={"answer": "four"})
    assert ["answer"] == [error["field"] for error in reply["errors"]]


def test_next_waits_until_a_problem_is_done():
    record = ask("open", seed=4)["record"]
    assert record == ask("next", record=record)["record"]
    after = ask("next", record=ask("show", record=record)["record"])
    assert (2, "asking") == (after["record"]["ways"][WAY]["had"], after["state"])


def test_a_damaged_record_begins_anew_and_says_so():
    reply = ask("open", seed=4, record={"kind": "nonsense"})
    assert reply["ok"]
    assert "could not be read" in reply["said"]


def test_a_file_is_taken_at_once_by_a_device_that_keeps_nothing_yet():
    file = json.dumps(kept())
    reply = ask("read", seed=4, record=ask("open", seed=4)["record"], text=file)
    assert json.loads(file) == reply["record"]
    assert "incoming" not in reply


def test_a_file_is_added_or_put_in_place_as_the_learner_says():
    mine = ask("show", record=ask("open", seed=4)["record"])["record"]
    mine = ask("next", record=ask("mark", record=ask("next", record=mine)["record"],
                                  given={"answer": "999 A", "answer-how": "drawn"})["record"])["record"]  # fmt: skip
    reply = ask("read", record=mine, text=json.dumps(kept()))
    assert mine == reply["record"]
    assert 'data-do="merge"' in reply["regions"]["incoming"]
    replaced = ask("replace", record=mine, incoming=reply["incoming"])["record"]
    assert kept() == replaced
    added = ask("merge", record=mine, incoming=reply["incoming"])["record"]
    assert added["ways"][WAY]["had"] == mine["ways"][WAY]["had"] + kept()["ways"][WAY]["had"]  # type: ignore[index]


def test_a_file_that_was_added_before_is_said_and_changes_nothing():
    given = {"answer": "999 A", "answer-how": "drawn"}
    mine = ask("mark", record=ask("open", seed=4)["record"], given=given)["record"]
    reply = ask("read", record=mine, text=json.dumps(kept()), before=True)
    assert (mine, "incoming" in reply) == (reply["record"], False)
    assert "was added to your record before" in reply["said"]


def test_a_hostile_file_is_refused_and_the_record_stays():
    mine = ask("open", seed=4)["record"]
    for text, said in (("{}", "not a practice record"), ("[" * 50_000, "too many nested levels"), ("{", "not JSON"),
                       (json.dumps(kept(version=9)), "version “9”"),
                       (json.dumps({**kept(), "__proto__": {}}), "“__proto__”")):  # fmt: skip
        reply = ask("read", record=mine, text=text)
        assert not reply["ok"]
        assert said in reply["said"]
        assert "record" not in reply


@pytest.mark.parametrize("move", ["", "other", None, 4, ["open"]])
def test_no_other_move_is_known(move: object):
    assert not ask(move)["ok"]  # type: ignore[arg-type]
