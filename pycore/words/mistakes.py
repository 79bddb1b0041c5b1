"""The catalogue of mistakes in words: what happened, plainly and kindly, and where to look.

Line names stand in {a}, {b}; {angle} and {scale} are written values.
"""

from collections.abc import Mapping

from pycore.words.circuit_mistakes import CIRCUITS
from pycore.words.phrase import Phrase, say

NAMES: dict[str, tuple[str, str]] = {
    "left-out": (
        "{a} was left out",
        "Count the arrows of your drawing, or the rows of your table: nothing may be missing.",
    ),
    "stopped": (
        "the drawing stops at the first diagonal, the sum of {a} and {b}",
        "Combine the first diagonal with the remaining phasor in a second parallelogram.",
    ),
    "reversed": (
        "{a} points the opposite way",
        "Check at which end of {a} the arrowhead stands, or the signs of its parts in your table.",
    ),
    "other-scale": (
        "{a} was drawn with the wrong scale of the protractor",
        "Is the angle of {a} more or less than a right angle? Use the scale that starts at 0 on your line.",
    ),
    "wrong-way": (
        "{a} was turned the wrong way",
        "Check which way {a} turns from the first line: clockwise or anticlockwise.",
    ),
    "other-scale-at-tip": (
        "at the tip before {a} the wrong scale of the protractor was used",
        "With the zero line back along the line just drawn, the protractor shows 180° minus the angle between the "
        "phasors.",
    ),
    "other-scale-throughout": (
        "at each tip the wrong scale of the protractor was used",
        "With the zero line back along the line just drawn, the protractor shows 180° minus the angle between the "
        "phasors.",
    ),
    "wrong-way-at-tip": (
        "at the tip before {a} the turn goes the wrong way",
        "Check which way the drawing turns at each tip. Compare it with the angles in the table.",
    ),
    "mirrored": (
        "the angles turn the other way round throughout",
        "Check which way you turned, and which way you typed: clockwise or anticlockwise.",
    ),
    "swapped": (
        "the lengths of {a} and {b} are swapped",
        "Compare each arrow’s length with its value, line by line.",
    ),
    "other-diagonal": (
        "the other diagonal of the second parallelogram was measured",
        "The sum is the diagonal from the common point.",
    ),
    "two-diagonals": (
        "two first diagonals were added, so {a} was used twice",
        "Use each phasor once: combine one diagonal with the remaining phasor.",
    ),
    "factor-ignored": (
        "the lags or power factors were left out",
        "Turn each current from its own phase voltage by its angle of lag or lead.",
    ),
    "lead-for-lag": (
        "lead was used instead of lag",
        "A lagging current reaches its peak after its voltage: turn it from its voltage in the direction of lag that "
        "the sheet names.",
    ),
    "ten-too-many": ("the decimal mark is one place too far to the right", (
        "Compare your result with the given values."
    )),
    "ten-too-few": ((
        "the decimal mark is one place too far to the left"
    ), "Compare your result with the given values."),
    "not-multiplied": (
        "the centimetres were read as {unit}",
        "Multiply the length in centimetres by the scale: {scale}.",
    ),
    "divided": (
        "the length was divided by the scale",
        "Multiply the length in centimetres by the scale: {scale}.",
    ),
    "multiplied-lines": (
        "the values were multiplied by the scale when the phasors were drawn",
        "Divide each value by the scale to find its length in centimetres.",
    ),
    "plain-sum": (
        "the values were added as plain numbers",
        "Phasors add with their directions: draw or resolve them first.",
    ),
    "largest-less-smallest": (
        "the smallest value was subtracted from the largest",
        "Every phasor counts, with its direction.",
    ),
    "mean": ("the mean of the values was calculated", "Phasors add with their directions: draw or resolve them first."),
    "root-of-squares": (
        "the square root of the sum of the squares was used",
        "That is correct only for two phasors at right angles. Draw the phasors or use components.",
    ),
    "no-root": ("the square root was forgotten", (
        "Without the root, the formula gives the square of the current: take the square root."
    )),
    "sign-slipped": (
        "the product {a} × {b} has the wrong sign",
        "In the formula all three products are subtracted.",
    ),
    "signs-slipped": (
        "the products were added",
        "In the formula all three products are subtracted.",
    ),
    "product-dropped": ("the product {a} × {b} was left out", "The formula has three products, one for each pair."),
    "product-doubled": ("the product {a} × {b} was used twice", "The formula subtracts each product once."),
    "across-only": (
        "only the components along one axis were used",
        "Add the components along both axes, then use Pythagoras.",
    ),
    "up-only": ("only the components along the other axis were used", (
        "Add the components along both axes, then use Pythagoras."
    )),
    "parts-added": (
        "the two sums of components were added as plain numbers",
        "The two sums are at right angles: use Pythagoras.",
    ),
    "sine-for-cosine": (
        "sine and cosine are swapped for {a}",
        "The cosine belongs to the axis that the angle is measured from.",
    ),
    "all-sine-for-cosine": (
        "sine and cosine are swapped everywhere",
        "The cosine belongs to the axis that the angle is measured from.",
    ),
    "one-sign": (
        "all components along one axis have the same sign",
        "Look at the drawing: which components point the other way?",
    ),
    "right-angles": ("90° was used between the lines", "The three phase voltages are 120° apart."),
    "radians": (
        "the calculator was set to radians",
        "Set it to degrees. Test: cos 60° must be 0.5.",
    ),
    "gradians": (
        "the calculator was set to gradians",
        "Set it to degrees. Test: cos 60° must be 0.5.",
    ),
    "times-root-three": ("the result was multiplied by √3", (
        "√3 relates line voltage and phase voltage. It is not part of this sum."
    )),
    "over-root-three": ("the result was divided by √3", (
        "√3 relates line voltage and phase voltage. It is not part of this sum."
    )),
    "complement": (
        "the angle was measured from the wrong axis",
        "Measure the angle from the line that the sheet names.",
    ),
    "arrow-reversed": (
        "the arrow of the result is reversed, so that you read the angle of the opposite direction",
        "Check at which end of that arrow the arrowhead belongs, and read the angle again.",
    ),
    "angle-at-tip": (
        "the angle at the tip of the result was read, not the angle at its start",
        "Put the centre of the protractor on the point where the drawing starts.",
    ),
    "read-at-other-scale": (
        "the length was read at another scale, {scale}",
        "Multiply the length in centimetres by the scale of this sheet: {sheet}.",
    ),
    "drawn-at-other-scale": (
        "the drawing was made at another scale, {scale}",
        "Draw every arrow and read the result at the scale of this sheet: {sheet}.",
    ),
    "line-at-other-scale": (
        "{a} alone was drawn at another scale, {scale}",
        "Draw every arrow at the same scale. Work out the length of {a} once more.",
    ),
    "figures-exchanged": (
        "two figures of {a} were exchanged: {wrong} instead of {size}",
        "Compare the value of {a} that you used with the one on the sheet, figure by figure.",
    ),
    "ruler-edge": (
        "you measured from the ruler’s edge, not from its zero mark",
        "The zero mark of most rulers is 3 to 6 mm away from the edge. Start each length at the zero mark.",
    ),
    "base-edge": (
        "the base edge of the protractor was laid on the line, not its zero line",
        "The zero line is a few millimetres above the base edge. Lay the zero line on your line.",
    ),
    "centre-off": (
        "for {a} the protractor’s centre was on the wrong point",
        "Put the centre of the protractor on the point from which {a} starts.",
    ),
    "turned-round": (
        "the angle is that of the opposite direction",
        "Check which quadrant the sum is in: the arctangent alone does not show it.",
    ),
}  # fmt: skip


IN_GENERAL = {
    "other-scale": "Is its angle more or less than a right angle? Use the scale that starts at 0 on your line.",
}
"""Advice for any phasor, where "it" cannot stand for the name in the sentence."""


def mistake_text(
    key: str, own: Mapping[str, tuple[str, str]] | None = None, /, **values: "str | Phrase"
) -> tuple[Phrase, Phrase]:
    """What happened, and where to look; ``own`` are a calculator's own texts. KeyError for no mistake of ours."""
    name, look = next(texts[key] for texts in (own or NAMES, NAMES, CIRCUITS) if key in texts)
    return say(name, **values), say(look, **values)
