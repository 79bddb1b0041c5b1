"""What a learner types as an answer, judged: its size, its direction, and the values found on the way.

When a bare number fits only in another unit, that is said and penalised once; so is a direction that is missing.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from pycore import quantity
from pycore.errors import Fault, InputError
from pycore.practice.explaining import Cause, LearnerAnswer
from pycore.practice.following import LearnerIntermediate, follows
from pycore.practice.marking import ACCEPT, LOOK, WRONG, Judgement, is_accepted, mark, side_open
from pycore.practice.origins import ANGLE_MISREAD, origin_of
from pycore.practice.partial import PartJudgement, judge_part
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS, Limits, OtherOrigin, Task
from pycore.practice.typed import (
    LENGTHS,
    Direction,
    TypedSize,
    base_unit,
    parted,
    read_direction,
    read_size,
    size_in,
    speaks_against,
    task_angle,
    units,
)
from pycore.words import marking as words

FEW_FIGURES = 2
PREFIXES = {"k": 3, "": 0, "m": -3}
"""Prefixes that are mixed up, with their powers of ten."""
SAME_AS_UNIT = {"cm": "not-multiplied"}
"""The mistake that is a number in another unit, by that unit."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A value as typed: its size and its direction (None: not given)."""

    size: TypedSize
    direction: Direction | None


@dataclass(frozen=True, slots=True)
class AnswerJudgement:
    """An answer judged: the marking; the unit in which it fits when that is not the one it was typed in
    (``unit_meant``, ``unit``); whether it follows from the learner's own earlier values; these values judged.

    ``missing``: what is missing of its direction where the rest is right: ``angle``, ``side`` or "". ``coarse``: a
    calculated answer that is right as far as its two figures go. ``origin``: the size is right, and so is the angle
    if it is counted from there. ``partial``: only values found on the way were typed; ``answer`` and ``marked`` are
    those of the first that is wrong, or of the last.
    """

    answer: LearnerAnswer
    marked: Judgement
    unit: str = ""
    unit_meant: str = ""
    follows: bool = False
    parts: tuple[PartJudgement, ...] = ()
    missing: str = ""
    coarse: bool = False
    origin: OtherOrigin | None = None
    partial: bool = False
    entries: Mapping[str, Entry] = field(default_factory=dict)
    """What was typed, by key: "" is the answer, the others are values found on the way."""

    @property
    def wrong_before(self) -> tuple[str, ...]:
        """The keys of the values found on the way that are wrong."""
        return tuple(part.key for part in self.parts if not part.right)


def _read(form: Mapping[str, str], task: Task, label: str, *, any_unit: bool) -> dict[str, Entry]:
    """The answer and the earlier values that were given, by key; every fault at once."""
    faults: list[Fault] = []
    entries: dict[str, Entry] = {}
    labels = {"": label, **{earlier.key: words.EARLIER[earlier.key] for earlier in task.earlier}}
    typed = [key for key in labels if form.get(_field(key), "").strip()]
    for key, label in labels.items():
        if key not in typed and (key or typed):
            continue
        try:
            entries[key] = _read_one(form, task, key, label, any_unit=any_unit)
        except InputError as error:
            faults += error.faults
    if faults:
        raise InputError(*faults)
    return entries


def _field(key: str) -> str:
    return f"answer-{key}" if key else "answer"


def _read_one(form: Mapping[str, str], task: Task, key: str, label: str, *, any_unit: bool) -> Entry:
    field = _field(key)
    text, behind = parted(form.get(field, ""))
    if not text:
        raise InputError(Fault(field, "", words.no_answer(label, units(task))))
    typed = read_size(task, field, label, text, form.get("answer-unit", ""), any_unit=any_unit)
    angle = form.get(f"{field}-angle", "").strip() or behind
    if key not in words.ANGLES and angle:
        raise InputError(Fault(field, form[field], words.size_only(label), angle))
    if key not in words.ANGLES:
        return Entry(typed, None)
    place = f"{field}-angle" if form.get(f"{field}-angle", "").strip() else field
    direction = read_direction(place, words.ANGLES[key], angle, form.get(f"{field}-side", ""))
    # Where nobody can ask again it is marked all the same: the side counts as missing.
    if direction is not None and not any_unit and speaks_against(task, direction):
        raise InputError(Fault(place, angle, words.sign_against_side(words.ANGLES[key], angle), angle))
    return Entry(typed, direction)


