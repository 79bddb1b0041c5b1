"""Problems as the fragment of a link, so that no server sees them: ``#v=3&i1=18.4&i2=...``.

Keys are the form controls' names; values stand as typed. ``v`` comes first: links carry the
version of their keys and defaults for ever. A link from version 2 on that gives values gives all of
them: what it leaves out is neutral (empty, or a lag of 0). What a stranger put into a link is hostile until read.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pycore.forms.fields import LONGEST_VALUE, VALUE_GROUPS, VERSION, VERSIONS, Field, default_form

UNNAMED = VERSIONS[0]
"""The version of a link that names none."""
LONGEST_FRAGMENT = 4000
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
    """A link as read: the whole form, the keys that mean nothing here, its version, the fields it names, and
    whether the values are its own (else they are the example's)."""

    form: dict[str, str]
    unknown: tuple[str, ...]
    version: str
    too_long: bool = False
    named: tuple[str, ...] = ()
    has_values: bool = False


@dataclass(frozen=True, slots=True)
class Longest:
    """How many characters a link and each of its values may have."""

    fragment: int = LONGEST_FRAGMENT
    value: int = LONGEST_VALUE


USUAL = Longest()


def open_fragment(
    text: str, fields: Iterable[Field], reserved: Iterable[str] = (), longest: Longest = USUAL
) -> ParsedLink:
    """Read a fragment into a whole form: what it does not name keeps its default in the link's own version.

    Control characters are dropped and long values cut; nothing is executed or trusted.
    """
    listed = tuple(fields)
    pairs, unknown = _pairs_of(text[: longest.fragment].lstrip("#"), longest.value)
    # An anchor such as #answer is no link: the page opens as it is.
    version = next((value for key, value in reversed(pairs) if key == "v"), UNNAMED if pairs else VERSION)
    known = frozenset(field.name for field in listed if not field.private)
    elsewhere = frozenset(("v", *reserved))
    named = {key: value for key, value in pairs if key in known}
    unknown += [key for key, _ in pairs if key not in known and key not in elsewhere]
    form = default_form(listed, version) | named
    # A link that names some of the values means all of them: the rest is not the example's.
    needed = needed_of(listed)
    has_values = any(name in named for name in needed)
    if has_values:
        form.update({name: "" for name in needed if name not in named})
    return ParsedLink(form, tuple(unknown), version, len(text) > longest.fragment, tuple(sorted(named)), has_values)


def needed_of(fields: Iterable[Field]) -> tuple[str, ...]:
    """The names of the values without which there is no problem: those that the example has."""
    return tuple(field.name for field in fields if field.group == "values" and field.default)


def _pairs_of(text: str, longest: int) -> tuple[list[tuple[str, str]], list[str]]:
    """Keys and values of a fragment, as they follow one another, and what stands in it without a value."""
    pairs: list[tuple[str, str]] = []
    alone: list[str] = []
    for pair in text.split("&"):
        key, sign, value = pair.partition("=")
        if sign:
            cleaned = "".join(char for char in decode(value) if char.isprintable())[:longest]
            pairs.append((decode(key), cleaned))
        elif key:
            alone.append(decode(key))
    return pairs, alone


LONGEST_BASE = 300


def base_of(address: object) -> str:
    """Return the address of a page without its fragment; "" for what is no text."""
    return address.partition("#")[0][:LONGEST_BASE] if isinstance(address, str) else ""


def root_of(address: object, slug: str) -> str:
    """Return the address of the site from that of its page with this folder; "" if unknown."""
    page = base_of(address).removesuffix("/")
    return page.removesuffix(slug) if page.endswith(f"/{slug}") else ""


RESERVED = ("colours", "decimal", "angles", "resultant", "sequence", "view", "step", "ask", "code")
"""Keys with the same meaning on every page."""


def form_pairs(
    form: Mapping[str, str], fields: Iterable[Field], always: Iterable[str] = ()
) -> tuple[tuple[str, str], ...]:
    """A form as link pairs of the present version: the values, the keys of ``always`` and those of values whose
    default differs between versions, so that no edition reads other values; every other key when it is not its default
    (which the version fixes for ever). Private fields never."""
    named = frozenset(always)
    pairs = [("v", VERSION)]
    for field in fields:
        if field.private:
            continue
        value = str(form.get(field.name, field.default)).strip()
        is_needed = field.group == "values" or field.name in named
        differs = bool(field.before) and field.group in VALUE_GROUPS
        if value != field.default or (is_needed and value != "") or differs:
            pairs.append((field.name, value))
    return tuple(pairs)
