"""What is said of a drawing that was read from its photograph: what is asked, and why."""

ASK_WHOLE = {
    "nothing": "No drawing was found on this sheet.",
    "rival": "Two readings of this drawing fit nearly as well.",
    "names": "It is not clear which arrow is which.",
    "thin": "Much of this drawing is too faint.",
    "odd": "This drawing has more mistakes than one, or it was read wrongly.",
    "more": "There is a clear line that belongs to no part of the drawing.",
}
"""Why the whole reading is asked, by its reason."""
NOT_DRAWN = "Not drawn"


def why(reasons: tuple[str, ...]) -> str:
    """Why a reading is asked, as sentences."""
    return " ".join(ASK_WHOLE[reason] for reason in reasons)
