"""Set squares and compasses on the screen: a parallel carried by sliding, arcs that give a corner."""

import json
import math
import re
from collections.abc import Callable

import pytest
from browser.asking import PHONE, SLUG, wait_until
from browser.drawn_by_hand import PATIENCE, Hand, Place, fingers, moved
from browser.test_draw_here import WIDE, arrow, bands, keys, live
from browser.test_page_access import violations
from playwright.sync_api import Page

MM = 5.0
"""Millimetres for each ampere at 1 cm = 2 A."""
PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5&order=12"
ONE, TWO = (9.2 * MM, 90.0), (14.7 * MM, -30.0)
Opened = Callable[..., Hand]


@pytest.fixture
def drawing(open_page: Callable[..., Page], site: str) -> Opened:
    """`drawing(more)` opens the problem in the view, with more of a link."""

    def open_view(more: str, **options: object) -> Hand:
        page = open_page(**{"viewport": WIDE, **options})
        page.goto(f"{site}{SLUG}/{PROBLEM}{more}&view=draw")
        return Hand(page).opened()

    return open_view


def arrows(hand: Hand) -> tuple[Place, Place]:
    """The first two currents; their tips."""
    begun = hand.start()
    return arrow(hand, begun, ONE[1], ONE[0], "i1"), arrow(hand, begun, TWO[1], TWO[0], "i2")


def along(hand: Hand, tool: str, deg: float) -> None:
    """Turn the instrument in hand along the next line until it lies so."""
    for _ in range(12):
        hand.press("along")
        if abs((hand.pose(tool)[2] - deg + 180.0) % 360.0 - 180.0) < 1.0:
            return
    raise AssertionError(f"no line at {deg}")


def grip(hand: Hand, square: str) -> Place:
    """A place on a set square where a hand can press."""
    places = [hand.on_tool(square, share, -6.0) for share in (12.0, 40.0, 70.0)]
    return next(place for place in places if hand.is_seen(place))


def parallel(hand: Hand, tip: Place, back: float, through: Place, far: float) -> None:
    """A dashed line with set square and ruler: parallel to the arrow that ends in ``tip``, from another place on."""
    square = "square-60"
    hand.place(square, tip)
    along(hand, square, back)
    before = hand.pose(square)
    hand.press("tool", "ruler")
    hand.press("against")
    assert "lies against the set square" in live(hand.page)
    ruler = hand.pose("ruler")
    hand.press("tool", square)
    assert "slides along it" in live(hand.page)
    hand.press("verb", "place")
    held = grip(hand, square)
    step = through[0] - tip[0], through[1] - tip[1]
    across = moved((0.0, 0.0), 1.0, before[2] + 90.0)
    far_off = step[0] * across[0] + step[1] * across[1]
    hand.drag(held, (held[0] + far_off * across[0] + 0.4, held[1] + far_off * across[1] + 0.3))
    after = hand.pose(square)
    assert after[2] == pytest.approx(before[2], abs=1e-6), "it keeps its direction"
    assert hand.pose("ruler") == ruler, "the ruler lies still"
    slid = after[0] - before[0], after[1] - before[1]
    assert abs(slid[0] * across[1] - slid[1] * across[0]) < 0.02, "it slides along the ruler and nowhere else"
    off = (through[0] - after[0]) * across[0] + (through[1] - after[1]) * across[1]
    assert abs(off) < 0.6, "its base leads through the tip"
    hand.press("verb", "draw")
    hand.press("kind", "dashed")
    hand.drag(through, moved(through, far, back + 180.0))


def test_a_parallelogram_with_set_square_and_ruler_by_mouse(drawing: Opened) -> None:
    """The square is laid along one arrow, the ruler against it, and the direction is carried to the other tip."""
    hand = drawing("&parallels=set-squares")
    page = hand.page
    shown = page.eval_on_selector_all(
        '[data-draw-do="tool"]', "all => all.filter(one => one.checkVisibility()).map(one => one.dataset.value)",
    )
    assert shown == ["ruler", "protractor", "square-60"], "the others are one press away"
    one, two = arrows(hand)
    parallel(hand, two, TWO[1] + 180.0, one, 80.0)
    parallel(hand, one, ONE[1] + 180.0, two, 55.0)
    assert "Every line drawn so far is correct" in hand.judge()
    assert bands(hand) == ["accept"] * 4
    # Drawn away from the ruler it comes off.
    hand.press("tool", "square-60")
    hand.press("verb", "place")
    x, y, deg = hand.pose("square-60")
    held = grip(hand, "square-60")
    hand.drag(held, moved(held, 20.0, deg))
    assert math.dist(hand.pose("square-60")[:2], (x, y)) == pytest.approx(20.0, abs=1.5)
    assert "slides along it" not in live(page)


