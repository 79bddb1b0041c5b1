"""The form of a class set: every key of its links, for ever, and what it asks for.

Topics are the registered calculators that can set problems; nothing here knows which they are.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from pycore.calculators.registry import CALCULATORS, by_topic, module_of
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field, Option, default_form
from pycore.forms.reading import Reader
from pycore.lettering.glyphs import NO_LETTERS, Letters
from pycore.pages.codes import fault_of
from pycore.pages.practice import methods_of
from pycore.practice import codes
from pycore.practice.codes import GENERATOR, MOST_LEARNERS, SEEDS, Code, CodeError
from pycore.practice.limits import ALLOWANCES, read_limits
from pycore.practice.task import Limits
from pycore.sheet.lettered import width_of
from pycore.sheet.title_block import LEAST_TYPED, lower_cells
from pycore.words import class_set as words
from pycore.words import codes as code_words
from pycore.words import college as college_words

TOPICS: dict[str, Any] = {slug: CALCULATORS[slug] for slug in by_topic().values()}
"""Calculators that can set problems, by slug, in the order of their numbers in codes: the first is the default."""
TAKEN = ("print", "names", "colours", "decimal", "angles", "first", "rotation", "resultant", "protractor")
"""Conventions of the classroom that a set takes from the calculator's own form."""
SHOWN_NAMES = 4
JOINERS = "\u200c\u200d"
"""Marks that join letters or part them, in names of several scripts; all else that cannot be printed is left out."""
MARKS = (("marks-first", words.MARKS_FIRST), ("marks-length", words.MARKS_LENGTH), ("marks-angle", words.MARKS_ANGLE))


def _taken() -> tuple[Field, ...]:
    """Fields of the calculators that a set takes over, each once."""
    shared: dict[str, Field] = {}
    for page in TOPICS.values():
        for field in page.fields:
            if field.name in TAKEN:
                label = college_words.RESULTANT if field.name == "resultant" else field.label
                shared.setdefault(field.name, Field(
                    field.name, label, field.kind, "signs", field.default, help=field.help, options=field.options
                ))  # fmt: skip
    return tuple(shared[name] for name in TAKEN if name in shared)


_TOPIC = Field(
    "topic", words.TOPIC, "choice", "topic", next(iter(TOPICS)),
    options=tuple(Option(slug, page.title) for slug, page in TOPICS.items()),
)  # fmt: skip
FIELDS: tuple[Field, ...] = (
    _TOPIC,
    choice_field("tier", words.TIER, "method", "core", words.TIERS, words.TIER_HELP),
    Field("learners", words.LEARNERS, "quantity", "count", "30", help=words.LEARNERS_HELP),
    choice_field("method", words.METHOD, "sheets", "any", words.METHODS, words.METHOD_HELP),
    choice_field("paper", words.PAPER, "sheets", "A4", tuple((paper, paper) for paper in codes.PAPERS)),
    choice_field("scale", words.SCALE, "sheets", "given", words.SCALES),
    choice_field("overlays", words.OVERLAYS, "sheets", "yes", words.OVERLAY_CHOICES),
    choice_field("opens", words.OPENS, "sheets", "qr", words.OPENS_CHOICES, words.OPENS_HELP),
    Field("allow-percent", words.PERCENT, "quantity", "marking", "", "%", help=words.LIMIT_HELP),
    Field("allow-degrees", words.DEGREES, "quantity", "marking", "", "°", help=words.LIMIT_HELP),
    Field("marks-first", words.MARKS_FIRST, "quantity", "marking", "1"),
    Field("marks-length", words.MARKS_LENGTH, "quantity", "marking", "2"),
    Field("marks-angle", words.MARKS_ANGLE, "quantity", "marking", "1"),
    *_taken(),
    Field("seed", words.SEED, "quantity", "again", "0", help=words.SEED_HELP),
    replace(
        choice_field("generator", words.GENERATOR, "again", str(GENERATOR), words.GENERATORS, words.GENERATOR_HELP),
        before=(("1", "1"), ("2", "1")),
    ),
    Field("code", words.CODE, "text", "again", help=words.CODE_HELP, private=True),
)
"""``code`` is what is typed to get a set again: reading it sets the others, and no link carries it."""
BY_NAME = {field.name: field for field in FIELDS}


