"""Texts whose QR codes must be alike in every host, and one request whose sheet has a code."""

import hashlib
import json

BASE = "https://www.folio.example/term/neutral-current/"
COUNT = 60


def texts() -> list[str]:
    """Links of growing length, so that every size of code up to the largest comes up, and texts beyond ASCII."""
    links = [f"{BASE}#v=1&i1={number}.4&place={'x' * (number * number * 3 // 4)}" for number in range(COUNT)]
    return [*links, "a", "Ω 位相", "\x00"]


def digests() -> list[str]:
    """A digest of the modules of each text."""
    from pycore.writers import qr

    return [hashlib.sha256("\n".join(qr.matrix(text)).encode()).hexdigest()[:20] for text in texts()]


def sheet() -> str:
    """The sheet of one problem, asked for with its code."""
    from pycore import api

    request = {
        "do": "answer", "page": "neutral-current", "form": {"i1": "18.4", "i2": "11.2", "i3": "24.6"},
        "parts": ["sheet"], "base": BASE, "code": True, "needs": ["codes"],
    }  # fmt: skip
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert reply["ok"], reply
    return reply["regions"]["sheet"]
