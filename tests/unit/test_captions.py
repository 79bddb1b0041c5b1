"""What a sheet says of the scale that the page chose: only what is true of it."""

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Text, walk
from pycore.sums.captions import caption_of
from pycore.words import plain

NEUTRAL = {"i1": "24", "i2": "15", "i3": "9"}


def caption(form: dict[str, str]) -> str:
    case = CALCULATORS["neutral-current"].case(NEUTRAL | form)
    return plain(caption_of(case, case.sheet_plan()))


@pytest.mark.parametrize(
    "form, usual",
    [({}, "1, 2, 2.5, 4, 5 …"), ({"steps": "125"}, "1, 2, 5 …"), ({"decimal": "comma"}, "1; 2; 2,5; 4; 5 …")],
)
def test_a_chosen_scale_is_the_largest_of_the_usual_ones_which_are_named(form: dict[str, str], usual: str) -> None:
    assert caption(form).endswith(f"Largest drawing that fits, with {usual} per cm.")


def test_a_scale_between_the_usual_ones_can_be_larger_and_fit() -> None:
    """On A3, 1 cm = 1.5 A fits too: the sentence must not say that nothing larger does."""
    form = {"paper": "A3", "method": "components"}
    case = CALCULATORS["neutral-current"].case(NEUTRAL | form)
    plan = case.sheet_plan()
    assert plan.scale == 2.0
    assert "Largest drawing that fits, with" in caption(form)


def test_a_typed_scale_has_no_reason() -> None:
    assert "largest" not in caption({"scale": "4"})


def test_a_scale_that_all_methods_share_says_so_where_one_of_them_would_fit_larger() -> None:
    found = set()
    for number in range(10, 30):
        for method in ("parallelogram", "tip-to-tail", "components"):
            form = NEUTRAL | {"i1": str(number), "one-scale": "yes", "method": method}
            case = CALCULATORS["neutral-current"].case(form)
            own = CALCULATORS["neutral-current"].case(form | {"one-scale": "no"}).sheet_plan()
            shared = case.sheet_plan().scale > own.scale
            found.add(shared)
            assert ("that fits every method, with" in plain(caption_of(case, case.sheet_plan()))) == shared
    assert found == {True, False}


@pytest.mark.parametrize(
    "slug, form, head, sense",
    [
        ("power-triangle", {}, "side", "positive angles"),
        ("series-circuit", {"drawn": "impedances"}, "side", "positive angles"),
        ("neutral-current", {}, "phasor", "sense of rotation"),
    ],
)
def test_a_sheet_of_powers_or_impedances_names_sides_and_no_rotation(
    slug: str, form: dict[str, str], head: str, sense: str
) -> None:
    sheet = CALCULATORS[slug].answer(form, ("sheet",)).sheet
    words = [item.plain for item in walk(sheet.items) if isinstance(item, Text)]
    assert head in words
    assert sense in " ".join(words)
    other = {"side": ("phasor", "rotation"), "phasor": ("side", "positive")}[head]
    assert not set(other) & set(words)
