"""What the tests hold the teaching of series-circuit to."""

CLAIMS = {
    "support": lambda form: "Ω" in form["l"] and form["supply"].endswith(" A"),
    "core": lambda form: "mH" in form["l"] and form["frequency"] == "50",
    "stretch": lambda form: "+" in form["r"] and form["frequency"] in ("50", "60"),
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("2 A", "50 Ω")
"""Answers of the exit question, by this test's own arithmetic: 3, 4, 5."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
