"""What the tests hold the teaching of open-neutral to."""

CLAIMS = {
    "support": lambda form: all(int(form[name]) % 10 == 0 for name in ("z1", "z2", "z3")),
    "core": lambda form: "j" not in form["z1"] + form["z2"] + form["z3"],
    "stretch": lambda form: (form["z1"] + form["z2"] + form["z3"]).count("j") == 1,
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ("200.0 V",)
"""Answers of the exit question, by this test's own arithmetic."""
WITHOUT_RIG = "a neutral is never opened on a live rig, so nothing is read there"
"""Why there is no recording sheet; "" if there is one."""
