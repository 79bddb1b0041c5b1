"""A seeded tenth of `python -m bench.independent`: learners who know nothing of the catalogue, against the marking."""

import ast
import math
from collections import Counter
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from bench.independent import CALCULATED_MISTAKES, COUNT, DRAWN, RIGHT_DRAWN, SEED, Scatter, Tally, row, simulate, table
from independent import calculated, conventions, drawn, outside
from independent.answers import Answer, post
from independent.hand import Hand, plan_of
from independent.problems import TOPICS, degrees, impedance, problem_of, problems

from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import Code

FOLDER = Path(conventions.__file__).parent
TENTH = COUNT // 10


def code_of(topic: int, tier: str, method: str) -> str:
    """The code of one sheet."""
    return str(Code(topic, tier, method, seed=77, number=4))


def near(one: complex, other: complex) -> bool:
    """Whether two values agree to a thousandth."""
    return abs(one - other) < 1e-3


@pytest.fixture(scope="module")
def tallies() -> dict[str, Tally]:
    """A tenth of every topic's learners."""
    return {slug: simulate(slug, TENTH) for slug in TOPICS}


@pytest.fixture(scope="module")
def whole(tallies: dict[str, Tally]) -> Tally:
    """All topics together."""
    found = Tally()
    for tally in tallies.values():
        found.add(tally)
    return found


def test_the_learners_import_nothing_of_the_catalogue():
    """From pycore they take the door and the codes of sheets."""
    imported = set()
    own = FOLDER.parent.glob("calculators/*/learners.py")
    for path in (*FOLDER.glob("*.py"), *own, FOLDER.parent / "bench" / "independent.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom):
                imported |= {f"{node.module}.{alias.name}" for alias in node.names}
            elif isinstance(node, ast.Import):
                imported |= {alias.name for alias in node.names}
    ours = {name for name in imported if name.split(".")[0] == "pycore"}
    assert {"pycore.api", "pycore.practice.codes.TIERS", "pycore.practice.codes.Code"} == ours


def test_every_topic_has_its_learners(tallies: dict[str, Tally]):
    assert set(CALCULATORS) == set(tallies)
    for tally in tallies.values():
        counts = tally.counts
        assert RIGHT_DRAWN * TENTH == counts["right drawn"]
        assert TENTH == counts["right calculated"]
        assert (DRAWN + CALCULATED_MISTAKES) * TENTH >= counts["described"] + counts["not to be seen"] >= 5 * TENTH
        assert counts["outside"] >= TENTH
        bands = sum(counts[f"right drawn {band}"] for band in ("accept", "look", "wrong"))
        assert counts["right drawn"] == bands


def test_right_answers_are_not_called_wrong(whole: Tally):
    assert whole.share("right drawn wrong", "right drawn") <= 1.0
    assert whole.share("right drawn look", "right drawn") <= 10.0
    assert 0 == whole.counts["right calculated wrong"]


def test_described_mistakes_are_seen_and_mostly_named(whole: Tally):
    """A tenth of the learners: the bounds leave room for their luck."""
    assert whole.counts["described"] >= 400
    assert whole.share("accepted", "described") <= 1.5
    assert whole.share("named", "described") >= 93.0
    assert whole.share("alone", "described") >= 86.0
    assert whole.share("by length named", "by length described") >= 92.0


def test_every_described_mistake_is_named_for_somebody(whole: Tally):
    """A description that has lost touch with the sentences of the catalogue names nobody."""
    often = {key: counts for key, counts in whole.by_key.items() if counts["described"] >= 4}
    assert len(often) >= 30
    assert [] == [key for key, counts in often.items() if not counts["named"]]


def test_mistakes_that_nobody_describes_are_seldom_named(whole: Tally):
    assert whole.counts["outside"] >= 100
    assert whole.share("falsely named", "outside") <= 8.0


def test_the_table_has_a_row_for_each_topic_and_mistake(tallies: dict[str, Tally], whole: Tally):
    lines = table(tallies).splitlines()
    for title in (*TOPICS, "all", "drawn reversed", "calculated radians"):
        assert 1 == len([line for line in lines if line.startswith(f"{title} ")])
    assert row("all", whole) in lines


def test_values_are_read_from_texts_as_the_trade_writes_them():
    assert near(impedance("27 Ω + 170 mH", 50.0), complex(27.0, 53.407))
    assert near(impedance("18 - j50", 50.0), complex(18.0, -50.0))
    assert near(impedance("115 µF", 50.0), complex(0.0, -27.679))


@pytest.mark.parametrize("slug", TOPICS)
def test_a_right_answer_to_the_last_digit_is_accepted(slug: str):
    """The values worked out here are those of the page."""
    for problem in problems(slug, 9, SEED):
        exact = Answer(abs(problem.right), None if problem.single else degrees(problem.right))
        assert "accept" == post(problem, exact, "calculated").band


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_a_hand_without_slips_ends_on_the_sum(method: str):
    problem = problem_of("neutral-current", code_of(0, "stretch", method))
    end = Hand(np.random.default_rng(0), steady=True).draw(plan_of(problem)).end[0] * problem.scale / 10.0
    assert method == problem.method
    assert abs(end - problem.right) < 1e-9


def test_a_hand_scatters_as_its_slips_do():
    """One line of 100 mm set off and read: half a millimetre twice, half a degree twice."""
    hand = Hand(np.random.default_rng(1), 4000)
    slips = 100.0 + hand.slip(0.5)
    assert 0.48 < float(np.std(slips)) < 0.52
    assert 0.69 < float(np.std(hand.read(slips))) < 0.76


def test_mistakes_move_the_answer_and_outside_ones_too():
    rng = np.random.default_rng(5)
    problem = problem_of("neutral-current", code_of(0, "stretch", "tip-to-tail"))
    another = problem_of("add-phasors", code_of(1, "core", "tip-to-tail"))
    scatter, steady = Scatter(problem, rng), Hand(rng, steady=True)
    for attempt in (*drawn.mistakes(problem, rng), *calculated.mistakes(problem, rng)):
        assert math.isfinite(attempt.act(steady).size)
        assert attempt.named
    moved = [scatter.times(attempt.act(steady), attempt.how) for attempt in outside.mistakes(problem, another, rng)]
    assert len(moved) >= 5
    assert max(moved) > 1.0
    assert scatter.times(drawn.right(problem).act(steady), "drawn") < 0.01


def test_right_first_diagonals_are_right_on_either_side():
    found = conventions.first_diagonals(18, SEED)
    assert {"same side right", "other side right"} == set(found)


def test_a_mirror_image_without_its_side_is_not_right():
    found = conventions.mirrored_without_a_side(18, SEED)
    assert sum(found.values()) >= 15
    assert 0 == found["accept"]


@cache
def right_answers() -> dict[str, Counter]:
    """Bands of right answers by convention."""
    return conventions.right_answers(9, SEED)


@pytest.mark.parametrize("title", conventions.CHOICES)
def test_right_answers_are_right_in_each_convention(title: str):
    bands = right_answers()[title]
    assert 9 == sum(bands.values())
    assert bands["accept"] >= 8
    assert 0 == bands["wrong"]
