"""Marking a class: tables as spreadsheets and people write them, each line read or refused with its reason."""

import csv
import io
import json
import math

import pytest

from pycore import phasor
from pycore.api import handle
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.pages.class_job import learners_of
from pycore.pages.class_marks import MOST_LINES, MarkingRun, read_results
from pycore.pages.class_set import FIELDS, read_set
from pycore.practice import results, tables
from pycore.practice.codes import Code
from pycore.render.class_marks import marks_html

FORM = default_form(FIELDS) | {"learners": "6", "seed": "41", "method": "parallelogram"}
GROUP = read_set(FORM)
LEARNERS = [learner for learner in learners_of(GROUP) if learner is not None]
TASKS = [GROUP.topic.task(learner.form) for learner in LEARNERS]
CODES = [str(learner.code) for learner in LEARNERS]


def side(degrees: float) -> str:
    """The side of an angle as the class says it."""
    return "anticlockwise" if degrees > 0 else "clockwise"


def answer(index: int, sign: str = ";", mark: str = ".") -> str:
    """A right answer of one learner as a line: code, size, angle, side."""
    task = TASKS[index]
    size, angle = f"{task.size:.2f}".replace(".", mark), f"{math.fabs(task.angle):.1f}".replace(".", mark)
    return sign.join((CODES[index], size, angle, side(task.angle)))


def marked(text: str, group=GROUP) -> MarkingRun:
    """A table marked."""
    marking = MarkingRun(group, read_results(text))
    for _ in marking.steps():
        pass
    return marking


def bands(text: str) -> list[str]:
    """The verdicts on a table's lines."""
    return [result.band for result in marked(text).results]


@pytest.mark.parametrize("text", [
    "\n".join(answer(index) for index in range(3)),
    "\ufeff" + "\r\n".join(["Code;Answer;Angle;Side", *(answer(index, ";", ",") for index in range(3))]),
    "\r".join(answer(index, "\t", ",") for index in range(3)),
    "\n".join(["code,answer,angle,side", "", *(answer(index, ",") for index in range(3)), "", ""]),
    "\n".join(f'"A. Body","{answer(index, chr(34) + "," + chr(34), ",")}"' for index in range(3)),
    "\n".join(answer(index).lower().replace("-", "") for index in range(3)),
])  # fmt: skip
def test_tables_from_any_spreadsheet_are_read(text: str):
    """Semicolons, tabs or commas; decimal commas; a byte-order mark; a head or none; quotes; any line ends."""
    assert ["accept", "accept", "accept"] == bands(text)


@pytest.mark.parametrize("name", ["Jane Smith", "Alexandra", "Jo-Ann Carlson"])
def test_a_name_with_as_many_letters_as_a_code_is_no_code(name: str):
    [entry] = results.read(f"{name};{answer(0)}")
    assert (name, CODES[0]) == (entry.cells["name"], entry.cells["code"])


@pytest.mark.parametrize(("cell", "is_one"), [
    ("333-JDL-2GA", True), ("333JDL2GA", True), ("332-222-228", True), ("42C-332-3C2-9XZ", True),
    ("42c 332 3c2 9xz", True), ("442-222-223-333", True), ("332222228", False), ("442222223333", False),
    ("Jane Smith", False), ("333-JDL-2G", False), ("42C-332-3C2-9X", False), ("333.JDL.2GA", False),
])  # fmt: skip
def test_a_cell_is_known_for_a_code_by_its_signs(cell: str, is_one: bool):
    assert is_one is results.is_code(cell)


def test_columns_are_found_by_their_names_in_any_order():
    task = TASKS[0]
    length = task.size * task.factor
    text = (f"Learner;Side;Length (mm);How;Angle;Sheet\n"
            f"Amber;{side(task.angle)};{length:.1f};drawn;{math.fabs(task.angle):.1f};{CODES[0]}")  # fmt: skip
    (result,) = marked(text).results
    assert ("accept", "Amber") == (result.band, result.name)


