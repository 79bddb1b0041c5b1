"""The three short pages that learners read before they draw."""

from pycore.pages.reading import InlineDrawing, ReadingPage, Section, Steps
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet import explained
from pycore.sums.answer import Grid
from pycore.words import readings as words
from pycore.words.phrase import say

SAID_PARTS = ("10\u00a0A", "30°")
COSINE, SINE = ("10\u00a0A × cos\u00a030°", "= 8.66\u00a0A"), ("10\u00a0A × sin\u00a030°", "= 5\u00a0A")


def _steps(items: tuple[str, ...]) -> Steps:
    return Steps(tuple(say(item) for item in items))


def protractor_page() -> ReadingPage:
    """How to place and read a protractor."""
    half = explained.half_circle(words.ZERO_LINE, words.EDGE, words.CENTRE, words.HALF_PICTURE, words.HALF_SHOWN)
    full = explained.full_circle(words.FULL_PICTURE, words.FULL_SHOWN)
    return ReadingPage(
        words.PROTRACTOR_SLUG,
        words.PROTRACTOR_TITLE,
        words.PROTRACTOR_DESCRIPTION,
        say(words.PROTRACTOR_LEAD),
        (
            Section(say(words.HALF), (InlineDrawing(half, "half"), _steps(words.HALF_STEPS))),
            Section(say(words.FULL), (InlineDrawing(full, "full"), _steps(words.FULL_STEPS))),
        ),
        one_sheet=True,
    )


def units_page() -> ReadingPage:
    """How a length represents a current."""
    captions = (f"92{NO_BREAK_SPACE}mm = 9.2{NO_BREAK_SPACE}cm", f"18.4{NO_BREAK_SPACE}A")
    picture = explained.line_on_ruler(captions, words.RULER_PICTURE, words.RULER_SHOWN)
    table = Grid(words.TRY_HEAD, tuple(tuple((cell,) for cell in row) for row in words.TRY_ROWS))
    return ReadingPage(
        words.UNITS_SLUG,
        words.UNITS_TITLE,
        words.UNITS_DESCRIPTION,
        say(words.UNITS_LEAD),
        (
            Section(say(words.ONE_LINE), (InlineDrawing(picture, "ruler", exact=True), _steps(words.ONE_LINE_STEPS))),
            Section(say(words.WATCH), (_steps(words.WATCH_STEPS),)),
            Section(say(words.TRY), (table,)),
        ),
        one_sheet=True,
    )


def sine_page() -> ReadingPage:
    """Which component is the sine's and which the cosine's."""
    captions = (SAID_PARTS[0], SAID_PARTS[1], COSINE, SINE)
    right = explained.two_components("right", captions, words.RIGHT_PICTURE, words.parts_shown("right"))
    upward = explained.two_components("up", captions, words.UP_PICTURE, words.parts_shown("up"))
    return ReadingPage(
        words.SINE_SLUG,
        words.SINE_TITLE,
        words.SINE_DESCRIPTION,
        say(words.SINE_LEAD),
        (
            Section(say(words.FROM_RIGHT), (InlineDrawing(right, "right"), _steps(words.FROM_RIGHT_STEPS))),
            Section(say(words.FROM_UP), (InlineDrawing(upward, "up"), _steps(words.FROM_UP_STEPS))),
            Section(say(words.RULE), (_steps(words.RULE_STEPS),)),
        ),
        one_sheet=True,
    )


def reading_pages() -> tuple[ReadingPage, ...]:
    """All three, in the order of a course."""
    return protractor_page(), units_page(), sine_page()
