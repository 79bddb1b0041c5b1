"""The form of the neutral-current page: every key of its links, for ever."""

from collections.abc import Mapping

from pycore.forms.conventions import NAMES, choice_field
from pycore.forms.fields import Field
from pycore.words import accuracy, codes, moves_list
from pycore.words import form as words

DEFAULT_NAMES = "L123"


def labels_of(form: Mapping[str, str]) -> dict[str, str]:
    """Labels of the fields that name a line, as a form's line names have it."""
    lines = NAMES.get(form.get("names", DEFAULT_NAMES), NAMES[DEFAULT_NAMES])
    labels = {f"i{number}": line for number, line in enumerate(lines, start=1)}
    return labels | {f"a{number}": words.lags_by(line) for number, line in enumerate(lines, start=1)}


def options_of(form: Mapping[str, str]) -> dict[str, dict[str, str]]:
    """Options that name lines, by field and value, as a form's line names have it."""
    one, two, three = NAMES.get(form.get("names", DEFAULT_NAMES), NAMES[DEFAULT_NAMES])
    return {
        "order": {
            "12": words.two_lines(one, two),
            "13": words.two_lines(one, three),
            "23": words.two_lines(two, three),
        },
        "sequence": {"123": f"{one}, {two}, {three}", "132": f"{one}, {three}, {two}"},
        "reference": {"voltage": words.voltage_of(one)},
        "further": {"zero": words.zero_by(three)},
    }


_LABELS = labels_of({})
_OPTIONS = options_of({})
_OWN_HAND = (("hand", "own"),)

FIELDS: tuple[Field, ...] = (
    Field("i1", _LABELS["i1"], "quantity", "values", "18.4", "A", sample="i1"),
    Field("i2", _LABELS["i2"], "quantity", "values", "11.2", "A", sample="i2"),
    Field("i3", _LABELS["i3"], "quantity", "values", "24.6", "A", sample="i3"),
    Field("measured", words.METER, "readings", "values", "", "A", help=words.METER_HELP),
    Field("a1", _LABELS["a1"], "angle", "loads", "0", "°", help=words.LAG_HELP, sample="i1"),
    Field("a2", _LABELS["a2"], "angle", "loads", "0", "°", sample="i2"),
    Field("a3", _LABELS["a3"], "angle", "loads", "0", "°", sample="i3"),
    choice_field(
        "sequence", words.SEQUENCE, "loads", "123", tuple(_OPTIONS["sequence"].items()), words.SEQUENCE_HELP
    ),
    choice_field("method", words.METHOD, "method", "parallelogram", words.METHODS),
    choice_field("order", words.ORDER, "picture", "", (("", words.BEST_FIT), *_OPTIONS["order"].items())),
    choice_field(
        "parallels", words.PARALLELS, "picture", "protractor", words.PARALLEL_TOOLS,
        only=(("method", "parallelogram"),),
    ),
    choice_field("protractor", words.PROTRACTOR, "picture", "180", words.PROTRACTORS),
    choice_field("first", words.FIRST, "picture", "up", words.FIRSTS),
    choice_field(
        "reference", words.REFERENCE, "picture", "current",
        (("current", words.FIRST_CURRENT), *_OPTIONS["reference"].items()),
    ),
    choice_field("rotation", words.ROTATION, "picture", "anticlockwise", words.ROTATIONS, words.ROTATION_HELP),
    choice_field("resultant", words.RESULTANT, "picture", "sum", words.RESULTANTS),
    choice_field("sheet", words.SHEET, "sheet", "construction", words.SHEETS),
    choice_field("start", words.START, "sheet", "yes", words.STARTS, only=(("sheet", "problem"),)),
    choice_field(
        "further", words.FURTHER, "sheet", "no", (("no", words.NO_FURTHER), *_OPTIONS["further"].items()),
        only=(("sheet", "problem"),),
    ),
    choice_field("mirror", words.MIRROR, "sheet", "no", words.MIRRORS, only=(("sheet", "overlay"),)),
    choice_field("print", moves_list.PRINT, "sheet", "usual", moves_list.PRINTS, moves_list.PRINT_HELP),
    choice_field("paper", words.PAPER, "sheet", "A4", words.PAPERS),
    choice_field(
        "orientation", words.ORIENTATION, "sheet", "", (("", words.BEST_FIT), *words.ORIENTATIONS)
    ),
    Field("scale", words.SCALE, "quantity", "sheet", "", "A", help=words.SCALE_HELP),
    choice_field("steps", words.STEPS, "sheet", "125", words.STEP_SETS),
    choice_field("names", words.NAMES, "words", DEFAULT_NAMES, words.NAME_SETS),
    choice_field("colours", words.COLOURS, "words", "iec", words.COLOUR_SETS),
    choice_field("decimal", words.DECIMAL, "words", "point", words.DECIMALS),
    choice_field("angles", words.ANGLES, "words", "protractor", words.ANGLE_STYLES),
    Field("drawn", accuracy.DRAWN_FIELD, "length", "accuracy", "", "A", help=accuracy.DRAWN_HELP),
    choice_field("hand", accuracy.HAND, "accuracy", "practised", (*accuracy.HANDS, accuracy.OWN_HAND)),
    Field("hand-mm", accuracy.HAND_MM, "quantity", "accuracy", "0.5", "mm", only=_OWN_HAND),
    Field("hand-degrees", accuracy.HAND_DEGREES, "quantity", "accuracy", "0.5", "°", only=_OWN_HAND),
    Field("percent", accuracy.PERCENT, "quantity", "accuracy", "2", "%", help=accuracy.METER_HELP),
    Field("digits", accuracy.DIGITS, "quantity", "accuracy", "5"),
    Field("digit", accuracy.DIGIT, "quantity", "accuracy", "0.01", "A"),
    choice_field("meters", accuracy.METERS, "accuracy", "several", accuracy.METER_SETS),
    choice_field("wording", accuracy.LEVEL, "accuracy", "plain", accuracy.LEVELS),
    Field("place", words.PLACE, "text", "words", help=words.PLACE_HELP),
    Field("code", codes.LABEL, "text", "practice"),
    Field("who", words.WHO, "text", "words", help=words.WHO_HELP, private=True),
    Field("group", words.GROUP, "text", "words", private=True),
    Field("date", words.DATE, "text", "words", private=True),
)  # fmt: skip

BY_NAME = {field.name: field for field in FIELDS}
