"""The words of the print set-up: on its sheet, on its page, and about readings that it cannot use."""

from collections.abc import Sequence

from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say

TITLE = "Print set-up"
DESCRIPTION = (
    "Measure two bars once, and every sheet prints at exact size on your printer. Hold a card against the screen "
    "once, and every sheet can be shown at true size."
)
LEAD = "Do this once for each printer. You need one sheet of paper and a ruler."

STEP_PRINT = "1. Print the set-up sheet"
STEP_READ = "2. Measure both bars"
STEP_AGAIN = "3. Print and measure again"
AGAIN = (
    "After you save a correction, the sheet above is the corrected sheet. Print it and measure its bars. They should "
    "now be exact. If not, save the improved correction."
)
DIALOG = "If the lengths are very different: switch the scaling off"
DIALOG_ID = "scaling"
DIALOG_LEAD = (
    "The print dialog must not fit the sheet to the page. Look for these settings. Their names can be slightly "
    "different in your version."
)
DIALOGS = (
    ("Chrome, Edge and similar browsers", "More settings, Scale: Default or 100. Not “Fit to page”, not “Fit to "
     "printable area”."),
    ("Firefox", "Scale: 100. Not “Fit to page width”."),
    ("Safari on a computer", "Show details, Scale: 100 %."),
    ("A PDF in any viewer", "Page sizing: Actual size, or None. Not “Fit”, not “Shrink oversized pages”."),
    ("Phones and tablets", (
        "Many phones fit each page to the paper and have no setting for this. Save the PDF and print it from a "
        "computer, or choose “Actual size” or “Scale 100 %” in the app of the printer."
    )),
    ("Everywhere", "Paper size as on the sheet, one page on each sheet, no booklet, no borderless printing."),
)  # fmt: skip
"""Settings by program, from memory."""

SCREEN = "This screen"
SCREEN_ID = "screen"
SCREEN_LEAD = (
    "Hold a bank card flat against the screen, on the outline. Change the outline until it has exactly the size of "
    "the card. Then any sheet can be shown at true size, and you can lay your paper on it."
)
SCREEN_CARD = "Bank card, 85.60 mm × 53.98 mm (ISO/IEC 7810, ID-1)"
SCREEN_SIZE = "Size of the outline"
SMALLER, LARGER = "Smaller", "Larger"
KEEP_SCREEN = "Save this size"
FORGET_SCREEN = "Delete the size of this screen"
SCREEN_KEPT = "Saved on this device. Every sheet now has a button “True size”."
SCREEN_KEPT_BEFORE = "A size is saved for this screen."
SCREEN_NOT_KEPT = "No size is saved for this screen."
SCREEN_NOTE = (
    "The glass is thick, so look at it straight on. A touch screen may react to the card: keep it away from the "
    "buttons. Each screen needs its own size: set it again after you move the window to another screen."
)
SCREEN_FOR_CLASS = "On a projector or wall screen, hold the card against the projected picture."

SHEET_CHOICES = "The set-up sheet"
PAPER, ORIENTATION, EDGE, PRINTED = "Paper", "Orientation", "Edge that goes in first", "Printed"
UPRIGHT_BAR, LEVEL_BAR = "Vertical bar", "Horizontal bar"
READ_HELP = (
    "Enter millimetres, to a quarter of a millimetre if you can, such as 249.25; or centimetres with the unit, such "
    "as 24.9 cm."
)
EDGE_HELP = "Most printers take the short edge first. Large copiers often take A4 by its long edge."
PORTRAIT, LANDSCAPE = "portrait", "landscape"
SHORT_EDGE, LONG_EDGE = "the short edge", "the long edge"
PLAIN_SHEET, CORRECTED_SHEET = "without correction", "with the saved correction"

KEEP = "Save this correction"
FORGET = "Delete this correction"
NOTHING_KEPT = "No correction is saved on this device."
CHANGE = "Change"
TRUE_SIZE = "True size"
TRUE_SIZE_END = "End true size"
TRUE_SIZE_LEAD = "Lay your paper on the screen. Move the sheet with a finger, the mouse wheel or the arrow keys."
TRUE_SIZE_CHANGED = "The zoom or the screen has changed since the size was set: check it with a card."
CORRECTED = "Print and PDF are corrected for your printer: {along} % along, {across} % across."

NOT_STORED = (
    "This browser does not store data for this site, so the set-up is lost when you close the page. Allow storage for "
    "this site to save it."
)
UNREADABLE_STORE = (
    "The data stored on this device could not be read and is not used. Set up the printer and the screen again."
)
KEPT_NOW = "The correction is saved. Now print the corrected sheet and measure its bars again."
STAYS, PRIVACY = "The correction and the size stay on this device.", "They are not in links or on sheets."
SCRIPTS_NEEDED = (
    "JavaScript is off. You can print the sheet below and measure its bars. To calculate and save a correction, turn "
    "JavaScript on."
)

