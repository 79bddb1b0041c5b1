"""The words of a college's settings: chosen once, followed by every page of the device."""

from pycore.words.inputs import quoted

SLUG = "college-settings"
TITLE = "College settings"
LEAD = (
    "Choose once what your college does in the same way on every page: names, colours, angles, paper, meter, marks. "
    "Where you choose nothing, a page has its default."
)
STAYS = "Pages that you open without a link then start with your choices."
DESCRIPTION = "What a college does in the same way on every page, chosen once and kept on this device."
AS_PAGE = "page default"
"""The option that leaves a choice to each page."""
RESULTANT = "Result drawn as"
COLLEGE, COLLEGE_HELP = "College", "Printed on question papers."
GROUPS = (
    ("lines", "Names and colours"), ("angles", "Angles and numbers"), ("drawing", "Drawing and paper"),
    ("meter", "Your meter"), ("marking", "Tolerance and marks of class sets"), ("parts", "Marks of question papers"),
)  # fmt: skip
USE, STOP_USING = "Use on this device", "Stop using them"
SHARE, SAVE, OPEN_FILE = "Share", "Save as a file", "Open a file"
ACTIONS = "What to do with these settings"
IN_USE = "This device uses these settings."
NOT_IN_USE = "This device does not use these settings yet."
NOT_STORED = "This browser does not store these settings, so no other page uses them. Save them as a file."
NONE = "This device uses no college settings. Each page has its defaults."
USED, STOPPED = "Pages that you open from now on start with these settings.", "Each page has its defaults again."
COPIED = "The link to these settings is copied."
LINK_LABEL = "Link to these settings"
OPENED, BAD_FILE = "The settings of the file are open. Press “Use on this device” to use them.", (
    "This file holds no college settings of this site. Nothing has changed."
)
FILE_NOTE = (
    "Settings never change what a link or a printed code shows. Colleagues open your link or file and press “Use on "
    "this device”. Each choice can still be changed on a page."
)
EXAMPLE = "A sheet with these settings"
NO_SCRIPT = "JavaScript is off. Settings are kept by your browser, which needs JavaScript."


def bad_marks(label: str, typed: str, most: int) -> str:
    """Marks that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 0 to {most}, or leave it empty."


def too_long(label: str, most: int) -> str:
    """A name that does not fit."""
    return f"{label}: the text is too long. Use at most {most} characters."
