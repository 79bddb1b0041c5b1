"""After a wrong answer: what went wrong, from which line an angle was measured, what to check next, and one more
problem; values found on the way are explained like whole answers; hints while an answer is held back."""

import json
import re

import pytest

from pycore import phasor
from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.pages import practice as page
from pycore.practice import ladder
from pycore.practice.answers import judge
from pycore.practice.judgement_text import tell
from pycore.practice.marking import ACCEPT, LOOK, WRONG
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.quantity import fixed
from pycore.words import plain

SLUGS = list(CALCULATORS)
MAIN = CALCULATORS["neutral-current"]
FORM = default_form(MAIN.fields)


def ask(do: str, **more: object) -> dict:
    return json.loads(handle(json.dumps({"do": do, **more}))[0])


def made(**values: str) -> Task:
    """A task of the main page's form with these values."""
    return MAIN.task({**FORM, **values})


def told(task: Task, given: dict[str, str]) -> str:
    """Everything that is said of an answer."""
    phrases = tell(task, judge(task, given), lambda _mistake: None).phrases
    return " ".join(plain(one) for one in phrases).replace("\u00a0", " ")


def sided(degrees: float) -> str:
    """A direction as it is typed."""
    return f"{abs(degrees):.1f} {'anticlockwise' if degrees > 0 else 'clockwise'}"


def of(task: Task, key: str) -> Mistake:
    return next(one for one in task.mistakes if one.key == key)


# What is said.


@pytest.mark.parametrize("how", [DRAWN, CALCULATED])
@pytest.mark.parametrize("slug", SLUGS)
def test_where_no_mistake_is_known_something_is_to_be_checked_next(slug: str, how: str):
    """Never a dead end: after the last sentence a learner knows what to do."""
    task = CALCULATORS[slug].task(default_form(CALCULATORS[slug].fields))
    dead_ends = 0
    for share in (0.31, 0.77, 1.23, 1.37, 1.71, 2.9):
        given = {"answer": f"{share * task.size / task.writing.factor:.4g}", "answer-how": how,
                 "answer-unit": task.writing.unit}  # fmt: skip
        said = told(task, given)
        if "does not match a typical mistake" in said:
            dead_ends += 1
            assert re.search(r"typical mistake\. (Check it in parts|First check)", said), said
    assert dead_ends


@pytest.mark.parametrize("slug", SLUGS)
def test_the_difference_is_that_of_the_figures_shown(slug: str):
    """11.4 beside 11.6 differs by 0.2, not by 0.22."""
    task = CALCULATORS[slug].task(default_form(CALCULATORS[slug].fields))
    writing, right = task.writing, task.size
    digit = writing.last_digit(right)
    decimals = max(0, len(writing.number(right).partition(".")[2]))
    direction = {}
    if task.angled and task.angle is not None:
        counted = phasor.wrap(task.angle - task.turn)
        direction = {"answer-angle": sided(task.sense * counted)}
    for steps in (-2, -1, 1, 2):
        shown = float(writing.number(right).replace("\u2212", "-")) * writing.factor
        typed = fixed((shown + steps * digit) / writing.factor, decimals)
        reply = judge(task, {"answer": typed, "answer-how": DRAWN, "answer-unit": writing.unit} | direction)
        assert reply.marked.band == ACCEPT
        apart = fixed(abs(steps) * digit / writing.factor, decimals)
        said = plain(tell(task, reply, lambda _mistake: None).headline).replace("\u00a0", " ")
        assert f"by {apart} {writing.unit}" in said or "the calculated value, rounded" in said, (typed, said)


def test_a_right_size_without_its_angle_says_what_is_missing():
    assert "The size is right. Now type the angle too" in told(made(), {"answer": "11.6 A"})
    polar = told(made(angles="polar"), {"answer": "11.6 A"})
    assert "type the angle too, with its sign" in polar and "which way" not in polar
    assert "the angle too" in told(made(), {"answer": "12 A", "answer-how": CALCULATED})


