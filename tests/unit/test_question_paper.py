"""A question paper: read from its form and names, kept files opened for ever, a code on each learner's paper."""

import json
from pathlib import Path

import pytest

from pycore import quantity
from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages.class_job import given_of
from pycore.pages.class_set import TOPICS
from pycore.pages.own_values import example_of, value_fields
from pycore.pages.question_paper import FIELDS, QuestionPaper, place_of, read_paper
from pycore.practice import codes
from pycore.practice.class_set import Learner
from pycore.practice.codes import CodeError, PaperCode
from pycore.words import question_paper as words

KEPT = Path(__file__).parents[1] / "cases" / "papers"
OWN = "https://folio.example/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5"


def form(**more: str) -> dict[str, str]:
    """The page's form with some values of its own."""
    return default_form(FIELDS) | {name.replace("_", "-"): value for name, value in more.items()}


def learners(paper: QuestionPaper, number: int) -> list[Learner]:
    """Every learner's problem of one question."""
    return [one for one in paper.questions[number - 1].learners() if one is not None]


def faults(values: dict[str, str], roll: str = "") -> dict[str, str]:
    """What is wrong with a form, by field."""
    with pytest.raises(InputError) as refused:
        read_paper(values, roll)
    return {fault.field: fault.message for fault in refused.value.faults}


def test_the_default_paper_needs_no_decision():
    paper = read_paper(default_form(FIELDS))
    assert (3, 12, 30) == (len(paper.questions), paper.learners, paper.total)


def test_questions_of_one_topic_have_different_values():
    paper = read_paper(form(q2_topic="neutral-current"))
    first, second = (learners(paper, number) for number in (1, 2))
    assert not {str(one.code) for one in first} & {str(one.code) for one in second}
    assert [one.form["i1"] for one in first] != [one.form["i1"] for one in second]


def test_each_learner_has_other_values_and_all_have_a_lecturers_own():
    paper = read_paper(form(q2_link=OWN), "Ada Lark\nBen Stone\nCleo Hart")
    assert 3 == len({learner.form["i1"] for learner in learners(paper, 1)})
    assert [("9.2", "14.7", "6.5", name) for name in ("Ada Lark", "Ben Stone", "Cleo Hart")] == [
        (*(learner.form[key] for key in ("i1", "i2", "i3")), learner.name) for learner in learners(paper, 2)
    ]
    assert "neutral-current" == paper.questions[1].group.topic.slug


def test_the_kept_files_open_for_ever():
    """The first was saved by the version that brought question papers; its values were read off its mark scheme."""
    kept = json.loads((KEPT / "first.json").read_text("utf-8"))
    paper = read_paper(kept["form"], kept["roll"])
    assert ("7WX-5FL-22C", "7WX-5FL-24J", 24) == (str(paper.code()), str(paper.code(2)), paper.total)
    values = [
        [one.group.topic.case(learner.form).values_text() for learner in learners(paper, one.number)]
        for one in paper.questions
    ]
    assert [
        ["19 A, 6.5 A, 21.6 A", "8 A, 25.9 A, 15.8 A", "29.9 A, 17.9 A, 9.3 A"],
        [
            "3.8 kW at 0.650 lagging, to reach 0.95, on 230 V, 50 Hz, one phase",
            "4.8 kW at 0.740 lagging, to reach 0.98, on 230 V, 50 Hz, one phase",
            "8.6 kW at 0.720 lagging, to reach 0.98, on 230 V, 50 Hz, one phase",
        ],
        ["9.2 A, 14.7 A, 6.5 A"] * 3,
    ] == [[text.replace("\u00a0", " ") for text in texts] for texts in values]


def test_a_link_brings_the_same_paper_without_names():
    paper = read_paper(form(q2_link=OWN, q1_before="The stage has three circuits.", seed="77"), "Ada Lark")
    fragment = links.fragment(paper.link)
    assert "Ada" not in fragment
    reply, _ = handle(json.dumps({"do": "open", "page": "question-papers", "fragment": fragment}))
    opened = read_paper(json.loads(reply)["form"])
    assert (paper.code(), paper.questions[0].before) == (opened.code(), opened.questions[0].before)


def test_what_is_printed_beside_the_values_does_not_change_the_code():
    paper = read_paper(form())
    same = form(title="Another title", q1_before="A sentence.", q1_marks_scale="3", learners="5")
    assert paper.code() == read_paper(same).code()
    others = (form(seed="1"), form(q1_tier="stretch"), form(q1_asks="drawing"), form(paper="A3"), form(q3_link=OWN))
    assert 6 == len({paper.code(), *(read_paper(other).code() for other in others)})


