"""Codes by the api, what a veiled page is told, and the way from a mistake to its step."""

import json
import re

import pytest

from pycore.api import handle
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.practice.codes import TIERS, Code
from pycore.practice.task import Task
from pycore.render.checking import form_html
from pycore.sums.lesson import Lesson
from pycore.sums.page import SumPage
from pycore.words import plain

CODE = Code(0, "core", "tip-to-tail", "A3", 1234, 56)
EXAMPLE = default_form(FIELDS)
PAGE = NeutralCurrent()
PRACTISED = list(CALCULATORS.values())
PRIVATE = {field.name for field in FIELDS if field.private}


def ask(do: str, **more: object) -> dict:
    return json.loads(handle(json.dumps({"do": do, "page": PAGE.slug, **more}))[0])


def public(form: dict[str, str]) -> dict[str, str]:
    """A form without what no link says anything of."""
    return {name: value for name, value in form.items() if name not in PRIVATE}


def opened(fragment: str) -> dict:
    reply = ask("open", fragment=fragment)
    assert reply["ok"]
    return reply


# Codes.


@pytest.mark.parametrize("typed", [str(CODE), str(CODE).lower(), str(CODE).replace("-", ""), f"  {CODE} "])
def test_a_code_gives_the_page_and_the_link_of_its_problem(typed: str):
    reply = ask("code", code=typed)
    assert ("neutral-current", str(CODE)) == (reply["page"], reply["code"])
    form = opened(f"#{reply['fragment']}")["form"]
    assert public(PAGE.practice_form(CODE) | {"code": str(CODE)}) == form
    assert ("tip-to-tail", "A3") == (form["method"], form["paper"])


@pytest.mark.parametrize(("typed", "said"), [
    ("", "Type a code: "), ("3CD", "has 3 characters"), ("333-JDL-2G0", "“0” is not used in codes"),
    ("333-JDL-2GB", "one character is wrong"), (None, "Type a code: "),
    (str(Code(999, "core")), "does not belong to any page"),
    ("3" + str(CODE)[1:], "one character is wrong"), ("4" + str(CODE)[1:], "one that begins with 4 has twelve"),
    ("<b>-x", "“<” is not used in codes"),
])  # fmt: skip
def test_a_code_that_cannot_be_used_is_refused_with_the_reason(typed: object, said: str):
    reply = ask("code", code=typed)
    assert not reply["ok"]
    assert ["code"] == [error["field"] for error in reply["errors"]]
    assert said in reply["errors"][0]["message"]


def test_a_link_of_a_code_alone_opens_its_problem():
    reply = opened(f"#v=1&code={str(CODE).lower()}")
    assert public(PAGE.practice_form(CODE) | {"code": str(CODE)}) == reply["form"]
    assert [] == reply["notices"]


def test_choices_that_a_link_names_beside_its_code_stay():
    form = opened(f"#v=1&code={CODE}&paper=A4&names=RST")["form"]
    assert ("A4", "RST", str(CODE)) == (form["paper"], form["names"], form["code"])


@pytest.mark.parametrize(("code", "said"), [
    ("333-JDL-2GB", "one character is wrong"), (str(CODE), "not the values of code"),
])  # fmt: skip
def test_typed_values_stay_whatever_the_code(code: str, said: str):
    reply = opened(f"#v=1&i1=3&i2=4&i3=5.5&code={code}")
    assert ["3", "4", "5.5", ""] == [reply["form"][name] for name in ("i1", "i2", "i3", "code")]
    assert 1 == len(reply["notices"])
    assert said in reply["notices"][0]


def test_a_damaged_code_alone_brings_no_values_and_comes_back_to_be_mended():
    reply = opened("#v=3&code=333-JDL-2GB")
    assert public(EXAMPLE) | dict.fromkeys(("i1", "i2", "i3"), "") == reply["form"]
    assert ([], "333-JDL-2GB") == (reply["notices"], reply["typed"])
    assert "one character is wrong" in reply["errors"][0]["message"]


def test_values_that_change_lose_their_code():
    form = PAGE.practice_form(CODE) | {"code": str(CODE)}
    assert str(CODE) == ask("answer", form=form, parts=["answer"])["code"]
    changed = ask("answer", form={**form, "i2": "9.9"}, parts=["answer"])
    assert "" == changed["code"]
    assert "code" not in changed["fragment"]
    assert str(CODE) == ask("answer", form={**form, "i1": f"{form['i1']} A"}, parts=["answer"])["code"]


