"""The construction drawn by a robot hand on the screen: by mouse, by fingers, by keys alone; kept, judged, marked."""

import json
import math
import re
from collections.abc import Callable

import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.drawn_by_hand import OPEN, PATIENCE, SHEET, Hand, Place, assert_own_letters, fingers, moved
from browser.test_page_access import violations
from playwright.sync_api import Page

WIDE = {"width": 1366, "height": 850}
PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5"
MM = 5.0
"""Millimetres for each ampere at 1 cm = 2 A."""
Opened = Callable[..., Hand]


@pytest.fixture
def drawing(open_page: Callable[..., Page], site: str) -> Opened:
    """`drawing(fragment, options)` opens a link straight into the view."""

    def open_view(fragment: str = PROBLEM, page: Page | None = None, slug: str = SLUG, **options: object) -> Hand:
        page = page or open_page(**{"viewport": WIDE, **options})
        page.goto(f"{site}{slug}/{fragment}&view=draw")
        return Hand(page).opened()

    return open_view


def arrow(hand: Hand, begun: Place, deg: float, length: float, name: str) -> Place:
    """One arrow along the ruler, named; returns its tip as it should be."""
    hand.place("ruler", begun)
    hand.turn("ruler", deg)
    hand.line("arrow", 0.0, length)
    hand.name(name)
    return moved(begun, length, deg)


def dashed(hand: Hand, begun: Place, deg: float, length: float) -> None:
    """A dashed line along the ruler."""
    hand.place("ruler", begun)
    hand.turn("ruler", deg)
    hand.line("dashed", 0.0, length)


def bands(hand: Hand) -> list[str]:
    """The verdicts in the list of judged lines."""
    return hand.page.eval_on_selector_all("[data-draw-line]", "rows => rows.map(row => row.dataset.band)")


def test_two_parallelograms_drawn_by_mouse_are_right_and_the_reading_is_marked(drawing: Opened) -> None:
    """The main problem from the first arrow to the mark, with the protractor for the second arrow."""
    hand = drawing()
    begun = hand.start()
    one = arrow(hand, begun, 90.0, 9.2 * MM, "i1")
    hand.place("protractor", begun)
    hand.turn("protractor", -90.0)
    hand.mark("protractor", 60.0)
    mark = hand.items()[-1]
    assert mark["do"] == "mark"
    wanted = moved(begun, 75.0, -30.0)
    assert math.hypot(mark["x1"] - wanted[0], mark["y1"] - wanted[1]) < 0.6
    two = arrow(hand, begun, -30.0, 14.7 * MM, "i2")
    dashed(hand, one, -30.0, 80.0)
    dashed(hand, two, 90.0, 60.0)
    assert "Every line drawn so far is correct" in hand.judge()
    corner = moved(one, 14.7 * MM, -30.0)
    far, deg = math.dist(begun, corner), math.degrees(math.atan2(begun[1] - corner[1], corner[0] - begun[0]))
    arrow(hand, begun, deg, far, "i12")
    three = arrow(hand, begun, 210.0, 6.5 * MM, "i3")
    dashed(hand, three, deg, 80.0)
    dashed(hand, corner, 210.0, 50.0)
    end = moved(corner, 6.5 * MM, 210.0)
    far, deg = math.dist(begun, end), math.degrees(math.atan2(begun[1] - end[1], end[0] - begun[0]))
    arrow(hand, begun, deg, far, "sum")
    said = hand.judge()
    assert "is wrong" not in said and "are wrong" not in said, said
    assert len(bands(hand)) == 9 and "wrong" not in bands(hand)
    assert hand.page.is_visible("[data-draw-read]"), "all is drawn, so the reading is asked for"
    hand.press("true")
    assert hand.page.locator(".draw-board > .draw-scene .draw-true line").count() == 9
    read(hand, f"{far:.1f}", f"{90.0 - deg:.0f}", "clockwise")
    assert hand.page.get_attribute("[data-draw-marked] .marked", "data-band") == "accept"
    read(hand, "a", "", "")
    assert hand.page.is_visible('[data-draw-message="answer"]'), "what cannot be read is said at its field"
    assert hand.page.get_attribute("[data-draw-marked] .marked", "data-band") == "accept", "the last mark stays"


