"""What must not break across two lines: a number and its unit, a sign and its number, a sum."""

import re
from functools import lru_cache

NO_BREAK = "\u00a0"
SYMBOL = "\ue000"
"""Stands for a quantity symbol while its sentence is looked at."""
UNITS = "A|mA|kA|V|mV|kV|Ω|mm|cm|m|W|kW|VA|kVA|var|kvar|µF|H|mH|Hz|%|°"
NUMBER_AND_UNIT = re.compile(rf"(?<=\d) (?=(?:{UNITS})(?![\w²]))")
SIGN_AND_NUMBER = re.compile(r"(?<=[=±≈]) (?=\d)")
_AMOUNT = rf"[−+]?(?:[A-Z][₀-₉]|{SYMBOL}|\d[\d.,]*)(?:{NO_BREAK}(?:{UNITS}))?[°%²]?"
SUM = re.compile(rf"{_AMOUNT}(?: [−+×] {_AMOUNT})+")
MOST_UNBROKEN = 3
"""Longer sums break before a sign, as long formulas do, never after it."""
_AFTER_SIGN = re.compile(r"(?<=[−+×]) ")


def _sum_together(found: re.Match[str]) -> str:
    words = found[0]
    short = words.count(" ") <= 2 * (MOST_UNBROKEN - 1)
    return words.replace(" ", NO_BREAK) if short else _AFTER_SIGN.sub(NO_BREAK, words)


@lru_cache(maxsize=4096)
def together(text: str) -> str:
    """Return a text with no-break spaces between a number and its unit, after a sign before a number, and in sums."""
    signed = SIGN_AND_NUMBER.sub(NO_BREAK, NUMBER_AND_UNIT.sub(NO_BREAK, text))
    return SUM.sub(_sum_together, signed)
