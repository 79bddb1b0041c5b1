"""The words of a move by its tools: tool, place, zero line, reading and action, each on a line of its own."""

from pycore.words.phrase import Phrase, say
from pycore.words.spoken import sentences

__all__ = ["sentences"]

TOOL, PLACE, ZERO_LINE, READING, ACTION, MEANS = "Tool", "Place", "Zero line", "Reading", "Action", "This means"
RULER, PROTRACTOR, SQUARES, COMPASSES = "Ruler", "Protractor", "Set square", "Compasses"
MARK_IT = say("Mark this angle.")


def centre_on(place: Phrase) -> Phrase:
    """Where the protractor's centre goes."""
    return say("Centre on {place}", place=place)


def along(line: Phrase, *, back: bool) -> Phrase:
    """Where the protractor's zero line lies."""
    return say("back along {line}" if back else "along {line}", line=line)


def angle(size: str, sense: str) -> Phrase:
    """The angle to be marked."""
    return say("{size} {sense}", size=size, sense=sense)


def draw(name: Phrase, *, double: bool) -> Phrase:
    """An arrow drawn along the ruler."""
    return say("Draw {name}: double line, open arrowhead." if double else "Draw {name}.", name=name)
