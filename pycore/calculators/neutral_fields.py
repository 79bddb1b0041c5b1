"""The form of the neutral-current page: every key of its links, for ever."""

from pycore.calculators.conventions import choice_field
from pycore.calculators.interface import Field
from pycore.words import neutral as words

_LAG_HELP = (
    "Degrees by which the current lags its own phase voltage, minus if it leads; or a power factor "
    "such as 0.85 lag."
)

FIELDS: tuple[Field, ...] = (
    Field("i1", "L1", "quantity", "values", "18.4", "A", sample="i1"),
    Field("i2", "L2", "quantity", "values", "11.2", "A", sample="i2"),
    Field("i3", "L3", "quantity", "values", "24.6", "A", sample="i3"),
    Field(
        "measured", "Meter on the neutral", "quantity", "values", "", "A",
        help="Optional: what a clamp meter on the neutral reads.",
    ),
    Field("a1", "L1 lags by", "angle", "loads", "0", "°", help=_LAG_HELP, sample="i1"),
    Field("a2", "L2 lags by", "angle", "loads", "0", "°", sample="i2"),
    Field("a3", "L3 lags by", "angle", "loads", "0", "°", sample="i3"),
    choice_field(
        "sequence", "Phase sequence", "loads", "123",
        (("123", "L1, L2, L3"), ("132", "L1, L3, L2")),
        "The order in which the lines reach their peak: it changes the answer when power factors differ.",
    ),
    choice_field(
        "method", "Method", "picture", "parallelogram",
        (("parallelogram", "Parallelogram"), ("tip-to-tail", "Tip to tail"), ("components", "Components")),
    ),
    choice_field(
        "order", "Which two first", "picture", "",
        (("", "the best fit"), ("12", "L1 and L2"), ("13", "L1 and L3"), ("23", "L2 and L3")),
    ),
    choice_field(
        "parallels", "Parallels by", "picture", "protractor",
        (("protractor", "protractor"), ("set-squares", "set squares"), ("compasses", "compasses")),
    ),
    choice_field(
        "protractor", "Protractor", "picture", "180", (("180", "half circle, 180°"), ("360", "full circle, 360°"))
    ),
    choice_field("first", "First direction", "picture", "up", (("up", "up"), ("right", "to the right"))),
    choice_field(
        "reference", "Drawn in that direction", "picture", "current",
        (("current", "the first current"), ("voltage", "the L1 phase voltage")),
    ),
    choice_field(
        "rotation", "Sense of rotation", "picture", "anticlockwise",
        (("anticlockwise", "anticlockwise"), ("clockwise", "clockwise")),
        "The picture only: the answer stays.",
    ),
    choice_field(
        "resultant", "Neutral drawn as", "picture", "sum",
        (("sum", "the sum of the lines"), ("returning", "the returning current")),
    ),
    choice_field(
        "sheet", "Sheet", "sheet", "construction",
        (
            ("construction", "construction: every step drawn"),
            ("problem", "problem: values and blank paper"),
            ("overlay", "overlay: to lay over a hand drawing"),
        ),
    ),
    choice_field(
        "start", "Star point on a problem sheet", "sheet", "yes", (("yes", "marked"), ("no", "left to the learner"))
    ),
    choice_field(
        "mirror", "Overlay mirrored", "sheet", "no", (("no", "no"), ("yes", "yes, to lie face down")),
    ),
    choice_field(
        "paper", "Paper", "sheet", "A4",
        (("A5", "A5"), ("A4", "A4"), ("A3", "A3"), ("A2", "A2"), ("letter", "Letter"), ("tabloid", "Tabloid")),
    ),
    choice_field(
        "orientation", "Way round", "sheet", "",
        (("", "the best fit"), ("landscape", "landscape"), ("portrait", "portrait")),
    ),
    Field(
        "scale", "Amperes per centimetre", "quantity", "sheet", "", "A",
        help="Empty: the largest scale that fits.",
    ),
    choice_field(
        "steps", "Scales to choose from", "sheet", "125",
        (("125", "1, 2, 5"), ("all", "1, 2, 2.5, 4, 5")),
    ),
    choice_field(
        "names", "Line names", "words", "L123",
        (("L123", "L1 L2 L3"), ("ABC", "A B C"), ("RYB", "R Y B"), ("RST", "R S T")),
    ),
    choice_field(
        "colours", "Line colours", "words", "iec",
        (
            ("iec", "IEC: brown, black, grey, blue"),
            ("british-old", "older British: red, yellow, blue, black"),
            ("american-208", "North American 120/208 V: black, red, blue, white"),
            ("american-480", "North American 277/480 V: brown, orange, yellow, grey"),
        ),
    ),
    choice_field(
        "decimal", "Decimal mark", "words", "point", (("point", "point: 18.4"), ("comma", "comma: 18,4"))
    ),
    choice_field(
        "angles", "Angles", "words", "protractor",
        (("protractor", "as a protractor reads"), ("polar", "polar, −180° to 180°")),
    ),
    Field("place", "Where", "text", "words", words.SCENARIO, help="Printed in the title block."),
    Field("who", "Name", "text", "words", help="Printed on this sheet only: never part of a link.", private=True),
    Field("group", "Group", "text", "words", private=True),
    Field("date", "Date", "text", "words", private=True),
)  # fmt: skip

BY_NAME = {field.name: field for field in FIELDS}
