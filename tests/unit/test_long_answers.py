"""Generator 2: the answer of each problem is long on the sheet, and its lines cross well."""

import pytest

from pycore import phasor
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.construction import flattest
from pycore.practice.codes import GENERATOR, TIERS, Code
from pycore.practice.long_answers import LADDER, SIDE, drawn, reads_well, scale_for
from pycore.sheet.media import layout
from pycore.sheet.scale import STEPS

NUMBERS = range(1, 31)
LEAST = {"A4": 60.0, "A5": 30.0}
"""mm. A5 has 0.6 of the room of A4; scales halve from one size to the other at the worst."""
CROSSING_WELL = 0.9
"""The least share of problems whose dashed lines cross at more than 20 degrees."""


def length(page: object, code: Code) -> tuple[float, float]:
    """How long the answer is on the sheet, mm, and the flattest crossing by parallelogram."""
    case = page.case(page.practice_form(code))
    plan = case.sheet_plan()
    # The power triangle asks for the capacitor's reactive power; all others for the sum that is drawn.
    size = phasor.magnitude(page.task_of_case(case).result) if page.slug == "power-triangle" else case.size
    drawn_by = "parallelogram" if case.possible("parallelogram") == "parallelogram" else case.method
    construction = case.plans(drawn_by)[0].construction if drawn_by in case.methods else plan.construction
    return size * plan.factor, flattest(construction)


@pytest.mark.parametrize("paper", LEAST)
@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_answer_of_a_new_set_is_long_on_its_sheet(slug: str, paper: str):
    page = CALCULATORS[slug]
    found = [length(page, Code(page.topic, tier, "any", paper, 4, number)) for tier in TIERS for number in NUMBERS]
    assert min(mm for mm, _ in found) >= LEAST[paper]
    well = sum(crossing > 20.0 for _, crossing in found)
    assert well >= CROSSING_WELL * len(found)


DRAWN_AGAIN = [slug for slug, page in CALCULATORS.items() if hasattr(page.practice(), "first_accepted")]
"""The calculators that draw a problem until one may be set by the common rule."""


@pytest.mark.parametrize("slug", DRAWN_AGAIN)
def test_few_problems_are_drawn_before_one_may_be_set(slug: str, monkeypatch: pytest.MonkeyPatch):
    """A class set must stay quick: 20 draws at the most on the average (generator 1: 13)."""
    page, draws = CALCULATORS[slug], []
    practice, taken = page.practice(), page.practice().first_accepted

    def counting(code: Code, draw: object, accepted: object) -> object:
        return taken(code, lambda *given: draws.append(1) or draw(*given), accepted)

    monkeypatch.setattr(practice, "first_accepted", counting)
    for tier in TIERS:
        draws.clear()
        for number in range(1, 101):
            page.practice_form(Code(page.topic, tier, seed=4, number=number))
        assert len(draws) <= 2000


def test_nearly_every_calculator_is_tried():
    assert 9 <= len(DRAWN_AGAIN)


def test_the_paper_is_as_it_was_when_the_generator_was_new():
    area = layout("A4", "landscape", 4).area
    margin = layout("A4", "landscape", 4).style.margin
    assert min(area.width, area.height) - 2 * margin == SIDE
    assert (*STEPS["all"], 10.0) == LADDER
    assert GENERATOR == 2


@pytest.mark.parametrize(("extent", "scale"), [(157.0, 10.0), (157.1, 20.0), (31.4, 2.0), (62.0, 4.0), (0.3925, 0.025)])
def test_a_scale_is_the_finest_that_fits(extent: float, scale: float):
    assert scale == pytest.approx(scale_for(extent), rel=1e-12)


def test_lines_that_cross_flatly_or_a_short_sum_do_not_read_well():
    assert reads_well((100 + 0j, phasor.polar(80.0, 60.0)))
    assert not reads_well((100 + 0j, phasor.polar(80.0, 10.0)))
    assert not reads_well((100 + 0j, phasor.polar(80.0, 160.0)))
    extent, crossing = drawn((100 + 0j, phasor.polar(80.0, 60.0)))
    assert (140.0, 60.0) == pytest.approx((extent, crossing))
