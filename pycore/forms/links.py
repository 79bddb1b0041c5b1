"""Problems as the fragment of a link, which no server sees: ``#v=1&i1=18.4&i2=...``.

Keys are the names of form fields; values are as typed. ``v`` comes first: links carry the version of their keys for
ever. The content of a link is untrusted input.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pycore.forms.fields import Field, default_form

VERSION = "1"
LONGEST_FRAGMENT = 4000
LONGEST_VALUE = 200
_PLAIN = frozenset(b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~,")


def encode(text: str) -> str:
    """Return one key or value percent-encoded (RFC 3986, section 2.1)."""
    return "".join(
        chr(byte) if byte in _PLAIN else f"%{byte:02X}" for byte in text.encode("utf-8", "replace")
    )


def decode(text: str) -> str:
    """Return a percent-encoded text decoded; a damaged escape stays as it is."""
    data = bytearray()
    index = 0
    raw = text.replace("+", " ").encode("utf-8", "replace")
    while index < len(raw):
        escape = raw[index + 1 : index + 3]
        if raw[index] == 0x25 and len(escape) == 2 and _is_hex(escape):
            data.append(int(escape, 16))
            index += 3
        else:
            data.append(raw[index])
            index += 1
    return data.decode("utf-8", "replace")


def _is_hex(pair: bytes) -> bool:
    return all(byte in b"0123456789abcdefABCDEF" for byte in pair)


def fragment(pairs: Iterable[tuple[str, str]]) -> str:
    """Return key-value pairs as a fragment, without its #."""
    return "&".join(f"{encode(key)}={encode(value)}" for key, value in pairs)


@dataclass(frozen=True, slots=True)
class ParsedLink:
    """A parsed link: the complete form, the unknown keys, the version, and the fields it names."""

    form: dict[str, str]
    unknown: tuple[str, ...]
    version: str
    too_long: bool = False
    named: tuple[str, ...] = ()


def open_fragment(text: str, fields: Iterable[Field], reserved: Iterable[str] = ()) -> ParsedLink:
    """Parse a fragment into a complete form; fields that it does not name keep their default.

    Control characters are dropped and values cut at 200 characters; nothing is executed or trusted.
    """
    listed = tuple(fields)
    form = default_form(listed)
    private = frozenset(field.name for field in listed if field.private)
    too_long = len(text) > LONGEST_FRAGMENT
    unknown: list[str] = []
    named: set[str] = set()
    version = VERSION
    known_elsewhere = frozenset(reserved)
    for pair in text[:LONGEST_FRAGMENT].lstrip("#").split("&"):
        key, sign, value = pair.partition("=")
        key = decode(key)
        if not sign:
            unknown += [key] if key else []
            continue
        cleaned = "".join(char for char in decode(value) if char.isprintable())[:LONGEST_VALUE]
        if key == "v":
            version = cleaned
        elif key in form and key not in private:
            form[key] = cleaned
            named.add(key)
        elif key not in known_elsewhere:
            unknown.append(key)
    # A link that names some of the values means all of them: the rest is not the example's.
    needed = [field.name for field in listed if field.group == "values" and field.default]
    if named & frozenset(needed):
        form.update({name: "" for name in needed if name not in named})
    return ParsedLink(form, tuple(unknown), version, too_long, tuple(sorted(named)))


RESERVED = ("colours", "decimal", "angles", "resultant", "sequence", "view", "step", "ask", "code")
"""Keys with the same meaning on every page."""


def form_pairs(
    form: Mapping[str, str], fields: Iterable[Field], always: Iterable[str] = ()
) -> tuple[tuple[str, str], ...]:
    """Return a form as link pairs: values, the keys of ``always``, and every other key that differs from its default.

    Version 1 fixes the defaults for ever. Private fields are never included.
    """
    named = frozenset(always)
    pairs = [("v", VERSION)]
    for field in fields:
        if field.private:
            continue
        value = str(form.get(field.name, field.default)).strip()
        is_needed = field.group == "values" or field.name in named
        if value != field.default or (is_needed and value != ""):
            pairs.append((field.name, value))
    return tuple(pairs)
