"""Three short pages for learners: reading a protractor; cm, mm and amperes; sine and cosine."""

HOW_TO_PRINT = "Print this page from the browser’s own menu, or with Ctrl and P."

PROTRACTOR_SLUG = "reading-a-protractor"
PROTRACTOR_TITLE = "Reading a protractor"
PROTRACTOR_LEAD = "Two scales run round it, in opposite directions. One question settles which of them to read."
PROTRACTOR_DESCRIPTION = "How to lay and read a protractor of 180° or 360°: centre, zero line, the right scale of two."
HALF = "The half circle, 180°"
HALF_STEPS = (
    "Put the centre mark on the point where the angle is: the common point, or the tip in tip to tail.",
    "Lay the zero line along your line. The zero line is not the straight edge: the edge lies a little below it.",
    "Find the 0 that lies on your line. Read the scale that starts there, and no other.",
    "Ask: is the angle more or less than a right angle? Here it is more, so it is 120°, not 60°.",
    "If a line is too short to reach the scale, make it longer with a faint pencil line.",
)
HALF_PICTURE = "An angle of 120 degrees on a half circle"
HALF_SHOWN = (
    "A protractor whose zero line lies on a line to the right. A second line crosses its rim where the inner scale, "
    "which starts at 0 on the first line, reads 120, and the outer scale 60. Its edge lies below the zero line."
)
FULL = "The full circle, 360°"
FULL_STEPS = (
    "Centre on the point, zero line on your line, as before.",
    "The inner scale runs against the clock all the way round: 120°, 240°, back to 0.",
    "A half circle cannot show 240°. Turn 120° the other way instead: 360° − 240° = 120°.",
)
FULL_PICTURE = "An angle of 240 degrees on a full circle"
FULL_SHOWN = (
    "A full-circle protractor whose zero line lies on a line to the right. A second line crosses its rim where the "
    "inner scale, counted against the clock, reads 240, and the outer scale 120."
)
ZERO_LINE, EDGE, CENTRE = "zero line", "edge", "centre"

UNITS_SLUG = "centimetres-and-amperes"
UNITS_TITLE = "Centimetres, millimetres and amperes"
UNITS_LEAD = "One line, three ways to say how long it is. The scale on your sheet joins them."
UNITS_DESCRIPTION = "How a length stands for a current: 92 mm = 9.2 cm = 18.4 A at 1 cm = 2 A."
ONE_LINE = "One line, three numbers"
ONE_LINE_STEPS = (
    "1 cm is 10 mm. To go from mm to cm, divide by 10: 92 mm = 9.2 cm.",
    "The scale says what 1 cm stands for. Here 1 cm = 2 A, so 9.2 cm × 2 A = 18.4 A.",
    "The other way, divide: 18.4 A ÷ 2 A = 9.2 cm, which is 92 mm.",
)
RULER_PICTURE = "A line of 92 mm on a ruler, and the same line in amperes"
RULER_SHOWN = (
    "An arrow from the ruler’s zero mark to 9.2 cm. Below the ruler a scale of amperes, 2 A to each centimetre: the "
    "arrow’s tip stands at 18.4 A."
)
WATCH = "Watch for these"
WATCH_STEPS = (
    "Start at the ruler’s 0 mark. On most rulers it is not the end of the wood or plastic.",
    "Measure to the point of the arrowhead, not to its wide end.",
    "10 times too long or too short? Look whether cm and mm were exchanged.",
    "The answer to “what current?” is in amperes. The length is only the way there.",
)
TRY = "Try it"
TRY_HEAD = (("mm",), ("cm",), ("A, at 1 cm = 2 A",))
TRY_ROWS = (("50", "5.0", "10"), ("56", "5.6", "11.2"), ("123", "12.3", "24.6"))

SINE_SLUG = "sine-and-cosine"
SINE_TITLE = "Sine and cosine"
SINE_LEAD = "They share a slanting arrow out between two axes. Where the angle starts settles which is which."
SINE_DESCRIPTION = "How sine and cosine give the two parts of a phasor, and which belongs to which axis."
FROM_RIGHT = "The angle counts from the axis to the right"
FROM_RIGHT_STEPS = (
    "The side next to the angle is the part to the right: 10 A × cos 30° = 8.66 A.",
    "The side across from the angle is the part upward: 10 A × sin 30° = 5 A.",
)
FROM_UP = "The angle counts from the axis upward"
FROM_UP_STEPS = (
    "Now the side next to the angle is the part upward: 10 A × cos 30° = 8.66 A.",
    "The side across from it is the part to the right: 10 A × sin 30° = 5 A.",
)
RULE = "One rule for both"
RULE_STEPS = (
    "Cosine belongs to the axis that the angle counts from. Sine belongs to the other.",
    "Parts to the left or downward take a minus sign.",
    "Check: 8.66² + 5² = 100 = 10². The two parts and the arrow make a right triangle.",
    "Set the calculator to degrees: sin 30° must show 0.5.",
)
RIGHT_PICTURE, UP_PICTURE = "Parts of an arrow, angle from the right", "Parts of an arrow, angle from upward"
SHOWN_PARTS = (
    "An arrow of 10 A leaves the crossing of two axes, 30 degrees from the one {axis}. Its part along that axis is "
    "8.66 A, marked cos; its part along the other is 5 A, marked sin."
)
AXES = {"right": "to the right", "up": "upward"}


def parts_shown(axis: str) -> str:
    """A picture of the two parts for someone who cannot see it."""
    return SHOWN_PARTS.format(axis=AXES[axis])


LISTED = (
    (PROTRACTOR_SLUG, PROTRACTOR_TITLE, "Centre, zero line, and which of two scales."),
    (UNITS_SLUG, UNITS_TITLE, "One line, three numbers."),
    (SINE_SLUG, SINE_TITLE, "Which part belongs to which axis."),
)
PAGES = tuple((slug, title) for slug, title, _ in LISTED)
