"""The words of a page's furniture: headings, buttons, states. What an answer says stands elsewhere."""

from pycore.words.phrase import Phrase, say

NAME = "Phasor Folio"
ALL_SHEETS = "All sheets"
SKIP = "To the answer"
NIGHT = "Night"
DAY = "Day"
LICENCES = "Licences"
PRINT_SETUP = "Print set-up"

PRINT = "Print"
PHOTO = "Check a drawing by photo"
PDF = "PDF"
SHARE = "Share"
ACTIONS = "What to do with this sheet"
COPIED = "The link to this sheet is copied."
LINK_LABEL = "Link to this sheet, with these values"
PDF_READY = "The PDF is saved."

OLD_ANSWER = "Old answer"
OLD_DRAWING = "Old drawing"
OLD_WORKINGS = "Old workings"
OLD_FOR = "for the last values that worked: "
ALL_RESULTS = "Every result"
SHEET_ON_REQUEST = "The whole sheet"
OTHER_WAYS = "Other ways to put it on paper"
KINDS = {
    "construction": "Every step drawn",
    "problem": "Blank problem sheet",
    "overlay": "Overlay for marking",
}
KINDS_LABEL = "Kinds of sheet"
ALL_KINDS = "All three as one PDF"
PUT_ON_SHEET = "Put this drawing on the sheet"
ON_SHEET = "This drawing is on the sheet."
CALCULATION = "Calculation"

GROUPS = {
    "values": "Values",
    "method": "Method",
    "more": "Further values",
    "loads": "What is given",
    "picture": "How it is drawn",
    "sheet": "Paper and scale",
    "accuracy": "Hand that draws",
    "words": "Names and signs",
}
LAGS = "Lag and power factor"
METERS = "Hand and meter"
MORE_VALUES = "More values"
POWER_FACTOR = "power factor"
SENSE = "lagging or leading"
LAGGING = "lagging"
LEADING = "leading"
TO_CHOICES = "Drawing, paper, hand and signs"
TO_LAGS = "Power factor, paper, names and signs"
SHOW_FIELD = "Show the field"

FETCHING = "Getting ready for your values: {share} %"
STARTING = "Getting ready for your values: starting Python"
SLOW = "This takes longer than usual. The example is complete meanwhile."
FAILED = "Your values cannot be worked out: Python did not start. The example is complete."
STUCK = "This could not be worked out, so the last answer stays. Change a value to go on."
RETRY = "Try again"
AGAIN = "Python stopped and is started again. What you typed stays."
NEWER_EDITION = "A newer edition of this site is ready. What you typed goes along."
TAKE_EDITION = "Open the newer edition"
NO_SCRIPT = (
    "Scripts are off, so this page shows its example only: the answer, every working and the sheet. "
    "With scripts on, it works out your own values, on this device."
)

HOME_TITLE = "Alternating currents, drawn to scale"
HOME_DESCRIPTION = (
    "Phasor calculators that draw their answer to scale, explain every move of ruler and protractor, "
    "and print true to the millimetre."
)
HOME_LEAD = (
    "Put in your values. Each sheet calculates, draws, explains every move of ruler and protractor, "
    "and prints true to the millimetre."
)
HOME_WHAT = "What you get"
HOME_PAPER = "Paper and instruments"
HOME_LESSONS = "For the lesson"
CAUTIONS = (
    "These sheets teach; they do not size an installation: the local wiring rules and a licensed person decide.",
    "Readings on a live system are for competent or supervised people on a rig made for it: one conductor in the jaw "
    "of the clamp, meters and leads of the right measurement category.",
    "A clamp meter never proves a circuit dead: isolate, and prove dead with a proved tester, before changing a "
    "connection. A capacitor keeps its charge: discharge it first.",
    "Never open a neutral on a live system: voltages at single-phase loads can rise to the line voltage and beyond.",
    "Each sheet’s page has the cautions of its topic. Ask which method your examining body accepts.",
)
"""The foot of the pages that belong to no one topic."""
FOOT_PRIVACY = "Your values stay on this device, in the address of the page. Nothing is sent."


def home_points(length: str) -> tuple[tuple[str, Phrase], ...]:
    """What a visitor gets, as heading and sentence; ``length`` is one that a sheet of the board really has."""
    return (
        ("One answer, every way to it", say("By parallelogram, tip to tail, by components and by formula, side by "
         "side, beside what your meter read.")),
        ("Moves a learner can copy", say("Where the ruler goes, which way the protractor turns, what to read, and "
         "why.")),
        ("Paper you can measure", say("A line of {length} is {length} on paper. Two bars on the sheet prove it.",
         length=length)),
        ("For a whole class", say("Works on any phone, with nothing to install. A link opens the same sheet with "
         "the same values.")),
    )  # fmt: skip
