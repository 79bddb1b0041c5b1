"""Drawing on the screen in Firefox and WebKitGTK: instruments and pencil follow the pointer, lines are judged."""

from collections.abc import Iterator

import pytest
from browser.asking import SLUG
from browser.drawn_by_hand import SHEET, Place, moved
from browser.engines import Engine, opened
from playwright.sync_api import Playwright

PROBLEM = "#v=3&i1=9.2&i2=14.7&i3=6.5&view=draw"
AT = f"""(() => {{ const sheet = document.querySelector("{SHEET}"), box = sheet.getBoundingClientRect();
  return [box.left, box.top, box.width / sheet.viewBox.baseVal.width]; }})()"""
LINES = """JSON.parse(localStorage.getItem("phasor-folio-drawings") ?? '{"drawings":[{"ops":[]}]}').drawings[0].ops
  .filter((op) => op.do === "line").map((op) => [op.x1, op.y1, op.x2, op.y2])"""

ARCS = LINES.replace('"line"', '"arc"').replace("op.x1, op.y1, op.x2, op.y2", "op.x, op.y, op.r")


@pytest.fixture(params=["Firefox", "WebKitGTK"])
def engine(request, playwright: Playwright, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """A window of each engine in turn."""
    with opened(request.param, playwright, tmp_path_factory.mktemp("home")) as engine:
        yield engine


def press(engine: Engine, does: str, value: str = "") -> None:
    """Press a button of the view."""
    chosen = f'[data-value="{value}"]' if value else ""
    engine.run(f"""document.querySelector('dialog.draw [data-draw-do="{does}"]{chosen}').click();""")


def drag(engine: Engine, first: Place, last: Place) -> None:
    """Drag from one place of the sheet to another."""
    left, top, scale = engine.value(AT)
    middle = ((first[0] + last[0]) / 2, (first[1] + last[1]) / 2)
    engine.drag([(left + x * scale, top + y * scale) for x, y in (first, middle, last)])


def test_an_arrow_is_drawn_by_pointer_and_judged(engine: Engine, site: str) -> None:
    """The ruler dragged to the start, turned by a press, an arrow along it: right; then an arc with its length. Nothing
    is refused or uncaught."""
    engine.go(f"{site}{SLUG}/{PROBLEM}")
    engine.wait(f"document.querySelector('{SHEET}') && document.querySelector('.draw-board').dataset.start")
    x, y = map(float, engine.value("document.querySelector('.draw-board').dataset.start").split())
    # Where the ruler lies at first: below the start.
    drag(engine, (x + 20.0, y + 40.0), (x + 20.3, y + 8.3))
    press(engine, "along")
    press(engine, "verb", "draw")
    drag(engine, (x, y), moved((x, y), 46.0, 90.0))
    engine.wait(f"{LINES}.length === 1")
    x1, y1, x2, y2 = engine.value(LINES)[0]
    assert (x1, y1) == pytest.approx((x, y), abs=0.05), "it catches on the start"
    assert (x2 - x, y - y2) == pytest.approx((0.0, 46.0), abs=0.6)
    press(engine, "name", "i1")
    press(engine, "judge")
    engine.wait("document.querySelector('[data-draw-line]')")
    assert engine.value("document.querySelector('[data-draw-line]').dataset.band") == "accept"
    press(engine, "others")
    press(engine, "tool", "compasses")
    tip = (x2, y2)
    arc = (x - 5.0, y - 46.0), (x + 12.0, y - 44.0)
    for verb, first, last in (("place", (x, y), (x, y)), ("turn", tip, tip), ("draw", *arc)):
        press(engine, "verb", verb)
        drag(engine, first, last)
    engine.wait(f"{ARCS}.length === 1")
    assert engine.value(ARCS)[0] == pytest.approx([x, y, 46.0], abs=0.6)
    assert engine.faults() == []
