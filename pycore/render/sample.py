"""The piece of a line beside a label: what makes the form the key to the drawing.

Ticks tell the line first, its ink second. The ink's class comes with each answer, because
the colours of the lines are the reader's choice.
"""

from pycore.render.elements import Marks, Markup, h

INKS = {"i1": "brown", "i2": "black", "i3": "grey"}
"""Inks before any answer says otherwise: IEC 60445, with blue for what is summed."""


def ticks_of(name: str) -> int:
    """How many ticks a phasor's line carries: as many as the figure its name ends with, up to 3."""
    return min(int(name[-1]), 3) if name[-1:].isdigit() else 0


def sample(name: str, ink: str = "") -> Markup:
    """A short piece of the line of the phasor ``name``, for the eye only."""
    ink = ink or INKS.get(name, "blue")
    count = ticks_of(name)
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
