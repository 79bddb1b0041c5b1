"""The cautions of all pages: each has one home, and who discharges a capacitor isolates the supply first."""

import ast
import re
from collections.abc import Iterator

import pytest
from making.paths import PYCORE

from pycore.calculators.registry import CALCULATORS
from pycore.words import cautions, furniture, plain

LISTS = {slug: page.cautions for slug, page in CALCULATORS.items()} | {"other pages": furniture.CAUTIONS}


def said(listed: str) -> str:
    return " ".join(one if isinstance(one, str) else plain(one) for one in LISTS[listed])


@pytest.mark.parametrize("listed", LISTS)
def test_a_capacitor_is_discharged_after_the_supply_is_off_and_isolated(listed: str):
    for stated in re.finditer(r"discharge each|discharge it|discharge resistors", said(listed)):
        before = said(listed)[: stated.start()].lower()
        assert "isolate" in before[-120:] and "switch" in before[-120:], listed
        assert "before you touch anything" in said(listed)[stated.start() :] or "Only competent people" in said(listed)


def test_the_circuits_and_the_short_list_say_in_which_order_a_capacitor_is_made_safe():
    for listed in ("series-circuit", "parallel-circuit", "other pages"):
        assert cautions.CHARGED in LISTS[listed]
    steps = ("Switch off", "isolate", "discharge", "prove it dead", "before you touch")
    places = [cautions.CHARGED.index(step) for step in steps]
    assert places == sorted(places)


def test_the_secondary_of_a_current_transformer_is_named():
    assert "never leave the secondary of a current transformer open" in said("two-wattmeters")


def texts() -> Iterator[tuple[str, str]]:
    """Every text of the words of pages and rooms, with its module."""
    for path in [*PYCORE.glob("words/*.py"), *PYCORE.glob("calculators/*/words.py")]:
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield path.relative_to(PYCORE).as_posix(), node.value


@pytest.mark.parametrize("start", ["Ask which method your examining body", "A neutral can carry current even when",
                                   "A clamp meter cannot prove", "A capacitor stays charged"])  # fmt: skip
def test_a_caution_of_several_pages_stands_in_one_module(start: str):
    others = {module for module, text in texts() if start in text} - {"words/cautions.py"}
    assert others <= {"calculators/star_and_delta/words.py", "calculators/sequence_components/words.py"}
    assert not others or start == "A clamp meter cannot prove"
