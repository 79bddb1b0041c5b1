"""A calculator in a course page of another site: on first and later visits, and where the browser blocks what a frame
would keep. Pages that are not for embedding stay out of frames."""

import re
import shutil
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from browser.asking import SLUG, neutral, result, wait_until
from making.pages import Places, pages_of_pycore, write_pages
from making.policy import EMBEDDED, framers, headers_file
from making.progress import BuildError
from making.serve import serving
from playwright.sync_api import Browser, Frame, Page

COURSE = """<!doctype html><title>Course</title><h1>Unit 3</h1>
<iframe title="Neutral current" width="900" height="700" src="{}"></iframe>"""
MARK = f' data-embedded="{EMBEDDED}" data-veils'
"""What tells a page for embedding from the page by itself."""
BLOCKED = "".join(
    f"""Object.defineProperty({owner}, "{name}",
      {{ configurable: true, get() {{ throw new DOMException("blocked", "SecurityError"); }} }});"""
    for owner, names in {
        "globalThis": ("localStorage", "sessionStorage", "indexedDB", "caches"),
        "navigator": ("serviceWorker", "locks", "storage"),
    }.items() for name in names
)  # fmt: skip
"""What a browser does to a frame whose storage it blocks."""
FRESH = "document.documentElement.dataset.answer === 'fresh' && document.documentElement.dataset.python === 'ready'"


@pytest.fixture(scope="module")
def course(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Path, str]]:
    """A folder that another site serves, and its address: another site than 127.0.0.1, so what it frames is a third
    party's."""
    folder = tmp_path_factory.mktemp("course")
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(SimpleHTTPRequestHandler, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield folder, f"http://localhost:{server.server_port}/"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="module")
def embedded(course: tuple[Path, str], dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of the site with its page for embedding, for that course: the built site, and beside each page what
    the build would write (`test_a_page_for_embedding_differs_by_its_mark_alone`)."""
    folder = tmp_path_factory.mktemp("embedded") / "dist"
    shutil.copytree(dist, folder)
    html = (folder / SLUG / "index.html").read_text("utf-8")
    (folder / f"{EMBEDDED}{SLUG}").mkdir()
    (folder / f"{EMBEDDED}{SLUG}" / "index.html").write_text(html.replace(" data-veils", MARK, 1), "utf-8")
    slugs = [index.parent.relative_to(folder).as_posix().replace(".", "") for index in folder.rglob("index.html")]
    (folder / "_headers").write_text(headers_file(slugs, framers(course[1].rstrip("/"))), "utf-8")
    with serving(folder) as address:
        yield address


def framed(page: Page, course: tuple[Path, str], address: str) -> Frame:
    """The frame of a course page that shows an address."""
    folder, place = course
    (folder / "index.html").write_text(COURSE.format(address), "utf-8")
    page.goto(place)
    return page.frames[1]


def answers(frame: Frame) -> None:
    """Python starts in the frame, and a value that is typed has its own answer."""
    wait_until(frame, FRESH, 60)
    frame.fill("[name=i1]", "31.5")
    wait_until(frame, f"{FRESH} && location.hash.includes('31.5')", 20)
    assert neutral(31.5, 11.2, 24.6) == pytest.approx(result(frame), rel=1e-11)


@pytest.mark.parametrize("blocked", [False, True])
def test_it_works_in_a_frame_on_the_first_visit_and_on_later_ones(
    course: tuple[Path, str], embedded: str, browser: Browser, blocked: bool
) -> None:
    with browser.new_context() as context:
        if blocked:
            context.add_init_script(f"if (window !== top) {{ {BLOCKED} }}")
        page = context.new_page()
        address = f"{embedded}{EMBEDDED}{SLUG}/"
        answers(framed(page, course, address))
        # Who has been at the site itself has its service worker too.
        page.goto(f"{embedded}{SLUG}/")
        wait_until(page, f"{FRESH} && document.documentElement.dataset.offline === 'ready'", 60)
        frame = framed(page, course, address)
        answers(frame)
        keeps = "(() => { try { return Boolean(localStorage); } catch { return false; } })()"
        assert frame.evaluate(keeps) != blocked
        with context.expect_page() as opened:
            frame.click(".head .name")
        assert opened.value.url == embedded


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page on a device where nobody has been; that it goes to another host is what these tests are about."""
    with browser.new_context() as context:
        yield context.new_page()


def test_only_pages_for_embedding_may_be_framed_and_only_by_those_named(
    course: tuple[Path, str], embedded: str, page: Page
) -> None:
    for address in (f"{embedded}{SLUG}/", f"{embedded}class-set/", embedded):
        assert framed(page, course, address).url.startswith("chrome-error:")


def test_links_from_a_frame_lead_to_the_page_by_itself(course: tuple[Path, str], embedded: str, page: Page) -> None:
    frame = framed(page, course, f"{embedded}{EMBEDDED}{SLUG}/")
    wait_until(frame, FRESH, 60)
    assert frame.is_visible(".foot .cautions")
    assert not frame.is_visible(".foot-pages")
    frame.evaluate("document.querySelector('[data-action=share]').click()")
    # A frame of another site has no clipboard, so the link stands in its row.
    wait_until(frame, "document.querySelector('[data-link] input').value !== ''", 20)
    assert frame.input_value("[data-link] input").startswith(f"{embedded}{SLUG}/#")


def test_a_page_for_embedding_differs_by_its_mark_alone(tmp_path: Path) -> None:
    """And only calculators have one."""
    (tmp_path / "lib").mkdir()
    places = Places("a/", "py/", "lib/", "letters/")
    pages = [page for page in pages_of_pycore() if page.slug in (SLUG, "class-set")]
    assert {SLUG, "class-set", f"{EMBEDDED}{SLUG}"} == set(write_pages(tmp_path, places, pages, embedded=True))
    own, framed_too = ((tmp_path / slug / "index.html").read_text("utf-8") for slug in (SLUG, f"{EMBEDDED}{SLUG}"))
    assert own.replace(" data-veils", MARK, 1) == framed_too


def test_a_site_without_the_choice_has_no_such_page(dist: Path) -> None:
    assert [] == list(dist.glob(f"{EMBEDDED}*"))
    assert "frame-ancestors 'none'" in (dist / "_headers").read_text("utf-8").partition("\n/")[0]


def test_who_may_frame_is_said_page_by_page() -> None:
    text = headers_file(["", SLUG, f"{EMBEDDED}{SLUG}"], "https://learn.example.org")
    rules = dict(re.findall(r"^(/\S*)\n((?:  .*\n)+)", text, re.MULTILINE))
    assert "frame-ancestors" not in rules["/*"]
    assert "frame-ancestors 'none'" in rules[f"/{SLUG}/"]
    assert "frame-ancestors https://learn.example.org" in rules[f"/{EMBEDDED}{SLUG}/"]


@pytest.mark.parametrize("given", ["learn.example.org", "https://learn.example.org/course", "https://a; x", "data:"])
def test_what_is_no_origin_is_refused_in_words(given: str) -> None:
    with pytest.raises(BuildError, match="--embed"):
        framers(given)
