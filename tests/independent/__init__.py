"""Learners who know nothing of the catalogue: problems, right answers, hands and mistakes written from descriptions.

Nothing here imports how pycore solves, draws or marks: a problem's values come from its form by way of `pycore.api`,
and everything else is worked out anew with cmath and numpy. Phasors are complex, counted anticlockwise in degrees from
the line that the sheet names; lengths on paper are millimetres.
"""
