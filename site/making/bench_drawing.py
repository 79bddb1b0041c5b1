"""What drawing on the screen costs while a finger moves, beside a page on which one plain element follows it."""

import statistics
import time
from itertools import pairwise

from playwright.sync_api import Browser, CDPSession, Page, ViewportSize

from making.bench_rows import Row
from making.bench_start import OURS, wait
from making.progress import step

LINK = f"{OURS}#v=3&i1=9.2&i2=14.7&i3=6.5&view=draw"
SLOWING, TURNS = 4, 4
FRAMES_GOAL, WORK_GOAL = 1.5, 2.5
OPEN = "document.querySelector('dialog.draw[open] .draw-scene') !== null"
PLAIN = """<!doctype html><title>plain</title><meta name="viewport" content="width=device-width">
<style>body { margin: 0; height: 100vh; touch-action: none }
div { position: absolute; width: 360px; height: 200px; background: #cde; will-change: transform }</style><div></div>
<script>
const one = document.querySelector("div");
let [x, y, frame] = [0, 0, 0];
addEventListener("pointermove", (event) => {
  [x, y] = [event.clientX, event.clientY];
  frame ||= requestAnimationFrame(() => {
    frame = 0;
    one.style.transform = `translate(${x}px, ${y}px)`;
  });
});
</script>"""
"""One element that a finger moves."""
RECORD = """() => {
  window.frameTimes = [];
  window.isCounting = true;
  const count = (time) => {
    window.frameTimes.push(time);
    if (window.isCounting) requestAnimationFrame(count);
  };
  requestAnimationFrame(count);
}"""
RECORDED = "() => { window.isCounting = false; return window.frameTimes; }"
GESTURES = (
    ("place", "ruler", (250, 530, -80, -100)),
    ("turn", "ruler", (250, 440, -60, -120)),
    ("place", "protractor", (350, 600, -130, -120)),
    ("turn", "protractor", (320, 480, -60, -120)),
    ("mark", "protractor", (250, 500, -60, -120)),
    ("draw", "ruler", (220, 500, 60, -120)),
)
"""Verb, instrument, and the finger's way: from x, y by so many px."""


def frames(browser: Browser, address: str) -> list[Row]:
    """Frames and the page's own work while instruments and pencil follow a finger, in alternation with a plain page.

    Work is the processor's time in the page's thread: what else the machine does is not in it."""
    screen: ViewportSize = {"width": 390, "height": 844}
    context = browser.new_context(viewport=screen, has_touch=True, is_mobile=True, device_scale_factor=3)
    ours, plain = context.new_page(), context.new_page()
    plain.set_content(PLAIN)
    ours.goto(address + LINK)
    wait(ours, OPEN)
    time.sleep(1.0)
    mine, other = _Finger(ours), _Finger(plain)
    with step(f"dragging {TURNS * len(GESTURES)} times, slowed {SLOWING} times"):
        for _ in range(TURNS):
            for verb, tool, way in GESTURES:
                mine.take(verb, tool)
                mine.drag(*way)
                other.drag(200, 300, 100, 160)
    context.close()
    return [
        Row("frame while drawing, p95", mine.high, other.high, "ms", "a plain element that is dragged", FRAMES_GOAL),
        Row("  the page's work for each", mine.work, other.work, "ms", "the same", WORK_GOAL),
    ]


class _Finger:
    """A finger on a page that is slowed, with the frames and the work of its drags."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.session: CDPSession = page.context.new_cdp_session(page)
        self.session.send("Performance.enable", {"timeDomain": "threadTicks"})
        self.session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWING})
        self.gaps: list[float] = []
        self.busy: list[float] = []

    def take(self, verb: str, tool: str) -> None:
        """Take an instrument, then a verb."""
        for does, value in (("tool", tool), ("verb", verb)):
            self.page.click(f'dialog.draw [data-draw-do="{does}"][data-value="{value}"]')

    def _spent(self) -> float:
        metrics = self.session.send("Performance.getMetrics")["metrics"]
        return 1000 * next(float(one["value"]) for one in metrics if one["name"] == "TaskDuration")

    def drag(self, x: float, y: float, across: float, down: float) -> None:
        """One drag, as the browser makes it of a finger."""
        self.page.bring_to_front()
        way = {"x": x, "y": y, "xDistance": across, "yDistance": down, "speed": 150}
        before = self._spent()
        self.page.evaluate(RECORD)
        self.session.send("Input.synthesizeScrollGesture", {**way, "gestureSourceType": "touch", "preventFling": True})
        times = self.page.evaluate(RECORDED)
        gaps = [later - earlier for earlier, later in pairwise(times)]
        self.gaps += gaps
        if gaps:
            self.busy.append((self._spent() - before) / len(gaps))

    @property
    def high(self) -> float:
        """The time from one frame to the next that 95 in 100 keep under."""
        return statistics.quantiles(self.gaps, n=20)[-1]

    @property
    def work(self) -> float:
        """The page's work for a frame, the median of all drags."""
        return statistics.median(self.busy)
