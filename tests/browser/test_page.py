"""The page as a visitor meets it: typing, links, errors, no scripts, small and large screens, light and dark."""

import math
from collections.abc import Callable

import pytest
from browser.asking import DESK, PHONE, SLUG, neutral, result, show_beside, show_settings, state, wait_until
from playwright.sync_api import Browser, Page, expect

PHONES = [(360, 740), (390, 844)]


@pytest.mark.parametrize("screen", [DESK, PHONE], ids=["desk", "phone"])
def test_without_scripts_the_page_teaches_its_example(open_page: Callable[..., Page], site: str, screen) -> None:
    """Answer, drawing, moves and the other workings; the phone has its own drawing and opens the sheet by itself."""
    page = open_page(java_script_enabled=False, viewport=screen)
    page.goto(f"{site}{SLUG}/")
    values = [float(page.get_attribute(f"[name=i{line}]", "value") or "nan") for line in (1, 2, 3)]
    assert math.isclose(neutral(*values), result(page), rel_tol=1e-11)
    if screen == PHONE:
        expect(page.locator('svg[data-view="phone"]')).to_be_visible()
        page.click("details.request > summary")
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    moves = page.locator("section.working [data-for-step]")
    assert moves.count() >= 5
    expect(moves.first).to_be_visible()
    other = page.locator('details.working[data-working="formula"]')
    other.locator("summary").click()
    expect(other.locator(".formula").first).to_be_visible()
    assert page.locator("button:visible").count() == 0
    expect(page.locator("noscript .notice")).to_be_visible()
    assert screen["width"] >= page.locator(".workings").bounding_box()["width"]  # type: ignore[index]


def test_typing_three_currents_gives_their_neutral_current(opened: Page, answered) -> None:
    for line, text in (("i1", "31.5"), ("i2", "7,25 A"), ("i3", "12500 mA")):
        opened.fill(f"[name={line}]", text)
    answered(opened)
    assert math.isclose(neutral(31.5, 7.25, 12.5), result(opened), rel_tol=1e-11)


def test_every_arrow_of_the_sheet_is_as_long_as_its_current(opened: Page, answered) -> None:
    opened.fill("[name=i1]", "31.5")
    answered(opened)
    scale = result(opened, "scale")
    lengths = opened.evaluate("""() => Object.fromEntries(["i1", "i2", "i3", "sum"].map((name) => {
      const lines = document.querySelectorAll(`svg[data-sheet] g[data-phasor="${name}"]:not([data-copy]) > line`);
      if (lines.length !== 1) throw new Error(`${name} has ${lines.length} lines`);
      const at = (key) => Number(lines[0].getAttribute(key));
      return [name, Math.hypot(at("x2") - at("x1"), at("y2") - at("y1"))];
    }))""")
    currents = {"i1": 31.5, "i2": 11.2, "i3": 24.6, "sum": result(opened)}
    for name, current in currents.items():
        assert math.isclose(10 * current / scale, lengths[name], abs_tol=0.001), name


def test_the_address_holds_the_problem_and_opens_it_again(
    opened: Page, open_page: Callable[..., Page], ready, answered
) -> None:
    opened.fill("[name=i2]", "16,5")
    answered(opened)
    wait_until(opened, "location.hash.includes('i2=16')")
    assert opened.evaluate("location.hash").startswith("#v=3&")
    again = open_page()
    again.goto(opened.url)
    ready(again)
    answered(again)
    assert "16,5" == again.input_value("[name=i2]")
    assert result(opened) == result(again)


def test_a_new_fragment_opens_its_problem(opened: Page, answered) -> None:
    opened.evaluate("location.hash = '#v=1&i1=10&i2=10&i3=10'")
    wait_until(opened, "document.querySelector('[name=i1]').value === '10'")
    answered(opened)
    assert 0.0 == result(opened)
    assert "" == opened.get_attribute('output[name="neutral-angle"]', "data-value")


HOSTILE = (
    "i1=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E&%3Cb%3E=1&i2=%00&order=%27%22%3E",
    "i1=1&i2=2&i3=3&place=javascript:alert(1)",
    "i1=1&i2=2&i3=3&place=%22%20onx=%22javascript:1&names=%3Cscript%3E&method=javascript:1",
    "i1=1&i2=2&i3=3&place=href=%27javascript:alert(1)%27%20onload=%27x%27",
)


