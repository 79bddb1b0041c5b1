"""The contracts of every page in other engines than Chromium: Firefox and WebKitGTK.

A missing one fails where CI is set, and is a listed omission elsewhere; on Debian as root both are installed.
"""

import math
import re
from collections.abc import Iterator
from urllib.parse import quote, urlencode
from xml.etree import ElementTree

import pytest
from browser.asking import SLUG, neutral
from browser.engines import Engine, opened
from browser.kept import FRESH, READY
from calculators.asking import OUTPUT
from host import shelf
from host.seeded import SeededChoices
from playwright.sync_api import Playwright

from pycore.calculators.registry import CALCULATORS
from pycore.words import this_device as words

PAGES = list(CALCULATORS)
OUTPUTS = """Object.fromEntries([...document.querySelectorAll("output[name][data-value]")]
  .map((output) => [output.name, output.dataset.value]))"""
COLD = "document.documentElement.dataset.cold ?? ''"
"""The function for whose sake Python's cold module was fetched, which no page needs."""

SVG = "{http://www.w3.org/2000/svg}"
ARROWS = """[...document.querySelectorAll("svg[data-sheet] g[data-phasor] > line")].map((line) => {
  const at = (key) => Number(line.getAttribute(key));
  const from = new DOMPoint(at("x1"), at("y1")).matrixTransform(line.getScreenCTM());
  const to = new DOMPoint(at("x2"), at("y2")).matrixTransform(line.getScreenCTM());
  const seen = line.ownerSVGElement.getBoundingClientRect();
  return [line.parentElement.dataset.phasor, Math.hypot(to.x - from.x, to.y - from.y) / seen.width];
})"""


# The fallback is the machine's own face in our measure: a machine without that face has none.
LETTERED = """[...document.fonts].filter(({ family }) => !family.includes("Fallback"))
  .every(({ status }) => status === "loaded" || status === "unloaded")
  && [...document.fonts].some(({ family, status }) => family.includes("STIX") && status === "loaded")"""


