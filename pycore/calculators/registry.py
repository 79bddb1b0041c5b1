"""Every calculator by its slug, in the order in which the course meets them: the only module outside a calculator's
own room that names it.

To ask for one calculator imports that one alone. What is known of all of them without importing them (topic numbers,
lesson plans, short names of mistakes) stands in small modules of their rooms.
"""

import importlib
from collections.abc import Iterator, Mapping
from types import ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pycore.sums.page import SumPage

SLUGS = (
    "add-phasors",
    "series-circuit",
    "parallel-circuit",
    "power-triangle",
    "star-and-delta",
    "neutral-current",
    "harmonics-in-the-neutral",
    "open-neutral",
    "two-wattmeters",
    "sequence-components",
)
MAIN = "neutral-current"
"""The main job: its lesson plan has the address without a topic's name, and comes first."""
MAIN_FIRST = (MAIN, *(slug for slug in SLUGS if slug != MAIN))


def module_of(slug: str, name: str = "") -> ModuleType:
    """A module of a calculator's room; "" for the room itself."""
    room = f"pycore.calculators.{slug.replace('-', '_')}"
    return importlib.import_module(f"{room}.{name}" if name else room)


class CalculatorRegistry(Mapping[str, "SumPage[Any]"]):
    """The calculators: to ask for one imports that one alone, to go through their values imports all."""

    def __init__(self, slugs: tuple[str, ...]) -> None:
        self._slugs = slugs

    def __getitem__(self, slug: str) -> "SumPage[Any]":
        """The calculator of this slug, the same each time. Raises KeyError for a slug that is none."""
        if slug not in self._slugs:
            raise KeyError(slug)
        page: SumPage[Any] = module_of(slug, "page").PAGE
        return page

    def __contains__(self, slug: object) -> bool:
        """Whether it is the slug of a calculator, which imports nothing."""
        return slug in self._slugs

    def __iter__(self) -> Iterator[str]:
        """The slugs in their order, which imports nothing."""
        return iter(self._slugs)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._slugs)


CALCULATORS = CalculatorRegistry(SLUGS)


def by_topic() -> dict[int, str]:
    """Slugs by the topic number in the codes of their problems, in the order of the numbers. Imports no calculator."""
    numbered = {module_of(slug).TOPIC: slug for slug in SLUGS}
    return {number: numbered[number] for number in sorted(numbered)}