def judge(
    task: Task,
    form: Mapping[str, str],
    limits: Limits = NO_LIMITS,
    *,
    on_paper: bool = False,
    is_final: bool = False,
    label: str = words.ANSWER,
) -> AnswerJudgement:
    """Judge what a learner typed: ``answer``, ``answer-unit``, ``answer-angle``, ``answer-side``, ``answer-how`` and
    ``answer-first``, ``answer-first-angle``, ``answer-first-side``, ``answer-across``, ``answer-up``.

    ``on_paper``: the sheet said in which sense positive angles turn, so that a sign, or none, says the side.
    ``is_final``: nobody can ask the learner again. A unit of another quantity is a wrong one, not one that cannot be
    read, and an angle whose minus speaks against its side has none.
    ``label``: what messages call the answer.

    Raises InputError for what cannot be read.
    """
    how = CALCULATED if form.get("answer-how") == CALCULATED else DRAWN
    entries = _read(form, task, label, any_unit=is_final)
    owns = tuple(intermediate_of(task, key, one) for key, one in entries.items() if key)
    parts = tuple(judge_part(task, own, how, limits, entries[own.key].size.half) for own in owns)
    if "" not in entries:
        return _partial(entries, parts)
    typed = entries[""]
    size = size_in(task, typed.size)
    if size < 0:
        raise InputError(Fault("answer", form.get("answer", ""), words.negative(label, form.get("answer", ""))))
    angle, sided = (None, True)
    if typed.direction is not None and task.angled:
        angle, sided = task_angle(task, typed.direction, on_paper=on_paper)
    answer = LearnerAnswer(size, angle, sided, how, typed.size.half)
    reply = _judged(task, answer, typed.size, owns, limits)
    if on_paper and typed.direction is not None and typed.direction.bare and not task.signed:
        reply = _or_side_missing(task, reply, typed.size, limits)
    return replace(reply, entries=entries, parts=parts)


def _or_side_missing(task: Task, reply: AnswerJudgement, typed: TypedSize, limits: Limits) -> AnswerJudgement:
    """The judgement of an angle without sign or side where the class gives sides in words: if it is right on the other
    side than the one that is positive on the sheet, its side is missing, and no mistake is named."""
    if reply.marked.band == ACCEPT:
        return reply
    either = _judged(task, replace(reply.answer, sided=False), typed, (), limits)
    return either if either.missing == "side" else reply


def judge_measured(
    task: Task, answer: LearnerAnswer, owns: tuple[LearnerIntermediate, ...] = (), limits: Limits = NO_LIMITS
) -> AnswerJudgement:
    """Judge a result that was measured in a drawing, with the values that the drawing shows on the way: nothing was
    typed, so no unit and no side can be missing."""
    marked = mark(task, answer, limits)
    parts = tuple(judge_part(task, own, answer.how, limits) for own in owns)
    reply = AnswerJudgement(answer, marked, task.writing.unit, parts=parts)
    if marked.band == ACCEPT or not follows(task, owns, answer, limits):
        return reply
    return replace(reply, follows=True, marked=replace(marked, band=LOOK))


def _partial(entries: Mapping[str, Entry], parts: tuple[PartJudgement, ...]) -> AnswerJudgement:
    """Values found on the way alone: judged by the first that is wrong."""
    judged = next((part for part in parts if not part.right), parts[-1])
    return AnswerJudgement(judged.answer, judged.marked, parts=parts, entries=entries, partial=True)


def intermediate_of(task: Task, key: str, entry: Entry) -> LearnerIntermediate:
    """Return a typed value as the one of this key that a learner finds on the way; only ``first`` has an angle."""
    angle, sided = (None, True) if entry.direction is None or key != "first" else task_angle(task, entry.direction)
    return LearnerIntermediate(key, size_in(task, entry.size), angle, sided)


