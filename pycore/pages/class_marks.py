"""Marking a whole class: each line of a table judged as the answer checker would, marks per step, a summary."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from pycore import quantity
from pycore.errors import Fault, InputError
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.pages import class_table
from pycore.pages.class_job import learners_of
from pycore.pages.class_set import TOPICS, ClassSet
from pycore.pages.class_table import MarkedLine, RefusedLine
from pycore.pages.codes import fault_of
from pycore.pages.mistake_names import short
from pycore.pages.typed_answers import NO_ANSWER, judged
from pycore.practice import answers, results, tables
from pycore.practice.answers import AnswerJudgement
from pycore.practice.class_set import set_of
from pycore.practice.codes import Code, CodeError
from pycore.practice.following import own_is_right
from pycore.practice.generator import NoProblemError
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED, WRONG, band_of, ratio
from pycore.practice.part_marks import Range, added, summed
from pycore.practice.results import Entry
from pycore.practice.task import Limits, Task
from pycore.words import marks as words
from pycore.words import plain

MOST_LINES = 2000


@dataclass(slots=True)
class MarkingRun:
    """A table under way: its lines, the results so far, the lines that could not be used, with why, and how many
    answers nobody can read, which have no marks."""

    group: ClassSet
    entries: tuple[Entry, ...]
    results: list[MarkedLine] = field(default_factory=list)
    refused: list[RefusedLine] = field(default_factory=list)
    places: dict[str, tuple[int, str]] = field(default_factory=dict)
    seen: dict[str, int] = field(default_factory=dict)
    unread: int = 0

    @property
    def mark(self) -> str:
        """The decimal mark of the set."""
        return DECIMAL_MARKS[self.group.chosen.get("decimal", "point")]

    def steps(self) -> Iterator[tuple[str, float]]:
        """Find whose codes are whose, then judge each line."""
        whole = len(self.entries)
        codes = [_code_of(entry) for entry in self.entries if not entry.why]
        wanted = {str(code) for code in codes if code and set_of(code) == self.group.code}
        is_all = None in codes  # a mistyped code may be like that of any learner
        for learner in learners_of(self.group) if wanted or is_all else ():
            if learner is not None:
                self.places[str(learner.code)] = (learner.place, learner.name)
                wanted.discard(str(learner.code))
            yield words.progress(0, whole), 0.0
            if not wanted and not is_all:
                break
        for number, entry in enumerate(self.entries, start=1):
            self._judge(entry)
            yield words.progress(number, whole), number / whole

    def _judge(self, entry: Entry) -> None:
        try:
            if entry.why:
                raise ValueError(entry.why)
            self.results.append(self._result(entry))
        except CodeError as error:
            self.refused.append(self._mistyped(entry, error))
        except NoProblemError:
            self.refused.append(RefusedLine(entry.line, words.refused(entry.line, words.NO_PROBLEM)))
        except ValueError as error:
            self.refused.append(RefusedLine(entry.line, words.refused(entry.line, str(error))))

    def _mistyped(self, entry: Entry, error: CodeError) -> RefusedLine:
        """A line whose code cannot be used, with the one code of this set that it is like."""
        typed = entry.cells["code"]
        near = [code for code in self.places if class_table.is_near(typed, code)]
        if len(near) == 1:
            why = words.did_you_mean(entry.line, near[0], self.places[near[0]][0])
            return RefusedLine(entry.line, why, typed, near[0])
        return RefusedLine(entry.line, words.refused(entry.line, fault_of(typed, error, words.SHEET).message))

    def _result(self, entry: Entry) -> MarkedLine:
        code = results.code_of(entry.cells)
        page = next((one for one in TOPICS.values() if one.topic == code.topic), None)
        if page is None or code.number == 0:
            raise CodeError("topic")
        written = str(code)
        task: Task = page.task(page.practice_form(code, self.group.taken))
        read = judged(task, results.answer_of(entry.cells), self.group.limits)
        earlier = self.seen.setdefault(written, entry.line)
        remarks = [words.again(earlier)] if earlier != entry.line else []
        if set_of(code) != self.group.code:
            remarks.append(words.other_set(str(set_of(code))))
        place, name = self.places.get(written, (0, ""))
        name, place = entry.cells.get("name", "") or name, place if earlier == entry.line else 0
        remarks = [*read.notes, *remarks]
        if read.reply is None:
            self.unread += 1
            return _no_answer(entry, written, task, name, place, remarks)
        reply = read.reply
        marked = reply.marked
        shown = marked.causes[:MOST_NAMED] if not (reply.unit_meant or reply.follows or reply.missing) else ()
        names = tuple(tuple(plain(mistake.name) for mistake in cause.mistakes) for cause in shown)
        by_step = self._marks(task, reply, read.form)
        return MarkedLine(
            entry.line, name, written, entry.cells,
            class_table.given_cells(task, reply, entry.cells, self.mark),
            marked.band, marked.size_off, marked.angle_off, task.writing,
            tuple(tuple(dict.fromkeys(mistake.key for mistake in cause.mistakes)) for cause in shown),
            names, verdict_of(task, reply, words.causes(names) if names else "", self.mark),
            summed(by_step), tuple(remarks), place, by_step,
        )  # fmt: skip

    def _marks(self, task: Task, reply: AnswerJudgement, answer: Mapping[str, str]) -> tuple[Range, ...]:
        """Marks from and to of first step, length and angle; without the last where no angle is asked for."""
        bands = (_first_band(task, reply, answer, self.group.limits), length_band(reply), angle_band(task, reply))
        first, *others = marks_by_step(bands, self.group.marks)
        return (first, *others) if task.angled else (first, summed(others))

    def table(self) -> bytes:
        """The results as a table of text."""
        rows = class_table.table_of(self.results, self.mark, added(self.group.marks))
        return tables.write(rows, self.mark).encode()

    def counts(self) -> tuple[int, int, int]:
        """How many are accepted, to be looked at again, and wrong."""
        bands = [one.band for one in self.results]
        return bands.count(ACCEPT), bands.count(LOOK), bands.count(WRONG)

    def entry(self) -> tuple[dict[str, object] | None, int]:
        """What the register keeps of this (None: nothing), and how many lines it keeps nothing of: a code that was on
        an earlier line, or that is no learner's of this set."""
        rows = []
        for one in self.results:
            name = self.places[one.code][1] if one.place and self.group.names else one.name
            mistakes = [short(keys[0]) for keys in one.keys[:1]]
            if one.place:
                rows.append((one.place, name, one.marks, mistakes))
        return entry_of(self.group, rows), len(self.results) - len(rows)

    def summary(self) -> tuple[tuple[str, int, int], ...]:
        """The class's mistakes, the commonest first: in few words, how many made it surely, how many perhaps."""
        sure: dict[str, int] = {}
        perhaps: dict[str, int] = {}
        for one in self.results:
            counted = sure if len(one.keys) == 1 else perhaps
            for keys in one.keys:
                label = " / ".join(short(key) for key in keys[:2])
                counted[label] = counted.get(label, 0) + 1
        labels = list(dict.fromkeys((*sure, *perhaps)))
        lines = [(label, sure.get(label, 0), perhaps.get(label, 0)) for label in labels]
        return tuple(sorted(lines, key=lambda row: (-row[1], -row[2], row[0])))


