"""What typing costs, and making a class set: in the page and in its worker."""

import statistics
import time
from collections.abc import Iterable

from playwright.sync_api import Browser, Page, ViewportSize

from making.bench_rows import Row
from making.bench_start import ANSWERED, OURS, ROUNDS, wait
from making.progress import step

EDITS = 100
FRAME = 1000 / 60
KEYSTROKE_GOAL, SLOWED_GOAL = 10.0, 50.0
SLOWING = 4
SCREENS: dict[str, ViewportSize] = {"desk": {"width": 1440, "height": 900}, "phone": {"width": 390, "height": 844}}
SHEETS_EACH = 2
CLASSES, CLASS_GOAL, CLASS_LIMIT = (60, 600), 0.4, 600_000
ONE_CLASS, QUESTIONS, PAPERS_GOAL = 30, 5, 5.0
PAPER_LINK = (
    "question-papers/#v=3&seed=77&learners={}&questions=5&q4-topic=series-circuit&q5-topic=star-and-delta&codes=problem"
)
CLASS_LINK = "class-set/#v=1&topic=neutral-current&tier=core&learners={}&method=any&paper=A4&seed=77"

FIXED_WORK = """() => {
  const taken = [];
  for (let turn = 0; turn < 7; turn++) {
    const began = performance.now();
    let sum = 0;
    for (let number = 1; number < 3_000_000; number++) sum += Math.sqrt(number) / (number + sum);
    taken.push(performance.now() - began);
  }
  return taken.sort((one, other) => one - other)[3];
}"""
"""A sum of square roots: the same work on every machine, by which times of one can be told from times of another."""
OVERHEARD = """window.workerTimes = [];
window.Worker = class extends Worker {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => data.text && window.workerTimes.push(data.took));
  }
};"""
TIMED = """() => {
  let began = 0;
  const { get } = Object.getOwnPropertyDescriptor(MessageEvent.prototype, "data");
  const read = function () { began = performance.now(); return get.call(this); };
  Object.defineProperty(MessageEvent.prototype, "data", { get: read });
  const send = self.postMessage.bind(self);
  self.postMessage = (message, ...more) => send({ ...message, took: performance.now() - began }, ...more);
}"""
"""What a worker takes for a reply, by its own clock: the page's, slowed, would count its own delay as the worker's."""
TYPE = """async (edits) => {
  const root = document.documentElement;
  const field = document.querySelector("[name=i1]");
  field.focus();
  const quiet = (pause) => new Promise((resolve) => setTimeout(resolve, pause));
  const times = [];
  const workers = [];
  for (let edit = 0; edit < edits; edit++) {
    await quiet(30);
    const before = window.workerTimes.length;
    const began = performance.now();
    field.value = (10 + edit / 7).toFixed(2);
    field.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => {
      const observer = new MutationObserver(() => {
        if (root.dataset.answer !== "fresh") return;
        observer.disconnect();
        resolve();
      });
      observer.observe(root, { attributeFilter: ["data-answer"] });
    });
    document.body.getBoundingClientRect();
    times.push(performance.now() - began);
    workers.push(window.workerTimes[before] ?? 0);
  }
  return { times, workers };
}"""


def keystrokes(browser: Browser, address: str) -> list[Row]:
    """From an edit to the answer and its drawing in the document, layout forced: on a desk the sheet itself, on a phone
    the phone's drawing; slowed: the worker's time counted four times."""
    rows = []
    for name, screen in SCREENS.items():
        with step(f"typing {EDITS} times, and {EDITS} times slowed, on a {name}"):
            plain, slow, in_worker, in_page = _typed(browser, address, screen)
        slowed = [total + (SLOWING - 1) * worker for total, worker in zip(slow["times"], slow["workers"], strict=True)]
        high, middle = _high(plain["times"]), statistics.median(slowed)
        rows += [
            Row("fixed work in the worker", in_worker, in_page, "ms", "the same in the page"),
            Row(f"keystroke on a {name}, p50", statistics.median(plain["times"]), FRAME, "ms", "one frame at 60 Hz"),
            Row(f"keystroke on a {name}, p95", high, KEYSTROKE_GOAL, "ms", "the goal", 1.0),
            Row("  beside the fixed work", high, in_worker, "ms", "fixed work in the worker"),
            Row("  of it in the worker, p50", statistics.median(plain["workers"]), FRAME, "ms", "one frame at 60 Hz"),
            Row(f"keystroke on a {name}, four times slower, p50", middle, SLOWED_GOAL, "ms", "the goal"),
            Row(f"keystroke on a {name}, four times slower, p95", _high(slowed), SLOWED_GOAL, "ms", "the goal", 1.0),
        ]
    return rows