def read(hand: Hand, length: str, angle: str, side: str) -> None:
    """Give the reading and wait for the mark."""
    page = hand.page
    page.fill("#draw-answer", length)
    page.fill("#draw-answer-angle", angle)
    page.select_option("#draw-answer-side", side)
    before = page.inner_text("[data-draw-live]")
    page.click("[data-draw-read] [type=submit]")
    wait_until(page, f"document.querySelector('[data-draw-live]').textContent !== {json.dumps(before)}", PATIENCE)


def test_the_sheet_on_the_screen_has_the_letters_of_the_printed_one(drawing: Opened) -> None:
    assert_own_letters(drawing().page, "dialog.draw")


def test_a_wrong_arrow_is_named_at_its_line_and_can_be_mended(drawing: Opened) -> None:
    """Turned the wrong way: the line is shown on the paper, the mistake and the move are said; undone, all is right."""
    hand = drawing()
    begun = hand.start()
    arrow(hand, begun, 90.0, 9.2 * MM, "i1")
    arrow(hand, begun, 210.0, 14.7 * MM, "i2")
    said = hand.judge()
    assert "turned the wrong way" in said and "Look at move 3." in said
    assert bands(hand) == ["accept", "wrong"]
    assert hand.page.locator(".draw-board > .draw-scene .draw-off").count() == 1
    hand.press("undo")
    hand.press("undo")
    assert hand.page.get_attribute("[data-draw-result]", "data-old") is not None, "it was judged of other lines"
    assert hand.page.locator(".draw-board > .draw-scene .draw-off").count() == 0
    assert "Every line drawn so far is correct" in hand.judge()
    hand.press("redo")
    assert len([op for op in hand.items() if op["do"] == "line"]) == 2


def test_an_arrow_that_nothing_tells_is_asked_for_and_named_by_a_press(drawing: Opened) -> None:
    """Without a name it might be two: the view asks, and goes on with the name."""
    hand = drawing()
    begun = hand.start()
    arrow(hand, begun, 90.0, 9.2 * MM, "i1")
    hand.place("ruler", begun)
    hand.turn("ruler", 170.0)
    hand.line("arrow", 0.0, 50.0)
    hand.press("verb", "place")
    assert "no name yet" in hand.judge()
    assert "Which arrow is this?" in hand.page.inner_text("[data-draw-names]")
    hand.name("i2")
    assert bands(hand) and "wrong" in (hand.judge() and bands(hand))


def test_a_drawing_is_there_again_after_a_reload_and_goes_with_its_problem(drawing: Opened) -> None:
    """Kept at every stroke, with where the instruments lie; another problem has a paper of its own."""
    hand = drawing()
    begun = hand.start()
    arrow(hand, begun, 90.0, 9.2 * MM, "i1")
    pose, items = hand.pose("ruler"), hand.items()
    hand.page.reload()
    hand.opened()
    assert hand.pose("ruler") == pose and hand.items() == items
    assert hand.page.locator('.draw-board > .draw-scene [data-kind="arrow"]').count() == 1
    assert "is here again" in hand.page.inner_text("[data-draw-prompt]")
    other = drawing("#v=3&i1=9.2&i2=14.7&i3=7.5", hand.page)
    wait_until(other.page, "document.querySelectorAll('.draw-board > .draw-scene [data-kind]').length === 0", PATIENCE)