@pytest.mark.parametrize("fragment", HOSTILE)
def test_a_hostile_link_is_only_text(page: Page, site: str, ready, fragment: str) -> None:
    """Nothing of it becomes an element or runs, and it does not stop the page: the next edit is answered."""
    page.goto(f"{site}{SLUG}/#v=1&{fragment}")
    ready(page)
    wait_until(page, "document.documentElement.dataset.answer !== 'pending'")
    assert 0 == page.locator("main img, main b, main script").count()
    for line, value in (("i1", "31.5"), ("i2", "7.25"), ("i3", "12.5")):
        page.fill(f"[name={line}]", value)
    page.evaluate("""() => {
      for (const [name, value] of [["order", ""], ["names", "L123"]]) {
        document.querySelector(`select[name=${name}]`).value = value;
      }
      document.querySelector("[name=method][value=parallelogram]").checked = true;
      document.querySelector("[name=i1]").dispatchEvent(new Event("input", { bubbles: true }));
    }""")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")
    assert math.isclose(neutral(31.5, 7.25, 12.5), result(page), rel_tol=1e-11)


def test_a_choice_that_a_link_invents_stays_to_be_seen_and_is_named(page: Page, site: str, ready) -> None:
    page.goto(f"{site}{SLUG}/#v=1&i1=1&i2=2&i3=3&method=guess&paper=A9")
    ready(page)
    wait_until(page, "document.querySelectorAll('[data-message-for]:not([hidden])').length === 2")
    assert "guess" in page.inner_text("[data-message-for=method]")
    assert "A9" in page.inner_text("[data-message-for=paper]")
    assert "guess" == page.evaluate("document.querySelector('[name=method]:checked').value")
    expect(page.locator("[data-elsewhere]")).to_be_visible()
    page.check("[name=method][value=tip-to-tail]")
    show_settings(page)
    page.select_option("[name=paper]", "A4")
    wait_until(page, "document.documentElement.dataset.answer === 'fresh'")
    assert 0 == page.locator("[data-stray]").count()


def test_what_is_typed_while_python_starts_is_answered(fresh_page: Page, site: str, answered) -> None:
    fresh_page.goto(f"{site}{SLUG}/")
    fresh_page.fill("[name=i1]", "40")
    assert "pending" == state(fresh_page)
    answered(fresh_page, 60.0)
    assert math.isclose(neutral(40, 11.2, 24.6), result(fresh_page), rel_tol=1e-11)
    assert "40" == fresh_page.input_value("[name=i1]")


def test_an_input_that_cannot_be_used_keeps_the_old_answer_marked_old(opened: Page, answered) -> None:
    before = result(opened)
    opened.fill("[name=i2]", "11.2 V")
    wait_until(opened, "document.documentElement.dataset.answer === 'old'")
    field = opened.locator("[name=i2]")
    assert "true" == field.get_attribute("aria-invalid")
    message = opened.locator('[data-message-for="i2"]')
    expect(message).to_be_visible()
    assert message.get_attribute("id") in (field.get_attribute("aria-describedby") or "").split()
    assert "11.2 V" in message.inner_text()
    assert before == result(opened)
    expect(opened.locator(".answer .when-old").first).to_be_visible()
    waiting = opened.locator("[data-action]:not([data-action=find-code])").all()  # another problem can be opened
    assert {"true"} == {button.get_attribute("aria-disabled") for button in waiting}
    opened.fill("[name=i2]", "11.2")
    answered(opened)
    assert field.get_attribute("aria-invalid") is None
    expect(message).to_be_hidden()


def test_every_unusable_input_is_named_at_once(opened: Page) -> None:
    opened.fill("[name=i1]", "")
    opened.fill("[name=i3]", "many")
    wait_until(opened, "document.querySelectorAll('[aria-invalid]').length === 2")
    assert 2 == opened.locator("[data-message-for]:visible").count()


def test_focus_and_open_parts_survive_an_answer(opened: Page, answered) -> None:
    opened.locator(".alternatives > summary").click()
    show_beside(opened, "results")
    opened.locator("details.working summary").first.click()
    opened.focus("[name=i1]")
    opened.keyboard.press("End")
    opened.keyboard.type("5")
    answered(opened)
    opened.wait_for_timeout(700)
    assert "i1" == opened.evaluate("document.activeElement.name")
    assert opened.evaluate("document.querySelector('.alternatives').open")
    assert 1 <= opened.locator("details.working[open]").count()


def test_the_workings_follow_the_answer(opened: Page, answered) -> None:
    opened.fill("[name=i1]", "37.3")
    answered(opened)
    opened.locator("section.working").scroll_into_view_if_needed()
    wait_until(opened, "document.querySelector('[data-region=workings]').textContent.includes('37.3')")


def test_another_order_is_drawn_by_one_way_only(opened: Page, answered) -> None:
    """Beside the method's name; no other button draws what the choices above the moves draw."""
    opened.locator(".alternatives > summary").click()
    opened.locator(".alternatives [data-set]").first.click()
    wait_until(opened, "document.querySelector('section.working').dataset.working !== 'parallelogram-12'")
    assert opened.get_attribute("section.working", "data-working").startswith("parallelogram-")
    assert 0 == opened.locator("details.working [data-set]").count()


