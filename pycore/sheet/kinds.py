"""Kinds of sheet, and what a problem sheet shows at the start: option values of the form, which stand in links."""

CONSTRUCTION, PROBLEM, OVERLAY = "construction", "problem", "overlay"
KINDS = (PROBLEM, CONSTRUCTION, OVERLAY)
"""All kinds, in the order of a file that contains all of them."""

NOTHING, POINT, TWO = "no", "yes", "two"
"""What is drawn for the learner on a problem sheet: nothing, the starting point, two phasors as well."""
