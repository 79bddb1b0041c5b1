"""A question paper as data: its form, every key of it for ever, and what it asks for.

A question has values drawn for each learner, as a class set has, or a lecturer's own, which are the same for all.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from typing import Any

from pycore import lettering
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.conventions import MARKS as DECIMAL_MARKS
from pycore.forms.conventions import choice_field
from pycore.forms.fields import Field, default_form
from pycore.forms.reading import Reader
from pycore.lettering.glyphs import NO_LETTERS, Letters
from pycore.pages import class_set
from pycore.pages.class_job import learners_of, named
from pycore.pages.class_set import TOPICS, ClassSet, LearnerName
from pycore.pages.own_values import LONGEST_LINK, is_link, read_own
from pycore.pages.practice import methods_of
from pycore.practice import codes
from pycore.practice.class_set import Learner
from pycore.practice.codes import FINGERPRINTS, GENERATOR, MOST_LEARNERS, SEEDS, Code, PaperCode
from pycore.practice.part_marks import added
from pycore.practice.seeded_integers import integers_of
from pycore.practice.task import NO_LIMITS
from pycore.words import class_set as set_words
from pycore.words import inputs
from pycore.words import question_paper as words

MOST_QUESTIONS = 10
MOST_MARKS, MOST_MINUTES = 20, 999
LONGEST = {"title": 60, "college": 60, "group": 40, "date": 40, "instructions": 300}
LONGEST_BEFORE = 400
SET_APART = 7919
"""What the seeds of two questions differ by: a prime, so that no two of a paper are the same."""
EXAMPLE = ("neutral-current", "add-phasors", "power-triangle")
"""The topics of the paper that the page opens with."""
MARKS = {
    "scale": "1", "directions": "2", "lengths": "2", "resultant": "2", "method": "2", "accuracy": "1", "values": "0",
}  # fmt: skip
_TOPICS = tuple((slug, page.title) for slug, page in TOPICS.items())
SIGNS: tuple[Field, ...] = tuple(field for field in class_set.FIELDS if field.group == "signs")

PAPER_FIELDS = (
    Field("title", words.PAPER_TITLE, "text", "head", words.DEFAULT_TITLE),
    Field("college", words.COLLEGE, "text", "head"),
    Field("group", words.GROUP, "text", "head"),
    Field("date", words.DATE, "text", "head"),
    Field("minutes", words.MINUTES, "quantity", "head", "60", help=words.MINUTES_HELP),
    Field("instructions", words.INSTRUCTIONS, "text", "head", words.DEFAULT_INSTRUCTIONS, longest=300),
    Field("learners", words.LEARNERS, "quantity", "head", "12", help=words.LEARNERS_HELP),
    choice_field("codes", words.CODES, "sheets", "paper", words.CODES_CHOICES, words.CODES_HELP),
    choice_field("paper", words.PAPER, "sheets", "A4", tuple((paper, paper) for paper in codes.PAPERS)),
    choice_field("overlays", words.OVERLAYS, "sheets", "yes", words.OVERLAY_CHOICES, words.OVERLAYS_HELP),
    choice_field("scale", words.SCALE, "sheets", "given", set_words.SCALES),
    *SIGNS,
    Field("seed", words.SEED, "quantity", "again", "0", help=words.SEED_HELP),
    choice_field("generator", set_words.GENERATOR, "again", str(GENERATOR), set_words.GENERATORS),
    Field("questions", words.COUNT, "quantity", "count", str(len(EXAMPLE))),
)


def key_of(number: int, name: str) -> str:
    """The key of a question's field in the form."""
    return f"q{number}-{name}"


def _fields_of(number: int) -> tuple[Field, ...]:
    """The fields of one question."""
    name, group = partial(key_of, number), f"q{number}"
    topic = EXAMPLE[number - 1] if number <= len(EXAMPLE) else EXAMPLE[0]
    return (
        choice_field(name("topic"), words.TOPIC, group, topic, _TOPICS),
        choice_field(name("tier"), words.TIER, group, "core", set_words.TIERS),
        choice_field(name("method"), words.METHOD, group, "any", set_words.METHODS),
        choice_field(name("asks"), words.ASKS, group, "both", words.ASKS_CHOICES),
        choice_field(name("working"), words.WORKING, group, "lines", words.WORKING_CHOICES),
        *(Field(name(f"marks-{key}"), label, "quantity", f"{group}-marks", MARKS[key])
          for key, label in words.PARTS.items()),
        Field(name("before"), words.BEFORE, "text", f"{group}-more", longest=LONGEST_BEFORE),
        Field(name("link"), words.LINK, "text", f"{group}-own", longest=LONGEST_LINK),
    )  # fmt: skip


QUESTION_FIELDS = tuple(_fields_of(number) for number in range(1, MOST_QUESTIONS + 1))
"""The fields of every question that a paper may have, by its place."""
FIELDS: tuple[Field, ...] = (*PAPER_FIELDS, *(field for fields in QUESTION_FIELDS for field in fields))
BY_NAME = {field.name: field for field in FIELDS}