@pytest.mark.parametrize(("line", "said"), [
    (";5", "Line 2: there is no code on it"),
    ("{code};", "Line 2: there is no answer for {code}"),
    ("3CD;5", "has 3 characters"),
    ("30D-K7M-2QX;5", "“0” is not used in codes"),
    ("{set};5", "does not belong to any page"),
    ("{code};5;10;sideways", "“sideways” is not a direction"),
    ("{code};5;10;cw;guessed", "“guessed” is not a method"),
    ('{code};"5', "a quotation mark is not closed"),
])  # fmt: skip
def test_a_line_that_cannot_be_used_is_refused_with_its_number_and_reason_and_the_others_stand(line: str, said: str):
    values = {"code": CODES[1], "set": str(GROUP.code)}
    text = "\n".join((answer(0), line.format(**values), answer(2)))
    marking = marked(text)
    assert ["accept", "accept"] == [result.band for result in marking.results]
    (refused,) = marking.refused
    assert refused.why.startswith("Line 2: ")
    assert said.format(**values) in refused.why
    assert "your sheet" not in refused.why


@pytest.mark.parametrize("form", [
    "{} approx.", "{} (approx)", "I = {}", "about {}", "~{}", "ca. {}",
])  # fmt: skip
def test_what_a_person_would_read_in_an_answer_is_read(form: str):
    """Each of these was read as no answer, and its learner had 0."""
    plain = answer(0).split(";")
    typed = [plain[0], form.format(plain[1]), *plain[2:]]
    assert [plain[1]] == [one.cells["answer"] for one in marked(";".join(plain)).results]
    (one,) = marked(";".join(typed)).results
    assert ("accept", (4, 4)) == (one.band, one.marks)
    assert 0 == marked(";".join(typed)).unread


def test_how_many_answers_nobody_could_read_is_told_before_they_are_added():
    marking = marked(f"{answer(0)}\n{CODES[1]};don't know;20;cw\n{CODES[2]};11.6 - 11.8 A;20;cw")
    assert (2, 3) == (marking.unread, len(marking.results))


@pytest.mark.parametrize("typed", ["don't know", "about", "?", "=1+1", "1 2 3 V x"])
def test_an_answer_that_nobody_can_read_is_no_answer_and_its_learner_stays(typed: str):
    """The line was refused, and its learner was in no total."""
    marking = marked(f"{answer(0)}\n{CODES[1]};{typed};20;cw")
    assert [] == marking.refused
    one = marking.results[1]
    assert ("wrong", (0, 0), (f"“{typed}” was read as no answer: 0",)) == (one.band, one.marks, one.remarks)
    entry, left = marking.entry()
    assert ([(1, 4), (2, 0)], 0) == ([(row["place"], row["high"]) for row in entry["marks"]], left)
    assert ["no answer"] == entry["marks"][1]["mistakes"]
    again = marked(marking.table().decode())
    assert [row.marks for row in marking.results] == [row.marks for row in again.results]


@pytest.mark.parametrize("before", ["about ", "About ", "ca ", "ca. ", "c. ", "~", "~ ", "≈ ", "approx. ", "around "])
def test_about_a_number_is_that_number(before: str):
    size = f"{TASKS[0].size:.2f}"
    (one,) = marked(answer(0).replace(size, before + size)).results
    assert ("accept", (4, 4)) == (one.band, one.marks)
    assert (f"“{before + size}” was read as {size}",) == one.remarks


def test_a_negative_size_is_judged_by_its_magnitude_and_the_sign_is_said():
    size = f"{TASKS[0].size:.2f}"
    (one,) = marked(answer(0).replace(size, f"-{size} A")).results
    assert ("accept", (4, 4), ("wrong sign: a size has no minus",)) == (one.band, one.marks, one.remarks)


def test_an_angle_that_nobody_can_read_leaves_the_size():
    (one,) = marked(f"{CODES[0]};{TASKS[0].size:.2f};400;cw").results
    assert (3, 3) == one.marks
    assert ("“400” cannot be read and was left out",) == one.remarks


