"""The fields of the form: every key of its links, for ever."""

from dataclasses import replace

from pycore.calculators.harmonics_in_the_neutral import words
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.forms.common import SHARED
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field
from pycore.sums.fields import drawing_fields

ORDERS = (3, 5, 7, 9, 11, 13)
FIELDS: tuple[Field, ...] = (
    Field("i1", "L1", "quantity", "values", "10", "A", sample="i1"),
    Field("i2", "L2", "quantity", "values", "6", "A", sample="i2"),
    Field("i3", "L3", "quantity", "values", "4", "A", sample="i3"),
    *(
        Field(f"h{order}", words.share_label(order), "phasor", "values" if order == 3 else "more",
              "20" if order == 3 else "", "%",
              help=words.SHARE_HELP if order == ORDERS[-1] else "")
        for order in ORDERS
    ),
    choice_field("drawn", words.DRAWN, "method", "3", tuple((str(o), words.order_option(o)) for o in (1, *ORDERS))),
    choice_field("stated", words.STATED, "loads", "fundamental", words.STATEDS),
    choice_field("of", words.OF, "loads", "fundamental", words.OFS),
    SHARED["a1"],
    # Links of version 1 mean lags of 20° and 30° where they name none; nobody saw these, as they lie behind a fold.
    replace(SHARED["a2"], before=(("1", "20"),)), replace(SHARED["a3"], before=(("1", "30"),)),
    SHARED["names"], SHARED["colours"],
    *drawing_fields("A", "0°", TIP_TO_TAIL, "right"),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
