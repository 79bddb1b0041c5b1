"""The security policy of every page and every response, in one place."""

import base64
import hashlib
import re
from collections.abc import Iterable

from making.paths import SITE
from making.progress import BuildError

IN_PAGES = ("watch.js", "before-paint.js")
"""The scripts that stand in every page itself: what watches over all others, what must be known before painting."""


def _lightened(script: str) -> str:
    """The text of a script without its comments, which stand on lines of their own, and without what indents it."""
    lines = (line.strip() for line in script.splitlines())
    return "\n".join(line for line in lines if line and not line.startswith(("//", "/**")))


INLINE = tuple(_lightened((SITE / "js" / name).read_text("utf-8")) for name in IN_PAGES)
"""The texts of these scripts as they stand in pages. The policy knows them by their hashes."""


def _hashed(script: str) -> str:
    """How a policy names the text of a script."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"


DIRECTIVES = {
    "default-src": "'none'",
    "script-src": " ".join(("'self' 'wasm-unsafe-eval'", *map(_hashed, INLINE))),
    "style-src": "'self'",
    "img-src": "'self' data: blob:",
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "phasor-folio",
}
"""'wasm-unsafe-eval' lets Pyodide compile its WebAssembly; it allows no eval of JavaScript."""

PAGE_POLICY = "; ".join(f"{name} {value}" for name, value in DIRECTIVES.items())
"""For `<meta http-equiv>`, so that the policy holds on a host that sends no headers."""

POLICY, ANCESTORS = "Content-Security-Policy", "frame-ancestors"
HEADER_POLICY = f"{PAGE_POLICY}; {ANCESTORS} 'none'"
"""For the header, which alone may forbid framing and which alone binds the worker."""

NOT_FOUND = "404.html"
"""The page that common static hosts give for an address that has none."""

LETTERS = "letters"
"""The folder with what sets names in any script: fetched when a name needs it, kept on a device once it was used."""

CODES = "codes"
"""The folder with what reads QR codes in photographs, fetched and kept in the same way."""

WHEN_USED = (LETTERS, CODES)
"""The folders of the site that are in no edition: what is in them is kept once it was used."""

HASHED = ("a", "lib", "py", *WHEN_USED)
"""The folders of the site in which every name changes with the contents."""

UNUSED = (
    "accelerometer", "display-capture", "geolocation", "gyroscope", "magnetometer", "microphone", "midi", "payment",
    "usb",
)  # fmt: skip
"""What browsers may lend a page, and this site never asks for."""

CAMERA, WITH_CAMERA = "camera", "photographs"
"""What browsers may lend a page too, and the only page that asks for it, when its button for that is pressed."""

PERMISSIONS = "Permissions-Policy"


def permissions(folder: str) -> str:
    """What the page in a folder of the site may not borrow from the browser."""
    refused = UNUSED if folder == WITH_CAMERA else (CAMERA, *UNUSED)
    return ", ".join(f"{name}=()" for name in refused)


HEADERS = {
    POLICY: HEADER_POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    PERMISSIONS: permissions(WITH_CAMERA),
}

FOR_EVER, ASK_FIRST = "public, max-age=31536000, immutable", "no-cache"
"""For what changes its name with its contents; for what keeps its name, so that a browser asks if it has changed."""


EMBEDDED = "embed-"
"""What the folder of a page for embedding begins with: such a page is in no edition, and only it may be framed."""


def framers(given: str) -> str:
    """The origins that may frame the pages for embedding, as a policy names them, or "*" for all; "" for none.

    Raises BuildError for what is no origin.
    """
    origins = given.split()
    for origin in origins:
        if origin != "*" and not re.fullmatch(r"https?://(\*\.)?[\w.-]+(:\d+)?", origin):
            raise BuildError(
                f"--embed {origin}: give the address of the course pages without a path, such as "
                "https://learn.example.org, or * for every site."
            )
    return " ".join(origins)


def headers_file(pages: Iterable[str], framed: str = "") -> str:
    """The text of `_headers`, which common static hosts read: headers on every response, how long each file holds.

    `pages` are their folders. Each is named, because hosts join the rules that fit one address, and differ in what a
    star may stand for. `framed`: who may frame the pages for embedding. A second policy only narrows the first, so who
    may frame a page is then said page by page, and so is which may not use the camera: with all else that is refused,
    for hosts that put the second in the place of the first.
    """
    asked = (*(f"/{slug}/" if slug else "/" for slug in pages), "/service-worker.js", "/manifest.webmanifest")
    lives = {**{f"/{folder}/*": FOR_EVER for folder in HASHED}, **dict.fromkeys(asked, ASK_FIRST)}
    everywhere = {**HEADERS, POLICY: PAGE_POLICY} if framed else HEADERS
    lines = ["/*", *(f"  {name}: {value}" for name, value in everywhere.items())]
    for address, life in lives.items():
        lines += [address, f"  Cache-Control: {life}"]
        if framed and address in asked:
            by = framed if address.startswith(f"/{EMBEDDED}") else "'none'"
            lines.append(f"  {POLICY}: {ANCESTORS} {by}")
        if address.endswith("/"):
            lines.append(f"  {PERMISSIONS}: {permissions(address.strip('/'))}")
    return "\n".join(lines) + "\n"
