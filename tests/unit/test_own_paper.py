"""Drawing on blank paper of one's own: what fits, where the common point goes, what is judged, and by which scale."""

import json
import re
import unicodedata

import blank_paper
import pymupdf
import pytest
from unit.sheets import DEFAULT, NEUTRAL, on_page, texts
from unit.test_photograph import flat, followed, points, wrong_lines

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.geometry import Point
from pycore.pages.codes import find
from pycore.practice import photograph
from pycore.practice.photograph import Photo, PhotoJudgement
from pycore.sheet.media import OWN_MARGIN, PAPERS, size_of
from pycore.sheet.own_paper import common_point
from pycore.sheet.strokes import figure_box
from pycore.sums.answer import Move
from pycore.sums.lesson import Lesson
from pycore.sums.photograph import PhotoTask, photo_task
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import look_of
from pycore.words import plain

HOMEWORK = {"i1": "9.2", "i2": "14.7", "i3": "6.5", "scale": "1"}
"""Draw at 1 cm = 1 A on plain A4: 22 mm too wide beside the words of a printed sheet."""
METHODS = ("parallelogram", "tip-to-tail", "components")


def form_of(slug: str = "neutral-current", **choices: str) -> dict[str, str]:
    """A page's example with these choices; dashes are underscores here."""
    named = {name.replace("_", "-"): value for name, value in choices.items()}
    return {**default_form(CALCULATORS[slug].fields), **named}


def homework(**choices: str) -> dict[str, str]:
    """The homework on blank A4."""
    return form_of(**{**HOMEWORK, "own_paper": "A4", **choices})


def first_moves(form: dict[str, str], slug: str = "neutral-current") -> dict[str, str]:
    """The first move of every construction, by its key."""
    workings = CALCULATORS[slug].answer(form).workings
    moves = {one.key: [block for block in one.blocks if isinstance(block, Move)] for one in workings}
    return {key: plain(found[0].phrase) for key, found in moves.items() if found}


# What fits.


@pytest.mark.parametrize("way", ["landscape", "portrait"])
@pytest.mark.parametrize("method", METHODS)
def test_the_homework_fits_blank_a4_both_ways_round_at_its_own_scale(way: str, method: str):
    answer = NEUTRAL.answer(homework(own_way=way, method=method))
    assert () == answer.faults
    assert {"scale": 1.0} == {one.name: one.value for one in answer.outputs if one.name == "scale"}
    assert size_of("A4", way) == (answer.sheet.width, answer.sheet.height)
    told = first_moves(homework(own_way=way, method=method))
    assert {"parallelogram-12", "parallelogram-13", "tip-to-tail-12", "tip-to-tail-13", "components"} <= set(told)
    for key, sentence in told.items():
        assert "1\u00a0cm\u00a0=\u00a01\u00a0A" in sentence, key


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("way", ["landscape", "portrait"])
def test_the_common_point_is_at_whole_or_half_centimetres_and_the_figure_on_the_paper(paper: str, way: str):
    for slug, page in CALCULATORS.items():
        plan = page.case(form_of(slug, own_paper=paper, own_way=way)).sheet_plan()
        at, box = common_point(plan), figure_box(plan.construction, plan.picture)
        assert (0.0, 0.0) == (at.x % 5.0, at.y % 5.0)
        width, height = size_of(paper, way)
        least = OWN_MARGIN - 2.5
        assert least <= at.x + box.left * plan.factor and at.x + box.right * plan.factor <= width - least
        assert least <= at.y + box.bottom * plan.factor and at.y + box.top * plan.factor <= height - least


def test_the_drawing_on_the_sheet_starts_where_the_first_move_says():
    form = homework(own_way="portrait")
    case = NEUTRAL.case(form)
    at = common_point(case.sheet_plan())
    assert Point(70.0, 140.0) == at == photo_task(NEUTRAL, form).origin
    assert "7\u00a0cm from the left edge, 14\u00a0cm from the lower edge" in first_moves(form)["parallelogram-12"]


def test_an_order_that_has_no_room_keeps_the_scale_and_says_what_has_room():
    told = first_moves(homework(own_way="landscape"))["parallelogram-23"]
    assert "No room on A4 paper (landscape)" in told and "8\u00a0mm too high" in told
    assert told.endswith("It fits on A4 paper (portrait).")


# What is refused.


def refusal(form: dict[str, str]) -> tuple[str, dict[str, dict[str, str]]]:
    """The message at the scale, and what each of its buttons sets."""
    answer = NEUTRAL.answer(form)
    (fault,) = answer.faults
    assert "scale" == fault.field
    return fault.message.replace("\u00a0", " "), {offer.label: dict(offer.values) for offer in fault.offers}


