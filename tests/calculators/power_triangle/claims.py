"""What the tests hold the teaching of power-triangle to."""

CLAIMS = {
    "support": lambda form: not form["target"],
    "core": lambda form: bool(form["target"]) and form["phases"] == "1",
    "stretch": lambda form: bool(form["target"]) and form["phases"] == "3",
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("5 kVA", "0.600 lagging")
"""Answers of the exit question, by this test's own arithmetic: 3, 4, 5."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
