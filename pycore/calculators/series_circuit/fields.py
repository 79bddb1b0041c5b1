"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.series_circuit import words
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields
from pycore.words import circuits as circuit_words

FIELDS: tuple[Field, ...] = (
    Field("r", words.RESISTANCE, "phasor", "values", "30 Ω", "Ω", words.HELP),
    Field("l", words.INDUCTANCE, "phasor", "values", "0.2 H"),
    Field("c", words.CAPACITANCE, "phasor", "values", "100 µF"),
    Field("supply", words.SUPPLY, "phasor", "values", "230 V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    choice_field("drawn", words.DRAWN, "method", "voltages", words.DRAWINGS),
    *drawing_fields("V", words.REFERENCE, second="A"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
