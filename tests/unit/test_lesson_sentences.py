"""Each sentence of a lesson stands alone on its screen, and says where the ruler goes and how the protractor turns."""

import itertools
import re
from dataclasses import dataclass
from functools import cache

import pytest
from host import shelf

from pycore.calculators.registry import CALCULATORS
from pycore.constructions.moves import Join, Move, ReadAngle, ReadLength, SetOff, TurnAngle, turn_of
from pycore.constructions.names import SUM_KEY
from pycore.drawing import Group, Text, walk
from pycore.errors import InputError
from pycore.sums.classroom import SumLesson
from pycore.sums.lesson_asked import question_of
from pycore.sums.lesson_frame import LessonFrame
from pycore.sums.sentences import StepSentences
from pycore.words import lesson as words
from pycore.words import plain
from pycore.words.phrase import Phrase

COUNT = 6
WAYS = (
    {}, {"method": "tip-to-tail"}, {"method": "tip-to-tail", "resultant": "returning"}, {"method": "components"},
    {"method": "parallelogram"}, {"method": "parallelogram", "parallels": "compasses", "resultant": "returning"},
    {"method": "parallelogram", "parallels": "set-squares"},
)  # fmt: skip
FRAGMENT = re.compile(r"^(From|With|By|To|At|On|In|Of|Along|And|Or)\b|\bthey\b|\bit is the (?:$|\.)")
"""The start of a sentence whose verb was cut off, or a word that stands for something on an earlier screen."""


def lesson_of(slug: str, form: dict[str, str]) -> SumLesson:
    return SumLesson(CALCULATORS[slug].case(form))


@dataclass(frozen=True)
class Told:
    """One frame of a lesson in words, with its move."""

    move: Move | None
    phase: str
    sentence: str
    reading: str
    question: Phrase


def told_by(lesson: SumLesson) -> tuple[Told, ...]:
    """The frames of a lesson, without their pictures."""
    whole = lesson.lesson
    told = []
    for frame in whole.frames:
        sentence, reading, _, figure = whole.frame_words(frame)
        question = question_of(whole, frame) if figure else ()
        told.append(Told(frame.move, frame.phase, plain(sentence), plain(reading), question))
    return tuple(told)


@cache
def lessons(slug: str) -> tuple[tuple[SumLesson, tuple[Told, ...], str], ...]:
    """Lessons of a calculator's seeded forms by each method that it offers, each with its frames and its list."""
    made = []
    for form in shelf.forms(slug, COUNT):
        for way in WAYS:
            try:
                lesson = lesson_of(slug, {**form, **way})
            except InputError as error:
                assert "not one of the options" in str(error)
                continue
            made.append((lesson, told_by(lesson), " ".join(moves(lesson))))
    return tuple(made)


def frames(lesson: SumLesson) -> list[LessonFrame]:
    whole = lesson.lesson
    return [whole.show(number) for number in range(1, len(whole.frames) + 1)]


def moves(lesson: SumLesson) -> list[str]:
    """The numbered sentences of the same construction, each with its reason."""
    told = StepSentences(lesson.plan, lesson.case.notation).all_moves()
    return [f"{plain(move.phrase)} {plain(move.why)}" for move in told]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_each_sentence_of_a_lesson_stands_alone(slug: str) -> None:
    """A capital letter, a full stop, nothing cut off, no word that only an earlier screen explains, none twice."""
    for _, frames_told, _ in lessons(slug):
        told = [(one.sentence, one.reading) for one in frames_told]
        for sentence, reading in told:
            assert re.match(r"[A-Z]", sentence) and sentence.endswith("."), sentence
            assert not FRAGMENT.search(sentence), sentence
            assert not reading or (re.match(r"[A-Z\d]", reading) and reading.endswith(".")), reading
        assert all(before != after for before, after in itertools.pairwise(told)), told


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_line_between_two_points_names_both_and_only_what_is_on_the_paper(slug: str) -> None:
    """The tip of a phasor is named only after the phasor is drawn."""
    seen = 0
    for lesson, frames_told, _ in lessons(slug):
        tags, made = lesson.case.notation.tags, lesson.plan.construction.moves
        for one in frames_told:
            before = made[: made.index(one.move)] if one.move else ()
            drawn = [plain(tags[move.phasor]) for move in before if isinstance(move, (SetOff, Join)) and move.phasor]
            for name in re.findall(r"the tip of (.+?)(?: to |, |\.$)", one.sentence):
                assert name == "the diagonal" or name in drawn, (one.sentence, drawn)
            if isinstance(one.move, Join) and not one.phase:
                assert re.match(r"Ruler from the .+ to (the|where the) .+\.$", one.sentence), one.sentence
                seen += 1
    assert seen


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_slope_is_an_acute_angle_with_its_side(slug: str) -> None:
    """No ruler lies 150° below the horizontal."""
    for _, frames_told, listed in lessons(slug):
        told = " ".join([listed, *(one.sentence for one in frames_told)])
        slopes = re.findall(r"([\d.,]+)° (?:above|below) the horizontal, to the (?:right|left)", told)
        assert all(0.0 < float(slope.replace(",", ".")) < 90.0 for slope in slopes)
        assert len(slopes) == told.count("the horizontal,")


