"""Checking a drawing by a photograph: every sentence of it."""

from collections.abc import Sequence

from pycore.words import mistakes
from pycore.words.phrase import Phrase, plain, say

TITLE = "Check a drawing by photo"
LEAD = (
    "Take a photo of the drawing from above. The whole sheet must be in the photo. The photo stays on this device and "
    "is not saved."
)
CLOSE = "Close"
TAKE = "Take a photo"
CHOOSE = "Choose a photo"
GROUND = "The drawing is on"
GROUNDS = (("marks", (
    "its problem sheet, with marks in rings"
)), ("corners", "plain paper, all four corners in the photo"))
PAPER = "Size of the plain paper"
WAY = "Orientation of the paper"
WAYS = (("portrait", "portrait"), ("landscape", "landscape"))
PICTURE = "The photo with the marked points"
NOT_A_PICTURE = (
    "This file cannot be opened as a picture. It may be damaged, or this browser does not read its format, such as "
    "HEIC. Save it as JPEG, or take the photo from this page."
)
TOO_SMALL = "This picture is too small to measure: its longer side needs at least 500 pixels."
LOOKING = "Looking for the marks …"
NO_MARKS = (
    "No marks were found in this photo. Is it a problem sheet, and is all of it in the photo? Then drag each ring onto "
    "its mark. If the sheet is not upright, press “Turn” first."
)
MARKS_DO_NOT_FIT = (
    "The marks found do not fit the sheet of this problem on {paper}. Is it this sheet, and is all of it in the photo? "
    "Then drag each ring onto its mark. If the sheet is not upright, press “Turn” first."
)
DRAG_MARKS = "Drag each ring onto its mark. The name says which one."
DRAG_CORNERS = (
    "Drag each ring onto its corner of the paper. The name says which one. If the paper is not upright, press “Turn” "
    "first."
)
TURN = "Turn"
NOT_DRAWN = "Not drawn yet"
MARKS_DONE = "The rings are in place"
MOVE_MARKS = "Move the marks"
BACK = "Undo"
WHOLE = "Whole photo"
AGAIN = "Another photo"
SAVE = "Save as a picture"
OVERLAY = "Show the correct drawing"
RESULT = "The drawing, line by line"
POINTS_LEAD = (
    "Press near the point and keep your finger down. Move the cross onto the point, then let go. You can move it "
    "again later."
)
MARKS_FOUND = "The marks were found. " + POINTS_LEAD
SAVED = "The picture has been saved."
MARK_NAMES = ("upper left", "top", "upper right", "right", "lower right", "bottom", "lower left", "left")
HEAD = ("Line", "Length", "Angle", "")
HELD_BACK = (
    "The answer is still hidden. So this page does not show the right values or the right drawing."
)
OWN_CAPTION = "What was drawn: lengths in mm, angles as on a protractor."
COMMON_POINT, START = "the common point", "the start"
ACCEPTED, LOOK_AGAIN, WRONG, MIRRORED = "correct", "look again", "wrong", "mirrored"
BANDS = {"accept": ACCEPTED, "look": LOOK_AGAIN, "wrong": WRONG}
CAPTION = (
    "First what was drawn, then what it should be: lengths in mm, angles as on a protractor. Each line is judged from "
    "the lines that were drawn before it. A dashed line runs on until it meets the other, so its length is not judged."
)


def drawn_and_right(drawn: str, right: str) -> str:
    """What was drawn, and what it should be."""
    return f"{drawn}, should be {right}"


SHEET_TURN = "from its correct direction"
OFF_PARALLEL = "from parallel"


def mark_name(number: int) -> str:
    """A mark by its place on the sheet as it is read."""
    return f"Mark {number + 1}: {MARK_NAMES[number]}"


CORNERS = ("upper left", "upper right", "lower right", "lower left")


def corner_name(number: int) -> str:
    """A corner of the paper."""
    return f"Corner {number + 1}: {CORNERS[number]}"



def show(point: Phrase) -> Phrase:
    """What to show next."""
    return say("Mark {point}.", point=point)


def tip_of(symbol: Phrase) -> Phrase:
    """The tip of an arrow."""
    return say("the tip of {a}", a=symbol)


def far_on(symbol: Phrase) -> Phrase:
    """A place on a faint line."""
    return say("a point far along the faint line of {a}", a=symbol) if symbol else say("a point far along the axis")