SHEET_STEPS = (
    "Print this page at 100 %, not “fit to page”.",
    "Put a ruler along each bar. Measure from the middle of one end line to the middle of the other, to a quarter of "
    "a millimetre.",
    "Type both readings into “Print set-up”. The page calculates the correction.",
)
SHEET_HEAD = "Two bars to measure with a ruler"
FEED = "paper feed"
BLOCK_PAPER, BLOCK_PRINTED, BLOCK_PRINTER, BLOCK_DATE = "paper", "printed", "printer", "date"
WRITE_UPRIGHT, WRITE_LEVEL = "vertical bar reads", "horizontal bar reads"


def bar(length: str, along: bool) -> str:
    """What stands beside a bar of the sheet; ``length`` with its unit."""
    return f"{length}, {'along' if along else 'across'} the paper feed"


def sheet_description(upright: str, level: str) -> str:
    """The sheet for a reader who cannot see it."""
    return f"Two bars to measure with a ruler: a vertical bar of {upright} and a horizontal bar of {level}."


def bars(upright: str, level: str, paper: str) -> Phrase:
    """What the bars of the chosen sheet should read."""
    return say("On {paper}, an exact print has a vertical bar of **{upright}** and a horizontal bar of **{level}**.",
               paper=paper, upright=upright, level=level)  # fmt: skip


def paper_name(paper: str, orientation: str) -> str:
    """A paper with its orientation: A4 portrait."""
    return f"{paper} {orientation}"


def accepted(name: str, example: str) -> str:
    """What a reading may look like."""
    return f"Enter the ruler reading of the {name.lower()}, such as {example}, or {example} mm."


def is_zero(label: str, typed: str, example: str) -> str:
    """A reading of zero."""
    return f"{label} is 0: {quoted(typed)}. A printed bar cannot be 0 mm long. {accepted(label, example)}"


def below_zero(label: str, typed: str, example: str) -> str:
    """A negative reading."""
    return f"{label} is negative: {quoted(typed)}. A length cannot be negative. {accepted(label, example)}"


def swapped(label: str, typed: str, other: str) -> str:
    """Readings that fit each other's bar."""
    return f"{label}: {quoted(typed)} fits the {other.lower()}. The two readings may be swapped."


def in_centimetres(label: str, typed: str) -> str:
    """A reading in centimetres that lacks its unit."""
    return (
        f"{label}: {quoted(typed)} is taken as millimetres. If you mean centimetres, write {typed.strip()} cm."
    )


def scaled(label: str, typed: str, share: str, limit: str) -> str:
    """A bar that is out by more than a printer is."""
    return (
        f"{label}: {quoted(typed)} is {share} the correct length. A printer error is {limit} at most, so the print "
        "dialog is scaling the page. Nothing was saved. Switch the scaling off and print again."
    )


def still_empty(label: str) -> Phrase:
    """One bar was read, the other not yet."""
    return say("{label} is still empty: measure it too.", label=label)


SWAP_OFFER = "Swap the two readings"


def centimetre_offer(typed: str) -> str:
    """Offer to take a reading as centimetres."""
    return f"Read it as {typed} cm"


def correction(along: str, across: str) -> Phrase:
    """The correction that follows from the readings."""
    return say("Correction: **{along}** along the paper feed, **{across}** across it.", along=along, across=across)


def kept(along: str, across: str) -> Phrase:
    """The correction that this device stores."""
    return say("Saved on this device: **{along}** along the paper feed, **{across}** across it.",
               along=along, across=across)  # fmt: skip


def remains(along: str, across: str) -> Phrase:
    """What is still uncertain after a correction, on a line of 160 mm."""
    return say(
        "What stays uncertain: a reading is right to 0.25 mm. On a line of 160 mm that is {along} along the feed and "
        "{across} across it.",
        along=along, across=across,
    )  # fmt: skip


def is_true(again: bool) -> Phrase:
    """Both bars read true as far as a ruler can tell."""
    if again:
        return say("**Both bars are exact** as far as a ruler can show. The saved correction is right.")
    return say("**Both bars are exact** as far as a ruler can show. This printer needs no correction.")


FINER = say("A small error is left. The correction below includes the saved one.")


def stays(along: str, across: str) -> Phrase:
    """Readings that cannot be used leave the kept correction as it was."""
    return say("The saved correction is unchanged: {along} along, {across} across.", along=along, across=across)


def on_sheet(along: str, across: str) -> str:
    """The correction as the set-up sheet's title block says it."""
    return f"{along} along, {across} across"


NO_CORRECTION_TO_PRINT = (
    "No correction is saved on this device, so there is no corrected sheet yet. Print the sheet without "
    "correction."
)


def bad_correction(typed: str, low: str, high: str) -> str:
    """A correction in a request that no printer needs."""
    return (
        f"The correction for your printer cannot be used: {quoted(typed)}. It must be {low} to {high} in each of the "
        "two directions. Set up the printer again."
    )


def announce(sentences: Sequence[str]) -> str:
    """Several sentences for the live line."""
    return " ".join(sentences)
