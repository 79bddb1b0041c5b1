"""The catalogue of mistakes in words: what happened, plainly and kindly, and where to look.

Line names stand in {a}, {b}; {angle} and {scale} are written values.
"""

from collections.abc import Mapping

from pycore.words.circuit_mistakes import CIRCUITS
from pycore.words.phrase import Phrase, say

NAMES: dict[str, tuple[str, str]] = {
    "left-out": (
        "{a} was left out",
        "Count the arrows: every line that carries current has one.",
    ),
    "stopped": (
        "the drawing stops at the first diagonal, the sum of {a} and {b}",
        "Combine the first diagonal with the phasor that is left, in a second parallelogram.",
    ),
    "reversed": (
        "{a} points the opposite way",
        "Check at which end of {a} the arrowhead stands, and that it leaves the point it should.",
    ),
    "other-scale": (
        "{a} was set off by the protractor’s other scale",
        "Ask of {a}: more or less than a right angle? Read the scale that starts at 0 on your line.",
    ),
    "wrong-way": (
        "{a} was turned the wrong way",
        "Check which way {a} turns from the line drawn first: with the clock or against it.",
    ),
    "other-scale-at-tip": (
        "at the tip before {a} the protractor’s other scale was read",
        "With its zero back along the line just drawn, the protractor shows 180° less the turn.",
    ),
    "other-scale-throughout": (
        "at each tip the protractor’s other scale was read",
        "With its zero back along the line just drawn, the protractor shows 180° less the turn.",
    ),
    "wrong-way-at-tip": (
        "at the tip before {a} the turn goes the wrong way",
        "Check which way the drawing turns at each tip: always the same way round.",
    ),
    "mirrored": (
        "the drawing turns the other way round throughout",
        "Check the sense of the angles, with the clock or against it, on your sheet.",
    ),
    "swapped": (
        "the lengths of {a} and {b} are exchanged",
        "Compare each arrow’s length with the table of values, line by line.",
    ),
    "other-diagonal": (
        "the other diagonal of the second parallelogram was measured",
        "The sum is the diagonal from the common point.",
    ),
    "two-diagonals": (
        "two first diagonals were added, so that {a} counts twice",
        "Each phasor is used once: combine one diagonal with the phasor that is left.",
    ),
    "factor-ignored": (
        "the power factors were left out of account",
        "Turn each current from its own voltage by its angle of lag.",
    ),
    "lead-for-lag": (
        "lead was taken for lag",
        "A lagging current stands behind its voltage, on the side that the sequence comes from.",
    ),
    "ten-too-many": ("the decimal mark is one place too far to the right", "Compare your result with the lines."),
    "ten-too-few": ("the decimal mark is one place too far to the left", "Compare your result with the lines."),
    "not-multiplied": (
        "the centimetres were read as {unit}",
        "Multiply the length in centimetres by the scale: {scale}.",
    ),
    "divided": (
        "the length was divided by the scale",
        "Multiply the length in centimetres by the scale: {scale}.",
    ),
    "multiplied-lines": (
        "the values were multiplied by the scale when the lines were set off",
        "Divide each value by the scale to find its length in centimetres.",
    ),
    "plain-sum": (
        "the values were added as plain numbers",
        "Phasors add with their directions: draw or resolve them first.",
    ),
    "largest-less-smallest": (
        "the smallest value was taken from the largest",
        "Every line counts, with its direction.",
    ),
    "mean": ("the mean of the values was taken", "Phasors add with their directions: draw or resolve them first."),
    "root-of-squares": (
        "the root of the sum of the squares was taken",
        "That is right only for two phasors at a right angle: the products must be taken off too.",
    ),
    "no-root": ("the square root was forgotten", "The formula gives the square of the current: take its root."),
    "sign-slipped": (
        "the sign of the product {a} × {b} slipped",
        "In the formula all three products are taken off.",
    ),
    "signs-slipped": (
        "the products were added",
        "In the formula all three products are taken off.",
    ),
    "product-dropped": ("the product {a} × {b} was left out", "The formula has three products, one for each pair."),
    "product-doubled": ("the product {a} × {b} was taken twice", "The formula takes off each product once."),
    "across-only": (
        "only the parts along one axis were used",
        "Add the parts along both axes, then use Pythagoras.",
    ),
    "up-only": ("only the parts along the other axis were used", "Add the parts along both axes, then use Pythagoras."),
    "parts-added": (
        "the two sums of parts were added as plain numbers",
        "The two sums stand at a right angle: use Pythagoras.",
    ),
    "sine-for-cosine": (
        "sine and cosine are exchanged for {a}",
        "The cosine belongs to the axis from which the angle is counted.",
    ),
    "all-sine-for-cosine": (
        "sine and cosine are exchanged throughout",
        "The cosine belongs to the axis from which the angle is counted.",
    ),
    "one-sign": (
        "all parts along one axis were given the same sign",
        "Look at the picture: which parts point to the other side?",
    ),
    "right-angles": ("90° was used between the lines", "Three phases stand 120° apart."),
    "radians": (
        "the calculator worked in radians",
        "Set it to degrees and try the cosine of 60°: it must show 0.5.",
    ),
    "gradians": (
        "the calculator worked in gradians",
        "Set it to degrees and try the cosine of 60°: it must show 0.5.",
    ),
    "times-root-three": ("the result was multiplied by √3", "√3 belongs to line and phase voltage, not to this sum."),
    "over-root-three": ("the result was divided by √3", "√3 belongs to line and phase voltage, not to this sum."),
    "complement": (
        "the angle was counted from the other axis",
        "Count the angle from the line that the sheet names.",
    ),
    "turned-round": (
        "the angle is that of the opposite direction",
        "Look in which quarter the sum lies: the arctangent alone does not tell.",
    ),
}  # fmt: skip


def told(
    key: str, own: Mapping[str, tuple[str, str]] | None = None, /, **values: "str | Phrase"
) -> tuple[Phrase, Phrase]:
    """What happened, and where to look; ``own`` are a calculator's own texts. KeyError for no mistake of ours."""
    name, look = next(texts[key] for texts in (own or NAMES, NAMES, CIRCUITS) if key in texts)
    return say(name, **values), say(look, **values)
