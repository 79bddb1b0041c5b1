"""The words that stand on a sheet."""

TITLE = "Neutral current"
MAKER = "Phasor Folio"
FOOT = "For teaching. Not for sizing an installation."
SCALE, PAPER, SHEET, DRAWN_BY, DATE = "scale", "paper", "sheet", "drawn by", "date"
NO_ANGLE = "no arrow"


def print_notes(bar: str) -> tuple[str, ...]:
    """How to print true to scale."""
    return (f"Print at 100 %. When both bars measure {bar}, every line on this sheet is true.",)


def one_of_one() -> str:
    """The number of a single sheet."""
    return "1 of 1"


def page_title(method: str, scale: str) -> str:
    """What a sheet is called where it has a name: in a viewer, to a screen reader."""
    return f"Neutral current: {method}, {scale}"
