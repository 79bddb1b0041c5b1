"""Fields that several calculators share, with the same key and meaning in their links for ever."""

from collections.abc import Mapping
from dataclasses import replace

from pycore.constructions.methods import BY_PROTRACTOR, PARALLELOGRAM
from pycore.constructions.names import arm_key
from pycore.forms.conventions import NAMES, choice_field
from pycore.forms.fields import Field
from pycore.sheet import kinds
from pycore.sheet.styles import USUAL
from pycore.words import accuracy, codes, moves_list
from pycore.words import form as words

OWN_PAPER_FIELDS = ("own-paper", "own-way")
DEFAULT_NAMES = "L123"


def lines_of(form: Mapping[str, str]) -> tuple[str, str, str]:
    """Return the names of the three lines, as chosen in a form."""
    return NAMES.get(form.get("names", DEFAULT_NAMES), NAMES[DEFAULT_NAMES])


def labels_of(form: Mapping[str, str]) -> dict[str, str]:
    """Return the labels of fields that name a line, as chosen in a form."""
    lines = lines_of(form)
    labels = {arm_key(number): line for number, line in enumerate(lines, start=1)}
    return labels | {f"a{number}": words.lag_of(line) for number, line in enumerate(lines, start=1)}


def sequence_options(form: Mapping[str, str]) -> dict[str, str]:
    """Return both phase sequences, with the names of lines chosen in a form."""
    one, two, three = lines_of(form)
    return {"123": f"{one}, {two}, {three}", "132": f"{one}, {three}, {two}"}


_LABELS = labels_of({})


def newly(field: Field, before: str) -> Field:
    """Return a field whose default is new with version 3 of the links, if it differs from the one before."""
    versions = ("1", "2") if before != field.default else ()
    return replace(field, before=tuple((version, before) for version in versions))


SHARED: Mapping[str, Field] = {
    field.name: field
    for field in (
        Field("a1", _LABELS["a1"], "angle", "loads", "0", "°", help=words.LAG_HELP, sample="i1"),
        Field("a2", _LABELS["a2"], "angle", "loads", "0", "°", sample="i2"),
        Field("a3", _LABELS["a3"], "angle", "loads", "0", "°", sample="i3"),
        choice_field(
            "sequence", words.SEQUENCE, "loads", "123", tuple(sequence_options({}).items()), words.SEQUENCE_HELP
        ),
        choice_field(
            "parallels", words.PARALLELS, "picture", BY_PROTRACTOR, words.PARALLEL_TOOLS,
            only=(("method", PARALLELOGRAM),),
        ),
        choice_field("protractor", words.PROTRACTOR, "picture", "180", words.PROTRACTORS),
        choice_field("first", words.FIRST, "picture", "up", words.FIRSTS),
        choice_field("rotation", words.ROTATION, "picture", "anticlockwise", words.ROTATIONS, words.ROTATION_HELP),
        choice_field("sheet", words.SHEET, "sheet", kinds.CONSTRUCTION, words.SHEETS),
        choice_field("start", words.START, "sheet", kinds.POINT, words.STARTS, only=(("sheet", kinds.PROBLEM),)),
        choice_field("mirror", words.MIRROR, "sheet", "no", words.MIRRORS, only=(("sheet", kinds.OVERLAY),)),
        choice_field("print", moves_list.PRINT, "sheet", USUAL, moves_list.PRINTS, moves_list.PRINT_HELP),
        choice_field("paper", words.PAPER, "sheet", "A4", words.PAPERS),
        choice_field(
            "orientation", words.ORIENTATION, "sheet", "", (("", words.BEST_FIT), *words.ORIENTATIONS)
        ),
        choice_field("own-paper", words.OWN_PAPER, "scale", "", words.OWN_PAPERS),
        choice_field(
            "own-way", words.OWN_WAY, "scale", "", (("", words.BEST_FIT), *words.ORIENTATIONS),
            only=tuple(("own-paper", name) for name, _ in words.PAPERS),
        ),
        newly(choice_field("steps", words.STEPS, "sheet", "all", words.STEP_SETS), "125"),
        newly(
            choice_field("one-scale", words.ONE_SCALE, "sheet", "yes", words.ONE_SCALE_CHOICES, words.ONE_SCALE_HELP),
            "no",
        ),
        choice_field("names", words.NAMES, "words", DEFAULT_NAMES, words.NAME_SETS),
        choice_field("colours", words.COLOURS, "words", "iec", words.COLOUR_SETS),
        choice_field("decimal", words.DECIMAL, "words", "point", words.DECIMALS),
        choice_field("angles", words.ANGLES, "words", "protractor", words.ANGLE_STYLES),
        choice_field("hand", accuracy.HAND, "accuracy", "practised", (*accuracy.HANDS, accuracy.OWN_HAND)),
        choice_field("wording", accuracy.LEVEL, "accuracy", "plain", accuracy.LEVELS),
        Field("place", words.PLACE, "text", "words", help=words.PLACE_HELP),
        Field("code", codes.LABEL, "text", "practice"),
        Field("who", words.WHO, "text", "words", help=words.WHO_HELP, private=True),
        Field("group", words.GROUP, "text", "words", private=True),
        Field("date", words.DATE, "text", "words", private=True),
    )
}  # fmt: skip
"""The shared fields by key."""