def test_a_printed_sheet_that_has_no_room_offers_blank_paper_of_the_same_size():
    message, offers = refusal(form_of(**HOMEWORK))
    assert "22 mm too wide" in message and "on blank A4 paper of your own or on A3" in message
    assert {"own-paper": "A4"} == offers["Draw on my own A4"]
    assert () == NEUTRAL.answer({**form_of(**HOMEWORK), **offers["Draw on my own A4"]}).faults


def test_blank_paper_that_is_too_small_names_the_scale_the_other_way_round_and_the_larger_paper_that_take_it():
    form = homework(i1="20", i2="1", i3="1", own_way="landscape")
    message, offers = refusal(form)
    assert "it is 15 mm too high" in message
    assert {"own-way": "portrait"} == offers["Turn the paper: portrait"]
    assert {"own-paper": "A3"} == offers["Use A3 paper"]
    assert "A4 paper (portrait)" in message and "on A3" in message
    (scale,) = [values for values in offers.values() if "scale" in values]
    for values in offers.values():
        assert () == NEUTRAL.answer({**form, **values}).faults
    # The next finer step of the ladder does not fit: what is offered is the largest that does.
    finer = {"2": "1", "2.5": "2"}[scale["scale"]]
    assert NEUTRAL.answer({**form, "scale": finer}).faults


def test_the_last_good_drawing_stays_where_the_scale_does_not_fit():
    answer = NEUTRAL.answer(homework(scale="0.1"))
    assert answer.faults and "1\u00a0cm\u00a0=\u00a01\u00a0A, chosen to fit." in answer.echo["scale"]["said"]
    assert 7.24 == round(answer.outputs[0].value, 2)


# Links.


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_link_brings_the_paper_and_the_scale_and_one_without_them_stays(slug: str):
    page = CALCULATORS[slug]
    form = form_of(slug, own_paper="A3", own_way="portrait")
    pairs = page.answer(form).link
    opened = links.open_fragment(links.fragment(pairs), page.fields)
    assert ("A3", "portrait") == (opened.form["own-paper"], opened.form["own-way"])
    assert pairs == page.answer(opened.form).link
    before = page.answer(form_of(slug)).link
    assert not [key for key, _ in before if key.startswith("own-")]
    assert {"own-paper": "", "own-way": ""} == {
        name: links.open_fragment(links.fragment(before), page.fields).form[name] for name in ("own-paper", "own-way")
    }


# What is judged.


def marked(form: dict[str, str], **given: str) -> dict:
    """The checker's reply."""
    named = {name.replace("_", "-"): value for name, value in given.items()}
    request = {"do": "mark", "page": "neutral-current", "form": form, "given": {"answer-how": "drawn", **named}}
    return json.loads(api.handle(json.dumps(request))[0])


def test_the_checker_judges_by_the_learners_own_scale():
    right = {"answer": "72.5", "answer_unit": "mm", "answer_angle": "101", "answer_side": "clockwise"}
    assert "accept" == marked(homework(), **right)["band"]
    at_half = marked(homework(), **{**right, "answer": "36.2"})
    assert "wrong" == at_half["band"]


PLAIN = Photo(2000, 1500, 1.2)


def photographed(one: PhotoTask, drawn: dict[str, Point]) -> PhotoJudgement:
    """The judgement of a drawing on plain paper, by the four corners of the paper in a photograph from above."""
    assert one.own
    width, height = size_of(*one.paper)
    corners = [Point(0.0, height), Point(width, height), Point(width, 0.0), Point(0.0, 0.0)]
    seen = photograph.measured_by(PLAIN, corners, [flat(corner) for corner in corners], by_hand=True)
    return photograph.measure(one.drawing, seen, PLAIN, {name: flat(at) for name, at in drawn.items()}, sheet=False)


@pytest.mark.parametrize("method", METHODS)
def test_a_photograph_of_a_right_drawing_on_blank_paper_is_judged_right(method: str):
    one = photo_task(NEUTRAL, homework(method=method))
    assert "accept" == photographed(one, points(one)).band


def test_a_scale_that_is_not_the_learners_own_is_named_on_blank_paper():
    """All lines at 1 cm = 2 A, which a printed sheet would have; and one arrow drawn the wrong way."""
    one = photo_task(NEUTRAL, homework(order="12"))
    drawn = points(one)
    halved = {name: one.origin.plus(at.minus(one.origin).times(0.5)) for name, at in drawn.items()}
    assert "wrong" == photographed(one, halved).band
    turned = {**drawn, "T2": one.origin.minus(drawn["T2"].minus(one.origin))}
    assert ["reversed"] == wrong_lines(photographed(one, followed(turned)))["O-T2"]


def test_the_photographs_panel_knows_the_paper():
    request = {"do": "photo", "page": "neutral-current", "form": homework(own_way="landscape")}
    reply = json.loads(api.handle(json.dumps(request))[0])
    panel = reply["regions"]["photo"]
    assert '<option value="landscape" selected>' in panel and '<option value="A4" selected>' in panel
    assert 'value="marks"' not in panel and reply["marks"] == []


