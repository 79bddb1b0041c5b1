"""Marks by part: what a slip costs, and what stands when it is carried on."""

import itertools
import re

import numpy
import pytest

from pycore import quantity
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.pages.class_set import TOPICS
from pycore.pages.question_paper import read_paper
from pycore.pages.question_paper_marks import Choice, PaperMarking, QuestionMarks, marking_of
from pycore.phasor import wrap
from pycore.practice import answers
from pycore.practice.codes import Code
from pycore.practice.part_marks import DRAWN_PARTS, calculation_marks, drawing_marks, narrowed, spread, summed, total
from pycore.practice.task import Task
from pycore.render.paper_marks import marks_html, marks_job

DRAWING = {"scale": 1, "directions": 2, "lengths": 2, "resultant": 2}
CALCULATION = {"method": 2, "accuracy": 1}
OWN = {"questions": "2", "q1-link": "/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5", "q2-topic": "add-phasors"}


def task(form: dict[str, str]) -> Task:
    """The main job with a form's values."""
    return CALCULATORS["neutral-current"].task(form)


@pytest.fixture(scope="module")
def neutral() -> Task:
    """9.2, 14.7 and 6.5 A: 7.24 A, by numpy in tests/calculators."""
    page = CALCULATORS["neutral-current"]
    return task(default_form(page.fields) | {"i1": "9.2", "i2": "14.7", "i3": "6.5"})


def judged(of: Task, answer: complex | float, how: str):
    """An answer with its direction, judged; a number alone where only a size is given."""
    size = abs(answer) / of.writing.factor
    if isinstance(answer, float):
        return answers.judge(of, {"answer": f"{size:.3f}", "answer-how": how})
    from pycore.practice.key import amount_of

    written = amount_of(of, answer)
    return answers.judge(of, {
        "answer": f"{size:.4f}", "answer-angle": written.angle, "answer-side": written.side, "answer-how": how,
    })  # fmt: skip


def test_a_right_answer_has_all_its_marks(neutral: Task):
    assert (DRAWING,) == drawing_marks(judged(neutral, neutral.result, "drawn"), DRAWING)
    assert (CALCULATION,) == calculation_marks(judged(neutral, neutral.result, "calculated"), CALCULATION)


def test_a_wrong_direction_costs_directions_and_the_result_that_follows_stands(neutral: Task):
    wrong = next(one for one in neutral.mistakes if one.key == "right-angles" and "drawn" in one.how)
    marks = drawing_marks(judged(neutral, wrong.point, "drawn"), DRAWING)
    assert ({"scale": 1, "directions": 0, "lengths": 2, "resultant": 2},) == marks


def test_two_mistakes_with_one_outcome_are_a_range_of_parts_but_not_of_the_total(neutral: Task):
    """Mirrored, or two lengths swapped: the same point, and five of seven marks by either."""
    wrong = next(one for one in neutral.mistakes if one.key == "mirrored" and "drawn" in one.how)
    options = drawing_marks(judged(neutral, wrong.point, "drawn"), DRAWING)
    assert {"scale": (1, 1), "directions": (0, 2), "lengths": (0, 2), "resultant": (2, 2)} == spread(options)
    assert (5, 5) == total(options)


def test_plain_addition_shows_nothing_of_a_drawing(neutral: Task):
    """It had scale, directions and lengths in full, more than an answer that nothing explains."""
    options = drawing_marks(judged(neutral, 9.2 + 14.7 + 6.5, "drawn"), DRAWING)
    assert {"scale": (0, 1), "directions": (0, 2), "lengths": (0, 2), "resultant": (0, 0)} == spread(options)
    assert (0, 5) == total(options)
    results, _ = lines("Ada Lark; 1; 30.4 A; 30.4 A")
    assert ((0, 7), ("plain-sum",)) == (results[0].total, results[0].mistakes)


