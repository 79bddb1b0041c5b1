"""What the tests hold the teaching of neutral-current to."""

from calculators.claims import whole

CLAIMS = {
    "support": lambda form: whole(form, "i1", "i2", "i3") and form["start"] == "two",
    "core": lambda form: {form["a1"], form["a2"], form["a3"]} == {"0"},
    "stretch": lambda form: form["further"] == "zero",
}
"""What each level's sentence claims, seen in the forms of its problems."""
EXIT = ()
"""The question and its answer are written out in the plan: 10 A in two lines."""
WITHOUT_RIG = ""
"""Why there is no recording sheet; "" if there is one."""
