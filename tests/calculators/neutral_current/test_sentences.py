"""The sentences lead to the answer: whoever follows them, figure by figure, ends on the neutral."""

import itertools
import math
import re

import pytest
from calculators.neutral_current.follower import Learner, number
from calculators.neutral_current.forms import form
from unit.sheets import DEFAULT, NEUTRAL, phasors_of, turn_to_paper

from pycore.sums.answer import Move, Working
from pycore.words import plain

COUNT = 50


def sentences(working: Working) -> list[str]:
    """What a working tells to do, in order."""
    return [plain(block.phrase) for block in working.blocks if isinstance(block, Move)]


def workings(given: dict[str, str]) -> list[Working]:
    """The constructions of a form: all orders of parallelogram and tip to tail, and components."""
    made = NEUTRAL.answer(given, ("workings",)).workings
    return [working for working in made if working.key not in ("formula", "accuracy")]


def millimetres_for_one_ampere(told: list[str]) -> float:
    """The scale that the first sentence chooses."""
    size, unit = re.match(r"Choose the scale\. 1\u00a0cm\u00a0=\u00a0([\d.,]+)\u00a0(\w+)\.", told[0]).groups()
    return 10.0 / number(size) / {"A": 1.0, "mA": 1e-3, "kA": 1e3}[unit]


def follow(told: list[str]) -> Learner:
    """A learner who has made every move."""
    learner = Learner()
    for sentence in told:
        learner.follow(sentence)
    assert len(told) == learner.done
    return learner


def end_of(learner: Learner, working: Working) -> complex:
    """Where the last phasor or parallelogram has led."""
    if working.key.startswith("tip-to-tail") or not learner.corners:
        return list(learner.tips.values())[-1]
    return learner.corners[-1]


def rounding(learner: Learner, sharpest: float) -> float:
    """How far rounded figures may lead astray: a twentieth of a mm and of a degree for each move."""
    return learner.done * (0.06 + 0.001 * sharpest)


@pytest.mark.parametrize("number_of", range(COUNT))
def test_following_the_sentences_ends_on_the_neutral(number_of: int):
    """Every order of both drawn methods, by each tool: within the rounding of what was written."""
    given = form(number_of)
    phasors, followed = phasors_of(given), 0
    for working in workings(given):
        if working.key == "components":
            continue
        told = sentences(working)
        scale, learner = millimetres_for_one_ampere(told), follow(told)
        longest = max(abs(value) for value in phasors.values()) * scale
        if given["parallels"] == "compasses":
            longest *= 20
        near = rounding(learner, longest)
        for line in (1, 2, 3):
            value, drawn = phasors[f"i{line}"], learner.drawn.get(tag_of(given, line))
            assert (value == 0) == (drawn is None)
            assert drawn is None or abs(drawn - turn_to_paper(given, value) * scale) < near
        if cancels(given, working, phasors):
            continue
        assert abs(end_of(learner, working) - turn_to_paper(given, phasors["sum"]) * scale) < near
        check_readings(given, learner, scale, near)
        followed += 1
    assert followed >= 1


def tag_of(given: dict[str, str], number_of: int) -> str:
    """A line current's tag as a sentence has it, in small letters."""
    return {"L123": ("i₁", "i₂", "i₃"), "ABC": ("i_a", "i_b", "i_c"), "RYB": ("i_r", "i_y", "i_b"),
            "RST": ("i_r", "i_s", "i_t")}[given["names"]][number_of - 1]  # fmt: skip


def cancels(given: dict[str, str], working: Working, phasors: dict[str, complex]) -> bool:
    """Whether the pair that is combined first leaves nothing, so that the third phasor is the sum."""
    pair = f"i{working.key[-2:]}"
    three = all(phasors[f"i{n}"] for n in "123")
    return working.key.startswith("parallelogram") and three and abs(phasors[pair]) < 1e-9


def check_readings(given: dict[str, str], learner: Learner, scale: float, near: float) -> None:
    """What the sentences say will be measured is what the learner's paper shows."""
    told, neutral = learner.told, phasors_of(given)["sum"]
    if "length" in told:
        assert told["length"] == pytest.approx(abs(neutral) * scale, abs=0.251)
    if "way" in told and abs(neutral) * scale > 5:
        there = turn_to_paper(given, neutral)
        off = _apart(told["way"], there)
        assert off * abs(neutral) * scale / 57.3 < near
    if "polar" in told and abs(neutral) * scale > 1e-3:
        assert _apart(told["polar"], neutral) < 0.0501
    if "diagonal" in told:
        assert told["diagonal"] == pytest.approx(abs(learner.tips["the diagonal"]), abs=near + 0.25)
    if "between" in told and told["diagonal"] > 5:
        assert told["between"] == pytest.approx(told["between found"], abs=near / told["diagonal"] * 57.3 + 0.6)


