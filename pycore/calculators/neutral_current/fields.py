"""The form of the neutral-current page: every key of its links, for ever."""

from collections.abc import Mapping

from pycore.constructions.methods import PARALLELOGRAM, THE_SUM
from pycore.forms.common import OWN_PAPER_FIELDS, SHARED, labels_of, lines_of, sequence_options
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.words import accuracy
from pycore.words import form as words


def options_of(form: Mapping[str, str]) -> dict[str, dict[str, str]]:
    """Options that name lines, by field and value, as a form's line names have it."""
    one, two, three = lines_of(form)
    return {
        "order": {
            "12": words.two_lines(one, two),
            "13": words.two_lines(one, three),
            "23": words.two_lines(two, three),
        },
        "sequence": sequence_options(form),
        "reference": {"voltage": words.voltage_of(one)},
        "further": {"zero": words.zero_by(three)},
    }


_LABELS = labels_of({})
_OPTIONS = options_of({})
_OWN_HAND = (("hand", "own"),)

FIELDS: tuple[Field, ...] = (
    Field("i1", _LABELS["i1"], "quantity", "values", "18.4", "A", sample="i1"),
    Field("i2", _LABELS["i2"], "quantity", "values", "11.2", "A", sample="i2"),
    Field("i3", _LABELS["i3"], "quantity", "values", "24.6", "A", sample="i3"),
    Field("measured", words.METER, "readings", "values", "", "A", help=words.METER_HELP),
    *(SHARED[name] for name in ("a1", "a2", "a3", "sequence")),
    choice_field("method", words.METHOD, "method", PARALLELOGRAM, words.METHODS),
    choice_field("order", words.ORDER, "picture", "", (("", words.BEST_FIT), *_OPTIONS["order"].items())),
    *(SHARED[name] for name in ("parallels", "protractor", "first")),
    choice_field(
        "reference", words.REFERENCE, "picture", "current",
        (("current", words.FIRST_CURRENT), *_OPTIONS["reference"].items()),
    ),
    SHARED["rotation"],
    choice_field("resultant", words.RESULTANT, "picture", THE_SUM, words.RESULTANTS),
    *(SHARED[name] for name in ("sheet", "start")),
    choice_field(
        "further", words.FURTHER, "sheet", "no", (("no", words.NO_FURTHER), *_OPTIONS["further"].items()),
        only=(("sheet", "problem"),),
    ),
    *(SHARED[name] for name in ("mirror", "print", "paper", "orientation")),
    Field("scale", words.SCALE, "quantity", "scale", "", "A"),
    *(SHARED[name] for name in (*OWN_PAPER_FIELDS, "steps", "one-scale", "names", "colours", "decimal", "angles")),
    Field("drawn", accuracy.DRAWN_FIELD, "length", "accuracy", "", "A", help=accuracy.DRAWN_HELP),
    SHARED["hand"],
    Field("hand-mm", accuracy.HAND_MM, "quantity", "accuracy", "0.5", "mm", shown_when=_OWN_HAND),
    Field("hand-degrees", accuracy.HAND_DEGREES, "quantity", "accuracy", "0.5", "°", shown_when=_OWN_HAND),
    Field("percent", accuracy.PERCENT, "quantity", "accuracy", "2", "%", help=accuracy.METER_HELP),
    Field("digits", accuracy.DIGITS, "quantity", "accuracy", "5"),
    Field("digit", accuracy.DIGIT, "quantity", "accuracy", "", "A", help=accuracy.DIGIT_HELP),
    choice_field("meters", accuracy.METERS, "accuracy", "several", accuracy.METER_SETS),
    *(SHARED[name] for name in ("wording", "place", "code", "who", "group", "date")),
)  # fmt: skip

BY_NAME = {field.name: field for field in FIELDS}
