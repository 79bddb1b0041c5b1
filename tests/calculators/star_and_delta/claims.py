"""What the tests hold the teaching of star-and-delta to."""

CLAIMS = {
    "support": lambda form: form["connection"] == "star" and form["z1"] == form["z3"],
    "core": lambda form: form["connection"] == "delta" and "j" not in form["z1"] + form["z2"],
    "stretch": lambda form: form["connection"] == "delta",
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("20.00 A in each", "34.64 A")
"""Answers of the exit question, by this test's own arithmetic: √3 · 20."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