def end_of_diagonal(symbol: Phrase) -> Phrase:
    """The corner of a parallelogram."""
    return say("the end of the diagonal {a}", a=symbol)


# What makes a photo unusable.

REFUSALS = {
    "few": "At least four marks are needed. Drag a ring onto each of four marks.",
    "line": "Three of the marks are almost in one line, so the photo cannot be measured. Check the positions.",
    "crossed": "The marks are not in the same order as on the sheet. Check which ring is on which mark.",
    "far": "These points cannot be on one flat sheet. Check the marks, and check that the sheet was flat.",
    "mirrored": "The picture is mirrored. Switch off mirroring in the camera, or check the order of the marks.",
    "poor": (
        "The marks do not fit the sheet: they differ by {off} mm. Check each mark, and check that the sheet was flat."
    ),
    "same": "Two different points are in the same place. Mark {point} again.",
    "untouched": (
        "You have not moved these rings: {rings}. Drag each ring to its place. If one is right already, just press it."
    ),
    "edge": "These rings are at the edge of the photo: {rings}. All of the sheet must be in the photo. Take it again.",
    "other-paper": (
        "These marks do not fit a sheet on {paper}. Is the sheet of another size? Choose its size in the settings."
    ),
    "shape": (
        "These points cannot be the corners of {paper} in {way}. Check each ring. Check the size and the orientation "
        "of the paper."
    ),
    "shape-marks": "These points cannot be the marks of a sheet on {paper}, in {way}. Check each ring.",
    "no-start": "Nothing can be judged without {point}. Press “Undo” and mark it.",
    "no-direction": (
        "On plain paper, all directions are judged from the first line. Draw it first. Press “Undo” and mark {point}."
    ),
    "nothing": "No line can be judged yet. Both of its ends must be drawn and marked.",
}


def marks_do_not_fit(paper: str) -> str:
    """Marks were found, and not those of this sheet."""
    return MARKS_DO_NOT_FIT.format(paper=paper)


def refused(reason: str, **values: str) -> str:
    """Why nothing can be measured, and what to do."""
    return REFUSALS[reason].format(**values)


# What the lines are.


def dashed(symbol: Phrase) -> Phrase:
    """A side of a parallelogram."""
    return say("the dashed parallel to {a}", a=symbol) if symbol else say("the dashed line")


SLIPS: dict[str, tuple[str, str]] = {
    "length-of-other": (
        "{a} has the length of {b}",
        "Compare each arrow’s length with the table of values, line by line.",
    ),
    "scale-ignored": (
        "{a} was drawn with one centimetre for each unit",
        "Divide each value by the scale to find its length in centimetres.",
    ),
    "ten-long": ("{a} is ten times too long", "Check the decimal mark of its length."),
    "ten-short": ("{a} is ten times too short", "Check the decimal mark of its length."),
    "centimetre-long": ("{a} is exactly one centimetre too long", "Count the centimetres from the ruler’s zero mark."),
    "centimetre-short": (
        "{a} is exactly one centimetre too short",
        "Count the centimetres from the ruler’s zero mark, not from its 1.",
    ),
    "tens": ("the angle of {a} is ten degrees too large", "Count the tens on the protractor’s scale again."),
    "tens-less": (
        "the angle of {a} is ten degrees too small",
        "Count the tens on the protractor’s scale again.",
    ),
    "first-way": (
        "{a} does not point in the direction that the sheet asks for",
        "Check on the sheet in which direction the first line is drawn.",
    ),
}


def mistake_text(key: str, symbol: Phrase) -> tuple[Phrase, Phrase]:
    """What happened to a line, and where to look."""
    name, look = SLIPS[key]
    return say(name, a=symbol), say(look)


def length_of_other(a: Phrase, b: Phrase) -> tuple[Phrase, Phrase]:
    """A line that is as long as another should be."""
    name, look = SLIPS["length-of-other"]
    return say(name, a=a, b=b), say(look)


def other_start(symbol: Phrase, *, common: bool) -> tuple[Phrase, Phrase]:
    """A line that was begun at another point."""
    where = "the start" if common else "another point"
    return (
        say("{a} starts at {where}", a=symbol, where=where),
        say("Look at the steps: at which point does {a} start?", a=symbol),
    )