@dataclass(frozen=True, slots=True)
class LearnerName:
    """A learner's name: whole, and as it is printed on a sheet. ``is_set``: it has letters for it; else the learner's
    number stands in its place."""

    whole: str
    printed: str
    is_set: bool = True


@dataclass(frozen=True, slots=True)
class ClassSet:
    """A class set as asked for: its code (number 0), how many learners, their names (none, or one for each),
    the form's choices, tolerance, marks for first step, length and angle, and what there is to say."""

    code: Code
    learners: int
    names: tuple[LearnerName, ...]
    chosen: Mapping[str, str]
    limits: Limits
    marks: tuple[int, int, int]
    notices: tuple[str, ...]
    link: tuple[tuple[str, str], ...]
    letters: Letters = NO_LETTERS

    @property
    def topic(self) -> Any:
        """The calculator that sets the problems."""
        return TOPICS[self.chosen["topic"]]

    @property
    def method(self) -> str:
        """The method that the sheets ask for: the one chosen, or ``any`` where the topic has no problems by it."""
        return self.code.method if self.code.method in methods_of(self.topic) else codes.METHODS[0]

    @property
    def taken(self) -> dict[str, str]:
        """The classroom's conventions, for every learner's form."""
        return {field.name: self.chosen[field.name] for field in FIELDS if field.group == "signs"}

    def form_of(self, code: Code) -> dict[str, str]:
        """The form of one learner's problem. Raises NoProblemError."""
        form: dict[str, str] = self.topic.practice_form(code, self.taken)
        return form

    def name(self, place: int) -> LearnerName:
        """The name of the learner in a place (from 1)."""
        return self.names[place - 1] if self.names else LearnerName("", "")


def _whole_number(text: str, most: int) -> int | None:
    """A whole number from 0 to ``most``; None for any other text."""
    return int(text) if text.isascii() and text.isdigit() and len(text) <= 9 and int(text) <= most else None


def _learners(reader: Reader) -> int:
    typed, label = reader.text("learners"), reader.label("learners")
    number = _whole_number(typed, 999_999_999)
    if number is not None and number > MOST_LEARNERS:
        reader.fault("learners", words.too_many(label, typed, str(MOST_LEARNERS)))
    elif not number:
        reader.fault("learners", words.bad_count(label, typed, str(MOST_LEARNERS)))
    return number or 1


def _limits(reader: Reader) -> Limits:
    texts = {one.name: reader.text(one.name) for one in ALLOWANCES}
    limits, faults = read_limits(texts, lambda one, text: words.bad_limit(reader.label(one.name), text, *one.bounds))
    reader.faults += faults
    return limits


def _marks(reader: Reader) -> tuple[int, int, int]:
    found = []
    for name, label in MARKS:
        number = _whole_number(reader.text(name), 20)
        if number is None:
            reader.fault(name, words.bad_marks(label, reader.text(name)))
        found.append(number or 0)
    return found[0], found[1], found[2]


def _seed(reader: Reader) -> int:
    number = _whole_number(reader.text("seed"), SEEDS - 1)
    if number is None:
        reader.fault("seed", words.bad_seed(reader.label("seed"), reader.text("seed"), str(SEEDS - 1)))
    return number or 0


def _unquoted(line: str) -> str:
    """A name as it was meant: a spreadsheet puts one with a comma in quotes, and a tab between columns."""
    name = " ".join(line.split())
    if len(name) > 1 and name[0] == name[-1] == '"':
        name = name[1:-1].replace('""', '"').strip()
    return "".join(sign for sign in name if sign.isprintable() or sign in JOINERS)


def shortened(name: str, room: float, capitals: float, letters: Letters = NO_LETTERS) -> str:
    """A name as it fits so many mm: cut where it is too wide, "" where no letters are there for it.

    A name in letters of other fonts is cut between words only: within one, letters that join would change their shape.
    """
    short = name
    while (setting := letters.set(short)) is not None and width_of(setting, capitals) > room:
        kept = short.removesuffix("…")
        if isinstance(setting, str):
            short = kept[:-1].rstrip() + "…"
        elif " " in kept:
            short = kept.rpartition(" ")[0] + "…"
        else:
            return ""
    return "" if setting is None else short


def _named_lines(roll: str) -> list[tuple[int, str]]:
    """The names of a pasted list, each with the number of its line."""
    lines = [(number, _unquoted(line)) for number, line in enumerate(roll.splitlines(), start=1)]
    return [(number, name) for number, name in lines if name]


