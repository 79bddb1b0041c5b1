"""Fixtures of the whole run: the built site, a server, a Chromium, and pages that forbid errors and other hosts."""

import os
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from making import environment, stamps
from making.programs import CHROMIUM_OPTIONS, find_chromium
from making.serve import serving
from making.whole import build_site
from playwright.sync_api import Browser, Page, Playwright, sync_playwright
from rooms import ONE_PROCESS, UNIMPROVED, Rooms, dress
from witness import Witness

environment.put_venv_on_path()
BROWSER = Path(__file__).parent / "browser"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Among several workers each begins with its share of the slow tests and ends with its share of the quick ones.

    Each is given as many tests, in their order, and one that is done takes what waits for another: quick ones, so that
    all end together.
    """
    workers = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
    if workers > 1:
        kinds = [[item for item in items if (BROWSER in item.path.parents) is slow] for slow in (True, False)]
        items[:] = [item for k in range(workers) for kind in kinds for item in share(kind, k, workers)]


def share(items: list[pytest.Item], number: int, workers: int) -> list[pytest.Item]:
    """The part of `items` that falls to the worker of this number."""
    return items[len(items) * number // workers : len(items) * (number + 1) // workers]


@pytest.fixture(scope="session")
def dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The built site, up to date: a copy, so that a build beside the tests cannot change what they read."""
    copy = tmp_path_factory.mktemp("site") / "dist"
    with stamps.one_at_a_time():
        environment.ensure_node_modules(developer=True)
        # The compressed copies are there only if somebody built for a host.
        shutil.copytree(build_site(), copy, ignore=shutil.ignore_patterns("*.br", "*.gz"))
    return copy


@pytest.fixture(scope="session")
def runtime(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Pyodide's files and the library of the built site in one folder, as Node wants them."""
    folder = tmp_path_factory.mktemp("runtime")
    for path in (*(dist / "py").glob("*/*"), *(dist / "lib").glob("*/*")):
        shutil.copyfile(path, folder / path.name)
    return folder


@pytest.fixture(scope="session")
def site(dist: Path) -> Iterator[str]:
    """The address of the built site, ending in a slash, served with the headers that it asks of a host."""
    with serving(dist) as address:
        yield address


@pytest.fixture(scope="session")
def chromium_path() -> Path:
    """The Chromium of this machine; without one the tests fail, never skip."""
    path = find_chromium()
    assert path is not None, "no Chromium was found: run `python3 build.py test`, which installs one where it can"
    return path


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """The one driver of the run: a second one beside it is refused."""
    with sync_playwright() as driver:
        yield driver


@pytest.fixture(scope="session")
def browser(playwright: Playwright, chromium_path: Path) -> Iterator[Browser]:
    """One Chromium for the whole run."""
    options = [*CHROMIUM_OPTIONS, UNIMPROVED]
    chromium = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    yield chromium
    chromium.close()


@pytest.fixture(scope="session")
def rooms(playwright: Playwright, chromium_path: Path, site: str) -> Iterator[Rooms]:
    """The contexts that tests share, one test after another, in a Chromium of their own."""
    options = [*CHROMIUM_OPTIONS, ONE_PROCESS]
    chromium = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    yield Rooms(chromium, site)
    chromium.close()


@pytest.fixture
def open_page(browser: Browser, rooms: Rooms, site: str) -> Iterator[Callable[..., Page]]:
    """A function that opens a page with a context's options; any fault fails the test.

    A test's first page is one of a shared context, in which nothing is kept but a started Python's memory; others, and
    those that are asked for with `fresh`, are on devices where nobody has been.
    """
    contexts, witness = [], Witness(site)

    def open_one(*, fresh: bool = False, **options: object) -> Page:
        room = None if fresh else taken.room(options)
        if room:
            room.context.on("page", witness.watch)
            watched.append(room.context)
            return dress(room.context.new_page(), options)
        # What the site keeps for later is tried on its own; beside every other test it would only take time.
        context = browser.new_context(service_workers="block", **options)
        contexts.append(context)
        context.on("page", witness.watch)
        return context.new_page()

    watched = []
    try:
        with rooms.test() as taken:
            yield open_one
    finally:
        for context in watched:
            context.remove_listener("page", witness.watch)
        for context in contexts:
            context.close()
    assert [] == witness.faults


@pytest.fixture
def page(open_page: Callable[..., Page]) -> Page:
    """One page of a shared context; any console error, uncaught exception or request to another host fails the test."""
    return open_page()


@pytest.fixture
def fresh_page(open_page: Callable[..., Page]) -> Page:
    """The same on a device where nobody has been: Python starts from nothing."""
    return open_page(fresh=True)


def wait_for(page: Page, attribute: str, wanted: str, seconds: float) -> None:
    """Poll an attribute of `<html>` (waiting inside the page is refused by its policy) until it is `wanted`."""
    end = time.monotonic() + seconds
    seen = None
    while time.monotonic() < end:
        seen = page.evaluate("name => document.documentElement.getAttribute(name)", attribute)
        if seen == wanted:
            return
        if seen == "failed":
            break
        time.sleep(0.02)
    raise AssertionError(f"{attribute} was {seen!r}, not {wanted!r}, within {seconds} s")


@pytest.fixture(scope="session")
def ready() -> Callable[[Page], None]:
    """`ready(page)` returns once the page's Python is ready."""
    return lambda page, seconds=60.0: wait_for(page, "data-python", "ready", seconds)


@pytest.fixture(scope="session")
def answered() -> Callable[[Page], None]:
    """`answered(page)` returns once the answer shown belongs to the values in the form."""
    return lambda page, seconds=20.0: wait_for(page, "data-answer", "fresh", seconds)


@pytest.fixture(scope="session")
def ngspice_path() -> Path:
    """The circuit simulator; missing, it fails the test where CI is set and is a listed omission elsewhere."""
    found = shutil.which("ngspice")
    if found is None and not os.environ.get("CI"):
        pytest.skip("left out: ngspice is not installed, so values stored from it are not re-derived")
    assert found is not None, "ngspice is missing and CI is set: install the Debian package ngspice"
    return Path(found)
