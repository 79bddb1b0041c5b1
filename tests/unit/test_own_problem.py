"""A lecturer's own values given as a problem: nothing of the answer in link, sheet, handout or page, and its code."""

import json
import re

import pypdfium2
import pytest
from leaks import OWN_VALUES, leaks, needles, readable
from unit.test_hidden_answers import meeting

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Group, Page, walk
from pycore.forms.fields import default_form
from pycore.pages.own_problem import as_problem
from pycore.practice import codes
from pycore.practice.codes import CheckCode, Code, CodeError
from pycore.words import codes as codes_words

BASE = "https://folio.example/term/"
PLAYER = "(() => {})();"
WAYS = {
    "usual": {},
    "other": {"decimal": "comma", "angles": "polar", "rotation": "clockwise", "first": "right", "start": "two"},
    "easy": {"print": "easy"},
    "large": {"print": "large", "paper": "A3"},
    "own-paper": {"own-paper": "A3", "paper": "A4"},
}


def own_form(slug: str, way: str = "usual", **more: str) -> dict[str, str]:
    names = {field.name for field in CALCULATORS[slug].fields}
    chosen = {name: value for name, value in WAYS[way].items() if name in names}
    return {**default_form(CALCULATORS[slug].fields), **OWN_VALUES[slug], **chosen, **more}


def phasors(sheet: Page, key: str) -> list[Group]:
    return [one for one in walk(sheet.items) if isinstance(one, Group) and one.phasor == key]


def has_figure(sheet: Page) -> bool:
    return any(isinstance(one, Group) and one.role == "figure" for one in walk(sheet.items))


def ask(do: str, slug: str, form: dict[str, str], **more: object) -> tuple[dict, bytes]:
    request = {"do": do, "page": slug, "form": form, "base": f"{BASE}{slug}/", "code": True, **more}
    text, data = api.handle(json.dumps(request))
    reply = json.loads(text)
    assert reply["ok"], reply
    return reply, data or b""


def given(slug: str, form: dict[str, str], *, problem: bool = True) -> dict[str, list[str]]:
    """What a learner gets, as texts: link, handout, PDF, the page's reply while its answer is held back."""
    link, _ = ask("share", slug, form, problem=problem)
    _, page = ask("handout", slug, form, problem=problem, style="p{color:red}", script=PLAYER)
    _, pdf = ask("pdf", slug, form, problem=problem)
    document = pypdfium2.PdfDocument(pdf)
    sheets = [sheet.get_textpage().get_text_range() for sheet in document]
    document.close()
    opened, _ = ask("open", slug, {}, fragment=link["link"].partition("#")[2])
    parts = ["answer", "sheet", "view", "workings", "check"]
    reply, _ = ask("answer", slug, opened["form"], parts=parts, veiled=problem)
    html = [text for region in reply.pop("regions").values() for text in readable(region)]
    return {
        "link": [link["link"].replace("%20", " ")], "handout": readable(page.decode()), "pdf": sheets,
        "page": [*html, json.dumps(reply, ensure_ascii=False)],
    }  # fmt: skip


def wanted(slug: str, form: dict[str, str]) -> set[str]:
    """The numbers of the answer, without those that are values of the problem or of its sheet's frame."""
    page = CALCULATORS[slug]
    case = page.case(form)
    printed = " ".join([*OWN_VALUES[slug].values(), case.values_text(), "297 210 420 100 120 125 0.5"])
    return needles(page.answer(form).outputs, printed)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("slug", CALCULATORS)
def test_nothing_that_a_learner_gets_holds_the_answer(slug: str, way: str) -> None:
    form = own_form(slug, way)
    numbers = wanted(slug, form)
    assert len(numbers) > 10
    found = {name: leaks(texts, numbers) for name, texts in given(slug, form).items()}
    assert {name: set() for name in found} == found


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_search_finds_the_answer_where_it_is(slug: str) -> None:
    """In the usual handout, sheet and page; the link never holds it, unless a meter's reading does."""
    form = own_form(slug)
    found = {name: leaks(texts, wanted(slug, form)) for name, texts in given(slug, form, problem=False).items()}
    assert found["handout"] and found["pdf"] and found["page"], found


