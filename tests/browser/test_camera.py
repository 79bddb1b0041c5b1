"""The camera's window: a frame that says what is seen, sheets that are taken once, a camera that goes off."""

import base64
import io
import json
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.asking import DESK, PHONE, wait_until
from browser.photo_panel import picture
from browser.test_page_access import violations
from browser.test_pile import PATIENCE, READ, row
from browser.test_reflow import FLAT, LARGE_TEXT
from making.programs import CHROMIUM_OPTIONS
from PIL import Image
from piled import jpeg, learners, sheet, without_code
from playwright.sync_api import Browser, Page, Playwright, expect
from rooms import UNIMPROVED
from witness import Witness

from pycore.words import camera as words

LYING = {"width": 844, "height": 390}
WALL = {"width": 1920, "height": 1080}
SIZE = (1600, 1200)
NOTED = """
const own = navigator.mediaDevices?.getUserMedia.bind(navigator.mediaDevices);
window.asked = [];
window.tracks = [];
if (own) navigator.mediaDevices.getUserMedia = async (wanted) => {
  window.asked.push(wanted);
  const stream = await (window.scene ?? own)(wanted);
  window.tracks.push(...stream.getTracks());
  return stream;
};
"""
"""Notes what is asked of the browser, and what it gave."""
SCENE = """
window.shown = null;
window.scene = async () => {
  const canvas = Object.assign(document.createElement("canvas"), { width: 1600, height: 1200 });
  const pen = canvas.getContext("2d");
  setInterval(() => {
    pen.fillStyle = "#705842";
    pen.fillRect(0, 0, 1600, 1200);
    if (window.shown) pen.drawImage(window.shown, 0, 0);
  }, 100);
  return canvas.captureStream(10);
};
"""
"""A camera before which the test lays what it wants."""
LAY = """async (address) => {
  const shown = address ? Object.assign(new Image(), { src: address }) : null;
  await shown?.decode();
  window.shown = shown;
}"""
FRAME = """() => {
  const { borderTopColor, borderTopStyle } = getComputedStyle(document.querySelector(".camera-picture"));
  const sign = getComputedStyle(document.querySelector(".camera-sign"), "::before").content;
  const accent = getComputedStyle(document.querySelector(".camera-take")).backgroundColor;
  return [borderTopColor === accent, borderTopStyle, sign !== "none"];
}"""
"""Whether the frame is green, its kind, whether there is a tick."""
GREEN, PLAIN, DASHED = [True, "solid", True], [False, "solid", False], [False, "dashed", False]
ON = "window.tracks.at(-1)?.readyState === 'live'"
OFF = "window.tracks.length && window.tracks.every(({ readyState }) => readyState === 'ended')"
Lay = Callable[[Image.Image | None], None]


@pytest.fixture(scope="module")
def own() -> list[Image.Image]:
    """Photographs of the sheets of two learners."""
    return [sheet(learner, number).picture.resize(SIZE) for number, learner in enumerate(learners(0, 2), 1)]


Launch = Callable[[str], Browser]


@pytest.fixture
def launch(playwright: Playwright, chromium_path: Path, tmp_path: Path, own: list[Image.Image]) -> Iterator[Launch]:
    """`launch("")` starts a Chromium whose camera sees the first sheet; with "=deny" no page may use it."""
    data = io.BytesIO()
    own[0].save(data, "JPEG", quality=88, subsampling=2)
    seen = tmp_path / "camera.mjpeg"
    seen.write_bytes(data.getvalue())
    started: list[Browser] = []

    def start(answer: str) -> Browser:
        options = [*CHROMIUM_OPTIONS, UNIMPROVED, "--use-fake-device-for-media-stream",
                   f"--use-file-for-fake-video-capture={seen}", f"--use-fake-ui-for-media-stream{answer}"]  # fmt: skip
        started.append(playwright.chromium.launch(executable_path=str(chromium_path), args=options))
        return started[-1]

    yield start
    for chromium in started:
        chromium.close()


def opened(page: Page, site: str, ready: Callable[[Page], None], *, by_itself: bool = True) -> Page:
    """Open the camera's window."""
    page.goto(f"{site}photographs/")
    ready(page)
    assert page.evaluate("window.asked.length") == 0, "nobody has asked for the camera"
    if not by_itself:
        page.evaluate("document.querySelector('[data-camera-by-itself]').checked = false")
    page.click('[data-do="camera"]')
    return page


