"""Methods, orders, tools for parallels and resultants: option values of the form, which stand in links for ever."""

PARALLELOGRAM, TIP_TO_TAIL, COMPONENTS = "parallelogram", "tip-to-tail", "components"
METHODS = (PARALLELOGRAM, TIP_TO_TAIL, COMPONENTS)

FIRST_PAIR = "12"
"""The order in which phasors 1 and 2 are combined first; also the order of a method that has only one."""
PAIR_ORDERS = (FIRST_PAIR, "13", "23")
"""The orders of three phasors: each names the two that are combined first."""

BY_PROTRACTOR, BY_SET_SQUARES, BY_COMPASSES = "protractor", "set-squares", "compasses"
"""The tools with which the sides of a parallelogram are drawn parallel."""

THE_SUM, THE_RETURNING = "sum", "returning"
"""What is drawn as the result: the sum, or the phasor of the same size in the opposite direction."""
