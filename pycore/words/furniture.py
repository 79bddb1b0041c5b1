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
DRAW = "Draw it here"
IN_PRACTICE = "Check it in Practice"
PDF = "PDF"
SHARE = "Share"
ACTIONS = "Use this sheet"
COPIED = "The link to this sheet is copied."
LINK_LABEL = "Link to this sheet, with these values"
UNPRINTABLE = (
    "This sheet was not printed: it does not show what is typed now. Print again when it does."
)
PDF_READY = "The PDF is saved."

OLD_ANSWER = "Old answer"
OLD_DRAWING = "Old drawing"
OLD_WORKINGS = "Old workings"
OLD_FOR = "for the last usable values: "
TABS = {"moves": "Moves", "results": "Every result", "check": checking.TITLE, "compare": "Compare"}
RESULTS_BRIEFLY = "Results"
"""Where there is no room for every result."""
TABS_LABEL = "Beside the sheet"
MORE = "More"
SETTINGS = "Settings"
SETTINGS_BACK = "Put all settings back"
SETTINGS_UNDO = "Undo: bring my settings back"
SETTINGS_ARE_BACK = "All settings are back to those of this page. Your values have not changed."
SETTINGS_WERE = "All settings are those of this page already."
ON_SHEET, BY_HAND = "On the sheet now", "accuracy by hand"
ON_SHEET_NOTE = "Every change is drawn at once. Nothing is lost when you close the settings."
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
    "scale": "Scale",
    "sheet": "Printed sheet",
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

PROGRESS = "Loading"
LOADING = "Loading the calculator."
LOADING_EXAMPLE = "The example on this page is complete: read it meanwhile, or type your values already."
LOADING_TYPE = "You can type already."
LOADING_VALUES = "Your values are in the fields. Loading the calculator for the answer."
LOADING_REST = "Loading the rest of the calculator for your values."
LOADING_OWN = "Loading your problem."
LOADING_LINK = "Loading what your link asks for."
LOADING_CODE = "Loading problem {code}."
LOADING_ANY_CODE = "Loading the problem of your code."
LOADING_CODE_FIELDS = "Its values then appear in the fields."
LOADING_PROBLEM_FIELDS = "Its values are in the fields: you can begin to draw."
LOADED = "{done} of {whole} MB are here."
MINUTES_LEFT = "About {minutes} minutes left."
MINUTE_LEFT = "About 1 minute left."
SOON = "Less than 1 minute left."
STARTING = "Getting ready. You can type already."
FAILED = "The calculator did not start: reload. The example is complete."
FAILED_OWN = "The calculator did not start. Check the connection or reload."
STUCK = "The page could not calculate this. The last answer stays. Change a value to continue."
RETRY = "Try again"
AGAIN = "The calculator stopped and is starting again. Your values are kept."
NEWER_EDITION = "A new version of this site is ready. Your values are kept."
TAKE_EDITION = "Open the new version"
EDITION_LOSES = (
    "This browser did not store all that you typed. It is lost when the new version opens. Save it first, then press "
    "again."
)
UNKEPT = "This browser stores nothing for this site. What you do here is lost when you close the page."
"""What stands in the place of every sentence that promises to keep something, where the browser keeps nothing."""
FULL = (
    "This browser has no room for more. What it kept before is still here. What you do now is lost when you close the "
    "page."
)
"""What stands there where the browser has kept something, and keeps no more."""
NOT_KEPT = {
    "drawings": "This browser did not store your drawing. It is lost when you close the page. Save it as a file.",
    "practice": "This browser did not store your practice record. It is lost when you close the page.",
    "class": "This browser did not store the names and answers of the class. They are lost when you close the page.",
    "papers": "This browser did not store your question papers. They are lost when you close the page.",
    "register": "This browser did not store the register. It is lost when you close the page.",
    "pile": "This browser did not store the rows of the pile. They are lost when you close the page.",
    "college": "This browser did not store your college settings. They are lost when you close the page.",
    "device": "This browser did not store the set-up of printer and screen. It is lost when you close the page.",
    "records": "This browser stores nothing, so it cannot keep the records of several learners apart.",
    "choice": "This browser did not store your choice. It is lost when you close the page.",
}
"""What is said where the browser keeps nothing, by what it should have kept."""
SAVE_FILE, CLOSE = "Save as a file", "Close"
STORE_ASK = (
    "Store this whole site on your device, so that it works without a network? That loads up to {whole} MB over this "
    "connection."
)
STORE_YES, STORE_NO = "Store it", "Do not store it"
STORED = "This site is stored on this device and works without a network."
NOT_STORED = "This site is not stored on this device."
PARTLY_STORED = "Part of this site is missing on this device. It is fetched when there is a network."
CANNOT_STORE = "This browser stores no sites, so this one works only with a network."
STORE, REMOVE = "Store this site ({whole} MB at most)", "Remove it"
NO_SCRIPT = (
    "JavaScript is off, so this page shows only its example: the answer, the working and the sheet. With JavaScript "
    "on, it calculates your own values on this device."
)

CAUTIONS = (
    cautions.LICENSED_PERSON,
    "Readings on a live system are for competent or supervised people on a rig made for it. One conductor in the jaw "
    "of the clamp; meters and leads of the right measurement category.",
    cautions.PROVE_DEAD,
    cautions.CHARGED,
    "Never open a neutral on a live system. The voltage across single-phase loads can rise to the line voltage, and "
    "with mixed reactances above it.",
    f"Each sheet’s page has the cautions of its topic. {cautions.EXAMINING_BODY}",
)
"""The foot of the pages that belong to no one topic."""
FOOT_PRIVACY = "Your values stay on this device, in the page address. Nothing is sent."
FOOT_LEARN, FOOT_TEACH, FOOT_FACTS = "Learn", "Teach", "Paper and facts"
FOOT_LABEL = "All pages"


TO_PAPER = "Paper size"
"""Beside the scale, the way to the paper that it is for."""
ALSO_SET = "Also set: {list}."
"""What is said beside the values of others that are set and stand elsewhere."""
