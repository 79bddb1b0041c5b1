"""What a learner types as an answer, read as it was meant: amperes, or millimetres or centimetres on the sheet.

A number with its unit says what it is. A bare number is in the unit chosen beside it; when it fits only in
another unit, that is said, and penalised once.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from pycore import quantity
from pycore.errors import Fault, InputError
from pycore.practice.marking import (
    ACCEPT,
    LOOK,
    Judgement,
    LearnerAnswer,
    LearnerIntermediate,
    follows,
    mark,
    own_is_right,
)
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS, Limits, Task
from pycore.quantity import QuantityError
from pycore.words import marking as words

LENGTHS = {"mm": 1.0, "cm": 10.0}
LARGEST = 1e9


@dataclass(frozen=True, slots=True)
class TypedSize:
    """A size as typed: its number, and its unit (``mm``, ``cm`` or the quantity's), told or chosen beside it."""

    number: float
    unit: str
    told: bool


@dataclass(frozen=True, slots=True)
class AnswerJudgement:
    """An answer judged: the marking; the unit in which it fits when that is not the one it was given in
    (``meant``, ``unit``); whether it follows from the learner's own earlier values; those of them that are wrong."""

    given: LearnerAnswer
    marked: Judgement
    unit: str = ""
    meant: str = ""
    follows: bool = False
    wrong_before: tuple[str, ...] = ()
    other_scale: float | None = None
    """A scale (unit per cm) at which a length that is wrong on this sheet would be right."""


SCALES = (1.0, 2.0, 2.5, 4.0, 5.0)
"""Steps of the scales that a class draws at, times powers of ten (common practice)."""


def other_scale(task: Task, given: LearnerAnswer, typed: TypedSize, limits: Limits) -> float | None:
    """The scale, within a decade of the sheet's, at which a length given would be right; None for none."""
    if given.how != DRAWN or typed.unit not in LENGTHS:
        return None
    here = 10.0 / task.factor
    centimetres = typed.number * LENGTHS[typed.unit] / 10.0
    decade = float(f"1e{quantity.order_of_magnitude(here)}")
    for power in (0.1 * decade, decade, 10.0 * decade):
        for step in SCALES:
            scale = step * power
            another = math.fabs(scale - here) > 1e-9 * here and here / 10.0 <= scale <= here * 10.0
            if another and mark(task, replace(given, size=centimetres * scale), limits).band == ACCEPT:
                return scale
    return None


def units(task: Task) -> tuple[str, ...]:
    """The units that an answer may be given in, the usual one first."""
    return (task.writing.unit, *LENGTHS) if task.factor > 0 else (task.writing.unit,)


def size_in(task: Task, typed: TypedSize) -> float:
    """A typed size in the quantity's SI unit."""
    if typed.unit in LENGTHS:
        return typed.number * LENGTHS[typed.unit] / task.factor
    return typed.number if typed.told else typed.number * task.writing.factor


def _base_unit(task: Task) -> str:
    """The SI unit without its prefix."""
    return task.writing.unit[1:] if task.writing.factor != 1.0 else task.writing.unit


def read_size(task: Task, name: str, label: str, text: str, chosen: str) -> TypedSize:
    """A typed size. Raises InputError that says what is accepted."""
    accepted = units(task)
    stripped = text.strip()
    for unit in LENGTHS if task.factor > 0 else ():
        if stripped.lower().endswith(unit):
            try:
                return TypedSize(_number(stripped[: -len(unit)]), unit, told=True)
            except QuantityError as problem:
                raise InputError(Fault(name, text, words.unreadable(label, text, accepted), problem.fragment)) from None
    try:
        value, rest = quantity.split_number(stripped)
        if not rest:
            unit = chosen if chosen in accepted else accepted[0]
            return TypedSize(_limited(value), unit, told=False)
        return TypedSize(_limited(quantity.read(stripped, _base_unit(task))), task.writing.unit, told=True)
    except QuantityError as problem:
        raise InputError(Fault(name, text, words.unreadable(label, text, accepted), problem.fragment)) from None


def _number(text: str) -> float:
    value, rest = quantity.split_number(text)
    if rest:
        raise QuantityError("unit", rest)
    return _limited(value)


def _limited(value: float) -> float:
    if math.fabs(value) > LARGEST:
        raise QuantityError("infinite")
    return value


def read_angle(name: str, label: str, text: str) -> float | None:
    """Degrees as typed, None for an empty field. Raises InputError."""
    if not text.strip():
        return None
    try:
        value = quantity.read(text, "°")
    except QuantityError as problem:
        raise InputError(Fault(name, text, words.bad_angle(label, text), problem.fragment)) from None
    if not -360.0 <= value <= 360.0:
        raise InputError(Fault(name, text, words.bad_angle(label, text)))
    return value


def reckoned(task: Task, degrees: float, side: str) -> tuple[float, bool]:
    """An angle as the class measures it, counted from the direction drawn first, anticlockwise as reckoned;
    and whether its side is known."""
    if task.signed:
        return task.turn + degrees, True
    sense = {"anticlockwise": task.sense, "clockwise": -task.sense}.get(side, 1)
    return task.turn + sense * degrees, side != ""


def _sizes(form: Mapping[str, str], task: Task) -> tuple[TypedSize, tuple[tuple[str, TypedSize], ...]]:
    """The answer's size and those of earlier values; every fault at once."""
    faults: list[Fault] = []
    chosen = form.get("answer-unit", "")
    read: dict[str, TypedSize] = {}
    labels = {"answer": words.ANSWER, **{earlier.key: words.EARLIER[earlier.key] for earlier in task.earlier}}
    for name, label in labels.items():
        field = "answer" if name == "answer" else f"answer-{name}"
        text = form.get(field, "").strip()
        if not text and name != "answer":
            continue
        try:
            if not text:
                raise InputError(Fault(field, "", words.no_answer(label, units(task))))
            read[name] = read_size(task, field, label, text, chosen)
        except InputError as error:
            faults += error.faults
    if faults:
        raise InputError(*faults)
    return read["answer"], tuple((name, typed) for name, typed in read.items() if name != "answer")


def judge(task: Task, form: Mapping[str, str], limits: Limits = NO_LIMITS) -> AnswerJudgement:
    """Judge what a learner typed: ``answer``, ``answer-unit``, ``answer-angle``, ``answer-side``,
    ``answer-how`` and ``answer-first``, ``answer-first-angle``, ``answer-across``, ``answer-up``.

    Raises InputError for what cannot be read.
    """
    how = CALCULATED if form.get("answer-how") == CALCULATED else DRAWN
    typed, before = _sizes(form, task)
    degrees = read_angle("answer-angle", words.ANGLE, form.get("answer-angle", "")) if task.angled else None
    side = form.get("answer-side", "")
    angle, sided = (None, True) if degrees is None else reckoned(task, degrees, side)
    first = read_angle("answer-first-angle", words.FIRST_ANGLE, form.get("answer-first-angle", ""))
    owns = []
    for key, value in before:
        turned = None if first is None or key != "first" else reckoned(task, first, side)[0]
        owns.append(LearnerIntermediate(key, size_in(task, value), turned))
    size = size_in(task, typed)
    if size < 0:
        raise InputError(Fault("answer", form.get("answer", ""), words.negative(words.ANSWER, form.get("answer", ""))))
    return _judged(task, LearnerAnswer(size, angle, sided, how), typed, tuple(owns), limits)


def _judged(
    task: Task, given: LearnerAnswer, typed: TypedSize, owns: tuple[LearnerIntermediate, ...], limits: Limits
) -> AnswerJudgement:
    marked = mark(task, given, limits)
    wrong = tuple(own.key for own in owns if not own_is_right(task, own, given.how, limits))
    if marked.band == ACCEPT:
        return AnswerJudgement(given, marked, typed.unit, wrong_before=wrong)
    if not typed.told:
        for unit in units(task):
            other = replace(given, size=size_in(task, TypedSize(typed.number, unit, told=False)))
            if unit != typed.unit and mark(task, other, limits).band == ACCEPT:
                return AnswerJudgement(
                    given, replace(marked, band=LOOK, causes=()), typed.unit, unit, wrong_before=wrong
                )
    led = follows(task, owns, given, limits)
    return AnswerJudgement(given, marked, typed.unit, "", led, wrong, other_scale(task, given, typed, limits))
