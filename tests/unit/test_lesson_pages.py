"""What a term needs beside its sheets: short pages to read, lesson plans, the recording sheet for a rig."""

import json
import math
import re

import pytest
from calculators.claims import claims_of
from unit.sheets import on_page, strokes, texts
from unit.test_sheet_clear import touching

from pycore import api
from pycore.calculators.registry import CALCULATORS, module_of
from pycore.drawing import Arrow, Line, Page, Shape, Text
from pycore.forms.fields import default_form
from pycore.pages.class_set import FIELDS as SET_FIELDS
from pycore.pages.lesson_plans import folder, lesson_pages, lessons_of, plans
from pycore.pages.paper import PAPER_PAGES, READINGS
from pycore.pages.reading import InlineDrawing, LinkList, ReadingPage, Steps
from pycore.pages.readings import reading_pages
from pycore.render.page import footer_html
from pycore.render.reading import reading_page
from pycore.words import lesson_plans as words
from pycore.words import mistakes, plain
from pycore.words import rig as rig_words

READ = {page.slug: page for page in reading_pages()}
PLANNED = tuple(plans().values())
PLANS = {page.slug: page for page in lesson_pages(CALCULATORS)}


def drawings(page: ReadingPage) -> dict[str, Page]:
    return {block.name: block.page for section in page.sections for block in section.blocks
            if isinstance(block, InlineDrawing)}  # fmt: skip


DRAWINGS = {name: page for read in READ.values() for name, page in drawings(read).items()}


def said(page: ReadingPage) -> str:
    """All words of a page."""
    return " ".join(plain(item) for section in page.sections for block in section.blocks
                    if isinstance(block, Steps) for item in block.items)  # fmt: skip


@pytest.mark.parametrize("slug", list(PLANS))
def test_advice_in_general_words_reads_as_a_sentence(slug: str):
    assert not re.search(r"\b(angle|length) of it\b|\bthe other is|\bit it\b", said(PLANS[slug]))


@pytest.mark.parametrize("name", list(DRAWINGS))
def test_the_words_of_a_picture_touch_nothing_and_stay_in_it(name: str):
    """The figures on the instruments apart, which stand turned on their scales."""
    page = DRAWINGS[name]
    own = [text for text in texts_level(page) if text.group in ("words", "amperes")]
    assert own
    lines = [stroke for stroke in strokes(page) if "protractor-body" not in stroke.source]
    assert [] == touching(own, lines, page.box)


def texts_level(page: Page):
    level = Page(page.width, page.height, tuple(
        item for item in page.items if not getattr(item, "instrument", "") and not isinstance(item, Text)
    ))  # fmt: skip
    return texts(level)


def ends_of_arrow(page: Page) -> list[tuple[float, float]]:
    return [(a.item.tip.x - a.item.tail.x, a.item.tip.y - a.item.tail.y) for a in on_page(page, Arrow)]


def test_the_line_on_the_ruler_is_92_mm_and_ends_at_the_graduation_and_at_18_4_amperes():
    page = DRAWINGS["ruler"]
    (arrow,) = [placed.item for placed in on_page(page, Arrow)]
    assert 92.0 == arrow.tip.x - arrow.tail.x
    marks = sorted(p.item.start.x for p in on_page(page, Line) if "ruler" in p.names and p.item.start.x == p.item.end.x)
    assert arrow.tail.x == marks[0]
    assert arrow.tip.x == pytest.approx(marks[92])
    ticks = [p.item for p in on_page(page, Line) if "amperes" in p.names and p.item.start.x == p.item.end.x]
    assert 18.4 == pytest.approx((arrow.tip.x - ticks[0].start.x) / (ticks[1].start.x - ticks[0].start.x) * 2)


@pytest.mark.parametrize(("name", "right", "up"), [("right", math.cos, math.sin), ("up", math.sin, math.cos)])
def test_the_parts_of_the_arrow_belong_to_the_axes_that_the_words_say(name: str, right, up):
    across, upward, whole = ends_of_arrow(DRAWINGS[name])
    size = math.hypot(*whole)
    angle = math.radians(30)
    assert (size * right(angle), size * up(angle)) == pytest.approx(whole)
    assert (whole[0], 0.0, 0.0, whole[1]) == pytest.approx((*across, *upward))
    labels = [text.words for text in texts_level(DRAWINGS[name])]
    below = next(label for label in labels if label.endswith("A") and "×" in label and "=" in label)
    assert ("cos" in below) is (name == "right")
    assert "8.66" in below if name == "right" else "5\u00a0A" in below