@pytest.mark.parametrize("worth", [{"resultant": 5}, {"scale": 2}, {"scale": 0, "directions": 0, "resultant": 4}])
def test_a_wrong_drawing_never_has_all_its_marks(neutral: Task, worth: dict[str, int]):
    """Whatever parts a lecturer gives marks for."""
    wrong = next(one for one in neutral.mistakes if one.key == "right-angles" and "drawn" in one.how)
    assert (0, 0) == tuple(total(drawing_marks(judged(neutral, wrong.point, "drawn"), worth))) or "scale" in worth
    assert total(drawing_marks(judged(neutral, wrong.point, "drawn"), worth))[1] < sum(worth.values())


@pytest.mark.parametrize("share", [1.0, 1.7320508, 10.0, -1.0, 0.811])
def test_the_method_of_a_wrong_calculation_is_for_a_person_to_see(neutral: Task, share: float):
    """By every mistake alike, named or not: a wrong sign, a root, a decimal mark; the working is on paper only."""
    wrong = 9.2 + 14.7 + 6.5 if share == 1.0 else share * neutral.result
    marks = spread(calculation_marks(judged(neutral, wrong, "calculated"), CALCULATION))
    assert {"method": (0, 2), "accuracy": (0, 0)} == marks


@pytest.mark.parametrize("key", ["mirrored", "no-root", "over-root-three"])
def test_no_mistake_of_the_catalogue_takes_the_method_for_certain(neutral: Task, key: str):
    wrong = next(one for one in neutral.mistakes if one.key == key and "calculated" in one.how)
    answer = wrong.point if wrong.point is not None else wrong.size
    assert (0, 2) == spread(calculation_marks(judged(neutral, answer, "calculated"), CALCULATION))["method"]


def test_each_catalogued_mistake_costs_one_part_of_a_drawing_only():
    """Of every calculator's problems: a drawn mistake that is named alone never costs a second part."""
    tried = 0
    for page in TOPICS.values():
        of = page.task(page.practice_form(Code(page.topic, "core", "any", "A4", 3, 2)))
        for mistake in of.mistakes:
            if "drawn" not in mistake.how or not mistake.point or mistake.size > 1e6:
                continue
            reply = judged(of, mistake.point, "drawn")
            named = [one.key for cause in reply.marked.causes for one in cause.mistakes]
            if reply.marked.band != "wrong" or named != [mistake.key] or not reply.marked.causes[0].sure:
                continue
            tried += 1
            low, high = total(drawing_marks(reply, DRAWING))
            parts = (part for part, keys in DRAWN_PARTS.items() if mistake.key in keys and part in DRAWING)
            lost = next(parts, "resultant")
            assert low == high == 7 - DRAWING[lost]
    assert tried > 10


def test_the_lists_name_mistakes_that_exist():
    """Each is looked for until some problem of some page has it."""
    wanted = {key for keys in DRAWN_PARTS.values() for key in keys}
    assert wanted
    for number, tier, page in itertools.product(range(1, 25), ("support", "core", "stretch"), TOPICS.values()):
        if wanted:
            of = page.task(page.practice_form(Code(page.topic, tier, "any", "A4", 3, number)))
            wanted -= {one.key for one in of.mistakes}
    assert set() == wanted


def lines(text: str, roll: str = "Ada Lark\nBen Stone") -> tuple[list[QuestionMarks], list[str]]:
    """What a table gives: the lines marked and those that could not be used."""
    marking = marking_of(read_paper(OWN, roll), text)
    for _ in marking.steps():
        pass
    return marking.results, [one.why for one in marking.refused]


RIGHT = "7.24 A at 101 clockwise"


def test_a_line_is_marked_by_part(neutral: Task):
    assert 7.24 == round(neutral.size, 2)
    results, refused = lines(f"Ada Lark; 1; {RIGHT}; 7.24\nBen Stone; 1; ; 30.4")
    assert not refused
    assert [("Ada Lark", 1), ("Ben Stone", 1)] == [(one.name, one.question) for one in results]
    assert (7, 7) == summed(marks for part, marks in results[0].marks if part in DRAWING)
    assert (0, 2) == results[1].total
    assert ("plain-sum", "no-answer") == results[1].mistakes


def test_marks_that_a_person_gives_win():
    head = "Name; Question; Drawn; Calculated; Method; Directions"
    results, _ = lines(f"{head}\nBen Stone; 1; ; 30.4; 1; 2")
    assert (3, 3) == results[0].total


