"""A drawing as a flat list of primitives, each with its step and phasor.

For tests and measurements.
"""

from dataclasses import dataclass

from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Page, Picture, Shape, Squares, Text


@dataclass(frozen=True, slots=True)
class CollectedPrimitive:
    """One primitive with the marks of the groups around it.

    The innermost group with a mark wins; ``names`` are those of all groups, the outermost first. Coordinates are mm on
    the page, y upwards.
    """

    item: Line | Arc | Circle | Shape | Squares | Picture | Arrow | Text | None = None
    step: int | None = None
    phasor: str = ""
    copy: bool = False
    names: tuple[str, ...] = ()


def collect(page: Page) -> tuple[CollectedPrimitive, ...]:
    """Return every primitive of a page in drawing order."""
    primitives: list[CollectedPrimitive] = []
    _collect(page.items, CollectedPrimitive(), primitives)
    return tuple(primitives)


def arrows(page: Page, phasor: str) -> tuple[Arrow, ...]:
    """Return the arrows of one phasor in drawing order, including copies."""
    return tuple(placed.item for placed in collect(page) if placed.phasor == phasor and isinstance(placed.item, Arrow))


def _collect(items: tuple[Item, ...], around: CollectedPrimitive, primitives: list[CollectedPrimitive]) -> None:
    for item in items:
        if isinstance(item, Group):
            _collect(item.items, _within(item, around), primitives)
        else:
            primitives.append(CollectedPrimitive(item, around.step, around.phasor, around.copy, around.names))


def _within(group: Group, around: CollectedPrimitive) -> CollectedPrimitive:
    return CollectedPrimitive(
        None,
        around.step if group.step is None else group.step,
        group.phasor or around.phasor,
        group.copy or around.copy,
        (*around.names, group.name) if group.name else around.names,
    )
