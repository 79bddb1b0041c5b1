"""The page that lists what this device keeps: each thing is saved and erased alone; learners are kept apart."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from browser.asking import DESK, PHONE, SLUG, wait_until
from browser.kept import OFFLINE, keeping, visit
from browser.test_faults import DENIED
from browser.test_page_access import violations
from browser.test_practice import give, settle, task
from playwright.sync_api import Browser, Page, expect

from pycore.words import furniture, practice
from pycore.words import this_device as words

PAGE = f"{words.SLUG}/"
ROWS = "[data-kept-rows] > li"
DAY = 86_400_000
CLASS = {"version": 1, "roll": "Amber\nBilal", "results": "334-PEK-23G; 7.5 A", "set": "v=3&seed=7"}
RECORD = {
    "kind": "phasor-folio-practice", "version": 1, "seed": 5, "way": "0.parallelogram", "streak": 0, "best": 0,
    "ways": {"0.parallelogram": {
        "level": 0, "run": 0, "had": 7, "solved": 3, "code": "523-227-29H", "tries": 0, "done": "",
    }},
    "mistakes": {},
}  # fmt: skip
PRINTER = {"along": 1.004, "across": 1, "edge": "short", "lead": 210, "pages": {"a4l": [1.004, 1]}}
KEPT = {
    "phasor-folio-practice": json.dumps(RECORD), "phasor-folio-class": json.dumps(CLASS),
    "phasor-folio": json.dumps({"version": 1, "printer": PRINTER, "screen": {"pxPerMm": 4, "pixelRatio": 1}}),
    "phasor-folio-lesson": '{"version":1,"large":true}', "phasor-folio-theme": "day", "phasor-folio-store": "no",
    "phasor-folio-practice@7B-12": json.dumps(RECORD), "other-site": "stays", "theme": "of another site",
}  # fmt: skip
PUT = "(texts) => { for (const [key, text] of Object.entries(texts)) localStorage.setItem(key, text); }"
LEARNER = {"phasor-folio-learner"}
KEYS = "Object.keys(localStorage).filter((key) => key.startsWith('phasor-folio')).sort()"


@pytest.fixture
def listed(open_page: Callable[..., Page], site: str) -> Callable[..., Page]:
    """`listed(kept, screen)` opens the page on a device that keeps these texts."""

    def opened(kept: dict[str, str] = KEPT, screen: dict = DESK) -> Page:
        page = open_page(viewport=screen, fresh=True)
        page.goto(site + PAGE)
        page.evaluate(PUT, kept)
        page.reload()
        wait_until(page, "!!document.querySelector('[data-in-use]').textContent")
        return page

    return opened


def titles(page: Page) -> list[str]:
    """What is listed."""
    return page.locator(f"{ROWS} h3").all_inner_texts()


def row(page: Page, title: str):
    """One thing of the list."""
    return page.locator(ROWS).filter(has=page.get_by_role("heading", name=title, exact=True))


def saved(page: Page, button) -> tuple[str, str]:
    """Name and text of the file that a button gives."""
    with page.expect_download() as download:
        button.click()
    return download.value.suggested_filename, Path(download.value.path()).read_text("utf-8")


def test_everything_is_listed_with_what_there_is_of_it(listed) -> None:
    page = listed()
    title = {name: said for name, (said, _) in words.THINGS.items()}
    assert [
        title["practice"], words.OF.format(what=title["practice"], who="7B-12"),
        *(title[name] for name in ("roll", "results", "set", "printer", "screen", "lesson", "theme", "store")),
    ] == titles(page)  # fmt: skip
    assert practice.SOLVED_OF.format(solved=3, unsolved=3) in row(page, title["practice"]).inner_text()
    assert "Lines: 2." in row(page, title["roll"]).inner_text()
    assert "Kept until you erase it." in row(page, title["practice"]).inner_text()
    assert "Erased on" in row(page, title["roll"]).inner_text()
    assert "{" not in page.inner_text("main")
    assert words.KEEPS in page.inner_text("main")


def test_each_thing_is_saved_and_erased_alone_and_brought_back(listed) -> None:
    page = listed()
    before = titles(page)
    names = {words.THINGS[name][0]: name for name in words.THINGS}
    for title in [one for one in before if one in names]:
        name, text = saved(page, row(page, title).get_by_text(words.SAVE))
        assert name and text
        row(page, title).get_by_text(words.ERASE, exact=True).click()
        assert [one for one in before if one != title] == titles(page)
        expect(page.locator("[data-said-of=kept]")).to_contain_text(title)
        page.click("[data-device-do=undo]")
        assert before == titles(page)
    assert "Amber\nBilal" == saved(page, row(page, "Names of a class").get_by_text(words.SAVE))[1]
    assert RECORD == json.loads(saved(page, row(page, "Practice record").get_by_text(words.SAVE))[1])


def test_all_of_the_learner_in_use_is_erased_at_once_and_brought_back(listed) -> None:
    """A learner had to erase each thing alone, or everything of everybody."""
    drawings = {"phasor-folio-drawings": '{"version":1,"drawings":[]}'}
    page = listed(KEPT | drawings)
    button = page.locator("[data-device-do=erase-learner]")
    of_nobody = {"phasor-folio", "phasor-folio-theme", "phasor-folio-store", "phasor-folio-dates"}
    for who, erase, all_of in (
        ("", words.ERASE_FIRST, words.ALL_OF_FIRST),
        ("7B-12", words.ERASE_LEARNER.format(who="7B-12"), words.ALL_OF.format(who="7B-12")),
    ):
        if who:
            page.click(f"[data-who='{who}']")
        before, listed_before = set(page.evaluate(KEYS)), titles(page)
        expect(button).to_have_text(erase)
        button.click()
        expect(page.locator("[data-said-of=kept]")).to_have_text(words.ERASED.format(what=all_of))
        gone = before - set(page.evaluate(KEYS))
        assert of_nobody <= set(page.evaluate(KEYS))
        assert gone == {key for key in before if key.endswith("@7B-12") == bool(who)} - of_nobody - LEARNER
        expect(button).to_be_hidden()
        page.click("[data-device-do=undo]")
        assert (before, listed_before) == (set(page.evaluate(KEYS)), titles(page))


def test_what_the_browser_does_not_take_back_is_said(listed) -> None:
    """It said that everything was back."""
    page = listed()
    page.evaluate("() => { Storage.prototype.setItem = () => { throw new DOMException('full'); }; }")
    page.click("[data-device-do=erase-all]")
    page.click("[data-device-do=undo-all]")
    expect(page.locator("[data-said-of=all]")).to_have_text(words.NOT_ROOM.format(count=0))


def test_everything_is_erased_and_nothing_that_is_not_ours(listed) -> None:
    page = listed()
    before = page.evaluate(KEYS)
    page.click("[data-device-do=erase-all]")
    expect(page.locator("[data-said-of=all]")).to_have_text(words.ALL_ERASED)
    assert ([], []) == (titles(page), page.evaluate(KEYS))
    others = page.evaluate("['other-site', 'theme'].map((key) => localStorage.getItem(key))")
    assert ["stays", "of another site"] == others
    expect(page.locator("[data-nothing]")).to_have_text(words.NOTHING)
    page.click("[data-device-do=undo-all]")
    assert set(KEPT) - {"other-site", "theme"} <= set(page.evaluate(KEYS)) | {"phasor-folio-dates"}
    assert set(before) == set(page.evaluate(KEYS))


def test_the_file_of_everything_is_loaded_on_another_device(listed, tmp_path: Path) -> None:
    page = listed()
    name, text = saved(page, page.locator("[data-device-do=save-all]"))
    before = titles(page)
    page.click("[data-device-do=erase-all]")
    page.reload()
    assert [] == titles(page)
    file = tmp_path / name
    file.write_text(text, "utf-8")
    page.set_input_files("[data-kept-file]", file)
    expect(page.locator("[data-said-of=all]")).to_contain_text("Loaded")
    assert before == titles(page)
    page.click("[data-device-do=undo-all]")
    assert [] == titles(page)


@pytest.mark.parametrize(("text", "said"), [
    ("{", words.NOT_OURS), ("[]", words.NOT_OURS),
    ('{"kind":"phasor-folio-kept","version":9,"kept":{}}', words.NOT_OURS),
    ('{"kind":"phasor-folio-kept","version":1,"kept":{"other":"x","__proto__":"y"}}', words.NOT_OURS),
    (json.dumps(RECORD), words.PRACTICE_FILE),
], ids=range(5))  # fmt: skip
def test_a_file_that_is_not_ours_changes_nothing(listed, tmp_path: Path, text: str, said: str) -> None:
    page = listed()
    before = page.evaluate("JSON.stringify(localStorage)")
    file = tmp_path / "any.json"
    file.write_text(text, "utf-8")
    page.set_input_files("[data-kept-file]", file)
    expect(page.locator("[data-said-of=all]")).to_have_text(said)
    assert before == page.evaluate("JSON.stringify(localStorage)")


def test_what_cannot_be_read_is_listed_and_can_be_erased(listed) -> None:
    hostile = {key: "{<img onerror=x>" for key in KEPT if key.startswith("phasor-folio")}
    page = listed(hostile | {"phasor-folio-dates": "[", "phasor-folio-terms": "7"})
    assert 6 <= len(titles(page))
    assert words.UNREADABLE in page.inner_text("[data-kept-rows]")
    assert not page.locator("main img").count()
    for _ in titles(page):
        page.locator(ROWS).first.get_by_text(words.ERASE, exact=True).click()
    assert [] == titles(page)


def test_a_new_learner_starts_clean_and_the_others_stay(open_page: Callable[..., Page], site: str, ready) -> None:
    """A pupil at a school's computer that others have used."""
    page = open_page(viewport=PHONE, has_touch=True, is_mobile=True)
    page.goto(f"{site}practice/")
    ready(page)
    settle(page)
    give(page, task(page).size, task(page).angle)
    first = page.evaluate("localStorage.getItem('phasor-folio-practice')")
    expect(page.locator("[data-learner]")).to_be_hidden()
    page.click(".learner a")
    page.fill("#new-learner", "  7B   12 ")
    page.click("[data-new-learner] button")
    expect(page.locator("[data-said-of=learners]")).to_have_text(words.STARTED.format(who="7B 12"))
    page.get_by_role("link", name=words.PRACTISE).click()
    ready(page)
    settle(page)
    expect(page.locator("[data-learner]")).to_have_text(words.OF_LEARNER.format(who="7B 12"))
    own = json.loads(page.evaluate("localStorage.getItem('phasor-folio-practice@7B 12')"))
    assert (0, 0) == (own["ways"]["0.parallelogram"]["solved"], own["ways"]["0.parallelogram"]["tries"])
    assert first == page.evaluate("localStorage.getItem('phasor-folio-practice')")
    page.goto(site + PAGE)
    page.get_by_role("button", name=f"{words.USE}: {words.FIRST}").click()
    expect(page.locator("[data-in-use]")).to_have_text(words.IN_USE_FIRST)
    page.goto(f"{site}practice/")
    ready(page)
    settle(page)
    assert practice.SOLVED_OF.format(solved=1, unsolved=0) in page.text_content("[data-region=kept]")


