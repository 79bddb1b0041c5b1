"""What an edit changes is changed where it stands, and is then what pycore wrote, whatever stood there before."""

import json
from collections.abc import Iterator

import pytest
from browser.asking import DESK, PHONE, SLUG, show_beside, show_settings, wait_until
from browser.kept import FRESH, READY
from playwright.sync_api import Page

from pycore import api

SITE = "http://127.0.0.1/"
PARTS = ("answer", "sheet", "workings", "view")
EDITS = (
    {"i1": "31.5"},
    {"method": "tip-to-tail"},
    {"measured": "12.1 12.3"},
    {"paper": "A5", "orientation": "portrait"},
    {"sheet": "problem"},
    {"print": "large", "paper": "A3", "orientation": ""},
    {"i2": "0", "i3": "0", "print": "usual"},
    {"i2": "11.2", "i3": "24.6", "sheet": "overlay", "measured": "", "scale": "0.2"},
    {"sheet": "construction", "method": "components", "scale": "", "drawn": "9 A"},
    {"i1": "12", "i2": "12", "i3": "12"},
)


ALIKE = """([one, other]) => {
  const made = [one, other].map((html) => Object.assign(document.createElement("div"), { innerHTML: html }));
  return made[0].isEqualNode(made[1]);
}"""


@pytest.fixture
def plain(page: Page) -> Iterator[Page]:
    """An empty page without a policy, to read HTML with."""
    other = page.context.new_page()
    yield other
    other.close()


