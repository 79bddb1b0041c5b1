"""Codes and the problems they stand for: the same everywhere and for ever."""

import pytest
from calculators.folders import CODES

from pycore.calculators.neutral_current.practice import accepted, lines_of
from pycore.calculators.registry import CALCULATORS
from pycore.practice import codes
from pycore.practice.codes import ALPHABET, PAPERS, TIERS, Code, CodeError, read, write
from pycore.practice.seeded_integers import SeededIntegers, integers_of

SAMPLE = Code(0, "core", "parallelogram", "A3", 12345, 678)


def test_the_dice_are_splitmix64():
    """The first outputs for the seed 1234567 as they are published with the algorithm (from memory)."""
    rng = SeededIntegers(1234567)
    expected = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431]
    assert expected == [rng.word() for _ in expected]


def test_dice_below_a_count_reach_all_of_it_evenly():
    """Chi-squared with 16 degrees of freedom: 99.9 % of fair rng stay below 39.25."""
    rng, counts = SeededIntegers(5), [0] * 17
    for _ in range(17000):
        counts[rng.below(17)] += 1
    assert sum((count - 1000) ** 2 / 1000 for count in counts) < 39.25
    assert 0 < min(counts)


def test_dice_of_parts_differ_by_their_order():
    assert integers_of(1, 2).word() != integers_of(2, 1).word()


def refusal(text: str) -> tuple[str, str]:
    """Why a text is no code, and the part at fault."""
    with pytest.raises(CodeError) as found:
        read(text)
    return found.value.reason, found.value.part


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("tier", TIERS)
def test_a_code_is_read_as_it_was_written(tier: str, paper: str):
    for method in codes.METHODS:
        code = Code(9, tier, method, paper, codes.SEEDS - 1, codes.MOST_LEARNERS)
        assert code == read(write(code))
        assert code == read(f"  {write(code).lower().replace('-', ' ')} ")


def test_every_single_wrong_sign_is_found():
    text = write(SAMPLE).replace("-", "")
    for place in range(len(text)):
        for sign in ALPHABET:
            if sign != text[place]:
                with pytest.raises(CodeError):
                    read(text[:place] + sign + text[place + 1 :])


def test_every_two_signs_exchanged_are_found():
    text = write(SAMPLE).replace("-", "")
    for one in range(len(text)):
        for two in range(one + 1, len(text)):
            signs = list(text)
            signs[one], signs[two] = signs[two], signs[one]
            if signs[one] != signs[two]:
                with pytest.raises(CodeError):
                    read("".join(signs))


@pytest.mark.parametrize(
    ("text", "reason", "part"),
    [
        ("", "length", ""),
        ("332-25V", "length", "33225V"),
        ("332-25V-290", "sign", "0"),
        ("=1+1", "sign", "="),
        ("3" * 400, "length", "3" * 20),
        ("433-JDL-2GA", "length", "433JDL2GA"),
        ("333-JDL-2GA-222", "length", "333JDL2GA222"),
        ("42C-332-3C2-9X", "length", "42C3323C29X"),
    ],
)
def test_text_that_is_no_code_says_why(text: str, reason: str, part: str):
    assert (reason, part) == refusal(text)


@pytest.mark.parametrize("version", codes.VERSIONS.values(), ids=map(str, codes.VERSIONS))
def test_a_code_of_a_later_version_is_told_from_a_damaged_one(version: codes.Version):
    signs = version.checked((7, *version.characters_of(SAMPLE)))
    text = "".join(ALPHABET[sign] for sign in signs)
    assert ("version", ALPHABET[7]) == refusal(text)
    assert ("check", text[:-1] + "X") == refusal(text[:-1] + "X")


@pytest.mark.parametrize("kept", CODES, ids=lambda kept: kept["code"])
def test_a_code_gives_its_problem_for_ever(kept: dict):
    code = read(kept["code"])
    form = CALCULATORS[kept["page"]].practice_form(code)
    assert kept["form"] == {name: form[name] for name in kept["form"]}


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculator_has_kept_codes_of_every_level(slug: str):
    kept = [one for one in CODES if one["page"] == slug]
    assert list(TIERS) == [tier for tier in TIERS if tier in {read(one["code"]).tier for one in kept}]


@pytest.mark.parametrize(("generator", "least", "most"), [(1, 40, 300), (2, 30, 350)])
@pytest.mark.parametrize("tier", TIERS)
def test_problems_read_naturally_and_may_be_set(tier: str, generator: int, least: int, most: int):
    for number in range(1, 200):
        lines = lines_of(Code(0, tier, seed=77, number=number, generator=generator))
        assert accepted(lines)
        assert least <= min(lines.tenths) and max(lines.tenths) <= most
        if tier == "support":
            assert all(size % 10 == 0 for size in lines.tenths)
        assert (tier == "stretch") or lines.lags == (0, 0, 0)