def test_a_name_is_the_same_learner_with_capitals_or_without(listed) -> None:
    """`kofi` began an empty record beside that of `Kofi`; and what Kofi had erased, the next could bring back."""
    page = listed()
    for typed, said in (("Kofi", words.STARTED), ("Ama", words.STARTED)):
        page.fill("#new-learner", typed)
        page.click("[data-new-learner] button")
        expect(page.locator("[data-said-of=learners]")).to_have_text(said.format(who=typed))
        page.evaluate("who => localStorage.setItem(`phasor-folio-practice@${who}`, '{}')", typed)
    page.reload()
    page.locator("[data-kept-rows] [data-device-do=erase]").first.click()
    expect(page.locator("[data-device-do=undo]")).to_be_visible()
    page.fill("#new-learner", "kofi")
    page.click("[data-new-learner] button")
    expect(page.locator("[data-said-of=learners]")).to_have_text(words.TAKEN_UP.format(who="Kofi"))
    expect(page.locator("[data-device-do=undo]")).to_be_hidden()


def test_a_new_learner_sees_no_names_of_a_class(listed, site: str, ready) -> None:
    page = listed()
    page.fill("#new-learner", "Zoë")
    page.click("[data-new-learner] button")
    page.goto(f"{site}class-set/")
    ready(page)
    assert ["", ""] == [page.input_value(field) for field in ("#roll", "#results")]
    assert KEPT["phasor-folio-class"] == page.evaluate("localStorage.getItem('phasor-folio-class')")


