"""The fields of the form: every key of its links, for ever."""

from dataclasses import replace

from pycore.calculators.two_wattmeters import words
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields
from pycore.words.form import METHODS

FIELDS: tuple[Field, ...] = (
    choice_field("known", words.KNOWN, "method", "load", words.KNOWNS),
    Field("volts", words.VOLTS, "quantity", "values", "400", "V", shown_when=(("known", "load"),)),
    Field("amps", words.AMPS, "quantity", "values", "10", "A", shown_when=(("known", "load"),)),
    Field("lag", words.LAG, "angle", "values", "40", "°", help=words.LAG_HELP, shown_when=(("known", "load"),)),
    Field("w1", words.reading_label(1, 1), "quantity", "values", "", "W", help=words.READING_HELP,
          shown_when=(("known", "readings"),)),
    Field("w2", words.reading_label(2, 3), "quantity", "values", "", "W", shown_when=(("known", "readings"),)),
    # A link of version 1 that does not name them means meters in L1 and L3; the page opens with the usual labelling.
    replace(choice_field("meters", words.METER_LINES, "loads", "12", words.METER_LINE_OPTIONS), before=(("1", "13"),)),
    choice_field("balanced", words.BALANCED, "loads", "yes", words.BALANCEDS),
    *drawing_fields("VA", words.ZERO, TIP_TO_TAIL, "right", METHODS[1:]),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