def arc(hand: Hand, first: Place, last: Place, centre: Place, towards: float) -> float:
    """Compasses opened on two places and put on another; an arc about a direction. Returns its radius."""
    hand.press("tool", "compasses")
    hand.press("verb", "place")
    click(hand, first)
    hand.press("verb", "turn")
    click(hand, last)
    hand.press("verb", "place")
    click(hand, centre)
    hand.press("verb", "draw")
    radius = math.dist(first, last)
    hand.drag(moved(centre, radius, towards - 14.0), moved(centre, radius, towards + 14.0))
    return radius


def click(hand: Hand, place: Place) -> None:
    """Press at a place of the sheet."""
    hand.page.mouse.click(*hand.pixel(place))


def test_a_parallelogram_with_compasses_by_mouse(drawing: Opened, tmp_path) -> None:
    """Two dashed arcs, the corner where they cross, the sides to it; kept, saved, opened, printed, laid over."""
    hand = drawing("&parallels=compasses")
    page = hand.page
    begun = hand.start()
    one, two = arrows(hand)
    arc(hand, begun, two, one, TWO[1])
    arc(hand, begun, one, two, ONE[1])
    kept = [op for op in hand.items() if op["do"] == "arc"]
    assert [round(op["r"], 1) for op in kept] == [73.5, 46.0], "the compasses catch on the ends of the arrows"
    assert all(op["sweep"] == pytest.approx(28.0, abs=2.5) for op in kept)
    assert page.locator('.draw-board > .draw-scene [data-kind="arc"] path[stroke-dasharray]').count() == 2
    corner = moved(one, *TWO)
    for tip in (one, two):
        hand.place("ruler", tip)
        hand.turn("ruler", math.degrees(math.atan2(tip[1] - corner[1], corner[0] - tip[0])))
        hand.line("dashed", 0.0, math.dist(tip, corner))
    assert "Every line drawn so far is correct" in hand.judge()
    assert bands(hand) == ["accept"] * 6
    page.click('[data-draw-fold="more"] > summary')
    with page.expect_download() as taken:
        hand.press("save")
    file = tmp_path / "drawing.json"
    taken.value.save_as(file)
    saved = json.loads(file.read_text("utf-8"))
    assert saved["version"] == 2 and saved["tools"]["compasses"]["open"] == pytest.approx(46.0, abs=0.1)
    with page.expect_download() as picture:
        hand.press("save-svg")
    picture.value.save_as(tmp_path / "drawing.svg")
    assert (tmp_path / "drawing.svg").read_text("utf-8").count('data-kind="arc"') == 2
    items = hand.items()
    hand.press("afresh")
    page.set_input_files("[data-draw-open]", str(file))
    wait_until(page, "document.querySelectorAll('.draw-board > .draw-scene [data-kind=\"arc\"]').length === 2")
    assert hand.items() == items
    page.evaluate("window.print = () => undefined")
    hand.press("print")
    assert page.locator('.draw-print [data-kind="arc"] path').count() == 2
    hand.press("replay")
    arcs = "document.querySelectorAll('.draw-board > .draw-scene [data-kind=\"arc\"]').length"
    wait_until(page, f"{arcs} === 0", PATIENCE)
    wait_until(page, f"{arcs} === 1", PATIENCE)
    wait_until(page, f"{arcs} === 2", PATIENCE)
    page.reload()
    hand.opened()
    assert page.locator('.draw-board > .draw-scene [data-kind="arc"]').count() == 2