def test_all_windows_follow_at_once(browser: Browser, site: str) -> None:
    with keeping(browser, site, service_workers="block") as context:
        class_set, practice = visit(context, f"{site}class-set/"), visit(context, f"{site}practice/")
        class_set.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
        class_set.fill("#roll", "Amber")
        class_set.fill("#results", "334-PEK-23G; 7.5 A")
        page = context.new_page()
        page.goto(site + PAGE)
        other = context.new_page()
        other.goto(site + PAGE)
        row(page, "Names of a class").get_by_text(words.ERASE, exact=True).click()
        wait_until(class_set, "document.querySelector('#roll').value === ''")
        assert "334-PEK-23G; 7.5 A" == class_set.input_value("#results")
        expect(row(other, "Names of a class")).to_have_count(0)
        page.fill("#new-learner", "7B")
        page.click("[data-new-learner] button")
        expect(practice.locator("[data-learner]")).to_have_text(words.OF_LEARNER.format(who="7B"))
        wait_until(class_set, "document.querySelector('#results').value === ''")
        page.click("[data-theme-switch]")
        chosen = page.get_attribute("html", "data-theme")
        wait_until(practice, f"document.documentElement.dataset.theme === {chosen!r}")
        page.click("[data-device-do=erase-all]")
        expect(practice.locator("[data-learner]")).to_be_hidden()
        expect(row(other, "Answers of a class")).to_have_count(0)


