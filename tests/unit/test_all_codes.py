"""What a lecturer reads about codes is true of codes."""

from pycore.calculators.registry import by_topic
from pycore.practice import codes
from pycore.practice.codes import CheckCode, Code, PaperCode
from pycore.render.site import class_set_page, pile_page, question_paper_page
from pycore.words import all_codes as words
from pycore.words import class_set
from pycore.words import codes as code_words


def test_each_example_is_a_code_of_its_kind():
    sheet, whole, paper, check = (codes.read_any(example) for _, example, *_ in words.KINDS)
    assert isinstance(sheet, Code) and sheet.number > 0
    assert isinstance(whole, Code) and whole.number == 0
    assert by_topic()[sheet.topic] == by_topic()[whole.topic]
    assert isinstance(paper, PaperCode) and isinstance(check, CheckCode)


def test_every_way_of_typing_one_that_is_promised_is_read():
    for typed in (words.SHEET, words.SHEET.lower(), words.SHEET.replace("-", "")):
        assert codes.read(typed) == codes.read(words.SHEET)
    assert not set("01OI") & set(codes.ALPHABET)


def test_what_a_code_begins_with_is_what_is_said():
    said = {example: " ".join(sentences) for _, example, *sentences in words.KINDS}
    for code in (words.PAPER, words.CHECK):
        assert f"It begins with {code[0]}." in said[code]
    assert words.CHECK.startswith(code_words.CHECKING)


def test_it_stands_where_sheets_are_made_and_marked_and_names_what_is_there():
    titles = dict(class_set.GROUPS).values()
    assert any(f"“{title}”" in sentence for title in titles for _, _, *told in words.KINDS for sentence in told)
    for page in (class_set_page(), question_paper_page(), pile_page()):
        assert 1 == "".join(map(str, page.regions.values())).count(words.TITLE)