def test_two_presses_draw_an_arc_and_any_edge_of_a_set_square_is_drawn_along(drawing: Opened) -> None:
    """The second press ends the arc, either way round; a set square that the method does not need is one press away."""
    hand = drawing("&parallels=compasses")
    page = hand.page
    middle = moved(hand.start(), 30.0, 90.0)
    hand.press("tool", "compasses")
    hand.press("verb", "place")
    click(hand, middle)
    hand.press("verb", "turn")
    click(hand, moved(middle, 50.0, 0.0))
    hand.press("verb", "draw")
    click(hand, moved(middle, 50.0, 10.0))
    assert "The arc begins here" in page.inner_text("[data-draw-prompt]")
    click(hand, moved(middle, 50.0, -30.0))
    drawn = hand.items()[-1]
    assert drawn["do"] == "arc" and drawn["r"] == pytest.approx(50.0, abs=0.3)
    assert (drawn["deg"], drawn["sweep"]) == pytest.approx((10.0, -40.0), abs=0.5)
    click(hand, moved(middle, 50.0, 90.0))
    click(hand, moved(middle, 50.0, 90.0))
    assert "too short" in page.inner_text("[data-draw-prompt]") and len(hand.items()) == 1
    assert not page.is_visible('[data-value="mark"]'), "compasses make no marks"
    assert not page.is_visible('[data-value="square-45"]')
    hand.press("others")
    assert page.is_visible('[data-value="square-60"]')
    hand.press("tool", "square-45")
    assert page.is_visible('[data-value="square-45"]') and not page.is_visible('[data-value="square-60"]')
    hand.press("verb", "draw")
    hand.press("kind", "full")
    x, y, deg = hand.pose("square-45")
    for edge, begun in ((deg, (x, y)), (deg - 90.0, (x, y)), (deg + 225.0, moved((x, y), 120.0, deg))):
        first, last = moved(begun, 15.0, edge), moved(begun, 45.0, edge)
        hand.drag(first, last)
        line = hand.items()[-1]
        assert math.dist((line["x1"], line["y1"]), first) < 1.0 and math.dist((line["x2"], line["y2"]), last) < 1.0
    page.reload()
    hand.opened()
    assert page.is_visible('[data-value="square-45"]'), "what lies on the paper has its button"
    assert hand.pose("square-45") == pytest.approx((x, y, deg), abs=0.01)


def test_an_arc_is_drawn_by_a_finger(drawing: Opened) -> None:
    """On a phone: pressed, opened, led round; the fingers need not keep to the circle."""
    hand = drawing("&parallels=compasses", viewport=PHONE, has_touch=True, is_mobile=True)
    page = hand.page
    begun = hand.start()
    hand.press("tool", "compasses")
    hand.press("verb", "place")
    page.touchscreen.tap(*hand.pixel(begun))
    assert math.dist(hand.pose("compasses")[:2], begun) < 0.05, "its point catches on the start"
    hand.press("verb", "turn")
    held, to = hand.on_tool("compasses", 38.0, 2.0), moved(begun, 50.0, 60.0)
    fingers(page, [hand.pixel(held)], [hand.pixel(to)])
    radius = number(page, "opened to")
    hand.press("verb", "draw")
    assert radius == pytest.approx(50.0, abs=3.0)
    fingers(page, [hand.pixel(moved(begun, radius - 6.0, 60.0))], [hand.pixel(moved(begun, radius + 5.0, 100.0))])
    drawn = hand.items()[-1]
    assert drawn["do"] == "arc" and (drawn["x"], drawn["y"]) == pytest.approx(begun, abs=0.05)
    assert drawn["r"] == pytest.approx(radius, abs=0.3) and drawn["sweep"] == pytest.approx(40.0, abs=6.0)


def test_a_wrong_radius_is_named_at_its_arc_and_rubbed_out(drawing: Opened) -> None:
    """Lengths swapped: both arcs are shown on the paper; a press with the rubber takes one away."""
    hand = drawing("&parallels=compasses")
    begun = hand.start()
    one, two = arrows(hand)
    arc(hand, begun, one, one, TWO[1])
    arc(hand, begun, two, two, ONE[1])
    said = hand.judge()
    assert "opened to the length of I1 itself" in said.replace("\n", "").replace("₁", "1"), said
    assert bands(hand) == ["accept", "accept", "wrong", "wrong"]
    assert hand.page.locator(".draw-board > .draw-scene path.draw-off").count() == 2
    hand.press("rubber")
    click(hand, moved(one, ONE[0], TWO[1]))
    assert len([op for op in hand.items() if op["do"] == "rub"]) == 1
    assert hand.page.locator('.draw-board > .draw-scene [data-kind="arc"]').count() == 1