@pytest.fixture
def before_camera(open_page: Callable[..., Page], site: str, ready) -> Callable[..., Page]:
    """`before_camera(viewport=...)` opens the window before a camera that shows what is laid there."""

    def before(*, by_itself: bool = True, **options: object) -> Page:
        page = open_page(**{"viewport": PHONE, **options})
        page.add_init_script(SCENE + NOTED)
        return opened(page, site, ready, by_itself=by_itself)

    return before


def lay(page: Page, shown: Image.Image | None) -> None:
    """Lay a sheet before the camera, or nothing."""
    address = shown and f"data:image/jpeg;base64,{base64.b64encode(jpeg(shown)).decode()}"
    page.evaluate(LAY, address)


def wait_for_state(page: Page, state: str, seconds: float = 40.0) -> None:
    wait_until(page, f"document.querySelector('[data-camera]').dataset.state === '{state}'", seconds)


def rows(page: Page) -> int:
    return page.evaluate("document.querySelectorAll('tr[data-kind]').length")


def test_a_sheet_before_the_devices_camera_is_taken_once_and_the_camera_goes_off(launch: Launch, site: str, ready):
    witness = Witness(site)
    page = launch("").new_page(viewport=PHONE, service_workers="block")
    witness.watch(page)
    page.add_init_script(NOTED)
    opened(page, site, ready, by_itself=False)
    wait_for_state(page, "ready")
    assert GREEN == page.evaluate(FRAME)
    expect(page.locator("[data-camera-said]")).to_have_text("The whole sheet is seen. Hold still.")
    (asked,) = page.evaluate("window.asked")
    assert asked["audio"] is False and asked["video"]["facingMode"] == {"ideal": "environment"}
    page.wait_for_timeout(2500)
    assert 0 == rows(page), "nobody has pressed"
    page.keyboard.press("Enter")  # the large button is in focus
    wait_for_state(page, "taken")
    page.check("[data-camera-by-itself]")
    expect(page.locator("[data-camera-count]")).to_have_text("1 taken, 1 read", timeout=PATIENCE * 1000)
    page.wait_for_timeout(2500)
    assert 1 == rows(page), "the same sheet is taken once"
    page.click('[data-camera-do="close"]')
    wait_until(page, OFF)
    assert page.evaluate("document.querySelector('video').srcObject === null")
    assert "Learner 1" in row(page, 1) and "camera-1.jpg" in page.evaluate("localStorage['phasor-folio-pile']")
    # Back, too, gives it up. The sheet is known to be in the pile.
    page.click('[data-do="camera"]')
    wait_for_state(page, "known")
    page.wait_for_timeout(2500)
    assert 1 == rows(page)
    page.go_back()
    wait_until(page, OFF)
    assert [] == witness.faults
    # No other page gets it, though this browser's visitor agrees to all.
    page.goto(f"{site}neutral-current/")
    refused = "navigator.mediaDevices.getUserMedia({ video: true }).then(() => '', ({ name }) => name)"
    assert "NotAllowedError" == page.evaluate(refused)


def test_the_frame_is_green_for_a_whole_sheet_alone(before_camera: Callable[..., Page], own: list[Image.Image]):
    page = before_camera(by_itself=True)
    wait_for_state(page, "none")
    assert PLAIN == page.evaluate(FRAME)
    (learner,) = learners(0, 1)
    bare = Image.open(io.BytesIO(without_code(sheet(learner, 1), learner))).resize(SIZE)
    lay(page, bare)
    wait_for_state(page, "marks")
    assert DASHED == page.evaluate(FRAME)
    shot = sheet(learner, 1)
    cut = shot.picture.copy()
    u, v = shot.camera.seen(*shot.marks[0])
    cut.paste((112, 88, 66), (int(u) - 60, int(v) - 60, int(u) + 60, int(v) + 60))
    lay(page, cut.resize(SIZE))
    wait_for_state(page, "code")
    assert DASHED == page.evaluate(FRAME)
    page.wait_for_timeout(2500)
    assert 0 == rows(page)
    lay(page, own[0])
    wait_for_state(page, "taken")
    assert GREEN == page.evaluate(FRAME)


