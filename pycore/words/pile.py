"""The words of a pile of photographs: the page, its rows, and what is said of each photograph."""

from collections.abc import Sequence

from pycore.quantity import NO_BREAK_SPACE
from pycore.words.class_set import choose_separator
from pycore.words.phrase import listed
from pycore.words.verdict import capital

SLUG = "photographs"
TITLE = "Mark photographs"
LEAD = (
    "Photograph the problem sheets of a class, and choose all photographs at once. Each drawing is read, judged line "
    "by line, and marked as the class set says. What is not sure is asked."
)
DESCRIPTION = "Mark the hand drawings of a class from their photographs, on your own device."
NO_SCRIPT = "JavaScript is off. Photographs are read in your browser, which needs JavaScript."
ADD, TAKE, DROP = "Add photographs or PDF", "Take a photograph", "You can also drop files on this page."
TAKE_NEXT = "Take the next photograph"
ACCEPT_SURE, NEXT, STOP, GO_ON = "Accept the sure ones ({count})", "Next to ask", "Stop", "Go on"
SAVE_TABLE, PRINT = "Save as a table", "Print the marks"
ERASE = "Erase the pile"
FULL = "The pile is full: it holds 200 photographs. Finish it before you add others."
EMPTY = "There are no photographs yet."
HEAD = ("Code", "Learner", "Drawing gives", "Right answer", "Result", "Possible mistake", "Mark")
TABLE_LABEL = "The photographs"
TABLE_HELP = (
    "Keys in the list: up and down change the row. N: next to ask. A: accept. P: press the points. M: choose the mark."
)
READING = "Reading photograph {number} of {count} …"
LEFT = "About {seconds} s left."
STOPPED = "Stopped. The rows that were read stay."
ERASED = "The pile is erased."
TAKEN_AWAY = "Row {number} is taken away."
BACK = "What was erased is back."
ADDED = "The accepted marks are in the register."
NOT_ADDED = "Accept a row first. Only accepted marks go into the register."
ACCEPTED_SOME = "Accepted: {count}."
ABOUT = (
    "Photograph from above, with the whole sheet in the picture, and no shadow on the code.",
    "JPEG and PNG are read, and HEIC where your browser opens it. A scanned PDF is split into its pages.",
    "With a camera, take one sheet after another. The frame turns green when a whole sheet is seen. Each is read while "
    "you take the next.",
    "Draw with firm pencil lines. What is not clear is never guessed: you choose a place, or press the points.",
    "Only lines are read. What a learner has written is not: look at the sheet for it.",
    "Reading takes some seconds for each sheet. It was tried on made-up photographs only: compare the first ones by "
    "eye.",
    "How well does it read your own pencil and phone? Draw one sheet, photograph it, and open “What was read, in mm” "
    "beside it. Measure the same points with a ruler.",
    "Names and marks come from the class set that you made last on this device: sheet 1 is that of the first name. "
    "Sheets of a question paper that was made on this device are known too: their marks go into that paper. Where a "
    "sheet shows no QR code, type the code of the paper and the question, as 75L-KUT-24T/2.",
    "Photographs are never sent, and are gone when you leave the page. Where and when one was taken is not read. The "
    "camera runs only while its window is open.",
)
STAYS = "Rows and marks stay on this device for 30 days after the last change, unless you erase them."
FEEDBACK, FEEDBACK_TITLE = "Feedback sheets (PDF)", "Feedback on your drawing"
PREPARING = "Preparing photograph {number} of {count} …"
FEEDBACK_FILE = "feedback.pdf"
FEEDBACK_HEAD = ("Line", "Length", "Angle", "Result")
SHOWN_WRONG = "Red: the first line to look at. Green: the right drawing."
SHOWN_RIGHT = "Green: the right drawing."
NO_PHOTOGRAPH = "The photograph is not on this device any more."
FROM_LINES_BEFORE = (
    "Each line is judged from the lines that you drew before it. A dashed line runs on until it meets the other, so "
    "its length is not judged."
)
READ_IN_MM = "What was read, in mm"
READ_HEAD = ("Point", "From the left", "From below", "Within ±", "")
SURE, ASKED = "sure", "asked"
MORE_ABOUT = "How it works"
AT_THE_EDGE = "This drawing is at the edge of what a careful hand can do. Look at it, then choose the mark."
PARTS_AT_THE_EDGE = ("the first step", "the length of the result", "the direction of the result")
LINES_OFF = "The result is right, but a line is not. Look at the drawing, then choose the mark."
FROM_OWN_STEP = "The result follows from an earlier mistake. Look at the drawing, then choose the mark."
STATES = {"waiting": "Waiting.", "reading": "Reading …", "asked": "To ask.",
          "press": "To ask. Press the points of the drawing."}
