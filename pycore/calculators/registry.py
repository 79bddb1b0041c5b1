"""Every calculator by its slug, in the order in which the course meets them."""

from typing import Any

from pycore.calculators.add_phasors import AddPhasors
from pycore.calculators.harmonics_in_the_neutral import HarmonicsInTheNeutral
from pycore.calculators.neutral_current import NeutralCurrent
from pycore.calculators.open_neutral import OpenNeutralPage
from pycore.calculators.parallel_circuit import ParallelCircuit
from pycore.calculators.power_triangle import PowerTriangle
from pycore.calculators.sequence_components import SequenceComponents
from pycore.calculators.series_circuit import SeriesCircuit
from pycore.calculators.star_and_delta import StarAndDelta
from pycore.calculators.sum_page import SumPage
from pycore.calculators.two_wattmeters import TwoWattmeters

PAGES: tuple[SumPage[Any], ...] = (
    AddPhasors(),
    SeriesCircuit(),
    ParallelCircuit(),
    PowerTriangle(),
    StarAndDelta(),
    NeutralCurrent(),
    HarmonicsInTheNeutral(),
    OpenNeutralPage(),
    TwoWattmeters(),
    SequenceComponents(),
)
CALCULATORS = {page.slug: page for page in PAGES}
