"""A page of the test's own: voltages added with a current beside them, as the shelf's circuits have it."""

from collections.abc import Mapping
from dataclasses import replace

from pycore.calculators.add_phasors.case import AddCase, read_phasors
from pycore.calculators.add_phasors.circuit import EnteredPhasor
from pycore.calculators.add_phasors.fields import MOST
from pycore.calculators.add_phasors.page import AddPhasors
from pycore.constructions.construction import Arm
from pycore.forms.fields import default_form
from pycore.forms.reading import Reader
from pycore.quantity import writing_for
from pycore.sums.fields import drawing_fields
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import CompanionPhasors
from pycore.words.phrase import Symbol
from pycore.words.sums import SumWords

CURRENTS = SumWords("current", "currents", "amperes")
OWN = (*(f"p{number}" for number in range(1, MOST + 1)), "combine", "unit")
FIELDS = (
    *(field for field in AddPhasors.fields if field.name in OWN),
    *drawing_fields("V", "the current", second="A"),
)


class BesideCase(AddCase):
    """Voltages in the arms; the currents stand beside them."""

    slug = "beside"
    fields = FIELDS

    def __init__(self, problem: SheetProblem, given: tuple[EnteredPhasor, ...], companions: CompanionPhasors) -> None:
        super().__init__(problem, given)
        tags = self.notation.tags | {arm.key: (Symbol("I", str(arm.number)),) for arm in companions.arms}
        self.notation = replace(self.notation, tags=tags, companions=companions)


class Beside(AddPhasors):
    """Adds voltages; ``currents`` (size, angle) stand beside them."""

    slug = "beside"
    fields = FIELDS

    def __init__(self, *currents: tuple[float, float]) -> None:
        arms = tuple(Arm(f"c{n}", n, size, angle) for n, (size, angle) in enumerate(currents, start=1))
        writing = writing_for([arm.size for arm in arms], "A")
        self.companions = CompanionPhasors(arms, writing, CURRENTS, ("All voltages are counted from it.",))

    def case(self, form: Mapping[str, str]) -> BesideCase:
        """The form as a case with its currents."""
        whole = {**default_form(FIELDS), "unit": "V", **form}
        reader = Reader(whole, {field.name: field for field in FIELDS})
        given = read_phasors(reader, "V")
        sizes = [float(f"{one.size:.4g}") for one in given]
        return BesideCase(read_sheet(reader, FIELDS, sizes, "V", "A"), given, self.companions)
