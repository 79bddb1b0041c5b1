"""The words of the classroom view's own furniture, of its share panel, and of the handout."""

LESSON = "Lesson"
TITLE = "Classroom view"
BACK, NEXT, CLOSE = "Back", "Next", "Close"
SHOW_READING = "Show the reading"
ASK_FIRST = "Ask first"
HIDE_ANSWER = "Hide the answer"
MORE = "More"
LARGE = "Large print"
GO_TO, GO = "Go to step", "Go"
STEP = "Step"
VIEW = "What is shown"
VIEWS = {
    "lesson": "Move by move",
    "together": "All methods together",
    "pull": "Ropes on a ring",
    "waves": "Waves",
}
SHARE = "Link and large code"
WAITING = "Getting ready for your values."
HIDDEN = "The answer is hidden."
TYPED = "Step {digits}? Press Enter."
KEYS_TITLE = "Keys"
KEYS = (
    ("→, space, Page Down", "next"),
    ("←, Shift+space, Page Up", "back"),
    ("Home, End", "first, last"),
    ("12 Enter", "step 12"),
    ("q", "ask first: each reading is hidden until Enter or Next shows it"),
    ("b", "hide the answer"),
    ("Esc", "close"),
)
KEYS_LINE = "→ next   ← back   q ask first   b hide the answer   Esc close"

CODE = "Large code"
SHARE_TITLE = "Open this on another device"
SHARE_LEAD = "Point a phone’s camera at the code, or pass on the link. Values stand in the link; no server sees them."
COPY, SEND = "Copy the link", "Send the link"
LINK = "Link"
NO_CODE_HERE = "There is no code: this address opens on this device only. Open the site’s own address to get one."
NO_CODE_PART = "There is no code: its part did not arrive. The link works without it."
NO_CODE_LONG = "There is no code: this link is too long for one that a camera would read."

HANDOUT = "Handout to pass on"
HANDOUT_READY = "The handout is saved: one file, to be opened without a network."
HANDOUT_LEAD = "Step through the drawing with the buttons or the arrow keys. The sheet to print stands below."
HANDOUT_SHEET = "The sheet"
HANDOUT_PRINT = "Print the sheet"
HANDOUT_STEPS = "The drawing, step by step"
HANDOUT_ALL = "All steps"
HANDOUT_ONE = "One step at a time"
