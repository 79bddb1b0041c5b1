"""The page's own script reads strokes from made-up photographs: where lines were drawn, and nowhere else."""

from dataclasses import replace

import pytest
from bench.pencil import reading_of, strokes_in
from bench.pencil_replies import ground_of, reply_to
from pencil_photographs import photographed
from pencilled import NEUTRAL, pencilled
from strokes_of import Reader

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.photograph import Photo, measured_by
from pycore.practice.stroke_reading import needed_points
from pycore.sums.strokes import strokes_task


@pytest.fixture(scope="module")
def reader():
    """One Node for all photographs."""
    with Reader() as one:
        yield one


@pytest.mark.parametrize("seed", [1, 9])
def test_a_photograph_is_read_to_a_millimetre(reader: Reader, seed: int):
    sheet = pencilled(seed)
    task = strokes_task(NEUTRAL, sheet.form)
    read = reading_of(reply_to(reader, photographed(sheet, seed, 2200).picture, task), task)
    assert read is not None
    assert sheet.method == read.reading.method
    places = {point.name: point.place for point in read.reading.points}
    for name in needed_points(sheet.want.drawing):
        assert geometry.distance(places[name], Point(*sheet.points[name])) < 1.0


def test_a_blank_sheet_has_no_strokes_to_speak_of(reader: Reader):
    """Print is left out, folds and shadows are no lines; what is written on it is short."""
    sheet = replace(pencilled(4), strokes=())
    shot = photographed(sheet, 4, 2200)
    task = strokes_task(NEUTRAL, sheet.form)
    marks = [Point(*shot.camera.seen(*place)) for place in task.photo.marks]
    projection = measured_by(Photo(*map(float, shot.picture.size), 1.0), task.photo.marks, marks, by_hand=False)
    reply = reader.ask(shot.picture, do="strokes", ground=ground_of(task, projection))
    assert reply["cover"] > 0.99
    assert not [stroke for stroke in strokes_in(reply["strokes"]) if stroke.length > 25.0]
