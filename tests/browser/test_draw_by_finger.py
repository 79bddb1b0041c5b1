"""Drawing on a phone's screen by one finger: what a new learner tripped over, and what a moving finger may not cost."""

import math
from collections.abc import Callable
from pathlib import Path

import pymupdf
import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.drawn_by_hand import PATIENCE, SHEET, Hand, assert_own_letters, fingers, moved
from playwright.sync_api import Page, expect

PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5"
LIVE = "document.querySelector('[data-draw-live]').textContent"


@pytest.fixture
def hand(open_page: Callable[..., Page], site: str) -> Hand:
    """An open view on a phone."""
    page = open_page(viewport=PHONE, has_touch=True, is_mobile=True)
    page.goto(f"{site}{SLUG}/{PROBLEM}&view=draw")
    return Hand(page).opened()


def tap(hand: Hand, place: tuple[float, float]) -> None:
    """A press of a finger at a place of the sheet."""
    hand.page.touchscreen.tap(*hand.pixel(place))


def test_a_press_lays_the_instrument_in_hand_even_where_another_lies(hand: Hand) -> None:
    """The ruler lies on the start: a press there lays the protractor, which was chosen. A press on the protractor
    itself moves nothing; a drag takes the ruler."""
    begun = hand.start()
    tap(hand, begun)
    assert math.dist(hand.pose("ruler")[:2], begun) < 0.05
    hand.press("tool", "protractor")
    tap(hand, (begun[0] + 1.0, begun[1] + 1.0))
    assert math.dist(hand.pose("protractor")[:2], begun) < 0.05
    assert math.dist(hand.pose("ruler")[:2], begun) < 0.05
    laid = hand.pose("protractor")
    tap(hand, moved(begun, 60.0, 60.0))
    assert hand.pose("protractor") == laid
    on = hand.on_tool("ruler", 20.0, -15.0)
    fingers(hand.page, [hand.pixel(on)], [hand.pixel((on[0] - 30.0, on[1] + 20.0))])
    assert hand.pose("protractor") == laid and math.dist(hand.pose("ruler")[:2], begun) > 10.0


def test_values_and_scale_stand_whole_above_the_paper(hand: Hand) -> None:
    """Nothing is cut off beside the buttons: "1 cm =" without its amperes had a learner draw at another scale."""
    assert "1 cm = 2 A" in hand.page.inner_text(".draw-values").replace("\N{NO-BREAK SPACE}", " ")
    cut = hand.page.evaluate("""() => {
      const head = document.querySelector(".draw-head").getBoundingClientRect();
      const isIn = ({ left, top, right, bottom }) =>
        left >= head.left && top >= head.top && right <= head.right && bottom <= head.bottom;
      return [...document.querySelectorAll(".draw-values span")].filter((one) => !isIn(one.getBoundingClientRect()))
        .map((one) => one.textContent);
    }""")
    assert cut == []


def test_two_presses_draw_a_line(hand: Hand) -> None:
    """Nobody has to drag: one press begins the line at the ruler's edge, the next ends it. What it became is heard, and
    its end is not said to be on itself."""
    begun = hand.start()
    tap(hand, begun)
    hand.press("verb", "draw")
    tap(hand, begun)
    assert hand.items() == [] and "The line begins here" in hand.page.inner_text("[data-draw-prompt]")
    tap(hand, (begun[0] + 50.0, begun[1]))
    (line,) = hand.items()
    assert math.hypot(line["x1"] - begun[0], line["y1"] - begun[1]) < 0.05
    assert line["x2"] - begun[0] == pytest.approx(50.0, abs=0.6) and line["y2"] == pytest.approx(begun[1], abs=0.05)
    said = hand.page.evaluate(LIVE)
    assert said.startswith("Arrow from the start to") and "line 1" not in said, said


def test_the_names_take_nothing_from_the_paper_and_going_on_ends_the_question(hand: Hand) -> None:
    """The names stand in the place of the words: the arrow just drawn stays in view."""
    tap(hand, hand.start())
    hand.line("arrow", 0.0, 40.0)
    # From now on the question above the words is gone.
    hand.name("i1")
    before = board_height(hand)
    hand.line("arrow", 0.0, 60.0)
    assert hand.page.is_visible("[data-draw-names]")
    assert board_height(hand) >= before
    hand.press("verb", "place")
    assert not hand.page.is_visible("[data-draw-names]")


