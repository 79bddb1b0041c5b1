"""What a first visit sends, how long that takes on a slow link, and the memory that a page takes."""

import hashlib
import math
import re
import statistics
import sys
import threading
import time
from collections.abc import Callable
from functools import cache, partial
from pathlib import Path
from typing import BinaryIO, ClassVar

import brotli
from playwright.sync_api import Browser, Page

from making.bench_rows import Row
from making.bench_start import OURS, PYTHON_READY, STOCK, visit, wait
from making.bench_typing import ONE_CLASS, QUESTIONS, make_class_set, make_papers
from making.pages import REST
from making.progress import step
from making.serve import Server, serving
from making.splitting import COLD, WARM

COMPRESSED_ALREADY = (".woff2", ".png")
FIRST_GOAL, ALL_GOAL, MEMORY_GOAL = 0.24, 0.75, 0.9
LINK_RATE, LINK_DELAY = 200_000, 0.15
"""Bytes in a second and seconds before each response: a phone with poor signal."""
PIECE = 4096
SLOW_TIME = 180.0
CLASSES, CLASS_MEMORY_GOAL = (60, 1023), 1.2
TIMES_AS_MANY = 4


class RecordingServer(Server):
    """A server that remembers which files were asked for."""

    requested: ClassVar[list[str]] = []

    def note(self, path: str) -> None:
        """Remember one request."""
        self.requested.append(path)


class SlowServer(Server):
    """A server at the end of a slow link that all responses share."""

    link = threading.Lock()

    def note(self, path: str) -> None:
        """Wait as long as a request is on its way."""
        time.sleep(LINK_DELAY)

    def send(self, source: BinaryIO, target: BinaryIO) -> None:
        """Send a file piece by piece, as fast as the link takes them."""
        while piece := source.read(PIECE):
            with self.link:
                time.sleep(len(piece) / LINK_RATE)
                target.write(piece)


def bytes_rows(browser: Browser, address: str, folder: Path) -> list[Row]:
    """What a first visit transfers from a host that compresses with brotli: until its answer, and with what follows."""
    with step("weighing both first visits"):
        ours, stock = (_weigh(folder, partial(visit, browser, address + page)) for page in (OURS, STOCK))
    later = [next((folder / "lib").rglob(f"{REST}.zip")), *folder.rglob(WARM), *folder.rglob(COLD)]
    # Asked for once Python is ready: whether this visit saw them or not is chance.
    first = sum(ours.values()) - math.fsum(ours.get(path, 0) for path in later)
    later_bytes = math.fsum(_compressed_size(path) for path in later)
    whole = sum(stock.values())
    return [
        Row("first visit, brotli", first / 1e6, whole / 1e6, "MB", goal=FIRST_GOAL),
        Row("  and what follows it", (first + later_bytes) / 1e6, whole / 1e6, "MB", goal=ALL_GOAL),
    ]


def slow_link(browser: Browser, folder: Path) -> Row:
    """From navigation to the first answer by Python on a slow link, and until stock Pyodide is ready."""
    with step("visiting both over a slow link"), serving(folder, SlowServer) as address:
        ours = visit(browser, address + OURS, SLOW_TIME)
        stock = visit(browser, address + STOCK, SLOW_TIME)
    return Row("200 kB/s, 150 ms: to Python ready", ours, stock, "s")


def _weigh(folder: Path, visit: Callable[[], float]) -> dict[Path, int]:
    """Every file that one visit asks for, and its size compressed."""
    RecordingServer.requested = []
    visit()
    paths = {path.split("?")[0].split("#")[0] for path in RecordingServer.requested}
    files = [folder / path.lstrip("/") / ("index.html" if path.endswith("/") else "") for path in sorted(paths)]
    return {path: _compressed_size(path) for path in files if path.is_file()}


def _compressed_size(path: Path) -> int:
    """The size of one file after brotli at its strongest; fonts and pictures are compressed already."""
    data = path.read_bytes()
    return len(data) if path.suffix in COMPRESSED_ALREADY else _brotli_size(hashlib.sha256(data).hexdigest(), path)


@cache
def _brotli_size(_digest: str, path: Path) -> int:
    """The brotli size of the file at `path`, found once for equal contents."""
    return len(brotli.compress(path.read_bytes()))


def memory(browser: Browser, address: str) -> list[Row]:
    """The most that a page's process has held (Linux only: what the kernel counted): by the time Python is ready, and
    by the time that a large class set and a small one are made, and question papers for many learners and for few."""
    if sys.platform != "linux":
        return []
    with step("weighing the memory of both"):
        ours, stock = (statistics.median(_peaks(browser, address + page)) for page in (OURS, STOCK))
    few, many = CLASSES
    with step(f"weighing class sets of {few} and {many}"):
        small, large = (peak(browser, partial(make_class_set, address=address, learners=n)) for n in CLASSES)
    learners = (ONE_CLASS, TIMES_AS_MANY * ONE_CLASS)
    with step(f"weighing question papers for {learners[0]} and {learners[1]}"):
        class_papers, all_papers = (peak(browser, partial(make_papers, address=address, learners=n)) for n in learners)
    return [
        Row("peak memory of the page's process", ours, stock, "MB", goal=MEMORY_GOAL),
        Row(f"  while a class set of {many} is made", large, small, "MB", f"one of {few}", CLASS_MEMORY_GOAL),
        Row(f"  while papers of {QUESTIONS} questions for {learners[1]} are made", all_papers, class_papers, "MB",
            f"those for {ONE_CLASS}", CLASS_MEMORY_GOAL),
    ]


def _peaks(browser: Browser, address: str, times: int = 3) -> list[float]:
    """The peaks of a page's process by the time Python is ready."""
    return [peak(browser, partial(_open, address)) for _ in range(times)]


def _open(address: str, page: Page) -> None:
    """Open an address and wait for Python."""
    page.goto(address)
    wait(page, PYTHON_READY)


def peak(browser: Browser, work: Callable[[Page], object]) -> float:
    """The peak resident memory of the process that shows a page while something is done in it, in MB."""
    session = browser.new_browser_cdp_session()

    def renderers() -> set[int]:
        listed = session.send("SystemInfo.getProcessInfo")["processInfo"]
        return {entry["id"] for entry in listed if entry["type"] == "renderer"}

    before = renderers()
    context = browser.new_context()
    work(context.new_page())
    peaks = [_kernel_peak(process) for process in renderers() - before]
    context.close()
    session.detach()
    return max(peaks)


def _kernel_peak(process: int) -> float:
    """What Linux says was the most that a process held, in MB; 0 for one that has ended."""
    try:
        status = Path(f"/proc/{process}/status").read_text()
    except OSError:
        return 0.0
    peak = re.search(r"VmHWM:\s+(\d+) kB", status)
    return int(peak[1]) * 1024 / 1e6 if peak else 0.0