def test_what_was_erased_is_not_kept_anew_by_another_window(browser: Browser, site: str) -> None:
    fresh = "document.documentElement.dataset.answer === 'fresh'"
    with keeping(browser, site, service_workers="block") as context:
        windows = [visit(context, site + each) for each in ("practice/", "class-set/", "question-papers/", "register/")]
        windows[1].evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
        windows[1].fill("#roll", "Amber")
        page = context.new_page()
        page.goto(site + PAGE)
        page.fill("#new-learner", "7B")
        page.click("[data-new-learner] button")
        problem = windows[0].locator("[data-region=problem]")
        for window in windows:
            wait_until(window, fresh)
        before = problem.inner_html()
        page.click("[data-device-do=erase-all]")
        expect(windows[0].locator("[data-learner]")).to_be_hidden()
        expect(problem).not_to_have_js_property("innerHTML", before)
        for window in windows:
            wait_until(window, fresh)
        assert [] == page.evaluate(KEYS)
        windows[0].click("[data-do=show]")
        wait_until(windows[0], "document.querySelector('.practice').dataset.state === 'done'")
        assert ["phasor-folio-dates", "phasor-folio-practice"] == page.evaluate(KEYS)


def test_names_and_answers_are_erased_after_ninety_days_without_a_change(open_page, site: str) -> None:
    page = open_page()
    page.goto(site + PAGE)
    today = page.evaluate(f"Math.floor(Date.now() / {DAY})")
    kept = {key: KEPT[key] for key in ("phasor-folio-class", "phasor-folio-practice")}
    for days, is_there in ((89, True), (90, False)):
        page.evaluate(PUT, kept | {"phasor-folio-dates": json.dumps(dict.fromkeys(kept, today - days))})
        page.goto(f"{site}{SLUG}/")
        page.goto(site + PAGE)
        assert is_there == ("Names of a class" in titles(page))
        assert "Practice record" in titles(page)
    assert "90" == page.input_value("[data-term=class]")
    page.evaluate(PUT, kept | {"phasor-folio-dates": json.dumps(dict.fromkeys(kept, today - 8))})
    page.reload()
    page.select_option("[data-term=practice]", "7")
    expect(page.locator("[data-said-of=terms]")).to_contain_text("7 days")
    assert ["Names of a class", "Answers of a class", "The last class set"] == titles(page)
    page.select_option("[data-term=class]", "0")
    expect(page.locator("[data-said-of=terms]")).to_contain_text("until you erase it")
    assert words.FOR_EVER in row(page, "Names of a class").inner_text()