def test_a_unit_of_another_quantity_is_a_wrong_unit_also_in_the_table():
    marking = marked(answer(0).replace(f"{TASKS[0].size:.2f}", f"{TASKS[0].size:.2f} V"))
    (one,) = marking.results
    assert ("look", "right in A: wrong unit") == (one.band, one.verdict)
    (again,) = marked(marking.table().decode()).results
    assert (one.band, one.verdict, one.marks) == (again.band, again.verdict, again.marks)


def _one_wrong(code: str) -> str:
    return code[:-1] + ("3" if code[-1] != "3" else "4")


def _two_swapped(code: str) -> str:
    place = next(at for at in range(4, 10) if code[at] != code[at + 1] and "-" not in code[at : at + 2])
    return code[:place] + code[place + 1] + code[place] + code[place + 2 :]


@pytest.mark.parametrize("slip", [_one_wrong, _two_swapped])
def test_a_mistyped_code_that_is_like_one_of_the_set_is_suggested(slip):
    damaged = slip(CODES[4])
    marking = marked(f"{answer(0)}\n{damaged.lower()};5")
    (refused,) = marking.refused
    assert (damaged.lower(), CODES[4]) == (refused.typed, refused.meant)
    assert refused.why == (
        f"Line 2: did you mean {CODES[4]} (sheet 5)? One character is wrong or two are swapped: compare with the "
        "learner’s sheet."
    )


def test_a_mistyped_code_that_is_like_none_of_the_set_is_refused_for_the_lecturer():
    far = str(next(one for one in learners_of(read_set(FORM | {"seed": "4100"})) if one is not None).code)
    (refused,) = marked(f"{_one_wrong(far)};5").refused
    assert "" == refused.meant
    assert "your sheet" not in refused.why


def test_a_mistake_is_named_from_the_catalogue_and_counted_for_the_class():
    lines = []
    for index in (0, 1):
        mistake = next(one for one in TASKS[index].mistakes if one.key == "reversed")
        angle = phasor.angle(mistake.point)
        lines.append(f"{CODES[index]};{mistake.size:.2f};{math.fabs(angle):.1f};{side(angle)}")
    marking = marked("\n".join((*lines, answer(2))))
    assert [(("reversed",),), (("reversed",),), ()] == [result.keys for result in marking.results]
    assert "points the opposite way" in marking.results[0].verdict
    assert (("a phasor reversed", 2, 0),) == marking.summary()
    assert (1, 0, 2) == marking.counts()


def test_marks_are_given_for_each_step_and_a_range_where_a_person_should_look():
    task = TASKS[0]
    first = next(earlier for earlier in task.earlier if earlier.key == "first")
    head = "code;answer;angle;side;first"
    right = f"{answer(0)};{phasor.magnitude(first.value):.2f}"
    no_angle = f"{CODES[0]};{task.size:.2f};;;"
    near = f"{CODES[0]};{task.size + 1.5 * task.tolerance('drawn', GROUP.limits)[0]:.3f};;;"
    wrong_first = f"{answer(0)};{3 * phasor.magnitude(first.value):.2f}"
    found = marked("\n".join((head, right, no_angle, near, wrong_first))).results
    assert [(4, 4), (3, 3), (0, 3), (3, 3)] == [result.marks for result in found]
    assert [((1, 1), (2, 2), (1, 1)), ((1, 1), (2, 2), (0, 0))] == [result.by_step for result in found[:2]]
    assert "first step 1, length 2, angle 0" in marks_html(marked("\n".join((head, no_angle))))
    own = read_set(FORM | {"marks-first": "0", "marks-length": "5", "marks-angle": "3"})
    assert [(8, 8)] == [result.marks for result in marked(f"{head}\n{right}", own).results]


def test_a_wrong_unit_is_said_and_not_called_wrong():
    (result,) = marked(f"{CODES[0]};{TASKS[0].size * TASKS[0].factor:.1f}").results
    assert ("look", "right in mm: wrong unit") == (result.band, result.verdict)