@pytest.mark.parametrize(("degrees", "words_of_it"), [
    (0.0, "to the right"), (30.0, "30° above the horizontal, to the right"), (90.0, "straight up"),
    (150.0, "30° above the horizontal, to the left"), (180.0, "to the left"), (-179.99, "to the left"),
    (-150.0, "30° below the horizontal, to the left"), (-90.0, "straight down"), (-10.0, "10° below the horizontal, to "
    "the right"), (89.98, "straight up"), (0.02, "to the right"),
])  # fmt: skip
def test_a_direction_in_words(degrees: float, words_of_it: str) -> None:
    lesson = lesson_of("add-phasors", {"p1": "20 A", "p2": "10 A at 90°", "first": "right"})
    assert words_of_it == StepSentences(lesson.plan, lesson.case.notation).direction(degrees)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_phasor_straight_back_is_drawn_back_along_the_one_before(slug: str) -> None:
    for lesson, frames_told, _ in lessons(slug):
        made, readings = lesson.plan.construction.moves, lesson.plan.construction.figure.readings
        turns = {move.line: move for move in made if isinstance(move, TurnAngle)}
        for one in frames_told:
            turn = turns.get(one.move.line) if isinstance(one.move, SetOff) else None
            if turn is not None and turn.back and turn_of(turn, readings) == 0.0:
                assert "its edge back along " in one.sentence


def test_a_capacitor_after_a_coil_is_drawn_straight_back() -> None:
    form = {"r": "30 Ω", "l": "0.2 H", "c": "100 µF", "method": "tip-to-tail", "order": "23"}
    told = [plain(frame.sentence) for frame in frames(lesson_of("series-circuit", form))]
    assert "Ruler’s zero mark on the tip of V_L, its edge back along V_L." in told


def test_the_triangle_and_the_star_point_are_drawn_from_point_to_point() -> None:
    """An open neutral: each side by its ends, the mark by its side, the crossing, and each load's voltage."""
    form = {"z1": "20 Ω", "z2": "30 Ω", "z3": "60 Ω", "method": "displacement"}
    told = [f"{plain(frame.sentence)} {plain(frame.reading)}" for frame in frames(lesson_of("open-neutral", form))]
    text = " ".join(told)
    for number in (1, 2, 3):
        one, other = "₁₂₃"[number - 1], "₁₂₃"[number % 3]
        assert f"Ruler from the tip of V{one} to the tip of V{other}. Draw a dashed line, " in text
        assert f"Ruler from the tip of V_S to the tip of V{one}. Draw U{one}." in text
    assert "Ruler’s zero mark on the tip of V₁, its edge along the dashed line to the tip of V₂. Mark " in text
    assert "Ruler from the tip of V₃ to the mark that you have just made. Draw a dashed line, " in text
    assert "Ruler from the common point to where the last two dashed lines meet. Draw V_S and measure it: " in text


def test_the_displacement_is_hidden_with_the_answer() -> None:
    """Drawn and measured at once, it is the answer; a class may be asked for its length."""
    form = {"z1": "20 Ω", "z2": "30 Ω", "z3": "60 Ω", "method": "displacement"}
    answers = [frame for frame in frames(lesson_of("open-neutral", form)) if frame.answers]
    assert ["Draw V_S and measure it"] == [plain(frame.reading).partition(":")[0] for frame in answers]
    assert [words.ASK_LENGTH] == [frame.question for frame in answers]


