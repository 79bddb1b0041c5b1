"""Which parts of a text our faces can set, and which a shaper must: their script, direction, and order on the line.

A text is cut into clusters (a character with what combines with it). Those that the regular face has are set by it; the
others go to the shaper, together where they stand side by side in one script. The order on the line follows the Unicode
bidirectional algorithm (Unicode Standard Annex 9) as far as names on one line need it: letters, numbers, and what
stands between them, without embeddings.
"""

from bisect import bisect_right
from dataclasses import dataclass
from functools import lru_cache

from pycore.lettering.held import own

_RANGES = {
    "Latn": "0041-005A 0061-007A 00C0-024F 0250-02FF 1D00-1DBF 1E00-1EFF 2C60-2C7F A720-A7FF AB30-AB6F",
    "Grek": "0370-03FF 1F00-1FFF",
    "Cyrl": "0400-052F 1C80-1C8F 2DE0-2DFF A640-A69F",
    "Armn": "0530-058F FB13-FB17",
    "Hebr": "0590-05FF FB1D-FB4F",
    "Arab": "0600-06FF 0750-077F 0870-08FF FB50-FDFF FE70-FEFE",
    "Deva": "0900-097F A8E0-A8FF",
    "Beng": "0980-09FF",
    "Guru": "0A00-0A7F",
    "Gujr": "0A80-0AFF",
    "Taml": "0B80-0BFF",
    "Telu": "0C00-0C7F",
    "Knda": "0C80-0CFF",
    "Mlym": "0D00-0D7F",
    "Sinh": "0D80-0DFF",
    "Thai": "0E00-0E7F",
    "Laoo": "0E80-0EFF",
    "Mymr": "1000-109F A9E0-A9FE AA60-AA7F",
    "Geor": "10A0-10FF 1C90-1CBF 2D00-2D2F",
    "Hang": "1100-11FF 3130-318F A960-A97F AC00-D7FF",
    "Ethi": "1200-139F 2D80-2DDF AB01-AB2F",
    "Khmr": "1780-17FF 19E0-19FF",
    "Kana": "3040-30FF 31F0-31FF FF66-FF9F",
    "Hani": "2E80-2FDF 3000-303F 3400-4DBF 4E00-9FFF F900-FAFF 20000-323AF",
}
"""Blocks of the scripts that the site has fonts for, by their codes in ISO 15924."""
OTHER = "Latn"
"""Where signs of no script are looked for: dashes, quotation marks."""
RIGHT_TO_LEFT = ("Hebr", "Arab")
_JOINING = "0300-036F 0483-0489 1AB0-1AFF 1DC0-1DFF 200C-200D 20D0-20FF FE00-FE0F FE20-FE2F E0100-E01EF"
"""What combines with the character before it, in any script; marks of one script stand in its own blocks."""
_MIRRORED = str.maketrans("()[]{}<>«»", ")(][}{><»«")


def _bounds(ranges: str) -> list[tuple[int, int]]:
    return [(int(first, 16), int(last, 16)) for first, _, last in (one.partition("-") for one in ranges.split())]


_BLOCKS = sorted((first, last, script) for script, ranges in _RANGES.items() for first, last in _bounds(ranges))
_STARTS = [first for first, _, _ in _BLOCKS]


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a text as it is set: by the regular face if ``script`` is "", else by a shaper. ``level``: odd for what
    is read from the right."""

    text: str
    script: str
    level: int

    @property
    def key(self) -> str:
        """What the shaper's result is known by."""
        return f"{self.script} {self.text}"


def _within(character: str, ranges: str) -> bool:
    return any(first <= ord(character) <= last for first, last in _bounds(ranges))


def _script(character: str) -> str:
    at = bisect_right(_STARTS, ord(character)) - 1
    return _BLOCKS[at][2] if at >= 0 and ord(character) <= _BLOCKS[at][1] else OTHER


def right_to_left(text: str) -> bool:
    """Return whether a text of one script is read from the right."""
    return _script(text[:1] or " ") in RIGHT_TO_LEFT


def _clusters(text: str) -> list[str]:
    clusters: list[str] = []
    for character in text:
        if clusters and _within(character, _JOINING):
            clusters[-1] += character
        else:
            clusters.append(character)
    return clusters


def _kind(cluster: str, script: str) -> str:
    """R, L, N (number) or "" (neutral): which way a cluster is read."""
    if cluster[0].isdigit():
        return "N"
    if script in RIGHT_TO_LEFT:
        return "R"
    return "L" if script or cluster[0].isalpha() else ""


def _levels(kinds: list[str]) -> list[int]:
    """The level of each cluster, by annex 9 (P2, W7, N1, N2, I1, I2) for one line without embeddings."""
    base = 1 if next((kind for kind in kinds if kind in ("R", "L")), "L") == "R" else 0
    levels: list[int] = []
    strong = base
    for kind in kinds:
        if kind in ("R", "L"):
            strong = 1 if kind == "R" else 0
        level = {"R": 1, "L": 2 * base, "N": 2 if strong or base else 0}.get(kind, -1)
        levels.append(level)
    for at, level in enumerate(levels):
        if level < 0:
            before = levels[at - 1] if at else base
            after = next((one for one in levels[at:] if one >= 0), base)
            # A number among letters read from the right counts as one of them.
            levels[at] = 1 if before > 0 and after > 0 and (before == 1 or after == 1) else base
    return levels


def _in_script(cluster: str) -> str:
    return "" if own(cluster) else _script(cluster[0])


def _east_asian(scripts: list[str]) -> list[str]:
    """Han characters beside kana or hangul are that language's: their shapes differ."""
    reading = "Jpan" if "Kana" in scripts else "Kore" if "Hang" in scripts else "Hani"
    return [reading if one in ("Hani", "Kana", "Hang") else one for one in scripts]


@lru_cache(maxsize=2048)
def pieces(text: str) -> tuple[Piece, ...]:
    """Return a text in pieces, in their order on the line from left to right.

    The text of a piece that a shaper sets is in the order of reading; that of our own face in the order on the line.
    """
    if own(text):
        return (Piece(text, "", 0),)
    clusters = _clusters(text)
    scripts = _east_asian([_in_script(cluster) for cluster in clusters])
    levels = _levels([_kind(cluster, script) for cluster, script in zip(clusters, scripts, strict=True)])
    joined: list[Piece] = []
    for cluster, script, level in zip(clusters, scripts, levels, strict=True):
        last = joined[-1] if joined else None
        if last and (last.script, last.level) == (script, level):
            joined[-1] = Piece(last.text + cluster, script, level)
        else:
            joined.append(Piece(cluster, script, level))
    return tuple(_on_line(one) for one in _reordered(joined))


def _on_line(piece: Piece) -> Piece:
    """What our own face sets, in the order on the line; brackets turn with it."""
    if piece.script or piece.level != 1:
        return piece
    return Piece(piece.text[::-1].translate(_MIRRORED), "", 1)


def _reordered(joined: list[Piece]) -> list[Piece]:
    """Pieces in their order on the line (rule L2): at each level from the highest, what stands together turns round."""
    for level in range(max(one.level for one in joined), 0, -1):
        turned: list[Piece] = []
        together: list[Piece] = []
        for one in joined:
            if one.level >= level:
                together.append(one)
            else:
                turned += [*together[::-1], one]
                together = []
        joined = [*turned, *together[::-1]]
    return joined
