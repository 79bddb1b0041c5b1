"""One name for one thing: what sheets and plans send a reader to bears that name on the page."""

import re
from pathlib import Path

from pycore.words import checking, classroom, furniture, sheet

WORDS = Path(__file__).parents[2] / "pycore"


def test_sheets_send_to_the_tab_by_its_own_name() -> None:
    assert furniture.TABS["check"] == checking.TITLE
    assert f"“{checking.TITLE}”" in sheet.OPENS_ISSUED[0]


def test_the_lesson_view_has_one_name_that_its_button_begins() -> None:
    assert classroom.TITLE.startswith(classroom.LESSON)
    others = [
        path.name
        for folder in ("words", "calculators")
        for path in sorted((WORDS / folder).rglob("*.py"))
        for text in re.findall(r'"([^"\n]+)"', path.read_text("utf-8").split('"""', 2)[-1])
        if re.search(r"[Cc]lassroom view", text)
    ]
    assert [] == others
