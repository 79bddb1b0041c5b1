"""Tests that share a context find nothing of one another in it, and a start from its memory that fails is seen."""

import pytest
from browser.asking import SLUG, wait_until
from browser.kept import READY
from rooms import Rooms

LEFT = "document.cookie.length + localStorage.length + sessionStorage.length"
LEAVE = "document.cookie = 'a=b'; localStorage.setItem('theme', 'dark'); sessionStorage.setItem('a', 'b')"


def test_a_page_starts_from_the_memory_and_finds_nothing_that_another_left(rooms: Rooms, site: str) -> None:
    for _ in range(2):
        with rooms.test() as taken:
            room = taken.room({})
            assert room is not None
            assert taken.room({}) is None, "one test at a time"
            page = room.context.new_page()
            page.goto(f"{site}{SLUG}/")
            wait_until(page, READY, 60)
            assert ("true", 0) == (page.get_attribute("html", "data-restored"), page.evaluate(LEFT))
            page.evaluate(LEAVE)
            assert 0 < page.evaluate(LEFT)
        assert [room.anchor] == room.context.pages


def test_a_memory_that_did_not_restore_fails_the_test(rooms: Rooms, site: str) -> None:
    """The page itself goes on: it throws the memory away and starts from nothing."""
    own = Rooms(rooms.browser, site)
    with pytest.raises(AssertionError, match="did not restore"), own.test() as taken:
        room = taken.room({})
        assert room is not None
        page = room.context.new_page()
        page.goto(f"{site}licences.txt")
        page.evaluate("caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))")
    with own.test() as taken:
        another = taken.room({})
        assert another is not None and another is not room, "one fault is one fault: the next test gets a new room"
    another.context.close()


def test_a_test_that_breaks_off_leaves_its_room_to_the_next(rooms: Rooms) -> None:
    with pytest.raises(ZeroDivisionError), rooms.test() as taken:
        room = taken.room({})
        raise ZeroDivisionError
    with rooms.test() as taken:
        assert room is taken.room({})


def test_other_options_get_a_context_of_their_own(rooms: Rooms) -> None:
    with rooms.test() as taken:
        assert [None] * 3 == [
            taken.room(options)
            for options in (
                {"java_script_enabled": False},
                {"device_scale_factor": 2},
                {"permissions": ["clipboard-read"]},
            )
        ]