@pytest.mark.parametrize(("line", "told"), [
    ("Nobody; 1; 7", "Nobody"), ("Ada Lark; 9; 7", "from 1 to 2"),
    ('Ada Lark; 1; "7', "quotation mark"),
])  # fmt: skip
def test_a_line_that_cannot_be_used_says_why_and_the_others_stand(line: str, told: str):
    results, refused = lines(f"{line}\nBen Stone; 2; 3; 3")
    assert ["Ben Stone"] == [one.name for one in results]
    assert told in refused[0]
    assert "Line 1 is “" in refused[0]
    assert line.partition(";")[0] in refused[0]


def test_an_answer_that_nobody_can_read_is_no_answer_and_its_learner_stays():
    """The line was refused, and its learner was in no total."""
    results, refused = lines(f"1; 1; {RIGHT}; don't know\n2; 1; about; seven")
    assert not refused
    assert "calculated: “don't know” was read as no answer: 0" == results[0].remarks[0]
    assert ((7, 7), ("no-answer",)) == (results[0].total, results[0].mistakes)
    assert ("drawn: “about” was read as no answer: 0", "calculated: “seven” was read as no answer: 0") == (
        results[1].remarks
    )
    assert ((0, 0), ("no-answer",)) == (results[1].total, results[1].mistakes)


def test_about_an_answer_is_that_answer_and_a_minus_before_a_size_is_said():
    results, refused = lines(f"1; 1; about {RIGHT}; -{RIGHT}")
    assert not refused
    assert (10, 10) == results[0].total
    assert ("drawn: “about 7.24 A at 101 cloc…” was read as 7.24 A at 101 clockwise",
            "calculated: wrong sign: a size has no minus") == results[0].remarks  # fmt: skip


def test_a_blank_answer_has_no_marks_and_says_so():
    results, refused = lines("Ada Lark; 1\nBen Stone; 1; 3;\nBen Stone; 2; ; ; 1; 2; 2; 2; 2; 1")
    assert not refused
    assert ["no answer", "calculated: no answer"] == [one.remarks[0] for one in results[:2]]
    assert ((0, 0), (10, 10)) == (results[0].total, results[2].total)
    assert () == results[2].remarks


def test_a_total_counts_what_was_marked():
    marking = marking_of(read_paper(OWN, "Ada Lark\nBen Stone"), f"Ada; 1; {RIGHT}; {RIGHT}\nBen; 9; 7")
    list(marking.steps())
    (total,) = marking.totals().values()
    assert ("Ada Lark", (10, 10), 10, (2,)) == (total.name, total.marks, total.of, total.missing)
    assert ["Ben Stone"] == marking.without_marks()
    assert [{"number": 1, "of": 10}, {"number": 2, "of": 10}] == marking.entry()["questions"]


@pytest.mark.parametrize("line", [
    RIGHT, f"{RIGHT}; 2; 1", f"; {RIGHT}", f"; {RIGHT}; 2; 1", f"{RIGHT};;2;1", f"; {RIGHT}; ; ; ; ; 2; 1",
])  # fmt: skip
def test_a_question_of_one_answer_needs_no_empty_cells(line: str):
    marking = marking_of(read_paper({**OWN, "q1-asks": "calculation"}, "Ada Lark"), f"Ada Lark; 1; {line}")
    list(marking.steps())
    assert [(3, 3)] == [one.total for one in marking.results]


@pytest.mark.parametrize("line", [";;0;0", ";0;0", "", ";;;;;;0;0"])
def test_a_question_of_one_answer_can_have_none(line: str):
    marking = marking_of(read_paper({**OWN, "q1-asks": "calculation"}, "Ada Lark"), f"Ada Lark; 1{line}")
    list(marking.steps())
    assert [(0, 0)] == [one.total for one in marking.results]


