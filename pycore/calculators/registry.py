"""Every calculator by its slug, in the order in which the course meets them."""

from typing import Any

from pycore.calculators.add_phasors import AddPhasors
from pycore.calculators.neutral_current import NeutralCurrent
from pycore.calculators.open_neutral import OpenNeutralPage
from pycore.calculators.sum_page import SumPage

PAGES: tuple[SumPage[Any], ...] = (AddPhasors(), NeutralCurrent(), OpenNeutralPage())
CALCULATORS = {page.slug: page for page in PAGES}
