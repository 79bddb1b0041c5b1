"""The words of the camera's window, in which the sheets of a pile are taken one after another."""

from pycore.words.pile import FULL

OPEN, TITLE = "Take with the camera", "Take sheets with the camera"
TAKE, CLOSE = "Take this sheet", "Close"
BY_ITSELF = "Take by itself when the frame is green"
COUNT, UNREAD = "{taken} taken, {read} read", ", {unread} not read"
PICTURE = "Live picture of the camera"
PRIVATE = "Nothing is sent, and no sound is recorded. The camera is off once this window is closed."
APP = "Take one photograph at a time with the device’s own camera app:"
SEEN = {
    "starting": "The camera is starting …",
    "none": "No sheet is seen. Hold the camera above a whole sheet.",
    "marks": "Marks are seen, but no QR code. Go nearer, or give it more light.",
    "code": "The QR code is seen, but not every mark. Show the whole sheet.",
    "asked": "The QR code is seen. Looking up its sheet …",
    "several": "More than one sheet is seen. Show each alone.",
    "ready": "The whole sheet is seen. Hold still.",
    "taking": "Taking …",
    "taken": "Taken. Show the next sheet.",
    "known": "This sheet is in the pile already.",
    "blind": "The picture cannot be watched at the moment. Take each sheet with the button.",
    "untaken": "The picture could not be taken. Try again.",
    "full": FULL,
}
"""What is said of the live picture, by what is seen in it."""
WITHOUT = {
    "refused": (
        "This page may not use the camera. Allow it in the browser’s settings for this site, then open this window "
        "again. Or use the camera app below."
    ),
    "missing": "No camera was found. Photographs from the camera app or from files are read too.",
    "busy": (
        "The camera could not be started. Another program may be using it. Close that, or use the camera app below."
    ),
    "lacking": "This browser gives this page no live picture. Use the camera app below.",
    "ended": "The camera has stopped. Open this window again, or use the camera app below.",
}
"""What is said where there is no live picture."""
