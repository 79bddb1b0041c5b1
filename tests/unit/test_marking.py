"""The catalogue of mistakes and the marking, against closed formulas and numpy."""

import itertools
import json
import math

import numpy as np
import pytest

from pycore import phasor
from pycore.accuracy.hand import ELLIPSE
from pycore.api import handle
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.calculators.neutral_current.page import NeutralCurrent
from pycore.calculators.neutral_current.practice import lines_of
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.practice import marking
from pycore.practice.answers import judge
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer, classes, visible
from pycore.practice.judgement_text import tell
from pycore.practice.marking import ACCEPT, LOOK, WRONG, mark
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS, Limits, Task, off
from pycore.words import plain

METHODS = ("parallelogram", "tip-to-tail", "components")
FORM = default_form(FIELDS)
task = NeutralCurrent().task
VALUES = [(18.4, 11.2, 24.6), (12.0, 7.0, 9.5), (30.0, 5.0, 17.0), (6.3, 24.1, 14.9)]


def nowhere(_mistake: object) -> None:
    """No mistake has a place in any steps."""


def made(**values: str) -> Task:
    """A task of the page's form with these values."""
    return task({**FORM, **values})


def of(values: tuple[float, float, float], method: str = "parallelogram", **more: str) -> Task:
    return made(i1=str(values[0]), i2=str(values[1]), i3=str(values[2]), method=method, **more)


def sizes(subject: Task, key: str) -> list[float]:
    return sorted(mistake.size for mistake in subject.mistakes if mistake.key == key)


def expected_sizes(values: tuple[float, float, float]) -> dict[str, list[float]]:
    """What each catalogued mistake gives at equal power factor, by the closed formulas of the trade
    (common practice, no source)."""
    a, b, c = values
    q = a * a + b * b + c * c
    n = complex(a - b / 2 - c / 2, math.sqrt(3) / 2 * (c - b))
    turned = (complex(a), b * complex(-0.5, -math.sqrt(3) / 2), c * complex(-0.5, math.sqrt(3) / 2))
    wrong = math.sqrt(a * a + (b + c) ** 2 - a * (b + c))
    pairs = list(itertools.combinations((a, b, c), 2))
    return {
        "left-out": [math.sqrt(i * i + j * j - i * j) for i, j in pairs],
        "other-scale": [math.sqrt(q + a * b - c * a - 2 * b * c), math.sqrt(q + a * c - a * b - 2 * b * c)],
        "reversed": [abs(n - 2 * one) for one in turned],
        "wrong-way": [wrong, wrong],
        "mirrored": [abs(n)],
        "swapped": [abs(n)] * 3,
        "two-diagonals": [abs(n + one) for one in turned],
        "plain-sum": [a + b + c],
        "mean": [(a + b + c) / 3],
        "largest-less-smallest": [max(values) - min(values)],
        "root-of-squares": [math.sqrt(q)],
        "no-root": [abs(n) ** 2],
        "signs-slipped": [math.sqrt(q + a * b + b * c + c * a)],
        "sign-slipped": [math.sqrt(abs(n) ** 2 + 2 * i * j) for i, j in pairs],
        "product-dropped": [math.sqrt(abs(n) ** 2 + i * j) for i, j in pairs],
        "times-root-three": [abs(n) * math.sqrt(3)],
        "parts-added": [abs(n.real) + abs(n.imag)],
    }


@pytest.mark.parametrize("values", VALUES)
def test_each_mistake_gives_what_the_trade_says(values: tuple[float, float, float]):
    subject = of(values)
    for key, expected in expected_sizes(values).items():
        assert sizes(subject, key) == pytest.approx(sorted(expected), rel=1e-9), key