@pytest.mark.parametrize("slug", CALCULATORS)
def test_no_line_of_the_problem_s_sheet_ends_where_the_answer_does(slug: str) -> None:
    page, form = CALCULATORS[slug], as_problem(CALCULATORS[slug], own_form(slug))
    blank, solved = (sheet for sheet in page.pages(form, kinds=("problem", "construction")) if has_figure(sheet))
    tips = [item.tip for group in phasors(solved, "sum") for item in walk(group.items) if isinstance(item, Arrow)]
    assert 1 == len(tips)
    assert [] == phasors(blank, "sum") == phasors(blank, "return")
    assert [] == meeting(blank.items, tips[0])


def test_a_learner_s_handout_is_the_problem_alone() -> None:
    form = own_form("neutral-current")
    reply, data = ask("handout", "neutral-current", form, problem=True, style="p{color:red}", script=PLAYER)
    html = data.decode()
    assert "neutral-current-problem.html" == reply["filename"]
    assert not re.search(r"<script|data-player|data-step=\"[2-9]|data-value|data-phasor=\"(sum|return)", html)
    assert "script-src &#39;none&#39;" in html or "script-src 'none'" in html
    link, _ = ask("share", "neutral-current", form, problem=True)
    assert link["link"].replace("&", "&amp;") in html
    usual, _ = ask("handout", "neutral-current", form, style="p{color:red}", script=PLAYER)
    assert "neutral-current-handout.html" == usual["filename"]


def test_without_an_address_the_handout_says_what_to_type() -> None:
    _, data = ask("handout", "neutral-current", own_form("neutral-current"), base="http://127.0.0.1/x/", problem=True,
                  style="p{color:red}", script=PLAYER)  # fmt: skip
    code = as_problem(CALCULATORS["neutral-current"], own_form("neutral-current"))["code"]
    assert code in data.decode() and "<a " not in data.decode()


def test_what_was_read_off_a_meter_or_a_drawing_is_not_given() -> None:
    form = own_form("neutral-current")
    link = ask("share", "neutral-current", form, problem=True)[0]["link"]
    assert "measured" not in link and "drawn" not in link
    assert "measured=9.1" in ask("share", "neutral-current", form)[0]["link"]


def test_values_of_a_practice_code_keep_it() -> None:
    page = CALCULATORS["neutral-current"]
    form = {**page.practice_form(Code(0, "core", seed=5, number=3)), "code": str(Code(0, "core", seed=5, number=3))}
    assert form["code"] == as_problem(page, form)["code"]


# The code that checks values.


SAME = {
    "neutral-current": {"i1": "19,70 A", "i2": "12900 mA", "a2": "33.9 lag", "names": "RYB", "first": "right"},
    "add-phasors": {"p1": "23,7 A ∠ 12°", "p3": "9.30 @ -200"},
    "power-triangle": {"power": "11300 W", "factor": "lag 0,73"},
    "series-circuit": {"l": "190 mH", "supply": "227", "c": "0.087 mF"},
    "parallel-circuit": {"b2": "23 + 0.11 H", "frequency": "50 Hz"},
    "open-neutral": {"z1": "23 ohm", "volts": "0.41 kV"},
    "star-and-delta": {"z2": "29 Ω", "volts": "410 V", "line": "1"},
    "harmonics-in-the-neutral": {"h3": "23 %", "i2": "8,9"},
    "two-wattmeters": {"lag": "37°", "volts": "410 V"},
    "sequence-components": {"p2": "19 at 247", "p1": "31 A at 7"},
}
"""The same values written otherwise, or drawn otherwise."""


def code_of(slug: str, **more: str) -> str:
    page = CALCULATORS[slug]
    return str(page.check_code(page.case(own_form(slug, **more))))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_same_values_have_the_same_code_however_they_are_typed_and_drawn(slug: str) -> None:
    assert code_of(slug) == code_of(slug, **SAME[slug])
    for way in ("other", "easy", "own-paper"):
        page = CALCULATORS[slug]
        assert code_of(slug) == str(page.check_code(page.case(own_form(slug, way))))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_any_other_value_has_another_code(slug: str) -> None:
    """One digit more or less in any field; no two of them alike."""
    values = {name: text for name, text in OWN_VALUES[slug].items() if name not in ("measured", "drawn", "known")}
    changed = [re.sub(r"\d(?=\D*$)", lambda digit: str((int(digit[0]) + 1) % 10), text, count=1)
               for text in values.values()]  # fmt: skip
    assert all(new != old for new, old in zip(changed, values.values(), strict=True))
    codes = [code_of(slug, **{name: text}) for name, text in zip(values, changed, strict=True)]
    assert len({code_of(slug), *codes}) == len(codes) + 1