@pytest.mark.parametrize("kind", ["problem", "construction", "overlay"])
def test_a_sheet_prints_the_code_of_its_problem(kind: str):
    form = PAGE.practice_form(CODE) | {"code": str(CODE), "sheet": kind}
    assert str(CODE) in ask("answer", form=form, parts=["sheet"])["regions"]["sheet"]
    assert str(CODE) not in ask("answer", form={**form, "i1": "9"}, parts=["sheet"])["regions"]["sheet"]
    assert f"code={CODE}" in ask("share", form=form)["link"]


@pytest.mark.parametrize("tier", TIERS)
@pytest.mark.parametrize("page", PRACTISED, ids=lambda page: page.slug)
def test_every_page_with_practice_keeps_its_codes(page: SumPage, tier: str):
    code = str(Code(page.topic, tier, "any", "A4", 42, 7))
    found = ask("code", code=code)
    assert page.slug == found["page"]
    opened_there = json.loads(handle(json.dumps({"do": "open", "page": page.slug, "fragment": found["fragment"]}))[0])
    assert ([], code) == (opened_there["notices"], opened_there["form"]["code"])
    request = {"do": "answer", "page": page.slug, "form": opened_there["form"], "parts": ["sheet", "check"]}
    reply = json.loads(handle(json.dumps({**request, "veiled": True}))[0])
    assert reply["ok"]
    assert code == reply["code"]
    assert code in reply["regions"]["sheet"]
    assert "answer" in reply["asked"]["labels"]


def test_a_link_with_another_pages_code_leads_there():
    code = str(Code(7, "core", "any", "A4", 42, 7))
    alone = opened(f"#v=1&code={code}")
    assert "open-neutral" == alone["page"]
    assert f"code={code}" in alone["fragment"]
    valued = opened(f"#v=1&i1=3&i2=4&i3=6&code={code}")
    assert ("3", "", 1) == (valued["form"]["i1"], valued["form"]["code"], len(valued["notices"]))


# A page that holds its answer back.


@pytest.mark.parametrize("kind", ["problem", "construction", "overlay"])
def test_a_veiled_page_is_told_nothing_of_the_answer(kind: str):
    form = PAGE.practice_form(CODE) | {"code": str(CODE), "sheet": kind}
    whole = PAGE.answer({**form, "sheet": "construction"})
    reply = ask("answer", form=form, veiled=True, parts=["answer", "sheet", "view", "workings", "check"])
    assert ["sheet", "kinds", "task"] == list(reply["regions"])
    told = json.dumps([reply["regions"], reply["announce"], reply["asked"]], ensure_ascii=False)
    seen = re.sub(r"<svg.*?</svg>", " ".join(re.findall(r">([^<>]+)</text>", told)), told, flags=re.DOTALL)
    hidden = {output.name: output.text for output in whole.outputs
              if output.name in ("neutral-current", "neutral-length", "neutral-angle")}  # fmt: skip
    assert {"neutral-current", "neutral-length", "neutral-angle"} == set(hidden) and all(hidden.values())
    assert [] == [name for name, text in hidden.items() if text in seen]
    assert "data-phasor" not in told
    assert {"answer", "answer-angle"} <= set(reply["asked"]["labels"])


@pytest.mark.parametrize("page", PRACTISED, ids=lambda page: page.slug)
def test_every_page_that_was_opened_from_a_problem_sheet_holds_its_answer_back(page: SumPage):
    """Nothing but the problem's sheet comes, whatever is asked for; no field says what is to be worked out of it."""
    form = default_form(page.fields) | {"sheet": "problem"}
    request = {"do": "answer", "page": page.slug, "form": form}
    parts = ["answer", "sheet", "view", "workings", "check"]
    reply = json.loads(handle(json.dumps({**request, "veiled": True, "parts": parts}))[0])
    assert ["sheet", "kinds", "task"] == list(reply["regions"])
    assert [] == [echo for echo in reply["echo"].values() if echo.get("said") or echo.get("factor")]
    sheet = reply["regions"]["sheet"]
    assert "data-phasor" not in sheet
    task = re.sub("<[^<>]+>", "", reply["regions"]["task"])
    told = json.dumps([re.findall(r">([^<>]+)</text>", sheet), reply["regions"]["kinds"], reply["asked"], task,
                       reply["announce"]], ensure_ascii=False)  # fmt: skip
    answer = page.answer(form, ("answer",))
    given = plain(answer.values_text)
    for output in (answer.outputs[0], *answer.outputs[1:]):
        asked = output is answer.outputs[0] or output.name.endswith(("length", "angle", "-after"))
        number = output.text.partition("\u00a0")[0].partition(" ")[0].strip("°−")
        if asked and len(number) > 2 and number not in given:
            assert not re.search(rf"(?<![\d.]){re.escape(number)}(?![\d.])", told), output.name


