"""Free practice: the tracks, and the current problem of a record."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from pycore.calculators.registry import CALCULATORS, MAIN
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.common import OWN_PAPER_FIELDS, SHARED
from pycore.forms.conventions import MARKS
from pycore.forms.fields import Field
from pycore.forms.reading import Reader
from pycore.pages.codes import CodeProblem, find
from pycore.practice import ladder
from pycore.practice.codes import METHODS, SEEDS, TIERS, Code
from pycore.practice.ladder import Record, RecordError
from pycore.quantity import MINUS
from pycore.sums.page import SumPage
from pycore.words import practice as words


@dataclass(frozen=True, slots=True)
class Track:
    """A topic with a method to practise: its key, the page, and its name in the list."""

    key: str
    title: str
    name: str


@cache
def methods_of(page: SumPage[Any]) -> tuple[str, ...]:
    """Return the methods that a page's problems can demand; ``any`` if it has only one. Cached."""
    held = [
        method
        for method in METHODS[1:]
        if page.practice_form(Code(page.topic, TIERS[0], method)).get("method") == method
    ]
    return tuple(held) if len(held) > 1 else METHODS[:1]


def choices() -> tuple[Track, ...]:
    """Return every track, page by page."""
    tracks: list[Track] = []
    for page in CALCULATORS.values():
        for method in methods_of(page):
            name = words.way_name(page.title, words.METHODS[method])
            tracks.append(Track(ladder.track_key(page.topic, method), page.title, name))
    return tuple(tracks)


def first_track() -> str:
    """Return the track of a new record: the first of the main job."""
    page = CALCULATORS[MAIN]
    return ladder.track_key(page.topic, methods_of(page)[0])


def empty(seed: object) -> Record:
    """A new record; ``seed`` is the device's own random number."""
    known = isinstance(seed, int) and not isinstance(seed, bool)
    return Record(int(seed) % SEEDS if known else 0, first_track())  # type: ignore[call-overload]


def problem_of(record: Record) -> CodeProblem:
    """Return the current problem. Raises RecordError if no page has it."""
    try:
        return find(record.current_track.code)
    except InputError:
        raise RecordError("value", "code") from None


FIELDS: tuple[Field, ...] = (
    Field("scale", words.SCALE, "quantity", "scale"), *(SHARED[name] for name in OWN_PAPER_FIELDS),
)  # fmt: skip
"""How a learner draws, whatever the problem: no part of the record."""


def scale_label(problem: CodeProblem) -> str:
    """Return the label of the scale, in the unit of what the problem draws."""
    usual = next(field.label for field in problem.page.fields if field.name == "scale")
    return problem.page.labels(problem.form).get("scale", usual)


FOLLOWED = ("names", "colours", "decimal", "angles", "first", "rotation", "resultant", "protractor", "parallels")
"""The college settings that problems of practice follow."""


def as_college(problem: CodeProblem, chosen: object) -> CodeProblem:
    """Return a problem with the settings of the device's college; what is none of a page's options is passed over."""
    texts = chosen if isinstance(chosen, dict) else {}
    followed = {
        field.name: texts[field.name] for field in problem.page.fields
        if field.name in FOLLOWED and texts.get(field.name) in [option.value for option in field.options]
    }  # fmt: skip
    return replace(problem, form={**problem.form, **followed})


def drawn_on(problem: CodeProblem, typed: object) -> tuple[CodeProblem, tuple[Fault, ...]]:
    """Return a problem as a learner draws it, by what was typed in the fields above, and the faults of that; as its
    sheet has it where that cannot be used."""
    texts = typed if isinstance(typed, dict) else {}
    own = {field.name: str(texts.get(field.name, ""))[: links.LONGEST_VALUE] for field in FIELDS}
    drawn = replace(problem, form={**problem.form, **own})
    try:
        return drawn, problem.page.case(drawn.form).chosen.misfit
    except InputError as error:
        return problem, error.faults


MOST_PASSED = 20
"""So many problems in a row are passed over at the most; all of a way are never too flat."""


def _fair(record: Record) -> Record:
    """The record with its new problem, or the first after it whose drawing is not too flat to be marked."""
    for _ in range(MOST_PASSED):
        found = problem_of(record)
        if not found.page.task(found.form).too_flat:
            break
        record = ladder.following(record)
    return record


def next_problem(record: Record) -> Record:
    """The record with the next problem of its way."""
    return _fair(ladder.following(record))


def turned_to(record: Record, way: str) -> Record:
    """The record at another way of practising, whose problem is as it was left. Raises RecordError."""
    if way not in [choice.key for choice in choices()]:
        raise RecordError("value", "way")
    there = ladder.turned_to(record, way)
    return there if way in record.tracks and record.tracks[way].code else _fair(there)


def checked(record: Record) -> Record:
    """Return a record whose problem can be set. Raises RecordError."""
    if record.track not in [choice.key for choice in choices()]:
        raise RecordError("value", "way")
    if not record.current_track.code:
        return _fair(ladder.begun(record))
    problem_of(record)
    return record


def values_of(problem: CodeProblem) -> tuple[tuple[str, str, str], ...]:
    """Return label, value and the key of the line of every field of the problem that is filled ("": it has none)."""
    labels: Mapping[str, str] = problem.page.value_labels(problem.form)
    rows: list[tuple[str, str, str]] = []
    for field in problem.page.fields:
        text = problem.form.get(field.name, "").strip()
        counts = field.group == "values" or (field.group == "loads" and text != field.default)
        if not text or not counts or not field.counts(problem.form):
            continue
        label = labels.get(field.name, field.label)
        if field.kind == "choice":
            chosen = next((one.label for one in field.options if one.value == text), text)
            rows.append((label, chosen, ""))
        else:
            written = _written(text, field.unit or problem.form.get("unit", ""))
            rows.append((label, _with_side(problem, field, written), field.sample))
    return tuple(rows)


def _with_side(problem: CodeProblem, field: Field, written: str) -> str:
    """Return an angle of lag or lead with the word for its side: ``10° lead``; every other value as it is written."""
    if field.kind != "angle" or not written.endswith("°"):
        return written
    angle = Reader(problem.form, {field.name: field}).lag(field.name)
    return angle.echo(MARKS[problem.form.get("decimal", "point")])["degrees"]


_ONE_PART = "+j"


def _written(text: str, unit: str) -> str:
    """Return a value as it is written on paper, each of its parts with unit and degrees: ``19 A at −30°``.

    The two parts of an impedance have one unit: ``40 + j30 Ω``.
    """
    parts = [part.partition(" at ") for part in text.replace(" + j", _ONE_PART).split(" + ")]
    said = (_with_unit(size, unit) + at + _with_unit(angle, "°" if angle else "") for size, at, angle in parts)
    return " + ".join(said).replace(_ONE_PART, " + j").replace("-", MINUS)


def _with_unit(text: str, unit: str) -> str:
    """Return a number without a unit with its field's unit."""
    if not unit or not text[-1:].isdigit():
        return text
    return f"{text}°" if unit == "°" else f"{text} {unit}"


def fragment_of(page: SumPage[Any], form: Mapping[str, str]) -> str:
    """The link's part after # that opens a form on its page."""
    return links.fragment(links.form_pairs(form, page.fields))