@pytest.mark.parametrize("values", VALUES)
def test_a_wrong_turn_at_a_tip_drags_the_later_lines(values: tuple[float, float, float]):
    a, b, c = values
    q = a * a + b * b + c * c
    subject = of(values, "tip-to-tail", order="12")
    assert math.sqrt(q + a * b - b * c - 2 * c * a) == pytest.approx(sizes(subject, "other-scale-at-tip")[0]) or (
        math.sqrt(q + a * b - b * c - 2 * c * a) == pytest.approx(sizes(subject, "other-scale-at-tip")[1])
    )
    throughout = sizes(subject, "other-scale-throughout")
    assert throughout == pytest.approx([math.sqrt(q + a * b + b * c - a * c)])


def test_machine_in_radians_by_numpy():
    a, b, c = VALUES[0]
    expected = {
        round(float(np.hypot((v * np.cos(t)).sum(), (v * np.sin(t)).sum())), 9)
        for v in [np.array([a, b, c])]
        for t in (np.array([0, -120, 120]), np.array([0, 240, 120]), np.array([0, -120, -240]))
    }
    assert expected == {round(size, 9) for size in sizes(of(VALUES[0]), "radians")}


def test_power_factors_ignored_or_mirrored():
    subject = made(a1="20", a2="45", a3="-10")
    assert sizes(subject, "factor-ignored") == pytest.approx([11.615506876585286])
    lead = made(a1="-20", a2="-45", a3="10")
    assert sizes(subject, "lead-for-lag") == pytest.approx([lead.size])


@pytest.mark.parametrize("method", METHODS)
def test_the_right_answer_is_accepted_however_it_is_typed(method: str):
    subject = of(VALUES[0], method)
    for typed in ("11.6 A", "11,6 A", "11600 mA", "58.1 mm", "5.8 cm", "5.81cm"):
        for told in ("87.5° anticlockwise", "87,5 acw", "87.5 ccw"):
            assert judge(subject, {"answer": typed, "answer-angle": told}).marked.band == ACCEPT, typed
    reply = judge(
        subject, {"answer": "58", "answer-unit": "mm", "answer-angle": "87.5", "answer-side": "anticlockwise"}
    )
    assert reply.marked.band == ACCEPT


def test_a_bare_number_right_in_another_unit_is_said_and_not_failed():
    subject = of(VALUES[0])
    reply = judge(subject, {"answer": "5.8", "answer-unit": "mm"})
    assert ("cm", LOOK) == (reply.unit_meant, reply.marked.band)
    assert "correct in cm, not in mm" in plain(tell(subject, reply, nowhere).headline)
    told = judge(subject, {"answer": "5.8 A", "answer-unit": "mm"})
    assert "" == told.unit_meant
    assert {"not-multiplied"} & {m.key for cause in told.marked.causes for m in cause.mistakes}


@pytest.mark.parametrize("how", ["drawn", "calculated"])
@pytest.mark.parametrize("unit", ["mm", "cm"])
def test_a_length_is_told_alike_whether_its_unit_is_chosen_or_written(unit: str, how: str):
    """Written behind the number it was "no typical mistake"."""
    subject = of(VALUES[0])
    chosen = judge(subject, {"answer": "11.61", "answer-unit": unit, "answer-how": how})
    written = judge(subject, {"answer": f"11.61 {unit}", "answer-unit": "A", "answer-how": how})
    assert ("A", LOOK) == (chosen.unit_meant, chosen.marked.band) == (written.unit_meant, written.marked.band)


@pytest.mark.parametrize(("angle", "side", "is_right"), [
    ("87.5", "anticlockwise", True), ("-87.5", "clockwise", False), ("-272.5", "clockwise", True),
    ("-272.5", "", True), ("272.5", "clockwise", True), ("-87.5", "anticlockwise", None),
    ("-272.5", "anticlockwise", None),
])  # fmt: skip
def test_a_minus_says_a_side_once_more_or_speaks_against_it(angle: str, side: str, is_right: bool | None):
    """With the other side chosen it was asked which way the arrow turns, though that had been said."""
    form = {"answer": "11.61", "answer-angle": angle, "answer-side": side, "answer-how": "calculated"}
    if is_right is None:
        with pytest.raises(InputError) as refused:
            judge(of(VALUES[0]), form)
        (fault,) = refused.value.faults
        assert "answer-angle" == fault.field and "Leave out the minus" in fault.message and angle in fault.message
    else:
        assert is_right == (judge(of(VALUES[0]), form).marked.band == ACCEPT)


