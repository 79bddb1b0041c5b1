"""The words of the lesson view's own furniture, of its share panel, and of the handout."""

LESSON = "Lesson"
TITLE = "Lesson view"
BACK, NEXT, CLOSE = "Back", "Next", "Close"
BACK_TO_STEP = "Back to the step"
SHOW_READING = "Show the reading"
ONWARD = "Next view"
NEXT_VIEW = "The next view is {view}. Press again to open it."
VIEW_BEFORE = "Back: {view}. Press Back again."
MENU, MENU_TITLE, MENU_LEAD, MENU_LEAD_TOUCH = "menu", "Menu", "Press a letter", "Choose one"
WHY, ASK, HIDE = "why", "ask first", "hide"
DRAW, DRAW_KEY = "draw", "E"
ASK_FIRST = "Ask first"
HIDE_ANSWER = "Hide the answer"
DARK = "Blank screen"
LARGE = "Large print"
NIGHT = "Day or night"
NO_GUESS = "Clear the class’s arrow"
OTHER_ORDER = "Another order"
GO_TO, GO = "Go to step", "Go"
STEP = "Step"
SHOW, METHOD, WITH_CLASS, FURTHER = "Show", "Method", "With the class", "Further choices"
VIEWS = {
    "lesson": "One move at a time",
    "numbers": "The numbers alone",
    "together": "All methods on one drawing",
    "pull": "Ropes on a ring",
    "waves": "Waves",
}
VIEW_KEYS = {"lesson": "D", "numbers": "U", "together": "A", "pull": "R", "waves": "V"}
"""One letter for each view, in the menu and without it."""
METHOD_KEYS = {"parallelogram": "P", "tip-to-tail": "T", "components": "C"}
"""One letter for each method that most problems have; others take a free letter of their name."""
SHARE = "Link, QR code"
WAITING = "Loading. Your values will be shown soon."
HIDDEN = "The answer is hidden."
TYPED = "Go to step {digits}: press Enter."
PLAY, PAUSE = "Play", "Pause"
BACK_TEN, ON_TEN = "− 10°", "+ 10°"
GUESS = "the class’s arrow"
GUESS_HELP = "Press on the picture to place the arrow that the class expects. It stays until the end."
KEYS_TITLE = "Keys"
KEYS = (
    ("→, Page Down, space", "next; past the last step the next view"),
    ("←, Page Up, Shift+space", "back; before the first step the view before"),
    ("Home, End", "first, last"),
    ("12 Enter", "step 12"),
    ("Waves: ←, →", "10°; with Shift 1°"),
    ("Waves: space", "play, pause"),
    (". ", "blank screen"),
    ("Esc", "shut the menu; close the lesson"),
)

CODE = "Large QR code"
SHARE_TITLE = "Open this on another device"
SHARE_LEAD = (
    "Point a phone’s camera at the QR code, or send the link. The values are part of the link; no server sees them."
)
COPY, SEND = "Copy the link", "Send the link"
LINK = "Link"
NO_CODE_HERE = (
    "There is no QR code because this address works on this device only. Open the site’s public address to get one."
)
NO_CODE_PART = "There is no QR code because part of the site did not load. The link works."
NO_CODE_LONG = "There is no QR code because the link is too long for a camera to read. The link works."

HANDOUT = "Handout file"
HANDOUT_READY = "The handout is saved. It is one file and opens without an internet connection."
HANDOUT_LEAD = "Go through the drawing with the buttons or the arrow keys. The sheet for printing is below."
HANDOUT_SHEET = "The sheet"
HANDOUT_PRINT = "Print the sheet"
HANDOUT_STEPS = "The drawing, step by step"
HANDOUT_ALL = "All steps"
HANDOUT_ONE = "One step at a time"
