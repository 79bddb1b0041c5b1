"""After one visit the whole site works without a network; a newer edition comes whole, and takes nothing typed away."""

import json
import math
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.asking import SLUG, neutral, result, wait_until
from browser.kept import FRESH, MADE, OFFLINE, READY, hold, keeping, visit
from making.editions import files_of
from making.serve import MEDIA_TYPES, serving
from playwright.sync_api import Browser, expect
from rooms import Rooms

CACHES = "(await caches.keys()).filter((name) => name.startsWith('phasor-folio-edition'))"
OFFERED = "!document.querySelector('[data-edition-offer]').hidden"


@pytest.fixture
def copy(dist: Path, tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A copy of the site that a test may change, under a sub-path, and its address."""
    folder = tmp_path / "host" / "folio"
    shutil.copytree(dist, folder)
    with serving(tmp_path / "host") as address:
        yield folder, f"{address}folio/"


def pages(dist: Path) -> list[str]:
    """The address of every page, relative to the site."""
    return [name for name in files_of(dist) if name == "" or name.endswith("/")]


def make_newer(folder: Path, word: str = "Newer") -> None:
    """Change one page and the edition's list, as a new build would."""
    page = folder / SLUG / "index.html"
    page.write_text(page.read_text("utf-8").replace("<h1>", f"<h1>{word} "), encoding="utf-8")
    worker = folder / "service-worker.js"
    head, source = worker.read_text("utf-8").split(";\n", 1)
    edition = json.loads(head.removeprefix("const EDITION = "))
    edition |= {"name": f"{word}-edition", "files": files_of(folder)}
    worker.write_text(f"const EDITION = {json.dumps(edition)};\n{source}", encoding="utf-8")


def test_every_page_works_without_a_network_after_one_visit(rooms: Rooms, site: str, dist: Path) -> None:
    with keeping(rooms.browser, site) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        hold(context, site, page)
        context.set_offline(True)
        for name in pages(dist):
            page.goto(site + name)
            assert page.locator("h1").count() >= 1, name
            if "idle" == page.get_attribute("html", "data-python"):
                page.focus("[name=i1]")
            if page.evaluate("'python' in document.documentElement.dataset"):
                wait_until(page, READY, 60)
        page.goto(f"{site}{SLUG}/#v=1&i1=31.5&i2=7.25&i3=12.5")
        wait_until(page, f"{READY} && {FRESH}", 60)
        assert math.isclose(neutral(31.5, 7.25, 12.5), result(page), rel_tol=1e-11)


def test_the_pdf_and_its_late_part_come_without_a_network(browser: Browser, site: str) -> None:
    """The code's encoder is fetched only when wanted: it must be on the device by then."""
    with keeping(browser, site) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        context.set_offline(True)
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 60)
        wait_until(page, "!!document.querySelector('svg[data-sheet] [data-name=code], svg[data-sheet]')", 20)
        with page.expect_download() as waiting:
            page.click("[data-action=pdf]")
        assert b"%PDF-1.7" == Path(waiting.value.path()).read_bytes()[:8]


def test_the_list_names_every_file_that_a_page_can_ask_for(dist: Path) -> None:
    """Generated: what is in the site is in the list, but what hosts use, the worker itself, and letters and the
    reader of QR codes, which are kept once they were needed."""
    head = (dist / "service-worker.js").read_text("utf-8").split(";\n", 1)[0]
    listed = json.loads(head.removeprefix("const EDITION = "))["files"]
    there = {path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file()}
    wanted = {re.sub(r"(^|/)index\.html$", r"\1", name) for name in there}
    rest = {name for name in wanted - set(listed) if not name.startswith(("letters/", "codes/"))}
    assert {"_headers", "404.html", "service-worker.js", "bom.json"} == rest
    assert set() == set(listed) - wanted


def test_a_newer_edition_is_offered_and_takes_nothing_typed_away(browser: Browser, copy: tuple[Path, str]) -> None:
    folder, address = copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}{SLUG}/", whole=True)
        page.fill("[name=i1]", "31.5")
        wait_until(page, FRESH)
        make_newer(folder)
        page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => {})")
        wait_until(page, OFFERED, 30)
        assert "Newer" not in page.inner_text("h1")
        page.fill("[name=i2]", "not a number")
        page.click("[data-edition-offer] button")
        expect(page.locator("h1")).to_contain_text("Newer", timeout=30_000)
        wait_until(page, READY, 60)
        wait_until(page, "document.querySelector('[name=i2]').getAttribute('aria-invalid') === 'true'", 20)
        assert ["31.5", "not a number"] == [page.input_value(f"[name={name}]") for name in ("i1", "i2")]
        expect(page.locator("[data-edition-offer]")).to_be_hidden()
        page.reload()
        wait_until(page, READY, 60)
        wait_until(page, f"(async () => {CACHES}.length === 1)()")


def test_the_older_edition_stays_until_the_newer_is_taken(browser: Browser, copy: tuple[Path, str]) -> None:
    """Another window goes on with its own edition, and no window is loaded anew by itself."""
    folder, address = copy
    with keeping(browser, address) as context:
        page = visit(context, f"{address}{SLUG}/", whole=True)
        other = visit(context, f"{address}{SLUG}/")
        other.evaluate("window.mark = 1")
        make_newer(folder)
        page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => {})")
        wait_until(page, OFFERED, 30)
        page.click("[data-edition-offer] button")
        expect(page.locator("h1")).to_contain_text("Newer", timeout=30_000)
        other.fill("[name=i1]", "12")
        wait_until(other, FRESH)
        assert 1 == other.evaluate("window.mark")
        assert math.isclose(neutral(12, 11.2, 24.6), result(other), rel_tol=1e-11)
        wait_until(other, OFFERED, 10)