def test_what_is_older_than_the_dates_has_its_whole_time_from_now(listed) -> None:
    """Names that an earlier version kept have no day."""
    page = listed({"phasor-folio-class": KEPT["phasor-folio-class"]})
    assert "Names of a class" in titles(page)
    today = page.evaluate(f"Math.floor(Date.now() / {DAY})")
    assert {"phasor-folio-class": today} == page.evaluate("JSON.parse(localStorage.getItem('phasor-folio-dates'))")


def test_an_earlier_choice_of_night_or_day_is_taken_under_our_name(open_page, site: str) -> None:
    page = open_page()
    page.goto(site + PAGE)
    page.evaluate("localStorage.setItem('theme', 'night')")
    page.reload()
    assert "night" == page.get_attribute("html", "data-theme")
    assert ["night", None] == page.evaluate("['phasor-folio-theme', 'theme'].map((key) => localStorage.getItem(key))")


def test_the_kept_site_is_shown_with_its_size_and_removed(browser: Browser, site: str) -> None:
    with keeping(browser, site) as context:
        page = visit(context, f"{site}{SLUG}/")
        expect(page.locator(".kept-sign")).to_be_hidden()
        wait_until(page, OFFLINE, 60)
        expect(page.locator(".kept-sign")).to_be_visible()
        page.click(".kept-sign")
        expect(page.locator("[data-site-line]")).to_contain_text("works without a network", timeout=20_000)
        size = int(page.inner_text("[data-site-line]").partition("(")[2].partition(" MB")[0])
        assert 10 <= size <= 40
        page.click("[data-device-do=remove-site]")
        expect(page.locator("[data-site-line]")).to_have_text(words.SITE_NOT)
        expect(page.locator(".kept-sign")).to_be_hidden()
        assert [] == page.evaluate("caches.keys()")


def test_the_browser_is_asked_to_keep_what_is_worth_it_and_not_before(open_page, site: str, ready) -> None:
    page = open_page()
    page.add_init_script("""globalThis.asked = 0;
      navigator.storage.persisted = async () => false;
      navigator.storage.persist = async () => { globalThis.asked += 1; return true; };""")
    page.goto(f"{site}class-set/")
    ready(page)
    page.fill("#results", "")
    assert 0 == page.evaluate("asked")
    page.fill("#results", "334-PEK-23G; 7.5 A")
    page.fill("#results", "334-PEK-23G; 7.6 A")
    wait_until(page, "asked === 1")
    page.reload()
    ready(page)
    page.fill("#results", "334-PEK-23G; 7.7 A")
    page.wait_for_timeout(200)
    assert 0 == page.evaluate("asked")


def test_a_browser_that_keeps_nothing_is_told_so(browser: Browser, site: str) -> None:
    with keeping(browser, site, service_workers="block") as context:
        context.add_init_script(DENIED)
        page = context.new_page()
        page.goto(site + PAGE)
        expect(page.locator("[data-nothing]")).to_have_text(words.REFUSED)
        expect(page.locator("[data-site-line]")).to_have_text(words.SITE_NOT)
        page.fill("#new-learner", "7B")
        page.click("[data-new-learner] button")
        expect(page.locator("[data-not-kept] p")).to_have_text(furniture.NOT_KEPT["records"])


def test_every_page_leads_there(open_page, site: str) -> None:
    page = open_page()
    for name in ("", f"{SLUG}/", "practice/", "sine-and-cosine/"):
        page.goto(site + name)
        assert page.get_by_role("link", name=words.TITLE).get_attribute("href").endswith(PAGE)


@pytest.mark.parametrize("screen", [PHONE, {"width": 320, "height": 640}, DESK], ids=["phone", "narrow", "desk"])
def test_nothing_runs_over_the_edge_and_all_can_reach_it(listed, screen: dict) -> None:
    page = listed(screen=screen)
    assert page.evaluate("document.documentElement.scrollWidth") <= screen["width"]
    assert [] == violations(page)
