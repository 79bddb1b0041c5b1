"""The cells of the title block: what was typed for them is printed whole, readable, and within its cell."""

import pytest
from unit.sheets import NEUTRAL, capitals_of, rectangle_of

from pycore.drawing import Text
from pycore.geometry import Box
from pycore.sheet.kinds import CONSTRUCTION, PROBLEM
from pycore.sheet.lettered import width_of
from pycore.sheet.media import ORIENTATIONS, PAPERS
from pycore.sheet.title_block import LEAST_TYPED, lower_cells
from pycore.writers.collect import collect

WIDEST_LETTERS = "Wilhelmina Montgomery-Wollstonecraft Mwanawasa Winterbottom"


def _widest(room: float, longest: int = 40) -> str:
    """As much of a long name as a cell takes."""
    whole = WIDEST_LETTERS[:longest]
    return next(whole[:n] for n in range(len(whole), 0, -1) if width_of(whole[:n], LEAST_TYPED) <= room)


def _typed(paper: str) -> dict[str, str]:
    return dict(zip(("who", "group", "date"), (_widest(room) for room in lower_cells(paper)), strict=True))


@pytest.mark.parametrize("printed", ["usual", "page", "large", "easy"])
@pytest.mark.parametrize("orientation", ORIENTATIONS)
@pytest.mark.parametrize("paper", PAPERS)
def test_what_is_typed_for_the_title_block_is_printed_whole_and_never_under_two_millimetres(
    paper: str, orientation: str, printed: str
):
    form = {"paper": paper, "orientation": orientation, "print": printed, **_typed(paper)}
    for kind in (CONSTRUCTION, PROBLEM):
        case = NEUTRAL.case({**form, "sheet": kind})
        page = NEUTRAL.pages({**form, "sheet": kind}, kinds=(kind,))[0]
        block = case.sheet_plan().layout.block
        items = [one.item for one in collect(page) if "title-block" in one.names and isinstance(one.item, Text)]
        # A line may end within a word that is too long for it.
        said = "".join(item.plain for item in items).replace(" ", "")
        typed = _typed(paper)
        for name in ("who", "group", "date") if printed == "usual" or paper == "A5" else ("who", "date"):
            assert typed[name].replace(" ", "") in said
        lines = [rectangle_of(item) for item in items]
        edge = Box(block.left, block.bottom, block.right, block.top)
        for item, box in zip(items, lines, strict=True):
            assert capitals_of(item) >= LEAST_TYPED - 1e-9, item.plain
            assert edge.left <= box.left and box.right <= edge.right
            assert edge.bottom <= box.bottom and box.top <= edge.top
        for one in lines:
            for other in lines:
                apart = one.right <= other.left or other.right <= one.left or one.top <= other.bottom
                assert one is other or apart or other.top <= one.bottom
