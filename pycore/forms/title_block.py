"""The texts of the title block, read from a form."""

from collections.abc import Mapping

from pycore import lettering
from pycore.forms.reading import Reader
from pycore.lettering.held import own
from pycore.sheet.lettered import width_of
from pycore.sheet.title_block import LEAST_TYPED, lower_cells
from pycore.words import inputs

PLACE_WIDTH, PLACE_CAPITALS = 85.0, 2.5
LONGEST_PLACE = 60


def read_place(reader: Reader) -> str:
    """Return the place for the title block; "" with a fault if it cannot be printed."""
    typed = " ".join(reader.text("place").split())
    if len(typed) > LONGEST_PLACE:
        reader.fault("place", inputs.too_long_text(reader.label("place"), LONGEST_PLACE))
        return ""
    missing = lettering.missing(typed, "regular")
    if missing:
        reader.fault("place", inputs.no_such_letters(reader.label("place"), missing), missing)
        return ""
    if width_of(typed, PLACE_CAPITALS) > PLACE_WIDTH:
        reader.fault("place", inputs.too_wide_text(reader.label("place")))
        return ""
    return typed


BY_HAND = ("who", "group", "date")
LONGEST_BY_HAND = 40


def read_by_hand(reader: Reader, paper: str) -> dict[str, str]:
    """Return name, group and date."""
    printed: dict[str, str] = {}
    widths = dict(zip(BY_HAND, lower_cells(paper), strict=True))
    for name in BY_HAND:
        typed = " ".join(reader.text(name).split())
        if len(typed) > LONGEST_BY_HAND:
            reader.fault(name, inputs.too_long_text(reader.label(name), LONGEST_BY_HAND))
        elif own(typed) and width_of(typed, LEAST_TYPED) > widths[name]:
            reader.fault(name, inputs.too_wide_text(reader.label(name)))
        printed[name] = typed
    return printed


def texts_by_hand(form: Mapping[str, object]) -> tuple[str, ...]:
    """Return what a form has for these cells, as it is printed; none of what is too long for one."""
    typed = (" ".join(text.split()) for text in map(form.get, BY_HAND) if isinstance(text, str))
    return tuple(text for text in typed if len(text) <= LONGEST_BY_HAND)
