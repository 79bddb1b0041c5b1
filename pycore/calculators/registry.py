"""Every calculator by its slug, in the order in which the course meets them; each is imported when it is asked for."""

import importlib
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pycore.sums.page import SumPage

PAGES = {
    "add-phasors": ("add_phasors.page", "AddPhasors"),
    "series-circuit": ("series_circuit.page", "SeriesCircuit"),
    "parallel-circuit": ("parallel_circuit.page", "ParallelCircuit"),
    "power-triangle": ("power_triangle.page", "PowerTriangle"),
    "star-and-delta": ("star_and_delta.page", "StarAndDelta"),
    "neutral-current": ("neutral_current.page", "NeutralCurrent"),
    "harmonics-in-the-neutral": ("harmonics_in_the_neutral.page", "HarmonicsInTheNeutral"),
    "open-neutral": ("open_neutral.page", "OpenNeutralPage"),
    "two-wattmeters": ("two_wattmeters.page", "TwoWattmeters"),
    "sequence-components": ("sequence_components.page", "SequenceComponents"),
}
"""By slug, the module beside this one and the class in it."""


class Shelf(Mapping[str, "SumPage[Any]"]):
    """The calculators: to ask for one imports that one alone, to go through their values imports all."""

    def __init__(self, places: Mapping[str, tuple[str, str]]) -> None:
        self._places, self._made = places, dict[str, "SumPage[Any]"]()

    def __getitem__(self, slug: str) -> "SumPage[Any]":
        """The calculator of this slug, the same each time. Raises KeyError for a slug that is none."""
        if slug not in self._made:
            module, name = self._places[slug]
            self._made[slug] = getattr(importlib.import_module(f"pycore.calculators.{module}"), name)()
        return self._made[slug]

    def __contains__(self, slug: object) -> bool:
        """Whether it is the slug of a calculator, which imports nothing."""
        return slug in self._places

    def __iter__(self) -> Iterator[str]:
        """The slugs in their order, which imports nothing."""
        return iter(self._places)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._places)


CALCULATORS = Shelf(PAGES)