def board_height(hand: Hand) -> float:
    """Pixels of paper."""
    return hand.page.evaluate("document.querySelector('.draw-board').clientHeight")


def test_what_was_judged_of_other_lines_gives_the_paper_its_room_back(hand: Hand) -> None:
    """Once something is drawn again, an earlier verdict covers nothing."""
    tap(hand, hand.start())
    hand.press("along")
    hand.line("arrow", 0.0, 46.0)
    hand.name("i1")
    before, result = board_height(hand), hand.page.locator(".draw-result")
    assert "correct" in hand.judge()
    assert board_height(hand) == before, "it lies over the paper, which keeps its size"
    expect(result).to_be_visible()
    hand.press("undo")
    expect(result).to_be_hidden()


def test_the_first_direction_and_both_sides_of_the_protractor_by_presses(hand: Hand) -> None:
    """The ruler turns along the sheet's mark of its first direction; the protractor's zero line along an arrow, then
    the other way round, which puts its scale on the other side."""
    tap(hand, hand.start())
    hand.press("along")
    assert hand.pose("ruler")[2] == pytest.approx(90.0, abs=0.01)
    hand.line("arrow", 0.0, 46.0)
    hand.press("tool", "protractor")
    hand.press("onto")
    ways = []
    for _ in range(2):
        hand.press("along")
        ways.append(hand.pose("protractor")[2] % 360)
    assert sorted(ways) == pytest.approx([90.0, 270.0], abs=0.01)


def test_the_first_press_turns_the_ruler_to_the_mark_just_made(hand: Hand) -> None:
    """Six presses led through older lines before. A second press goes on to them."""
    begun = hand.start()
    tap(hand, begun)
    hand.press("along")
    hand.line("arrow", 0.0, 46.0)
    hand.name("i1")
    tip = moved(begun, 46.0, 90.0)
    hand.press("tool", "protractor")
    hand.press("verb", "place")
    tap(hand, tip)
    hand.mark("protractor", 40.0)
    mark = hand.items()[-1]
    hand.press("tool", "ruler")
    hand.press("verb", "place")
    tap(hand, tip)
    hand.press("along")
    to_mark = math.degrees(math.atan2(tip[1] - mark["y1"], mark["x1"] - tip[0]))
    assert hand.pose("ruler")[2] == pytest.approx(to_mark, abs=0.1)
    hand.press("along")
    assert abs(hand.pose("ruler")[2] - to_mark) > 10.0


WATCH = """() => {
  window.written = [];
  window.watcher = new MutationObserver((all) => window.written.push(...all.map((one) =>
    `${one.target.nodeName} ${one.target.getAttribute("class")} ${one.attributeName ?? one.type}`)));
  const board = document.querySelector(".draw-board");
  window.watcher.observe(board, { subtree: true, childList: true, attributes: true });
}"""


@pytest.mark.parametrize(("verb", "tool"), [("place", "ruler"), ("turn", "protractor"), ("mark", "protractor"),
                                            ("draw", "ruler")])  # fmt: skip
def test_nothing_is_painted_anew_while_a_finger_moves(hand: Hand, verb: str, tool: str) -> None:
    """Only the place of layers changes, and the few shapes of the pencil: nothing of paper, lines and instruments."""
    hand.press("tool", tool)
    hand.press("verb", verb)
    on = hand.on_tool(tool, 15.0, -6.0) if tool == "ruler" else hand.on_tool(tool, -40.0, 30.0)
    first = hand.pixel(on)
    hand.page.evaluate(WATCH)
    fingers(hand.page, [first], [(first[0] + 30.0, first[1] - 60.0)])
    hand.page.evaluate("window.watcher.disconnect()")
    written = set(hand.page.evaluate("window.written"))
    assert any(one.startswith("DIV draw-scene") for one in written), "the close-up followed"
    painted = [one for one in written if not one.endswith((" style", " data-moves", " data-on"))]
    hands = [one for one in painted if one.startswith(("line ", "polygon ", "circle "))]
    if verb in ("place", "turn"):
        assert painted == []
    else:
        after = [one for one in painted if one not in hands]
        # What was drawn is added when the finger is lifted.
        assert {one.split()[0] for one in after} <= {"svg"} and hands


