"""The bench shows and keeps what it measures at once; a failure or a missed goal is told and costs nothing else."""

import json
from pathlib import Path

import pytest
from making.bench import MEASUREMENTS, check_names, take
from making.bench_rows import Finding, Record, Row
from making.progress import BuildError

KEPT = Row("kept", 1.0, 4.0, "s", goal=0.25)
MISSED = Row("missed", 1.01, 4.0, "s", goal=0.25)


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "workshop" / "bench.json")


def test_a_goal_is_met_to_the_last_digit_and_missed_beyond():
    assert not KEPT.is_missed
    assert MISSED.is_missed
    assert "MISSED 0.25" in MISSED.line
    assert not Row("free", 9.0, 1.0, "s").is_missed
    assert Finding("counted", {"touching": 2}, ("touching",)).is_missed


def test_every_measurement_is_kept_when_it_is_done_and_the_latest_of_each_stays(record: Record):
    record.keep("start", [MISSED])
    record.keep("bytes", [KEPT, Finding("pages", {"home": 99})])
    again = Record(record.path)
    again.keep("start", [KEPT])
    kept = json.loads(record.path.read_text())
    assert {"start", "bytes"} == set(kept)
    assert [0.25] == [row["ratio"] for row in kept["start"]["results"]]
    assert ["missed"] == record.missed
    assert [] == again.missed


def test_a_measurement_that_fails_is_tried_again_and_leaves_the_others_standing(record: Record, capsys):
    tried = []

    def fails():
        tried.append(1)
        raise BuildError("the browser was gone\nmore of it")

    def fails_once():
        tried.append(2)
        if tried.count(2) == 1:
            raise ValueError("no report")
        return [KEPT]

    for name, measurement in (("first", fails), ("second", fails_once), ("third", lambda: [KEPT])):
        take(record, name, measurement)
    assert [1, 1, 2, 2] == tried
    assert {"second", "third"} == set(json.loads(record.path.read_text()))
    assert ["first"] == record.missed
    assert "first: FAILED: the browser was gone" in capsys.readouterr().out


def test_a_damaged_record_is_begun_anew(record: Record):
    record.path.parent.mkdir()
    record.path.write_text("{")
    record.keep("start", [KEPT])
    assert {"start"} == set(json.loads(record.path.read_text()))


def test_only_known_measurements_are_taken():
    check_names(tuple(MEASUREMENTS))
    with pytest.raises(BuildError, match="bench knows no speed: choose from bytes"):
        check_names(("start", "speed"))
