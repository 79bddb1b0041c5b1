"""How a medium is drawn and lettered: capital heights, line widths, arrowheads, spacings; the print styles. In mm."""

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Style:
    """Capital heights, line widths, arrowheads and spacings of one medium, mm."""

    note: float = 2.5
    value: float = 3.5
    tag: float = 5.0
    title: float = 5.0
    scale_words: float = 7.0
    row: float = 7.0
    narrow: float = 0.25
    wide: float = 0.5
    extra_wide: float = 1.0
    head: float = 4.6
    large_head: float = 8.2
    open_wide: float = 0.35
    rail: float = 1.1
    """From a companion's own line to either of its two rails."""
    tick: float = 4.0
    tick_gap: float = 1.5
    arc: float = 12.0
    aside: float = 5.0
    """How far a phasor stands beside another on which it lies."""
    code: float = 22.0
    dash: tuple[float, float] = (3.0, 0.75)
    margin: float = 3.0
    """Room kept round the figure for arrowheads and labels that hang over."""
    column: float = 0.0
    """Width of the column of words on a sheet laid out for easy reading; 0 on the usual sheet."""
    whole: bool = False
    """Whether the drawing has the first page to itself."""
    blank: bool = False
    """Whether the paper is the learner's own, with nothing on it but the drawing."""
    signed: bool = False
    """Whether angles have signs in the table, for want of room for words beside large figures."""


NORMAL = Style()
COMPACT = Style(
    value=2.5, tag=3.5, title=3.5, scale_words=5.0, row=4.5, arc=8.0, code=18.0, head=3.6, large_head=6.0,
    tick=3.0, tick_gap=1.2, extra_wide=0.8, aside=4.0,
)  # fmt: skip


PHONE = Style(
    note=2.7, value=3.0, tag=3.9, arc=9.0, head=4.0, large_head=6.5, tick=3.2, tick_gap=1.3,
    dash=(2.4, 0.9),
)  # fmt: skip
"""For the figure alone on a phone; 100 mm are the width of the screen."""


LARGE = Style(
    note=5.0, value=6.0, tag=7.2, title=6.2, scale_words=8.0, row=11.0, narrow=0.5, wide=0.9, extra_wide=1.7, head=8.0,
    large_head=12.5, open_wide=0.6, rail=1.7, tick=6.0, tick_gap=2.4, arc=18.0, aside=8.0, code=32.0, dash=(4.5, 1.8),
    margin=6.0, column=112.0, signed=True,
)  # fmt: skip
EASY = Style(
    note=3.2, value=4.0, tag=5.5, title=5.5, scale_words=7.0, row=9.0, code=26.0, margin=3.5, column=94.0,
)  # fmt: skip
WHOLE = replace(LARGE, tag=8.0, wide=0.8, extra_wide=1.6, narrow=0.4, margin=4.0, whole=True, signed=False)
USUAL, WHOLE_PAGE, LARGE_PRINT, EASY_READING = "usual", "page", "large", "easy"
"""Print styles: option values of the form, which stand in links. ``large`` has the table beside the drawing, as sheets
had that were printed before ``page``."""
PRINTS = {USUAL: NORMAL, WHOLE_PAGE: WHOLE, LARGE_PRINT: LARGE, EASY_READING: EASY}
"""Styles by print style. Large: capitals of 5 mm and more, text of 18 points and more, thicker lines, for low vision.
Easy: text of 12 points and more, fewer words beside the drawing, for dyslexia (both common practice)."""
OWN_PAPER = "own"
"""In place of a print style: the drawing alone, on blank paper of the learner's own."""
BLANK = replace(NORMAL, margin=0.0, blank=True)
SMALL_PAPER = "A5"
"""The smallest paper."""
TOO_SMALL_FOR_READING = (SMALL_PAPER,)
"""Papers on which a sheet for easy reading would leave no room to draw."""
