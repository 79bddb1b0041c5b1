"""The files of a question paper read back by other programs: learners get no answer, the mark scheme has them all."""

import cmath
import math
import re

import numpy
import paper_files
import pytest
from leaks import OWN_VALUES, leaks, needles
from paper_files import pages

from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages.question_paper import FIELDS, read_paper

ROLL = "Ada Lark\nBen Stone\nCleo Hart"
PRINTED = "297 210 420 100 120 125 0.5"
"""What the frame of a sheet says: its paper, the check bars."""


def made(form: dict[str, str], work: str, roll: str = ROLL, **more: object) -> tuple[dict, bytes]:
    """A file for three learners, or for those of a list."""
    return paper_files.made(form, work, roll, **more)


def link_of(slug: str) -> str:
    """A lecturer's own values on a calculator, as a link."""
    page = CALCULATORS[slug]
    pairs = links.form_pairs(default_form(page.fields) | OWN_VALUES[slug], page.fields)
    return f"https://folio.example/{slug}/#{links.fragment(pairs)}"


def test_each_learner_has_a_front_page_and_every_question():
    form = {"title": "Hall lighting", "college": "Northgate College", "group": "Tuesday", "questions": "2",
            "q1-before": "The stage has three dimmer circuits.", "q2-working": "none"}  # fmt: skip
    reply, data = made(form, "papers")
    texts = pages(data)
    code = str(read_paper(form, ROLL).code())
    assert f"question-paper-{code}.pdf" == reply["filename"]
    fronts = [text for text in texts if "Hall lighting" in text]
    assert 3 == len(fronts)
    for place, (name, front) in enumerate(zip(ROLL.splitlines(), fronts, strict=True), start=1):
        own = str(read_paper(form, ROLL).code(place))
        assert all(one in front for one in (name, "Northgate College", "Tuesday", "60 minutes", own, "Total"))
        assert 4 == sum(own in text for text in texts)
    assert 3 == sum("The stage has three dimmer circuits." in text for text in texts)
    assert len(texts) == 3 * 4


def test_equal_papers_give_equal_bytes():
    assert made({"questions": "2"}, "papers")[1] == made({"questions": "2"}, "papers")[1]


def test_one_learners_paper_is_that_of_the_whole_file():
    whole, one = (pages(made({}, work, **more)[1]) for work, more in (("papers", {}), ("one", {"which": "Ben Stone"})))
    count = len(whole) // 3
    assert whole[count : 2 * count] == one


@pytest.mark.parametrize("asks", ["both", "drawing", "calculation"])
@pytest.mark.parametrize("slug", OWN_VALUES)
def test_a_learners_paper_tells_nothing_of_the_answer(slug: str, asks: str):
    """In no unit and no rounding; the scheme, read in the same way, does tell it."""
    form = {"questions": "1", "q1-link": link_of(slug), "q1-asks": asks}
    page = CALCULATORS[slug]
    values = default_form(page.fields) | OWN_VALUES[slug]
    paper = read_paper(form)
    texts = pages(made(form, "papers", "")[1])
    # Three figures may stand in a row in a code.
    for place in range(1, paper.learners + 1):
        texts = [text.replace(str(paper.code(place)), "") for text in texts]
    printed = [*OWN_VALUES[slug].values(), page.case(values).values_text(), PRINTED]
    numbers = needles(page.answer(values, ("answer",)).outputs, " ".join(printed))
    assert numbers
    assert set() == leaks(texts, numbers)
    assert leaks(pages(made(form, "scheme", "")[1]), numbers)


def test_a_papers_sheets_hold_no_code_that_opens_a_problem():
    """With the paper's code alone no phone can show an answer; with problems' codes every sheet has its own."""
    problems = {str(one.code) for question in read_paper({}, ROLL).questions for one in question.learners() if one}
    text = " ".join(pages(made({}, "papers")[1]))
    assert problems
    assert not [code for code in problems if code in text]
    opened = " ".join(pages(made({"codes": "problem"}, "papers")[1]))
    assert all(code in opened for code in problems)


