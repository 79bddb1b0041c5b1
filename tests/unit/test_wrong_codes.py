"""A code with a slip of the pen: which group is named, and how the fault points at what was typed."""

import random

import pytest

from pycore.errors import Fault, InputError
from pycore.pages.codes import find
from pycore.practice.codes import ALPHABET, GROUP, Code, suspect, write_as

LONG = write_as(2, Code(5, "core", "any", "A4", 1234, 7)).replace("-", "")
SHORT = "333JDL2GA"


def fault(text: str) -> Fault:
    with pytest.raises(InputError) as refused:
        find(text)
    [one] = refused.value.faults
    return one


def slips(text: str) -> list[tuple[int, str]]:
    """Every text with one wrong character behind the first, with its place."""
    return [
        (place, text[:place] + sign + text[place + 1 :])
        for place in range(1, len(text))
        for sign in ALPHABET
        if sign != text[place]
    ]


@pytest.mark.parametrize(("whole", "least"), [(LONG, 0.9), (SHORT, 0.0)], ids=["long", "short"])
def test_of_a_code_with_one_wrong_character_the_group_named_is_never_a_wrong_one(whole: str, least: float):
    """The short code's one check tells almost never; the long one's nearly always, but for an exchange of neighbours
    that would mend it too."""
    named = 0
    for place, text in slips(whole):
        assert suspect(text) in (0, place // GROUP + 1)
        named += suspect(text) != 0
    assert least * len(slips(whole)) <= named
    assert whole == LONG or named < 0.1 * len(slips(whole))


def test_two_wrong_characters_never_stop_the_page():
    rng = random.Random(3)
    for _ in range(60):
        signs = list(LONG)
        for place in rng.sample(range(len(signs)), 2):
            signs[place] = rng.choice(ALPHABET)
        if "".join(signs) != LONG:
            assert fault("".join(signs)).field == "code"


def test_the_fault_names_the_group_as_it_was_typed():
    wrong = LONG[:4] + ("3" if LONG[4] != "3" else "4") + LONG[5:]
    typed = "-".join(wrong[start : start + 3] for start in range(0, 12, 3)).lower()
    assert typed.split("-")[1] == fault(typed).fragment
    assert f"check the second group, “{wrong[3:6].lower()}”" in fault(typed).message


def test_a_short_code_is_said_to_fail_its_check_and_is_marked_as_a_whole():
    found = fault("333-jdl-2gb")
    assert "one character is wrong, or two are swapped" in found.message and "333-jdl-2gb" == found.fragment


def test_a_character_that_no_code_has_is_named():
    assert "0" == fault("333-JDL-2G0").fragment and "“0” is not used" in fault("333-JDL-2G0").message