@pytest.mark.parametrize(("load", "line"), [("10 kW", "the line of Q"), ("10 kVA", "")])
def test_the_target_line_of_a_correction_is_drawn(load: str, line: str) -> None:
    """From the start through the mark; where there is no reactive power it needs no correction."""
    form = {"load": load, "angle": "0.7", "target": "0.95", "method": "tip-to-tail"}
    lesson = lesson_of("power-triangle", form)
    told = " ".join(f"{plain(frame.sentence)} {plain(frame.reading)}" for frame in frames(lesson))
    assert re.search(r"Mark [\d.]+° \w+\. Draw a faint line from the start through the mark to the line of Q\.", told)
    assert "Ruler from the tip of Q to where the faint line meets the line of Q. Draw Q_C." in told
    assert "Ruler from the start to the tip of Q_C. Draw S₂." in told


def test_a_correction_to_power_factor_one_ends_at_the_tip_of_p() -> None:
    form = {"load": "10 kW", "angle": "0.7", "target": "1", "method": "tip-to-tail"}
    lesson = lesson_of("power-triangle", form)
    told = " ".join(f"{plain(frame.sentence)} {plain(frame.reading)}" for frame in frames(lesson))
    assert "Ruler from the tip of Q to the tip of P. Draw Q_C." in told
    assert "From the tip of Q to the tip of P." in " ".join(moves(lesson))
    assert "where the faint line meets" not in told + " ".join(moves(lesson))


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_returning_arrow_has_one_name_and_one_direction(slug: str) -> None:
    """Drawn without the sum, it is what is measured; the protractor's reading leads to the list's direction."""
    for form in shelf.forms(slug, COUNT):
        lesson = lesson_of(slug, {**form, "method": "tip-to-tail", "resultant": "returning"})
        if lesson.case.closed:
            continue
        tag = plain(lesson.case.notation.tags["return"])
        whole = lesson.lesson
        reads = [whole.show(number) for number, frame in enumerate(whole.frames, start=1)
                 if isinstance(frame.move, (ReadLength, ReadAngle))]  # fmt: skip
        length, angle = reads[-2:]
        assert plain(length.sentence) == f"Ruler along {tag}, its zero mark on the start."
        assert f", {tag} is " in plain(length.why[0]) and plain(lesson.case.notation.tags[SUM_KEY]) + " is " not in (
            plain(length.why[0]).replace(tag, "")
        )
        last = next(told for told in moves(lesson) if told.startswith(f"Measure {tag}. "))
        direction = re.search(r"Direction: (.+?)\. The", last)
        if direction:
            assert plain(angle.why[-1]).endswith(f"{tag} points the opposite way along this line: {direction[1]}.")


def test_the_returning_current_of_parallelograms_goes_backwards_through_the_common_point() -> None:
    lesson = lesson_of("neutral-current", {"i1": "18.4", "i2": "11.2", "i3": "24.6", "resultant": "returning"})
    last = frames(lesson)[-1]
    assert "Ruler’s zero mark on the common point, its edge along I_N extended backwards." == plain(last.sentence)
    assert plain(last.reading).startswith("Draw −I_N, ")


@pytest.mark.parametrize("method", ["parallelogram", "components"])
def test_a_phasor_on_the_zero_line_says_so_and_no_more(method: str) -> None:
    """At 179.99° a protractor's scales say nothing, and the other way round is the same angle."""
    form = {"p1": "20 A", "p2": "20 A at 179.99°", "method": method, "first": "right"}
    told = " ".join(moves(lesson_of("add-phasors", form)))
    assert "180° is straight back along the zero line, on the other side of the common point." in told
    assert "more than a right angle" not in told and "has no 180°" not in told


def test_a_phasor_almost_straight_back_is_drawn_straight_back() -> None:
    told = " ".join(moves(lesson_of("add-phasors", {"p1": "20 A", "p2": "9 A at 179.99°", "method": "tip-to-tail"})))
    assert "Draw I₂ from the tip of I₁, straight back along the same line, " in told
    assert "Mark 0°" not in told