@pytest.mark.parametrize(("name", "angle"), [("half", 120.0), ("full", 240.0)])
def test_the_ray_on_the_protractor_passes_the_graduation_that_is_named(name: str, angle: float):
    page = DRAWINGS[name]
    rays = [p.item for p in on_page(page, Line) if p.item.ink == "accent"]
    directions = {
        round(math.degrees(math.atan2(ray.end.y - ray.start.y, ray.end.x - ray.start.x)) % 360, 6) for ray in rays
    }
    assert {angle} == directions
    assert f"{angle:.0f}°" in [text.words for text in texts_level(page)]


def addresses(page: ReadingPage) -> list[str]:
    return [address for section in page.sections for block in section.blocks if isinstance(block, LinkList)
            for _, address in block.items]  # fmt: skip


@pytest.mark.parametrize("slug", list(PLANS))
def test_every_link_of_a_lesson_opens_with_its_values_and_nothing_unknown(slug: str):
    pages = {*CALCULATORS, *PAPER_PAGES, *READ, *PLANS, "class-set"}
    found = addresses(PLANS[slug])
    assert len(found) >= 5
    for address in found:
        page, _, fragment = address.removeprefix("../").partition("/")
        assert page in pages
        if page in CALCULATORS and fragment:
            request = {"do": "open", "page": page, "fragment": fragment.removeprefix("#")}
            opened = json.loads(api.handle(json.dumps(request))[0])
            assert [] == opened["notices"]
            example = default_form(CALCULATORS[page].fields)
            values = [field.name for field in CALCULATORS[page].fields if field.group == "values"]
            assert {name: example[name] for name in values} == {name: opened["form"][name] for name in values}
        elif page == "class-set":
            keys = {pair.partition("=")[0] for pair in fragment.removeprefix("#").split("&")}
            assert keys <= {"v", *(field.name for field in SET_FIELDS)}


def test_a_lesson_says_the_pages_own_numbers_its_cautions_and_the_catalogues_words():
    page = PLANS[words.SLUG]
    told = said(page)
    for number in ("18.4", "11.2", "24.6", "11.6", "58\u00a0mm"):
        assert number in told
    assert "{" not in told
    for caution in CALCULATORS["neutral-current"].cautions[:-1]:
        assert caution in told
    for key in PLANNED[0].listen:
        look = mistakes.IN_GENERAL.get(key, mistakes.NAMES[key][1]).split(".")[0]
        assert look.replace("{a}", "it").replace("{b}", "the other") in told
    assert 60 == sum(part.minutes for part in PLANNED[0].parts)
    assert "examining bod" in str(page.sections[-2].blocks).lower()


def test_the_cover_lesson_takes_as_long_says_the_answer_and_forbids_live_readings():
    page = PLANS[words.COVER_SLUG]
    minutes = [int(found) for found in re.findall(r"(\d+) minutes", said(page))]
    assert 60 == sum(minutes)
    assert words.NO_ELECTRICS in said(page)
    table = next(block for section in page.sections for block in section.blocks if hasattr(block, "rows"))
    assert "11.6\u00a0A" in [plain(row[1]).replace(" ", "\u00a0") for row in table.rows]


@pytest.mark.parametrize("plan", PLANNED, ids=lambda plan: plan.slug)
def test_every_topic_has_a_lesson_of_an_hour_with_its_own_numbers_mistakes_and_cautions(plan: words.LessonPlan):
    topic = CALCULATORS[plan.slug]
    lesson, cover = (PLANS[folder(slug, plan.slug)] for slug in (words.SLUG, words.COVER_SLUG))
    told = said(lesson)
    assert 60 == sum(part.minutes for part in plan.parts)
    assert 60 == sum(int(found) for found in re.findall(r"(\d+) minutes", said(cover)))
    assert "{" not in told + said(cover)
    form = default_form(topic.fields)
    keys = {mistake.key for mistake in topic.task(form).mistakes}
    assert set(plan.listen) <= keys and len(plan.listen) >= 4
    for caution in topic.cautions:
        assert caution in told or "examining body" in caution or caution == topic.warning
    if topic.warning:
        assert all(topic.warning in str(page.sections[0].blocks[0]) for page in (lesson, cover))
    assert words.NO_ELECTRICS in said(cover)
    answer = topic.answer(form, ("answer",))
    table = next(block for section in cover.sections for block in section.blocks if hasattr(block, "rows"))
    shown = " ".join(plain(row[1]) for row in table.rows)
    for output in answer.outputs:
        assert output.text in shown or output.name.endswith("angle") or output.name == "tolerance"


