"""Three short pages for learners: reading a protractor; cm, mm and amperes; sine and cosine."""

HOW_TO_PRINT = "Print this page from the browser menu, or with Ctrl+P."

PROTRACTOR_SLUG = "reading-a-protractor"
PROTRACTOR_TITLE = "Reading a protractor"
PROTRACTOR_LEAD = (
    "A protractor has two scales that run in opposite directions. One question tells you which scale to use."
)
PROTRACTOR_DESCRIPTION = (
    "How to place and read a protractor of 180° or 360°: centre, zero line, and which of the two scales to use."
)
HALF = "The half circle, 180°"
HALF_STEPS = (
    "Put the centre mark on the point where the angle is: the common point, or the tip in tip to tail.",
    "Put the zero line along your line. The zero line is not the straight edge: on most protractors the edge is a "
    "little below it.",
    "Find the 0 that is on your line. Use only the scale that starts there.",
    "Ask yourself: is the angle more or less than a right angle? Here it is more, so it is 120°, not 60°.",
    "If a line is too short to reach the scale, make it longer with a faint pencil line.",
)
HALF_PICTURE = "An angle of 120 degrees on a half circle"
HALF_SHOWN = (
    "A protractor whose zero line is on a line to the right. A second line crosses its rim where the inner scale, "
    "which starts at 0 on the first line, reads 120 and the outer scale 60. Its straight edge is below the zero line."
)
FULL = "The full circle, 360°"
FULL_STEPS = (
    "Centre on the point, zero line on your line, as before.",
    "The inner scale goes anticlockwise all the way round: 120°, 240°, back to 0.",
    "A half-circle protractor has no 240°. Turn 120° the other way instead: 360° − 240° = 120°.",
)
FULL_PICTURE = "An angle of 240 degrees on a full circle"
FULL_SHOWN = (
    "A full-circle protractor whose zero line is on a line to the right. A second line crosses its rim where the "
    "inner scale, which goes anticlockwise, reads 240 and the outer scale 120."
)
ZERO_LINE, EDGE, CENTRE = "zero line", "edge", "centre"

UNITS_SLUG = "centimetres-and-amperes"
UNITS_TITLE = "Centimetres, millimetres and amperes"
UNITS_LEAD = "One line, three ways to give its length. The scale on your sheet connects them."
UNITS_DESCRIPTION = (
    "How a length represents a current: at a scale of 1 cm = 2 A, a line of 92 mm (9.2 cm) represents 18.4 A."
)
ONE_LINE = "One line, three numbers"
ONE_LINE_STEPS = (
    "1 cm is 10 mm. To go from mm to cm, divide by 10: 92 mm = 9.2 cm.",
    "The scale says what 1 cm represents. Here 1 cm = 2 A, so 9.2 cm × 2 A per cm = 18.4 A.",
    "The other way, divide: 18.4 A ÷ 2 A per cm = 9.2 cm, which is 92 mm.",
)
RULER_PICTURE = "A line of 92 mm on a ruler, and the same line in amperes"
RULER_SHOWN = (
    "An arrow from the ruler’s zero mark to 9.2 cm. Below the ruler is a scale in amperes, 2 A for each centimetre: "
    "the tip of the arrow is at 18.4 A."
)
WATCH = "Common mistakes"
WATCH_STEPS = (
    "Start at the ruler’s 0 mark. On most rulers it is not the end of the ruler.",
    "Measure to the point of the arrowhead, not to its wide end.",
    "10 times too long or too short? Check whether you mixed up cm and mm.",
    "The answer to “what current?” is in amperes. The length is only a step on the way.",
)
TRY = "Try it"
TRY_HEAD = (("mm",), ("cm",), ("A, at 1 cm = 2 A",))
TRY_ROWS = (("50", "5.0", "10"), ("56", "5.6", "11.2"), ("123", "12.3", "24.6"))

SINE_SLUG = "sine-and-cosine"
SINE_TITLE = "Sine and cosine"
SINE_LEAD = (
    "They give the two components of an arrow. Which one belongs to which axis depends on where the angle starts."
)
SINE_DESCRIPTION = "How sine and cosine give the two components of a phasor, and which one belongs to which axis."
FROM_RIGHT = "The angle is measured from the horizontal axis"
FROM_RIGHT_STEPS = (
    "The side next to the angle is the horizontal component: 10 A × cos 30° = 8.66 A.",
    "The side opposite the angle is the vertical component: 10 A × sin 30° = 5 A.",
)
FROM_UP = "The angle is measured from the vertical axis"
FROM_UP_STEPS = (
    "Now the side next to the angle is the vertical component: 10 A × cos 30° = 8.66 A.",
    "The side opposite it is the horizontal component: 10 A × sin 30° = 5 A.",
)
RULE = "One rule for both"
RULE_STEPS = (
    "Cosine belongs to the axis that the angle is measured from. Sine belongs to the other axis.",
    "Components to the left or downward are negative.",
    "Check: 8.66² + 5² ≈ 100 = 10². The two components and the arrow make a right-angled triangle.",
    "Set the calculator to degrees: sin 30° must be 0.5.",
)
RIGHT_PICTURE, UP_PICTURE = "Components of an arrow, angle from the horizontal axis", (
    "Components of an arrow, angle from the vertical axis"
)
SHOWN_PARTS = (
    "An arrow of 10 A starts where two axes cross, 30 degrees from the axis {axis}. Its component along that axis is "
    "8.66 A, marked cos; its component along the other axis is 5 A, marked sin."
)
AXES = {"right": "to the right", "up": "upward"}


def parts_shown(axis: str) -> str:
    """A picture of the two parts for someone who cannot see it."""
    return SHOWN_PARTS.format(axis=AXES[axis])


PAGES = ((PROTRACTOR_SLUG, PROTRACTOR_TITLE), (UNITS_SLUG, UNITS_TITLE), (SINE_SLUG, SINE_TITLE))