def _judged(
    task: Task, answer: LearnerAnswer, typed: TypedSize, owns: tuple[LearnerIntermediate, ...], limits: Limits
) -> AnswerJudgement:
    marked = mark(task, answer, limits)
    reply = AnswerJudgement(answer, marked, typed.unit)
    if marked.band == ACCEPT and typed.other:
        return replace(reply, unit=typed.named, unit_meant=task.writing.unit, marked=replace(marked, band=LOOK))
    if marked.band == ACCEPT:
        missing = _missing(task, answer, limits)
        return replace(reply, missing=missing, marked=replace(marked, band=LOOK)) if missing else reply
    if answer.how == CALCULATED and _right_as_far(task, answer, typed, limits):
        return replace(reply, coarse=True, marked=replace(marked, band=LOOK, causes=()))
    meant = _meant(task, answer, typed, limits)
    if meant:
        others = _without(marked.causes, SAME_AS_UNIT.get(meant, ""))
        return replace(reply, unit=typed.named or typed.unit, unit_meant=meant,
                       marked=replace(marked, band=LOOK, causes=others))  # fmt: skip
    if owns and follows(task, owns, answer, limits):
        band = LOOK if marked.band == WRONG else marked.band
        return replace(reply, follows=True, marked=replace(marked, band=band))
    return _from_elsewhere(task, reply, limits)


def _from_elsewhere(task: Task, reply: AnswerJudgement, limits: Limits) -> AnswerJudgement:
    """A right size whose angle is right from another line of the page: no more wrong than a unit is. Where another
    mistake of the catalogue explains the answer, it is that."""
    named = [one.key for cause in reply.marked.causes for one in cause.mistakes]
    origin = None if any(key not in ANGLE_MISREAD for key in named) else origin_of(task, reply.answer, limits)
    if origin is None:
        return reply
    return replace(reply, origin=origin, marked=replace(reply.marked, band=LOOK, causes=()))


def _without(causes: Iterable[Cause], key: str) -> tuple[Cause, ...]:
    """Causes without a mistake that the headline already names."""
    left = [(cause, tuple(one for one in cause.mistakes if one.key != key)) for cause in causes]
    return tuple(replace(cause, mistakes=mistakes) for cause, mistakes in left if mistakes)


def _missing(task: Task, answer: LearnerAnswer, limits: Limits) -> str:
    """What an answer that is right so far does not say of its direction."""
    if not task.angled or task.angle is None:
        return ""
    if answer.angle is None:
        return "angle"
    return "side" if side_open(task, answer, limits) else ""


def _right_as_far(task: Task, answer: LearnerAnswer, typed: TypedSize, limits: Limits) -> bool:
    """Whether two figures are those of the right size, and the angle is right."""
    near = -typed.half * answer.size <= answer.size - task.size <= typed.half * answer.size
    return typed.figures <= FEW_FIGURES and near and is_accepted(task, replace(answer, size=task.size), limits)


def _meant(task: Task, answer: LearnerAnswer, typed: TypedSize, limits: Limits) -> str:
    """Another unit in which a number would be right that was typed bare or as a length, or another prefix than the one
    that was written."""
    if typed.unit_typed and typed.unit not in LENGTHS:
        return _prefix_meant(task, answer, typed, limits)
    sizes = {unit: size_in(task, TypedSize(typed.number, unit, unit_typed=False)) for unit in units(task)}
    base = base_unit(task)
    sizes |= {unit: quantity.read(f"{typed.number:.12g} {unit}", base) for unit in (f"k{base}", base, f"m{base}")}
    for unit, size in sizes.items():
        if unit != typed.unit and is_accepted(task, replace(answer, size=size), limits):
            return unit
    return ""


def _prefix_meant(task: Task, answer: LearnerAnswer, typed: TypedSize, limits: Limits) -> str:
    """The unit with the prefix with which a number is right that was written with another one."""
    parts = quantity.unit_parts(typed.named) if typed.named else None
    if parts is None or typed.other:
        return ""
    for prefix, power in PREFIXES.items():
        meant = replace(answer, size=answer.size * float(f"1e{power - parts[0]}"))
        if power != parts[0] and is_accepted(task, meant, limits):
            return f"{prefix}{parts[1]}"
    return ""
