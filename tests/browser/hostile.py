"""Malformed links, seeded: what a stranger could put after the `#` of a page's address."""

from collections.abc import Callable

from host.seeded import SeededChoices

KEYS = (
    "i1", "i2", "i3", "a1", "a2", "a3", "measured", "method", "order", "paper", "orientation", "scale", "names",
    "first", "sequence", "rotation", "place", "decimal", "angles", "colours", "view", "step", "ask", "code", "v",
    "__proto__", "constructor", "hasOwnProperty", "toString", "__proto__[x]", "constructor.prototype", "", "i1[]",
)  # fmt: skip
VALUES = (
    "18.4", "-0", "1e400", "-1e400", "1e-400", "NaN", "Infinity", "0x10", "1_000", "١٢٣", "１８", "9" * 400,
    "1" + "0" * 300, "<script>window.hurt=1</script>", "<img src=x onerror=window.hurt=1>",
    '"><svg onload=window.hurt=1>', "javascript:window.hurt=1", "'-window.hurt-'", "{{7*7}}", "${window.hurt=1}",
    "%3Cscript%3Ewindow.hurt=1%3C/script%3E", "\u202e8.41", "\u0000", "\ud7ff\ufffe", "𝟙𝟠", "e\u0301" * 100, "🙂" * 50,
    "[" * 2000 + "]" * 2000, '{"a":' * 500 + "1" + "}" * 500, "../../etc/passwd", "parallelogram", "A4", "0.85 lag",
    "1,840,5", " ", "+", "\r\n\t",
)  # fmt: skip
DAMAGE = ("%", "%G1", "%C0%80", "%ED%A0%80", "&&&", "===", "#", "##v=1", "?v=1", ";", "&v=2", "&v=", "v", "%00")


def _whole(rng: SeededChoices) -> str:
    """Keys and values of every kind, encoded as a browser would."""
    from urllib.parse import quote

    pairs = (f"{rng.one_of(KEYS)}={quote(rng.one_of(VALUES), errors='replace')}" for _ in range(1 + rng.below(8)))
    return "v=1&" + "&".join(pairs)


def _raw(rng: SeededChoices) -> str:
    """The same, not encoded."""
    pairs = (f"{rng.one_of(KEYS)}={rng.one_of(VALUES)}" for _ in range(1 + rng.below(4)))
    return "&".join(pairs)


def _damaged(rng: SeededChoices) -> str:
    """A good link, broken at some places."""
    text = "v=1&i1=18.4&i2=11.2&i3=24.6&method=parallelogram&paper=A4"
    for _ in range(1 + rng.below(4)):
        at = rng.below(len(text))
        text = text[:at] + rng.one_of(DAMAGE) + text[at + rng.below(3) :]
    return text


def _noise(rng: SeededChoices) -> str:
    """Characters of all planes."""
    return "".join(chr(1 + rng.below(0xD7FE if rng.below(2) else 0x7E)) for _ in range(rng.below(200)))


def _long(rng: SeededChoices) -> str:
    """One value or one key without end."""
    filler = rng.one_of(("9", "a", "%41", "<b>", "&i1=1")) * (2000 + rng.below(20000))
    return f"v=1&i1={filler}" if rng.below(2) else f"v=1&{filler}=1"


MAKERS: tuple[Callable[[SeededChoices], str], ...] = (_whole, _whole, _raw, _damaged, _damaged, _noise, _long)


def fragment(number: int) -> str:
    """The malformed link of this number, always the same, without its `#`."""
    rng = SeededChoices(number)
    return rng.one_of(MAKERS)(rng).replace("\ud800", "")
