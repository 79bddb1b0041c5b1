"""The values of a problem in Practice, written as on paper."""

import re

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.pages.codes import find
from pycore.pages.practice import values_of
from pycore.practice.codes import TIERS, Code

WITHOUT_UNIT = {"Target"}
"""Power factors."""
BARE = re.compile(r"^[−\d.]+(?:$| at | \+ )|(?: at | \+ )[−\d.]+$")


@pytest.mark.parametrize("tier", TIERS)
@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_number_has_its_unit(slug: str, tier: str) -> None:
    """A resistance stood there as “54 + 10”, a phasor as “19 at -30”: as the fields take them."""
    for number in range(1, 9):
        told = values_of(find(str(Code(CALCULATORS[slug].topic, tier, seed=5, number=number))))
        assert told
        assert [] == [(label, text) for label, text, _ in told if label not in WITHOUT_UNIT and BARE.search(text)]
        assert not any("-" in text for _, text, _ in told)
