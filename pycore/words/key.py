"""The words of a class set's key."""

from collections.abc import Mapping, Sequence

TITLE = "Key"
PLACE, NAME, CODE, SCALE = "No.", "Name", "Code", "Scale"
RESULT, ASKED, ORIGIN = "Result", "Asked for", "Angle from"
ANGLE, SIDE, ANGLE_SHORT = "Angle (°)", "Direction", "Angle"
FIRST, FIRST_SIZE, FIRST_LENGTH = "First diagonal", "Its size", "Its length (mm)"
DRAWN_FROM = "To be drawn"
FIRST_ANGLE, FIRST_SIDE = "Its angle (°)", "Its direction"
SIDES = {True: "anticlockwise", False: "clockwise"}
TOLERANCE, LAGS, FIRST_ANGLE_SHORT = "Tolerance", "Lags", "Its angle"
FOR_ZERO = "Further question: which phasor makes the sum zero?"
FURTHER, FURTHER_ANGLE = "For a sum of zero", "Its angle, for a sum of zero (°)"
SLIPS = {"drawn": "Answers from typical drawing mistakes", "calculated": "Answers from typical calculation mistakes"}
ALL_SLIPS = "Answers from typical mistakes"
VALUES, VALUES_AND_MORE, LENGTH = "Values", "Values and intermediate results", "Length"
WAYS = {"drawn": "drawn", "calculated": "calculated"}
OWN_METHOD = "any method"


def in_mm(label: str) -> str:
    """The head of a length."""
    return f"{label} (mm)"


def tolerance_in(unit: str) -> str:
    """The head of a tolerance."""
    return f"± {unit}"


def slip_head(how: str, names: Sequence[str]) -> str:
    """The head of what mistakes give: how they are made, and every name of theirs."""
    return f"{WAYS[how]}: {' / '.join(names)}"


def of_way(how: str, names: Sequence[str]) -> str:
    """Mistakes that are made in one way only."""
    return f"{WAYS[how]}: {'; '.join(names)}"


def unseen(mistakes: str) -> str:
    """Mistakes that give the right size."""
    return f"Right size, wrong angle (ask for the angle): {mistakes}."


def nothing(mistakes: str) -> str:
    """Mistakes that give 0, or less than a ten-thousandth of the right answer."""
    return f"0 or next to nothing: {mistakes}."


def multiple(times: str, mistakes: str) -> str:
    """Mistakes that multiply the right answer of every learner by one number."""
    return f"{times}\u00a0times the right answer: {mistakes}."


def for_everybody(values: Mapping[str, str]) -> str:
    """The values that all learners have, by their labels."""
    return f"For everybody: {'; '.join(f'{label} = {value}' for label, value in values.items())}."


def drawn_from(number: int, of: int) -> str:
    """The head of a column of values to be drawn, one of so many, where learners have different ones."""
    return DRAWN_FROM if of == 1 else f"{DRAWN_FROM} {number}"


def span(first: int, last: int) -> str:
    """Pages of a file."""
    return f"page {first}" if first == last else f"pages {first}–{last}"


def page_of(page: int, of: int) -> str:
    """Which page of the key this is."""
    return f"page {page} of {of}"


def heading(topic: str, tier: str, method: str) -> str:
    """What the key belongs to."""
    return f"{TITLE}: {topic}, {tier.lower()}, {method.lower()}"


def back(code: str) -> str:
    """How to get the same set again."""
    return (
        f"To print this set or its key again, open the page “Class set”. Type code {code}, or the code of any of its "
        "sheets, and the number of learners."
    )


def page_ranges(sheets: str, overlays: str) -> str:
    """Which pages of the file are what."""
    sentence = f"In this file: problem sheets on {sheets}"
    return sentence + (f", overlays on {overlays}, then this key." if overlays else ", then this key.")


def hand_tolerance(*, angled: bool = True) -> str:
    """Where the tolerance comes from; ``angled``: the sum's end is found, else an arrow between two angles."""
    if not angled:
        return (
            "± contains 95 of 100 careful drawings in which the length is fixed by two angles marked with a "
            "protractor. Up to twice that: look again. Calculated answers: ± 1 %."
        )
    return (
        "± contains 95 of 100 careful drawings of this problem (the ellipse on the overlay). If size and angle are "
        "both off, the ellipse counts. Up to twice that: look again. Calculated answers: ± 1 % and ± 0.5°."
    )


OWN_TOLERANCE = "± is the tolerance set for this class. Up to twice that: look again."


def marks(first: int, length: int, angle: int, *, angled: bool = True) -> str:
    """What each step is worth; ``angled``: an angle is asked for."""
    whole = first + length + angle
    total = "1 mark" if whole == 1 else f"{whole} marks"
    if not angled:
        return f"{total}: first step {first}, size {length + angle}. No angle is asked for."
    return f"{total}: first step {first}, length {length}, angle {angle}."


def lengths_at(open_scale: bool) -> str:
    """What the lengths belong to."""
    if open_scale:
        return (
            "Learners choose the scale. Lengths in this key and the overlays use the largest scale that fits the "
            "paper."
        )
    return "Lengths in mm are for sheets printed at 100 %."


IN_BRACKETS = "In brackets: too close to the right answer to be recognised by size only. Ask for the angle."


def other_unit(unit: str) -> str:
    """The unit of a table's figures."""
    return f"Sizes in {unit}."


def legend(names: Sequence[str]) -> str:
    """The mistakes of one column."""
    return "; ".join(names)


def heading_description(code: str) -> str:
    """A page of the key for someone who cannot see it."""
    return f"Table of the key of set {code}."