def test_a_drawing_is_saved_and_opened_as_a_file(drawing: Opened, tmp_path) -> None:
    """Our JSON with its version; a file of something else changes nothing; the picture is in mm."""
    hand = drawing()
    page = hand.page
    arrow(hand, hand.start(), 90.0, 9.2 * MM, "i1")
    page.click('[data-draw-fold="more"] > summary')
    with page.expect_download() as taken:
        hand.press("save")
    file = tmp_path / "drawing.json"
    taken.value.save_as(file)
    saved = json.loads(file.read_text("utf-8"))
    assert saved["format"] == "phasor-folio drawing" and saved["version"] == 2 and saved["page"] == SLUG
    with page.expect_download() as picture:
        hand.press("save-svg")
    picture.value.save_as(tmp_path / "drawing.svg")
    svg = (tmp_path / "drawing.svg").read_text("utf-8")
    assert 'width="297mm"' in svg and 'height="210mm"' in svg and "draw-tool" not in svg
    assert 3 == svg.count("@font-face") and 'font-family="Phasor Sans' in svg, "its lettering goes with it"
    hand.press("afresh")
    assert page.locator(".draw-board > .draw-scene [data-kind]").count() == 0
    page.set_input_files("[data-draw-open]", {"name": "a.json", "mimeType": "application/json", "buffer": b"{}"})
    wait_until(page, "document.querySelector('[data-draw-prompt]').textContent.includes('no drawing of this site')")
    page.set_input_files("[data-draw-open]", str(file))
    wait_until(page, "document.querySelectorAll('.draw-board > .draw-scene [data-kind]').length === 1")


def test_a_key_on_the_paper_ends_a_replay_and_nothing_is_lost(drawing: Opened) -> None:
    """A mark made while the drawing was played again took away all that had not been played yet."""
    hand = drawing()
    arrow(hand, hand.start(), 90.0, 9.2 * MM, "i1")
    hand.choose("verb", "mark")
    before = hand.items()
    hand.page.click('[data-draw-fold="more"] > summary')
    hand.press("replay")
    hand.page.focus(".draw-board")
    keys(hand.page, "Enter")
    assert before == hand.items()[:-1] and hand.items()[-1]["do"] == "mark"


def test_two_fingers_turn_and_move_the_instrument_and_beside_it_the_paper(drawing: Opened) -> None:
    """Fingers on the ruler: it turns by as much as they do. On the paper: it grows under them."""
    hand = drawing(viewport=PHONE, has_touch=True, is_mobile=True)
    page = hand.page
    hand.press("verb", "place")
    x, y, deg = hand.pose("ruler")
    on = [hand.pixel(hand.on_tool("ruler", along, -8.0)) for along in (15.0, 55.0)]
    middle = ((on[0][0] + on[1][0]) / 2, (on[0][1] + on[1][1]) / 2)
    swung = [(middle[0] + far * math.cos(math.radians(40)), middle[1] - far * math.sin(math.radians(40)) - 30)
             for far in (-math.dist(*on) / 2, math.dist(*on) / 2)]  # fmt: skip
    fingers(page, on, swung)
    now = hand.pose("ruler")
    assert now[2] - deg == pytest.approx(40.0, abs=1.0) and math.dist(now[:2], (x, y)) > 5.0
    hand.press("whole")
    width = view_width(page)
    board = page.locator(".draw-board").bounding_box()
    assert board is not None
    hand.press("verb", "mark")
    centre = (board["x"] + board["width"] / 2, board["y"] + 60)
    fingers(page, [(centre[0] - 30, centre[1]), (centre[0] + 30, centre[1])],
            [(centre[0] - 90, centre[1]), (centre[0] + 90, centre[1])])  # fmt: skip
    assert view_width(page) == pytest.approx(width / 3, rel=0.05)
    assert hand.items() == [], "two fingers draw nothing"


def view_width(page: Page) -> float:
    """How many mm of the sheet are in view."""
    return page.evaluate(
        f"""() => {{ const sheet = document.querySelector('{SHEET}');
                    const [,, width] = sheet.getAttribute('viewBox').split(' ').map(Number);
                    const board = document.querySelector('.draw-board');
                    return board.clientWidth / sheet.getBoundingClientRect().width * width; }}"""
    )


def keys(page: Page, text: str, times: int = 1) -> None:
    """Press one key so often."""
    for _ in range(times):
        page.keyboard.press(text)


def live(page: Page) -> str:
    """What a screen reader hears."""
    return page.evaluate("document.querySelector('[data-draw-live]').textContent")


