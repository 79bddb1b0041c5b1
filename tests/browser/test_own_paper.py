"""Homework on a phone, from the first press to "correct": 1 cm = 1 A on plain A4, where no printed sheet has room."""

from browser.asking import PHONE, SLUG, result, wait_until
from playwright.sync_api import Page, expect

HOMEWORK = {"i1": "9.2", "i2": "14.7", "i3": "6.5"}
MOST_TAPS = 12
TOUCH = {"viewport": PHONE, "has_touch": True, "is_mobile": True}


class Finger:
    """Presses that are counted; each lands on what is in view."""

    def __init__(self, page: Page) -> None:
        self.page, self.taps = page, 0

    def tap(self, selector: str) -> None:
        self.taps += 1
        self.page.locator(selector).first.tap()

    def type(self, name: str, text: str) -> None:
        self.tap(f"input[name='{name}']")
        self.page.keyboard.type(text)

    def choose(self, name: str, value: str) -> None:
        """A list opens at one press, and a second chooses."""
        self.taps += 2
        self.page.select_option(f"[name='{name}']", value)


def test_homework_at_its_own_scale_on_a_phone_from_the_first_press_to_correct(open_page, site: str, ready, answered):
    page: Page = open_page(**TOUCH)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    finger = Finger(page)
    for name, value in HOMEWORK.items():
        finger.type(name, value)
    finger.type("scale", "1")
    message = page.locator("[data-message-for=scale]")
    expect(message).to_contain_text("22\u00a0mm too wide")
    # The ways out stand beside the field, above the bar, where the finger is.
    wait_until(page, "document.querySelector('#f-scale').hasAttribute('aria-invalid')")
    own = message.get_by_role("button", name="Draw on my own A4")
    box, field = own.bounding_box(), page.locator("#f-scale").bounding_box()
    assert box and field and 0 < box["y"] - field["y"] < 300 and box["y"] + box["height"] < PHONE["height"] - 56
    finger.tap("[data-message-for=scale] button:has-text('Draw on my own A4')")
    expect(message).to_be_hidden()
    answered(page)
    assert 1.0 == result(page, "scale")
    expect(page.locator("[data-echo-for=scale]")).to_contain_text("1\u00a0cm stays free at every edge")
    place = "11\u00a0cm from the left edge, 10\u00a0cm from the lower edge"
    expect(page.locator(".moves li").first).to_contain_text(place)
    shown = page.locator(".view svg").first.text_content() or ""
    assert "11\u00a0cm" in shown and "10\u00a0cm" in shown
    assert "own-paper=A4" in page.evaluate("location.hash") and "scale=1" in page.evaluate("location.hash")
    finger.tap("[data-tab=check]")
    finger.tap("label:has([name=answer-how][value=drawn])")
    finger.type("answer", "72.5")
    finger.type("answer-angle", "101")
    finger.choose("answer-side", "clockwise")
    finger.tap("[data-action=check]")
    expect(page.locator("[data-region=marked]")).to_contain_text("Correct")
    assert finger.taps <= MOST_TAPS
