"""The pictures of README.md: a sheet and a frame of a lesson, of the example of the first page.

They stand in site/pictures, because a reader of README.md has not built anything. `build` writes them anew; a test
compares them with what pycore writes now. The lettering is embedded, as in a handout: an image loads no other file.
"""

import re
from pathlib import Path

from making.paths import SITE

PICTURES = SITE / "pictures"
LESSON_STEP = 11
"""The frame of the lesson in which the protractor lies on the sheet."""
_HEAD = re.compile(r"<svg[^>]*>")
_WORDS = re.compile(r">([^<]+)<")


def pictures() -> dict[str, str]:
    """Each picture by the name of its file, as SVG."""
    from pycore.calculators.registry import CALCULATORS, MAIN
    from pycore.forms.fields import default_form
    from pycore.writers import svg

    page = CALCULATORS[MAIN]
    form = default_form(page.fields)
    frame = page.lesson(form, "lesson", LESSON_STEP)
    return {
        "sheet.svg": _complete(svg.write(page.sheet_page(form), prefix="sheet", role="sheet")),
        "lesson.svg": _complete(svg.write(frame.picture, prefix="lesson", role="view", view="lesson")),
    }


def write_pictures(folder: Path = PICTURES) -> None:
    """Write the pictures that have changed."""
    folder.mkdir(exist_ok=True)
    for name, text in pictures().items():
        path = folder / name
        if not path.exists() or drawing_of(path.read_text("utf-8")) != drawing_of(text):
            path.write_text(text, encoding="utf-8", newline="\n")


def drawing_of(text: str) -> str:
    """A picture without its lettering, whose compression may differ from one machine to another."""
    return re.sub(r"<style>.*?</style>", "", text, flags=re.DOTALL)


def _complete(text: str) -> str:
    """A drawing that stands by itself: with its lettering, and white paper below it."""
    from pycore.lettering.embedded import faces_css

    head = _HEAD.match(text)
    if head is None:
        raise ValueError("no drawing begins here")
    style = f"<style>{faces_css(''.join(_WORDS.findall(text)))}</style>"
    paper = '<path d="M-999-999H1999V1999H-999Z" fill="#fff"/>'
    return f"{head[0]}{style}{paper}{text[head.end():]}\n"