@pytest.mark.parametrize("screen", [DESK, PHONE], ids=["desk", "phone"])
def test_after_any_edit_the_regions_are_what_pycore_wrote(page: Page, plain: Page, site: str, screen: dict) -> None:
    page.set_viewport_size(screen)
    page.goto(f"{site}{SLUG}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    for edit in EDITS:
        for name, value in edit.items():
            page.evaluate(
                """([name, value]) => {
                  const one = [...document.getElementById("problem").elements].filter((found) => found.name === name);
                  if (one[0].type === "radio") one.find((found) => found.value === value).checked = true;
                  else one[0].value = value;
                  one[0].dispatchEvent(new Event("input", { bubbles: true }));
                }""",
                [name, value],
            )
        wait_until(page, FRESH)
        wait_until(page, "!document.querySelector('[data-region=workings]').hasAttribute('aria-busy')")
        form = page.evaluate(
            "Object.fromEntries([...new FormData(document.getElementById('problem'))].filter(([, text]) => text))"
        )
        asked = {"do": "answer", "page": SLUG, "form": form, "parts": list(PARTS), "base": SITE}
        regions = json.loads(api.handle(json.dumps(asked))[0])["regions"]
        # The sheet's steps and its code follow once nothing is typed.
        complete = json.loads(api.handle(json.dumps({**asked, "code": True}))[0])["regions"]
        for name in regions if screen is PHONE else regions.keys() - {"view"}:
            shown = page.evaluate("name => document.querySelector(`[data-region=${name}]`).innerHTML", name)
            assert any(plain.evaluate(ALIKE, [wrote[name], shown]) for wrote in (regions, complete)), (edit, name)


def test_what_an_edit_leaves_as_it_is_stays_the_same_element(page: Page, site: str) -> None:
    page.set_viewport_size(DESK)
    page.goto(f"{site}{SLUG}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    page.evaluate("document.querySelector('[data-sheet] [data-name=frame]').marked = true")
    for value in ("19.5", "20.5"):
        page.fill("[name=i1]", value)
        wait_until(page, FRESH)
    assert page.evaluate("document.querySelector('[data-sheet] [data-name=frame]').marked === true")


def test_an_edit_writes_nothing_beside_its_regions(page: Page, site: str) -> None:
    """Even the same text, written again, has the browser style and lay out the whole page."""
    page.set_viewport_size(DESK)
    page.goto(f"{site}{SLUG}/")
    wait_until(page, f"{READY} && {FRESH}", 60)
    page.focus("[name=i1]")
    page.fill("[name=i1]", "18.5")
    wait_until(page, FRESH)
    page.evaluate("""() => {
      const told = ({ target }) => target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
      window.written = [];
      new MutationObserver((all) => window.written.push(...all.map(told)
        .filter((one) => one && !one.closest("[data-region], [data-live]"))
        .map((one) => one.outerHTML.slice(0, 120))))
        .observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    }""")
    page.fill("[name=i1]", "18.6")
    wait_until(page, FRESH)
    assert [] == page.evaluate("window.written")


def test_focus_and_scroll_stay_where_they_were_through_an_edit(page: Page, site: str) -> None:
    """Also of what has neither a value nor a class of its own: the button that shows the blank sheet."""
    page.set_viewport_size({"width": 1200, "height": 800})
    page.goto(f"{site}{SLUG}/#v=1&i1=18.4&i2=11.2&i3=24.6&paper=A3&print=large")
    wait_until(page, f"{READY} && {FRESH}", 60)
    # At true size a sheet is broader than its column.
    page.evaluate("document.querySelector('.figure').toggleAttribute('data-true-size', true)")
    page.evaluate("document.querySelector('.sheet .paper-scroll').scrollLeft = 77")
    assert 77 == page.evaluate("document.querySelector('.sheet .paper-scroll').scrollLeft")
    for selector in (".sheet .paper-scroll", ".kinds button:nth-child(2)"):
        page.focus(selector)
        page.evaluate("""selector => {
          const field = document.querySelector("[name=i1]");
          window.focused = document.querySelector(selector);
          field.value = String(Number(field.value) + 1);
          field.dispatchEvent(new Event("input", { bubbles: true }));
        }""", selector)
        wait_until(page, f"{FRESH} && !document.querySelector('[data-region=workings]').hasAttribute('aria-busy')")
        assert page.evaluate("document.activeElement === window.focused"), selector
    assert 77 == page.evaluate("document.querySelector('.sheet .paper-scroll').scrollLeft")


def test_on_a_phone_the_field_that_is_typed_in_stays_on_the_screen(page: Page, site: str) -> None:
    """A power factor takes the closed formula away, half a screen of it, which stands above the field."""
    page.set_viewport_size(PHONE)
    page.goto(f"{site}{SLUG}/#v=1&i1=18.4&i2=15.8&i3=24.6")
    wait_until(page, f"{READY} && {FRESH}", 60)
    show_settings(page)
    field = page.locator("[name=a2]")
    field.focus()
    field.evaluate("field => { field.scrollIntoView({ block: 'center' }); field.select(); }")
    place = field.evaluate("field => field.getBoundingClientRect().top")
    for digit in "25":
        page.keyboard.type(digit)
        wait_until(page, f"{FRESH} && !document.querySelector('[data-region=workings]').hasAttribute('aria-busy')")
        assert abs(field.evaluate("field => field.getBoundingClientRect().top") - place) < 40, digit


def test_a_table_among_the_workings_stays_scrolled_through_an_edit(page: Page, site: str) -> None:
    page.set_viewport_size(PHONE)
    page.goto(f"{site}parallel-circuit/")
    wait_until(page, f"{READY} && {FRESH} && !document.documentElement.dataset.follows", 60)
    show_beside(page, "results")
    page.evaluate("for (const part of document.querySelectorAll('.workings details')) part.open = true")
    scrolled = page.evaluate("""() => {
      const wide = [...document.querySelectorAll(".workings *")].filter((one) => one.scrollWidth > one.clientWidth + 9);
      window.wide = wide.find((one) => { one.scrollLeft = 9; return one.scrollLeft === 9; });
      return Boolean(window.wide);
    }""")
    assert scrolled, "nothing there is broader than a phone"
    page.locator(".values input").first.fill("218")
    wait_until(page, f"{FRESH} && !document.querySelector('[data-region=workings]').hasAttribute('aria-busy')")
    assert page.evaluate("window.wide.isConnected && window.wide.scrollLeft === 9")