def test_all_settings_are_put_back_at_one_press_and_that_can_be_undone(opened: Page, answered) -> None:
    """Values stay as they are. Whom a key brings to the settings goes on there."""
    opened.focus("[data-settings-switch]:visible")
    opened.keyboard.press("Enter")
    assert opened.evaluate("document.activeElement.closest('.choices') !== null")
    opened.fill("[name=i1]", "20")
    opened.fill("[name=a2]", "0.8 lag")
    opened.select_option("[name=paper]", "A3")
    opened.select_option("[name=names]", "RYB")
    opened.select_option("[name=first]", "right")
    opened.fill("[name=who]", "Amber Okafor")
    answered(opened)
    names = ("paper", "names", "first", "i1", "a2")
    set_so = [opened.input_value(f"[name={name}]") for name in names]
    back = opened.locator("[data-settings-back]")
    assert back.is_visible()
    back.click()
    answered(opened)
    assert "Amber Okafor" == opened.input_value("[name=who]")
    assert ["A4", "L123", "up", "20", "0.8 lag"] == [opened.input_value(f"[name={name}]") for name in names]
    assert 'data-page="a4l"' in opened.inner_html("[data-region=sheet]")
    assert "Undo" in back.inner_text()
    back.click()
    answered(opened)
    assert set_so == [opened.input_value(f"[name={name}]") for name in names]
    back.click()
    opened.select_option("[name=paper]", "A2")
    assert "Put all settings back" == back.inner_text()


def test_a_power_factor_writes_the_lag(opened: Page, answered) -> None:
    show_settings(opened)
    opened.fill("#pf-a1", "0.5")
    answered(opened)
    assert "0.5 lag" == opened.input_value("[name=a1]")
    opened.select_option('[data-sense-of="a1"]', "lead")
    answered(opened)
    assert "0.5 lead" == opened.input_value("[name=a1]")
    assert "60" in opened.inner_text('[data-echo-for="a1"]')


def test_the_pdf_is_saved(opened: Page) -> None:
    with opened.expect_download() as waiting:
        opened.click("[data-action=pdf]")
    assert f"{SLUG}.pdf" == waiting.value.suggested_filename
    with open(waiting.value.path(), "rb") as file:
        assert b"%PDF-1.7" == file.read(8)


def test_where_a_link_cannot_be_copied_it_is_shown(opened: Page, site: str) -> None:
    opened.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('refused')); }")
    opened.click("[data-action=share]")
    expect(opened.locator("#link")).to_be_visible()
    assert opened.input_value("#link").startswith(f"{site}{SLUG}/#v=3&")


@pytest.mark.parametrize(("width", "height"), PHONES)
def test_on_a_phone(open_page: Callable[..., Page], site: str, ready, answered, width: int, height: int) -> None:
    """No sideways scroll, the small-screen drawing, fingers' targets, and the answer above the keyboard."""
    page = open_page(viewport={"width": width, "height": height}, has_touch=True, is_mobile=True)
    page.goto(f"{site}{SLUG}/")
    ready(page)
    answered(page)
    expect(page.locator('svg[data-view="phone"]')).to_be_visible()
    expect(page.locator("svg[data-sheet]")).to_be_hidden()
    for part in page.locator("details").all():
        part.evaluate("(part) => { part.open = true; }")
    assert width == page.evaluate("document.documentElement.scrollWidth")
    expect(page.locator("svg[data-sheet]")).to_be_visible()
    small = page.evaluate("""() => [...document.querySelectorAll("button, input, select, summary, nav a, header a")]
      .filter((part) => part.checkVisibility() && !part.matches(".skip"))
      .filter((part) => part.getBoundingClientRect().height < 48 || part.getBoundingClientRect().width < 48)
      .map((part) => part.outerHTML.slice(0, 80))""")
    assert [] == small
    assert page.locator("output").first.bounding_box()["y"] < height / 2  # type: ignore[index]


def test_night_by_the_system_and_by_the_switch_is_kept(open_page: Callable[..., Page], site: str) -> None:
    page = open_page(color_scheme="dark", viewport=DESK)
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    page.goto(f"{site}{SLUG}/")
    assert "rgb(15, 20, 18)" == page.evaluate(ground)
    page.click("[data-theme-switch]")
    assert "rgb(210, 216, 208)" == page.evaluate(ground)
    page.goto(site)
    assert "rgb(210, 216, 208)" == page.evaluate(ground)


def test_a_start_that_fails_says_so_and_can_be_tried_again(browser: Browser, site: str, ready, answered) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.route("**/library.zip", lambda route: route.abort())
    page.goto(f"{site}{SLUG}/")
    wait_until(page, "document.documentElement.dataset.python === 'failed'", 30)
    expect(page.locator("[data-retry]")).to_be_visible()
    assert page.inner_text("[data-progress-text]")
    page.unroute("**/library.zip")
    page.click("[data-retry]")
    ready(page)
    answered(page)
    expect(page.locator("[data-progress]")).to_be_hidden()
    context.close()