def test_own_limits_decide_where_they_are_given():
    off = f"{CODES[0]};{1.04 * TASKS[0].size:.3f}"
    assert ["wrong"] == [one.band for one in marked(off, read_set(FORM | {"allow-percent": "1"})).results]
    turned = f"{off};{math.fabs(TASKS[0].angle):.1f};{side(TASKS[0].angle)}"
    assert ["accept"] == [one.band for one in marked(turned, read_set(FORM | {"allow-percent": "5"})).results]


def test_a_code_given_twice_or_of_another_set_is_marked_and_told():
    other = read_set(FORM | {"seed": "42"})
    learner = next(one for one in learners_of(other) if one is not None)
    task = other.topic.task(learner.form)
    right = f"{learner.code};{task.size:.2f};{math.fabs(task.angle):.1f};{side(task.angle)}"
    found = marked("\n".join((answer(0), answer(0), right))).results
    told = f"From another set, {other.code}."
    assert [(), ("The same code is on line 1 too.",), (told,)] == [one.remarks for one in found]
    assert ["accept"] * 3 == [one.band for one in found]


def test_names_of_the_list_stand_beside_their_codes():
    group = read_set(FORM, "Amber\nBilal\nCarys")
    assert ["Bilal"] == [one.name for one in marked(answer(1), group).results]


def test_nothing_to_mark_and_too_much_are_refused():
    for text in ("", "\n \n", "\ufeff", "code;answer"):
        with pytest.raises(InputError, match="nothing to mark"):
            read_results(text)
    with pytest.raises(InputError, match=r"2001 lines\. At most 2000 can be marked"):
        read_results(f"{CODES[0]};1\n" * (MOST_LINES + 1))


def ask(**request: object) -> tuple[dict, bytes | None]:
    """One request to the api."""
    text, data = handle(json.dumps({"page": "class-set", **request}))
    return json.loads(text), data


def test_the_api_marks_in_pieces_and_gives_the_table_back():
    text = "\n".join((*(answer(index) for index in range(4)), "3CD;5", f"{CODES[5]};1;;;c"))
    begun, _ = ask(do="begin", work="marks", form=FORM, results=text)
    told = [ask(do="next", job=begun["job"], pieces=1)[0]["said"] for _ in range(12)]
    assert "Line 6 of 6" == told[-1]
    done, data = ask(do="finish", job=begun["job"])
    assert "5 marked: 4 accepted, 0 to look at again, 1 wrong. 1 line could not be used." == done["announce"]
    assert 'data-band="wrong"' in done["regions"]["marks"]
    rows = list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"), newline="")))
    assert CODES[:4] == [row["Code"] for row in rows[:4]]
    assert ["accept"] * 4 + ["wrong"] == [row["Verdict"] for row in rows]
    again = marked(data.decode())
    assert [row["Verdict"] for row in rows] == [result.band for result in again.results]


def test_markup_in_a_name_stays_text():
    begun, _ = ask(do="begin", work="marks", form=FORM, results=f"name;code;answer\n<img onerror=x>;{CODES[0]};5")
    done, _ = ask(do="finish", job=begun["job"])
    assert "&lt;img onerror=x&gt;" in done["regions"]["marks"]


@pytest.mark.parametrize("mark", [".", ","])
def test_a_table_is_read_back_as_it_was_written(mark: str):
    rows = [["a;b", "c,d", "e\tf"], ['"', "'", "''x"], ["1,5", "1.5", "Zoë"], ["two\nlines", "x", "y"]]
    read = [line.cells for line in tables.read(tables.write(rows, mark))]
    assert [tuple(row) for row in rows] == read