@dataclass(frozen=True, slots=True)
class Question:
    """One question: its number from 1, its class set, the lecturer's own values (None: drawn for each learner), what
    is asked, the sentences before it, the space for working, and the marks by part of what is asked."""

    number: int
    group: ClassSet
    own: Mapping[str, str] | None
    asks: str
    before: str
    working: str
    marks: tuple[tuple[str, int], ...]
    any_method: bool
    """Whether each learner chooses the method: that of a link is its own."""

    @property
    def is_drawn(self) -> bool:
        """Whether a drawing is asked for."""
        return self.asks != "calculation"

    def parts(self, keys: tuple[str, ...]) -> tuple[tuple[str, int], ...]:
        """Those of the marks that are for these parts."""
        return tuple(part for part in self.marks if part[0] in keys)

    @property
    def total(self) -> int:
        """All marks of the question."""
        return added(count for _, count in self.marks)

    def learners(self) -> Iterator[Learner | None]:
        """The question's problem for each learner in turn; None after each problem that was passed over."""
        group, own = self.group, self.own
        if own is None:
            yield from learners_of(group)
            return
        for place in range(1, group.learners + 1):
            yield named(group, place, replace(group.code, number=place), own)


@dataclass(frozen=True, slots=True)
class QuestionPaper:
    """A paper as asked for: its texts by key, minutes (0: not printed), number of learners and their names (none, or
    one for each), how sheets show codes, its questions, and the pairs of its link."""

    texts: Mapping[str, str]
    minutes: int
    learners: int
    names: tuple[LearnerName, ...]
    codes: str
    paper: str
    overlays: bool
    questions: tuple[Question, ...]
    link: tuple[tuple[str, str], ...]
    letters: Letters = NO_LETTERS

    @property
    def mark(self) -> str:
        """The decimal mark of the paper."""
        chosen: str = self.questions[0].group.chosen.get("decimal", "point")
        return DECIMAL_MARKS[chosen]

    @property
    def total(self) -> int:
        """All marks of the paper."""
        return added(question.total for question in self.questions)

    def code(self, place: int = 0) -> PaperCode:
        """The code of the paper of the learner in a place (0: of the paper itself)."""
        return PaperCode(self.fingerprint, place)

    @property
    def fingerprint(self) -> int:
        """A number that papers with other questions do not share (but once in 34 million)."""
        parts = [self.paper]
        for one in self.questions:
            code = one.group.code
            values = str(one.group.topic.check_code(one.group.topic.case(one.own))) if one.own else str(code)
            parts.append(f"{one.asks} {values}")
        return integers_of(len(parts), *"|".join(parts).encode()).below(FINGERPRINTS)

    def name(self, place: int) -> LearnerName:
        """The name of the learner in a place (from 1)."""
        return self.names[place - 1] if self.names else LearnerName("", "")


def _count(reader: Reader, name: str, most: int, least: int = 0) -> int:
    """A whole number; 0 with a fault for any other text."""
    typed = reader.text(name).strip()
    number = int(typed) if typed.isascii() and typed.isdigit() and len(typed) < 9 else -1
    if not least <= number <= most:
        bad = words.bad_learners if least else words.bad_number
        reader.fault(name, bad(reader.label(name), typed, str(most)))
        return least
    return number


def _text(reader: Reader, name: str, most: int) -> str:
    """A text without line ends and signs that cannot be seen, "" with a fault if it is too long."""
    typed = " ".join("".join(sign if sign.isprintable() else " " for sign in reader.text(name)).split())
    if len(typed) > most:
        reader.fault(name, words.too_long(reader.label(name), most))
        return ""
    missing = lettering.missing(typed, "regular") or lettering.missing(typed, "bold")
    if missing:
        reader.fault(name, inputs.no_such_letters(reader.label(name), missing), missing)
        return ""
    return typed


def _question(reader: Reader, number: int, common: ClassSet) -> Question:
    """One question as its fields say."""
    name = partial(key_of, number)
    chosen = {key: reader.choice(name(key)) for key in ("topic", "tier", "method", "asks", "working")}
    asked_by = chosen["method"] if chosen["method"] in methods_of(TOPICS[chosen["topic"]]) else codes.METHODS[0]
    by_one = {} if asked_by == codes.METHODS[0] else {"method": asked_by}
    own = read_own(reader, name("link"), TOPICS[chosen["topic"]], common.chosen, by_one)
    linked = is_link(reader.text(name("link")))
    page = own[0] if own else None if linked else TOPICS[chosen["topic"]]
    asked = {"both": words.PARTS, "drawing": words.OF_DRAWING, "calculation": words.OF_CALCULATION}[chosen["asks"]]
    has_values = page is not None and is_calculated_first(page)
    keys = [key for key in words.PARTS if key in asked and (key not in words.LATER or has_values)]
    marks = tuple((key, _count(reader, name(f"marks-{key}"), MOST_MARKS)) for key in keys)
    marks = tuple((key, count) for key, count in marks if count or key not in words.LATER)
    if not any(count for _, count in marks):
        reader.fault(name(f"marks-{marks[0][0]}"), words.no_marks(number))
    tier, method = ("stretch", asked_by) if own else (chosen["tier"], chosen["method"])
    if own and linked:
        method = _method_of(own[0], own[1])
    page = page or TOPICS[chosen["topic"]]
    seed = (common.code.seed + SET_APART * (number - 1)) % SEEDS
    code = replace(common.code, topic=page.topic, tier=tier, method=method, seed=seed)
    group = replace(common, code=code, chosen={**common.chosen, "topic": page.slug, "tier": tier, "method": method})
    before = _text(reader, name("before"), LONGEST_BEFORE)
    any_method = group.method == codes.METHODS[0] and not linked
    return Question(
        number, group, own[1] if own else None, chosen["asks"], before, chosen["working"], marks, any_method
    )  # fmt: skip


