"""The words of blank paper: graph paper, and a ruler and a protractor to be cut out."""

from collections.abc import Mapping

GRAPH_TITLE = "Graph paper"
GRAPH_LEAD = "Millimetre, polar and 60° paper, printed at exact size."
GRAPH_DESCRIPTION = "Millimetre, polar and 60° graph paper that prints at exact size, on A5 to A2, letter and tabloid."
GRAPH_SHORT = "Millimetre, polar and 60°."
INSTRUMENTS_TITLE = "Ruler and protractor"
INSTRUMENTS_LEAD = "For those who have none: print on card or clear film, check, cut out."
INSTRUMENTS_DESCRIPTION = "A ruler and a protractor at exact size, to print on card or clear film and cut out."
INSTRUMENTS_SHORT = "For those who have none, to cut out."
FULL_SIZE = "Prints at full size."

KIND = "Ruling"
KIND_HELP = (
    "Polar paper reads an angle and a length without a protractor. On 60° paper three lines 120° apart follow the "
    "ruling; turn a landscape sheet a quarter and one of them points up."
)
KINDS = (("millimetre", "Millimetre"), ("polar", "Polar"), ("sixty", "60° triangles"))
PROTRACTOR = "Protractor"
PROTRACTORS = (("180", "Half circle, 180°"), ("360", "Full circle, 360°"))
PROTRACTOR_HELP = "A full circle must be seen through: print it on clear film."
PAPER, ORIENTATION = "Paper", "Way round"
ORIENTATIONS = (("portrait", "portrait"), ("landscape", "landscape"))
CHOICES = "The sheet"
NO_SCRIPT = (
    "Scripts are off, so this page shows one sheet only. Printing it from the browser works; choosing another needs "
    "scripts."
)
AT_FULL_SIZE = "Print at 100 %, not fitted to the page. Both bars on the sheet must measure what is written on them."
UNIT = "\u00a0mm"

_RULINGS: Mapping[str, tuple[str, str]] = {
    "millimetre": ("Millimetre paper", "Squares of 1 mm, every fifth and tenth line stronger"),
    "polar": ("Polar paper", "Circles every 5 mm about one point, rays every 5°, figures every 10°"),
    "sixty": ("60° paper", "Three sets of parallel lines 60° apart: triangles of 10 mm side"),
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


def print_reminder() -> str:
    """On the sheet itself."""
    return "Print at 100 %."


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
    medium = "clear film: its centre must be seen through" if circle else "card or clear film"
    window = (
        ("Lay the cross on the point, the line through 0 on your line.",)
        if circle
        else ("On card, cut out the protractor’s window too, up to its zero line.",)
    )
    return (
        f"Print at 100 %, on {medium}.",
        f"Check both bars. With no ruler at hand: a bank card is 85.6{UNIT} long.",
        "Cut along the outlines. The ruler’s marked edge and the protractor’s rim measure: cut them last, on the line.",
        *window,
        f"The ruler’s zero is its 0 mark, 5{UNIT} inside its end.",
    )


def announce(title: str) -> str:
    """Said when the sheet has changed."""
    return f"{title} is ready."
