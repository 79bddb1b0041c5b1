"""Sides and names of mistakes when papers are marked: one direction is one answer, the plainest mistake comes first."""

import numpy
import pytest

from pycore.drawing import Group, Line, Page
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.pages.class_set import TOPICS
from pycore.pages.question_paper import read_paper
from pycore.pages.question_paper_marks import QuestionMarks, marking_of
from pycore.practice.catalogue import mistake
from pycore.practice.explaining import LearnerAnswer, causes
from pycore.practice.plainness import FAR_FETCHED, PLAIN, plainest_first
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS
from pycore.sheet.kinds import OVERLAY
from pycore.words.mistakes import NAMES

COIL = "/series-circuit/#v=3&r=39&l=100 mH&c=&supply=2 A&frequency=50"
"""2 A through 39 Ω and 31.416 Ω: 100.16 V at 38.85 degrees (numpy: abs and angle of 2 (39 + 31.416j))."""
SIZE, ANGLE = "100.16 V", 38.85
LINE_3 = "/star-and-delta/#v=3&z1=44&z2=25&z3=47&volts=110&connection=delta&line=3&known=line&sequence=123"


def marked(link: str, answer: str, **more: str) -> QuestionMarks:
    """One answer, as drawn and as calculated, marked."""
    form = {"questions": "1", "q1-link": link, **more}
    marking = marking_of(read_paper(form, "Ada Lark"), f"Ada Lark; 1; {answer}; {answer}")
    list(marking.steps())
    assert not marking.refused
    return marking.results[0]


def outcome(link: str, answer: str) -> tuple[object, ...]:
    """All that marking says of an answer."""
    one = marked(link, answer)
    return one.total, one.marks, one.remarks, one.mistakes


CONVENTIONS = ("", "&angles=polar", "&rotation=clockwise", "&angles=polar&rotation=clockwise")


@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize("right", ["38.85", "+38.85", "-321.15"])
def test_a_right_direction_is_right_however_it_is_counted(convention: str, right: str):
    assert (10, 10) == marked(COIL + convention, f"{SIZE} at {right}").total


@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize(("first", "second"), [("-38.85", "321.15"), ("268.8", "-91.2"), ("200", "-160")])
def test_two_ways_to_write_one_direction_are_marked_alike(convention: str, first: str, second: str):
    one, two = (outcome(COIL + convention, f"{SIZE} at {angle}") for angle in (first, second))
    assert one == two
    assert (10, 10) != one[0]


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_a_bare_number_is_positive_and_on_the_wrong_side_its_side_is_missing(convention: str):
    """A leading voltage: coil and capacitor that leave 31.416 Ω the other way, so -38.85 degrees is right. Where the
    class writes sides in words, a number alone was called "all angles in the wrong direction"."""
    link = "/series-circuit/#v=3&r=39&l=&c=101.32118 µF&supply=2 A&frequency=50" + convention
    assert (10, 10) == marked(link, f"{SIZE} at -38.85").total
    bare = marked(link, f"{SIZE} at 38.85")
    signed = marked(link, f"{SIZE} at +38.85")
    assert "side missing" not in " ".join(signed.remarks)
    assert signed.total[1] < 10
    if "polar" in convention:
        assert (signed.total, signed.remarks) == (bare.total, bare.remarks)
    else:
        assert all("size and angle right, side missing" in remark for remark in bare.remarks)
        assert () == bare.mistakes
        assert bare.total[0] > signed.total[0] and bare.total[1] == 10


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_a_sign_against_its_word_is_for_a_person_to_decide(convention: str):
    positive, negative = ("clockwise", "anticlockwise")[:: 1 if "rotation" in convention else -1]
    assert "side missing" in " ".join(marked(COIL + convention, f"{SIZE} at -38.85 {positive}").remarks)
    said, bare = (marked(COIL + convention, f"{SIZE} at -38.85{word}") for word in (f" {negative}", ""))
    assert (said.total, said.remarks) == (bare.total, bare.remarks)


BOTH_PARTS = "/series-circuit/#v=3&r=39&l=100 mH&c=100 µF&supply=2 A&frequency=50"