@pytest.mark.parametrize(("angle", "way"), [
    ("180°", "straight back along I₁"), ("0°", "straight on along the line of I₁"), ("60°", "120° clockwise from the "
    "line back along I₁"),
])  # fmt: skip
def test_a_dot_at_a_tip_says_its_way(angle: str, way: str) -> None:
    form = {"p1": "20 A", "p2": f"0.3 A at {angle}", "method": "tip-to-tail", "paper": "A4"}
    told = " ".join(moves(lesson_of("add-phasors", form)))
    assert f" from the tip of I₁, {way}: too short for an arrow." in told


def test_what_follows_from_a_reading_is_told_as_the_learners_own() -> None:
    """The second parallelogram: whole degrees after about, the supplement of the same number, the own diagonal."""
    form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "order": "12", "scale": "2", "paper": "A3"}
    told, listed = frames(lesson_of("neutral-current", form)), " ".join(moves(lesson_of("neutral-current", form)))
    readings = [plain(frame.reading) for frame in told]
    assert "Read the angle to I₃: about 157°." in readings
    assert [] != [one for one in readings if re.match(r"Mark about 23° \w+\.", one)]
    assert "Draw a dashed line as long as your diagonal (about 80.5\u00a0mm)." in readings
    assert "Expect about 157°." in listed and "180° − 157° = 23°" in listed
    assert "Draw a dashed line as long as your diagonal (about 80.5\u00a0mm), parallel to it." in listed
    assert [] == re.findall(r"about \d+\.\d+°", listed)


def test_the_neighbouring_angle_is_marked_with_its_sense() -> None:
    told = " ".join(moves(lesson_of("neutral-current", {"i1": "18.4", "i2": "11.2", "i3": "24.6", "order": "12"})))
    assert "Mark 60° anticlockwise at the tip of I₁. Protractor’s centre on that tip, zero line back along I₁. " in told


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_hidden_reading_is_asked_for_as_what_it_is(slug: str) -> None:
    """Nothing is read off a tool that is about to draw or mark."""
    for _, frames_told, _ in lessons(slug):
        for one in frames_told:
            move = one.move
            if not one.question or move is None:
                continue
            reads = isinstance(move, (ReadLength, ReadAngle)) or (isinstance(move, Join) and move.phasor == SUM_KEY)
            assert reads == ("do you read on your own" in plain(one.question)), (plain(one.question), move)
            # A hint has no picture in which this line could be seen.
            assert "this line" not in plain(one.question)
            assert not isinstance(move, TurnAngle) or "do you mark from" in plain(one.question)


def test_who_is_asked_for_an_angle_hears_to_which_line_it_is_read():
    """The zero line is in the sentence; the second line stood only in the reading, which is hidden."""
    named = 0
    for _, frames_told, _ in lessons("neutral-current"):
        for one in frames_told:
            if isinstance(one.move, ReadAngle):
                line, begins, _ = one.reading.removeprefix("Read the angle to ").partition(":")
                assert not begins or f"How many degrees to {line} do you read" in plain(one.question)
                named += bool(begins)
    assert named


@pytest.mark.parametrize(("angle", "told"), [
    ("90°", "It is on the vertical axis: {} up, nothing to the side."),
    ("180°", "It is on the horizontal axis: {} to the left, nothing up or down."),
])  # fmt: skip
def test_a_phasor_on_an_axis_needs_no_perpendicular(angle: str, told: str) -> None:
    form = {"p1": f"20 A at {angle}", "p2": "10 A at 30°", "method": "components", "first": "right", "scale": "2"}
    lesson = lesson_of("add-phasors", form)
    length = "100\u00a0mm (10\u00a0cm)"
    assert f"Find the components of I₁. {told.format(length)} " in moves(lesson)
    axis = "vertical" if angle == "90°" else "horizontal"
    shown = [f"{plain(frame.sentence)} {plain(frame.reading)}" for frame in frames(lesson)]
    none = "horizontal" if angle == "90°" else "vertical"
    assert f"The tip of I₁ is on the {axis} axis. There is no {none} component." in shown
    assert not any(one.startswith("Read no ") for one in shown)


