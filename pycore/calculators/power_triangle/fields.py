"""The fields of the form: every key of its links, for ever."""

from pycore.calculators.power_triangle import words
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields
from pycore.words import circuits as circuit_words

FIELDS: tuple[Field, ...] = (
    Field("power", words.LOAD, "phasor", "values", "10 kW", help=words.HELP),
    Field("factor", words.FACTOR, "phasor", "values", "0.7 lag"),
    Field("target", words.TARGET, "phasor", "values", "0.95"),
    Field("voltage", words.VOLTAGE, "quantity", "values", "400", "V"),
    Field("frequency", circuit_words.FREQUENCY, "quantity", "values", "50", "Hz"),
    choice_field("phases", words.PHASES, "values", "3", words.PHASE_CHOICES),
    *drawing_fields("VA", words.REFERENCE),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
