"""Sheets for easy reading: what stands on their second page, one move to a line with a box to tick."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.words.sums import ROUTINE

PRINT = "Print"
PRINTS = (
    ("usual", "usual"),
    ("page", "large, drawing alone"),
    ("large", "large, with table"),
    ("easy", "easy reading"),
)
PRINT_HELP = (
    "Large print and easy reading have their own layout and scale. Easy reading has text of 12 points or more. The "
    "moves are on a separate page, one on each line. The table beside a drawing in large print needs A3."
)
HEAD_ANGLE, NONE = "angle", "none"
GIVEN, MOVES, LOOK = "Given values", "Moves", "To check"
UPRIGHT = "This table is too long for a landscape sheet in this print size, so the sheet is portrait."
NEUTRAL = "the neutral current"
"""What is to be found on the page of the neutral current."""
DISPLACEMENT = "displacement"


@dataclass(frozen=True, slots=True)
class ProblemGoal:
    """What a problem asks for: ``result`` ("the sum"), the ``guess`` that comes first, the ``quantity`` of what is
    drawn and its ``plural``, whether the sizes are ``given`` or must be worked out first, what is drawn ``on_the_way``
    ("" for nothing), the ``reversed`` sum if that is drawn, moves of the page's own ``after`` the measuring, and
    ``further`` phasors that are measured, the moves by which the last phasor or the star point is ``found``, and
    those by which phasors are ``turned`` before they are added."""

    result: str
    guess: str
    quantity: str
    plural: str
    sizes_given: bool = True
    on_the_way: str = ""
    reversed: str = ""
    after: tuple[str, ...] = ()
    further: tuple[str, ...] = ()
    found: tuple[str, ...] = ()
    turned: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ProblemStart:
    """Where a problem begins: what the sheet has for the learner (``start``), the ``first`` phasor and the ``way`` it
    points ("" where that is to be found), the line from which angles are counted, and the phasors ``drawn`` already."""

    start: str
    first: str
    direction: str
    origin: str
    drawn: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CompanionName:
    """A phasor of a second quantity: its name and the way it points ("" where that is to be found)."""

    name: str
    direction: str


_GUESS = "Estimate {guess}. Write your estimate down."
_WORK_OUT = "Calculate the {plural} first. Write them in the table."
_LENGTHS = "Use the scale to find the length for each {quantity}. Write the lengths in the table."
_NO_POINT = "Mark a starting point. Leave space on all sides."
_COMPANION = "Draw {name} {way}, at its own scale. Use a double line with an open arrowhead."
_COMPANION_AT = "Draw {name} at its angle from {origin}, at its own scale. Use a double line with an open arrowhead."
_FIRST = "Draw {first} {way}. Put an arrowhead on its tip."
_FIRST_AT = "Draw {first} at its angle from {origin}. Put an arrowhead on its tip."
_AT_POINT = (
    "Put the centre of the protractor on the common point. Put its zero line along {origin}.",
    "Mark the angle of the next phasor. Check which way it turns.",
    "Draw the phasor through the mark with the length from the table. Put an arrowhead on its tip.",
)
_LAST_AT_POINT = "Draw the last phasor in the same way, from the common point."
_ALL_AT_POINT = "Draw the other phasors in the same way, from the common point."
_AT_TIP = (
    "Put the centre of the protractor on the last tip. Put its zero line back along the line just drawn.",
    "Calculate 180° minus the angle between the two phasors. Example: 180° − 120° = 60°. Mark this angle. Check which "
    "way the drawing turns.",
    "Draw the next phasor through the mark with the length from the table. Put an arrowhead on its tip.",
)
_AGAIN_AT_TIP = "Do the same at the new tip for the last phasor."
_EACH_AT_TIP = "Do the same at each new tip until all phasors are drawn."
_ON_THE_WAY = "Draw a thin line from the start to the second tip: {name}."
_DIAGONAL = (
    "Start with the first two phasors. Through the tip of each, draw a dashed line parallel to the other.",
    "Draw the diagonal from the common point to the point where the dashed lines cross.",
)
_IT_IS = "It is {result}."
_SECOND_DIAGONAL = (
    "Use this diagonal and the remaining phasor. Draw two dashed parallels again.",
    "Draw the new diagonal from the common point. It is {result}.",
)
_CLOSE = "Draw a line from the start to the last tip. It is {result}."
_COMPONENTS = (
    "Draw two axes through the common point, one horizontal and one vertical.",
    "From each tip, draw a dashed line at right angles to each axis.",
    "Measure each component. Left and down are negative.",
    "Add the horizontal components. Add the vertical components.",
    "Mark both sums on the axes. Draw from the common point to the corner. It is {result}.",
)
_SHIFT = (
    "Join the three tips with dashed lines. This is the triangle of the line voltages.",
    "Calculate {result} and its angle. Write both in the table.",
    "Draw it from the common point. Its tip is the load’s star point.",
    "From the load’s star point, draw a line to each corner: {further}.",
    "Measure each of these lines. Use the scale to find the voltage for each length.",
    "Write the voltages in the table. Compare with your estimate: which load has the highest voltage?",
)
_REVERSED = (
    "Draw {reversed} too: {way}. It has the same length and the opposite direction.",
    "Write its length and its angle in the table.",
)
_BACK = {"tip-to-tail": "from the last tip back to the start"}
_OPPOSITE = "from the common point, backwards along the line just measured"
_END = (
    "Measure its length to the point of the arrowhead. Use the scale to find its size.",
    "Measure its angle. Write both in the table.",
)
_COMPARE = "Compare with your estimate. Then check by calculation."
_DRAWN = "{names} are drawn for you. Measure them: do they agree with the table?"
_DRAWN_ONE = "{names} is drawn for you. Measure it: does it agree with the table?"
_DRAWN_FIRST = "{names} are drawn for you. Measure them: do they agree with your calculation?"
_DRAWN_FIRST_ONE = "{names} is drawn for you. Measure it: does it agree with your calculation?"


def turn_round(names: Sequence[str]) -> tuple[str, ...]:
    """The phasors that are subtracted, turned by 180°."""
    return tuple(f"Turn {name} by 180°: that is −{name}. Write its angle in the table." for name in names)


def minus(sense: str) -> str:
    """Which way a negative angle turns on this paper."""
    return f"Angles: minus means {sense}."


def both(quantity: str, plural: str) -> str:
    """What is to be worked out where the second quantity is unknown too: current and the voltages."""
    return f"{quantity} and the {plural}"


def lines_of(note: str) -> tuple[str, ...]:
    """A note of the usual sheet as lines, a sentence each: what is done with every problem stands among the moves."""
    pieces = [piece.rstrip(".") for piece in note.replace("; ", ", ").split(". ")]
    return tuple(line for line in (f"{piece}." for piece in pieces if piece) if line != ROUTINE)


def _drawn(names: tuple[str, ...], *, sizes_given: bool) -> str:
    one, several = (_DRAWN_ONE, _DRAWN) if sizes_given else (_DRAWN_FIRST_ONE, _DRAWN_FIRST)
    return (several if len(names) > 1 else one).format(names=" and ".join(names))


def _before(goal: ProblemGoal, begun: ProblemStart, companions: tuple[CompanionName, ...]) -> list[str]:
    """What is done before the first phasor."""
    moves = [_GUESS.format(guess=goal.guess)]
    if not goal.sizes_given:
        moves.append(_WORK_OUT.format(plural=goal.plural))
    moves += goal.turned
    moves.append(_LENGTHS.format(quantity=goal.quantity))
    if begun.start == "no":
        moves.append(_NO_POINT)
    moves += [_COMPANION.format(name=one.name, way=one.direction) for one in companions if one.direction]
    return moves


def _phasors(begun: ProblemStart, arms: int, *, chained: bool, sizes_given: bool) -> list[str]:
    """The phasors themselves, one after another; some may be drawn already."""
    moves: list[str] = []
    if begun.drawn:
        moves.append(_drawn(begun.drawn, sizes_given=sizes_given))
        left = arms - len(begun.drawn)
    else:
        moves.append(
            (_FIRST if begun.direction else _FIRST_AT).format(
                first=begun.first, way=begun.direction, origin=begun.origin
            )
        )
        left = arms - 1
    if left:
        moves += [move.format(origin=begun.origin) for move in (_AT_TIP if chained else _AT_POINT)]
    if left > 1:
        last, each = (_AGAIN_AT_TIP, _EACH_AT_TIP) if chained else (_LAST_AT_POINT, _ALL_AT_POINT)
        moves.append(last if left == 2 else each)
    return moves


def _sum(method: str, goal: ProblemGoal, arms: int) -> list[str]:
    """How the sum is drawn."""
    if method == "parallelogram":
        if arms < 3:
            return [*_DIAGONAL[:-1], f"{_DIAGONAL[-1]} {_IT_IS.format(result=goal.result)}"]
        return [*_DIAGONAL, *(move.format(result=goal.result) for move in _SECOND_DIAGONAL)]
    if method == DISPLACEMENT:
        join, *calculated, corners, measure, write = _SHIFT
        moves = [join, *(goal.found or calculated), corners, measure, write]
        return [move.format(result=goal.result, further=", ".join(goal.further)) for move in moves]
    if method == "components":
        return [move.format(result=goal.result) for move in _COMPONENTS]
    return [_CLOSE.format(result=goal.result)]


def problem_moves(
    method: str, goal: ProblemGoal, begun: ProblemStart, arms: int, companions: tuple[CompanionName, ...] = ()
) -> list[str]:
    """The moves of a problem by a method, without a number that the learner is to find; ``arms`` is how many phasors
    there are, ``companions`` those of a second quantity."""
    moves = _before(goal, begun, companions)
    last_found = goal.found if method != DISPLACEMENT else ()
    set_off = arms - 1 if last_found else arms
    moves += _phasors(begun, set_off, chained=method == "tip-to-tail", sizes_given=goal.sizes_given)
    if goal.on_the_way:
        moves.append(_ON_THE_WAY.format(name=goal.on_the_way))
    moves += [*last_found, *_sum(method, goal, arms)]
    moves += [_COMPANION_AT.format(name=one.name, origin=begun.origin) for one in companions if not one.direction]
    if method == DISPLACEMENT:
        return moves
    way = _BACK.get(method, _OPPOSITE)
    back = [move.format(reversed=goal.reversed, way=way) for move in _REVERSED] if goal.reversed else []
    return [*moves, *_END, *goal.after, *back, _COMPARE]


def needs_larger(paper: str) -> str:
    """A paper on which such a sheet leaves no room to draw."""
    return f"Large print and easy reading need A4 or larger: {paper} is too small to draw on."


def use_paper(paper: str) -> str:
    """An offer to take a larger paper."""
    return f"Use {paper}"


def page_title(title: str, number: int) -> str:
    """A page of moves in a viewer and to a screen reader."""
    return f"{title}, moves, page {number}"


def description(moves: int) -> str:
    """A page of moves for someone who cannot see it."""
    return f"{moves} lines with boxes to tick, one move per line."
