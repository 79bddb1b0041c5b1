"""The boards of the front page: the groups in which a calculator's room puts itself."""

THREE_PHASE, CIRCUITS, POWER, ANY = "Three-phase", "Circuits", "Power", "Any phasors"
BOARDS = (THREE_PHASE, CIRCUITS, POWER, ANY)
"""In the order in which they stand; one that no calculator names is left out."""


def anchor(board: str) -> str:
    """The id of a board on the front page."""
    return board.lower().replace(" ", "-")
