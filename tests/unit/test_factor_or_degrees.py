"""A bare 0.8 where an angle of lag is asked for: which is meant is asked, with a press for either."""

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import Field
from pycore.render.refusals import error_of
from pycore.trig import cosine

FIELDS = [(slug, field) for slug, page in CALCULATORS.items() for field in page.fields if field.kind == "angle"]
TYPED = ("0.8", "0,8", "0.05", "1")


def form_of(slug: str, field: Field, text: str) -> dict[str, str]:
    return {one.name: one.default for one in CALCULATORS[slug].fields} | {field.name: text}


def test_there_are_such_fields():
    assert {"neutral-current", "harmonics-in-the-neutral", "two-wattmeters"} == {slug for slug, _ in FIELDS}


@pytest.mark.parametrize(("slug", "field"), FIELDS, ids=lambda one: getattr(one, "name", one))
@pytest.mark.parametrize("typed", TYPED)
def test_both_meanings_are_offered_and_each_press_settles_it(slug: str, field: Field, typed: str):
    page = CALCULATORS[slug]
    asked = page.answer(form_of(slug, field, typed)).faults
    assert [(one.field, one.typed, one.question) for one in asked] == [(field.name, typed, True)]
    assert typed in asked[0].message and f"{typed}°" in asked[0].message
    texts = [dict(offer.values)[field.name] for offer in asked[0].offers]
    assert texts == [f"{typed} lag", f"{typed}°"] == [offer.label for offer in asked[0].offers]
    answers = [page.answer(form_of(slug, field, text)) for text in texts]
    assert not any(answer.faults for answer in answers)
    # Meanwhile it is an angle, as it always was: links and sheets of before stay what they are.
    before = page.answer(form_of(slug, field, typed))
    assert [one.value for one in before.outputs] == [one.value for one in answers[1].outputs]


@pytest.mark.parametrize("text", ["0.8 lag", "0.8 lead", "0.8°", "0", "", "1.5", "25", "-0.8"])
@pytest.mark.parametrize(("slug", "field"), FIELDS, ids=lambda one: getattr(one, "name", one))
def test_what_has_one_meaning_is_not_asked_about(slug: str, field: Field, text: str):
    assert not CALCULATORS[slug].answer(form_of(slug, field, text)).faults


def test_the_reply_marks_it_as_a_question_and_the_power_factor_is_the_one_typed():
    slug, field = FIELDS[0]
    fault = CALCULATORS[slug].answer(form_of(slug, field, "0.8")).faults[0]
    assert error_of(fault)["question"] is True
    reading = CALCULATORS[slug].answer(form_of(slug, field, "0.8 lag"))
    angle = float(reading.echo[field.name]["degrees"].split("°")[0])
    assert cosine(angle) == pytest.approx(0.8, abs=1e-3)
