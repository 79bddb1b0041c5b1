"""What a learner types, read: a size in the quantity's unit, millimetres or centimetres, and a direction.

A number with its unit says what it is; a bare number is in the unit chosen beside it. A direction may stand in a field
of its own or behind the size (``21.2∠71``, ``21.2 at 71° clockwise``).
"""

import math
import re
from dataclasses import dataclass

from pycore import quantity
from pycore.errors import Fault, InputError
from pycore.practice.task import Task
from pycore.quantity import QuantityError
from pycore.words import marking as words
from pycore.words.inputs import with_mark
from pycore.words.marks import FILLING, RETURNING, SIDES

LENGTHS = {"mm": 1.0, "cm": 10.0}
OTHER_UNITS = ("A", "V", "W", "VA", "var", "Ω", "S", "F", "H")
"""Units in which a learner may have written an answer that has another one."""
LARGEST = 1e9
UPRIGHT = {"up": "anticlockwise", "down": "clockwise"}
"""Sides that are told only where angles are counted from a line that points to the right."""
BEFORE_ANGLE = ("∠", "@", " at ")
"""What may stand between a size and its angle in one field."""
_UNIT_THEN_NUMBER = re.compile(r"(.*?[A-Za-zΩ])\s+((?:lag|lead)\w*\s.*\d.*|[+\-−]?[\d.,].*)")
"""A size with its unit, and a number behind it: the angle, though nothing stands between them."""


@dataclass(frozen=True, slots=True)
class TypedSize:
    """A size as typed: number and unit (``mm``, ``cm`` or the quantity's).

    ``unit_typed``: the unit stands behind the number, not in the choice beside it. ``half``: half a unit of the last
    significant digit, as a share of the number; zeros at the end of a whole number do not count. ``figures``: how many
    significant figures it has.
    """

    number: float
    unit: str
    unit_typed: bool
    half: float = 0.0
    figures: int = 3
    named: str = ""
    """The unit as it was typed, where it is one of the quantity's or of another quantity."""
    other: bool = False
    """Whether the unit is that of another quantity: the number is read as if it were right."""


@dataclass(frozen=True, slots=True)
class Direction:
    """An angle as typed: degrees with their sign, the side in words (one of ``SIDES``, "": none), whether it is
    said to be the returning arrow's, and whether it is a number up to 180 alone, without sign or
    side."""

    degrees: float
    side: str = ""
    returning: bool = False
    bare: bool = False


def units(task: Task) -> tuple[str, ...]:
    """The units that an answer may be given in, the usual one first."""
    return (task.writing.unit, *LENGTHS) if task.factor > 0 else (task.writing.unit,)


def size_in(task: Task, typed: TypedSize) -> float:
    """A typed size in the quantity's SI unit."""
    if typed.unit in LENGTHS:
        return typed.number * LENGTHS[typed.unit] / task.factor
    return typed.number if typed.unit_typed else typed.number * task.writing.factor


def base_unit(task: Task) -> str:
    """Return the SI unit of an answer, without prefix."""
    return task.writing.unit[1:] if task.writing.factor != 1.0 else task.writing.unit


def _figures(text: str) -> tuple[int, float]:
    """How many figures a number is written with, and half of the last one as a share of the number."""
    digits = "".join(sign for sign in text.lower().partition("e")[0] if sign.isdigit() or sign in ".,")
    bare = digits.replace(".", "").replace(",", "").lstrip("0")
    if "." not in digits and "," not in digits:
        bare = bare.rstrip("0")
    return len(bare), 0.5 / int(bare) if bare else 0.0


