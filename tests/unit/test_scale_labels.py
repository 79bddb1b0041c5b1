"""The label of the scale says the unit of what is drawn: "Units per cm" stood over volts, amperes and ohms."""

from importlib import import_module

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.pages.practice import methods_of, problem_of
from pycore.practice import ladder
from pycore.render.practice import reply
from pycore.words.sums import scale_label

PREFIXES = ("k", "m", "µ")


def label_of(slug: str, form: dict[str, str]) -> str:
    """What stands at the field after an answer."""
    page = CALCULATORS[slug]
    plain = next(field.label for field in page.fields if field.name == "scale")
    return page.answer(form, ("answer",)).labels.get("scale", plain)


def unit_of(slug: str, form: dict[str, str]) -> str:
    """The unit of the scale drawn, without a prefix; a scale in watts can be typed in volt-amperes only."""
    unit = CALCULATORS[slug].case(form).notation.writing.unit
    unit = unit[1:] if unit[0] in PREFIXES else unit
    return "VA" if unit == "W" else unit


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_scale_is_in_the_unit_of_what_is_drawn(slug: str):
    form_of = import_module(f"calculators.{slug.replace('-', '_')}.forms").form
    default = default_form(CALCULATORS[slug].fields)
    forms, seen = [default, *({**default, **form_of(number)} for number in range(40))], 0
    for form in forms:
        try:
            unit = unit_of(slug, form)
        except InputError:
            continue
        seen += 1
        assert scale_label(unit) == label_of(slug, form)
    assert seen > 10


@pytest.mark.parametrize(("slug", "choice"), [
    ("add-phasors", {"unit": "V"}), ("sequence-components", {"unit": "V"}), ("star-and-delta", {"connection": "star"}),
    ("series-circuit", {"drawn": "impedances"}),
])  # fmt: skip
def test_it_follows_the_choice_and_so_does_what_is_said_of_a_bad_scale(slug: str, choice: dict[str, str]):
    form = default_form(CALCULATORS[slug].fields) | choice
    label = label_of(slug, form)
    assert scale_label(unit_of(slug, form)) == label != label_of(slug, default_form(CALCULATORS[slug].fields))
    with pytest.raises(InputError) as refused:
        CALCULATORS[slug].answer(form | {"scale": "wide"}, ("answer",))
    assert ["scale"] == [fault.field for fault in refused.value.faults]
    assert label in refused.value.faults[0].message


@pytest.mark.parametrize("slug", CALCULATORS)
def test_practice_says_it_of_its_problem(slug: str):
    """It said "Units per cm" whatever the problem drew."""
    page = CALCULATORS[slug]
    track = ladder.track_key(page.topic, methods_of(page)[0])
    said = reply({"do": "practice", "move": "way", "way": track, "record": None, "seed": 7})
    problem = problem_of(ladder.read(said["record"]))
    assert slug == problem.page.slug
    assert {"scale": label_of(slug, problem.form)} == said["labels"]