def test_two_phasors_on_one_line_are_not_called_almost_on_it() -> None:
    form = {"p1": "20 A", "p2": "10 A", "p3": "10 A at 90°", "method": "parallelogram", "order": "12"}
    told = " ".join(moves(lesson_of("add-phasors", form)))
    assert "No parallelogram: I₁ and I₂ are on one line, or almost. Use tip to tail: from the tip of I₁, draw " in told


@pytest.mark.parametrize("slug", ["add-phasors", "sequence-components"])
def test_the_line_at_nought_degrees_is_called_a_line(slug: str) -> None:
    """Nobody draws an angle, or lays a protractor along one."""
    for lesson, frames_told, listed in lessons(slug):
        if plain(lesson.case.notation.reference) != "0°":
            continue
        notes = lesson.case.sheet_words(lesson.plan, "problem", "").notes
        told = " ".join([listed, *(one.sentence for one in frames_told), *notes])
        assert "the 0° line" in told
        assert [] == re.findall(r"(?:along|Draw|direction of|line with) 0°", told)


def test_dots_are_named_by_their_arrows() -> None:
    """Not "capacitor is shorter": the arrow has a tag."""
    form = {"load": "10 kW", "angle": "0.7", "target": "0.701"}
    notices = [plain(one) for one in CALCULATORS["power-triangle"].answer(form, ("answer",)).notices]
    assert [] != [one for one in notices if one.startswith("At this scale Q_C is shorter than 4 mm")]


def test_the_first_rope_is_not_one_more() -> None:
    lesson = lesson_of("neutral-current", {"i1": "9", "i2": "8", "i3": "7"})
    assert ["A rope", "One more rope", "One more rope"] == [
        plain(lesson.show("pull", step).sentence).partition(" pulls")[0] for step in (1, 2, 3)
    ]


@pytest.mark.parametrize(("method", "way"), [
    ("parallelogram", "from the common point, backwards along the line just measured"),
    ("tip-to-tail", "from the last tip back to the start"),
])  # fmt: skip
def test_an_easy_sheet_measures_the_sum_before_it_draws_the_returning_current(method: str, way: str) -> None:
    """Then "its angle" is the angle of one arrow, and the other's row of the table is asked for by name."""
    form = {"resultant": "returning", "print": "easy", "sheet": "problem", "method": method}
    pages = CALCULATORS["neutral-current"].pages(form)
    told = " ".join(item.plain for page in pages for item in walk(page.items) if isinstance(item, Text))
    measured, drawn = told.index("Measure its angle."), told.index("Draw the returning current too:")
    assert measured < drawn
    assert f"{way}. It has the same length and the opposite direction. " in told
    assert "Write its length and its angle in the table." in told[drawn:]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_lesson_ends_with_the_answer_and_its_direction(slug: str) -> None:
    """The last reading says its side, and then what was found; the finished drawing follows, without instruments."""
    page = CALCULATORS[slug]
    case = page.case({})
    count = page.lesson({}, "lesson", 1).count
    last, finished = (page.lesson({}, "lesson", number) for number in (count - 1, count))
    assert finished.answers and "Finished drawing" == finished.heading
    result = case.notation.amount_of(SUM_KEY, case.size)
    assert f"{plain(case.notation.tags[SUM_KEY])} is {result}." == plain(finished.reading)
    instruments = {"tool", "reading", "zero", "known"}
    kept = [one for one in walk(finished.picture.items) if isinstance(one, Group) and one.name in instruments]
    assert [] == [one for group in kept for one in walk(group.items) if not isinstance(one, Group)]
    final = case.sheet_plan().construction.moves[-1]
    if not isinstance(final, ReadAngle):
        assert "Read" not in plain(last.reading) or case.method != "parallelogram"
        return
    text, amount = plain(last.reading), case.notation.amount_of(SUM_KEY, case.size)
    assert re.match(r"Read [0-9.]+°( clockwise| anticlockwise)?\. ", text)
    assert text.endswith(f" {plain(case.notation.tags[SUM_KEY])} is {amount}.")


def test_most_lessons_end_with_an_angle_and_so_with_the_answer() -> None:
    ends = [page.case({}).sheet_plan().construction.moves[-1] for page in CALCULATORS.values()]
    assert len([end for end in ends if isinstance(end, ReadAngle)]) >= 6
