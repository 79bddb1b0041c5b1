"""A guess in words: rough on purpose, by the paper's own directions; and what a request may hold."""

import json
import re

import pytest
from unit.sheets import on_page

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.forms.fields import default_form
from pycore.geometry import ORIGIN, Point
from pycore.pages import practice
from pycore.practice import ladder
from pycore.quantity import NO_BREAK_SPACE
from pycore.render.guess import board_html, end_of, sentence_of
from pycore.words import practice as words

PLACED = CALCULATORS["neutral-current"].placed({**default_form(CALCULATORS["neutral-current"].fields), "scale": "2"})


@pytest.mark.parametrize(("end", "said"), [
    ((36.0, 1.0), "about 7 A, to the right"), ((0.0, 60.5), "about 12 A, straight up"),
    ((-20.0, -20.0), "about 6 A, down to the left"), ((30.0, -29.0), "about 8 A, down to the right"),
    ((0.4, -0.3), "the sum is zero"),
])  # fmt: skip
def test_a_guess_is_said_roughly(end: tuple[float, float], said: str):
    assert 5.0 == PLACED.factor
    assert f"Your guess: {said}." == sentence_of(PLACED, Point(*end)).replace(NO_BREAK_SPACE, " ")


def test_every_eighth_of_a_turn_has_its_own_words():
    said = [sentence_of(PLACED, ORIGIN.moved(50.0, 45.0 * eighth)) for eighth in range(8)]
    assert list(words.DIRECTIONS) == [one.partition(", ")[2].rstrip(".") for one in said]


@pytest.mark.parametrize("at", [None, [], [1], ["1", "2"], [1e9, 0], [float("nan"), 0], {"x": 1}, [1, 2, 3]])
def test_what_is_no_place_is_no_guess(at: object):
    assert ORIGIN == end_of({"at": at})


def test_a_guess_changes_nothing_in_the_record():
    record = ladder.written(practice.checked(practice.empty(7)))
    request = {"do": "practice", "move": "guess", "record": record, "seed": 7, "at": [10, 10]}
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert reply["ok"] and "record" not in reply
    assert "up to the right" in reply["regions"]["guess"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculators_guess_starts_where_its_drawing_does(slug: str):
    page = CALCULATORS[slug]
    placed = page.placed(default_form(page.fields))
    assert 0.0 < placed.start.x < placed.page.x and 0.0 < placed.start.y < placed.page.y


@pytest.mark.parametrize("way", [choice.key for choice in practice.choices()])
def test_a_phone_s_board_shows_what_the_sheet_has_begun_to_draw(way: str):
    """It was empty: the arrow of a guess began nowhere, and its scale could not be seen."""
    problem = practice.problem_of(practice.turned_to(practice.checked(practice.empty(5)), way))
    [sheet] = problem.page.pages(problem.form, kinds=("problem",))
    wide, narrow = str(board_html(problem, sheet, None)).split("board narrow")
    begun = [re.findall(r'data-phasor="\w+"|data-name="start"', board) for board in (wide, narrow)]
    assert 'data-name="start"' in begun[0] and begun[0] == begun[1]


def test_what_is_drawn_already_is_said_beside_the_guess():
    """Two of three phasors stood on the sheet without a word, as if their sum were asked."""
    way = f"{CALCULATORS['neutral-current'].topic}.parallelogram"
    record = ladder.written(practice.checked(practice.turned_to(practice.empty(5), way)))
    said = json.loads(api.handle(json.dumps({"do": "practice", "move": "open", "record": record, "seed": 5}))[0])
    told = re.sub("<[^>]*>", "", said["regions"]["guess-help"])
    assert re.search("I[123] and I[123] are drawn already.", told)
    assert "Your guess is for IN, the result of all line currents." in told
    assert words.GUESS_HELP in said["regions"]["guess-help"]


def test_where_nothing_is_drawn_nothing_is_said_of_it():
    way = f"{CALCULATORS['add-phasors'].topic}.tip-to-tail"
    record = ladder.written(practice.checked(practice.turned_to(practice.empty(5), way)))
    said = json.loads(api.handle(json.dumps({"do": "practice", "move": "open", "record": record, "seed": 5}))[0])
    assert "already" not in said["regions"]["guess-help"]


def test_own_paper_has_nothing_drawn_already():
    """The guess, the picture and the paper on the screen had two phasors that nobody had printed."""
    slug = "neutral-current"
    way = f"{CALCULATORS[slug].topic}.parallelogram"
    form = practice.problem_of(practice.turned_to(practice.checked(practice.empty(5)), way)).form
    assert "two" == form["start"]
    own = {**form, "own-paper": "A4"}
    drawn = {}
    for name, one in (("sheet", form), ("own", own)):
        case, [sheet] = CALCULATORS[slug].case(one), CALCULATORS[slug].pages(one, kinds=("problem",))
        reply = json.loads(api.handle(json.dumps({"do": "draw", "page": slug, "form": one}))[0])
        arrows = {placed.phasor for placed in on_page(sheet, Arrow)}
        drawn[name] = [len(case.begun(case.sheet_plan())), len(arrows), len(reply["printed"])]
    assert {"sheet": [2, 2, 2], "own": [0, 0, 0]} == drawn
