"""What the print set-up says: on its sheet, on its page, and about readings that it cannot use."""

from collections.abc import Sequence

from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say

TITLE = "Print set-up"
DESCRIPTION = (
    "Measure two bars once, and every sheet prints true on your printer; lay a card on the screen, and every sheet is "
    "shown at true size."
)
LEAD = "Do this once for each printer. It takes one sheet of paper and a ruler."

STEP_PRINT = "1. Print the set-up sheet"
STEP_READ = "2. Read both bars"
STEP_AGAIN = "3. Print again, and read again"
AGAIN = (
    "Once a correction is kept, the sheet above is the corrected one: print it and read its bars. They should now be "
    "true. If they are not, keep the finer correction."
)
DIALOG = "If the lengths are far out: switch the scaling off"
DIALOG_ID = "scaling"
DIALOG_LEAD = (
    "The print dialog must not fit the sheet to the page. Look for these settings; their words differ a little from "
    "version to version."
)
DIALOGS = (
    ("Chrome, Edge and their relatives", "More settings, Scale: Default or 100. Not “Fit to page”, not “Fit to "
     "printable area”."),
    ("Firefox", "Scale: 100. Not “Fit to page width”."),
    ("Safari on a computer", "Show details, Scale: 100 %."),
    ("A PDF in any viewer", "Page sizing: Actual size, or None. Not “Fit”, not “Shrink oversized pages”."),
    ("Phones and tablets", "Many fit each page to the paper and have no setting for it. Save the PDF and print it "
     "from a computer, or choose “Actual size” or “Scale 100 %” in the printer’s own app."),
    ("Everywhere", "Paper size as on the sheet, one page on each sheet, no booklet, no borderless printing."),
)  # fmt: skip
"""Settings by program, from memory."""

SCREEN = "This screen"
SCREEN_ID = "screen"
SCREEN_LEAD = (
    "Lay a bank card flat on the glass, on the outline. Change the outline until it is exactly as large as the card. "
    "Then any sheet can be shown at true size, to lay your paper on."
)
SCREEN_CARD = "Bank card, 85.60 mm × 53.98 mm (ISO/IEC 7810, ID-1)"
SCREEN_SIZE = "Size of the outline"
SMALLER, LARGER = "Smaller", "Larger"
KEEP_SCREEN = "Keep this size"
FORGET_SCREEN = "Forget this screen"
SCREEN_KEPT = "Kept on this device. Every sheet now has a button “True size”."
SCREEN_KEPT_BEFORE = "A size is kept for this screen."
SCREEN_NOT_KEPT = "No size is kept for this screen."
SCREEN_NOTE = (
    "The glass is thicker than paper: look straight down. A touch screen may take the card for a finger; keep it away "
    "from the buttons. Each screen needs its own size: set it again after moving to another."
)
SCREEN_FOR_CLASS = "On a projector or a wall screen hold the card against the picture."

SHEET_CHOICES = "The set-up sheet"
PAPER, ORIENTATION, EDGE, PRINTED = "Paper", "Way round", "First into the printer", "Printed"
UPRIGHT_BAR, LEVEL_BAR = "Upright bar", "Level bar"
READ_HELP = "Type millimetres, to a quarter if you can, such as 249.25; or centimetres with the unit, such as 24.9 cm."
EDGE_HELP = "Most printers take the short edge first. Large copiers often take A4 by its long edge."
PORTRAIT, LANDSCAPE = "portrait", "landscape"
SHORT_EDGE, LONG_EDGE = "the short edge", "the long edge"
PLAIN_SHEET, CORRECTED_SHEET = "without correction", "with the correction kept"

KEEP = "Keep this correction"
FORGET = "Forget this printer"
NOTHING_KEPT = "No correction is kept on this device."
CHANGE = "Change"
TRUE_SIZE = "True size"
TRUE_SIZE_END = "End true size"
TRUE_SIZE_LEAD = "Lay your paper on the screen. Push the sheet with a finger, the wheel or the arrow keys."
TRUE_SIZE_CHANGED = "The zoom or the screen has changed since it was set up: check it with a card."
CORRECTED = "Print and PDF are corrected for your printer: {along} % along, {across} % across."

NOT_STORED = (
    "This browser keeps nothing for this site, so the set-up holds only until this page is closed. Allow storage for "
    "this site to keep it."
)
UNREADABLE_STORE = "What was kept on this device could not be read, so it is left out. Set it up again."
KEPT_NOW = "The correction is kept. Now print the corrected sheet and read its bars again."
PRIVACY = "The correction and the size stay on this device. They are in no link and on no sheet."
SCRIPTS_NEEDED = (
    "Scripts are off. The sheet below can be printed and its bars measured; working out a correction and keeping it "
    "needs scripts."
)

