"""The short line beside a label, which makes the form the key to the drawing.

Ticks identify the line first, its ink second. The class of the ink comes with each answer, because the user chooses the
colours of the lines.
"""

from pycore.forms import conventions
from pycore.render.elements import Marks, Markup, h

INKS = {**conventions.PLAIN_INKS, **conventions.inks("iec")}
"""Inks before the first answer."""


def sample(name: str, ink: str = "") -> Markup:
    """Return a short piece of the line of the phasor ``name``, hidden from screen readers."""
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