def test_two_sheets_one_after_another_are_two_rows_and_one_that_comes_back_is_none(
    before_camera: Callable[..., Page], own: list[Image.Image],
):  # fmt: skip
    page = before_camera()
    for number, shown in enumerate(own, start=1):
        lay(page, shown)
        wait_until(page, f"document.querySelectorAll('tr[data-kind]').length === {number}", PATIENCE)
    wait_for_state(page, "taken")
    lay(page, None)
    wait_for_state(page, "none")
    lay(page, own[0])
    wait_for_state(page, "known")
    expect(page.locator("[data-camera-said]")).to_have_text("This sheet is in the pile already.")
    expect(page.locator("[data-camera-count]")).to_have_text("2 taken, 2 read", timeout=PATIENCE * 1000)
    picture(page, "camera-known")
    page.keyboard.press("Escape")
    wait_until(page, OFF)
    wait_until(page, READ.format(count=2), PATIENCE)
    assert "Learner 1" in row(page, 1) and "Learner 2" in row(page, 2)


def test_the_camera_is_off_while_the_page_is_hidden(before_camera: Callable[..., Page]):
    page = before_camera()
    wait_until(page, ON)
    for hidden, wanted in ((True, OFF), (False, ON), (True, OFF)):
        page.evaluate("""(hidden) => {
            Object.defineProperty(document, "hidden", { configurable: true, get: () => hidden });
            document.dispatchEvent(new Event("visibilitychange"));
        }""", hidden)  # fmt: skip
        wait_until(page, wanted)
    # A window that was closed meanwhile asks for no camera.
    page.click('[data-camera-do="close"]')
    asked = page.evaluate("window.asked.length")
    page.evaluate("delete document.hidden")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    page.wait_for_timeout(300)
    assert asked == page.evaluate("window.asked.length")


def test_a_camera_that_comes_after_the_window_was_closed_goes_off_at_once(open_page, site: str, ready):
    page = open_page(viewport=PHONE)
    page.add_init_script(SCENE + """
        const quick = window.scene;
        window.scene = () => new Promise((resolve) => setTimeout(() => resolve(quick()), 1500));
    """ + NOTED)  # fmt: skip
    opened(page, site, ready)
    page.click('[data-camera-do="close"]')
    wait_until(page, OFF)


def test_a_camera_that_stops_is_said(before_camera: Callable[..., Page]):
    page = before_camera()
    wait_until(page, ON)
    page.evaluate("window.tracks.at(-1).dispatchEvent(new Event('ended'))")
    wait_for_state(page, "ended")
    wait_until(page, OFF)
    expect(page.locator("[data-camera-said]")).to_contain_text("The camera has stopped")


@pytest.mark.parametrize(("state", "script"), [
    ("refused", ""),
    ("missing", "window.scene = () => Promise.reject(new DOMException('none', 'NotFoundError'));"),
    ("busy", "window.scene = () => Promise.reject(new DOMException('in use', 'NotReadableError'));"),
    ("lacking", "Object.defineProperty(navigator, 'mediaDevices', { value: undefined });"),
])  # fmt: skip
def test_without_a_live_picture_the_camera_app_is_the_way(
    launch: Launch, site: str, ready, own: list[Image.Image], state: str, script: str,
):  # fmt: skip
    page = launch("=deny").new_page(viewport=PHONE, service_workers="block")
    page.add_init_script(script + NOTED)
    opened(page, site, ready)
    wait_for_state(page, state)
    expect(page.locator('[data-camera-do="take"]')).to_be_hidden()
    expect(page.locator("label[for=pile-take]")).to_be_visible()
    picture(page, f"camera-{state}")
    assert "pile-take" == page.evaluate("document.activeElement.id")
    assert [] == violations(page)
    page.set_input_files("#pile-take", [{"name": "a.jpg", "mimeType": "image/jpeg", "buffer": jpeg(own[0])}])
    expect(page.locator("[data-camera-count]")).to_have_text("1 taken, 1 read", timeout=PATIENCE * 1000)


