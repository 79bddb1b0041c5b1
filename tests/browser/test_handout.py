"""The handout: one file, opened from the disk with the network off."""

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pypdfium2
import pytest
from browser.asking import SLUG, show_more, wait_until
from browser.classroom import CENTRES, RULERS, place
from browser.instruments import Seen, apart, way
from browser.test_page_access import violations
from making.paths import SITE
from playwright.sync_api import Browser, Page
from witness import Witness

from pycore import api

LIMIT = 380_000  # bytes; the most moves have loads of unequal power factor, whose voltages are drawn first
DESK = {"width": 1280, "height": 800}
PHONE = {"width": 390, "height": 844}
EXAMPLE = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
PROBLEMS = {
    "parallelogram": {}, "set squares": {"parallels": "set-squares"}, "compasses": {"parallels": "compasses"},
    "tip to tail": {"method": "tip-to-tail"}, "components": {"method": "components"},
    "full circle": {"protractor": "360", "order": "23", "a1": "10", "a2": "30", "a3": "0.7 lead"},
    "components, full circle": {"method": "components", "protractor": "360", "a1": "10", "a2": "30", "a3": "0.7 lead"},
}  # fmt: skip


@pytest.fixture(scope="module")
def saved(browser: Browser, site: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file that the button on the page saves."""
    context = browser.new_context(viewport=DESK)
    page, witness = context.new_page(), Witness(site)
    witness.watch(page)
    page.goto(f"{site}{SLUG}/")
    wait_until(page, "document.documentElement.dataset.python === 'ready'", 60.0)
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'", 20.0)
    with page.expect_download() as download:
        show_more(page)
        page.click("[data-action=handout]")
    path = tmp_path_factory.mktemp("handout") / download.value.suggested_filename
    download.value.save_as(path)
    assert "handout" in page.locator("[data-said]").text_content()
    context.close()
    assert [] == witness.faults
    return path


@pytest.fixture
def offline(browser: Browser, saved: Path) -> Iterator[Callable[..., Page]]:
    """`offline(**options)` opens the file from the disk with the network off; any fault fails the test."""
    contexts, witness = [], Witness(saved.as_uri())

    def open_one(**options: object) -> Page:
        context = browser.new_context(offline=True, **{"viewport": DESK, **options})
        contexts.append(context)
        context.on("page", witness.watch)
        page = context.new_page()
        page.goto(saved.as_uri())
        return page

    yield open_one
    for context in contexts:
        context.close()
    assert [] == witness.faults


def shown(page: Page) -> list[str]:
    """The steps in view, by their heading."""
    return [step.locator("h3").text_content() for step in page.locator("[data-player-step]").all() if step.is_visible()]


def make(form: dict[str, str], **more: object) -> bytes:
    """The handout of a form as pycore in CPython makes it of the site's own style and script."""
    style = "\n".join((SITE / "css" / f"{name}.css").read_text("utf-8") for name in ("tokens", "drawing", "print",
                                                                                      "handout"))  # fmt: skip
    script = (SITE / "js" / "handout-player.js").read_text("utf-8")
    asked = {"do": "handout", "page": SLUG, "form": {**EXAMPLE, **form}, "style": style, "script": script, **more}
    reply, data = api.handle(json.dumps(asked))
    assert json.loads(reply)["ok"], reply
    return data


def test_the_file_is_small_and_named(saved: Path) -> None:
    assert "neutral-current-handout.html" == saved.name
    assert saved.stat().st_size < LIMIT


@pytest.mark.parametrize("name", list(PROBLEMS))
def test_every_methods_handout_is_below_380_kilobytes(name: str) -> None:
    """With a QR code on the sheet, and with the lettering inside."""
    data = make(PROBLEMS[name], base="https://www.folio.example/neutral-current/", code=True)
    assert len(data) < LIMIT
    assert 3 == data.count(b"@font-face{")


def test_it_holds_nothing_that_leads_outside(saved: Path) -> None:
    """No address of style, script, picture or font but those inside; its policy allows no other."""
    text = saved.read_text("utf-8")
    without_names = text.replace("http://www.w3.org/2000/svg", "").replace("http://www.w3.org/1998/Math/MathML", "")
    assert [] == re.findall(r"(?:src|href)=\"(?!#)[^\"]*\"", without_names)
    assert set(re.findall(r"url\(\"([^:]*):", without_names)) <= {"data"}
    policy = re.search(r'Content-Security-Policy" content="([^"]*)"', text).group(1).replace("&#39;", "'")
    assert policy.startswith("default-src 'none'")
    assert "unsafe" not in policy and 2 == policy.count("'sha256-")
    assert '<html lang="en-GB">' in text
    assert "<title>Neutral current: 18.4" in text


def test_it_plays_by_buttons_and_keys(offline) -> None:
    page = offline()
    assert [place(1)] == shown(page)
    assert "true" == page.get_attribute('[data-player-do="back"]', "aria-disabled")
    page.click('[data-player-do="next"]')
    assert [place(2)] == shown(page)
    for key, step in (("ArrowRight", 3), ("PageDown", 4), ("ArrowLeft", 3), ("End", 21), ("ArrowRight", 21),
                      ("PageUp", 20), ("Home", 1)):  # fmt: skip
        page.keyboard.press(key)
        assert [place(step)] == shown(page)
    page.keyboard.press("End")
    assert "Finished drawing" in page.locator("[data-player-live]").text_content()
    page.click('[data-player-do="all"]')
    assert 21 == len(shown(page))
    page.click('[data-player-do="all"]')
    assert [place(21)] == shown(page)


def test_its_instruments_are_true(offline) -> None:
    """Written once and referred to, they still lie where each step has them: their places are read as drawn."""
    page = offline()
    for step in range(1, 21):
        assert [place(step)] == shown(page)
        seen = Seen(page)
        used = page.evaluate("""() => {
            const use = document.querySelector('[data-player-step]:not([hidden]) [data-instrument] > use');
            if (!use) return null;
            const svg = use.ownerSVGElement;
            const matrix = svg.getScreenCTM().inverse().multiply(use.getScreenCTM());
            return { key: use.getAttribute("href"), box: use.getBBox().width, a: matrix.a, b: matrix.b,
                     x: matrix.e, y: matrix.f, scale: Math.hypot(matrix.a, matrix.b),
                     numbers: svg.querySelector('[data-name="numbers"] > use')?.getAttribute("href") }; }""")
        if step in CENTRES or step in RULERS:
            assert used["box"] > 100
            spot, turned = complex(used["x"], -used["y"]), way(0, complex(used["a"], -used["b"]))
            if step in RULERS:
                tail, tip = seen.phasor(RULERS[step])
                assert used["key"].startswith("#ruler-") and abs(abs(spot - tail) - 1.15 * used["scale"]) < 0.03
                assert apart(turned, way(tail, tip)) < 0.1
            else:
                centre = seen.start if CENTRES[step] == "O" else seen.phasor(CENTRES[step])[1]
                assert used["key"] == "#protractor-180" and abs(spot - centre) < 0.03
                far = max((complex(x, -y) for line in seen.found["reading"] for x, y in (line[:2], line[2:])),
                          key=lambda end: abs(end - spot))  # fmt: skip
                value = (way(spot, far) - turned) % 360
                counted = value if used["numbers"].startswith("#numbers-180-inner") else 180 - value
                assert abs(counted - seen.amount) < 0.2, step
        page.keyboard.press("ArrowRight")


def test_without_its_script_all_steps_stand_in_order(offline) -> None:
    """Learning platforms strip scripts: nothing but the player goes."""
    page = offline(java_script_enabled=False)
    headings = page.locator("[data-player-step] h3")
    assert [place(step) for step in range(1, 22)] == headings.all_text_contents()
    assert all(step.is_visible() for step in page.locator("[data-player-step]").all())
    assert page.locator("[data-player-bar]").is_hidden()


def test_the_lettering_comes_with_it(offline) -> None:
    page = offline()
    faces = page.evaluate("document.fonts.ready.then((all) => [...all].map((one) => `${one.family} ${one.status}`))")
    assert ['"Phasor Sans" loaded', '"Phasor Sans" loaded', '"Phasor Serif" loaded'] == sorted(
        face if face.startswith('"') else f'"{face.rpartition(" ")[0]}" {face.rpartition(" ")[2]}' for face in faces
    )


@pytest.mark.parametrize("options", [{}, {"viewport": PHONE}, {"color_scheme": "dark"}], ids=["desk", "phone", "dark"])
def test_no_rule_of_accessibility_is_broken(offline, options: dict) -> None:
    page = offline(**options)
    assert [] == violations(page)
    page.keyboard.press("End")
    assert [] == violations(page)
    page.click('[data-player-do="all"]')
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_sheet_prints_true_to_scale(offline, tmp_path: Path) -> None:
    """One page of A4, and the first phasor 92 mm long on it, read from the PDF by another program."""
    page = offline()
    page.pdf(path=tmp_path / "printed.pdf", prefer_css_page_size=True)
    document = pypdfium2.PdfDocument(tmp_path / "printed.pdf")
    assert 1 == len(document)
    width, height = (side / 72 * 25.4 for side in document[0].get_size())
    assert abs(width - 297.0) < 0.2 and abs(height - 210.0) < 0.2
    text = document[0].get_textpage().get_text_range()
    document.close()
    assert "1 cm = 2 A" in text and "Step 1 of 12" not in text
    page.emulate_media(media="print")
    length = page.evaluate("""() => {
        const line = document.querySelector('svg[data-sheet] [data-phasor="i1"] > line').getBoundingClientRect();
        return Math.max(line.width, line.height) / 96 * 25.4; }""")
    assert abs(length - 92.0) < 0.02


def test_what_would_break_out_of_its_element_is_refused() -> None:
    """A style or script that ends its own element makes no file."""
    for style, script in (("a{} </style><script>1</script>", ""), ("", "1</SCRIPT>"), ("", 7)):
        asked = {"do": "handout", "page": SLUG, "form": EXAMPLE, "style": style, "script": script}
        reply, data = api.handle(json.dumps(asked))
        assert (False, None) == (json.loads(reply)["ok"], data)


def test_an_unusable_value_makes_no_handout() -> None:
    asked = {"do": "handout", "page": SLUG, "form": {**EXAMPLE, "i2": "many"}, "style": "", "script": ""}
    reply, data = api.handle(json.dumps(asked))
    assert data is None and "i2" == json.loads(reply)["errors"][0]["field"]