def test_a_problem_is_drawn_from_its_start_to_its_mark_by_keys_alone(drawing: Opened) -> None:
    """Two currents tip to tail, their sum, the judgement and the reading: no pointer anywhere."""
    hand = drawing("#v=3&p1=20%20at%200&p2=30%20at%2090&method=tip-to-tail&first=right", slug="add-phasors")
    page = hand.page
    names = page.eval_on_selector_all('[data-draw-do="name"]', "all => all.map(one => one.dataset.value)")
    assert {"i1", "i2", "sum"} <= set(names)
    scale = re.search(r"1\scm\s=\s([\d.]+)", page.inner_text(".draw-values"))
    assert scale is not None
    first, second = (10.0 * value / float(scale[1]) for value in (20.0, 30.0))
    page.evaluate("document.querySelector('.draw-board').focus()")
    draw_by_keys(page, 0, first)
    assert "zero on the start" in said_before(page)
    name_by_keys(page, "i1")
    draw_by_keys(page, 90, second, onto=1)
    name_by_keys(page, "i2")
    draw_by_keys(page, None, math.hypot(first, second), onto=None)
    name_by_keys(page, "sum")
    keys(page, "j")
    wait_until(page, "document.querySelector('[data-draw-result]').childElementCount > 0", PATIENCE)
    assert "Every line is correct" in page.inner_text("[data-draw-result]"), page.inner_text("[data-draw-result]")
    assert "Every line is correct" in live(page)
    while page.evaluate("document.activeElement.id") != "draw-answer":
        keys(page, "Shift+Tab")
    page.keyboard.type(f"{math.hypot(first, second):.1f}")
    if page.locator("#draw-answer-angle").count():
        keys(page, "Tab")
        page.keyboard.type(f"{math.degrees(math.atan2(second, first)):.0f}")
    keys(page, "Enter")
    wait_until(page, "document.querySelector('[data-draw-marked] .marked') !== null", PATIENCE)
    assert page.get_attribute("[data-draw-marked] .marked", "data-band") in ("accept", "look")


def said_before(page: Page) -> str:
    """All that was said so far, from the list that the page's observer keeps."""
    return page.evaluate("(window.heard ?? []).join(' | ')")


def draw_by_keys(page: Page, deg: float | None, length: float, onto: int | None = 0) -> None:
    """The ruler laid on a point (so many presses further), turned, and an arrow of a length drawn along it."""
    page.evaluate(
        """() => { window.heard ??= []; const live = document.querySelector('[data-draw-live]');
                   if (!window.hears) window.hears = new MutationObserver(() => window.heard.push(live.textContent));
                   window.hears.observe(live, { childList: true, characterData: true, subtree: true }); }"""
    )
    keys(page, "r")
    keys(page, "1")
    wanted = "the start" if not onto else "the tip of"
    for _ in range(12):
        keys(page, "o")
        if wanted in live(page):
            break
    if deg is None:
        for _ in range(12):
            keys(page, "l")
            if abs(angle_now(page) - 56.31) < 0.2:
                break
    else:
        off = round(deg - angle_now(page))
        keys(page, "[" if off > 0 else "]", abs(off))
    keys(page, "4")
    keys(page, "a")
    # The pencil begins at the zero and goes along the edge.
    back = round(reading(page))
    keys(page, "ArrowLeft" if back > 0 else "ArrowRight", abs(back))
    keys(page, "Enter")
    whole, tenths = divmod(round(10 * length), 10)
    keys(page, "ArrowRight", whole)
    keys(page, "Shift+ArrowRight", tenths)
    keys(page, "Enter")


def angle_now(page: Page) -> float:
    """The ruler's direction."""
    return Hand(page).pose("ruler")[2]


def reading(page: Page) -> float:
    """Where the pencil is at the ruler, as it is read out."""
    keys(page, "ArrowRight")
    found = re.search(r"Pencil at (-?[\d.]+) mm", live(page))
    assert found is not None
    return float(found[1])


def name_by_keys(page: Page, key: str) -> None:
    """Go to the names by Tab, and press one; the focus returns to the paper."""
    for _ in range(40):
        keys(page, "Shift+Tab")
        if page.evaluate("document.activeElement.dataset.value") == key:
            break
    keys(page, "Enter")
    assert page.evaluate("document.activeElement.matches('.draw-board')")