def test_the_causes_of_an_answer_are_weighed_once_however_many_units_are_tried(monkeypatch: pytest.MonkeyPatch):
    subject, weighed, causes = of(VALUES[0]), [], marking.causes
    monkeypatch.setattr(marking, "causes", lambda *parts: (weighed.append(1), causes(*parts))[1])
    reply = judge(subject, {"answer": "9.1", "answer-unit": "mm", "answer-angle": "33"})
    assert ("", WRONG, 1) == (reply.unit_meant, reply.marked.band, len(weighed))


def test_the_ellipse_of_the_marking_is_that_of_simulated_answers():
    """Answers drawn from the covariance, with the reading's own errors, fall inside it 95 times in 100."""
    subject = of(VALUES[0])
    draws = np.random.default_rng(20261125)
    covariance = np.array(subject.spread.covariance)
    ends = draws.multivariate_normal([subject.result.real, subject.result.imag], covariance, 20000)
    lengths = np.hypot(ends[:, 0], ends[:, 1]) + draws.normal(0, 0.5 / subject.factor, 20000)
    angles = np.arctan2(ends[:, 1], ends[:, 0]) + np.radians(draws.normal(0, 0.5, 20000))
    inside = [off(subject, complex(point)) <= 1 for point in lengths * np.exp(1j * angles)]
    assert 0.94 < np.mean(inside) < 0.96
    assert pytest.approx(2.448) == ELLIPSE


def test_bands_grow_by_the_tolerance():
    subject = of(VALUES[0])
    size, _ = subject.tolerance(DRAWN, NO_LIMITS)
    for times, band in ((0.0, ACCEPT), (0.99, ACCEPT), (1.01, LOOK), (1.99, LOOK), (2.01, WRONG)):
        for sign in (1, -1):
            assert band == mark(subject, LearnerAnswer(subject.size + sign * times * size)).band
    own = Limits(percent=10.0)
    assert ACCEPT == mark(subject, LearnerAnswer(1.09 * subject.size), own).band
    assert LOOK == mark(subject, LearnerAnswer(1.11 * subject.size), own).band


def test_an_angle_without_its_side_fits_either():
    subject = of(VALUES[0])
    for angle in (subject.angle, -subject.angle):
        assert ACCEPT == mark(subject, LearnerAnswer(subject.size, angle, sided=False)).band
    assert WRONG == mark(subject, LearnerAnswer(subject.size, -subject.angle)).band


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("how", [DRAWN, CALCULATED])
def test_every_visible_mistake_is_named(method: str, how: str):
    """An answer that is just what a mistake gives names that mistake, whatever else fits too."""
    subject = of(VALUES[0], method)
    seen = 0
    for mistake in subject.mistakes:
        if how not in mistake.how:
            continue
        angle = None if mistake.point is None else phasor.angle(mistake.point)
        if not visible(subject, mistake, how, NO_LIMITS, with_angle=angle is not None):
            continue
        marked = mark(subject, LearnerAnswer(mistake.size, angle, how=how))
        # What gives a point that any slip of one line gives as well is not told from that.
        if marked.band == ACCEPT or mistake.weight < 0.5:
            continue
        seen += 1
        assert mistake.name in [m.name for cause in marked.causes for m in cause.mistakes], mistake.key
    assert seen >= 10


def test_an_answer_that_no_mistake_gives_names_none():
    subject = of(VALUES[0])
    told = tell(subject, judge(subject, {"answer": "14.0 A", "answer-angle": "20 anticlockwise"}), nowhere)
    assert () == told.causes
    assert any("This answer does not match a typical mistake" in plain(line) for line in told.lines)


