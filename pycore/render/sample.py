"""The piece of a line beside a label: what makes the form the key to the drawing.

Ticks tell the line first, its ink second. The ink's class comes with each answer, because
the colours of the lines are the reader's choice.
"""

from pycore.forms import conventions
from pycore.render.elements import Marks, Markup, h

INKS = {**conventions.PLAIN_INKS, **conventions.inks("iec")}
"""Inks before any answer says otherwise."""


def sample(name: str, ink: str = "") -> Markup:
    """A short piece of the line of the phasor ``name``, for the eye only."""
    ink = ink or INKS.get(name, INKS["sum"])
    count = conventions.TICKS.get(name, 0)
    lines = [h("path", {"class": "sample-case", "d": "M1 8H35"}), h("path", {"class": "sample-line", "d": "M1 8H35"})]
    first = 18.0 - 2.75 * (count - 1)
    for index in range(count):
        foot = first + 5.5 * index
        lines.append(h("path", {"class": "sample-tick", "d": f"M{foot - 3:g} 13.5L{foot + 3:g} 2.5"}))
    marks: Marks = {
        "class": f"sample sample-{name} ink-{ink}", "data-sample": name, "viewBox": "0 0 36 16", "width": 36,
        "height": 16, "aria-hidden": "true", "focusable": "false",
    }  # fmt: skip
    return h("svg", marks, lines)