def names_of(roll: str) -> list[str]:
    """The names of a pasted list as they are printed; none of a list that is refused."""
    names = [name for _, name in _named_lines(roll)]
    return names if len(names) <= MOST_LEARNERS else []


def read_roll(roll: str, paper: str, letters: Letters = NO_LETTERS) -> tuple[LearnerName, ...]:
    """The names of a pasted list. Raises InputError."""
    named = _named_lines(roll)
    long = [number for number, name in named if len(name) > words.LONGEST_NAME]
    if long:
        raise InputError(Fault("roll", "", words.long_name(long[0])))
    if len(named) > MOST_LEARNERS:
        raise InputError(Fault("roll", "", words.too_many_names(len(named), str(MOST_LEARNERS))))
    room = lower_cells(paper)[0]
    short = [(name, shortened(name, room, LEAST_TYPED, letters)) for _, name in named]
    return tuple(
        LearnerName(name, printed or words.by_number(place), bool(printed))
        for place, (name, printed) in enumerate(short, start=1)
    )


def _method_notice(topic: Any, method: str) -> tuple[str, ...]:
    """What is to be said of a method that a topic's problems do not have."""
    if method in ("any", *methods_of(topic)):
        return ()
    return (words.no_such_method(topic.title, dict(words.METHODS)[method]),)


def name_notices(names: tuple[LearnerName, ...]) -> tuple[str, ...]:
    """What is to be said of the names."""
    if not names:
        return ()
    notices = [words.by_names(len(names))]
    counts: dict[str, int] = {}
    for name in names:
        counts[name.whole] = counts.get(name.whole, 0) + 1
    twice = [name for name, number in counts.items() if number > 1]
    unset = list(dict.fromkeys(name.whole for name in names if not name.is_set))
    for found, notice in ((twice, words.twice), (unset, words.unset)):
        if found:
            notices.append(notice(found[:SHOWN_NAMES], max(0, len(found) - SHOWN_NAMES)))
    return tuple(notices)


def read_set(form: Mapping[str, str], roll: str = "", letters: Letters = NO_LETTERS) -> ClassSet:
    """The set that a form and a list of names ask for. Raises InputError with every fault found."""
    reader = Reader(form, BY_NAME)
    chosen = {field.name: reader.choice(field.name) for field in FIELDS if field.kind == "choice"}
    names: tuple[LearnerName, ...] = ()
    try:
        names = read_roll(roll, chosen["paper"], letters)
    except InputError as error:
        reader.faults += error.faults
    learners = len(names) or _learners(reader)
    limits = _limits(reader)
    marks, seed = _marks(reader), _seed(reader)
    reader.finish()
    drawn = chosen["tier"], chosen["method"], chosen["paper"]
    code = Code(TOPICS[chosen["topic"]].topic, *drawn, seed, generator=int(chosen["generator"]))
    link = links.form_pairs({field.name: reader.text(field.name) for field in FIELDS}, FIELDS, ALWAYS)
    notices = (*_method_notice(TOPICS[chosen["topic"]], code.method), *name_notices(names))
    return ClassSet(code, learners, names, chosen, limits, marks, notices, link, letters)


ALWAYS = ("topic", "tier", "learners", "method", "paper", "seed")
"""What every link of a set names."""


def values_of(text: str) -> dict[str, str]:
    """The form values that a set's code or any of its learners' codes stands for. Raises InputError."""
    try:
        code = codes.read(text)
    except CodeError as error:
        raise InputError(fault_of(text, error)) from None
    slug = next((slug for slug, page in TOPICS.items() if page.topic == code.topic), None)
    if slug is None:
        raise InputError(Fault("code", text, code_words.unusable(text, "topic", "")))
    return {
        "topic": slug, "tier": code.tier, "method": code.method, "paper": code.paper, "seed": str(code.seed),
        "generator": str(code.generator),
    }  # fmt: skip


def default_set() -> ClassSet:
    """The set that the page opens with."""
    return read_set(default_form(FIELDS))


def level_words(group: ClassSet) -> str:
    """What the level of a set holds, as a sentence."""
    tier = group.code.tier
    return f"{dict(words.TIERS)[tier]}: {module_of(group.topic.slug, 'teaching').LEVELS[tier]}."
