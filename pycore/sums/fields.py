"""Form fields that every page with a sum has: method, paper, print and wording."""

from dataclasses import replace

from pycore.accuracy.hand import HANDS
from pycore.constructions.methods import THE_SUM, TIP_TO_TAIL
from pycore.forms.common import OWN_PAPER_FIELDS, SHARED, newly
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.words import form as words
from pycore.words import sums as sum_words

_PICTURE = ("parallels", "protractor", "first", "rotation")
_SHEET = ("sheet", "start", "mirror", "print", "paper", "orientation")
_SCALES = ("steps", "one-scale")
_WORDS = ("decimal", "angles")
_HAND = ("hand",)
_BLOCK = ("place", "code", "who", "group", "date")


def drawing_fields(
    unit: str, zero: str, method: str = TIP_TO_TAIL, first: str = "right",
    methods: tuple[tuple[str, str], ...] = words.METHODS,
    steps_before: str = "125", second: str = "",
) -> tuple[Field, ...]:
    """Return the fields for drawing, paper and wording, in order.

    ``unit``: of what is drawn by default, for the scale's label. ``zero``: what has the first direction if the first
    phasor has not.
    ``first``: the default first direction. ``steps_before``: the scales on offer in links before version 3.
    ``second``: the unit of a second quantity's phasors, such as A, if there are any.
    """
    taken = {name: SHARED[name] for name in (*_PICTURE, *_SHEET, *OWN_PAPER_FIELDS, *_SCALES, *_WORDS, *_HAND, *_BLOCK)}
    taken["hand"] = replace(
        taken["hand"], options=tuple(choice for choice in taken["hand"].options if choice.value in HANDS)
    )
    taken["steps"] = newly(taken["steps"], steps_before)
    return (
        choice_field("method", words.METHOD, "method", method, methods),
        choice_field("order", sum_words.ORDER, "picture", "", ((("", words.BEST_FIT)), *sum_words.ORDERS)),
        taken["parallels"],
        taken["protractor"],
        replace(taken["first"], default=first),
        choice_field(
            "reference", words.REFERENCE, "picture", "zero", (("zero", zero), ("current", sum_words.FIRST_PHASOR))
        ),
        taken["rotation"],
        choice_field("resultant", sum_words.RESULTANT, "picture", THE_SUM, sum_words.RESULTANTS),
        *(taken[name] for name in _SHEET),
        Field("scale", sum_words.scale_label(unit), "quantity", "scale"),
        *((Field("second-scale", sum_words.scale_label(second), "quantity", "scale"),) if second else ()),
        *(taken[name] for name in OWN_PAPER_FIELDS),
        *(taken[name] for name in (*_SCALES, *_WORDS, *_HAND)),
        SHARED["wording"],
        *(taken[name] for name in _BLOCK),
    )
