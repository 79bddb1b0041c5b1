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
    "lesson": "One move at a time",
    "together": "All methods on one drawing",
    "pull": "Ropes on a ring",
    "waves": "Waves",
}
SHARE = "Link and large QR code"
WAITING = "Loading. Your values will be shown soon."
HIDDEN = "The answer is hidden."
TYPED = "Step {digits}? Press Enter."
KEYS_TITLE = "Keys"
KEYS = (
    ("→, space, Page Down", "next"),
    ("←, Shift+space, Page Up", "back"),
    ("Home, End", "first, last"),
    ("12 Enter", "step 12"),
    ("q", "ask first: each reading stays hidden until you press Enter or Next"),
    ("b", "hide the answer"),
    ("Esc", "close"),
)
KEYS_LINE = "→ next   ← back   q ask first   b hide the answer   Esc close"

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
