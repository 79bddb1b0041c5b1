"""The power triangle and the correction of the power factor."""