def test_a_person_chooses_from_a_range_for_these_answers_only():
    paper = read_paper(OWN, "Ada Lark")
    text = "Ada Lark; 1; 7.24; 5.87"
    first = marking_of(paper, text)
    list(first.steps())
    low, high = first.results[0].total
    assert low < high
    settled = {(1, 1): Choice(("7.24", "5.87"), high)}
    again = marking_of(paper, text, settled)
    list(again.steps())
    assert ((high, high), (low, high)) == (again.results[0].total, again.results[0].chosen_from)
    other = marking_of(paper, text.replace("5.87", "5.86"), settled)
    list(other.steps())
    assert other.results[0].chosen_from is None
    read = marking_of(paper, again.table().decode())
    list(read.steps())
    assert (high, high) == read.results[0].total


def chosen(text: str, **parts: int) -> QuestionMarks:
    """One line, marked with marks of these parts chosen."""
    given = tuple(text.split("; ")[2:])
    settled = {(1, 1): Choice((given[0], given[1]), None, parts)}
    marking = marking_of(read_paper(OWN, "Ada Lark"), text, settled)
    list(marking.steps())
    again = marking_of(read_paper(OWN, "Ada Lark"), marking.table().decode())
    list(again.steps())
    assert marking.results[0].marks == again.results[0].marks, "a saved table holds what was chosen"
    return marking.results[0]


def test_a_person_chooses_the_marks_of_single_parts():
    line = "Ada Lark; 1; 7.24; 5.87"
    before, after = chosen(line), chosen(line, method=1)
    assert (0, 2) == dict(before.marks)["method"]
    assert (1, 1) == dict(after.marks)["method"]
    assert {"method": (0, 2)} == after.parts_chosen_from
    assert before.total[1] - 1 == after.total[1]
    assert [one for one in before.marks if one[0] != "method"] == [one for one in after.marks if one[0] != "method"]


def test_marks_beyond_the_range_of_a_part_are_not_chosen():
    line = "Ada Lark; 1; 7.24; 5.87"
    assert chosen(line) == chosen(line, method=3) == chosen(line, accuracy=1) == chosen(line, nothing=1)


def test_a_chosen_part_leaves_the_explanations_that_agree_with_it():
    options = [{"directions": 0, "lengths": 2}, {"directions": 2, "lengths": 0}]
    assert options[:1] == narrowed(options, {"directions": 0})
    assert [{"directions": 1, "lengths": 2}, {"directions": 1, "lengths": 0}] == narrowed(options, {"directions": 1})
    assert options == narrowed(options, {"method": 1})


def test_a_page_shows_a_choice_for_each_part_and_takes_what_was_chosen():
    paper = read_paper(OWN, "Ada Lark")
    request = {"results": "Ada Lark; 1; 7.24; 5.87", "settled": [
        {"place": 1, "question": 1, "drawn": "7.24", "calculated": "5.87", "parts": {"method": 2, "resultant": "x"}},
    ]}  # fmt: skip
    job = marks_job(paper, request)
    while not job.ended:
        job.go_on(10)
    shown = job.result()[0]["regions"]["marks"]
    assert 'data-part="method"' in shown
    assert 1 == shown.count('aria-pressed="true"')


@pytest.mark.parametrize("answer", [
    "7.24 A 101 clockwise", "7.24 A at 101 lagging", "7.24 A 101 deg to the right", "7.24∠101° cw",
    "7.24 A lagging by 101", "7.24 A at 101 behind",
])  # fmt: skip
def test_an_angle_may_be_written_in_many_ways(answer: str):
    results, refused = lines(f"Ada Lark; 1; {answer}; {answer}")
    assert not refused
    assert (10, 10) == results[0].total


@pytest.mark.parametrize(("first", "is_told"), [("right", True), ("up", False)])
def test_above_and_below_are_sides_of_a_line_that_lies_across(first: str, is_told: bool):
    """Of an upright one they say nothing: the side is missing, which a person decides."""
    answer = "7.24 A at 101 down"
    marking = marking_of(read_paper({**OWN, "first": first, "q1-link": f"{OWN['q1-link']}&first={first}"}, "Ada Lark"),
                         f"Ada Lark; 1; {answer}; {answer}")  # fmt: skip
    list(marking.steps())
    assert not marking.refused
    assert is_told == (marking.results[0].total == (10, 10))


