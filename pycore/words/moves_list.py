"""Sheets for easy reading: what stands on their second page, one move to a line with a box to tick."""

PRINT = "Print"
PRINTS = (
    ("usual", "usual"),
    ("large", "large print, for low vision"),
    ("easy", "easy reading: 12 point and more, one move a line"),
)
PRINT_HELP = "Laid out anew, never an enlarged copy; the moves have a page of their own. Large print is best on A3."
HEAD_ANGLE, NONE = "angle", "none"
NAME, DATE = "name", "date"
GIVEN, MOVES, LOOK = "What is given", "Moves", "To check"
MINUS = "Angles: minus means with the clock."
AT_FULL_SIZE = "Print at 100 %, not fitted to the page."

_START = (
    "Guess the neutral current. Write your guess down.",
    "Turn each current into a length. Use the scale. Write the lengths in the table.",
)
_NO_POINT = "Mark a point to start from. Leave room on all sides."
_FIRST = ("Draw {first} {way}. Put an arrowhead on its tip.",)
_AT_POINT = (
    "Put the centre of the protractor on the common point. Lay its zero line on {first}.",
    "Mark the angle of the next phasor. Check which way it turns.",
    "Draw that phasor through the mark, as long as the table says. Put an arrowhead on its tip.",
)
_END = (
    "Measure its length to the point of the arrowhead. Turn the length into amperes.",
    "Measure its angle. Write both in the table.",
    "Compare with your guess. Then check by calculation.",
)
_LAST_AT_POINT = "Draw the phasor that is left in the same way, from the common point."
MOVES_OF = {
    "parallelogram": (
        "Through the tip of each of the first two, draw a dashed line parallel to the other.",
        "Draw the diagonal from the common point to where the dashed lines cross.",
        "Pair this diagonal with the phasor that is left. Draw two dashed parallels again.",
        "Draw the new diagonal from the common point. It is the neutral current.",
    ),
    "tip-to-tail": (
        "Draw a line from the start to the last tip. It is the neutral current.",
    ),
    "components": (
        "Draw two axes through the common point, one to the right and one up.",
        "From each tip, drop a dashed line square on to each axis.",
        "Measure each part. To the left and downward is minus.",
        "Add the parts to the right. Add the parts upward.",
        "Mark both sums on the axes. Draw from the common point to the corner. It is the neutral current.",
    ),
}  # fmt: skip
_AT_TIP = (
    "Put the centre of the protractor on the last tip. Lay its zero line back along the line just drawn.",
    "Turn back by 180° less the turn: for a turn of 120° that is 60°. Mark it.",
    "Draw the next phasor through the mark, as long as the table says. Put an arrowhead on its tip.",
)
_AGAIN_AT_TIP = "Do the same at the new tip for the phasor that is left."
_DRAWN = "{names} are drawn for you. Measure them: do they agree with the table?"
_DRAWN_ONE = "{names} is drawn for you. Measure it: does it agree with the table?"


def problem_moves(method: str, start: str, first: str, way: str, drawn: tuple[str, ...], arms: int) -> list[str]:
    """The moves of a problem by a method, without a number that the learner is to find.

    ``first`` is the phasor drawn first, ``way`` where it points, ``drawn`` those on the sheet already, ``arms``
    how many there are.
    """
    chained = method == "tip-to-tail"
    made = list(_START)
    if start == "no":
        made.append(_NO_POINT)
    if drawn:
        made.append((_DRAWN if len(drawn) > 1 else _DRAWN_ONE).format(names=" and ".join(drawn)))
    else:
        made += [move.format(first=first, way=way) for move in _FIRST]
        if arms > 1:
            made += [move.format(first=first) for move in (_AT_TIP if chained else _AT_POINT)]
    if arms > 2:
        again = _AT_TIP if drawn and chained else ((_AGAIN_AT_TIP if chained else _LAST_AT_POINT),)
        made += [move.format(first=first) for move in again]
    made += MOVES_OF[method] if arms > 2 or method != "parallelogram" else MOVES_OF[method][:2]
    return [*made, *_END]


def needs_larger(paper: str) -> str:
    """A paper on which such a sheet leaves no room to draw."""
    return f"Large print and easy reading need A4 or larger: {paper} leaves no room to draw."


def use_paper(paper: str) -> str:
    """An offer to take a larger paper."""
    return f"Use {paper}"


def page_title(title: str, number: int) -> str:
    """A page of moves in a viewer and to a screen reader."""
    return f"{title}, moves, page {number}"


def description(moves: int) -> str:
    """A page of moves for someone who cannot see it."""
    return f"{moves} lines to read or to tick, one move each."
