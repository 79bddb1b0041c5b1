"""The words of the page that lists what this device keeps. Numbers and names come in the places in braces."""

from pycore.words import practice

SLUG = "this-device"
TITLE = "What this device keeps"
LEAD = "This site has no accounts and sends nothing."
KEEPS = (
    "What it keeps stays in this browser, on this device. All of it is listed here. You can save each thing as a file, "
    "or erase it."
)
DESCRIPTION = "All that this site keeps in your browser, each thing with a way to save it and to erase it."
NO_SCRIPT = "JavaScript is off, so this site keeps nothing on this device."
REFUSED = "This browser keeps nothing for this site, so there is nothing to list, save or erase."

LEARNERS, LEARNERS_ID = "Learners on this device", "learners"
LEARNERS_HELP = (
    "Each learner has a practice record of their own here. A name or a number is enough, and it is never sent. It is "
    "no password: whoever uses this device can open each record."
)
IN_USE, IN_USE_FIRST = "In use now: {who}", "In use now: the learner without a name"
FIRST, NO_RECORD = "Learner without a name", "No problem yet."
NEW, NEW_NAME = "New learner", "Name or number of your own"
NEW_HELP = "A new learner starts with an empty record. The records of the others stay."
STARTED, TAKEN_UP = "{who} starts with an empty record.", "The record of {who} is in use now."
NO_NAME = "Type a name or a number first."
USE = "Use"
PRACTISE = "Go to practice"

LISTED, LISTED_ID = "Kept here", "kept"
NOTHING = "Nothing is kept here yet."
SAVE, ERASE = "Save as a file", "Erase"
UNDO = "Undo"
ERASED = "{what}: erased."
BROUGHT_BACK = "{what}: back."
OF = "{what} of {who}"
ERASE_LEARNER, ERASE_FIRST = "Erase all of {who}", "Erase all of the learner without a name"
ALL_OF, ALL_OF_FIRST = "All of {who}", "All of the learner without a name"
"""What is kept of the learner in use, as one thing."""
CHANGED = "Last change: {date}."
UNTIL = "Erased on {date}, if nothing changes."
FOR_EVER = "Kept until you erase it."
THINGS = {
    "practice": ("Practice record", practice.SOLVED_OF),
    "drawings": ("Drawings made here", "Drawings: {count}."),
    "roll": ("Names of a class", "Lines: {count}."),
    "results": ("Answers of a class", "Lines: {count}."),
    "set": ("The last class set", "Its choices, without names."),
    "papers": ("Question papers", "Papers kept: {count}, and the one being put together. With names."),
    "papers-unnamed": ("Question papers", "Papers kept: {count}, and the one being put together. Without names."),
    "papers-made": ("Question papers", "Papers kept: {count}. With names."),
    "papers-made-unnamed": ("Question papers", "Papers kept: {count}. Without names."),
    "answers": ("Answers to question papers", "Lines: {count}. With names."),
    "register": ("Register", "Papers: {count}. Names and marks."),
    "pile": ("A pile of photographs", "Rows: {count}. Codes and marks, without the photographs."),
    "printer": ("Correction of your printer", "From the print set-up."),
    "screen": ("Size of your screen", "From the print set-up."),
    "college": ("College settings", "What pages start with."),
    "lesson": ("Large print in the lesson", "It is on."),
    "theme": ("Night or day", "Your choice for all pages."),
    "store": ("Whether this site is stored", "Your answer to the question at the foot."),
}
"""What is kept, by kind: its title, and what is said of it."""
UNREADABLE = "It cannot be read. Save it if you want to look at it, then erase it."

NOT_KEPT = "Not kept"
NOT_KEPT_LINES = (
    "The values of a sheet are in the address of its page. The browser keeps a list of the pages you open. Erase that "
    "list in the browser.",
    "Answers to a problem last until you leave the page. While a new version opens, this window holds them.",
    "Photographs, and drawings that are checked, last until you close them.",
)

SITE, SITE_ID = "The site itself", "site"
SITE_KEPT = "The whole site is on this device ({size} MB). It works without a network."
SITE_PART = "A part of the site is on this device ({size} MB). The rest is still to come."
SITE_NOT = "The site is not stored on this device."
MEMORY = "For a quick start, the calculator is kept as it stands before any value is typed ({size} MB)."
STAYS = "The browser keeps all of it until you erase it."
MAY_GO = "When space is short, the browser may erase all of it."
ASK_TO_STAY = "Ask the browser to keep it"
REMOVE_SITE = "Remove the site from this device"
SITE_REMOVED = "The site is removed from this device. The next page you open may store it again, if you let it."

TERMS, TERMS_ID = "How long it is kept", "terms"
TERMS_HELP = "The time counts from the last change. Whoever opens a page of this site after that finds it erased."
TERM_FIELDS = {
    "class": "Names and answers of a class", "papers": "Question papers", "register": "Register",
    "pile": "A pile of photographs", "practice": "Practice records", "drawings": "Drawings made here",
}  # fmt: skip
TERM_CHOICES = (
    (1, "1 day"), (7, "7 days"), (30, "30 days"), (90, "90 days"), (365, "1 year"), (0, "until you erase it"),
)  # fmt: skip
TERM_SET = "{what}: kept for {term}, then erased."
TERM_NONE = "{what}: kept until you erase it."

ALL, ALL_ID = "Everything at once", "all"
SAVE_ALL, LOAD, ERASE_ALL = "Save everything as a file", "Load from a file", "Erase everything"
ALL_HELP = (
    "The file holds all that is listed above, of every learner, but not the site itself. Erasing takes the site away "
    "too."
)
ALL_FILE = "phasor-folio-kept.json"
ALL_ERASED = "Everything is erased."
ALL_BACK = "Everything is back, apart from the site itself."
LOADED = "Loaded from the file: {count}."
NOT_OURS = "This file was not saved by this page. Nothing has changed."
TOO_LARGE = "This file is too large to be one of ours. Nothing has changed."
PRACTICE_FILE = "This is a practice record. Load it on the practice page. Nothing has changed."
NOT_ROOM = "The browser did not keep all of it. Kept: {count}."

SIGN = "Works offline"
SIGN_HELP = "This site is stored on this device"
OF_LEARNER = "Record of {who}."
NOT_YOU = "Another learner?"
"""On the practice page: whose record it is, and the way to another's."""