def test_what_cannot_be_used_is_said_at_its_field():
    bad = form(
        learners="0", minutes="soon", seed="-1", q1_marks_scale="21", q2_link="/somewhere/#i1=4",
        title="x" * 61, q3_marks_method="", q3_asks="calculation", q3_marks_accuracy="0",
    )  # fmt: skip
    found = faults(bad)
    assert {
        "learners", "minutes", "seed", "q1-marks-scale", "q2-link", "title", "q3-marks-method",
    } == set(found)  # fmt: skip
    assert "“21”" in found["q1-marks-scale"]
    assert "from 0 to 20" in found["q1-marks-scale"]
    assert "somewhere" in found["q2-link"]


def test_a_question_without_marks_for_what_it_asks_is_refused():
    assert words.no_marks(2) in faults(form(q2_asks="drawing", **dict.fromkeys(
        ("q2_marks_scale", "q2_marks_directions", "q2_marks_lengths", "q2_marks_resultant"), "0"
    ))).values()  # fmt: skip


def test_values_in_a_link_that_cannot_be_used_are_told():
    found = faults(form(q1_link="https://folio.example/neutral-current/#v=3&i1=many&i2=1&i3=2"))
    assert "many" in found["q1-link"]


def test_a_reading_in_a_link_never_reaches_a_learner():
    paper = read_paper(form(q1_link=f"{OWN}&measured=7.1&drawn=71 mm"))
    assert all(learner.form["measured"] == learner.form["drawn"] == "" for learner in learners(paper, 1))


@pytest.mark.parametrize("typed", ["Ben Stone", "ben  stone", "2", "7JT-KLQ-24X"])
def test_a_learner_is_found_by_name_number_or_code(typed: str):
    paper = read_paper(form(), "Ada Lark\nBen Stone")
    assert 2 == place_of(paper, str(paper.code(2)) if typed.startswith("7") else typed)


@pytest.mark.parametrize("typed", ["", "3", "Nobody", "0", "7JT-KLQ-24X", "333-JDL-2GA"])
def test_a_learner_who_is_not_there_is_told(typed: str):
    with pytest.raises(InputError) as refused:
        place_of(read_paper(form(), "Ada Lark\nBen Stone"), typed)
    assert ["which"] == [fault.field for fault in refused.value.faults]


def test_a_code_finds_its_learner_though_names_are_numbers():
    paper = read_paper(form(), "2\n1")
    assert [1, 2] == [place_of(paper, str(paper.code(place))) for place in (1, 2)]


@pytest.mark.parametrize("fragment", ["#answer", "#v=3&names=ABC", "#code=333-JDL-2GB"])
def test_a_link_without_values_of_its_own_is_refused(fragment: str):
    assert {"q1-link"} == set(faults(form(q1_link=f"https://folio.example/neutral-current/{fragment}")))


@pytest.mark.parametrize("name", ["title", "college", "instructions", "q1-before"])
def test_letters_that_cannot_be_printed_are_named_at_their_field(name: str):
    assert "Ж" in faults(form(**{name.replace("-", "_"): "Жук"}))[name]


def test_two_learners_of_one_name_are_told_apart_by_number():
    paper = read_paper(form(), "Ada Lark\nAda Lark")
    with pytest.raises(InputError) as refused:
        place_of(paper, "Ada Lark")
    assert "Ada Lark (1), Ada Lark (2)" in refused.value.faults[0].message
    assert 2 == place_of(paper, "2")


def test_a_first_name_is_enough_where_one_learner_has_it():
    paper = read_paper(form(), "Ada Lark\nBen Stone\nBenita Reed\nBea Stone")
    assert [1, 2, 3, 3] == [place_of(paper, typed) for typed in ("ada", "Ben", "Reed", "benit")]
    with pytest.raises(InputError) as refused:
        place_of(paper, "Stone")
    assert "Ben Stone (2), Bea Stone (4)" in refused.value.faults[0].message


def test_every_single_slip_in_a_papers_code_is_found():
    written = str(PaperCode(12_345_678, 17))
    plain = written.replace("-", "")
    assert PaperCode(12_345_678, 17) == codes.read_any(written.lower())
    for place, own in enumerate(plain):
        for sign in codes.ALPHABET:
            if sign != own:
                with pytest.raises(CodeError):
                    codes.read_any(plain[:place] + sign + plain[place + 1 :])


@pytest.mark.parametrize(("fingerprint", "number"), [(codes.FINGERPRINTS, 0), (-1, 0), (0, 1024)])
def test_no_code_is_written_that_could_not_be_read(fingerprint: int, number: int):
    with pytest.raises(ValueError, match="fit no code of a paper"):
        str(PaperCode(fingerprint, number))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_calculator_sends_a_papers_code_to_its_own_page(slug: str):
    reply, _ = handle(json.dumps({"do": "code", "page": slug, "code": str(PaperCode(5, 1)), "form": {}}))
    assert "Question papers" in json.loads(reply)["errors"][0]["message"]


