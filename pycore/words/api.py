"""What the page announces, and what it says of links and requests that it cannot use."""

from collections.abc import Sequence

SHOWN_KEYS = 4


def announce(title: str, value: str, unit: str, notes: Sequence[str]) -> str:
    """One sentence for the live line after an answer."""
    tail = ", ".join(notes)
    return f"{title}: {value} {unit}" + (f", {tail}." if tail else ".")


def waiting(faults: int) -> str:
    """What the buttons wait for."""
    return (
        "These buttons work again when the field above is corrected."
        if faults == 1
        else "These buttons work again when the fields above are corrected."
    )


def other_version(version: str) -> str:
    """A link of another edition."""
    return (
        f"This link was made by another version of this site (version “{version[:8]}”). Values that this version "
        "knows were used. Check them."
    )


def long_link() -> str:
    """A link longer than any of ours."""
    return "This link is too long. Only the beginning was read. Check the values."


def unknown_keys(keys: Sequence[str]) -> str:
    """Keys that mean nothing on this page."""
    names = ", ".join(f"“{key[:16]}”" for key in keys[:SHOWN_KEYS])
    more = f" and {len(keys) - SHOWN_KEYS} more" if len(keys) > SHOWN_KEYS else ""
    return f"This link has settings that this page does not know. They were left out: {names}{more}."


def unknown_page() -> str:
    """A request for no page of ours."""
    return "This page does not exist."


def no_form() -> str:
    """A request without a form."""
    return "The request has no form values."


def not_a_request() -> str:
    """Text that is no request."""
    return "The request cannot be read."


def request_too_long() -> str:
    """A request beyond any of ours."""
    return "The request is too long."


def fault_of_ours(name: str) -> str:
    """Something went wrong that no input should bring about."""
    return f"The page could not calculate this because of an error in the program ({name}). The last answer stays."


def unknown_request() -> str:
    """A request for something that is not done here."""
    return "This page does not know that request."


def part_missing() -> str:
    """A lazy part of the site could not be fetched."""
    return "This part of the site could not be loaded. Check the connection and try again."