FAULTS = {
    "unreadable": (
        "This file cannot be opened as a picture. It may be damaged, or this browser does not read its format. Save it "
        "as JPEG."
    ),
    "pdf": (
        "No photograph was found in this PDF. It may be protected, damaged, or in black and white. Scan in colour or "
        "grey, or save the pages as JPEG."
    ),
    "small": "This picture is too small to measure: its longer side needs at least 500 pixels.",
    "no-code": (
        "No code was found. Is this a photograph of a sheet of this site? If so, type the code that is printed on it."
    ),
    "many-codes": "There is more than one sheet in this photograph. Photograph each alone.",
    "no-marks": "No marks were found. Is all of the sheet in the photograph? You can set them by hand.",
    "misfit": "The marks found do not fit the sheet of this code. You can set them by hand.",
    "failed": "This photograph could not be read. Take it away and choose it again.",
}
NO_SHEET_TO_READ = ("unreadable", "pdf", "small")
"""Faults of a file in which no sheet is seen: a code would not help."""
NOT_OURS = "The QR code in this photograph does not belong to a sheet of this site. Type the code printed on the sheet."
RIGHT, LOOK = "right", "look again"
OTHER_SCALE, RULER_EDGE = "all lengths at another scale", "zero at the ruler’s edge"
DIRECTION_OFF = "direction off"
NOT_DRAWN = "Not drawn"
NOT_FINISHED = "not drawn to the end"
CODE, OPEN_CODE = "Code on the sheet", "Read with this code"
PRESS, PRESS_AGAIN, ACCEPT, ACCEPTED = "Press the points", "Press the points again", "Accept", "Accepted"
TAKE_AWAY, LARGER, SMALLER = "Take this photograph away", "Larger", "Smaller"
LINES = {
    "right": ("Hide the right drawing", "Show the right drawing"),
    "read": ("Hide dots", "Show dots"),
}
"""Of the lines over a photograph: what a press does while they are shown, and while they are hidden."""
LEGEND = {
    "first": "Red dots: the first line to look at",
    "read": "Dots: what was read",
    "right": "Green lines: the right drawing",
}
GONE = "This photograph is no longer on this page. Add it again to see it here: it joins its row."
MARK, ANY_MARK = "Mark", "Choose the mark"
NOTHING_READ = "These rows were not read to the end. Choose the photographs again."
SHOWN = "Photograph"
FILE = "photographs.csv"
TABLE_HEAD = (
    "Row", "Code", "Learner", "Drawing gives", "Right answer", "Unit", "Off", "Result", "Possible mistake",
    "Marks from", "Marks to", "Marks of", "Accepted", "File", "Remark",
)  # fmt: skip
YES = "yes"


NO_SUCH_PAPER = (
    "This is the code of a question paper that this device does not keep. Open the paper here first, from its file."
)
TO_PAPERS = "Add to the question paper"
OF_PAPER = (
    "This sheet belongs to a question paper. Its marks go there part by part. What is not sure is chosen there."
)
NOT_PUT = "Accept a row of a question paper first."


def which_question(code: str, numbers: Sequence[int]) -> str:
    """A question paper has several drawings: which of them was photographed?"""
    listed = ", ".join(map(str, numbers))
    if not numbers:
        return f"No sheet of the paper {code} is drawn on by this learner."
    return f"Type the question behind the code, as {code}/{numbers[0]}. Drawn questions: {listed}."


def with_side(degrees: str, angle: float) -> str:
    """An angle as it is typed."""
    return f"{degrees} {'anticlockwise' if angle >= 0.0 else 'clockwise'}"


def drawn_answer(size: str, unit: str, angle: str) -> str:
    """What a drawing shows, as an answer is typed."""
    return f"{size} {unit} at {angle}" if angle else f"{size} {unit}"


def put_into(title: str, put: int, left: int) -> str:
    """Drawn answers and marks are in the answers of a question paper."""
    stays = f" Left as they were typed: {left}." if left else ""
    added = "1 drawn answer" if put == 1 else f"{put} drawn answers"
    return f"{title}: {added} added.{stays} Open the question paper and mark the answers."


