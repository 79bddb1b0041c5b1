"""What the tests of the lesson view share: screens, waiting for a step, and one step's instrument read off."""

from browser.asking import wait_until
from browser.instruments import Seen, apart, way
from playwright.sync_api import Page

PROBLEM = "#v=3&i1=18.4&i2=11.2&i3=24.6"
SCREENS = {
    "projector": {"width": 1920, "height": 1080}, "small projector": {"width": 1280, "height": 720},
    "phone": {"width": 390, "height": 844}, "small phone": {"width": 320, "height": 568},
}  # fmt: skip
STEPS, FINISHED = 20, 21
"""The moves of the parallelogram, and the frame behind them: the finished drawing."""
LIST = [1, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 9, 9, 10, 10, 11, 12, 12]
"""For each frame of the parallelogram, its step as the list on the page numbers it; there are 12."""


def place(frame: int) -> str:
    """Where a frame is, in words."""
    if frame == FINISHED:
        return "Finished drawing"
    step, same = LIST[frame - 1], [number for number, one in enumerate(LIST, start=1) if one == LIST[frame - 1]]
    return f"Step {step} of 12" + (f", move {same.index(frame) + 1} of {len(same)}" if len(same) > 1 else "")


CENTRES = {3: "O", 5: "i1", 7: "i2", 11: "O", 13: "O", 14: "i12", 16: "i3", 20: "O"}
"""Where the protractor's centre belongs in each step of the parallelogram that has one."""
RULERS = {2: "i1", 4: "i2", 10: "i12", 12: "i3", 19: "sum"}
"""The phasor along which the ruler lies, zero on its tail, reading at its tip."""


def at(page: Page) -> int:
    """The frame in view, as links count: each move of each step. Its words have the numbers of the page's list."""
    return int(page.locator('[data-lesson-region="lesson-text"] .lesson-step').get_attribute("data-frame"))


def until_at(page: Page, step: int) -> None:
    """Wait until a step is in view."""
    try:
        wait_until(page, f"""document.querySelector(".lesson-step")?.dataset.frame === "{step}" """)
    except AssertionError:
        raise AssertionError(f"step {at(page)} is in view, not {step}") from None


def is_open(page: Page) -> bool:
    return page.evaluate("document.querySelector('[data-lesson]').open")


def until_address(page: Page, part: str) -> None:
    wait_until(page, f"location.hash.includes({part!r})")


def do(page: Page, name: str) -> None:
    page.locator(f'[data-lesson-do="{name}"]').locator("visible=true").first.click()


def reveal(page: Page) -> None:
    """Show a reading that waits to be asked for."""
    if page.locator('[data-lesson-do="next"]').text_content() == "Show the reading":
        page.keyboard.press("Enter")


def visible(page: Page, selector: str) -> bool:
    return page.locator(selector).first.is_visible()


OWN = (13, 14, 16)
"""Steps whose angle a learner takes from the own drawing."""


def check_step(seen: Seen, step: int) -> None:
    """The instrument of one step of the parallelogram, read off the picture."""
    if step in CENTRES:
        centre, _ = seen.protractor()
        place = seen.start if CENTRES[step] == "O" else seen.phasor(CENTRES[step])[1]
        assert abs(centre - place) < 0.02, step
        far = max((end for line in seen.found["reading"] for end in ends_of(line)), key=lambda end: abs(end - centre))
        # What follows from the learner's own reading is said in whole degrees.
        assert apart(way(centre, far), seen.direction(seen.amount)) < (0.51 if step in OWN else 0.1), step
    elif step in RULERS:
        zero, along, unit = seen.ruler()
        tail, tip = seen.phasor(RULERS[step])
        # The ruler lies 1.15 mm beside the line.
        assert abs(abs(zero - tail) - 1.15 * unit) < 0.01 and apart(way(zero, tail), along + 90.0) < 0.2, step
        assert apart(along, way(tail, tip)) < 0.02, step
        assert abs(abs(tip - tail) / unit - seen.amount) <= 0.26, step
    elif step in (6, 8, 15, 17):
        assert "ruler" in seen.found["instruments"]


def ends_of(line: list[float]) -> tuple[complex, complex]:
    return complex(line[0], -line[1]), complex(line[2], -line[3])
