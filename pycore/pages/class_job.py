"""The making of a class set in small pieces, so that it can be watched, stopped, and typed beside."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from pycore import quantity
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.geometry import Point
from pycore.pages import class_key
from pycore.pages.class_set import ClassSet
from pycore.practice import tables
from pycore.practice.class_set import Learner, problems
from pycore.practice.codes import Code
from pycore.practice.key import Amount, KeyRow, length_of, row_of
from pycore.practice.task import DRAWN, Task
from pycore.quantity import QuantityError
from pycore.sheet.kinds import OVERLAY, PROBLEM, TWO
from pycore.words import class_set as words
from pycore.words.phrase import Phrase

SAME = 1e-9
"""Share of a value within which a phasor has it for its size."""
SHEETS, OVERLAYS, KEY = 0, 1, 2
"""The parts of the file, in their order."""
Result = tuple[dict[str, Any], bytes | None]


@dataclass(slots=True)
class Job:
    """Work under way: a generator that does a piece between two of its values, which say how far it is
    (sentence, share from 0 to 1), and what makes the result when it has ended. ``take`` gives the next part of the
    file where one is ready: the result then has only what follows."""

    steps: Iterator[tuple[str, float]]
    result: Callable[[], Result]
    take: Callable[[], bytes | None] = lambda: None
    said: str = ""
    share: float = 0.0
    ended: bool = False

    def go_on(self, pieces: int) -> None:
        """Do so many pieces, or what is left."""
        for _ in range(pieces):
            try:
                self.said, self.share = next(self.steps)
            except StopIteration:
                self.ended = True
                return


def named(group: ClassSet, place: int, code: Code, form: Mapping[str, str]) -> Learner:
    """The learner in a place with this problem, and with the name that the set has for the place."""
    name = group.name(place)
    return Learner(place, code, {**form, "who": name.printed}, name.whole)


def learners_of(group: ClassSet) -> Iterator[Learner | None]:
    """The learners of a set in turn; None after each problem that was passed over."""
    place = 0
    for found in problems(group.code, group.form_of):
        if found is None:
            yield None
            continue
        place += 1
        yield named(group, place, *found)
        if place == group.learners:
            return


def issue_of(group: ClassSet, learner: Learner) -> SetPlace:
    """A learner's place in the set; a sheet on which phasors are drawn already has its scale."""
    begun = learner.form.get("start") == TWO
    return SetPlace(
        str(learner.code), learner.place, group.learners,
        any_method=group.method == "any", own_scale=group.chosen["scale"] == "open" and not begun,
    )  # fmt: skip


def given_of(group: ClassSet, learner: Learner, task: Task | None) -> tuple[tuple[str, Amount], ...]:
    """The values of a learner's problem by their labels: quantities with their length on the sheet of ``task``, where a
    phasor of that length is drawn (None: nothing is), and the angles that are not 0."""
    labels, sizes = group.topic.value_labels(learner.form), [arm.size for arm in group.topic.case(learner.form).arms]
    mark = DECIMAL_MARKS[learner.form.get("decimal", "point")]
    amounts: list[tuple[str, Amount]] = []
    for field_ in group.topic.fields:
        text = learner.form.get(field_.name, "")
        label = labels.get(field_.name, field_.label)
        if not field_.counts(learner.form):
            continue
        if field_.group == "values" and text:
            length = _on_paper(text, field_.unit, task, sizes) if task is not None else ""
            unit = field_.unit or _unit_of(field_.default)
            named = f" {unit}" if unit and not length and text[-1:].isdigit() else ""
            amounts.append((label, Amount(_written(text, mark) + named, length)))
        elif field_.kind == "angle" and group.code.tier == "stretch":
            amounts.append((label, Amount("", angle=f"{text.replace('-', quantity.MINUS)}°")))
    return tuple(amounts)


def _unit_of(example: str) -> str:
    """The unit, without prefix, of a field that takes several: that of its example."""
    try:
        parts = quantity.unit_parts(quantity.split_number(example)[1])
    except QuantityError:
        return ""
    return parts[1] if parts else ""


def _written(text: str, mark: str) -> str:
    """A value as typed, with its decimal mark, and with minus and micro as they are printed."""
    try:
        rest = quantity.split_number(text)[1]
    except QuantityError:
        rest = ""
    if rest[:1] == "u" and quantity.unit_parts(rest) is not None:
        text = f"{text.strip().removesuffix(rest)}µ{rest[1:]}"
    return text.replace(",", ".").replace(".", mark).replace("-", quantity.MINUS)