@pytest.mark.parametrize("unit", ["VAr", "Var", "VAR", "kVAr"])
def test_reactive_power_is_read_however_its_unit_is_spelt(unit: str):
    prefix, unit_of = quantity.unit_parts(unit) or (0, "")
    assert ("var", 3 if unit.startswith("k") else 0) == (unit_of, prefix)


def test_where_one_thing_is_asked_the_only_answer_is_that():
    paper = read_paper({**OWN, "q1-asks": "calculation"}, "Ada Lark")
    marking = marking_of(paper, f"Ada Lark; 1; {RIGHT}")
    list(marking.steps())
    assert (3, 3) == marking.results[0].total


def test_values_calculated_before_they_are_drawn_have_marks_of_their_own_where_a_paper_gives_them():
    """The voltages of a series circuit: where no marks are named a slip in one costs the result, as it always did."""
    page = CALCULATORS["series-circuit"]
    of = page.task(default_form(page.fields) | {"supply": "2 A"})
    slip = next(one for one in of.mistakes if one.key == "two-pi-forgotten")
    reply = judged(of, slip.point, "drawn")
    (before,) = {tuple(one.items()) for one in drawing_marks(reply, DRAWING)}
    assert {**DRAWING, "resultant": 0} == dict(before)
    (after,) = {tuple(one.items()) for one in drawing_marks(reply, DRAWING | {"values": 3})}
    assert {**DRAWING, "values": 0} == dict(after)


def test_a_paper_has_marks_for_values_only_where_some_are_calculated_and_named():
    form = {"questions": "2", "q1-topic": "series-circuit", "q2-topic": "neutral-current", "q2-marks-values": "3"}
    old, new = read_paper(form), read_paper(form | {"q1-marks-values": "3"})
    assert [10, 10] == [one.total for one in old.questions]
    assert [13, 10] == [one.total for one in new.questions]
    assert "values" not in dict(old.questions[0].marks)
    assert str(old.code()) == str(new.code())
    linked = {"q1-link": "/series-circuit/#v=3&r=10&l=0.1&c=100 µF&supply=2 A&frequency=50", "q1-marks-values": "1"}
    assert 11 == read_paper({**form, **linked}).questions[0].total


def test_a_field_that_a_question_does_not_show_is_not_read():
    """Marks for values of a topic without them were refused, at a field that nobody saw; so were those of a link that
    cannot be used."""
    form = {"questions": "1", "q1-topic": "neutral-current", "q1-marks-values": "two"}
    assert 10 == read_paper(form).total
    with pytest.raises(InputError) as bad:
        read_paper({**form, "q1-topic": "series-circuit"})
    assert ["q1-marks-values"] == [one.field for one in bad.value.faults]
    with pytest.raises(InputError) as bad:
        read_paper({**form, "q1-topic": "series-circuit", "q1-link": "/elsewhere/#v=3"})
    assert ["q1-link"] == [one.field for one in bad.value.faults]


@pytest.mark.parametrize("cell", ["3", "3 A, 4 A"])
def test_a_column_of_values_means_nothing_where_a_question_has_no_such_part(cell: str):
    """Tables of before that part may have one; its lines were refused."""
    table = f"Name; Question; Drawn; Calculated; Values\nAda Lark; 1; {RIGHT}; {RIGHT}; {cell}"
    marking = marking_of(read_paper(OWN, "Ada Lark"), table)
    list(marking.steps())
    assert not marking.refused
    assert (10, 10) == marking.results[0].total


def test_each_line_keeps_its_own_choice_by_part_open():
    marking = marking_of(read_paper(OWN, ""), "1; 1; 3; 5\n2; 1; 3; 5\n1; 2; 3; 5")
    list(marking.steps())
    folds = re.findall(r'<details[^>]*class="more by-part"[^>]*>', str(marks_html(marking)))
    kept = [re.search(r'data-keep="([^"]+)"', fold) for fold in folds]
    assert len(kept) > 1 and all(kept)
    assert len({one[1] for one in kept if one}) == len(folds)