def begun_away(symbol: Phrase, *, common: bool) -> tuple[Phrase, Phrase]:
    """A line that does not begin at its point."""
    where = "the common point or the start" if common else "the tip where it belongs"
    return (
        say("{a} does not start at {where}", a=symbol, where=where),
        say("Look at the steps: at which point does {a} start?", a=symbol),
    )


def other_name(symbol: Phrase, other: Phrase) -> tuple[Phrase, Phrase]:
    """A phasor that was drawn right and has the name of another."""
    return (
        say("{a} is {b} with the wrong name", a=symbol, b=other),
        say("It has the length and the direction of {b}. Press Name beside it under “Your lines”.", b=other),
    )


def across(symbol: Phrase) -> tuple[Phrase, Phrase]:
    """The other diagonal of a parallelogram."""
    return (
        say("{a} joins the two tips, which is the other diagonal", a=symbol),
        say("{a} runs from the common point to the corner where the dashed lines cross.", a=symbol),
    )


# What is said of the whole.


ALL_GOOD = say("**Every line is correct**, within the accuracy of a careful drawing.")
GOOD_SO_FAR = say("**Every line drawn so far is correct**, within the accuracy of a careful drawing.")
MIRRORED_DRAWING = say("**The drawing is mirrored.** Its angles turn the other way round throughout.")


def not_drawn(points: Sequence[Phrase]) -> Phrase:
    """The points that the learner did not mark."""
    listed: Phrase = ()
    for index, point in enumerate(points):
        listed = (*listed, *((", ",) if index else ()), *point)
    return (*say("Not drawn yet: "), *listed, ".")


def some_off(count: int) -> Phrase:
    """So many lines are off."""
    if count == 1:
        return say("**One line is wrong.** The other lines are correct for the lines drawn before them.")
    return say((
        "**{count} lines are wrong.** The other lines are correct for the lines drawn before them."
    ), count=str(count))


def look_again() -> Phrase:
    """Nothing is plainly off, but something is near the limit."""
    return say("**Nearly correct.** No line is far off. Look again at the marked lines.")


def result(symbol: Phrase, length: str, amount: str) -> Phrase:
    """What the drawing gives, by its own end."""
    return say("The drawing gives {a} as {length} mm, which is {amount}.", a=symbol, length=length, amount=amount)


def result_right(amount: str, off: str, allowed: str) -> Phrase:
    """How that compares with the calculation."""
    return say(
        "The calculation gives {amount}. The difference is {off}. A careful drawing may differ by ± {allowed}.",
        amount=amount, off=off, allowed=allowed,
    )  # fmt: skip


def result_direction(off: str) -> Phrase:
    """How far the drawn result points from where the calculation has it."""
    return say("Its direction differs by {off}°.", off=off)


def measured_to(length: str, angle: str) -> Phrase:
    """How sure the photo is."""
    return say(
        "The photo can be measured to about ± {length} mm and ± {angle}° (95 %). The check takes this into account.",
        length=length, angle=angle,
    )  # fmt: skip


def all_longer(percent: str, *, longer: bool) -> Phrase:
    """Every line is longer or shorter by the same share."""
    return say(
        "All lines are too {way} by the same percentage, about {percent} %. Was the sheet printed or copied at "
        "another size? Measure its check bar.",
        way="long" if longer else "short", percent=percent,
    )  # fmt: skip


def all_shifted(millimetres: str) -> Phrase:
    """Every line is longer or shorter by the same piece."""
    return say(
        "All lines are about {mm} mm wrong in the same way. Did you use the end of the ruler instead of its zero mark?",
        mm=millimetres,
    )


def look_of(key: str) -> Phrase:
    """Where to look after a mistake that all lines have in common."""
    return mistakes.mistake_text(key)[1]


def slip_line(slip_name: Phrase, look: Phrase) -> Phrase:
    """A mistake with where to look."""
    return (*say("It looks as if "), *slip_name, ". ", *look)


def no_slip(symbol: Phrase) -> Phrase:
    """A line that is off in no usual way."""
    return say("No typical mistake explains {a}: draw it again.", a=symbol)


def announced(phrases: "tuple[Phrase, ...]") -> str:
    """The reply as it is read out."""
    return " ".join(plain(phrase) for phrase in phrases)
