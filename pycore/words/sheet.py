"""The words that stand on a sheet."""

TITLE = "Neutral current"
TITLES = {
    "construction": "Neutral current",
    "problem": "Neutral current: problem",
    "overlay": "Neutral current: overlay",
}
FOOT = "Phasor Folio. For teaching. Not for sizing an installation."
SCALE, PAPER, SHEET, NAME, GROUP, DATE = "scale", "paper", "sheet", "name", "group", "date"
NO_ANGLE = "no arrow"
ROOM = "____"
"""Room for a figure written by hand."""
LAG_HEAD = "lags by"
OPENS_BY_CODE = ("Open this sheet, with these values, on a phone.",)


def opens_with(address: str) -> tuple[str, ...]:
    """How to open the sheet again where there is no code to scan; a long link only by name."""
    return (f"Opens again at {address}", "Share on the page gives this sheet’s link, which is too long to print here.")


def problem_notes(method: str, bar: str, *, short: bool) -> tuple[str, ...]:
    """What the learner is to do."""
    if short:
        return (f"Draw: {method}. Fill in the table. Print at 100 %.",)
    return (
        f"Find the neutral current by drawing: {method}. Predict first: sketch it, and say whether it can pass the "
        "largest line.",
        f"Measure, fill in the table, and check by calculation. Print at 100 %: both bars {bar}.",
    )


def overlay_notes(first: str, bar: str, *, short: bool, mirrored: bool) -> tuple[str, ...]:
    """How to lay the overlay on a drawing."""
    over = " Mirrored: lie it face down." if mirrored else ""
    if short:
        return (f"Lay the star point and {first} on the learner’s.{over} Print at 100 %.",)
    return (
        "Lay it over the drawing or hold both against a window: star point on star point, "
        f"{first} along {first}.{over}",
        f"Print at 100 %: both bars {bar}.",
    )


def problem_description(method: str) -> str:
    """A problem sheet for someone who cannot see it."""
    return f"Blank paper with the values of three line currents, to be drawn by hand: {method}."


def print_notes(bar: str) -> tuple[str, ...]:
    """How to print true to scale."""
    return (f"Print at 100 %. When both bars measure {bar}, every line on this sheet is true.",)


def one_of_one() -> str:
    """The number of a single sheet."""
    return "1 of 1"


def page_title(title: str, method: str, scale: str) -> str:
    """What a sheet is called where it has a name: in a viewer, to a screen reader."""
    return f"{title}: {method}, {scale}" if ":" not in title else f"{title}, {method}, {scale}"