@pytest.mark.parametrize("page", PRACTISED, ids=lambda page: page.slug)
def test_the_scale_by_which_a_length_is_judged_stands_beside_the_field(page: SumPage):
    """As the sheet says it, in a scale of one's own too; none where an answer cannot be a length."""
    form = default_form(page.fields)
    reply = json.loads(handle(json.dumps({"do": "answer", "page": page.slug, "form": form, "parts": ["check"]}))[0])
    task = page.task(form)
    asked = reply["asked"]
    assert ("mm" in asked["units"]) is (task.scale_words in asked["scale"] and bool(asked["scale"]))
    assert asked["scale"] == "" or "the scale of this sheet" in asked["scale"]
    html = str(form_html(page.answer(form, ("check",)).answer_request))
    assert asked["scale"] in html


def test_a_scale_of_ones_own_is_the_one_that_is_told():
    asked = ask("answer", form={**EXAMPLE, "scale": "5"}, parts=["check"])["asked"]
    assert "1\u00a0cm\u00a0=\u00a05\u00a0A" in asked["scale"]


def test_what_is_asked_follows_the_conventions():
    reply = ask("answer", form={**EXAMPLE, "method": "components", "angles": "polar", "names": "RYB"}, parts=["check"])
    labels = reply["asked"]["labels"]
    assert {"answer", "answer-angle", "answer-across", "answer-up"} == set(labels)
    assert "−180° to 180°" in labels["answer-angle"]
    drawn = ask("answer", form=EXAMPLE, parts=["check"])["asked"]
    fields = {"answer", "answer-angle", "answer-side", "answer-first", "answer-first-angle", "answer-first-side"}
    assert fields == set(drawn["labels"])
    assert ["A", "mm", "cm"] == drawn["units"]
    small = ask("answer", form={**EXAMPLE, "i1": "12 mA", "i2": "7 mA", "i3": "9 mA"}, parts=["check"])["asked"]
    assert ["mA", "mm", "cm"] == small["units"]


# Where to look.


def frame_text(form: dict[str, str], step: int) -> str:
    reply = ask("lesson", form=form, view="lesson", step=str(step))
    assert step == reply["step"]
    return reply["announce"]


def task(**more: str) -> tuple[dict[str, str], Task]:
    form = {**EXAMPLE, **more}
    return form, PAGE.task(form)


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_every_drawn_mistake_has_a_step_of_its_own_lesson(method: str):
    form, subject = task(method=method)
    steps, place_of = ask("lesson", form=form, view="lesson", step="1")["steps"], PAGE.places(form)
    for mistake in subject.mistakes:
        place = place_of(mistake)
        assert place is not None, mistake.key
        if "drawn" in mistake.how:
            assert 1 <= place.step <= steps, mistake.key
        else:
            assert place.working in ("formula", "components")


def test_a_right_answer_is_checked_without_making_the_lesson(monkeypatch):
    """The frames of the lesson are made only where a mistake has been named."""
    made = []
    init = Lesson.__init__
    monkeypatch.setattr(Lesson, "__init__", lambda self, *parts: (made.append(1), init(self, *parts))[1])
    subject = task()[1]
    right = {"answer": f"{subject.size:.2f}", "answer-angle": f"{subject.angle:.1f}", "answer-side": "anticlockwise"}
    assert "accept" == ask("mark", form=EXAMPLE, given=right)["band"] and [] == made
    assert "wrong" == ask("mark", form=EXAMPLE, given={"answer": "16.06"})["band"] and made


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail"])
def test_the_step_of_a_turned_line_is_the_one_that_turns_it(method: str):
    form, subject = task(method=method)
    turned = [one for one in subject.mistakes if one.key.startswith(("other-scale", "wrong-way")) and one.about]
    assert len(turned) >= 4
    for mistake in turned:
        place = PAGE.places(form)(mistake)
        said = frame_text(form, place.step)
        assert "protractor" in said.lower(), said
        line = f"I{'₁₂₃'[int(mistake.about[0][1]) - 1]}"
        assert line in said or line in frame_text(form, place.step + 1), said
        assert not place.reveals


def test_the_step_of_a_stop_at_the_first_diagonal_begins_the_second_stage():
    form, subject = task()
    stopped = next(one for one in subject.mistakes if one.key == "stopped")
    step = PAGE.places(form)(stopped).step
    assert "diagonal" in "".join(frame_text(form, number) for number in (step - 2, step - 1, step))


def test_a_reply_links_each_cause_to_its_step():
    given = {"answer": "16.06 A", "answer-how": "drawn"}
    reply = ask("mark", form=EXAMPLE, given=given)
    links = re.findall(r'href="\.\./neutral-current/#([^"]+)" data-to-step="(\d+)"', reply["regions"]["marked"])
    assert ["12", "3"] == [step for _, step in links]
    for link, step in links:
        assert f"&amp;view=lesson&amp;step={step}&amp;ask=1" in link
        assert EXAMPLE["i1"] == opened("#" + link.replace("&amp;", "&"))["form"]["i1"]


