"""Where people write who found a fault of security: the contact of those who host the site (RFC 9116).

Only they know it, so the build takes it: `--security-contact` and `--security-until`.
"""

import datetime
from pathlib import Path

from making.progress import BuildError

PLACE = ".well-known/security.txt"
SCHEMES = ("mailto:", "https://", "tel:")


def security_text(contact: str, until: str, base: str, today: datetime.date | None = None) -> str:
    """The text of the file; `until`: the day until which the contact holds, as 2027-06-30; `today`: for the tests.

    Raises BuildError for a contact or day that the standard does not take, and for a day that is over.
    """
    if not contact.startswith(SCHEMES) or any(sign.isspace() for sign in contact) or contact in SCHEMES:
        raise BuildError(
            f"--security-contact {contact!r}: give an address that begins with mailto:, https:// or tel:, such as the "
            "one at which your organisation takes reports."
        )
    try:
        day = datetime.date.fromisoformat(until)
    except ValueError as error:
        raise BuildError(f"--security-until {until!r}: give the day until which it holds, as 2027-06-30.") from error
    if day < (today or datetime.datetime.now(datetime.UTC).date()):
        raise BuildError(f"--security-until {until!r}: this day is over. Give a later one, up to a year from now.")
    lines = [f"Contact: {contact}", f"Expires: {day.isoformat()}T23:59:59Z", "Preferred-Languages: en"]
    return "\n".join([*lines, *([f"Canonical: {base}{PLACE}"] if base else [])]) + "\n"


def write_contact(folder: Path, contact: str, until: str, base: str) -> None:
    """Write the file into the site, if there is a contact."""
    if contact or until:
        place = folder / PLACE
        place.parent.mkdir(exist_ok=True)
        place.write_text(security_text(contact, until, base), encoding="utf-8", newline="\n")
