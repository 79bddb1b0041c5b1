"""What the tests hold the teaching of two-wattmeters to."""

CLAIMS = {
    "support": lambda form: "-" not in form["w1"] + form["w2"],
    "core": lambda form: "-" not in form["w1"] + form["w2"],
    "stretch": lambda form: (form["w1"] + form["w2"]).count("-") == 1,
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("1500 W", "0.327")
"""Answers of the exit question, by this test's own arithmetic: 1500 W over √(1500² + 3 · 2500²)."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
