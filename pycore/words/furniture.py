"""The words of a page's furniture: headings, buttons, states. What an answer says stands elsewhere."""

from pycore.words import cautions, checking

NAME = "Phasor Folio"
LANGUAGE = "en-GB"
"""The language of every sentence, as HTML names it."""
SHEETS, CLASS_SETS = "Sheets", "Class sets"
MENU, MENU_LABEL = "Menu", "Pages of this site"
SKIP = "Skip to the answer"
SKIP_HEAD = "Skip to the page"
SKIP_TO_ACTIONS = "Skip to the buttons"
NIGHT = "Night"
DAY = "Day"
LICENCES = "Licences"
PRINT_SETUP = "Print set-up"

PRINT = "Print"
PHOTO = "Check a drawing by photo"
PDF = "PDF"
SHARE = "Share"
ACTIONS = "Use this sheet"
COPIED = "The link to this sheet is copied."
LINK_LABEL = "Link to this sheet, with these values"
PDF_READY = "The PDF is saved."

OLD_ANSWER = "Old answer"
OLD_DRAWING = "Old drawing"
OLD_WORKINGS = "Old workings"
OLD_FOR = "for the last usable values: "
TABS = {"moves": "Moves", "results": "Every result", "check": checking.TITLE, "meter": "Meter"}
RESULTS_BRIEFLY = "Results"
"""Where there is no room for every result."""
TABS_LABEL = "Beside the sheet"
MORE = "More"
SETTINGS = "Settings"
SETTINGS_BACK = "Put all settings back"
SETTINGS_UNDO = "Undo: take my settings again"
SETTINGS_ARE_BACK = "All settings are back to those of this page. Your values have not changed."
SETTINGS_WERE = "All settings are those of this page already."
HOW_TO = "How to write the values"
WORKING = "Working on your values"
SHEET_ON_REQUEST = "Whole sheet"
OTHER_ORDER = "Another order"
KINDS = {"construction": "Drawn", "problem": "Blank", "overlay": "Overlay"}
KINDS_LABEL = "Which sheet is shown and printed"
ALL_KINDS = "All sheets in one PDF"
CALCULATION = "Calculation"

GROUPS = {
    "values": "Values",
    "method": "Method",
    "more": "Further values",
    "loads": "Given values",
    "picture": "Drawing",
    "sheet": "Paper and scale",
    "accuracy": "Accuracy of the hand",
    "words": "Line names and number style",
}
LAGS = "Lag and power factor"
METERS = "Accuracy of hand and meter"
CLEAR_EXAMPLE = "Clear the example"
EXAMPLE_LEFT = "The other values are still those of the example."
EXAMPLE_CLEARED = "The example is cleared. What you typed is kept. Enter your other values."
POWER_FACTOR = "power factor"
SENSE = "lagging or leading"
SHOW_FIELD = "Show the field"

FETCHING = "Getting ready: {share} %. You can type already."
STARTING = "Getting ready. You can type already."
SLOW = "This is taking longer than usual. The example on this page is complete."
FAILED = "Your values cannot be calculated because the calculator did not start. The example on this page is complete."
STUCK = "The page could not calculate this. The last answer stays. Change a value to continue."
RETRY = "Try again"
AGAIN = "The calculator stopped and is starting again. Your values are kept."
NEWER_EDITION = "A new version of this site is ready. Your values are kept."
TAKE_EDITION = "Open the new version"
NO_SCRIPT = (
    "JavaScript is off, so this page shows only its example: the answer, the working and the sheet. With JavaScript "
    "on, it calculates your own values on this device."
)

CAUTIONS = (
    cautions.LICENSED_PERSON,
    "Only competent or supervised people may take readings on a live system, and only on a rig made for it: one "
    "conductor in the jaw of the clamp, meters and leads of the right measurement category.",
    cautions.PROVE_DEAD,
    cautions.CHARGED,
    "Never open a neutral on a live system: the voltage across single-phase loads can rise to the line voltage, and "
    "with mixed reactances above it.",
    f"Each sheet’s page has the cautions of its topic. {cautions.EXAMINING_BODY}",
)
"""The foot of the pages that belong to no one topic."""
FOOT_PRIVACY = "Your values stay on this device, in the page address. Nothing is sent."
FOOT_LEARN, FOOT_TEACH, FOOT_FACTS = "Learn", "Teach", "Paper and facts"
FOOT_LABEL = "All pages"


def also_set(group: str) -> str:
    """What is said beside the values when a link has set others that stand elsewhere."""
    return f"Also set: {group[:1].lower()}{group[1:]}."