@pytest.mark.parametrize("screen", [WIDE, PHONE, {"width": 1920, "height": 1080}], ids=["desk", "phone", "class"])
def test_the_view_has_no_fault_of_access_and_targets_of_44_pixels(drawing: Opened, screen: dict[str, int]) -> None:
    """axe finds nothing, with a name asked for and something judged; no button of the bar is under 44 px."""
    hand = drawing(viewport=screen)
    page = hand.page
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert violations(page) == []
    small = page.eval_on_selector_all(
        "dialog.draw button", "all => all.filter(one => one.checkVisibility()).map(one => one.getBoundingClientRect())"
        ".filter(box => box.width < 44 || box.height < 43).length",
    )
    assert small == 0


def test_nothing_of_it_comes_before_it_is_asked_for(open_page: Callable[..., Page], site: str, ready, answered) -> None:
    """No script, style or archive of the view before its button is pressed; the address says that it is open."""
    page = open_page(fresh=True, viewport=WIDE)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{site}{SLUG}/{PROBLEM}")
    ready(page)
    answered(page)
    assert not [url for url in asked if re.search(r"/(?:draw|photo)[^/]*\.(?:js|css|zip)", url)]
    page.click('.method [data-action="draw"]')
    wait_until(page, OPEN, PATIENCE)
    wait_until(page, "location.hash.includes('view=draw')")
    assert [url for url in asked if "draw.css" in url] and [url for url in asked if "draw.zip" in url]
    page.click('[data-draw-do="close"]')
    wait_until(page, "document.querySelector('dialog.draw[open]') === null && !location.hash.includes('view=draw')")


@pytest.mark.parametrize(
    ("size", "slug", "moves", "sheet"),
    [
        (PHONE, SLUG, True, False), (PHONE, "series-circuit", True, False), (WIDE, "series-circuit", False, True),
        ({"width": 1280, "height": 800}, SLUG, True, False), ({"width": 1920, "height": 1080}, SLUG, True, False),
    ],
)  # fmt: skip
def test_the_way_to_it_is_where_a_learner_looks(
    open_page, site: str, ready, answered, size: dict[str, int], slug: str, moves: bool, sheet: bool
) -> None:
    """With the moves, else beside the sheet where there is room; on a phone beside the whole sheet always. All of it is
    whole, over nothing else."""
    page = open_page(viewport=size)
    page.goto(f"{site}{slug}/")
    ready(page)
    answered(page)
    assert page.is_visible('.method [data-action="draw"]') == moves
    assert page.is_visible('.kinds-place [data-action="draw"]') == sheet
    if size == PHONE:
        page.click(".request > summary")
        assert page.is_visible('.kinds-place [data-action="draw"]')
    if size["width"] > 1900:
        page.click("[data-tab=results]")
        assert page.is_visible('.kinds-place [data-action="draw"]')
    hidden = """() => [...document.querySelectorAll('[data-action="draw"], .kinds-place .caption, .scale-row .echo')]
      .filter((one) => one.checkVisibility() && one.textContent).filter((one) => {
        one.scrollIntoView({ block: "center", behavior: "instant" });
        const { left, top, width, height } = one.getBoundingClientRect();
        const corners = [[left + 2, top + 2], [left + width - 2, top + height - 2]];
        return !corners.every(([x, y]) => one.contains(document.elementFromPoint(x, y)));
      }).map((one) => one.className)"""
    assert page.evaluate(hidden) == []


@pytest.mark.parametrize("how", ["press", "key"])
def test_the_lesson_leads_to_it_and_is_there_again(lesson: Callable[..., Page], how: str) -> None:
    page = lesson("&view=lesson&step=3")
    if how == "key":
        page.keyboard.press("e")
    else:
        page.click('[data-lesson-do="draw"]')
    wait_until(page, OPEN, PATIENCE)
    wait_until(page, "location.hash.includes('view=draw')")
    page.click('[data-draw-do="close"]')
    wait_until(page, "document.querySelector('dialog.draw[open]') === null")
    wait_until(page, "location.hash.includes('view=lesson&step=3')")
    assert page.is_visible('[data-lesson-do="next"]')
    page.keyboard.press("ArrowRight")
    wait_until(page, "location.hash.includes('step=4')")