def practice(**more: object) -> dict:
    """A reply of free practice."""
    return json.loads(api.handle(json.dumps({"do": "practice", "move": "open", "record": None, "seed": 5, **more}))[0])


def test_practice_asks_and_judges_by_the_learners_own_paper_and_scale():
    drawn = {"scale": "3", "own-paper": "A4", "own-way": "portrait"}
    reply = practice(drawn=drawn)
    assert reply["ok"] and [] == reply["errors"]
    assert "1\u00a0cm\u00a0=\u00a03\u00a0A" in reply["echo"]["scale"]["said"]
    assert "from the left edge" in reply["regions"]["draw"]
    code = reply["record"]["ways"][reply["way"]]["code"]
    case = NEUTRAL.case({**find(code).form, **drawn})
    given = {"answer-how": "drawn", "answer": f"{case.size * case.sheet_plan().factor:.1f}", "answer-unit": "mm"}
    judged = practice(move="mark", record=reply["record"], given=given, drawn=drawn)
    assert "wrong" != judged["band"]
    assert "wrong" == practice(move="mark", record=reply["record"], given=given)["band"]


def test_practice_says_at_the_field_what_is_wrong_with_a_scale_and_keeps_the_problem():
    (error,) = practice(drawn={"scale": "0.1", "own-paper": "A5"})["errors"]
    assert "scale" == error["field"] and "does not fit on A5" in error["message"] and error["offers"]
    reply = practice(drawn={"scale": "none"})
    assert reply["ok"] and "scale" == reply["errors"][0]["field"]


# What is seen.


def test_a_phone_shows_the_edges_of_the_paper_and_lengths_of_the_paper():
    page = NEUTRAL.answer(homework(method="components")).views["phone"]
    groups = {item.name for item in page.items if getattr(item, "name", "")}
    assert {"frame", "edges"} <= groups


@pytest.mark.parametrize("own", ["", "A4"])
def test_a_phones_components_bear_the_millimetres_of_the_paper(own: str):
    """They bore those of the small picture."""
    answer = NEUTRAL.answer({**form_of(**DEFAULT), "method": "components", "own-paper": own})
    pages = answer.sheet, answer.views["phone"]
    on_sheet, on_phone = ({one.words for one in texts(page) if one.words.endswith("mm")} for page in pages)
    assert on_phone and on_phone <= on_sheet


# A robot that knows the sentences alone.


def test_a_robot_draws_right_on_blank_paper_by_the_sentences_alone():
    """Four problems of each calculator; build.py bench draws three hundred."""
    bands = [blank_paper.checked(one, blank_paper.drawn(one)) for one in blank_paper.problems(40, 1)]
    assert {"accept"} == set(bands) - {""}
    assert bands.count("accept") > 20


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_lesson_on_own_paper_begins_with_the_place_of_its_point(slug: str):
    """The picture has the paper, the point and both distances that the sentence tells, and no arrow yet."""
    case = CALCULATORS[slug].case(form_of(slug, own_paper="A4", own_way="landscape"))
    plan = case.sheet_plan()
    first = Lesson(plan, StepSentences(plan, case.notation), look_of(case)).show(1)
    told = re.findall(r"([\d.,]+\u00a0cm) from the", plain(first.sentence))
    assert 2 == len(told) and told == [one.words for one in texts(first.picture)]
    assert [] == on_page(first.picture, Arrow)
    assert "longest length" not in plain(first.sentence)  # the reading below says it


# On paper.


def letters(text: str) -> str:
    """Letters and figures alone, indices among them: as they are found in a PDF and in a sentence."""
    return "".join(filter(str.isalnum, unicodedata.normalize("NFKC", text)))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_pdf_on_own_paper_has_every_move_after_the_drawing(slug: str):
    form = form_of(slug, own_paper="A4", sheet="construction")
    reply, file = api.handle(json.dumps({"do": "pdf", "page": slug, "form": form}))
    assert json.loads(reply)["ok"] and file
    document = pymupdf.open(stream=bytes(file))
    found = letters(" ".join(page.get_text() for page in list(document)[1:]))
    page = CALCULATORS[slug]
    case = page.case(form)
    moves = [one.phrase for one in StepSentences(case.sheet_plan(), case.notation).all_moves() if isinstance(one, Move)]
    assert [] == [plain(move) for move in moves if letters(plain(move)) not in found]
    assert found.index(letters(plain(moves[0]))) < found.index(letters(plain(moves[-1])))
    # No line begins where no printer prints.
    assert all(word[0] > 50 for page in list(document)[1:] for word in page.get_text("words"))


def test_a_blank_sheet_of_own_paper_has_no_moves():
    _, file = api.handle(json.dumps({"do": "pdf", "page": "neutral-current", "form": homework(sheet="problem")}))
    assert file and len(pymupdf.open(stream=bytes(file))) == 1