def _on_paper(text: str, unit: str, task: Task, sizes: Sequence[float]) -> str:
    """The length of a given value on the sheet; "" for one that none of the phasors drawn has for its size."""
    if not unit or not task.writing.unit.endswith(unit) or task.factor <= 0:
        return ""
    try:
        size = quantity.read(text, unit)
    except QuantityError:
        return ""
    drawn = size == 0.0 or any(math.fabs(one - size) <= SAME * size for one in sizes)
    return quantity.fixed(quantity.on_ruler(size * task.factor), 1, task.writing.mark) if drawn else ""


def row_for(group: ClassSet, learner: Learner, task: Task | None = None, how: str = DRAWN) -> KeyRow:
    """A learner's line of the key; ``task`` is the problem, where it has been found already; ``how`` as in ``row_of``.
    """
    task = task or group.topic.task(learner.form)
    given = given_of(group, learner, task if how == DRAWN else None)
    to_find = _to_find(group, learner, task) if how == DRAWN else ()
    return replace(row_of(learner, task, given, group.limits, how), to_find=to_find)


def _to_find(group: ClassSet, learner: Learner, task: Task) -> tuple[tuple[Phrase, Amount], ...]:
    """What a learner calculates before it can be drawn: the phasors whose sizes are not given."""
    case = group.topic.case(learner.form)
    arms = [arm for arm in case.arms if not case.typed(arm.key)] if task.factor > 0 else []
    return tuple(
        (case.notation.tags[arm.key], Amount(case.notation.amount_of(arm.key, arm.size), length_of(task, arm.size)))
        for arm in arms
    )


@dataclass(slots=True)
class _Making:
    """One set under way: what the pages are written into, and the key so far."""

    group: ClassSet
    opening: ReopenInfo
    writer: Any
    rows: list[KeyRow] = field(default_factory=list)

    def sheets(self) -> Iterator[tuple[str, float]]:
        """Problem sheet, overlay and line of the key for each learner, then the key's pages."""
        group = self.group
        kinds = (PROBLEM, OVERLAY) if group.chosen["overlays"] == "yes" else (PROBLEM,)
        for learner in learners_of(group):
            share = 0.9 * len(self.rows) / group.learners
            if learner is None:
                yield words.working(len(self.rows) + 1, group.learners), share
                continue
            progress = words.working(learner.place, group.learners), share
            opening = self._opening(learner)
            for part, issued in enumerate(group.topic.issued(learner.form, opening, kinds)):
                yield progress
                if isinstance(issued, Task):
                    self.rows.append(row_for(group, learner, issued))
                else:
                    for page in issued if isinstance(issued, tuple) else (issued,):
                        self.writer.add(page, part)
                yield progress
        for number, page in enumerate(class_key.pages(group, self.rows, self.counts()), start=1):
            self.writer.add(page, KEY)
            yield words.key_working(number), 0.95

    def counts(self) -> tuple[int, int]:
        """Pages of problem sheets and of overlays: large print and easy reading have several to a sheet."""
        return self.writer.pages_of(SHEETS), self.writer.pages_of(OVERLAYS)

    def _opening(self, learner: Learner) -> ReopenInfo:
        qr = self.group.chosen["opens"] == "qr"
        return ReopenInfo(self.opening.base, qr, issue_of(self.group, learner), self.group.letters)

    def table(self) -> Iterator[tuple[str, float]]:
        """The lines of the key alone."""
        for learner in learners_of(self.group):
            if learner is not None:
                self.rows.append(row_for(self.group, learner))
            yield words.working(len(self.rows), self.group.learners), len(self.rows) / self.group.learners


def pdf_job(group: ClassSet, opening: ReopenInfo, correction: Point) -> Job:
    """The making of a set's PDF; ``opening`` holds the address of the topic's page."""
    # Only a set that is made needs the writer; the form's page need not wait for its import.
    from pycore.writers.pdf import Writer

    making = _Making(group, opening, Writer(correction=correction))

    def result() -> Result:
        title = words.file_title(str(group.code))
        data: bytes = making.writer.finish(title, subject=words.TITLE)
        message = words.saved(*class_key.ranges_of(making.counts()))
        if group.chosen["opens"] == "qr" and not opening.reachable:
            message = f"{message} {words.NO_QR_HERE}"
        name = words.file_name(str(group.code), "pdf")
        return {"filename": name, "type": "application/pdf", "told": message}, data

    return Job(making.sheets(), result, making.writer.take)


def key_job(group: ClassSet) -> Job:
    """The making of a set's key as a table of text."""
    making = _Making(group, ReopenInfo(), None)

    def result() -> Result:
        mark = DECIMAL_MARKS[group.chosen.get("decimal", "point")]
        data = tables.write(class_key.table(making.rows), mark).encode()
        file = {"filename": words.file_name(str(group.code), "csv"), "type": "text/csv;charset=utf-8"}
        return {**file, "told": words.saved_key(tables.separator(mark))}, data

    return Job(making.table(), result)