def test_mistakes_on_one_point_are_one_class():
    subject = of(VALUES[0])
    groups = [{mistake.key for mistake in group} for group in classes(subject.mistakes, subject.size)]
    assert {"left-out", "stopped"} in groups


def test_mistakes_named_together_each_have_their_advice():
    """What one mistake asks to be looked at may not help with another that gives the same answer."""
    subject, told = of((18.4, 11.2, 24.6)), []
    for value in sorted({round(one.size, 2) for one in subject.mistakes if one.size is not None}):
        reply = judge(subject, {"answer": str(value), "answer-unit": "A", "answer-how": "drawn"})
        told += list(zip(reply.marked.causes, tell(subject, reply, nowhere).causes, strict=False))
    together = [(cause, plain(text)) for cause, text in told if len({one.look for one in cause.mistakes}) > 1]
    assert together
    assert all(plain(one.look) in text for cause, text in together for one in cause.mistakes)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_root_of_squares_is_answered_for_phasors_at_any_angle(slug: str):
    """Products that are subtracted belong to three currents 120° apart alone."""
    mistakes = CALCULATORS[slug].task({}).mistakes
    assert all("products" not in plain(one.look) for one in mistakes if one.key == "root-of-squares")


def test_later_steps_are_judged_from_the_learners_own_values():
    subject = of(VALUES[0], order="12")
    first = next(earlier for earlier in subject.earlier if earlier.key == "first")
    wrong = first.value * 1.4
    then = wrong + first.remainder
    form = {
        "answer": f"{abs(then):.2f} A", "answer-first": f"{abs(wrong):.2f} A",
        "answer-angle": f"{phasor.angle(then):.1f}", "answer-side": "anticlockwise",
    }  # fmt: skip
    reply = judge(subject, form)
    assert (True, ("first",)) == (reply.follows, reply.wrong_before)
    assert "Correct from your own" in plain(tell(subject, reply, nowhere).headline)
    unrelated = judge(subject, {**form, "answer": "30 A"})
    assert not unrelated.follows


def test_parts_follow_too():
    subject = of(VALUES[0], "components")
    across, up = (earlier.value.real for earlier in subject.earlier)
    reply = judge(subject, {"answer": f"{math.hypot(across + 8, up):.2f} A", "answer-across": f"{across + 8:.2f} A",
                            "answer-up": f"{up:.2f} A", "answer-how": CALCULATED})  # fmt: skip
    assert (True, ("across",)) == (reply.follows, reply.wrong_before)


@pytest.mark.parametrize("picture", list(itertools.product(("up", "right"), ("clockwise", "anticlockwise"))))
@pytest.mark.parametrize("angles", ["protractor", "polar"])
def test_the_angle_that_the_sheet_prints_is_the_angle_that_is_accepted(picture, angles):
    """Whatever the picture, the angle is given as its own table has it."""
    first, rotation = picture
    form = {**FORM, "a1": "25", "a2": "-10", "first": first, "rotation": rotation, "angles": angles}
    reply, _ = handle(json.dumps({"do": "answer", "page": "neutral-current", "form": form, "parts": ["sheet"]}))
    table = json.loads(reply)["regions"]["sheet"]
    subject = task(form)
    if angles == "polar":
        degrees = f"{subject.angle - subject.turn:.1f}"
        given = {"answer-angle": degrees, "answer-side": ""}
    else:
        side = "anticlockwise" if subject.angle * subject.sense > 0 else "clockwise"
        degrees = f"{abs(subject.angle):.1f}"
        given = {"answer-angle": degrees, "answer-side": side}
    assert degrees.replace("-", "−").rstrip("0").rstrip(".") in table
    assert ACCEPT == judge(subject, {"answer": f"{subject.size:.2f} A", **given}).marked.band


