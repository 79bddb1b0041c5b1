"""What the tests hold the teaching of add-phasors to."""

from calculators.claims import whole

CLAIMS = {
    "support": lambda form: whole(form, "p1", "p2") and not form["p3"],
    "core": lambda form: bool(form["p3"]) and form["combine"] == "sum",
    "stretch": lambda form: form["combine"] == "difference",
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("13.0 A", "22.6°")
"""Answers of the exit question, by this test's own arithmetic: 5, 12, 13."""
WITHOUT_RIG = "phasors by themselves: there is nothing to read at a rig"
"""Why there is no recording sheet; "" if there is one."""