CHOICES = {
    "star-and-delta": ("connection", "star"), "add-phasors": ("combine", "difference"),
    "sequence-components": ("part", "positive"), "harmonics-in-the-neutral": ("drawn", "5"),
    "series-circuit": ("drawn", "impedances"), "power-triangle": ("phases", "1"),
    "neutral-current": ("sequence", "132"), "open-neutral": ("sequence", "132"), "two-wattmeters": ("meters", "13"),
}  # fmt: skip


@pytest.mark.parametrize("slug", CHOICES)
def test_a_choice_that_belongs_to_the_question_counts(slug: str) -> None:
    name, option = CHOICES[slug]
    assert code_of(slug) != code_of(slug, **{name: option})


def test_a_check_code_is_read_and_is_no_code_of_a_problem() -> None:
    code = CheckCode(11, 12345)
    assert code == codes.read_any(str(code).lower().replace("-", " ")) and re.fullmatch(r"6(..-...-...)", str(code))
    with pytest.raises(CodeError) as refused:
        codes.read(str(code))
    assert "values" == refused.value.reason
    wrong = str(code)[:-1] + ("2" if str(code)[-1] != "2" else "3")
    with pytest.raises(CodeError) as refused:
        codes.read_any(wrong)
    assert "check" == refused.value.reason
    with pytest.raises(ValueError, match="fit no check code"):
        str(CheckCode(1000, 0))


def typed(code: str, page: str, form: dict[str, str]) -> dict:
    return json.loads(api.handle(json.dumps({"do": "code", "code": code, "page": page, "form": form}))[0])


def test_a_learner_who_types_values_and_code_is_told_whether_they_are_right() -> None:
    slug = "neutral-current"
    code, form = code_of(slug), own_form(slug, measured="", drawn="")
    right = typed(code.lower(), slug, form)
    assert (slug, code) == (right["page"], right["code"]) and "sheet=problem" in right["fragment"]
    opened = ask("open", slug, {}, fragment=right["fragment"])[0]
    answer, _ = ask("answer", slug, opened["form"], parts=["answer", "check"], veiled=True)
    assert codes_words.opened(code) == answer["problem"] and "right" in answer["problem"]
    wrong = typed(code, slug, {**form, "i3": "23.2"})
    assert [codes_words.other_typed(code)] == [one["message"] for one in wrong["errors"]]
    empty = typed(code, slug, dict.fromkeys(form, ""))
    assert [codes_words.VALUES_FIRST] == [one["message"] for one in empty["errors"]]


def test_typed_elsewhere_it_leads_to_its_own_page_which_asks_for_the_values_and_holds_the_answer_back() -> None:
    code = code_of("open-neutral")
    reply = typed(code, "add-phasors", own_form("add-phasors"))
    assert ("open-neutral", f"v=3&code={code}") == (reply["page"], reply["fragment"])
    opened = ask("open", "open-neutral", {}, fragment=reply["fragment"])[0]
    assert opened["held"] and opened["typed"] == code and "" == opened["form"]["z1"]
    assert [codes_words.VALUES_FIRST] == [one["message"] for one in opened["errors"]]
    elsewhere = ask("open", "add-phasors", {}, fragment=reply["fragment"])[0]
    assert ("open-neutral", reply["fragment"]) == (elsewhere["page"], elsewhere["fragment"])


def test_a_link_whose_values_were_changed_loses_its_code_and_says_so() -> None:
    code = code_of("neutral-current")
    opened = ask("open", "neutral-current", {}, fragment=f"v=3&i1=19.7&i2=12.9&i3=99&sheet=problem&code={code}")[0]
    assert "" == opened["form"]["code"] and [codes_words.not_checked(code)] == opened["notices"]
    other = ask("open", "add-phasors", {}, fragment=f"v=3&p1=5&p2=6&code={code}")[0]
    assert "" == other["form"]["code"] and "Neutral current" in other["notices"][0]
    strange = str(CheckCode(900, 1))
    lost = ask("open", "add-phasors", {}, fragment=f"v=3&code={strange}")[0]
    assert "does not belong to any page" in lost["errors"][0]["message"] and not lost["held"]