@pytest.mark.parametrize("tier", TIERS)
def test_generated_problems_keep_the_right_answer_from_every_mistake(tier: str):
    """By length and angle, at a practised hand on A4: of mistakes that move the point, 99 in 100 are told
    from the right answer, for the method chosen to fit. Mistakes that depend on a value that only the learner knows
    (another scale, two figures exchanged: 11.2 as 12.1) may be smaller than the hand's own error."""
    told = asked = 0
    for number in range(1, 41):
        lines = lines_of(Code(0, tier, seed=4242, number=number))
        values = {f"i{n}": str(t / 10) for n, t in enumerate(lines.tenths, 1)}
        lags = {f"a{n}": str(lag) for n, lag in enumerate(lines.lags, 1)}
        for method in ("parallelogram", "tip-to-tail"):
            subject = made(**values, **lags, method=method)
            moving = [m for m in subject.mistakes if DRAWN in m.how and m.point is not None and m.tabled]
            for group in classes(moving, subject.size):
                asked += 1
                told += visible(subject, group[0], DRAWN, NO_LIMITS)
    assert told / asked > 0.99, f"{told} of {asked}"


@pytest.mark.parametrize(
    ("given", "field", "words"),
    [
        ({"answer": ""}, "answer", "is empty"),
        ({"answer": "abc"}, "answer", "cannot be read"),
        ({"answer": "5 kg"}, "answer", "cannot be read"),
        ({"answer": "1e400"}, "answer", "cannot be read"),
        ({"answer": "-4 A"}, "answer", "is negative"),
        ({"answer": "4 A", "answer-angle": "north"}, "answer-angle", "is not an angle"),
        ({"answer": "4 A", "answer-angle": "1000"}, "answer-angle", "is not an angle"),
        ({"answer": "4 A", "answer-first": "x"}, "answer-first", "cannot be read"),
        ({"answer": "4 A", "allow-percent": "400"}, "allow-percent", "cannot be used"),
        ({"answer": "4 A", "allow-degrees": "no"}, "allow-degrees", "cannot be used"),
    ],
)
def test_answers_that_cannot_be_read_say_why(given: dict, field: str, words: str):
    reply = json.loads(handle(json.dumps({"do": "mark", "page": "neutral-current", "form": FORM, "given": given}))[0])
    assert reply["ok"] is False
    assert [field] == [error["field"] for error in reply["errors"]]
    assert words in reply["errors"][0]["message"]


@pytest.mark.parametrize("typed", ["5 at 30", "5 at 3x", "5 ∠ 90°"])
@pytest.mark.parametrize(("field", "label"), [
    ("answer-across", "Sum of the horizontal components"), ("answer-up", "Sum of the vertical components"),
])  # fmt: skip
def test_a_sum_of_components_is_a_size_only(field: str, label: str, typed: str):
    """An angle behind it is neither dropped nor called that of a first diagonal, which such a drawing does not have."""
    request = {"do": "mark", "page": "neutral-current", "form": {**FORM, "method": "components"}}
    reply = json.loads(handle(json.dumps({**request, "given": {"answer": "4 A", field: typed}}))[0])
    assert [(field, f"{label}: enter a size only, without an angle.")] == [
        (error["field"], error["message"]) for error in reply["errors"]
    ]
    assert json.loads(handle(json.dumps({**request, "given": {"answer": "4 A", field: "5 A"}}))[0])["ok"]


def test_a_reply_never_gives_the_right_answer_away():
    given = {"answer": "31 A", "answer-angle": "20", "answer-side": "clockwise"}
    text = handle(json.dumps({"do": "mark", "page": "neutral-current", "form": FORM, "given": given}))[0]
    assert "11.6" not in text and "87.5" not in text


@pytest.mark.parametrize(
    "values", [("10", "10", "10"), ("10", "0", "0"), ("10", "5", "0"), ("0", "7", "7"), ("1000", "1", "1")]
)
@pytest.mark.parametrize("method", METHODS)
def test_degenerate_problems_are_marked_too(values, method: str):
    subject = made(i1=values[0], i2=values[1], i3=values[2], method=method)
    for size in (subject.size, 0.0, 3.7 * subject.size + 1.0):
        for angle in (None, "0", "90"):
            turned = {} if angle is None else {"answer-angle": angle, "answer-side": "clockwise"}
            given = {"answer": f"{size} A"} | turned
            assert tell(subject, judge(subject, given), nowhere).headline
    assert marking.mark(subject, LearnerAnswer(subject.size)).band == ACCEPT


