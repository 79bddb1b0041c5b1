"""What is said of arcs that were drawn with compasses."""

from pycore.words.phrase import Phrase, say

SLIPS: dict[str, tuple[str, str]] = {
    "arc-centre": (
        "the point of the compasses was not on the tip of {a}",
        "Each arc has its centre on the tip of an arrow.",
    ),
    "arc-own-length": (
        "the compasses were opened to the length of {a} itself",
        "On the tip of one arrow, draw an arc with the length of the other arrow.",
    ),
    "length-of-other": (
        "the compasses were opened to the length of {b}",
        "Open the compasses on the two arrows of this parallelogram only.",
    ),
    "centimetre-long": (
        "the compasses were opened exactly one centimetre too far",
        "Open the compasses on the arrow itself, from its beginning to its tip.",
    ),
    "centimetre-short": (
        "the compasses were opened exactly one centimetre too little",
        "Open the compasses on the arrow itself, from its beginning to its tip.",
    ),
    "arc-side": (
        "the arcs cross on the wrong side",
        "The arcs can cross twice. Take the crossing further from the common point.",
    ),
}


def arc(symbol: Phrase) -> Phrase:
    """An arc, by the arrow whose tip is its centre."""
    return say("the arc round the tip of {a}", a=symbol)


def mistake_text(key: str, symbol: Phrase) -> tuple[Phrase, Phrase]:
    """What happened to an arc, and where to look."""
    name, look = SLIPS[key]
    return say(name, a=symbol), say(look)


def length_of(symbol: Phrase, other: Phrase) -> tuple[Phrase, Phrase]:
    """An arc as wide as another arrow is long."""
    name, look = SLIPS["length-of-other"]
    return say(name, a=symbol, b=other), say(look)


def radius_off(symbol: Phrase, size: str) -> Phrase:
    """By how much an arc is too wide or too narrow."""
    return say("The radius of the arc round the tip of {a} is off by {size} mm.", a=symbol, size=size)


def centre_off(symbol: Phrase, size: str) -> Phrase:
    """By how much the centre of an arc misses its point."""
    return say("The arc round the tip of {a} has its centre {size} mm beside that tip.", a=symbol, size=size)
