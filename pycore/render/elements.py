"""HTML by construction: every text is escaped, and markup has its own type.

``Markup`` is made by :func:`h` and :func:`join`, and by :meth:`Markup.trusted` from the output of the SVG writer; a
plain string never becomes an element by accident. What the security policy of the pages refuses (style attributes,
event attributes, script addresses) is refused here too.
"""

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

VOID = frozenset({"br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"})
REFUSED_TAGS = frozenset({"script", "style", "iframe", "object", "embed", "base"})
ADDRESSES = frozenset({"href", "src", "action", "formaction", "poster", "xlink:href", "data", "srcset"})
SCHEMES = frozenset({"http", "https", "mailto"})
NAME = re.compile(r"[A-Za-z][A-Za-z0-9:-]*\Z")
ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"})
_KEY = object()

Attribute = str | int | bool | None
Marks = dict[str, Attribute]
"""The attributes of one element."""


class Markup(str):
    """Text that is HTML. Joined to plain text it gives plain text."""

    __slots__ = ()

    def __new__(cls, text: str, key: object = None) -> "Markup":
        """Only this module has the key: use :func:`h`, :func:`join` or :meth:`trusted`."""
        if key is not _KEY:
            raise TypeError("markup is made by h(), join() or Markup.trusted()")
        return super().__new__(cls, text)

    @classmethod
    def trusted(cls, text: str) -> "Markup":
        """Accept the output of the SVG writer, which escapes by its own rule."""
        return cls(text, _KEY)


_str = str.__new__
"""Makes markup of a text in one call, where its class takes two: a page has a hundred."""


def _check_address(name: str, address: str) -> None:
    bare = "".join(character for character in address if character > " ").lower()
    scheme, colon, _ = bare.partition(":")
    if colon and not any(mark in scheme for mark in "/?#") and scheme not in SCHEMES:
        raise ValueError(f"{name} may not use the scheme of {address!r}")


@lru_cache(maxsize=256)
def _lowered(name: str) -> str:
    """Return an attribute's name in lower case; raises ValueError for one that is not allowed."""
    if not NAME.match(name):
        raise ValueError(f"{name!r} is no attribute name")
    lowered = name.lower()
    if lowered == "style" or lowered.startswith("on"):
        raise ValueError(f"the security policy refuses the attribute {name!r}")
    return lowered


@lru_cache(maxsize=256)
def _is_tag(name: str) -> bool:
    """Return whether an element of this name is allowed."""
    return bool(NAME.match(name)) and name.lower() not in REFUSED_TAGS


@lru_cache(maxsize=512, typed=True)
def _attribute(name: str, value: Attribute) -> str:
    lowered = _lowered(name)
    if value is None or value is False:
        return ""
    if value is True:
        return f" {name}"
    if lowered in ADDRESSES:
        _check_address(name, str(value))
    return f' {name}="{str(value).translate(ESCAPES)}"'


def _content(child: object) -> str:
    if child is None:
        return ""
    if isinstance(child, str):
        return child if isinstance(child, Markup) else child.translate(ESCAPES)
    # Before any other iterable: to ask for that takes longer than all the rest.
    if isinstance(child, (tuple, list)):
        return "".join(map(_content, child))
    if isinstance(child, int):
        return str(child)
    if isinstance(child, Iterable):
        return "".join(map(_content, child))
    raise TypeError(f"{child!r} cannot stand in an element")


def h(tag: str, attributes: Mapping[str, Attribute] | None = None, *children: object) -> Markup:
    """Return one element. Children are text (escaped), markup, None (nothing) or iterables of these.

    An attribute that is True has no value; None and False leave it out. Raises ValueError for names and addresses that
    the security policy would refuse, and for a void element with children.
    """
    if not _is_tag(tag):
        raise ValueError(f"{tag!r} may not be written")
    opening = "".join([_attribute(name, value) for name, value in attributes.items()]) if attributes else ""
    if tag in VOID:
        if children:
            raise ValueError(f"{tag} holds nothing")
        return _str(Markup, f"<{tag}{opening}>")
    return _str(Markup, f"<{tag}{opening}>{_content(children)}</{tag}>")


def join(*children: object) -> Markup:
    """Return children one after another, without an element around them."""
    return _str(Markup, _content(children))


def raw_style(text: str) -> Markup:
    """Return a style sheet inside a document. Raises ValueError if it would end its own element."""
    return _raw("style", text)


def raw_script(text: str) -> Markup:
    """Return a script inside a document. Raises ValueError if it would end its own element."""
    return _raw("script", text)


def _raw(tag: str, text: str) -> Markup:
    lowered = text.lower()
    if f"</{tag}" in lowered or "<!--" in lowered:
        raise ValueError(f"this text would not stay inside its {tag} element")
    return _str(Markup, f"<{tag}>{text}</{tag}>")


def document(language: str, head: Markup, body: Markup) -> str:
    """Return a complete document."""
    opened = h("html", {"lang": language}, h("head", None, head), h("body", None, body))
    return f"<!doctype html>\n{opened}\n"