def test_the_scheme_has_every_answer_as_numpy_has_it():
    """Neutral currents of unequal lags, from the values on the scheme's own rows."""
    form = {"questions": "1", "q1-topic": "neutral-current", "overlays": "no"}
    table = "\n".join(pages(made(form, "scheme")[1]))
    for learner in (one for one in read_paper(form, ROLL).questions[0].learners() if one):
        sizes = [float(learner.form[key]) for key in ("i1", "i2", "i3")]
        total = numpy.sum([size * cmath.exp(-2j * math.pi * n / 3) for n, size in enumerate(sizes)])
        assert re.search(rf"\b{abs(total):#.3g} A", table)
        assert str(learner.code) in table


def test_the_scheme_has_an_overlay_for_each_drawing_and_none_where_nothing_is_drawn():
    counts = [
        sum("overlay" in text for text in pages(made(form, "scheme")[1]))
        for form in ({"questions": "2"}, {"questions": "2", "q2-asks": "calculation"}, {"overlays": "no"})
    ]
    assert [6, 3, 0] == counts


def test_what_is_told_of_a_saved_scheme_says_which_pages_are_overlays():
    """Who prints all of it printed ninety transparencies with twenty pages of answers."""
    reply, data = made({"questions": "2"}, "scheme")
    count = len(pages(data))
    assert f"Answers: pages 1–{count - 6}, overlays: pages {count - 5}–{count}." in reply["told"]
    assert "pages" not in made({"overlays": "no"}, "scheme")[0]["told"]


def test_marks_come_as_a_table_and_for_the_register():
    marks = "Ada Lark; 1; 3; 3\nBen Stone; 2; ; 9"
    reply, data = made({"title": "Hall lighting", "group": "Tuesday"}, "marks", results=marks)
    entry = reply["entry"]
    assert ("Hall lighting", "Tuesday", 30) == (entry["title"], entry["group"], entry["of"])
    assert ["Ada Lark", "Ben Stone"] == [one["name"] for one in entry["marks"]]
    lines = data.decode().splitlines()
    assert lines[0].startswith("\ufeffNo.,Name,Question,Drawn,Calculated,Scale,")
    assert 3 == len(lines)


def test_every_field_of_the_page_is_read():
    """A paper's form in a file holds what the page holds, and nothing of it is refused."""
    assert read_paper(default_form(FIELDS), ROLL).questions


def test_a_table_of_mistakes_is_in_the_unit_that_it_names():
    """Reactive powers of some learners are written in var, of others in kvar: one table has one unit."""
    form = {"questions": "1", "seed": "24388", "q1-topic": "power-triangle", "q1-asks": "calculation"}
    table = next(text for text in pages(made(form, "scheme")[1]) if "typical calculation mistakes" in text)
    unit = re.search(r"Sizes in (k?)var", table.split("typical calculation mistakes")[1])
    assert unit
    learners = [one for one in read_paper(form, ROLL).questions[0].learners() if one]
    sizes = [CALCULATORS["power-triangle"].task(one.form).size for one in learners]
    assert min(sizes) < 2000 < 5000 < max(sizes)
    for learner, size in zip(learners, sizes, strict=True):
        written = re.search(rf"{learner.code} ([0-9.]+) [0-9.]+ [0-9.]+ [0-9.]+ ", table)
        assert written
        assert float(written[1]) * (1000.0 if unit[1] else 1.0) == pytest.approx(size, rel=0.005)


@pytest.mark.parametrize("names", ["RYB", "ABC"])
def test_names_of_lines_stand_low_in_the_scheme(names: str):
    """I with a low R, not I_R: no underscore is printed."""
    texts = pages(made({"questions": "1", "names": names}, "scheme")[1])
    assert any("was left out" in text for text in texts)
    assert not [text for text in texts if "_" in text]
