"""The day that a paper's date names, against the calendar of Python's library."""

from datetime import date, timedelta

import pytest

from pycore.pages.paper_day import day_of

FIRST = date(1970, 1, 1)


def test_every_day_is_that_of_the_calendar():
    for number in range(0, 80_000, 7):
        day = FIRST + timedelta(number)
        assert number == day_of(f"{day.day}/{day.month}/{day.year}") == day_of(day.isoformat())


@pytest.mark.parametrize("typed", [
    "7 Dec 2026", "Mon 7 December 2026", "07/12/2026", "7.12.26", "2026-12-07", "Dec 7, 2026", "7th Dec 2026",
])  # fmt: skip
def test_a_date_may_be_written_in_many_ways(typed: str):
    assert date(2026, 12, 7) == FIRST + timedelta(day_of(typed) or 0)


@pytest.mark.parametrize("typed", [
    "", "week 2", "7 Dec", "31/4/2026", "29 Feb 2027", "7/13/2026", "1/1/1900", "²/1/2026",
])  # fmt: skip
def test_what_names_no_day_gives_none(typed: str):
    assert day_of(typed) is None
