"""Replies that refuse: what is wrong with which field, as the page shows it."""

from typing import Any

from pycore.errors import Fault, InputError
from pycore.words import api as words


class BadRequestError(ValueError):
    """Raised for a request that no page of this site makes."""


def error_of(fault: Fault) -> dict[str, Any]:
    """Return a fault as the page shows it at its field."""
    return {
        "field": fault.field,
        "message": fault.message,
        "part": fault.fragment,
        "offers": [{"label": offer.label, "set": dict(offer.values)} for offer in fault.offers],
        **{name: True for name in ("awaited", "question") if getattr(fault, name)},
    }


def refused(error: InputError) -> dict[str, Any]:
    """Return the reply to a form that cannot be used: every fault, and what the buttons wait for."""
    faults = [error_of(fault) for fault in error.faults]
    messages = " ".join(dict.fromkeys(fault.message for fault in error.faults))
    waiting = words.waiting(len({fault.field for fault in error.faults if not fault.awaited}))
    return {"ok": False, "errors": faults, "announce": messages, "waiting": waiting or messages}


def refusal(sentence: str) -> dict[str, Any]:
    """Return a reply that only says why nothing was done."""
    return {"ok": False, "errors": [], "announce": sentence, "waiting": sentence}