@pytest.mark.parametrize("plan", PLANNED, ids=lambda plan: plan.slug)
def test_the_exit_questions_answers_are_worked_out_by_the_page(plan: words.LessonPlan):
    """Only a lesson whose plan writes the answer out has none here."""
    wanted = claims_of(plan.slug).EXIT
    assert bool(wanted) == bool(plan.exit_values)
    told = said(PLANS[folder(words.SLUG, plan.slug)]).replace("\u00a0", " ")
    assert [] == [answer for answer in wanted if answer not in told]


def test_every_calculator_has_a_lesson_and_its_foot_leads_there():
    assert {plan.slug for plan in PLANNED} == set(CALCULATORS)
    for slug, page in CALCULATORS.items():
        foot = footer_html("../", (), lessons_of(slug, page.title))
        plan = next(plan for plan in PLANNED if plan.slug == slug)
        for kind in (words.SLUG, words.COVER_SLUG):
            assert f'href="../{folder(kind, plan.slug)}/"' in foot
    assert {page.slug for page in lesson_pages(CALCULATORS)} == set(PLANS) and len(PLANS) == 2 * len(CALCULATORS)


@pytest.mark.parametrize("page", [*READ.values(), *PLANS.values()], ids=lambda page: page.slug)
def test_a_page_is_written_with_its_words_and_drawings(page: ReadingPage):
    html = reading_page(page).regions["main"]
    assert html.count("<svg") == len(drawings(page))
    assert html.count("<h2") == len(page.sections)


RECORDS = [(readings, paper) for readings in ("3", "4", "5") for paper in ("A4", "A3", "letter")]


@pytest.mark.parametrize(("readings", "paper"), RECORDS)
def test_nothing_on_a_recording_sheet_touches_or_comes_near_an_edge(readings: str, paper: str):
    page = PAPER_PAGES["rig-record"].make({"readings": readings, "paper": paper}).page
    written = texts(page)
    assert [] == touching(written, strokes(page, written), page.box.grown(-16.0))
    rows = [text.words for text in written if text.words.startswith("reading ")]
    assert [f"reading {number}" for number in range(1, int(readings) + 1)] == rows
    heads = [text for text in written if text.words in ("L1", "L2", "L3", "N")]
    assert ["L1", "L2", "L3", "N"] == [text.words for text in sorted(heads, key=lambda text: text.box.left)]
    order = [text.words for text in written]
    assert order.index("Before you take readings") < order.index("Readings in amperes")
    boxes = [p.item for p in on_page(page, Shape) if p.item.points[1].x - p.item.points[0].x == pytest.approx(4.0)]
    assert 5 == len(boxes)


def test_every_calculator_has_a_recording_sheet_or_a_reason_why_not():
    assert {slug for slug in CALCULATORS if slug not in READINGS} == {
        slug for slug in CALCULATORS if claims_of(slug).WITHOUT_RIG
    }
    assert all(slug == readings.topic for slug, readings in READINGS.items())


@pytest.mark.parametrize("topic", READINGS.values(), ids=lambda topic: topic.topic)
def test_each_topic_with_a_rig_has_a_sheet_of_its_own_readings(topic: rig_words.RecordingSheet):
    """On the paper with the least room and the most readings; its lesson leads to it."""
    for paper in ("A4", "letter"):
        page = PAPER_PAGES["rig-record"].make({"topic": topic.topic, "readings": "5", "paper": paper}).page
        written = texts(page)
        assert [] == touching(written, strokes(page, written), page.box.grown(-16.0))
        said = [text.words for text in written]
        assert set(topic.columns) <= set(said)
        assert topic.heading in ("Readings in amperes", "Readings")
        assert f"Three answers for {topic.answers}" in said
        boxes = [p.item for p in on_page(page, Shape) if p.item.points[1].x - p.item.points[0].x == pytest.approx(4.0)]
        assert len(rig_words.CHECKS) + len(topic.checks) == len(boxes)
    leads = [plan.slug for plan in PLANNED for handout in plan.handouts if ("topic", topic.topic) in handout.values
             and handout.slug == "rig-record"]  # fmt: skip
    assert leads == [topic.topic] or topic.topic == "neutral-current"


def test_a_recording_sheet_names_every_column_in_its_order():
    """A column that the order leaves out would be filled in whenever, or not at all."""
    order = module_of("harmonics-in-the-neutral", "teaching").READINGS.order
    assert "L1, L2, L3, N, then order 3 of N." in order
