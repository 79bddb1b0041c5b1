"""What the tests hold the teaching of parallel-circuit to."""

CLAIMS = {
    "support": lambda form: form["b2"].startswith("j") and not form["b3"],
    "core": lambda form: "mH" in form["b2"] and "µF" in form["b3"],
    "stretch": lambda form: "Ω + " in form["b2"],
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("12.5 A",)
"""Answers of the exit question, by this test's own arithmetic."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