def test_where_the_picture_cannot_be_watched_the_button_takes_and_what_is_not_read_is_counted(
    launch: Launch, site: str, ready,
):  # fmt: skip
    page = launch("").new_page(viewport=PHONE, service_workers="block")
    page.add_init_script(NOTED)
    page.route("**/codes.js", lambda route: route.abort())
    opened(page, site, ready)
    wait_for_state(page, "blind")
    assert 0 == rows(page)
    page.click('[data-camera-do="take"]')
    expect(page.locator("[data-camera-count]")).to_have_text("1 taken, 0 read, 1 not read", timeout=PATIENCE * 1000)
    page.unroute("**/codes.js")
    # Nobody knows whether it is the sheet that was not read: it is taken.
    expect(page.locator("[data-camera-count]")).to_have_text("2 taken, 1 read, 1 not read", timeout=PATIENCE * 1000)
    wait_for_state(page, "taken")


@pytest.mark.parametrize(("screen", "scheme"), [(PHONE, "light"), (LYING, "dark"), (DESK, "dark"), (WALL, "light")])
def test_the_window_has_room_for_picture_and_button(
    before_camera: Callable[..., Page], own: list[Image.Image], screen: dict[str, int], scheme: str,
):  # fmt: skip
    page = before_camera(viewport=screen, color_scheme=scheme, reduced_motion="reduce", by_itself=False)
    lay(page, own[0])
    wait_for_state(page, "ready")
    picture(page, f"camera-{screen['width']}")
    assert [] == violations(page)
    for part in (".camera-picture", '[data-camera-do="take"]', "[data-camera-said]"):
        box = page.locator(part).bounding_box()
        assert box and 0 <= box["y"] and box["y"] + box["height"] <= screen["height"], part
    assert page.locator(".camera-picture").bounding_box()["height"] > 0.4 * screen["height"]
    # Whatever is said, the button stays under the finger.
    tops = page.evaluate("""(names) => names.map((name) => {
        const window = document.querySelector("[data-camera]");
        window.querySelector("[data-camera-said]").textContent = window.dataset[name];
        return window.querySelector(".camera-take").getBoundingClientRect().top;
    })""", [name for name in words.SEEN if name not in ("blind", "full")])  # fmt: skip
    assert 1 == len(set(tops)), tops


def test_the_window_can_be_read_where_letters_are_twice_as_large(
    playwright: Playwright, chromium_path: Path, site: str, ready,
):  # fmt: skip
    options = [*CHROMIUM_OPTIONS, UNIMPROVED, LARGE_TEXT]
    large = playwright.chromium.launch(executable_path=str(chromium_path), args=options)
    page = large.new_page(viewport={"width": 320, "height": 640})
    page.add_init_script(SCENE + NOTED)
    opened(page, site, ready)
    wait_for_state(page, "none")
    for width, height in ((320, 640), (844, 390), (320, 210)):
        page.set_viewport_size({"width": width, "height": height})
        picture(page, f"camera-large-{width}")
        assert width >= page.evaluate("document.querySelector('[data-camera]').scrollWidth"), width
        assert [] == page.evaluate(FLAT)
        assert [] == violations(page)
        page.locator('[data-camera-do="take"]').scroll_into_view_if_needed()
        expect(page.locator('[data-camera-do="take"]')).to_be_in_viewport(ratio=0.9 if height > 300 else 0.3)
        page.locator("[data-camera]").evaluate("(window) => window.scrollTo(0, 0)")
    large.close()


def test_a_full_pile_says_so_and_takes_no_more(before_camera: Callable[..., Page], own: list[Image.Image], ready):
    """What a full pile left out was not said."""
    page = before_camera()
    page.keyboard.press("Escape")
    kept = [{"id": f"row-{number}", "file": "a.jpg", "state": "fault", "said": "no-code"} for number in range(199)]
    page.evaluate("(text) => localStorage.setItem('phasor-folio-pile', text)", json.dumps({"version": 1, "rows": kept}))
    page.reload()
    ready(page)
    files = [{"name": f"{n}.jpg", "mimeType": "image/jpeg", "buffer": jpeg(shown)} for n, shown in enumerate(own)]
    page.set_input_files("#pile-choose", files)
    expect(page.locator("[data-said]")).to_contain_text("it holds 200 photographs", timeout=PATIENCE * 1000)
    assert 200 == rows(page)
    page.click('[data-do="camera"]')
    wait_for_state(page, "full")
