"""The day that a paper's own date names: the ways in which dates are written in Britain, day first, and ISO 8601."""

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
EARLIEST, LATEST = 1970, 2200
_DAYS_BEFORE = (0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365)
_SHORT_YEAR = 100


def _month(word: str) -> int:
    """A month's number by its name, whole or short; 0 for none."""
    start = word[:3].lower()
    return MONTHS.index(start) + 1 if start in MONTHS and word.isalpha() else 0


def _leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _day_number(year: int, month: int, day: int) -> int | None:
    """Days since 1970-01-01; None for a day that no calendar has."""
    if not (EARLIEST <= year <= LATEST and 1 <= month <= len(MONTHS)):
        return None
    leap = 1 if _leap(year) else 0
    length = _DAYS_BEFORE[month] - _DAYS_BEFORE[month - 1] + (leap if month == 2 else 0)
    if not 1 <= day <= length:
        return None
    before = year - 1
    years = 365 * (year - EARLIEST) + before // 4 - before // 100 + before // 400 - 477
    return years + _DAYS_BEFORE[month - 1] + (leap if month > 2 else 0) + day - 1


def day_of(text: str) -> int | None:
    """The day that a text names, in days since 1970; None where it names none with its year."""
    words = "".join(sign if sign.isalnum() else " " for sign in text).split()
    plain = [
        word[:-2] if word[:-2].isdigit() and word[-2:].lower() in ("st", "nd", "rd", "th") else word for word in words
    ]
    if len(plain) == 4 and plain[0].isalpha() and not _month(plain[0]):
        plain = plain[1:]  # the day of the week
    if len(plain) != 3:
        return None
    named = next((place for place, word in enumerate(plain) if _month(word)), None)
    if named == 0:
        plain = [plain[1], plain[0], plain[2]]
    elif named is None and len(plain[0]) == 4:
        plain.reverse()
    first, second, third = plain
    month = _month(second) or (int(second) if _is_small(second) else 0)
    if not (_is_small(first) and _is_small(third)):
        return None
    year = int(third) + (2000 if int(third) < _SHORT_YEAR else 0)
    return _day_number(year, month, int(first))


def _is_small(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) <= 4
