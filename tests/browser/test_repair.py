"""What is kept on a device and was damaged since is found and fetched anew; only what is whole is called so."""

import pytest
from browser.asking import SLUG, wait_until
from browser.kept import FRESH, OFFLINE, READY, keeping, visit
from browser.test_offline import CACHES
from playwright.sync_api import Browser, Page

from pycore.words import furniture

PARTLY = "document.documentElement.dataset.offline === 'partly'"
SAID = "document.querySelector('[data-stored-line] span').textContent"
SPOIL = f"""async ([ending, how]) => {{
  const cache = await caches.open({CACHES}[0]);
  const key = (await cache.keys()).find((one) => one.url.endsWith(ending));
  if (how === "gone") return cache.delete(key);
  const found = await cache.match(key);
  const bytes = new Uint8Array(await found.arrayBuffer());
  const headers = found.headers;
  if (how === "cut") return cache.put(key, new Response(bytes.slice(0, bytes.length / 2), {{ headers }}));
  bytes[bytes.length >> 1] ^= 1;
  return cache.put(key, new Response(bytes, {{ headers }}));
}}"""
DAMAGED = f"""async () => {{
  const script = await (await fetch(document.documentElement.dataset.edition, {{ cache: "no-store" }})).text();
  const edition = JSON.parse(script.slice(script.indexOf("{{"), script.indexOf(";\\n")));
  const root = new URL("./", new URL(document.documentElement.dataset.edition, location)).href;
  const cache = await caches.open({CACHES}[0]);
  const bad = [];
  for (const [path, wanted] of Object.entries(edition.files)) {{
    const found = await cache.match(root + path);
    const digest = found && new Uint8Array(await crypto.subtle.digest("SHA-256", await found.arrayBuffer()));
    const name = digest && [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    if (name !== wanted) bad.push(path);
  }}
  return bad;
}}"""
FILES = ("js/sheet.js", "css/sheet.css", f"{SLUG}/", "pyodide.asm.wasm", "library.zip", "later.zip", "practice/")


def spoil(page: Page, ending: str, how: str) -> None:
    page.evaluate(SPOIL, [ending, how])


@pytest.mark.parametrize("how", ["gone", "cut", "one bit"])
def test_the_kept_site_mends_itself(browser: Browser, site: str, how: str) -> None:
    """Files of every kind, those of the open page and those of others: the page starts, and soon all are whole."""
    with keeping(browser, site, faults=True) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        assert [] == page.evaluate(DAMAGED)
        for ending in FILES:
            spoil(page, ending, how)
        assert len(FILES) == len(page.evaluate(DAMAGED))
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 90)
        wait_until(page, OFFLINE, 60)
        assert [] == page.evaluate(DAMAGED)
        assert furniture.STORED == page.evaluate(SAID)


def test_without_a_network_what_is_damaged_is_not_called_kept(browser: Browser, site: str) -> None:
    with keeping(browser, site, faults=True) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        spoil(page, "practice/", "one bit")
        context.set_offline(True)
        page.reload()
        wait_until(page, f"{READY} && {FRESH}", 60)
        wait_until(page, PARTLY, 30)
        assert furniture.PARTLY_STORED == page.evaluate(SAID)
        context.set_offline(False)
        page.reload()
        wait_until(page, OFFLINE, 60)
        assert [] == page.evaluate(DAMAGED)


def test_what_was_removed_meanwhile_is_not_brought_back(browser: Browser, site: str) -> None:
    with keeping(browser, site, faults=True) as context:
        page = visit(context, f"{site}{SLUG}/", whole=True)
        whole = page.evaluate("""async () => {
          const { port1, port2 } = new MessageChannel();
          const told = new Promise((tell) => (port1.onmessage = ({ data }) => tell(data)));
          navigator.serviceWorker.controller.postMessage("is it whole?", [port2]);
          for (const name of await caches.keys()) if (name.includes("edition")) await caches.delete(name);
          return told;
        }""")
        assert whole is False
        assert 0 == page.evaluate(f"(async () => {CACHES}.length)()")
