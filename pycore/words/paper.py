"""The words of blank paper: graph paper, and a ruler and a protractor to be cut out."""

from collections.abc import Mapping

GRAPH_TITLE = "Graph paper"
GRAPH_LEAD = "Millimetre, polar and 60° graph paper at exact size."
GRAPH_DESCRIPTION = "Millimetre, polar and 60° graph paper that prints at exact size, on A5 to A2, letter and tabloid."
INSTRUMENTS_TITLE = "Ruler and protractor"
INSTRUMENTS_LEAD = "For learners who have none: print on card or clear film, check the size, cut out."
INSTRUMENTS_DESCRIPTION = "A ruler and a protractor at exact size, to print on card or clear film and cut out."

KIND = "Ruling"
KIND_HELP = (
    "On polar paper you can read an angle and a length without a protractor. On 60° paper, lines 120° apart follow "
    "the printed lines. On a landscape sheet turned by 90°, one of them points up."
)
KINDS = (("millimetre", "Millimetre"), ("polar", "Polar"), ("sixty", "60° triangles"))
PROTRACTOR = "Protractor"
PROTRACTORS = (("180", "Half circle, 180°"), ("360", "Full circle, 360°"))
PROTRACTOR_HELP = "A full-circle protractor must be transparent: print it on clear film."
PAPER, ORIENTATION = "Paper", "Orientation"
ORIENTATIONS = (("portrait", "portrait"), ("landscape", "landscape"))
CHOICES = "Settings of the sheet"
NO_SCRIPT = (
    "JavaScript is off, so this page shows one sheet only. You can print it from the browser. To choose another sheet "
    "you need JavaScript."
)
AT_FULL_SIZE = "Print at 100 %, not “fit to page”. Each check bar must have the length that is printed next to it."
UNIT = "\u00a0mm"

_RULINGS: Mapping[str, tuple[str, str]] = {
    "millimetre": ("Millimetre paper", "Squares of 1 mm, every fifth and tenth line thicker"),
    "polar": ("Polar paper", "Circles every 5 mm around one point, rays every 5°, numbers every 10°"),
    "sixty": ("60° paper", "Three sets of parallel lines 60° apart: triangles with 10 mm sides"),
}


def paper_name(paper: str, orientation: str) -> str:
    """A paper and its way round: A4 portrait."""
    return f"{paper} {orientation}"


def ruling(kind: str) -> str:
    """What a kind of graph paper is called."""
    return _RULINGS[kind][0]


def graph_title(kind: str, paper: str, orientation: str) -> str:
    """What a sheet of graph paper is called in a viewer and to a screen reader."""
    return f"{ruling(kind)}, {paper_name(paper, orientation)}"


def graph_description(kind: str, paper: str, orientation: str) -> str:
    """A sheet of graph paper for someone who cannot see it."""
    return f"{_RULINGS[kind][1]}, on {paper_name(paper, orientation)}, with a check bar on each axis."


PRINT_REMINDER = "Print at 100 %."


def instruments_title(circle: bool, paper: str, orientation: str) -> str:
    """What a sheet of instruments is called in a viewer and to a screen reader."""
    return f"Ruler and {'full-circle' if circle else 'half-circle'} protractor, {paper_name(paper, orientation)}"


def instruments_description(circle: bool, length: str) -> str:
    """A sheet of instruments for someone who cannot see it; ``length`` of the ruler with its unit."""
    return (
        f"A ruler of {length} and a {'full-circle' if circle else 'half-circle'} protractor of 75{UNIT} radius at full "
        "size, to be cut out, with a check bar on each axis."
    )


def instrument_steps(circle: bool) -> tuple[str, ...]:
    """How to make instruments of the sheet. A bank card's length: ISO/IEC 7810, ID-1."""
    medium = "clear film: you must see through its centre" if circle else "card or clear film"
    window = (
        ("Put the cross on the point and the line through 0 on your line.",)
        if circle
        else ("On card, also cut out the window of the protractor, up to its zero line.",)
    )
    return (
        f"Print at 100 %, on {medium}.",
        f"Check both bars. If you have no ruler: a bank card is 85.6{UNIT} long.",
        "Cut along the outlines. Cut the marked edge of the ruler and the rim of the protractor last, exactly on the "
        "line.",
        *window,
        f"The ruler’s zero is the 0 mark, 5{UNIT} from its end.",
    )


def announce(title: str) -> str:
    """Said when the sheet has changed."""
    return f"{title} is ready."