def test_an_edition_that_is_not_whole_is_not_taken(browser: Browser, copy: tuple[Path, str]) -> None:
    """A host half way through an upload gives some files of one and some of another: the older edition stays."""
    folder, address = copy
    with keeping(browser, address, faults=True) as context:
        page = visit(context, f"{address}{SLUG}/", whole=True)
        make_newer(folder)
        page_file = folder / SLUG / "index.html"
        page_file.write_text(page_file.read_text("utf-8")[:-2000], encoding="utf-8")
        page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found.update()).catch(() => {})")
        wait_until(page, "navigator.serviceWorker.getRegistration().then((found) => !found.installing)", 30)
        page.wait_for_timeout(500)
        assert page.locator("[data-edition-offer]").is_hidden()
        page.reload()
        wait_until(page, READY, 60)
        assert "Newer" not in page.inner_text("h1")


def test_a_broken_cache_heals(browser: Browser, site: str) -> None:
    """One file gone, the WebAssembly cut short: the page starts all the same, and the device holds them again."""
    with keeping(browser, site, faults=True) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        broken = page.evaluate(f"""(async () => {{
          const cache = await caches.open({CACHES}[0]);
          const keys = await cache.keys();
          const wasm = keys.find((one) => one.url.endsWith("asm.wasm"));
          const bytes = await (await cache.match(wasm)).arrayBuffer();
          const headers = {{ "content-type": "application/wasm" }};
          await cache.put(wasm, new Response(bytes.slice(0, bytes.byteLength / 2), {{ headers }}));
          await cache.delete(keys.find((one) => one.url.endsWith("library.zip")));
          return bytes.byteLength;
        }})()""")
        page.reload()
        wait_until(page, READY, 90)
        healed = page.evaluate(f"""(async () => {{
          const cache = await caches.open({CACHES}[0]);
          const keys = await cache.keys();
          const wasm = await cache.match(keys.find((one) => one.url.endsWith("asm.wasm")));
          return [(await wasm.arrayBuffer()).byteLength, keys.some((one) => one.url.endsWith("library.zip"))];
        }})()""")
        assert [broken, True] == healed


def test_the_worker_is_bound_where_the_host_sends_no_headers(browser: Browser, dist: Path, tmp_path: Path) -> None:
    """The service worker adds the policy that alone binds Python's thread; WebAssembly of no known type still runs."""
    import http.server
    import threading
    from functools import partial

    class Bare(http.server.SimpleHTTPRequestHandler):
        def guess_type(self, path: str) -> str:
            return "text/plain" if path.endswith(".wasm") else MEDIA_TYPES.get(Path(path).suffix, "text/plain")

        def log_message(self, *_arguments: object) -> None:
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), partial(Bare, directory=str(dist)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    address = f"http://127.0.0.1:{server.server_port}/"
    try:
        with keeping(browser, address, faults=True) as context:
            page = visit(context, f"{address}{SLUG}/", whole=True)
            page.reload()
            wait_until(page, READY, 60)
            broken = page.workers[0].evaluate("""() => new Promise((resolve) => {
                addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
                fetch("http://127.0.0.1:9/elsewhere").catch(() => setTimeout(() => resolve("fetched"), 1000));
            })""")
            assert "connect-src" == broken
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def test_a_kept_memory_starts_the_next_visit_and_a_bad_one_is_thrown_away(browser: Browser, site: str) -> None:
    """Restored, Python answers, and imports what was never in the memory; damaged or foreign, a plain start follows."""
    kept = "(await caches.keys()).find((name) => name.startsWith('phasor-folio-memory'))"
    restored = "document.documentElement.dataset.restored"
    with keeping(browser, site) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        wait_until(page, MADE, 60)
        for damage in ("", "damaged", "short", "foreign"):
            if damage:
                page.evaluate(f"""async (damage) => {{
                  const cache = await caches.open({kept});
                  const [key] = await cache.keys();
                  const found = await cache.match(key);
                  const bytes = new Uint8Array(await found.arrayBuffer());
                  if (damage === "damaged") bytes[2_000_000] ^= 255;
                  const words = new Uint32Array(bytes.buffer);
                  let sum = words.length | 0;
                  if (damage === "short") words[0] = 1;
                  if (damage === "foreign") words[2 + words[1]] = 1;
                  for (const word of words) sum = (Math.imul(sum, 31) + word) | 0;
                  const checksum = damage === "damaged" ? found.headers.get("x-checksum") : String(sum);
                  await cache.put(key, new Response(bytes, {{ headers: {{ "x-checksum": checksum }} }}));
                }}""", damage)
            page.reload()
            wait_until(page, READY, 60)
            assert ("false" if damage else "true") == page.evaluate(restored), damage
            page.fill("[name=i1]", "31.5")
            wait_until(page, FRESH)
            assert math.isclose(neutral(31.5, 11.2, 24.6), result(page), rel_tol=1e-11)
            with page.expect_download() as waiting:
                page.click("[data-action=pdf]")
            assert b"%PDF-1.7" == Path(waiting.value.path()).read_bytes()[:8]
            if damage in ("damaged", "short"):
                wait_until(page, MADE, 60)


def test_no_loop_of_editions(browser: Browser, site: str) -> None:
    """The same edition looked for again and again is installed once and offered never."""
    with keeping(browser, site) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        for _look in range(3):
            page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => {})")
            page.reload()
            wait_until(page, OFFLINE, 60)
        assert page.evaluate("navigator.serviceWorker.getRegistration().then((one) => !one.waiting && !one.installing)")
        assert page.locator("[data-edition-offer]").is_hidden()