def test_marks_for_a_part_that_is_not_asked_are_refused():
    paper = read_paper({**OWN, "q1-asks": "calculation"}, "Ada Lark")
    marking = marking_of(paper, "Name; Question; Scale\nAda Lark; 1; 1")
    list(marking.steps())
    assert "no marks for" in marking.refused[0].why


def test_an_own_table_is_marked_again_as_it_was():
    marking = marking_of(read_paper(OWN, ""), f"1; 1; {RIGHT}; 7.24\n2; 1; 5; 5.87")
    list(marking.steps())
    again = marking_of(read_paper(OWN, ""), marking.table().decode())
    list(again.steps())
    assert not again.refused
    assert [one.total for one in marking.results] == [one.total for one in again.results]


def test_an_answer_changed_in_an_own_table_is_marked_anew():
    """The site's own marks came back as marks that a person had given, and stood for any answer."""
    def marked(text: str) -> PaperMarking:
        marking = marking_of(read_paper(OWN, "Ada Lark\nBen Stone"), text)
        list(marking.steps())
        assert not marking.refused
        return marking

    first = marked(f"Learner; Question; Drawn; Calculated; Scale\n1; 1; {RIGHT}; {RIGHT}; \n2; 1; {RIGHT}; {RIGHT}; 0")
    table = first.table().decode()
    assert RIGHT in table and [(10, 10), (9, 9)] == [one.total for one in first.results]
    assert [(10, 10), (9, 9)] == [one.total for one in marked(table).results]
    changed = marked(table.replace(RIGHT, "99"))
    alone = marked("1; 1; 99; 99\n2; 1; 99; 99")
    assert changed.results[0].total == alone.results[0].total
    # What a person gave stays: here no mark for the scale.
    assert (0, 0) == dict(changed.results[1].marks)["scale"]
    # A mark that is changed in the table counts.
    rows = [line.split(",") for line in table.splitlines()]
    at = rows[0].index("Scale")
    rows[1][at] = "0"
    assert (9, 9) == marked("\n".join(",".join(row) for row in rows)).results[0].total


def test_marks_decided_for_an_answer_do_not_stand_for_another():
    text = "Ada Lark; 1; 7.24; 5.87"
    marking = marking_of(read_paper(OWN, "Ada Lark"), text)
    list(marking.steps())
    _, high = marking.results[0].total
    settled = marking_of(read_paper(OWN, "Ada Lark"), text, {(1, 1): Choice(("7.24", "5.87"), high)})
    list(settled.steps())
    other = marking_of(read_paper(OWN, "Ada Lark"), settled.table().decode().replace("5.87", "1.23"))
    list(other.steps())
    assert other.results[0].chosen_from is None


def test_answers_with_a_minus_have_no_apostrophe_in_the_table():
    """`6.71 A at '-12.7` looked damaged."""
    paper = read_paper(OWN, "Ada Lark")
    marking = marking_of(paper, "Ada Lark; 1; 6.71 A at -12.7; 6.71")
    list(marking.steps())
    table = marking.table().decode()
    assert "6.71 A at −12.7,6.71," in table and "'" not in table
    again = marking_of(paper, table)
    list(again.steps())
    assert marking.results[0].total == again.results[0].total


def test_an_angle_from_another_line_is_said():
    """101 degrees clockwise from the first current is 79 from straight back."""
    results, _ = lines("Ada Lark; 1; 7.24 at 79 anticlockwise; ")
    assert "no typical mistake" not in " ".join(results[0].remarks)


def test_a_second_line_for_one_question_is_refused():
    results, refused = lines("Ada Lark; 1; 7.24; 7.24\n1; 1; 3; 3")
    assert 1 == len(results)
    assert "is on line 1 too" in refused[0]


SERIES = {"questions": "1", "q1-link": "/series-circuit/#v=3&r=40&l=150 mH&c=80 µF&supply=110 V&frequency=50"}
"""110 V on 40 Ω, 150 mH and 80 µF at 50 Hz: by Ohm's law 2.70 A, 10.4° behind the voltage (numpy, below)."""


def marked(form: dict[str, str], line: str) -> QuestionMarks:
    """One line, marked."""
    marking = marking_of(read_paper(form, "Ada Lark"), line)
    list(marking.steps())
    assert not marking.refused
    return marking.results[0]


