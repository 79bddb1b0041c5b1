"""Checking a drawing by a photograph: every sentence of it."""

from pycore.words.phrase import Phrase, plain, say

TITLE = "Check a drawing by photo"
LEAD = (
    "Photograph the drawing from above, the whole sheet in view. The photo stays on this device and is not kept."
)
CLOSE = "Close"
TAKE = "Take a photo"
CHOOSE = "Choose a photo"
GROUND = "The drawing is on"
GROUNDS = (("marks", "its problem sheet, with ringed marks"), ("corners", "plain paper, four corners in view"))
PAPER = "Size of the plain paper"
WAY = "The paper lies"
WAYS = (("portrait", "upright"), ("landscape", "lengthways"))
PICTURE = "The photo, with the points that were set"
NOT_A_PICTURE = (
    "This file cannot be opened as a picture here. It may be damaged, or of a kind that this browser does not "
    "read, such as HEIC: save or send it as JPEG, or take the photo from this page."
)
TOO_SMALL = "This picture is too small to be measured: its longer side needs at least 500 pixels."
LOOKING = "Looking for the marks …"
MARKS_NOT_FOUND = (
    "The marks were not found beyond doubt. Drag each ring on to the mark that it names, as the sheet is read: "
    "press near it, and steer."
)
DRAG_CORNERS = "Drag each ring on to the corner of the paper that it names, as it is read: press near it, and steer."
MARKS_DONE = "They are in place"
MOVE_MARKS = "Move the marks"
BACK = "Take back"
WHOLE = "Whole photo"
AGAIN = "Another photo"
SAVE = "Save as a picture"
OVERLAY = "Show the true drawing"
RESULT = "Your drawing, line by line"
POINTS_LEAD = (
    "Press near the point, keep the finger down and steer; let go when the cross is on it. It can be moved later."
)
MARKS_FOUND = "The marks were found. " + POINTS_LEAD
SAVED = "The picture has been saved."
MARK_NAMES = ("upper left", "top", "upper right", "right", "lower right", "foot", "lower left", "left")
HEAD = ("Line", "Length", "Angle", "")
COMMON_POINT, START = "the common point", "the start"
ACCEPTED, LOOK_AGAIN, WRONG = "good", "look again", "off"
BANDS = {"accept": ACCEPTED, "look": LOOK_AGAIN, "wrong": WRONG}
CAPTION = (
    "First what you drew, then what it should be: lengths in mm, angles as your protractor reads. Each line is "
    "judged from the lines that you drew before it."
)
SHEET_TURN = "from its place"
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
    return say("Show {point}.", point=point)


def tip_of(symbol: Phrase) -> Phrase:
    """The tip of an arrow."""
    return say("the tip of {a}", a=symbol)


def far_on(symbol: Phrase) -> Phrase:
    """A place on a faint line."""
    return say("a place far along the faint line of {a}", a=symbol) if symbol else say("a place far along the axis")


def end_of_diagonal(symbol: Phrase) -> Phrase:
    """The corner of a parallelogram."""
    return say("the end of the diagonal {a}", a=symbol)


# What makes a photo unusable.

REFUSALS = {
    "few": "Four marks are needed at least: drag a ring on to each of four.",
    "line": "Three of the marks lie nearly in line, so that the photo cannot be measured: check where they are.",
    "crossed": "The marks are in another order than on the sheet: check which ring is on which mark.",
    "far": "These places do not belong to one flat sheet: check the marks, and that the sheet lay flat.",
    "mirrored": "The marks are those of a mirrored picture: switch off mirroring in the camera, or check their order.",
    "poor": "The marks do not fit the sheet: they are off by {off} mm. Check each, and that the sheet lay flat.",
    "same": "Two points that belong apart are in one place: show {point} again.",
}


def refused(reason: str, **values: str) -> str:
    """Why nothing can be measured, and what to do."""
    return REFUSALS[reason].format(**values)


# What the lines are.


