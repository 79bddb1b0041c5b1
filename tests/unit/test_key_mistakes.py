"""What usual mistakes give on a key: every mistake of every set stands once, in a column or in a sentence."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

import pytest

from pycore.forms.fields import default_form
from pycore.pages import class_key, class_set, key_mistakes
from pycore.pages.class_job import given_of, learners_of, row_for
from pycore.pages.class_set import TOPICS
from pycore.practice import key
from pycore.practice.key import KeyRow
from pycore.practice.task import CALCULATED, DRAWN
from pycore.words import key as words
from pycore.words import plain
from pycore.words.phrase import in_sentence

WAYS = (DRAWN, CALCULATED)
TIMES = re.compile(r"(?:^|(?<=\. ))([\d.]+)\u00a0times the right answer: ")
RIGHT = words.unseen("").removesuffix(".")
NOTHING = words.nothing("").removesuffix(".")


def rows_of(topic: str, tier: str, learners: int, **more: str) -> list[KeyRow]:
    form = {**default_form(class_set.FIELDS), "topic": topic, "tier": tier, "learners": str(learners), **more}
    group = class_set.read_set(form)
    return [row_for(group, learner) for learner in learners_of(group) if learner is not None]


def told(rows: list[KeyRow]) -> tuple[list[str], list[str], list[tuple[str, str]]]:
    """The legends of the columns, what is said to have the right size, and the multiples with their mistakes; nothing
    is the multiple 0."""
    tables = list(key_mistakes.tables("A4", "532", ("N",), rows, WAYS))
    notes = [note for one in tables for note in one.notes]
    right = [note.removeprefix(RIGHT).removesuffix(".") for note in notes if note.startswith(RIGHT)]
    multiples = [pair for note in notes if TIMES.match(note)
                 for pair in zip(TIMES.findall(note), _behind(note), strict=True)]  # fmt: skip
    multiples += [("0", note.removeprefix(NOTHING).removesuffix(".")) for note in notes if note.startswith(NOTHING)]
    return [text for one in tables for _, text in one.legend], right, multiples


def _behind(note: str) -> list[str]:
    return [text.strip().removesuffix(".") for text in TIMES.split(note)[2::2]]


def _mistakes(legend: str) -> Iterator[tuple[str, str]]:
    """The mistakes of a legend by how they are made; those without a word are made in both ways."""
    ways: tuple[str, ...] = WAYS
    for part in legend.split("; "):
        for how in WAYS:
            if part.startswith(f"{words.WAYS[how]}: "):
                ways, part = (how,), part.removeprefix(f"{words.WAYS[how]}: ")
        for how in ways:
            yield how, part


@pytest.mark.parametrize("tier", ["support", "core", "stretch"])
@pytest.mark.parametrize("topic", TOPICS)
def test_every_mistake_of_a_key_stands_once(topic: str, tier: str):
    """One that gives 0 to everybody had neither a column nor a sentence."""
    for learners in (2, 6, 12):
        rows = rows_of(topic, tier, learners)
        legends, right, multiples = told(rows)
        found = Counter(one for text in (*legends, *right, *(text for _, text in multiples)) for one in _mistakes(text))
        wanted = {(how, plain(name)) for one in key.columns(rows, *WAYS) for how, name in one.mistakes}
        assert dict.fromkeys(wanted, 1) == dict(found)


@pytest.mark.parametrize(("topic", "learners"), [("harmonics-in-the-neutral", 30), ("star-and-delta", 3)])
def test_mistakes_that_give_nothing_to_everybody_have_one_sentence_and_no_column(topic: str, learners: int):
    rows = rows_of(topic, "support", learners)
    nothing = [one for one in key.columns(rows, *WAYS) if all(slip and not slip.size for slip in map(one.slip, rows))]
    assert nothing
    legends, _, multiples = told(rows)
    (said,) = (text for number, text in multiples if number == "0")
    for one in nothing:
        assert set(_mistakes(key_mistakes.legend_of(one, WAYS))) <= set(_mistakes(said))
        assert key_mistakes.legend_of(one, WAYS) not in legends


@pytest.mark.parametrize("tier", ["support", "core", "stretch"])
@pytest.mark.parametrize("topic", TOPICS)
def test_a_mistakes_answer_is_written_as_a_person_would(topic: str, tier: str):
    """0.0000, 0.00 for what is not nothing, and 118139.3 beside 295.3 stood on mark schemes."""
    silly, rows = [], rows_of(topic, tier, 12)
    for row in rows:
        for head in (row.writing, rows[0].writing):
            right = key.in_unit(row.result.size, row.result.value, row.writing, head)
            figures = max(3, len(right.replace(".", "").lstrip("0")))
            for slip in (slip for slips in row.slips.values() for slip in slips.values()):
                written = key.slip_in_unit(slip, row, head)
                whole, _, decimals = written.partition(".")
                empty = not written.strip("0.") and written != "0"
                fine = decimals and len((whole + decimals).lstrip("0")) > figures + 1
                if empty or fine or (written == "0" and slip.size > 1e-4 * row.result.value):
                    silly.append((right, written, slip.size))
    assert [] == silly


def test_what_is_said_to_have_the_right_size_has_it():
    """90 degrees between the lines gave 13.2 A for 14.1 A, within the tolerance."""
    rows = rows_of("neutral-current", "core", 1, seed="2")
    columns = key.columns(rows, *WAYS)
    close = [one for one in columns if not any((slip := one.slip(row)) and slip.told_apart for row in rows)
             and not one.has_right_size(rows)]  # fmt: skip
    assert close
    legends, right, _ = told(rows)
    for one in close:
        assert key_mistakes.legend_of(one, WAYS) in legends
    named = {pair for text in right for pair in _mistakes(text)}
    for one in columns:
        if named & {(how, plain(name)) for how, name in one.mistakes}:
            sizes = [(slip.size, row.result.value) for row in rows if (slip := one.slip(row))]
            assert all(size == pytest.approx(value, rel=1e-9) for size, value in sizes)


@pytest.mark.parametrize("topic", ["power-triangle", "two-wattmeters"])
def test_a_small_set_has_no_multiples_by_chance(topic: str):
    """Of two learners 17 mistakes gave a multiple, 1.41 times five times over."""
    assert not [number for number, _ in told(rows_of(topic, "support", 2))[2] if number != "0"]


@pytest.mark.parametrize("topic", TOPICS)
def test_each_multiple_is_named_once(topic: str):
    numbers = [number for number, _ in told(rows_of(topic, "support", 12))[2]]
    assert len(set(numbers)) == len(numbers)


def test_columns_of_different_values_to_be_drawn_have_different_heads():
    heads = {topic: [plain(one.lines[0]) for one in _values(topic).headings] for topic in TOPICS}
    for found in heads.values():
        to_draw = [head for head in found if head.startswith(words.DRAWN_FROM)]
        assert len(set(to_draw)) == len(to_draw)
    assert any(words.drawn_from(1, 2) in found for found in heads.values())


def _values(topic: str):
    group = class_set.read_set(default_form(class_set.FIELDS) | {"learners": "12", "topic": topic})
    rows = [row_for(group, learner) for learner in learners_of(group) if learner is not None]
    return class_key.values(class_key.head_of(group, rows, (12, 12)), rows)


def test_a_label_within_a_sentence_keeps_the_capitals_of_a_name():
    assert ["L1", "load on L1", "frequency", "R"] == [
        in_sentence(label) for label in ("L1", "Load on L1", "Frequency", "R")
    ]


def test_what_all_learners_have_stands_once_above_the_values():
    values = _values("power-triangle")
    assert ("For everybody: Voltage = 230 V; Frequency = 50 Hz; Phases = 1.",) == tuple(
        note.replace("\u00a0", " ") for note in values.notes
    )
    assert not {"Voltage", "Frequency", "Phases"} & {plain(one.lines[0]) for one in values.headings}


def test_an_active_power_to_be_drawn_is_in_watts():
    """It stood as "P/W: 1700 var"."""
    values = _values("power-triangle")
    column = next(place for place, one in enumerate(values.headings) if plain(one.lines[0]) == "P")
    assert all(re.match(r"[\d.]+\u00a0k?W,", plain(row[column][0])) for row in values.rows)


def test_only_a_table_with_intermediate_results_says_so():
    titles = {_values(topic).title for topic in ("add-phasors", "series-circuit")}
    assert {words.VALUES, words.VALUES_AND_MORE} == titles


@pytest.mark.parametrize(("counts", "said"), [((1, 1), ("page 1", "page 2")), ((3, 0), ("pages 1–3", ""))])
def test_one_page_is_not_called_pages(counts: tuple[int, int], said: tuple[str, str]):
    assert said == class_key.ranges_of(counts)


def test_a_reactance_that_a_problem_gives_in_ohms_is_called_one():
    group = class_set.read_set(
        default_form(class_set.FIELDS) | {"learners": "5", "topic": "series-circuit", "tier": "support"}
    )
    named = {label for one in learners_of(group) if one for label, _ in given_of(group, one, None)}
    assert {"Inductive reactance", "Capacitive reactance"} <= named and "Inductance" not in named


def test_values_that_are_all_the_same_stay_in_the_table():
    """Nothing else would be in it: a lecturer's own values are those of every learner."""
    group = class_set.read_set(default_form(class_set.FIELDS) | {"learners": "12", "topic": "open-neutral"})
    one = rows_of("open-neutral", "core", 12)[0]
    rows = [replace(one, place=place) for place in range(1, 13)]
    alike = class_key.values(class_key.head_of(group, rows, (12, 12)), rows)
    assert not alike.notes and {"Load"} <= {plain(one.lines[0]).split()[0] for one in alike.headings}