def test_a_length_that_is_right_at_another_scale_asks_which_scale_was_drawn():
    subject = of(VALUES[0])
    angle = {"answer-angle": "87.5 anticlockwise"}
    for typed in ("116 mm", "23.2 A"):
        told = tell(subject, judge(subject, {"answer": typed, **angle}), nowhere)
        (cause,) = (plain(cause).replace("\u00a0", " ") for cause in told.causes)
        assert "if the drawing was made at another scale, 1 cm = 1 A." in cause
        assert "Or if the length was read at another scale, 1 cm = 4 A." in cause
        assert WRONG == told.band
    told = tell(subject, judge(subject, {"answer": "95 mm", **angle}), nowhere)
    assert "another scale" not in plain(told.phrases[-1])


def test_a_number_that_is_right_in_thousands_is_said_and_not_failed():
    """6.67 where the sheet has VA: right in kVA."""
    task = CALCULATORS["two-wattmeters"].task({"volts": "400", "amps": "10", "lag": "40"})
    assert "VA" == task.writing.unit
    direction = {"answer-angle": f"{abs(task.angle):.1f}", "answer-side": "anticlockwise"}
    for how in ("drawn", "calculated"):
        reply = judge(task, {"answer": f"{task.size / 1000:.3f}", "answer-unit": "VA", "answer-how": how, **direction})
        assert ("kVA", "VA", LOOK) == (reply.unit_meant, reply.unit, reply.marked.band)


def said_of(subject: Task, **typed: str) -> str:
    """The whole judgement of a drawn answer as it is read out."""
    reply = judge(subject, {"answer-how": "drawn", **{name.replace("_", "-"): text for name, text in typed.items()}})
    text = tell(subject, reply, nowhere)
    return " ".join(plain(phrase) for phrase in text.phrases).replace("\u00a0", " ")


def test_a_length_is_judged_with_what_was_read_and_the_other_unit_is_named_if_it_explains_it() -> None:
    """A learner who types the plain sum, 48, while the unit is mm, is not left with “too small”."""
    subject = of((24, 15, 9))
    told = said_of(subject, answer="48", answer_unit="mm")
    assert told.startswith("You typed 48 mm, that is 9.6 A. Not yet.")
    assert "48 A would be a typical mistake: you get it if the values were added as plain numbers." in told
    assert "does not match a typical mistake" not in told
    assert said_of(subject, answer="65.5 mm", answer_angle="23.4", answer_side="clockwise").startswith(
        "You typed 65.5 mm, that is 13.1 A. Correct"
    )
    assert "You typed" not in said_of(subject, answer="48", answer_unit="A")
    assert "would be a typical mistake" not in said_of(subject, answer="48 A", answer_unit="mm")
    assert "would be a typical mistake" not in said_of(subject, answer="31", answer_unit="mm")


def test_size_and_angle_each_inside_their_tolerance_but_not_together_is_said_with_figures() -> None:
    subject = of((24, 15, 9))
    size, angle = subject.tolerance(DRAWN, NO_LIMITS)
    assert 13.9 - subject.size < size and 23.41 - 20 < angle
    told = said_of(subject, answer="13.9", answer_unit="A", answer_angle="20", answer_side="clockwise")
    assert told.startswith(
        "Look again. Size and angle are each inside their tolerance, but not both together: the size is 0.82 A off, "
        "the angle 3.4°."
    )
    assert "wrong in angle" not in told
    only = said_of(subject, answer="13.1", answer_unit="A", answer_angle="29", answer_side="clockwise")
    assert "right in size but wrong in angle, by 5.6°" in only