# Values found on the way.


def test_the_first_diagonal_alone_is_judged_before_there_is_an_answer():
    task = made(i1="14", i2="9", i3="21", order="12")
    first = task.earlier[0]
    right = judge(task, {"answer-first": f"{abs(first.value):.3g} A"})
    assert (True, ACCEPT) == (right.partial, right.marked.band)
    assert "First diagonal: right so far" in told(task, {"answer-first": f"{abs(first.value):.3g} A"})
    assert not judge(task, {"answer": "5 A", "answer-first": "5 A"}).partial


@pytest.mark.parametrize(("key", "said"), [
    ("reversed", "points the opposite way"), ("wrong-way", "turned the wrong way"), ("left-out", "was left out"),
])  # fmt: skip
def test_a_wrong_first_diagonal_is_explained_like_an_answer(key: str, said: str):
    task = made(i1="14", i2="9", i3="21", order="12")
    part = task.earlier[0].as_task()
    point = of(part, key).point
    given = {"answer-first": f"{abs(point):.4g} A", "answer-first-angle": sided(phasor.angle(point) or 0.1)}
    reply = judge(task, given)
    assert (WRONG, ("first",)) == (reply.marked.band, reply.wrong_before)
    assert said in told(task, given) and "First diagonal: not yet" in told(task, given)
    # Beside an answer that nothing explains, the diagonal is what is explained.
    beside = told(task, {"answer": "31 A", "answer-angle": "20 clockwise"} | given)
    assert "About your first diagonal:" in beside and said in beside


@pytest.mark.parametrize("key", ["across", "up"])
def test_a_wrong_sum_of_components_is_explained(key: str):
    task = made(i1="14", i2="9", i3="21", method="components")
    value = next(one for one in task.earlier if one.key == key)
    part = value.as_task()
    slips = [one for one in part.mistakes if one.key == "reversed" and abs(one.point - value.value) > 1.0]
    for slip in slips:
        given = {f"answer-{key}": f"{slip.point.real:.4g} A", "answer-how": CALCULATED}
        assert plain(slip.name) in told(task, given)
    assert slips
    assert "right so far" in told(task, {f"answer-{key}": f"{value.value.real:.4g} A", "answer-how": CALCULATED})


@pytest.mark.parametrize("slug", SLUGS)
def test_every_value_found_on_the_way_can_be_explained(slug: str):
    calculator = CALCULATORS[slug]
    offered = next(field.options for field in calculator.fields if field.name == "method")
    for method in (option.value for option in offered):
        task = calculator.task(default_form(calculator.fields) | {"method": method})
        for value in task.earlier:
            part = value.as_task()
            assert part.mistakes and part.result == value.value and part.earlier == ()


def test_nothing_at_all_is_still_refused_at_the_answer():
    reply = ask("mark", page=MAIN.slug, form=FORM, given={"answer": "", "answer-first": ""})
    assert ["answer"] == [error["field"] for error in reply["errors"]]


# An angle from another line.


def test_an_angle_from_another_line_of_the_page_is_said_to_be():
    task = made(a1="25", a2="-10")
    size, right = f"{task.size:.4g} A", task.angle
    for origin in task.origins:
        assert not origin.opposite
        if origin.acute or origin.other_scale:
            continue
        given = {"answer": size, "answer-angle": sided(phasor.wrap(right - origin.degrees) * task.sense)}
        said = told(task, given)
        assert f"You have measured the angle from {plain(origin.name)}. Here it is counted from I₁" in said
        assert LOOK == judge(task, given).marked.band
    assert {"V₁", "I₂", "I₃"} <= {plain(origin.name) for origin in task.origins}


