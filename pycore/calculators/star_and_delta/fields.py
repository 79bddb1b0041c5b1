"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.star_and_delta import words
from pycore.forms.common import SHARED
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields

NAMES = ("z1", "z2", "z3")
NEXT = {1: 2, 2: 3, 3: 1}
BEFORE = {1: 3, 2: 1, 3: 2}
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, words.load_label(number), "phasor", "values", default, "Ω",
              help=words.LOAD_HELP if number == 3 else "", sample=f"i{number}")
        for number, (name, default) in enumerate(zip(NAMES, ("20", "25", "40"), strict=True), start=1)
    ),
    Field("volts", words.VOLTAGES["line"], "quantity", "values", "400", "V"),
    choice_field("connection", words.CONNECTION, "method", "delta", words.CONNECTIONS),
    choice_field("line", words.LINE, "loads", "1",
                 tuple((str(n), words.line_option(f"L{n}", f"L{NEXT[n]}")) for n in NEXT)),
    choice_field("known", words.KNOWN, "loads", "line", words.KNOWN_VOLTAGES),
    SHARED["sequence"],
    SHARED["names"],
    *drawing_fields("A", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