def test_a_part_left_out_comes_before_a_wrong_power_of_ten_that_gives_the_same():
    """Without its capacitor the circuit has 100.157 V at 38.85 degrees; microfarads as millifarads give 100.12."""
    found = marked(BOTH_PARTS, "100.16 V at 38.85")
    assert ("left-out",) == found.mistakes
    assert all("a phasor left out or microfarads used as millifarads" in remark for remark in found.remarks)


def test_marking_names_every_mistake_that_the_scheme_puts_in_one_column():
    """A wrong sign: the scheme's column names three."""
    found = marked(COIL, f"{SIZE} at -38.85")
    calculated = next(remark for remark in found.remarks if remark.startswith("calculated"))
    assert "coil and capacitor swapped" in calculated
    assert "all angles in the wrong direction" in calculated


@pytest.mark.parametrize("slug", TOPICS)
def test_in_every_catalogue_the_plainest_of_like_mistakes_comes_first(slug: str):
    """Every mistake made exactly: no cause has a far-fetched name before a plain one."""
    page = TOPICS[slug]
    task = page.task(default_form(page.fields))
    for how in (DRAWN, CALCULATED):
        for one in task.by(how).mistakes:
            answer = LearnerAnswer(one.size, None, how=how)
            for cause in causes(task.by(how), answer, NO_LIMITS):
                assert cause.mistakes == plainest_first(cause.mistakes)


def test_equally_plain_mistakes_keep_their_order_and_the_far_fetched_come_last():
    keys = ("radians", "kinds-exchanged", "micro-as-milli", "mirrored", "reactances-added", "other-diagonal")
    listed = [mistake(key, (CALCULATED,), 1 + 0j) for key in keys]
    assert [
        "mirrored", "reactances-added", "kinds-exchanged", "other-diagonal", "radians", "micro-as-milli",
    ] == [one.key for one in plainest_first(listed)]  # fmt: skip


def test_the_ranks_name_mistakes_that_exist_and_none_twice():
    own = {one.key for page in TOPICS.values() for one in page.task(default_form(page.fields)).mistakes}
    assert not (PLAIN | FAR_FETCHED) - own - NAMES.keys()
    assert not PLAIN & FAR_FETCHED


def test_the_wrong_scale_at_the_tip_is_named_in_the_order_of_the_table():
    """2.34 A at 120 degrees, then 4.40 A at 0 in place of 60: 3.81 A at 32 (numpy)."""
    found = marked(LINE_3, "3.81 A at 32")
    assert "drawn: wrong protractor scale at one tip" in found.remarks
    assert "other-scale-at-tip" in found.mistakes


def _dashed(page: Page) -> list[Line]:
    """The lines of an overlay that go the other way round."""
    figure = next(item for item in page.items if isinstance(item, Group) and item.role == "figure")
    listed = [item for item in figure.items if isinstance(item, Group) and item.name == "as-listed"]
    return [line for group in listed for line in group.items if isinstance(line, Line)]


@pytest.mark.parametrize(("line", "others"), [("1", 0), ("2", 2), ("3", 2)])
def test_an_overlay_covers_two_phasors_drawn_in_the_order_of_the_table(line: str, others: int):
    """Line 3: I31 is 110 / 47 A at 120 degrees, -I23 110 / 25 A at 60; they end together (numpy)."""
    page = TOPICS["star-and-delta"]
    form = default_form(page.fields) | {"z1": "44", "z2": "25", "z3": "47", "volts": "110", "line": line}
    case = page.case(form)
    (overlay,) = page.issued_of(case, ReopenInfo(issue=SetPlace("", 1, 2)), (OVERLAY,))
    drawn = _dashed(overlay)
    assert others == len(drawn)
    if line == "3":
        steps = [complex(one.end.x - one.start.x, one.end.y - one.start.y) / case.sheet_plan().factor for one in drawn]
        turns = numpy.exp(1j * numpy.radians([120.0, 60.0]))
        assert numpy.allclose(steps, numpy.array([110 / 47, 110 / 25]) * turns)
        assert drawn[0].end == drawn[1].start
