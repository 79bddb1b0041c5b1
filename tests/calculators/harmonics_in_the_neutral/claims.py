"""What the tests hold the teaching of harmonics-in-the-neutral to."""

from calculators.claims import whole

CLAIMS = {
    "support": lambda form: form["drawn"] == "3" and whole(form, "i1", "i2", "i3"),
    "core": lambda form: form["drawn"] == "1" and bool(form["h3"]),
    "stretch": lambda form: form["drawn"] == "3",
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("12.0 A", "10.8 A")
"""Answers of the exit question, by this test's own arithmetic: 3 · 4, √116."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