def test_a_file_of_the_first_version_opens_as_it_did(drawing: Opened) -> None:
    """With two instruments and no arc; the set square has its own place."""
    hand = drawing("&parallels=set-squares")
    page = hand.page
    arrow(hand, hand.start(), 90.0, 46.0, "i1")
    kept = page.evaluate("JSON.parse(localStorage.getItem('phasor-folio-drawings'))")
    drawn = kept["drawings"][0]
    pose = {"x": 61.0, "y": 90.0, "deg": 12.0}
    old = {"format": "phasor-folio drawing", "version": 1, **drawn, "tools": {"ruler": pose, "protractor": pose}}
    page.click('[data-draw-fold="more"] > summary')
    hand.press("afresh")
    body = json.dumps(old).encode()
    page.set_input_files("[data-draw-open]", {"name": "a.json", "mimeType": "application/json", "buffer": body})
    wait_until(page, "document.querySelectorAll('.draw-board > .draw-scene [data-kind]').length === 1")
    assert hand.pose("ruler") == pytest.approx((61.0, 90.0, 12.0), abs=0.01)
    newer = json.dumps({**old, "version": 3}).encode()
    page.set_input_files("[data-draw-open]", {"name": "a.json", "mimeType": "application/json", "buffer": newer})
    wait_until(page, "document.querySelector('[data-draw-prompt]').textContent.includes('no drawing of this site')")
    page.evaluate("kept => localStorage.setItem('phasor-folio-drawings', JSON.stringify(kept))",
                  {"version": 1, "drawings": [{**drawn, "tools": old["tools"]}]})  # fmt: skip
    page.reload()
    hand.opened()
    assert page.locator('.draw-board > .draw-scene [data-kind="arrow"]').count() == 1


def onto(page: Page, wanted: str, key: str = "o") -> None:
    """Press a key until the instrument is on a point."""
    for _ in range(20):
        keys(page, key)
        if wanted in live(page):
            return
    raise AssertionError((wanted, live(page)))


def number(page: Page, before: str) -> float:
    """A number that was read out."""
    found = re.search(before + r" (-?[\d.]+)", live(page))
    assert found is not None, live(page)
    return float(found[1])


def turn(page: Page, to: float, before: str, keys_of: tuple[str, str], by: float = 1.0) -> None:
    """Press one key or another until what is read out is so much."""
    keys(page, keys_of[0])
    off = round((to - number(page, before)) / by)
    keys(page, keys_of[0] if off > 0 else keys_of[1], abs(off))


def arc_by_keys(page: Page, opened: str, centre: str, towards: float) -> None:
    """Compasses opened from the start to a tip, put on another, and led round."""
    keys(page, "m")
    keys(page, "1")
    onto(page, "point on the start")
    keys(page, "2")
    onto(page, f"The pencil is on {opened}", "c")
    keys(page, "1")
    onto(page, f"point on {centre}")
    turn(page, towards - 14.0, "pencil at", ("[", "]"))
    keys(page, "4")
    keys(page, "Enter")
    assert "The arc begins here" in live(page)
    keys(page, "ArrowLeft", 28)
    assert "gone round by 28.0°" in live(page)
    keys(page, "Enter")
    assert f"Arc with its centre on {centre}, radius" in live(page)