@pytest.mark.parametrize("first", ["up", "right"])
def test_an_angle_from_the_horizontal_axis_is_said_to_be(first: str):
    task = made(first=first)
    base = 90.0 if first == "up" else 0.0
    acute = abs(phasor.wrap(2 * (base + task.sense * task.angle))) / 2
    said = told(task, {"answer": f"{task.size:.4g} A", "answer-angle": f"{min(acute, 180.0 - acute):.1f}"})
    if first == "up":
        assert "You have measured the angle from the horizontal axis" in said
    else:  # There it is the first line, and the angle is right but for its side.
        assert "Which way does it turn" in said


def test_the_angle_of_the_other_arrow_is_said_to_be():
    task = made(i1="14", i2="9", i3="21", resultant="returning")
    given = {"answer": f"{task.size:.4g} A", "answer-angle": sided(phasor.wrap(task.angle + 180.0) * task.sense)}
    said = told(task, given)
    assert "You have measured the angle of" in said and "points the opposite way" in said
    assert LOOK == judge(task, given).marked.band


@pytest.mark.parametrize("slug", SLUGS)
def test_the_right_answer_is_right_whatever_else_angles_are_counted_from(slug: str):
    task = CALCULATORS[slug].task(default_form(CALCULATORS[slug].fields))
    direction = {}
    if task.angled and task.angle is not None:
        direction = {"answer-angle": sided(task.sense * phasor.wrap(task.angle - task.turn))}
    number = f"{task.size / task.writing.factor:.5g}"
    reply = judge(task, {"answer": number, "answer-unit": task.writing.unit} | direction)
    assert (ACCEPT, None) == (reply.marked.band, reply.origin)


# The page's reply.


def test_the_own_arrow_is_drawn_only_beside_an_answer_in_view():
    request = {"page": MAIN.slug, "form": FORM, "given": {"answer": "16.06 A at 40 cw", "answer-how": "drawn"}}
    held, shown = (ask("mark", **request, shown=in_view)["regions"]["marked"] for in_view in (False, True))
    assert 'class="own-arrow"' in shown and 'class="own-arrow"' not in held
    assert 'class="own-arrow"' not in ask("mark", **request)["regions"]["marked"]
    ends = re.findall(r'class="(right|mine)"><line x1="0" y1="0" x2="([-\d.]+)" y2="([-\d.]+)"', shown)
    # 87.5° anticlockwise of straight up is to the left; 40° clockwise is up to the right.
    (right, *left), (mine, *up) = ends
    assert ("right", "mine") == (right, mine)
    assert float(left[0]) < 0 and abs(float(left[1])) < 0.1 * abs(float(left[0]))
    assert float(up[0]) > 0 > float(up[1])


def test_the_hint_says_what_the_step_of_the_mistake_says():
    region = ask("mark", page=MAIN.slug, form=FORM, given={"answer": "16.06 A at 40 cw"})["regions"]["marked"]
    number = re.search(r"Look at step (\d+) of the lesson", region)[1]
    assert f"Step {number}. " in region and 'class="hint"' in region


@pytest.mark.parametrize("values", [("9.2", "14.7", "6.5"), ("18.4", "15.8", "24.6"), ("22", "8", "16")])
def test_an_angle_read_on_the_other_scale_of_the_protractor_is_named(values: tuple[str, str, str]):
    """79° for 101°: the size is right and the side is, so it is neither wrong nor without a reason."""
    task = made(**dict(zip(("i1", "i2", "i3"), values, strict=True)))
    right = phasor.angle(task.result)
    read = (180.0 - abs(right)) * (1.0 if right > 0 else -1.0)
    given = {"answer": f"{task.size:.4g}", "answer-angle": sided(read * task.sense), "answer-how": DRAWN}
    assert LOOK == judge(task, given).marked.band
    said = told(task, given)
    assert "The other scale of the protractor? The size is right." in said and "does not match" not in said


def test_one_more_problem_keeps_the_learners_own_paper():
    form = {**FORM, "own-paper": "A4", "own-way": "landscape"}
    region = ask("mark", page=MAIN.slug, form=form, given={"answer": "3.1 A at 12 cw"})["regions"]["marked"]
    fragment = re.search(r'href="\.\./neutral-current/(#v=3&amp;code=[^"]+)"', region)[1].replace("&amp;", "&")
    opened = ask("open", page=MAIN.slug, fragment=fragment)["form"]
    assert ("A4", "landscape") == (opened["own-paper"], opened["own-way"])