@lru_cache(maxsize=len(TOPICS))
def is_calculated_first(page: Any) -> bool:
    """Whether something is calculated before it can be drawn in a page's problems: no choice of values changes that."""
    case = page.case(default_form(page.fields))
    return not all(case.typed(arm.key) for arm in case.arms)


def _method_of(page: Any, form: Mapping[str, str]) -> str:
    method = form.get("method", "")
    return method if method in methods_of(page) else codes.METHODS[0]


def read_paper(form: Mapping[str, str], roll: str = "", letters: Letters = NO_LETTERS) -> QuestionPaper:
    """The paper that a form and a list of names ask for. Raises InputError with every fault found."""
    reader = Reader(form, BY_NAME)
    signs = {field.name: reader.choice(field.name) for field in SIGNS}
    codes_shown, paper, scale = reader.choice("codes"), reader.choice("paper"), reader.choice("scale")
    generator = reader.choice("generator")
    names: tuple[LearnerName, ...] = ()
    try:
        names = class_set.read_roll(roll, paper, letters)
    except InputError as error:
        reader.faults += error.faults
    learners = len(names) or _count(reader, "learners", MOST_LEARNERS, 1)
    minutes = _count(reader, "minutes", MOST_MINUTES) if reader.text("minutes").strip() else 0
    texts = {name: _text(reader, name, most) for name, most in LONGEST.items()}
    opens = "qr" if codes_shown == "problem" else "code"
    chosen = {**signs, "paper": paper, "scale": scale, "overlays": "no", "opens": opens}
    first = Code(0, "core", "any", paper, _count(reader, "seed", SEEDS - 1), generator=int(generator))
    common = ClassSet(first, learners, names, chosen, NO_LIMITS, (0, 0, 0), (), ())
    count = _count(reader, "questions", MOST_QUESTIONS, 1)
    questions = tuple(_question(reader, number, common) for number in range(1, count + 1))
    reader.finish()
    used = (*PAPER_FIELDS, *(field for fields in QUESTION_FIELDS[:count] for field in fields))
    link = links.form_pairs({field.name: " ".join(reader.text(field.name).split()) for field in used}, used, ALWAYS)
    overlays = reader.choice("overlays") == "yes"
    return QuestionPaper(texts, minutes, learners, names, codes_shown, paper, overlays, questions, link, letters)


ALWAYS = ("questions", "seed", "generator")
"""What every link of a paper names: its values must stay the same when a newer generator comes."""


def default_paper() -> QuestionPaper:
    """The paper that the page opens with."""
    return read_paper(default_form(FIELDS))


def place_of(paper: QuestionPaper, typed: str) -> int:
    """The place of the learner whose name, number or paper code this is. Raises InputError."""
    text = " ".join(typed.split())
    try:
        code = codes.read_any(text) if len(text) > len("1023") else None
    except codes.CodeError:
        code = None
    if isinstance(code, PaperCode):
        if code.fingerprint != paper.fingerprint:
            raise InputError(Fault("which", typed, words.other_paper(str(code))))
        if 1 <= code.number <= paper.learners:
            return code.number
    found = [place for place, name in enumerate(paper.names, start=1) if name.whole.casefold() == text.casefold()]
    if not found and text and not text.isdigit():
        found = _beginning(paper, text.casefold())
    if len(found) > 1:
        who = [f"{paper.name(place).whole} ({place})" for place in found]
        raise InputError(Fault("which", typed, words.several_of_a_name(typed, who)))
    if not found and text.isascii() and text.isdigit() and len(text) < 5 and 1 <= int(text) <= paper.learners:
        found = [int(text)]
    if not found:
        raise InputError(Fault("which", typed, words.no_learner(typed, paper.learners)))
    return found[0]


def _beginning(paper: QuestionPaper, text: str) -> list[int]:
    """The places of the learners whose first name, last name or beginning of the name this is."""
    names = [(place, name.whole.casefold()) for place, name in enumerate(paper.names, start=1)]
    whole_words = [place for place, name in names if text in name.split()]
    return whole_words or [place for place, name in names if name.startswith(text)]
