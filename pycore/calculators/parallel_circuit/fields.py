"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.parallel_circuit import words
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields
from pycore.words import circuits as circuit_words

MOST = 4
DEFAULTS = ("60 Ω", "20 Ω + 120 mH", "47 µF", "")
FIELDS: tuple[Field, ...] = (
    *(
        Field(f"b{number}", words.label(number), "phasor", "values", DEFAULTS[number - 1], sample=f"i{number}",
              help=words.HELP if number == 1 else "")
        for number in range(1, MOST + 1)
    ),
    Field("supply", words.SUPPLY, "phasor", "values", "230 V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    *drawing_fields("A", words.REFERENCE, second="V"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