SHEET_STEPS = (
    "Print this page at 100 %, not fitted to the page.",
    "Lay a ruler along each bar. Read from the middle of one end stroke to the middle of the other, to a quarter of a "
    "millimetre.",
    "Type both readings into “Print set-up”. The page works out the correction.",
)
SHEET_HEAD = "Two bars to read with a ruler"
FEED = "paper feed"
BLOCK_PAPER, BLOCK_PRINTED, BLOCK_PRINTER, BLOCK_DATE = "paper", "printed", "printer", "date"
WRITE_UPRIGHT, WRITE_LEVEL = "upright bar reads", "level bar reads"


def bar(length: str, along: bool) -> str:
    """What stands beside a bar of the sheet; ``length`` with its unit."""
    return f"{length}, {'along' if along else 'across'} the paper feed"


def sheet_description(upright: str, level: str) -> str:
    """The sheet for a reader who cannot see it."""
    return f"Two bars to measure with a ruler: an upright one of {upright} and a level one of {level}."


def bars(upright: str, level: str, paper: str) -> Phrase:
    """What the bars of the chosen sheet should read."""
    return say("On {paper} a true print has an upright bar of **{upright}** and a level bar of **{level}**.",
               paper=paper, upright=upright, level=level)  # fmt: skip


def paper_name(paper: str, orientation: str) -> str:
    """A paper and its way round: A4 portrait."""
    return f"{paper} {orientation}"


def accepted(name: str, example: str) -> str:
    """What a reading may look like."""
    return f"Write what the ruler reads on the {name.lower()}, such as {example}, or {example} mm."


def is_zero(label: str, given: str, example: str) -> str:
    """A reading of nothing."""
    return f"{label} is 0: {quoted(given)}. A printed bar has a length. {accepted(label, example)}"


def below_zero(label: str, given: str, example: str) -> str:
    """A reading below zero."""
    return f"{label} is below zero: {quoted(given)}. A length is more than 0. {accepted(label, example)}"


def swapped(label: str, given: str, other: str) -> str:
    """Readings that fit each other's bar."""
    return f"{label} reads {quoted(given)}, which fits the {other.lower()}. The two readings seem to be swapped."


def in_centimetres(label: str, given: str) -> str:
    """A reading in centimetres that lacks its unit."""
    return (
        f"{label} reads {quoted(given)}, which would be millimetres. If it is in centimetres, say so: "
        f"{given.strip()} cm."
    )


def scaled(label: str, given: str, share: str, limit: str) -> str:
    """A bar that is out by more than a printer is."""
    return (
        f"{label} reads {quoted(given)}, {share} what it should. A printer alone is out by {limit} at most, so the "
        "print dialog is scaling. Nothing is kept: switch the scaling off and print again."
    )


def still_empty(label: str) -> Phrase:
    """One bar was read, the other not yet."""
    return say("{label} is still empty: read it too.", label=label)


def swap_offer() -> str:
    """Offer to put each reading to the other bar."""
    return "Swap the two readings"


def centimetre_offer(given: str) -> str:
    """Offer to take a reading as centimetres."""
    return f"Read it as {given} cm"


def correction(along: str, across: str) -> Phrase:
    """The correction that follows from the readings."""
    return say("Correction: **{along}** along the paper feed, **{across}** across it.", along=along, across=across)


def kept(along: str, across: str) -> Phrase:
    """The correction that this device keeps."""
    return say("Kept on this device: **{along}** along the paper feed, **{across}** across it.",
               along=along, across=across)  # fmt: skip


def remains(along: str, across: str) -> Phrase:
    """What is still uncertain after a correction, on a line of 160 mm."""
    return say(
        "What remains: a reading is good to 0.25 mm, which on a line of 160 mm is {along} along the feed and {across} "
        "across it.",
        along=along, across=across,
    )  # fmt: skip


def is_true(again: bool) -> Phrase:
    """Both bars read true as far as a ruler can tell."""
    if again:
        return say("**Both bars are true** as far as a ruler can read. The correction kept is right.")
    return say("**Both bars are true** as far as a ruler can read. This printer needs no correction.")


def finer() -> Phrase:
    """The corrected sheet was read, and a little is left."""
    return say("A little is left. The correction below contains the one that is kept.")


def stays(along: str, across: str) -> Phrase:
    """Readings that cannot be used leave the kept correction as it was."""
    return say("The correction kept stays: {along} along, {across} across.", along=along, across=across)


def on_sheet(along: str, across: str) -> str:
    """The correction as the set-up sheet's title block says it."""
    return f"{along} along, {across} across"


def no_correction_to_print() -> str:
    """A corrected sheet is asked for and nothing is kept."""
    return "No correction is kept on this device, so there is no corrected sheet yet. Print the one without correction."


def bad_correction(given: str, low: str, high: str) -> str:
    """A correction in a request that no printer needs."""
    return (
        f"The correction for your printer cannot be used: {quoted(given)}. Accepted is {low} to {high} for each of two "
        "directions. Set the printer up again."
    )


def announce(sentences: Sequence[str]) -> str:
    """Several sentences for the live line."""
    return " ".join(sentences)
