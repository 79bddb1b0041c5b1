"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.sequence_components import words
from pycore.forms.common import SHARED
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields

NAMES = ("p1", "p2", "p3")
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, f"L{number}", "phasor", "values", default, help=words.HELP if number == 3 else "",
              sample=f"i{number}")
        for number, (name, default) in enumerate(zip(NAMES, ("30 at 0", "20 at -120", "12 at 90"), strict=True), 1)
    ),
    choice_field("part", words.PART, "method", "zero", words.PARTS),
    choice_field("sets", words.SETS_SHEET, "picture", "no", words.SETS_CHOICE),
    choice_field("unit", words.UNIT, "loads", "A", words.UNITS),
    SHARED["names"],
    SHARED["colours"],
    *drawing_fields("A", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
