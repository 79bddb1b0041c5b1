"""Long lists are taken whole or refused in words with the limit: nothing is cut in silence."""

import json

import pytest

from pycore.api import handle
from pycore.forms.fields import default_form
from pycore.pages.class_job import learners_of
from pycore.pages.class_set import FIELDS, read_set
from pycore.practice import results
from pycore.render.class_marks import LONGEST_RESULTS
from pycore.render.class_set import LONGEST_ROLL

FORM = default_form(FIELDS) | {"learners": "6", "seed": "41"}
CODES = [str(learner.code) for learner in learners_of(read_set(FORM)) if learner is not None]


def ask(**request: object) -> dict:
    """The reply to one request of the page of class sets."""
    return json.loads(handle(json.dumps({"page": "class-set", "form": FORM, **request}))[0])


def marked(text: str) -> dict:
    """The reply to a table of answers: its refusal, or its marks."""
    begun = ask(do="begin", work="marks", results=text)
    return ask(do="finish", job=begun["job"]) if begun["ok"] else begun


def test_a_table_of_many_long_lines_is_taken_whole():
    """Of 1,200 lines, 275 were lost without a word: the text was cut at 150,000 characters."""
    lines = [f"{'A long name ' * 60}{number};{CODES[number % 6]};{number}.5" for number in range(1, 301)]
    text = "\n".join(lines)
    assert 150_000 < len(text) < LONGEST_RESULTS
    assert marked(text)["announce"].startswith("300 marked: ")


def test_a_table_beyond_the_limit_is_refused_with_the_limit():
    reply = marked("x" * (LONGEST_RESULTS + 1))
    assert not reply["ok"]
    assert "results" == reply["errors"][0]["field"]
    assert "more than 1\u00a0000\u00a0000 characters" in reply["errors"][0]["message"]
    assert "nothing to mark" in marked(" " * LONGEST_RESULTS)["announce"]


@pytest.mark.parametrize(("name", "said"), [
    ("Learner {} of a school with a very long list of names", "more than 400\u00a0000 characters"),
    ("Learner {}", "There are 9000 names"),
])  # fmt: skip
def test_nine_thousand_names_are_refused_and_none_of_them_cut(name: str, said: str):
    """They became 7,844: the text was cut at 400,000 characters."""
    roll = "\n".join(name.format(number) for number in range(9000))
    assert (len(roll) > LONGEST_ROLL) == ("characters" in said)
    for reply in (ask(do="answer", roll=roll), ask(do="begin", work="key", roll=roll)):
        assert not reply["ok"]
        assert [("roll", True)] == [(one["field"], said in one["message"]) for one in reply["errors"]]


def test_as_many_names_as_a_set_takes_are_taken_at_their_longest():
    roll = "\n".join(f"{number:04}".ljust(60, "x") for number in range(1023))
    assert "1023 problem sheets" in ask(do="answer", roll=roll)["regions"]["set"]


def test_names_and_answers_at_their_longest_are_one_request():
    """The limit of every other request is that of a form."""
    quotes = '"\n' * (LONGEST_RESULTS // 2)
    reply = ask(do="begin", work="marks", results=quotes, roll="\n" * LONGEST_ROLL)
    assert "nothing to mark" in reply["announce"]
    other = json.dumps({"do": "practice", "move": "read", "text": "x" * 600_000})
    assert "The request is too long." == json.loads(handle(other)[0])["announce"]


def test_a_line_of_fifty_thousand_words_is_tried_no_longer_than_a_code_is(monkeypatch: pytest.MonkeyPatch):
    """Each of its beginnings was put together and read as a code: minutes for one line."""
    tried: list[str] = []
    plain = results._reads
    monkeypatch.setattr(results, "_reads", lambda cell: bool(tried.append(cell)) or plain(cell))
    (entry,) = results.read("word " * 50_000)
    assert 0 < len(tried) <= 20
    assert entry.why
    assert len(marked("word " * 50_000)["regions"]["marks"]) < 2_000


def test_a_code_typed_with_spaces_alone_still_has_its_answer():
    (entry,) = results.read(f"{CODES[0].replace('-', ' ')}   7.5   A")
    assert (CODES[0].replace("-", " "), "7.5 A", "") == (entry.cells["code"], entry.cells["answer"], entry.why)


def test_a_table_of_many_columns_is_read_in_one_pass():
    """Each column was looked for in each line."""
    wide = ";".join(["x"] * 20_000)
    text = "\n".join([f"{wide};{CODES[0]};5", *[f"Ann;{CODES[1]};7"] * 200])
    assert 201 == len(results.read(text))