@pytest.mark.parametrize(
    ("typed", "cells"),
    [
        ("{code} 7.5", {"answer": "7.5"}),
        ("{code} 7.5 A", {"answer": "7.5 A"}),
        ("{code}, 23.0, drawn", {"answer": "23.0", "answer-how": "drawn"}),
        ("{code}; 23; calculated", {"answer": "23", "answer-how": "calculated"}),
        ("{code}; 23; 40; drawn", {"answer": "23", "answer-angle": "40", "answer-how": "drawn"}),
        ("{code}; 23; clockwise", {"answer": "23", "answer-side": "clockwise"}),
    ],
)
def test_a_line_is_read_as_it_was_meant(typed: str, cells: dict):
    """Spaces instead of a separator; a word where an angle was left out."""
    code = str(Code(0, "core", seed=7, number=1))
    (entry,) = results.read(typed.format(code=code))
    assert "" == entry.why
    assert {**cells, "code": code} == {name: cell for name, cell in entry.cells.items() if cell}


def test_an_answer_that_is_the_first_step_has_its_mark():
    """Who stops at the first diagonal has drawn it right."""
    task = TASKS[0]
    first = next(earlier.value for earlier in task.earlier if earlier.key == "first")
    size, angle = phasor.magnitude(first), phasor.angle(first) - task.turn
    line = f"{CODES[0]};{size:.2f};{abs(angle):.1f};{side(task.sense * angle)}"
    assert (1, 1) == marked(line).results[0].marks
    wrong_way = f"{CODES[0]};{size:.2f};{abs(angle):.1f};{side(-task.sense * angle)}"
    assert (0, 0) == marked(wrong_way).results[0].marks


@pytest.mark.parametrize(("percent", "off", "marks"), [("", 1.01, 1), ("0.5", 1.01, 0), ("", 1.2, 0), ("25", 1.2, 1)])
def test_an_answer_that_is_the_first_step_is_judged_by_own_limits(percent: str, off: float, marks: int):
    task = TASKS[0]
    first = next(earlier.value for earlier in task.earlier if earlier.key == "first")
    angle = phasor.angle(first) - task.turn
    line = f"{CODES[0]};{off * phasor.magnitude(first):.3f};{abs(angle):.2f};{side(task.sense * angle)}"
    group = read_set(FORM | {"allow-percent": percent, "allow-degrees": "0.5"})
    assert (marks, marks) == marked(line, group).results[0].marks


def test_anticlockwise_is_read_however_it_is_spelt():
    size, angle = f"{TASKS[0].size:.2f}", f"{math.fabs(TASKS[0].angle):.1f}"
    for word in ("anticlockwise", "anti-clockwise", "Anti-Clockwise", "counterclockwise", "ACW"):
        line = ";".join((CODES[0], size, angle, word))
        assert [] == marked(line).refused


def test_the_register_keeps_each_learner_once_with_the_marks_of_the_set():
    """The marks of a class set never reached the register."""
    other = str(next(one for one in learners_of(read_set(FORM | {"seed": "42"})) if one is not None).code)
    lines = (answer(2), answer(0), f"{CODES[0]};99;1;cw", f"{other};5;1;cw")
    entry, left = marked("\n".join(lines)).entry()
    about = tuple(entry[key] for key in ("paper", "title", "of", "learners"))
    assert (str(GROUP.code), GROUP.topic.title, 4, 6) == about
    assert [(3, "", 4, 4), (1, "", 4, 4)] == [
        (one["place"], one["name"], one["low"], one["high"]) for one in entry["marks"]
    ]
    assert 2 == left
    assert (None, 1) == marked(f"{other};5;1;cw").entry()


def test_the_register_knows_the_learners_of_a_set_by_their_whole_names_and_their_mistakes():
    group = read_set(FORM, "Ada Lark\nBen Stone")
    mistake = next(one for one in TASKS[1].mistakes if one.key == "reversed")
    angle = phasor.angle(mistake.point)
    marking = MarkingRun(group, read_results(
        f"Ben Stone;{mistake.size:.2f};{math.fabs(angle):.1f};{side(angle)}", group,
    ))  # fmt: skip
    for _ in marking.steps():
        pass
    (one,) = marking.entry()[0]["marks"]
    assert (2, "Ben Stone", ["a phasor reversed"]) == (one["place"], one["name"], one["mistakes"])
    assert [{"number": 1, "low": one["low"], "high": one["high"], "mistakes": one["mistakes"]}] == one["questions"]