@pytest.mark.parametrize(("given", "band", "sign"), [
    ({"answer": "58 mm at 87.5° anticlockwise", "answer-how": "drawn"}, "accept", "M3 13"),
    ({"answer": "58", "answer-unit": "A", "answer-how": "drawn"}, "look", "M10 3.5"),
    ({"answer": "30", "answer-unit": "A", "answer-how": "drawn"}, "wrong", "M5 5"),
])  # fmt: skip
def test_each_band_has_its_own_sign(given: dict[str, str], band: str, sign: str):
    reply = ask("mark", form=EXAMPLE, given=given)
    assert band == reply["band"]
    assert f'data-band="{band}"' in reply["regions"]["marked"]
    assert f'd="{sign}' in reply["regions"]["marked"]


def test_a_wrong_answer_is_not_told_the_right_one():
    for size in ("3 A", "20 A", "31.9 A", "16.1 A", "54.2 A", "120 mm"):
        reply = ask("mark", form=EXAMPLE, given={"answer": size, "answer-how": "drawn"})
        assert "wrong" == reply["band"]
        for right in ("11.6", "58.1", "5.8 cm"):
            assert right not in reply["announce"]


def test_a_sheet_with_a_code_says_where_to_type_it():
    form = PAGE.practice_form(CODE) | {"code": str(CODE), "sheet": "problem", "paper": "A4"}
    sheet = ask("answer", form=form, parts=["sheet"])["regions"]["sheet"]
    assert "Type it on the page" in " ".join(re.sub(r"<[^>]+>", " ", sheet).split())


def test_the_sheet_beside_check_is_a_problem_s_or_none():
    assert {} == ask("answer", form=EXAMPLE, parts=["problem-sheet"])["regions"]


def test_the_sheet_beside_check_is_the_problems_alone():
    """No other region and no result comes with it, and the page's own sheet keeps its kind."""
    reply = ask("answer", form=EXAMPLE, parts=["problem-sheet"], veiled=True)
    assert {"problem-sheet"} == set(reply["regions"])
    html = reply["regions"]["problem-sheet"]
    assert 'data-view="problem"' in html and "data-sheet=" not in html and "data-phasor" not in html
    assert "11.6" not in json.dumps(reply) and "18.4" in html
    assert reply["fragment"] == ask("answer", form=EXAMPLE, parts=["answer"])["fragment"]


def test_only_who_opens_a_problem_hears_that_its_values_are_filled_in():
    form = PAGE.practice_form(CODE) | {"code": str(CODE)}
    request = {"form": form, "parts": ["check"], "veiled": True}
    assert "filled in" in ask("answer", **request, opened=True)["announce"]
    assert "filled in" not in ask("answer", **request)["announce"]


@pytest.mark.parametrize(("how", "says"), [("drawn", True), ("calculated", False)])
@pytest.mark.parametrize("size", ["11.6 A", "20 A"])
def test_a_verdict_on_a_drawn_answer_says_that_only_numbers_were_checked(how: str, says: bool, size: str):
    given = {"answer-how": how, "answer": size, "answer-unit": "A"}
    reply = ask("mark", form=EXAMPLE, given=given)
    assert says is ("Only your numbers were checked" in reply["regions"]["marked"])
    assert says is ("Only your numbers were checked" in reply["announce"])


@pytest.mark.parametrize("more", [{"drawing_judged": True}, {"given": {"answer": "11.6 A"}}])
def test_nor_does_it_where_the_lines_were_judged_or_nothing_says_how(more: dict):
    """It stood below the judgement of every line of a drawing made on the screen."""
    given = {"answer-how": "drawn", "answer": "11.6 A"}
    reply = ask("mark", **{"form": EXAMPLE, "given": given} | more)
    assert reply["regions"]["marked"] and "Only your numbers" not in str(reply)


def test_the_mistakes_of_a_problem_are_worked_out_once_for_all_answers_to_it(monkeypatch: pytest.MonkeyPatch):
    """They were worked out twice for each answer: the next problem's too, only to see that it can be drawn."""
    made, practice = [], PAGE.practice()
    monkeypatch.setattr(practice, "task_of", lambda case, make=practice.task_of: made.append(case) or make(case))
    form = {**EXAMPLE, "i1": "18.7"}
    bands = [ask("mark", form=form, given={"answer": size, "answer-how": "drawn"})["band"] for size in ("3", "4", "5")]
    assert ["wrong"] * 3 == bands
    assert 2 == len(made)
