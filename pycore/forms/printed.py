"""The print style of a sheet, read from a form."""

from collections.abc import Mapping

from pycore.errors import Fault, Offer
from pycore.forms.reading import Reader
from pycore.sheet.styles import TOO_SMALL_FOR_READING, USUAL
from pycore.words import moves_list


def read_printed(reader: Reader, choices: Mapping[str, str]) -> None:
    """Check the print style: easy reading needs paper that is large enough; on smaller paper the usual style is used,
    with a message."""
    paper = choices["paper"]
    if choices["print"] == USUAL or paper not in TOO_SMALL_FOR_READING:
        return
    offers = tuple(Offer(moves_list.use_paper(larger), (("paper", larger),)) for larger in ("A4", "A3"))
    reader.passed.append(Fault("print", choices["print"], moves_list.needs_larger(paper), offers=offers))