def _no_answer(
    entry: Entry, code: str, task: Task, name: str, place: int, remarks: Sequence[str]
) -> MarkedLine:
    """A line whose answer nobody can read: no marks, and its learner stays in the totals."""
    how = words.HOWS[entry.cells.get("answer-how", "").lower()]
    cells = (entry.cells["answer"], "", "", "", how, "", "", "")
    return MarkedLine(
        entry.line, name, code, entry.cells, cells, WRONG, None, None, task.writing, ((NO_ANSWER,),), (), "", (0, 0),
        tuple(remarks), place,
    )  # fmt: skip


def entry_of(
    group: ClassSet, rows: Sequence[tuple[int, str, Range, Sequence[str]]]
) -> dict[str, object] | None:
    """What the register keeps of a set's marks: place, name, marks and mistakes of each learner; None of nobody's. A
    set has one question."""
    of = added(group.marks)
    marks = []
    for place, name, (low, high), mistakes in rows:
        counted = {"low": low, "high": high, "mistakes": list(mistakes)}
        marks.append({"place": place, "name": name, **counted, "questions": [{"number": 1, **counted}]})
    entry = {
        "paper": str(group.code), "title": group.topic.title, "group": "", "of": of, "date": "",
        "learners": group.learners, "marks": marks, "questions": [{"number": 1, "of": of}],
    }  # fmt: skip
    return entry if marks else None


def _code_of(entry: Entry) -> Code | None:
    """The code of a line, if it can be read."""
    try:
        return None if entry.why else results.code_of(entry.cells)
    except CodeError:
        return None


def marks_by_step(bands: Sequence[str], worths: Sequence[int]) -> tuple[Range, ...]:
    """Marks from and to of each step: one that is to be looked at again may have its marks or not."""
    return tuple(
        (worth if band == ACCEPT else 0, worth if band in (ACCEPT, LOOK) else 0)
        for band, worth in zip(bands, worths, strict=True)
    )


