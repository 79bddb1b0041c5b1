"""The security policy of every page and every response, in one place."""

DIRECTIVES = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",
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

HEADER_POLICY = f"{PAGE_POLICY}; frame-ancestors 'none'"
"""For the header, which alone may forbid framing and which alone binds the worker."""

HASHED = ("a", "lib", "py")
"""The folders of the site in which every name changes with the contents."""

HEADERS = {
    "Content-Security-Policy": HEADER_POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
}


def headers_file() -> str:
    """The text of `_headers`, which common static hosts read: headers on every response, long life for hashed files."""
    lines = ["/*", *(f"  {name}: {value}" for name, value in HEADERS.items())]
    for folder in HASHED:
        lines += [f"/{folder}/*", "  Cache-Control: public, max-age=31536000, immutable"]
    return "\n".join(lines) + "\n"
