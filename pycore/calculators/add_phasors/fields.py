"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.add_phasors import words
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields

MOST, HELPED = 6, 3
FIELDS: tuple[Field, ...] = (
    Field("p1", words.label(1), "phasor", "values", "20 at 0", sample="i1"),
    Field("p2", words.label(2), "phasor", "values", "15 at 60", sample="i2"),
    *(
        Field(f"p{number}", words.label(number), "phasor", "values", sample=f"i{number}",
              help=words.HELP if number == HELPED else "")
        for number in range(3, MOST + 1)
    ),
    choice_field("combine", words.COMBINE, "method", "sum", words.COMBINES),
    choice_field("unit", words.UNIT, "loads", "A", words.UNITS),
    *drawing_fields("A", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