def _near_miss(task: Task, reply: AnswerJudgement, mark: str) -> str:
    """What is just beyond its tolerance, in size and angle; "" for an answer that is further off."""
    marked = reply.marked
    if marked.band != LOOK:
        return ""
    beyond = []
    if math.fabs(marked.size_off) > marked.size_tolerance:
        factor = task.writing.factor
        decimals = quantity.decimals_for(marked.size_tolerance / factor, 2)
        off, allowed = (quantity.fixed(math.fabs(one) / factor, decimals, mark)
                        for one in (marked.size_off, marked.size_tolerance))  # fmt: skip
        beyond.append(words.off_and_allowed(words.SIZE, off, allowed, f" {task.writing.unit}"))
    if marked.angle_off is not None and math.fabs(marked.angle_off) > marked.angle_tolerance:
        off, allowed = (quantity.fixed(math.fabs(one), 2, mark) for one in (marked.angle_off, marked.angle_tolerance))
        beyond.append(words.off_and_allowed(words.ANGLE, off, allowed, "°"))
    return words.near_miss(beyond) if beyond else ""


def verdict_of(task: Task, reply: AnswerJudgement, causes: str, mark: str) -> str:
    """What an answer's verdict rests on, in few words; ``causes``: the mistakes that would give it, "" for none;
    ``mark``: the decimal mark of whoever marks."""
    if reply.marked.band == ACCEPT:
        return ""
    if reply.missing:
        return words.WHICH_SIDE if reply.missing == "side" else words.SIZE_RIGHT
    if reply.coarse:
        return words.COARSE
    if reply.unit_meant:
        return words.meant(reply.unit_meant)
    if reply.follows:
        return words.FOLLOWS
    if reply.origin is not None:
        from_there = words.of_arrow if reply.origin.opposite else words.measured_from
        return from_there(plain(reply.origin.name))
    return "; ".join(filter(None, (_near_miss(task, reply, mark), causes))) or words.NO_CAUSE


def _first_band(task: Task, reply: AnswerJudgement, answer: Mapping[str, str], limits: Limits) -> str:
    """A first step that was not written down is taken to be right where the answer is, or where it is the answer."""
    if answer.get("answer-first"):
        return WRONG if "first" in reply.wrong_before else ACCEPT
    asked = any(earlier.key == "first" for earlier in task.earlier)
    if asked and reply.answer.angle is not None:
        stopped = answers.intermediate_of(task, "first", reply.entries[""])
        if own_is_right(task, stopped, reply.answer.how, limits):
            return ACCEPT
    return ACCEPT if reply.missing else reply.marked.band


def length_band(reply: AnswerJudgement) -> str:
    """The length by itself; what follows from an own earlier value counts, a wrong unit is looked at again."""
    if reply.follows:
        return ACCEPT
    if reply.unit_meant or reply.coarse:
        return LOOK
    band = band_of(ratio(math.fabs(reply.marked.size_off), reply.marked.size_tolerance))
    return ACCEPT if reply.marked.band == ACCEPT else band


def angle_band(task: Task, reply: AnswerJudgement) -> str:
    """The angle by itself; none given, none earned. Where none is asked for, its marks go with the length."""
    if not task.angled:
        return length_band(reply)
    if reply.marked.angle_off is None:
        # Where the sum is nothing there is no angle to give.
        return WRONG if task.angle is not None else length_band(reply)
    if reply.missing == "side" or reply.origin is not None:
        return LOOK
    if reply.follows or reply.marked.band == ACCEPT:
        return ACCEPT
    return band_of(ratio(math.fabs(reply.marked.angle_off), reply.marked.angle_tolerance))


def codes_by_name(group: ClassSet) -> dict[str, str]:
    """The codes of a set's learners by their names, as ``results.known_by`` has them."""
    if not group.names:
        return {}
    return results.known_by((one.name, str(one.code)) for one in learners_of(group) if one is not None)


def read_results(text: str, group: ClassSet | None = None) -> tuple[Entry, ...]:
    """The lines of a pasted table, for a set whose learners may be known by name. Raises InputError where there is
    none, or there are too many."""
    entries = results.read(text, codes_by_name(group) if group is not None else None)
    if not entries:
        raise InputError(Fault("results", "", words.NOTHING))
    if len(entries) > MOST_LINES:
        raise InputError(Fault("results", "", words.too_many(len(entries), MOST_LINES)))
    return entries

