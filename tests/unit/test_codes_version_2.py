"""Codes of twelve signs: a thousand topics, and checks that find any two wrong signs, shown by trying all of them."""

from dataclasses import replace
from itertools import combinations, permutations, product

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.practice import codes
from pycore.practice.codes import ALPHABET, METHODS, PAPERS, TIERS, Code, CodeError, read, write, write_as
from pycore.practice.seeded_integers import SeededIntegers, integers_of_code
from pycore.words import codes as words

SAMPLE = Code(538, "stretch", "tip-to-tail", "letter", 12345, 678, generator=1)
PLAIN = write(SAMPLE).replace("-", "")
PLACES = range(12)


def logarithms() -> tuple[list[int], dict[int, int]]:
    """Powers of the field's element 2 and their logarithms: another way to multiply than the module's own."""
    powers = [1]
    while len(powers) < 31:
        doubled = powers[-1] << 1
        powers.append(doubled ^ 0b100101 if doubled & 32 else doubled)
    return powers, {power: index for index, power in enumerate(powers)}


POWERS, LOGARITHM = logarithms()


def value_at(signs: list[int], root: int) -> int:
    """The signs as a polynomial, the first the highest coefficient, at 2^root."""
    found = 0
    for power, sign in enumerate(reversed(signs)):
        if sign:
            found ^= POWERS[(LOGARITHM[sign] + root * power) % 31]
    return found


def worth(text: str) -> list[int]:
    return [ALPHABET.index(sign) for sign in text.replace("-", "")]


def accepted(text: str) -> bool:
    try:
        read(text)
    except CodeError:
        return False
    return True


# What a code says.


@pytest.mark.parametrize("topic", [10, 11, 31, 32, 511, 999])
def test_a_code_is_read_as_it_was_written(topic: int):
    for tier, method, paper in product(TIERS, METHODS, PAPERS):
        code = Code(topic, tier, method, paper, codes.SEEDS - 1 - topic, codes.MOST_LEARNERS)
        assert code == read(write(code)) == read(f"  {write(code).lower().replace('-', ' – ')} ")


def test_every_topic_has_a_code_of_its_own_in_four_groups_of_three():
    written = [write(Code(topic, "core")) for topic in range(10, codes.MOST_TOPICS)]
    assert len(written) == len(set(written))
    assert {("4", 4, 15)} == {(text[0], len(text.split("-")), len(text)) for text in written}


def test_each_field_has_signs_of_its_own():
    """The layout of the docstring: 4, topic (2), generator and tier, paper and method, seed (3), number (2)."""
    assert [2, 16, 26, 2, 18, 12, 1, 25, 21, 6] == worth(PLAIN)[:10]
    assert (538, 12345, 678) == (16 * 32 + 26, (12 * 32 + 1) * 32 + 25, 21 * 32 + 6)
    assert (2, 18) == (TIERS.index("stretch"), 4 * PAPERS.index("letter") + METHODS.index("tip-to-tail"))


@pytest.mark.parametrize("wrong", [
    {"topic": 1000}, {"topic": -1}, {"seed": codes.SEEDS}, {"seed": -1}, {"number": codes.MOST_LEARNERS + 1},
    {"generator": 9}, {"generator": 0},
])  # fmt: skip
def test_what_no_code_can_hold_is_not_written(wrong: dict):
    with pytest.raises(ValueError, match="fit"):
        write(replace(SAMPLE, **wrong))


@pytest.mark.parametrize(("place", "sign", "reason"), [
    (1, 31, "topic"), (3, 3, "topic"), (3, 8, "version"), (3, 31, "version"), (4, 24, "topic"), (4, 31, "topic"),
])  # fmt: skip
def test_sound_signs_that_mean_nothing_yet_are_refused(place: int, sign: int, reason: str):
    signs = worth(PLAIN)[:10]
    signs[place] = sign
    text = "".join(ALPHABET[one] for one in codes.VERSIONS[2].checked(signs))
    with pytest.raises(CodeError) as found:
        read(text)
    assert reason == found.value.reason


# One problem, whatever the writing.


def test_topics_of_version_1_go_on_being_written_in_it_and_are_read_in_both():
    for topic, tier, method in product(range(10), TIERS, METHODS):
        code = Code(topic, tier, method, "A3", 31000, 1000, generator=1)
        assert (1, 11, "3") == (codes.version_for(code), len(write(code)), write(code)[0])
        longer = write_as(2, code)
        assert (15, "4") == (len(longer), longer[0])
        assert code == read(longer) == read(write(code))
        assert write(code) == str(read(longer))
    assert 2 == codes.version_for(Code(10, "core", generator=1)) == codes.version_for(Code(10, "core", generator=2))


def test_problems_of_generator_2_have_nine_characters_too():
    for topic, tier, method in product(range(10), TIERS, METHODS):
        code = Code(topic, tier, method, "A3", 31000, 1000, generator=2)
        assert (3, 11, "5") == (codes.version_for(code), len(write(code)), write(code)[0])
        assert code == read(write_as(2, code)) == read(write(code))


@pytest.mark.parametrize("page", list(CALCULATORS.values()),
                         ids=lambda page: page.slug)  # fmt: skip
def test_a_problem_is_the_same_in_both_writings(page):
    for tier, number in product(TIERS, (1, 2)):
        code = Code(page.topic, tier, "any", "A4", 4321, number, generator=1)
        for version in (1, 2) if page.topic < 10 else (2,):
            assert page.practice_form(code) == page.practice_form(read(write_as(version, code)))


