"""The words of a drawing made on the screen. Values stand in braces; the page's script fills those in SENTENCES."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, listed_phrases, say

TITLE = "Draw it here"
CLOSE = "Close"
BOARD = "The sheet with the instruments and a pencil"
INSTRUMENTS, VERBS, FURTHER, LINE_KINDS, NAMES = (
    "Instrument in hand", "What to do", "More to do", "Kind of line", "Name of the arrow",
)  # fmt: skip
RULER, PROTRACTOR, COMPASSES = "Ruler", "Protractor", "Compasses"
SQUARE_60, SQUARE_45 = "Set square 60°", "Set square 45°"
OTHERS, OTHERS_SAID = "More", "More instruments"
OPEN_COMPASSES = "Open"
PLACE, TURN, MARK, DRAW = "Place", "Turn", "Mark", "Draw"
ARROW, LINE, DASHED = "Arrow", "Line", "Dashed"
ONTO, ALONG = "Onto a point", "Along a line"
LESS, MORE_TURN = "− 1°", "+ 1°"
LESS_SAID, MORE_SAID = "Turn 1° clockwise", "Turn 1° anticlockwise"
UNDO, REDO, RUBBER, CLOSER, FARTHER, WHOLE = "Undo", "Redo", "Rubber", "+", "−", "Whole sheet"
CLOSER_SAID, FARTHER_SAID = "Closer", "Farther away"
JUDGE = "How is it so far?"
TO_PAPER = "Back to the paper"
NO_NAME = "No name"
LINES = "Your lines"
NO_LINES = "Nothing is drawn yet."
MOVES = "The moves"
KEYS = "Fingers and keys"
MORE = "File, replay, options"
FURTHER_HEAD = "Problem, reading, moves, lines"
PROBLEM = "The problem"
FULL_SCREEN = "Full screen"
EACH = "Say how it is after each line"
CATCH = "The pencil and the instruments catch on my own points and lines"
TRUE = "Lay the true drawing over it"
REPLAY = "Play it again"
PRINT = "Print my drawing"
SAVE, SAVE_SVG, OPEN = "Save the drawing", "Save as a picture (SVG, in mm)", "Open a drawing"
AFRESH = "Begin afresh"
READ = "Read the result off your drawing"
READ_LEAD = "Measure it with ruler and protractor. Type what you read."
READ_MARK = "Mark my reading"
REMOVE, RENAME = "Rub out", "Name"
KIND_NAMES = {"arrow": "Arrow", "full": "Line", "dashed": "Dashed line", "mark": "Mark", "arc": "Arc"}

PROMPTS = {
    "place": "Drag the instrument, or press where its zero belongs.",
    "turn": "Drag round its zero to turn it.",
    "mark": "Slide along the edge. Let go where the mark belongs.",
    "draw": "Slide along the ruler’s edge, or press at both ends of the line.",
    "rubber": "Press on a line or a mark to rub it out.",
    "place-square": "Drag the set square. It slides along the ruler if it lies against it.",
    "draw-square": "Slide along an edge, or press at both ends of the line.",
    "place-compasses": "Drag the compasses, or press where their point belongs.",
    "turn-compasses": "Press where the pencil belongs, or drag it there.",
    "draw-compasses": "Press where the arc begins and slide round to its end.",
}
KEY_LINES = (
    "Two fingers on an instrument move and turn it. Beside it, they move the paper and change its size.",
    "For a parallel, lay the set square along a line and the ruler against it. Then slide the set square along.",
    "Arrow keys move the instrument by 1 mm, with Shift by 0.1 mm. [ and ] turn it by 1°, with Shift by 0.1°.",
    "1 Place, 2 Turn, 3 Mark, 4 Draw. R takes the ruler, P the protractor, S a set square, M the compasses.",
    "O lays the instrument on the next point. L lays it along the next line. B turns it half round.",
    "G lays the ruler against the set square, or the set square against the ruler. G again lifts it off.",
    "Against the ruler, the arrow keys slide the set square. O slides it to the next point.",
    "In Mark and Draw, E takes the set square’s next edge.",
    "2 opens the compasses: arrow keys by 1 mm, C to the next point. In Draw, the arrow keys lead them round by 1°.",
    "In Mark and Draw, the arrow keys lead the pencil along the edge. C leads it to the next point at the edge.",
    "Enter makes the mark. In Draw, Enter begins the line, and Enter ends it. A, F and D choose arrow, full or dashed.",
    "Z undoes, Y brings back. + and − change the size, 0 shows the whole sheet. J asks how it is so far.",
)

SENTENCES = {
    "ruler": "Ruler: zero {where}, edge at {angle}°.",
    "square": "{tool}: right angle {where}, base at {angle}°.",
    "compasses": "Compasses: point {where}, opened to {open} mm, pencil at {angle}°.",
    "opened-on": "The pencil is on {point}.",
    "rests-ruler": "It lies against the set square.",
    "rests-square": "It lies against the ruler and slides along it.",
    "against-ruler": "To the set square",
    "against-square": "To the ruler",
    "no-other": "Take the ruler or a set square first.",
    "no-mark": "The compasses make no marks. Press Draw for an arc.",
    "edge-0": "base",
    "edge-1": "upright",
    "edge-2": "slope",
    "protractor": "Protractor: centre {where}, zero line at {angle}°.",
    "at": "{x} mm from the left, {y} mm from the top",
    "on": "on {point}",
    "point-start": "the start",
    "point-zero": "the sheet’s mark of its first direction",
    "point-tip": "the tip of {name}",
    "point-tail": "the beginning of {name}",
    "point-mark": "mark {number}",
    "point-crossing": "a crossing of your lines",
    "line-of": "line {number}",
    "pencil-ruler": "Pencil at {reading} mm on the ruler{where}.",
    "pencil-protractor": "Pencil at {reading}° on the scale from the zero line, {other}° on the other scale{where}.",
    "pencil-square": "Pencil at {reading} mm along the {edge} of the set square{where}.",
    "pencil-compasses": "Pencil at {angle}° from the point of the compasses, gone round by {turned}°{where}.",
    "begun-arc": "The arc begins here. Press where it ends, or lead the pencil round and press Enter.",
    "short-arc": "That arc is too short to be drawn. Press where it begins and slide round to its end.",
    "drawn-arc": "Arc with its centre {centre}, radius {open} mm.",
    "begun": "The line begins here. Press where it ends, or lead the pencil on and press Enter.",
    "marked": "Mark {number} is made{where}.",
    "drawn": "{kind} from {start} to {end}, {length} mm long.",
    "named": "It is called {name} now.",
    "unnamed": "It has no name now.",
    "rubbed": "Rubbed out.",
    "nothing-there": "Nothing is there to rub out.",
    "undone": "Undone.",
    "redone": "Brought back.",
    "nothing-undone": "There is nothing to undo.",
    "nothing-redone": "There is nothing to bring back.",
    "short": "That line is too short to be drawn. Press where it begins and slide along the edge.",
    "no-point": "There is no other point yet.",
    "no-line": "There is no line yet.",
    "no-edge-point": "No point of yours lies at this edge.",
    "verb": "{verb}. {prompt}",
    "in-hand": "{tool} in hand.",
    "asked": "Which arrow is this? Press its name.",
    "name-it": "Give the arrow its name.",
    "back": "Your drawing of this problem is here again.",
    "saved": "The drawing is saved as a file.",
    "not-ours": "This file holds no drawing of this site.",
    "other-problem": "This drawing belongs to another problem. Open that problem first.",
    "opened": "The drawing is open.",
    "afresh": "The paper is empty. Undo brings the drawing back.",
    "replayed": "That was your drawing, move by move.",
    "size": "{percent} % of true size.",
    "waiting": "Looking at your lines …",
    "list-line": "{number}. {kind}{name}",
    "done-line": "{kind}: drawn.",
    "list-mark": "{number}. Mark",
    "list-printed": "{kind} {name}: drawn on the sheet already",
}

# What is said of the drawing.

NOTHING = say("**Nothing to judge yet.** Draw the first arrow, from the start that is printed on the sheet.")
AFRESH_BEGUN = "Only what the sheet has drawn already is left. Undo brings the drawing back."
ASKED = say("**An arrow has no name yet.** Press its name, then ask again.")
ONE_WRONG_NEXT = say("Correct it, or leave it: every later line is judged from what you drew.")
DONE = say("Now measure the result and give your reading below.")


def begun(symbols: Sequence[Phrase]) -> Phrase:
    """Which phasors the sheet has drawn already."""
    verb = "are" if len(symbols) > 1 else "is"
    return say("{drawn} {verb} drawn on the sheet already.", drawn=listed_phrases(symbols), verb=verb)


def nothing_yet(drawn: Phrase) -> Phrase:
    """Nothing to judge beside what the sheet has ``drawn`` already, in a sentence."""
    return say("**Nothing to judge yet.** {drawn} Draw the next line.", drawn=drawn)


def given(symbol: Phrase, amount: Phrase, direction: str) -> Phrase:
    """A value of the problem and, where it is given, its direction."""
    size, *unit = amount
    if unit and str(size)[-1].isdigit():
        amount = (size, "\N{NO-BREAK SPACE}", *unit)
    else:
        amount = (size,)
    return (*symbol, ": ", *amount, f", {direction}." if direction else ".")


def follows(method: Phrase) -> Phrase:
    """Which method the lines follow."""
    return say("Your lines follow: {method}.", method=method)


def is_true(symbols: Phrase) -> Phrase:
    """The lines that are right."""
    return say("**True:** {lines}.", lines=symbols)


def look_at(number: int) -> Phrase:
    """The move in which a line went wrong."""
    return say("Look at move {number}.", number=str(number))


def off_by(symbol: Phrase, length: str, angle: str) -> Phrase:
    """By how much a line is off from what its own earlier lines ask."""
    if length and angle:
        return say("{a} is off by {length} mm and {angle}°.", a=symbol, length=length, angle=angle)
    return say("{a} is off by {size}.", a=symbol, size=f"{length} mm" if length else f"{angle}°")


def gap(symbol: Phrase, length: str) -> Phrase:
    """An arrow misses the point at which it should begin or end."""
    return say("{a} misses its point by {length} mm.", a=symbol, length=length)


def looks_like(slip: Phrase) -> Phrase:
    """A mistake that fits, not what should be there."""
    return (*say("It looks as if "), *slip, ".")