def dashed(symbol: Phrase) -> Phrase:
    """A side of a parallelogram."""
    return say("the dashed parallel to {a}", a=symbol)


SLIPS: dict[str, tuple[str, str]] = {
    "length-of-other": (
        "{a} has the length of {b}",
        "Compare each arrow’s length with the table of values, line by line.",
    ),
    "scale-ignored": (
        "{a} was set off at one centimetre for each unit",
        "Divide each value by the scale to find its length in centimetres.",
    ),
    "ten-long": ("{a} is ten times too long", "Check where the decimal mark of its length stands."),
    "ten-short": ("{a} is ten times too short", "Check where the decimal mark of its length stands."),
    "centimetre-long": ("{a} is a whole centimetre too long", "Count the centimetres from the ruler’s zero mark."),
    "centimetre-short": (
        "{a} is a whole centimetre too short",
        "Count the centimetres from the ruler’s zero mark, not from its 1.",
    ),
    "tens": ("the angle of {a} was read ten degrees too large", "Count the tens on the protractor’s scale once more."),
    "tens-less": (
        "the angle of {a} was read ten degrees too small",
        "Count the tens on the protractor’s scale once more.",
    ),
    "first-way": (
        "{a} points another way than the sheet asks",
        "Read on the sheet in which direction the first line is drawn.",
    ),
}


def told(key: str, symbol: Phrase) -> tuple[Phrase, Phrase]:
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
        say("{a} was begun at {where}", a=symbol, where=where),
        say("Look at the steps: from which point is {a} drawn?", a=symbol),
    )


# What is said of the whole.


def all_good() -> Phrase:
    """Nothing is off."""
    return say("**Every line is where it should be**, as far as a careful hand can draw it.")


def some_off(count: int) -> Phrase:
    """So many lines are off."""
    if count == 1:
        return say("**One line is off.** The others follow rightly from the lines before them.")
    return say("**{count} lines are off.** The others follow rightly from the lines before them.", count=str(count))


def look_again() -> Phrase:
    """Nothing is plainly off, but something is near the limit."""
    return say("**Nearly.** No line is far off; look again at those that are marked.")


def result(symbol: Phrase, length: str, amount: str) -> Phrase:
    """What the drawing gives, by its own end."""
    return say("Your drawing gives {a} as {length} mm, which is {amount}.", a=symbol, length=length, amount=amount)


def result_right(amount: str, off: str, allowed: str) -> Phrase:
    """How that compares with the calculation."""
    return say(
        "The calculation gives {amount}: {off} away, where a careful drawing may be ± {allowed}.",
        amount=amount, off=off, allowed=allowed,
    )  # fmt: skip


def measured_to(length: str, angle: str) -> Phrase:
    """How sure the photo is."""
    return say(
        "Measured from this photo to about ± {length} mm and ± {angle}° (95 %), which is allowed for.",
        length=length, angle=angle,
    )  # fmt: skip


def all_longer(percent: str, *, longer: bool) -> Phrase:
    """Every line is longer or shorter by the same share."""
    return say(
        "All lines are too {way} by the same share, about {percent} %: was the sheet printed or copied at another "
        "size? Lay a ruler on its bar.",
        way="long" if longer else "short", percent=percent,
    )  # fmt: skip


def all_shifted(millimetres: str) -> Phrase:
    """Every line is longer or shorter by the same piece."""
    return say(
        "All lines are about {mm} mm off in the same sense: was the ruler’s edge taken for its zero mark?",
        mm=millimetres,
    )


def slip_line(slip_name: Phrase, look: Phrase) -> Phrase:
    """A mistake with where to look."""
    return (*say("It looks as if "), *slip_name, ". ", *look)


def no_slip(symbol: Phrase) -> Phrase:
    """A line that is off in no usual way."""
    return say("None of the usual slips explains {a}: set it off once more.", a=symbol)


def announced(phrases: "tuple[Phrase, ...]") -> str:
    """The reply as it is read out."""
    return " ".join(plain(phrase) for phrase in phrases)