@pytest.mark.parametrize("slug", SLUGS)
def test_one_press_leads_to_one_more_problem_of_the_kind(slug: str):
    calculator = CALCULATORS[slug]
    form = default_form(calculator.fields)
    task = calculator.task(form)
    given = {"answer": f"{3.7 * task.size / task.writing.factor:.4g}", "answer-unit": task.writing.unit}
    for _ in range(2):
        region = ask("mark", page=slug, form=form, given=given)["regions"]["marked"]
        code = re.search(rf'href="\.\./{slug}/#v=\d&amp;code=([^"]+)"', region)[1]
        assert code != form.get("code")
        form = ask("open", page=slug, fragment=f"#v=3&code={code}")["form"]
        assert code == form["code"]
    right = ask("mark", page=MAIN.slug, form=FORM, given={"answer": "11.6 A at 87.5 acw"})["regions"]["marked"]
    assert "One more problem" not in right


def test_a_problem_of_a_code_that_is_solved_leads_to_one_more():
    """Only a wrong answer led on: whoever was right stood before "Correct" and found no way."""
    form = ask("open", page=MAIN.slug, fragment="#v=3&code=532-JH6-23T")["form"]
    solved = ask("mark", page=MAIN.slug, form=form, given={"answer": "16.1 A at 49.4 cw"})["regions"]["marked"]
    assert "Correct" in solved and "One more problem" in solved


def test_a_problem_is_solved_by_its_answer_alone():
    """The page of a solved problem still said "The answer is hidden. Try it yourself first"."""
    form = ask("open", page=MAIN.slug, fragment="#v=3&code=532-JH6-23T")["form"]
    given = {"answer": "16.1 A at 49.4 cw"}
    assert ask("mark", page=MAIN.slug, form=form, given=given)["solved"]
    assert not ask("mark", page=MAIN.slug, form=form, given={"answer": "26.1 A at 49.4 cw"})["solved"]
    found = ask("mark", page=MAIN.slug, form=form, given={"answer-first": "23.5 A"})
    assert "accept" == found["band"] and not found["solved"]
    assert "One more problem" not in found["regions"]["marked"]


# Practice.


def practising(seed: int) -> tuple[dict, Task]:
    record = ask("practice", move="open", seed=seed)["record"]
    found = page.problem_of(ladder.read(record))
    return record, found.page.task(found.form)


def test_the_record_counts_only_a_mistake_that_is_named_alone_and_sure():
    record, task = practising(11)
    named, unnamed = {}, 0
    for share in range(20, 300, 7):
        given = {"answer": f"{share / 100 * task.size:.4g} A", "answer-how": "drawn"}
        reply = judge(task, given)
        if reply.marked.band != WRONG:
            continue
        marked = ask("practice", move="mark", record=record, given=given)
        (key,) = marked["record"]["mistakes"]
        causes = reply.marked.causes
        keys = {mistake.key for cause in causes for mistake in cause.mistakes}
        if key == "not-named":
            unnamed += 1
        else:
            named[key] = share
            assert ({key}, 1, True) == (keys, len(causes), causes[0].sure)
    assert unnamed
    sure = next(one for one in task.mistakes if one.key == "mirrored")
    given = {"answer": f"{abs(sure.point):.4g} A", "answer-angle": sided(phasor.angle(sure.point) * task.sense)}
    kept = ask("practice", move="mark", record=record, given=given)["record"]["mistakes"]
    causes = judge(task, given).marked.causes
    keys = {one.key for cause in causes for one in cause.mistakes}
    assert set(kept) == (keys if len(keys) == 1 and causes[0].sure else {"not-named"})
    unknown = ask("practice", move="mark", record=record, given={"answer": "999 A"})
    assert "not named: once" in unknown["regions"]["kept"]