@pytest.fixture(scope="module", params=["Firefox", "WebKitGTK"])
def engine(request, playwright: Playwright, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """A window of each engine in turn."""
    with opened(request.param, playwright, tmp_path_factory.mktemp("home")) as engine:
        yield engine


def expected(slug: str, form: dict[str, str]) -> tuple[dict[str, str], list[tuple[str, float]]]:
    """Every output of a form by pycore here, and every arrow of its sheet: its phasor, its length in sheet widths."""
    reply, _ = shelf.ask(slug, form)
    assert reply["ok"], reply["announce"]
    regions = reply["regions"]
    svg = ElementTree.fromstring(re.search(r"<svg.*?</svg>", regions["sheet"], re.DOTALL)[0])
    width = float(svg.get("viewBox").split()[2])
    arrows = []
    for group in svg.iter(f"{SVG}g"):
        for line in group.findall(f"{SVG}line") if group.get("data-phasor") else ():
            x1, y1, x2, y2 = (float(line.get(key)) for key in ("x1", "y1", "x2", "y2"))
            arrows.append((group.get("data-phasor"), math.hypot(x2 - x1, y2 - y1) / width))
    return dict(OUTPUT.findall(regions["answer"] + regions["results"])), arrows


@pytest.mark.parametrize("slug", PAGES)
def test_a_page_keeps_its_contracts(engine: Engine, site: str, slug: str) -> None:
    """A link opens its problem; every output and arrow is right; a bad value is named, and the answer
    stays; the lesson view goes on by steps.
    """
    form = shelf.forms_of(slug).values(SeededChoices(8), 8)
    outputs, arrows = expected(slug, form)
    engine.go(f"{site}{slug}/#v=3&{urlencode(form, quote_via=quote)}")
    engine.wait(f"{READY} && {FRESH}")
    assert outputs == engine.value(OUTPUTS)
    engine.run("for (const folded of document.querySelectorAll('details')) folded.open = true;")
    seen = engine.value(ARROWS)
    assert arrows and [name for name, _ in arrows] == [name for name, _ in seen]
    for (name, wanted), (_, found) in zip(arrows, seen, strict=True):
        assert math.isclose(wanted, found, abs_tol=0.001), (name, wanted, found)
    engine.wait(LETTERED, 30)
    _bad_value(engine, outputs)
    _classroom(engine)
    assert [] == engine.faults()
    assert not engine.value(COLD)


def _bad_value(engine: Engine, outputs: dict[str, str]) -> None:
    """Words where a number belongs: said at the field, nothing lost, and mended by the number."""
    texts = "[...document.querySelectorAll('form input[name][type=text]')]"
    name = engine.value(f"{texts}.find((field) => field.offsetParent).name")
    before = engine.value(f"document.querySelector('[name={name}]').value")
    engine.type(name, "twelve or so")
    engine.wait("document.documentElement.dataset.answer === 'old'", 20)
    assert "true" == engine.value(f"document.querySelector('[name={name}]').getAttribute('aria-invalid')")
    assert "twelve or so" in engine.value(f"document.querySelector('[data-message-for={name}]').textContent")
    assert outputs == engine.value(OUTPUTS)
    engine.type(name, before)
    engine.wait(FRESH, 20)
    assert outputs == engine.value(OUTPUTS)


def _classroom(engine: Engine) -> None:
    """The lesson view opens large, goes through its first steps and closes."""
    engine.run("document.querySelector('[data-action=lesson]').click();")
    engine.wait("document.querySelector('.lesson-step')?.dataset.frame === '1'", 30)
    assert engine.value("document.querySelector('.lesson-figure svg').getBoundingClientRect().height") > 200
    for step in (2, 3):
        engine.run("document.querySelector('[data-lesson-do=next]').click();")
        engine.wait(f"document.querySelector('.lesson-step')?.dataset.frame === '{step}'", 20)


def test_what_is_typed_is_answered(engine: Engine, site: str) -> None:
    engine.go(f"{site}{SLUG}/")
    engine.wait(f"{READY} && {FRESH}")
    engine.type("i1", "31.5")
    engine.type("i2", "7,25 A")
    engine.wait(f"{FRESH} && location.hash.includes('7')", 20)
    found = engine.value("document.querySelector('output[name=neutral-current]').dataset.value")
    assert math.isclose(neutral(31.5, 7.25, 24.6), float(found), rel_tol=1e-11)
    assert [] == engine.faults()


def test_the_site_is_kept_and_its_memory_restored(engine: Engine, site: str) -> None:
    engine.go(f"{site}{SLUG}/")
    engine.wait(f"{READY} && document.documentElement.dataset.offline === 'ready'")
    kept = "document.documentElement.dataset.restored === 'true'"
    engine.wait(f"Number(document.documentElement.dataset.memoryMade) > 0 || {kept}")
    engine.load(f"{site}{SLUG}/")
    engine.wait(f"{READY} && {kept}")
    assert engine.value("Boolean(navigator.serviceWorker.controller)")


def test_a_new_learner_has_a_record_apart_and_all_is_listed_and_erased(engine: Engine, site: str) -> None:
    engine.go(f"{site}{words.SLUG}/")
    engine.run("localStorage.setItem('phasor-folio-class', '{\"version\":1,\"roll\":\"Amber\"}');"
               "dispatchEvent(new StorageEvent('storage', { key: 'phasor-folio-class' }));")  # fmt: skip
    assert [words.THINGS["roll"][0]] == engine.value("[...document.querySelectorAll('[data-kept-rows] h3')]"
                                                     ".map((one) => one.textContent)")  # fmt: skip
    engine.run("document.querySelector('#new-learner').value = '7B 12';"
               "document.querySelector('[data-new-learner] button').click();")  # fmt: skip
    assert words.IN_USE.format(who="7B 12") == engine.value("document.querySelector('[data-in-use]').textContent")
    engine.go(f"{site}practice/")
    engine.wait(f"{READY} && localStorage.getItem('phasor-folio-practice@7B 12') !== null")
    assert engine.value("localStorage.getItem('phasor-folio-practice') === null")
    engine.go(f"{site}{words.SLUG}/")
    engine.wait("!document.querySelector('[data-device-do=erase-all]').disabled")
    engine.run("document.querySelector('[data-device-do=erase-all]').click();")
    engine.wait("Object.keys(localStorage).every((key) => !key.startsWith('phasor-folio'))", 10)
    assert [] == engine.faults()


def test_a_pdf_is_made(engine: Engine, site: str) -> None:
    """What is saved is caught as the page makes it: the drivers do not all give downloads."""
    engine.go(f"{site}{SLUG}/")
    engine.wait(f"{READY} && {FRESH}")
    engine.run("""const plain = URL.createObjectURL;
      URL.createObjectURL = (blob) => { window.saved = blob; return plain.call(URL, blob); };
      document.querySelector('[data-action=pdf]').click();""")
    engine.wait("window.saved")
    engine.run("window.saved.slice(0, 5).text().then((text) => { window.start = text; });")
    engine.wait("window.start")
    assert ["%PDF-", "application/pdf"] == [engine.value("window.start"), engine.value("window.saved.type")]
    assert engine.value("window.saved.size") > 10_000
    assert not engine.value(COLD)