def read_from(strokes: int) -> str:
    """What the figures of a reading are."""
    return (
        f"{strokes} straight strokes were found. Places are measured on the paper from its lower left corner, each to "
        "within what is told (95 %)."
    )


def where(label: str, left: int) -> str:
    """Which point is asked, and how many are."""
    more = f" ({left} to ask)" if left > 1 else ""
    return f"Where is {label}?{more}"


def choice(number: int, is_point: bool) -> str:
    """One of the places or readings that are numbered in the photograph."""
    return f"At {number}" if is_point else f"Reading {number}"


def told(separator: str) -> str:
    """The marks have been saved as a table."""
    return f"The table is saved. {choose_separator(separator)}"


def counted(read: int, asked: int, accepted: int) -> str:
    """How many photographs were read, are to be asked, and are accepted."""
    return f"{read} read, {asked} to ask, {accepted} accepted"


def at_the_edge(parts: Sequence[str]) -> str:
    """Why a person has to look at a drawing: parts of it are neither right nor wrong beyond doubt."""
    if not parts:
        return AT_THE_EDGE
    verb = "is" if len(parts) == 1 else "are"
    what = capital(listed(parts, "and"))
    return f"{what} {verb} at the edge of what a careful hand can do. Look at the drawing, then choose the mark."


def off_by(off: str, unit: str) -> str:
    """How far the drawn result is off."""
    return f"{off}{NO_BREAK_SPACE}{unit}{NO_BREAK_SPACE}off"


def look_again(off: str, unit: str) -> str:
    """A result that a person should look at."""
    return f"{LOOK}, {off_by(off, unit)}"


def heading(number: int, name: str, code: str) -> str:
    """The row whose photograph is shown."""
    return ", ".join(part for part in (f"Row {number}", name, code) if part)


def sheet_line(title: str, code: str) -> str:
    """Which sheet a learner's feedback is about."""
    return f"{FEEDBACK_TITLE}: {title}, sheet {code}" if code else f"{FEEDBACK_TITLE}: {title}"


def mark_line(marks: str) -> str:
    """The mark of a drawing; "" while it is open."""
    return f"Mark: {marks}" if marks else "Mark: not decided yet"


def making(number: int, count: int) -> str:
    """How many sheets of feedback are made."""
    return f"Making sheet {number} of {count} …"


def made(count: int) -> str:
    """The sheets of feedback have been saved."""
    return "1 feedback sheet is saved." if count == 1 else f"{count} feedback sheets are saved."


def picture_in_words(line: str) -> str:
    """A learner's photograph for people who cannot see it."""
    return f"Photograph of the drawing; the first line to look at is {line}." if line else "Photograph of the drawing."


def set_line(title: str, code: str) -> str:
    """The class set that most sheets belong to."""
    return f"{title}, class set {code}"


def marked_by_default(first: int, length: int, angle: int) -> str:
    """The marks that count where this device keeps no class set."""
    return (
        f"This device does not keep the class set, so there are no names. Marks are the usual ones: {first} for the "
        f"first step, {length} for the length, {angle} for the angle."
    )


def marked_by(first: int, length: int, angle: int) -> str:
    """The marks of the class set."""
    return f"Marks of the set: {first} for the first step, {length} for the length, {angle} for the angle."


def same_file(row: int) -> str:
    """One file chosen twice."""
    return f"This is the same photograph as in row {row}. Take one away."


def same_sheet(row: int) -> str:
    """Two photographs of one drawing."""
    return f"This is a second photograph of the sheet in row {row}. Take one away."


def other_drawing(row: int) -> str:
    """One code, two drawings."""
    return f"Row {row} has the same code, and another drawing. One learner has used another’s sheet."


def code_twice(row: int) -> str:
    """One code twice, before both drawings are known."""
    return f"Row {row} has the same code. Take one away, or press the points of both to compare the drawings."


def pages_not_read(pages: int) -> str:
    """Pages of a PDF are missing among the rows."""
    missing = "1 page of this PDF was not read. It" if pages == 1 else f"{pages} pages of this PDF were not read. They"
    return f"{missing} may be damaged, or in black and white. Scan in colour or grey, or save the pages as JPEG."


def other_set(code: str, group: str) -> str:
    """A sheet of another class set."""
    return f"This sheet belongs to another class set, {code}. The others are of {group}."


def beyond_set(learners: int) -> str:
    """A code of the set that none of its learners has."""
    return f"None of the {learners} learners of this set has this code."
