"""Nothing on a sheet or phone view of the shelf's pages touches what it should not, or leaves its frame."""

import itertools

import pytest
from bench.sheets import ink_outside
from host import shelf
from unit.sheets import frame_of, strokes, texts
from unit.test_sheet_clear import faults_of, told, touching

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow
from pycore.practice.codes import TIERS, Code
from pycore.writers.collect import collect

COUNT = 40
PAPERS = ("A5", "A4", "A2", "letter")


def written(tag: tuple) -> str:
    """A tag as its letters follow one another on the paper."""
    return "".join(part if isinstance(part, str) else part.letter + part.index for part in tag)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_text_of_a_random_sheet_touches_anything_or_leaves_the_frame(slug: str):
    page, faults, labels = CALCULATORS[slug], [], 0
    for number, form in enumerate(shelf.forms(slug, COUNT)):
        sheet = page.sheet_page(form)
        words = texts(sheet)
        labels += sum(text.step is not None for text in words)
        faults += [(number, fault) for fault in touching(words, strokes(sheet, words), frame_of(sheet))]
        faults += [(number, f"{source} leaves the frame") for source in ink_outside(sheet)]
    assert labels > COUNT
    assert [] == faults, told(faults)


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("own", ["A5", "A4", "A3"])
def test_nothing_touches_on_the_learners_own_paper(slug: str, own: str):
    """Not the distances of the common point from the edges either, on sheet and phone view. In a drawing that fills
    its paper to the edge there may be no free place: one such distance may then stand on a line."""
    page, faults = CALCULATORS[slug], []
    for number, form in enumerate(shelf.forms(slug, COUNT // 4)):
        answer = page.answer({**form, "own-paper": own, "own-way": "", "scale": ""}, ("sheet", "view"))
        for drawn in (answer.sheet, answer.views["phone"]):
            faults += [(number, fault) for fault in faults_of(drawn)]
    crowded = [(number, fault) for number, fault in faults if "(edges)" in fault]
    assert crowded[1:] == [] and crowded == faults, told(faults)


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
def test_the_smallest_sheet_bears_a_class_sets_notes_to_their_end(slug: str, orientation: str):
    """Nothing touches or leaves the frame, and no note is cut: question, values, and how to print."""
    page, faults = CALCULATORS[slug], []
    for tier, number in itertools.product(TIERS, range(8)):
        form = page.practice_form(Code(page.topic, tier, seed=5, number=number))
        sheet = page.sheet_page({**form, "paper": "A5", "orientation": orientation, "scale": "", "sheet": "problem"})
        said = " ".join(text.words for text in texts(sheet)).replace("\u00a0", " ")
        assert "Print at 100 %" in said and "For teaching." in said
        faults += [(number, fault) for fault in faults_of(sheet)]
    assert [] == faults, told(faults)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_label_of_a_phone_view_touches_anything_or_leaves_the_view(slug: str):
    page, faults = CALCULATORS[slug], []
    for number, form in enumerate(shelf.forms(slug, COUNT)):
        view = page.answer(form, ("view",)).views["phone"]
        faults += [(number, fault) for fault in faults_of(view, view.box)]
    assert [] == faults, told(faults)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_paper_both_ways_round_takes_the_example_by_every_method_and_kind(slug: str):
    page, faults = CALCULATORS[slug], []
    kinds = ("construction", "problem", "overlay")
    methods = [choice.value for field in page.fields if field.name == "method" for choice in field.options]
    ways = itertools.product(PAPERS, ("landscape", "portrait"), methods, kinds)
    for paper, orientation, method, kind in ways:
        form = {"paper": paper, "orientation": orientation, "method": method, "sheet": kind}
        sheet = page.sheet_page(form)
        said = faults_of(sheet)
        faults += [f"{paper} {orientation} {method} {kind}: {fault}" for fault in said]
    assert [] == faults


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_phasor_that_is_drawn_bears_a_tag(slug: str):
    page = CALCULATORS[slug]
    for form in shelf.forms(slug, 30):
        sheet = page.sheet_page({**form, "sheet": "construction"})
        drawn = {placed.phasor for placed in collect(sheet) if isinstance(placed.item, Arrow) and placed.phasor}
        case = page.case(form)
        tags = {key: written(case.notation.tags[key]) for key in drawn}
        words = [text.words for text in texts(sheet) if text.step is not None]
        assert [] == [tag for tag in tags.values() if tag not in words]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_lesson_and_the_handout_take_every_problem(slug: str):
    """Every step of every view that a problem offers has a sentence and a picture; of the waves' turn, both ends."""
    for number, form in enumerate(shelf.forms(slug, 8)):
        offered = shelf.ask(slug, form, "lesson")[0]["views"]
        assert offered[0] == "lesson"
        for view in offered:
            first, _ = shelf.ask(slug, form, "lesson", view=view, step=1)
            assert first["ok"] and first["view"] == view, (slug, number, view)
            steps = range(2, first["steps"] + 1) if view != "waves" else (first["steps"],)
            for step in steps:
                reply, _ = shelf.ask(slug, form, "lesson", view=view, step=step)
                assert reply["ok"] and reply["announce"], (slug, number, view, step)
                assert "<svg" in reply["regions"]["lesson-picture"]
