"""What a form says besides its values, checked."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from pycore.errors import Fault
from pycore.forms.conventions import MARKS
from pycore.forms.fields import Field, is_example
from pycore.forms.printed import read_printed
from pycore.forms.reading import Reader
from pycore.forms.title_block import read_by_hand, read_place
from pycore.quantity import NumberFormat, writing_for
from pycore.sheet.kinds import POINT, TWO
from pycore.sheet.styles import OWN_PAPER


@dataclass(frozen=True, slots=True)
class SheetProblem:
    """Choices by name, scale (units per cm, None: chosen to fit), title block, number format, texts as typed, and
    faults that still allow an answer."""

    scale: float | None
    place: str
    form: Mapping[str, str]
    choices: Mapping[str, str]
    typed: Mapping[str, str]
    writing: NumberFormat
    is_example: bool
    faults: tuple[Fault, ...] = ()
    second: float | None = None
    """Units per cm of the companions; None: chosen to fit, or none are drawn."""

    def __getitem__(self, name: str) -> str:
        return self.choices[name]


def read_sheet(
    reader: Reader, fields: Sequence[Field], sizes: Sequence[float], unit: str, second_unit: str = "", *,
    computed: bool = False,
) -> SheetProblem:
    """Read everything besides a page's values; call it after the values were read.

    ``sizes`` (SI) and their ``unit`` set the number format. ``second_unit``: that of companions, if any. ``computed``:
    the sizes drawn were calculated, not typed. Raises InputError with every fault, including those of the values.
    """
    choices = {field.name: reader.choice(field.name) for field in fields if field.kind == "choice"}
    if choices["own-paper"]:
        # What is chosen for the printed sheet waits in the form; nothing is drawn on the learner's paper already.
        start = POINT if choices["start"] == TWO else choices["start"]
        own = {"paper": choices["own-paper"], "orientation": choices["own-way"], "print": OWN_PAPER, "start": start}
        choices |= own
    else:
        read_printed(reader, choices)
    scale = reader.positive("scale", unit)
    second = reader.positive("second-scale", second_unit) if second_unit else None
    place = reader.optional(lambda: read_place(reader)) or ""
    printed = reader.optional(lambda: read_by_hand(reader, choices["paper"]))
    reader.finish()
    mark = MARKS[choices["decimal"]]
    writing = replace(writing_for(sizes, unit, mark), computed=computed)
    values = [field for field in fields if field.group in ("values", "loads")]
    typed = {field.name: reader.text(field.name) for field in fields}
    return SheetProblem(
        scale, place, printed, choices, typed, writing, is_example(typed, values), tuple(reader.passed),
        second,
    )  # fmt: skip