def test_a_drawing_is_marked_by_what_it_shows_and_the_calculation_by_what_is_asked():
    """On a given voltage the drawing ends at that voltage; the current is calculated."""
    ohms = numpy.array(40.0 + 2j * numpy.pi * 50.0 * 0.15 + 1.0 / (2j * numpy.pi * 50.0 * 80e-6))
    amps, turn = 110.0 / abs(ohms), numpy.degrees(numpy.angle(ohms))
    line = f"Ada Lark; 1; 110 V at {turn:.1f}; {amps:.2f} A at {turn:.1f} clockwise"
    assert ("2.7", "10.4") == (f"{amps:.1f}", f"{turn:.1f}")
    assert (10, 10) == marked(SERIES, line).total


@pytest.mark.parametrize("angle", ["-101.0", "−101°", "101 clockwise", "-101 clockwise"])
def test_a_minus_says_the_side_where_positive_angles_turn_anticlockwise(angle: str):
    assert (10, 10) == marked(OWN, f"Ada Lark; 1; 7.24 A at {angle}; 7.24 A at {angle}").total


def test_a_minus_is_read_by_the_checker_and_by_the_marking_of_a_class_too(neutral: Task):
    for how in ("drawn", "calculated"):
        reply = answers.judge(neutral, {"answer": "7.24", "answer-angle": "-101", "answer-how": how})
        assert ("accept", "") == (reply.marked.band, reply.missing)


def test_a_plain_angle_is_anticlockwise_where_the_paper_says_so():
    link = "/neutral-current/#v=3&i1=6.5&i2=9.2&i3=14.7"
    task_here = task({**default_form(CALCULATORS["neutral-current"].fields), "i1": "6.5", "i2": "9.2", "i3": "14.7"})
    assert task_here.angle > 0
    line = f"Ada Lark; 1; {task_here.size:.2f} A at {task_here.angle:.1f}"
    assert (10, 10) == marked({**OWN, "q1-link": link}, f"{line}; {line.rpartition('; ')[2]}").total


@pytest.mark.parametrize(("written", "points"), [
    ("7.24", 3), ("7.24 A", 3), ("7240 mA", 3), ("7.24 mA", 2), ("7.24 kA", 2), ("7.24 V", 2), ("7.24 var", 2),
    ("7240", 2),
])  # fmt: skip
def test_a_wrong_unit_costs_the_accuracy_and_a_missing_one_nothing(written: str, points: int):
    form = {**OWN, "q1-asks": "calculation"}
    assert (points, points) == marked(form, f"Ada Lark; 1; {written} at -101").total


def test_one_slip_has_one_name():
    """Mirrored, or two lengths swapped: what explains both answers comes first in both."""
    found = marked(OWN, "Ada Lark; 1; 7.24 A at 101 acw; 7.24 A at 101 anticlockwise")
    assert ("mirrored",) == found.mistakes
    assert 1 == len({remark.partition(": ")[2].partition(" or ")[0] for remark in found.remarks if ": " in remark})


def test_an_axis_along_the_line_that_angles_are_counted_from_is_no_other_line():
    """The arrow that returns, at angles from a horizontal voltage: reversed, not measured from the horizontal axis."""
    form = {"questions": "1", "q1-topic": "neutral-current", "first": "right", "angles": "polar"}
    paper = read_paper(form, "Ada Lark")
    learner = next(one for one in paper.questions[0].learners() if one)
    of = task(dict(learner.form))
    back = wrap(of.angle - 180.0)
    found = marked(form, f"Ada Lark; 1; {of.size:.1f} A at {back:.1f}; {of.size:.1f} A at {back:.1f}")
    assert not [remark for remark in found.remarks if "axis" in remark]
    assert {"arrow-reversed", "turned-round"} & set(found.mistakes)
    returning = {**form, "resultant": "returning", "colours": "british-old"}
    line = f"Ada Lark; 1; {of.size:.1f} A at {back:.1f}; {of.size:.1f} A at {back:.1f}"
    assert (10, 10) == marked(returning, line).total