def read_size(task: Task, name: str, label: str, text: str, chosen: str, *, any_unit: bool = False) -> TypedSize:
    """A typed size; ``any_unit``: units of other quantities are read too. Raises InputError that says what is accepted.
    """
    accepted = units(task)
    stripped = text.strip()
    for unit in LENGTHS if task.factor > 0 else ():
        if stripped.lower().endswith(unit):
            try:
                return TypedSize(_number(stripped[: -len(unit)]), unit, unit_typed=True)
            except QuantityError as problem:
                raise InputError(Fault(name, text, _unreadable(task, label, text), problem.fragment)) from None
    try:
        value, rest = quantity.split_number(stripped)
        figures, half = _figures(stripped.removesuffix(rest))
        parts = quantity.unit_parts(chosen)
        if not rest and chosen not in accepted and parts is not None and parts[1] == base_unit(task):
            # The head of a class's column names one unit for all its learners.
            stripped += chosen
        elif not rest:
            unit = chosen if chosen in accepted else accepted[0]
            return TypedSize(_limited(value), unit, False, half, figures)
        for other in (base_unit(task), *(OTHER_UNITS if any_unit else ())):
            if (parts := quantity.unit_parts(rest)) is not None and parts[1] == other:
                read = _limited(quantity.read(stripped, other))
                return TypedSize(read, task.writing.unit, True, half, figures, rest, other != base_unit(task))
        read = _limited(quantity.read(stripped, base_unit(task)))
        return TypedSize(read, task.writing.unit, True, half, figures, rest)
    except QuantityError as problem:
        raise InputError(Fault(name, text, _unreadable(task, label, text), problem.fragment)) from None


def _unreadable(task: Task, label: str, text: str) -> str:
    """Why a text is no size, with the problem's decimal mark."""
    return with_mark(words.unreadable(label, text, units(task)), task.writing.mark)


def _number(text: str) -> float:
    value, rest = quantity.split_number(text)
    if rest:
        raise QuantityError("unit", rest)
    return _limited(value)


def _limited(value: float) -> float:
    if math.fabs(value) > LARGEST:
        raise QuantityError("infinite")
    return value


def parted(text: str) -> tuple[str, str]:
    """A size and the direction behind it, "" for none."""
    for sign in BEFORE_ANGLE:
        size, found, direction = text.partition(sign)
        if found:
            return size.strip(), direction.strip()
    behind = _UNIT_THEN_NUMBER.fullmatch(text.strip())
    return (behind[1], behind[2]) if behind else (text.strip(), "")


def read_direction(name: str, label: str, text: str, side: str = "") -> Direction | None:
    """An angle as typed, with words for its side behind it or beside it; None for an empty field. Raises InputError."""
    if not text.strip():
        return None
    number, returning = [], side in RETURNING
    stated = SIDES.get(side, "")
    for word in text.replace("°", "° ").split():
        plain_word = word.strip(",;").lower()
        if plain_word in RETURNING:
            returning = True
        elif plain_word in FILLING:
            continue
        elif plain_word and plain_word in SIDES:
            stated = SIDES[plain_word]
        else:
            number.append(word)
    try:
        value = quantity.read("".join(number), "°")
    except QuantityError as problem:
        raise InputError(Fault(name, text, words.bad_angle(label, text), problem.fragment)) from None
    if not -360.0 <= value <= 360.0:
        raise InputError(Fault(name, text, words.bad_angle(label, text)))
    bare = not stated and value <= 180.0 and not text.strip().startswith(("+", "-", "−"))
    return Direction(value, stated, returning, bare)


def _side(task: Task, direction: Direction) -> str:
    """The side that is told: above and below are sides of a line that lies across the paper."""
    if direction.side not in UPRIGHT:
        return direction.side
    return UPRIGHT[direction.side] if task.form.get("first") == "right" and task.turn == 0.0 else "unknown"


def _sense(task: Task, side: str) -> int:
    """1 where angles towards this side are positive for the class, or where no side is told, else -1."""
    return {"anticlockwise": task.sense, "clockwise": -task.sense, "lagging": -1, "leading": 1}.get(side, 1)


def speaks_against(task: Task, direction: Direction) -> bool:
    """Whether an angle has a minus that turns it to the other side than that which is told."""
    side = _side(task, direction)
    return bool(side) and side in SIDES and direction.degrees < 0.0 and _sense(task, side) > 0


def task_angle(task: Task, direction: Direction, *, on_paper: bool = False) -> tuple[float, bool]:
    """An angle as the class measures it, counted from the direction drawn first, anticlockwise positive;
    and whether its side is known. ``on_paper``: the sheet said which way is positive, so that a number alone has a
    side too. With a side in words a minus says the same once more; where the two speak against each other, the side is
    taken for not told."""
    degrees, side = direction.degrees, _side(task, direction)
    sense = _sense(task, side)
    told = side in SIDES if side else task.signed or on_paper or degrees < 0.0
    if side and degrees < 0.0:
        degrees, told = -degrees, told and sense < 0
    # The returning arrow is the sum turned round.
    degrees += 180.0 if direction.returning and task.turn_back > 0 else 0.0
    return task.turn + sense * degrees, told