@pytest.mark.parametrize(
    "typed", ["9.2; 14.7; 6.5", "9,2; 14,7; 6,5", "9.2 A, 14.7 A, 6.5 A", "9.2 14.7 6.5", "9.2\t14.7\t6.5"]
)
def test_own_values_can_be_typed_without_a_link(typed: str):
    """Nine presses and fields went into a link: to the calculator, its values, Share, and back."""
    own = form(q2_topic="neutral-current", q2_link=typed, colours="american-208", paper="A3")
    paper = read_paper(own, "Ada Lark\nBen Stone")
    ada, ben = learners(paper, 2)
    assert [9.2, 14.7, 6.5] == [quantity.read(ada.form[name], "A") for name in ("i1", "i2", "i3")]
    assert [ada.form[name] for name in ("i1", "i2", "i3")] == [ben.form[name] for name in ("i1", "i2", "i3")]
    assert ("american-208", "A3") == (ada.form["colours"], ada.form["paper"])
    assert read_paper(form(q2_link=OWN, paper="A3")).code() == paper.code()


@pytest.mark.parametrize("slug", TOPICS)
def test_the_example_that_the_page_shows_for_own_values_can_be_typed(slug: str):
    shown = example_of(TOPICS[slug])
    typed = shown[shown.rindex("(") + 1 : -1]
    (question,) = read_paper(form(questions="1", q1_topic=slug, q1_link=typed)).questions
    expected = default_form(TOPICS[slug].fields)
    own = dict(question.own or {})
    for field in value_fields(TOPICS[slug]):
        assert expected[field.name] in (own[field.name], own[field.name].removesuffix(f"\u00a0{field.unit}"))


def test_more_branches_than_the_example_has_come_in_the_order_of_the_page():
    typed = ["60", "20", "47 µF", "10", "230 V", "50"]
    (question,) = read_paper(form(questions="1", q1_topic="parallel-circuit", q1_link="; ".join(typed))).questions
    own = dict(question.own or {})
    assert typed == [own[name] for name in ("b1", "b2", "b3", "b4", "supply", "frequency")]


def test_own_values_that_cannot_be_used_say_what_the_topic_takes():
    found = faults(form(q1_link="9.2; 14.7", q2_link="20 at 0; many"))
    assert "2 typed" in found["q1-link"] and "L1; L2; L3 (18.4\u00a0A; 11.2\u00a0A; 24.6\u00a0A)" in found["q1-link"]
    assert "“many”" in found["q2-link"]


def test_more_own_values_than_a_topic_shows_are_refused_in_words():
    """The two readings that the page hides were filled from a fourth and a fifth value, and passed over."""
    found = faults(form(q1_topic="two-wattmeters", q1_link="400; 10; 40; 1000; 2000"))
    assert "5 typed" in found["q1-link"] and "(400\u00a0V; 10\u00a0A; 40)" in found["q1-link"]
    found = faults(form(q1_topic="parallel-circuit", q1_link="60; 20; 47 µF; 10; 230; 50; 7"))
    assert "7 typed" in found["q1-link"]


@pytest.mark.parametrize("own", [f"{OWN}&decimal=comma", "9,2; 14,7; 6,5"])
def test_a_question_of_own_values_has_the_decimal_mark_of_the_paper(own: str):
    """Its sheets kept the mark of the link though the paper's setting said otherwise."""
    paper = read_paper(form(questions="1", q1_link=own, learners="1", decimal="point"))
    (learner,) = learners(paper, 1)
    assert "point" == learner.form["decimal"]
    given = [amount.size for _, amount in given_of(paper.questions[0].group, learner, None)]
    assert ["9.2 A", "14.7 A", "6.5 A"] == given[:3]


@pytest.mark.parametrize(("method", "said"), [
    ("any", "any method"), ("tip-to-tail", "Tip to tail"), ("parallelogram", "Parallelogram, L1 with L2 first"),
])  # fmt: skip
def test_typed_values_are_drawn_by_any_method_unless_one_is_chosen(method: str, said: str):
    """The sheet asked for the parallelogram, which nobody had chosen."""
    paper = read_paper(form(questions="1", q1_topic="neutral-current", q1_link="24; 15; 9", q1_method=method))
    (question,) = paper.questions
    page = question.group.topic
    case = page.case(question.own)
    assert (method == "any") is question.any_method
    assert said.lower() in case.method_words(case.sheet_plan(), any_method=question.any_method).lower()


def test_values_of_a_link_are_drawn_by_the_method_of_the_link():
    link = f"{OWN}&method=tip-to-tail"
    (question,) = read_paper(form(questions="1", q1_link=link, q1_method="parallelogram")).questions
    assert not question.any_method
    assert ("tip-to-tail", "tip-to-tail") == (question.group.method, (question.own or {})["method"])