def test_a_value_found_on_the_way_is_no_try():
    record, task = practising(11)
    for size in (abs(task.earlier[0].value), 0.4 * abs(task.earlier[0].value)):
        reply = ask("practice", move="mark", record=record, given={"answer-first": f"{size:.3g} A"})
        assert ("asking", record["ways"]) == (reply["state"], reply["record"]["ways"])
        assert {} == reply["record"]["mistakes"]


def test_the_answer_that_is_shown_says_what_was_wrong_with_the_last_one():
    record, task = practising(11)
    sure = next(one for one in task.mistakes if one.key == "left-out")
    given = {"answer": f"{abs(sure.point):.4g} A", "answer-angle": sided(phasor.angle(sure.point) * task.sense)}
    tried = ask("practice", move="mark", record=record, given=given)
    assert "own-arrow" not in tried["regions"]["marked"]
    shown = ask("practice", move="show", record=tried["record"], given=given)
    assert "was left out" in shown["regions"]["marked"] and "own-arrow" in shown["regions"]["marked"]
    for nothing in (None, {}, {"answer": "x"}):
        assert "marked" not in ask("practice", move="show", record=record, given=nothing)["regions"]


def test_one_more_problem_after_a_wrong_answer_counts_the_one_before_as_shown():
    record, _ = practising(11)
    tried = ask("practice", move="mark", record=record, given={"answer": "999 A"})
    assert 'data-do="another"' in tried["regions"]["marked"]
    after = ask("practice", move="another", record=tried["record"])
    way = after["record"]["ways"][after["way"]]
    assert ("asking", 2, 0, -1) == (after["state"], way["had"], way["solved"], way["run"])
    expected = ask("practice", move="next", record=ask("practice", move="show", record=tried["record"])["record"])
    assert expected["record"] == after["record"]


# Hints.


@pytest.mark.parametrize("slug", SLUGS)
def test_hints_lead_through_every_step_and_leave_the_answer_to_the_learner(slug: str):
    calculator = CALCULATORS[slug]
    form = default_form(calculator.fields)
    hidden = [output.text for output in calculator.answer(form, ("answer",)).outputs[:1]]
    last = calculator.lesson(form, "lesson", 1).place.steps
    for step in range(1, last + 1):
        look, move = (ask("hint", page=slug, form=form, step=step, rung=rung) for rung in (1, 2))
        assert f"Step {max(step, 2)}" in look["regions"]["hint"] and look["announce"] in move["announce"]
        assert ("data-hint-step" in move["regions"]["hint"]) is (step < last)
        for text in hidden:
            assert len(text) < 3 or not re.search(rf"(?<![\d.]){re.escape(text)}(?![\d.])", look["announce"])
    beyond = ask("hint", page=slug, form=form, step=998, rung=2)
    assert f"Step {last}" in beyond["regions"]["hint"]


@pytest.mark.parametrize("step", [None, "x", -4, 1.5, True, [1]])
def test_a_hint_for_no_step_is_that_of_the_first(step: object):
    """The first after the scale, which the problem states."""
    assert "Step 2" in ask("hint", page=MAIN.slug, form=FORM, step=step, rung=step)["regions"]["hint"]


def test_the_last_step_is_left_to_the_learner():
    last = MAIN.lesson(FORM, "lesson", 1).place.steps
    said = ask("hint", page=MAIN.slug, form=FORM, step=last, rung=2)
    assert "58" not in said["announce"] and "11.6" not in said["announce"]


def test_hiding_ones_own_answer_announces_nothing_of_it():
    parts = ["answer", "sheet", "view", "workings", "check"]
    reply = ask("answer", page=MAIN.slug, form=FORM, veiled=True, parts=parts)
    assert "The answer is hidden until you ask for it." == reply["announce"]
    assert "11.6" not in json.dumps(reply["regions"], ensure_ascii=False)
