"""Easy reading names tool, place, zero line, reading and action of each move, each on its own line, with a picture."""

import json
import re

import pytest
from host import shelf

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.frames import PROTRACTOR, WORDS
from pycore.sums.tool_uses import ToolMoves
from pycore.words import plain
from pycore.words import tool_uses as words
from pycore.words.readings import PROTRACTOR_SLUG

FORMS = 12
NUMBER = re.compile(r"\d[\d.,]*")
FIRST = (words.TOOL, words.PLACE)


def moves(slug: str, form: dict[str, str]) -> ToolMoves:
    return ToolMoves(CALCULATORS[slug].case(form))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_each_use_of_a_tool_says_which_where_and_what_a_line_each(slug: str):
    protractors = 0
    for form in shelf.forms(slug, FORMS):
        listed = moves(slug, form)
        for move in listed.all():
            for use in move.uses:
                labels = tuple(line.label for line in use.lines)
                assert use.lines
                for line in use.lines:
                    assert ". " not in plain(line.phrase).replace("\u00a0", "_"), plain(line.phrase)
                if labels[0] != words.TOOL:
                    continue
                assert labels[0] == words.TOOL and {words.ACTION, words.READING} & set(labels), labels
                if use.protractor:
                    protractors += 1
                    assert labels[:4] == (*FIRST, words.ZERO_LINE, words.READING), labels
    assert protractors or slug in ("power-triangle", "series-circuit", "parallel-circuit")


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_frame_of_the_lesson_with_a_tool_is_one_use_in_its_own_step(slug: str):
    for form in shelf.forms(slug, FORMS):
        listed = moves(slug, form)
        steps = {use.frame: move.number for move in listed.all() for use in move.uses if use.frame}
        frames = dict(enumerate(listed.lesson.frames, start=1))
        assert set(steps) >= {number for number, frame in frames.items() if frame.tool != WORDS}
        assert all(frames[number].step == step for number, step in steps.items())
        numbers = [move.number for move in listed.all()]
        assert numbers == list(range(1, len(listed.sentences.construction.steps) + 1))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_protractors_lines_have_the_numbers_of_the_lesson(slug: str):
    for form in shelf.forms(slug, FORMS):
        listed = moves(slug, form)
        for use in (use for move in listed.all() for use in move.uses):
            frame = listed.lesson.frames[use.frame - 1]
            if not use.frame or frame.tool != PROTRACTOR:
                continue
            _, reading, _, size = listed.lesson.frame_words(frame)
            told = next(plain(line.phrase) for line in use.lines if line.label == words.READING)
            assert NUMBER.search(size)[0] == NUMBER.search(told)[0], (told, plain(reading))


def test_a_picture_is_made_for_one_frame_and_no_other():
    form = shelf.form("neutral-current", 0)
    listed = moves("neutral-current", form)
    frame = next(use.frame for move in listed.all() for use in move.uses if use.protractor)
    request = {"do": "easy", "page": "neutral-current", "form": form}
    whole = json.loads(api.handle(json.dumps(request))[0])["regions"]["easy"]
    assert f'data-easy-frame="{frame}"' in whole and "<svg" not in whole
    picture = json.loads(api.handle(json.dumps({**request, "frame": frame}))[0])["regions"]["picture"]
    assert picture.count("<svg") == 1 and f'id="easy-{frame}-title"' in picture and "data-instrument" in picture
    for wrong in (-1, 999, "3"):
        assert json.loads(api.handle(json.dumps({**request, "frame": wrong}))[0])["ok"] is False


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_move_by_protractor_has_the_way_to_the_page_that_shows_how_to_read_one(slug: str):
    way = f'<a href="../{PROTRACTOR_SLUG}/">'
    for form in shelf.forms(slug, FORMS):
        reply, _ = shelf.ask(slug, form, parts=["workings"])
        for move in re.findall(r"<li data-for-step.*?</li>", reply["regions"]["workings"]):
            needed = "rotractor’s centre" in move
            assert not needed or way in move, move
        easy = json.loads(api.handle(json.dumps({"do": "easy", "page": slug, "form": form}))[0])["regions"]["easy"]
        uses = [use for move in moves(slug, form).all() for use in move.uses if use.protractor]
        assert easy.count(way) == len(uses)
