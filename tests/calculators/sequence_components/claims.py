"""What the tests hold the teaching of sequence-components to."""

from calculators.claims import whole

CLAIMS = {
    "support": lambda form: form["part"] == "zero" and whole(form, "p1", "p2", "p3"),
    "core": lambda form: form["part"] in ("zero", "negative"),
    "stretch": lambda form: form["part"] in ("zero", "positive", "negative"),
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("10.0 A, 10.0 A and 10.0 A", "30.0 A")
"""Answers of the exit question, by this test's own arithmetic."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