def test_the_dice_depend_on_the_generator_and_not_on_method_or_paper():
    first = integers_of_code(SAMPLE).word()
    assert first == integers_of_code(replace(SAMPLE, method="any", paper="A2")).word()
    others = [replace(SAMPLE, generator=2), replace(SAMPLE, topic=537), replace(SAMPLE, tier="core"),
              replace(SAMPLE, seed=1), replace(SAMPLE, number=1)]  # fmt: skip
    assert 6 == len({first, *(integers_of_code(other).word() for other in others)})


# What the checks find.


def test_every_code_has_both_roots():
    """Reckoned by logarithms, which the module does not use."""
    rng = SeededIntegers(7)
    for _ in range(500):
        code = Code(rng.between(10, 999), TIERS[rng.below(3)], METHODS[rng.below(4)], PAPERS[rng.below(6)],
                    rng.below(codes.SEEDS), rng.below(codes.MOST_LEARNERS + 1))  # fmt: skip
        signs = worth(write(code))
        assert (0, 0) == (value_at(signs, 1), value_at(signs, 2))


def test_every_single_wrong_sign_is_found():
    """All 12 x 31."""
    tried = [PLAIN[:place] + sign + PLAIN[place + 1 :] for place in PLACES for sign in ALPHABET if sign != PLAIN[place]]
    assert 372 == len(tried)
    assert [] == [text for text in tried if accepted(text)]


def test_every_two_wrong_signs_are_found():
    """All 66 x 31 x 31."""
    tried = 0
    for one, two in combinations(PLACES, 2):
        for first, second in product(ALPHABET, repeat=2):
            if first != PLAIN[one] and second != PLAIN[two]:
                tried += 1
                assert not accepted(PLAIN[:one] + first + PLAIN[one + 1 : two] + second + PLAIN[two + 1 :])
    assert 63_426 == tried


def test_no_error_of_one_or_two_signs_is_a_sound_word_so_none_is_missed_in_any_code():
    """The checks are linear: an error is missed exactly if its own signs are a word, whatever the code."""
    sound, tried = codes.VERSIONS[2].sound, 0
    for one, two in combinations(PLACES, 2):
        for first, second in product(range(32), repeat=2):
            error = [0] * 12
            error[one], error[two] = first, second
            tried += 1
            assert sound(error) is (first == second == 0)
    assert 66 * 1024 == tried
    rng = SeededIntegers(3)
    for _ in range(200):
        words_two = [codes.VERSIONS[2].checked([rng.below(32) for _ in range(10)]) for _ in range(2)]
        assert sound([one ^ two for one, two in zip(*words_two, strict=True)])


def test_every_exchange_of_two_signs_is_found_in_many_codes():
    """Near one another or not, check signs and version too: an exchange is an error of two signs."""
    rng, tried = SeededIntegers(11), 0
    for _ in range(100):
        text = write(Code(rng.between(10, 999), "core", "any", "A4", rng.below(codes.SEEDS), rng.below(1024)))
        plain = list(text.replace("-", ""))
        for one, two in combinations(PLACES, 2):
            if plain[one] != plain[two]:
                changed = list(plain)
                changed[one], changed[two] = plain[two], plain[one]
                tried += 1
                assert not accepted("".join(changed))
    assert tried > 6000


def test_few_greater_faults_are_missed():
    """Up to six wrong signs, and groups in another order: chance alone would miss one in 1,024."""
    rng, missed, count = SeededIntegers(19), 0, 40_000
    sound = codes.VERSIONS[2].sound
    for _ in range(count):
        error = [0] * 12
        for place in dict.fromkeys(rng.below(12) for _ in range(6)):
            error[place] = rng.between(1, 31)
        missed += sound(error)
    assert 20 <= missed <= 62
    regrouped = tried = 0
    for _ in range(300):
        text = write(Code(rng.between(10, 999), "core", "any", "A4", rng.below(codes.SEEDS), rng.below(1024)))
        groups = text.split("-")
        for order in permutations(groups[1:]):
            if list(order) != groups[1:]:
                tried += 1
                regrouped += accepted("".join((groups[0], *order)))
    assert regrouped <= tried // 200


# What is said.


@pytest.mark.parametrize(("typed", "parts"), [
    ("42C-332-3C2-9X", ("has 11 characters", "begins with 3, 5, 6 or 7 has nine", "begins with 4 has twelve")),
    ("42C-332-3C2", ("has 9 characters", "begins with 4 has twelve")),
    ("333-JDL-2GA-22", ("has 11 characters", "begins with 3, 5, 6 or 7 has nine")),
    ("42C-332-3C2-9XY", ("one character is wrong",)),
])  # fmt: skip
def test_a_code_of_the_wrong_length_is_told_what_each_version_has(typed: str, parts: tuple[str, ...]):
    with pytest.raises(CodeError) as found:
        read(typed)
    said = words.unusable(typed, found.value.reason, found.value.part)
    assert [] == [part for part in parts if part not in said]


def test_the_codes_that_are_shown_as_examples_are_codes():
    examples = [word.strip(".,;") for word in f"{words.HELP} {words.FORM}".split() if "-" in word]
    assert ["333-JDL-2GA", "333-JDL-2GA", "42C-332-3C2-9XZ"] == examples
    for example in examples:
        assert example == str(read(example))