def test_two_fingers_on_the_paper_paint_it_once_they_rest(hand: Hand) -> None:
    """While they move, the paper's picture is stretched; then it is painted at its new size."""
    hand.press("verb", "mark")
    size = f"document.querySelector('{SHEET}').style.width"
    before = hand.page.evaluate(size)
    middle = hand.pixel(hand.start())
    apart = [(middle[0] - 30, middle[1]), (middle[0] + 30, middle[1])]
    fingers(hand.page, apart, [(middle[0] - 60, middle[1]), (middle[0] + 60, middle[1])])
    wait_until(hand.page, f"parseFloat({size}) > 1.8 * {float(before.removesuffix('px'))}", PATIENCE)
    assert "scale" not in hand.page.evaluate("document.querySelector('.draw-board > .draw-scene').style.transform")


def test_each_line_is_judged_where_that_is_chosen(hand: Hand) -> None:
    """Nothing is said after a line at first; with the choice, after the name of an arrow and after a dashed line. Only
    what was asked for lies over the paper, until one goes on by finger or key: after every line it hid the drawing."""
    said = "document.querySelector('[data-draw-result]').childElementCount"
    tap(hand, hand.start())
    hand.press("along")
    hand.line("arrow", 0.0, 46.0)
    hand.name("i1")
    assert hand.page.evaluate(said) == 0
    hand.page.evaluate("document.querySelector('[data-draw-fold=all]').open = true")
    hand.page.evaluate("document.querySelector('[data-draw-fold=more]').open = true")
    hand.page.check("[data-draw-each]")
    hand.line("arrow", 0.0, 20.0)
    hand.name("i2")
    wait_until(hand.page, f"{said} > 0", PATIENCE)
    hand.line("dashed", 5.0, 40.0)
    wait_until(hand.page, "document.querySelector('[data-draw-result]:not([data-old])') !== null", PATIENCE)
    result = hand.page.locator("[data-draw-result]")
    expect(result).to_be_hidden()
    assert hand.page.inner_text("[data-draw-prompt]") == hand.page.text_content("[data-draw-band] strong")
    hand.press("judge")
    expect(result).to_be_visible()
    hand.page.evaluate("document.querySelector('.draw-board').focus()")
    hand.page.keyboard.press("1")
    expect(result).to_be_hidden()
    hand.page.keyboard.press("j")
    expect(result).to_be_visible()


def test_the_view_fills_the_screen_and_gives_it_back(hand: Hand) -> None:
    """For a class: the button says whether it does, and drawing goes on."""
    hand.press("full")
    wait_until(hand.page, "document.fullscreenElement !== null", PATIENCE)
    wait_until(hand.page, "document.querySelector('[data-draw-do=full]').ariaPressed === 'true'", PATIENCE)
    tap(hand, hand.start())
    assert math.dist(hand.pose("ruler")[:2], hand.start()) < 0.05
    hand.press("full")
    wait_until(hand.page, "document.fullscreenElement === null", PATIENCE)


def test_the_drawing_is_printed_true_to_scale(hand: Hand, tmp_path: Path) -> None:
    """One page of the sheet's size with its letters and the lines in it; once printed, the page's own sheet again."""
    tap(hand, hand.start())
    hand.press("along")
    hand.line("arrow", 0.0, 46.0)
    hand.name("i1")
    (line,) = [op for op in hand.items() if op["do"] == "line"]
    page = hand.page
    page.evaluate("document.querySelector('[data-draw-fold=all]').open = true")
    page.evaluate("document.querySelector('[data-draw-fold=more]').open = true")
    page.evaluate("window.print = () => {}")
    hand.press("print")
    assert_own_letters(page, ".draw-print")
    page.pdf(prefer_css_page_size=True, path=tmp_path / "printed.pdf")
    with pymupdf.open(tmp_path / "printed.pdf") as document:
        assert len(document) == 1
        sheet = document[0]
        mm = 72.0 / 25.4
        assert (sheet.rect.width / mm, sheet.rect.height / mm) == pytest.approx((297.0, 210.0), abs=0.2)
        heads = [point for drawn in sheet.get_drawings() for item in drawn["items"] for point in item[1:]
                 if isinstance(point, pymupdf.Point)]  # fmt: skip
        tip = pymupdf.Point(line["x2"] * mm, line["y2"] * mm)
        assert min(point.distance_to(tip) for point in heads) < 0.05 * mm
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert page.locator(".draw-print").count() == 0
