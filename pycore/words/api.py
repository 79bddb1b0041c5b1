"""What the page announces, and what it says about links and requests that it cannot use."""

from collections.abc import Sequence

SHOWN_KEYS = 4


def announce(title: str, value: str, unit: str, notes: Sequence[str]) -> str:
    """One sentence for the live line after an answer."""
    # A note may be a sentence of its own elsewhere.
    tail = ", ".join(note.rstrip(".") for note in notes)
    return f"{title}: {value} {unit}" + (f", {tail}." if tail else ".")


def waiting(faults: int) -> str:
    """What the buttons wait for; "" if there are no ``faults``."""
    if not faults:
        return ""
    return (
        "These buttons work again when the marked field is corrected."
        if faults == 1
        else "These buttons work again when the marked fields are corrected."
    )


def other_version(version: str) -> str:
    """A link of another version."""
    return (
        f"This link was made by another version of this site (version “{version[:8]}”). Values that this version "
        "knows were used. Check them."
    )


LONG_LINK = "This link is too long. Only the beginning was read. Check the values."


def unknown_keys(keys: Sequence[str]) -> str:
    """Keys that mean nothing on this page."""
    names = ", ".join(f"“{key[:16]}”" for key in keys[:SHOWN_KEYS])
    more = f" and {len(keys) - SHOWN_KEYS} more" if len(keys) > SHOWN_KEYS else ""
    return f"This link has settings that this page does not know. They were left out: {names}{more}."


UNKNOWN_PAGE = "This page does not exist."
NO_FORM = "The request has no form values."
NOT_A_REQUEST = "The request cannot be read."
REQUEST_TOO_LONG = "The request is too long."


def fault_of_ours(name: str) -> str:
    """An error in the program."""
    return f"The page could not calculate this because of an error in the program ({name}). The last answer stays."


UNKNOWN_REQUEST = "This page does not know that request."
PART_MISSING = "This part of the site could not be loaded. Check the connection and try again."
