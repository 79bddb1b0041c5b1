"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.construction import METHOD
from pycore.forms.common import SHARED
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields

NAMES = ("z1", "z2", "z3")
DEFAULTS = ("20", "40", "80")
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, words.load_label(f"L{number}"), "phasor", "values", DEFAULTS[number - 1], "Ω",
              help=words.LOAD_HELP, sample=f"i{number}")
        for number, name in enumerate(NAMES, start=1)
    ),
    Field("volts", words.VOLTAGE, "quantity", "values", "400", "V"),
    SHARED["sequence"],
    SHARED["names"],
    SHARED["colours"],
    *drawing_fields("V", words.PHASE, METHOD, "up", words.METHODS, "all"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