def _typed(browser: Browser, address: str, screen: ViewportSize) -> tuple[dict, dict, float, float]:
    """What typing took on a screen, and with its page slowed; the fixed work in its worker and in the page."""
    context = browser.new_context(viewport=screen)
    try:
        context.add_init_script(OVERHEARD)
        page = context.new_page()
        page.goto(address + OURS)
        wait(page, ANSWERED)
        page.workers[0].evaluate(TIMED)
        page.evaluate(TYPE, 10)
        in_worker, in_page = page.workers[0].evaluate(FIXED_WORK), page.evaluate(FIXED_WORK)
        plain = page.evaluate(TYPE, EDITS)
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWING})
        return plain, page.evaluate(TYPE, EDITS), in_worker, in_page
    finally:
        context.close()


def _high(times: Iterable[float]) -> float:
    """The time that 95 in 100 keep under."""
    return statistics.quantiles(times, n=20)[-1]


def class_sets(browser: Browser, address: str) -> list[Row]:
    """From the press of the button to the PDF of a class set, a problem sheet and an overlay for each learner: what 60
    sheets take, and a large class beside a small one, sheet for sheet."""
    few, many = CLASSES
    with step(f"making class sets of {few} and {many}, {ROUNDS} times"):
        pairs = [(_class_set(browser, address, few), _class_set(browser, address, many)) for _ in range(ROUNDS)]
    small, large = (statistics.median(times) for times in zip(*pairs, strict=True))
    per_few, per_many = small / (SHEETS_EACH * few), large / (SHEETS_EACH * many)
    return [
        Row(f"60 sheets of a class set of {few}", 60 * per_few, CLASS_GOAL, "s", "the goal", 1.0),
        Row(f"a sheet of a class set of {many}", 1000 * per_many, 1000 * per_few, "ms", f"one of {few}"),
    ]


def question_papers(browser: Browser, address: str) -> list[Row]:
    """From the press of the button to the PDF of a class's question papers, beside that of its class set."""
    with step(f"making question papers and class sets of {ONE_CLASS}, {ROUNDS} times"):
        pairs = [(_made(browser, address, PAPER_LINK.format(ONE_CLASS)), _class_set(browser, address, ONE_CLASS))
                 for _ in range(ROUNDS)]  # fmt: skip
    papers, sets = (statistics.median(times) for times in zip(*pairs, strict=True))
    what = f"a class set of {ONE_CLASS}"
    return [Row(f"papers of {QUESTIONS} questions for {ONE_CLASS}", papers, sets, "s", what, PAPERS_GOAL)]


def _class_set(browser: Browser, address: str, learners: int) -> float:
    """The seconds that one class set takes in a window of its own."""
    return _made(browser, address, CLASS_LINK.format(learners))


def _made(browser: Browser, address: str, link: str) -> float:
    """The seconds that the file of a link takes in a window of its own."""
    context = browser.new_context()
    try:
        return make_file(context.new_page(), address, link)
    finally:
        context.close()


def make_class_set(page: Page, address: str, learners: int) -> float:
    """Make a class set in a page; gives the seconds from the press of the button to its PDF."""
    return make_file(page, address, CLASS_LINK.format(learners))


def make_papers(page: Page, address: str, learners: int) -> float:
    """Make question papers in a page; gives the seconds from the press of the button to their PDF."""
    return make_file(page, address, PAPER_LINK.format(learners))


def make_file(page: Page, address: str, link: str) -> float:
    """Make the PDF of a page's link; gives the seconds from the press of the button to the file."""
    page.goto(f"{address}{link}")
    wait(page, ANSWERED)
    # Sheets have codes to open only where another device can open the address.
    page.evaluate(f"document.documentElement.dataset.base = 'https://www.folio.example/{link.partition('#')[0]}'")
    with page.expect_download(timeout=CLASS_LIMIT) as saved:
        began = time.monotonic()
        page.click('[data-do="make"]')
    saved.value.path()
    return time.monotonic() - began
