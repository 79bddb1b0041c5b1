"""Every calculator by its slug, in the order in which the course meets them."""

from pycore.calculators.neutral_current import NeutralCurrent

CALCULATORS = {calculator.slug: calculator for calculator in (NeutralCurrent(),)}
