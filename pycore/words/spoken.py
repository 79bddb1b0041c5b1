"""Sentences as a voice says them, signs and units in words; and the words of the moves shown for easy reading."""

import re

from pycore.words.phrase import Emphasis, Phrase, Symbol

OPEN, CLOSE = "Easy reading", "Usual reading"
ALOUD, STOP = "Read aloud", "Stop reading"
TITLE = "The moves, one action on a line"

_LENGTHS = {"mm": "millimetre", "cm": "centimetre"}
_UNITS = {"A": "ampere", "V": "volt", "W": "watt", "VA": "volt-ampere", "var": "var", "Ω": "ohm", "S": "siemens",
          "H": "henry", "F": "farad", "Hz": "hertz", "N": "newton"}  # fmt: skip
_PREFIXES = {"": "", "m": "milli", "µ": "micro", "μ": "micro", "n": "nano", "k": "kilo", "M": "mega"}
_UNCHANGED = ("siemens", "hertz", "var")
_UNIT_NAMES = _LENGTHS | {
    prefix + unit: name + whole for unit, whole in _UNITS.items() for prefix, name in _PREFIXES.items()
}
_LETTERS = {"φ": "phi", "θ": "theta", "δ": "delta", "ω": "omega", "Σ": "the sum of", "Ω": "ohm"}
_SIGNS = {
    "−": " minus ", "+": " plus ", "=": " equals ", "×": " times ", "÷": " divided by ", "≈": " about ",
    "±": " plus or minus ", "√": " the square root of ", "%": " per cent", "²": " squared", "∠": " at an angle of ",
    "→": " to ",
}  # fmt: skip
_MEASURED = re.compile(
    r"(\d[\d.]*)[\u00a0 ]?(" + "|".join(sorted(_UNIT_NAMES, key=lambda unit: (-len(unit), unit))) + r")(?![\w²])"
)
_DEGREES = re.compile(r"(\d[\d.]*)[\u00a0 ]?°")
_LOWERED = re.compile(r"\b([A-Z])_?([₀-₉]+)")
_LEVEL = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")


def done(number: int) -> str:
    """The name of the box by which a move is ticked off."""
    return f"Done: move {number}"


def sentences(phrase: Phrase) -> tuple[Phrase, ...]:
    """Return a phrase as its sentences, each one action; what is stressed stays so."""
    found: list[list[str | Symbol | Emphasis]] = [[]]
    for piece in phrase:
        if not isinstance(piece, str):
            found[-1].append(piece)
            continue
        first, *others = re.split(r"(?<=\.) (?=\S)", f"\0{piece}" if _ends(found[-1]) else piece)
        if first.startswith("\0 "):
            found.append([first[2:]])
        else:
            found[-1].append(first.removeprefix("\0"))
        found += [[other] for other in others]
    return tuple(tuple(one) for one in found if any(one))


def _ends(pieces: list[str | Symbol | Emphasis]) -> bool:
    last = pieces[-1] if pieces else ""
    while isinstance(last, Emphasis):
        last = last.pieces[-1]
    return isinstance(last, str) and last.endswith(".")


def spoken(phrase: Phrase) -> str:
    """Return a phrase as a voice should say it: I N, 92 millimetres, minus 36.9 degrees."""
    words = "".join(_lettered(piece) for piece in phrase)
    words = re.sub(r"(\d),(\d)", r"\1.\2", words)
    words = _LOWERED.sub(lambda found: f"{found[1]} {' '.join(found[2].translate(_LEVEL))}", words)
    words = _MEASURED.sub(lambda found: f"{found[1]} {_counted(found[1], _UNIT_NAMES[found[2]])}", words)
    words = _DEGREES.sub(lambda found: f"{found[1]} {_counted(found[1], 'degree')}", words)
    words = "".join(_SIGNS.get(letter, letter) for letter in words)
    words = re.sub(r"\s+", " ", words.replace("\u00a0", " ")).strip()
    return re.sub(r" ([.,:;])", r"\1", words)


def _lettered(piece: str | Symbol | Emphasis) -> str:
    if isinstance(piece, str):
        return piece
    if isinstance(piece, Emphasis):
        return "".join(_lettered(inner) for inner in piece.pieces)
    # Letter by letter: I N is not the word in.
    return f"{_LETTERS.get(piece.letter, piece.letter)} {' '.join(piece.index.replace(',', ''))}".strip()


def _counted(number: str, unit: str) -> str:
    """Return a unit's name for this number of it: 1 ampere, 18.4 amperes."""
    return unit if number == "1" or unit.endswith(_UNCHANGED) else f"{unit}s"