def test_a_parallelogram_with_compasses_by_keys_alone(drawing: Opened) -> None:
    """Arrows, arcs, sides and the judgement; what the compasses are opened to is told to half a millimetre."""
    hand = drawing("&parallels=compasses")
    page = hand.page
    page.evaluate("document.querySelector('.draw-board').focus()")
    for deg, far, name in ((90, 46.0, "i1"), (-30, 73.5, "i2")):
        keys(page, "r")
        keys(page, "1")
        onto(page, "zero on the start")
        turn(page, deg, "edge at", ("[", "]"))
        keys(page, "4")
        keys(page, "a")
        line_by_keys(page, far)
        name_by_tab(page, name)
    arc_by_keys(page, "the tip of I₂", "the tip of I₁", -30.0)
    assert "radius 73.5 mm" in live(page)
    arc_by_keys(page, "the tip of I₁", "the tip of I₂", 90.0)
    assert "radius 46.0 mm" in live(page)
    for tip in ("the tip of I₁", "the tip of I₂"):
        keys(page, "r")
        keys(page, "1")
        onto(page, f"zero on {tip}")
        keys(page, "4")
        keys(page, "d")
        for _ in range(20):
            keys(page, "1")
            keys(page, "l")
            keys(page, "4")
            keys(page, "c", 3)
            if "crossing" in live(page):
                break
        onto(page, f"on {tip}", "c")
        keys(page, "Enter")
        onto(page, "on a crossing of your lines", "c")
        keys(page, "Enter")
    keys(page, "j")
    wait_until(page, "document.querySelector('[data-draw-result]').childElementCount > 0", PATIENCE)
    assert "Every line drawn so far is correct" in live(page)
    assert bands(hand) == ["accept"] * 6
    assert violations(page) == []


def line_by_keys(page: Page, far: float) -> None:
    """A line along the ruler from its zero."""
    turn(page, 0.0, "Pencil at", ("ArrowRight", "ArrowLeft"))
    keys(page, "Enter")
    whole, tenths = divmod(round(10 * far), 10)
    keys(page, "ArrowRight", whole)
    keys(page, "Shift+ArrowRight", tenths)
    keys(page, "Enter")


def name_by_tab(page: Page, key: str) -> None:
    """Go to the names by Tab and press one."""
    for _ in range(60):
        keys(page, "Shift+Tab")
        if page.evaluate("document.activeElement.dataset.value") == key:
            break
    keys(page, "Enter")


def test_a_parallel_is_carried_by_keys_alone(drawing: Opened) -> None:
    """The set square on a tip along its arrow, the ruler against it, and slid to the other tip."""
    hand = drawing("&parallels=set-squares")
    page = hand.page
    arrows(hand)
    page.evaluate("document.querySelector('.draw-board').focus()")
    keys(page, "s")
    keys(page, "1")
    onto(page, "right angle on the tip of I₂")
    onto(page, "base at 150.0°", "l")
    keys(page, "r")
    keys(page, "g")
    assert "It lies against the set square." in live(page)
    keys(page, "s")
    assert "It lies against the ruler and slides along it." in live(page)
    before = hand.pose("square-60")
    keys(page, "ArrowUp", 3)
    assert math.dist(hand.pose("square-60")[:2], before[:2]) == pytest.approx(3.0, abs=0.01)
    keys(page, "o")
    keys(page, "4")
    keys(page, "d")
    for _ in range(6):
        keys(page, "c")
        if "the tip of I₁" in live(page):
            break
        keys(page, "1")
        keys(page, "o")
        keys(page, "4")
    assert "along the base of the set square, on the tip of I₁" in live(page)
    keys(page, "Enter")
    keys(page, "ArrowLeft", 75)
    keys(page, "Enter")
    hand.judge()
    assert bands(hand) == ["accept"] * 3


def test_an_arc_goes_on_where_the_compasses_are_turned_and_ends_a_whole_circle(drawing: Opened) -> None:
    """The keys that turn an instrument lead the arc too; and once round, the pencil is where it began: that was taken
    for a press."""
    hand = drawing("&parallels=compasses")
    page = hand.page
    middle = moved(hand.start(), 40.0, 150.0)
    hand.press("tool", "compasses")
    hand.press("verb", "place")
    click(hand, middle)
    hand.press("verb", "turn")
    click(hand, moved(middle, 20.0, 0.0))
    hand.press("verb", "draw")
    page.evaluate("document.querySelector('.draw-board').focus()")
    keys(page, "Enter")
    keys(page, "[", 12)
    keys(page, "Enter")
    assert hand.items()[-1]["sweep"] == pytest.approx(12.0, abs=0.01)
    page.mouse.move(*hand.pixel(moved(middle, 20.0, 30.0)))
    page.mouse.down()
    for deg in range(30, 391, 20):
        page.mouse.move(*hand.pixel(moved(middle, 20.0, deg)))
        page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
    page.mouse.up()
    assert len(hand.items()) == 2
    assert hand.items()[-1]["sweep"] == pytest.approx(360.0, abs=2.0)