def _apart(degrees: float, value: complex) -> float:
    """Degrees between a told direction and a phasor's."""
    return abs((degrees - math.degrees(math.atan2(value.imag, value.real)) + 180) % 360 - 180)


@pytest.mark.parametrize("number_of", range(COUNT))
def test_following_the_components_adds_up_to_the_neutral(number_of: int):
    """Each reading is a part of its phasor on the paper, and the sums are those of the parts and of the neutral."""
    given = form(number_of)
    phasors = phasors_of(given)
    told = next(sentences(working) for working in workings(given) if working.key == "components")
    scale = millimetres_for_one_ampere(told)
    part = r"([\d.,]+)\u00a0mm \([\d.,]+\u00a0cm\)"
    level = rf"(?:{part} to the (right|left)|no horizontal component)"
    upright = rf"(?:{part} (up|down)|no vertical component)"
    sides = rf"{level}(?:\. Up minus down:| and) {upright}"
    parts = []
    for sentence in told:
        found = re.search(rf"(?:Read|Right minus left:) {sides}\.", sentence)
        found = found or re.search(rf"on the horizontal axis: {part} to the (right|left), nothing()() up", sentence)
        found = found or re.search(rf"on the vertical axis:()() {part} (up|down), nothing to the side", sentence)
        if found:
            x, side, y, height = found.groups()
            right, up = (1 if side == "right" else -1), (1 if height == "up" else -1)
            parts.append(complex(number(x or "0") * right, number(y or "0") * up))
    carrying = [phasors[f"i{n}"] for n in "123" if phasors[f"i{n}"]]
    assert len(carrying) + 1 == len(parts)
    for there, value in zip(parts, [*carrying, phasors["sum"]], strict=True):
        wanted = turn_to_paper(given, value) * scale
        # Each component is read to half a millimetre, and those of the sum are added as they were read.
        limit = 0.2501 * (len(carrying) if value == phasors["sum"] else 1)
        assert there.real == pytest.approx(wanted.real, abs=limit)
        assert there.imag == pytest.approx(wanted.imag, abs=limit)


def test_the_examples_parallelogram_is_told_figure_by_figure():
    """18.4, 11.2 and 24.6 A, L1 with L2 first: what a teacher would have read out (recomputed by hand)."""
    given = {**DEFAULT, "order": "12", "scale": "2", "paper": "A3"}
    told = " ".join(sentences(next(w for w in workings(given) if w.key == "parallelogram-12")))
    for words in (
        "1\u00a0cm\u00a0=\u00a02\u00a0A", "Straight up from the common point, 92\u00a0mm (9.2\u00a0cm)",
        "Mark 120° clockwise and draw 56\u00a0mm (5.6\u00a0cm)", "Mark 60° anticlockwise at the tip of I₁",
        "80.5\u00a0mm", "as long as your diagonal (about 80.5\u00a0mm), parallel to it", "Expect about 157°.",
        "123\u00a0mm (12.3\u00a0cm)", "about 58\u00a0mm",
    ):  # fmt: skip
        assert words in told.replace("About", "about")


def test_every_way_of_telling_is_understood():
    """No sentence of any picture, tool, protractor, method or number of lines is beyond the follower."""
    seen = set()
    for first, rotation, reference, parallels, protractor, resultant in itertools.product(
        ("up", "right"), ("clockwise", "anticlockwise"), ("current", "voltage"),
        ("protractor", "set-squares", "compasses"), ("180", "360"), ("sum", "returning"),
    ):  # fmt: skip
        given = {**DEFAULT, "a1": "20", "first": first, "rotation": rotation, "reference": reference,
                 "parallels": parallels, "protractor": protractor, "resultant": resultant}  # fmt: skip
        for working in workings(given):
            if working.key != "components":
                follow(sentences(working))
                seen.add(working.key)
    assert {"parallelogram-12", "parallelogram-13", "parallelogram-23", "tip-to-tail-12", "tip-to-tail-13",
            "tip-to-tail-23"} == seen  # fmt: skip
