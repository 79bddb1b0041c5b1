"""The front page: the main job with its fields, two entrances, and every calculator as a drawing on its board."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Protocol

from pycore.drawing import Page
from pycore.forms import links
from pycore.forms.fields import VERSION, Field, default_form
from pycore.render.answer import answer_html, front_html, scale_text
from pycore.render.checking import code_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import COLUMNS, rows_html
from pycore.render.phrase import phrase_html
from pycore.sums.answer import Answer
from pycore.words import (
    boards,
    class_set,
    codes,
    pile,
    practice,
    question_paper,
    readings,
)
from pycore.words import home as words
from pycore.writers import svg

LESSON = (("view", "lesson"), ("step", "1"))
BLANK = (("sheet", "problem"),)
DRAW = (*BLANK, ("view", "draw"))
COLUMN = 205.0
"""mm; what a column of the boards is wide. All drawings have this one scale, however wide the column is."""


class CatalogueEntry(Protocol):
    """What the front page shows of a calculator."""

    @property
    def slug(self) -> str:
        """The page's folder."""

    @property
    def title(self) -> str:
        """The page's heading."""

    @property
    def description(self) -> str:
        """One sentence on what the page does."""

    @property
    def board(self) -> str:
        """The group in which it stands."""

    @property
    def job(self) -> str:
        """What one does with it."""

    @property
    def fields(self) -> tuple[Field, ...]:
        """The form's fields, in order."""

    def answer(self, form: Mapping[str, str]) -> Answer:
        """The answer to a form; raises InputError when it cannot be used."""

    def figure(self, form: Mapping[str, str]) -> Page:
        """The figure of a form's sheet, without letters."""

    def inks(self, form: Mapping[str, str]) -> Mapping[str, str]:
        """The ink of each line sample by its name."""


def in_short(description: str) -> str:
    """Return the subject of a page: the part of its description before the colon, as a sentence."""
    return description.partition(":")[0].rstrip(".") + "."


# The main job.


def _shown(main: CatalogueEntry) -> tuple[Field, ...]:
    """Return the fields that the front page has of a calculator: one row of its values."""
    return tuple(field for field in main.fields if field.group == "values")[:COLUMNS]


def _carrying(main: CatalogueEntry, label: str, more: Sequence[tuple[str, str]], style: str = "") -> Markup:
    """Return a link that takes the values along; the page's script keeps it up to date."""
    values = tuple((field.name, field.default) for field in _shown(main))
    start, end = links.fragment((("v", VERSION),)), "".join(f"&{links.fragment((pair,))}" for pair in more)
    address = f"{main.slug}/#{start}"
    marks: Marks = {"class": style or None, "href": f"{address}&{links.fragment(values)}{end}",
                    "data-carries": address, "data-carries-too": end}  # fmt: skip
    return h("a", marks, label)


def _uses(main: CatalogueEntry) -> Markup:
    """Return what can be done with the values, the page itself first."""
    ways = (
        _carrying(main, words.OPEN, (), "first"), _carrying(main, words.LESSON, LESSON),
        _carrying(main, words.BLANK, BLANK),
    )  # fmt: skip
    return h("div", {"class": "uses", "role": "group", "aria-label": words.USE}, ways)


# The entrances.


def _way(link: Markup, note: str) -> Markup:
    return h("li", None, link, h("span", None, note))


def _to(slug: str, said: tuple[str, str]) -> Markup:
    label, note = said
    return _way(h("a", {"href": f"{slug}/"}, label), note)


def _entrance(title: str, before: Markup | None, ways: Iterable[Markup]) -> Markup:
    return h("section", {"class": "entrance"}, h("h2", None, title), before, h("ul", None, ways))


def _entrances(main: CatalogueEntry) -> Markup:
    """Return the ways in for those who learn, with the field of a printed code, and for those who teach."""
    code = code_html(words.OPEN_CODE, words.CODE, codes.EXAMPLE)
    lesson, draw = words.TO_SHOW, words.TO_DRAW
    learning = (
        _to(practice.SLUG, words.TO_PRACTISE), _way(_carrying(main, draw[0], DRAW), draw[1]),
        _to(readings.PROTRACTOR_SLUG, words.TO_READ),
    )  # fmt: skip
    teaching = (
        _way(_carrying(main, lesson[0], LESSON), lesson[1]), _to(class_set.SLUG, words.TO_SET),
        _to(question_paper.SLUG, words.TO_EXAMINE), _to(pile.SLUG, words.TO_MARK),
    )  # fmt: skip
    return join(_entrance(words.LEARNING, code, learning), _entrance(words.TEACHING, None, teaching))


# The boards.


def _sheet(calculator: CatalogueEntry) -> Markup:
    """Return one drawing on its board: the figure of the page's example, at the scale of all."""
    form = default_form(calculator.fields)
    figure = calculator.figure(form)
    share = f"{100 * figure.width / COLUMN:.1f}%"
    drawing = svg.write(figure, prefix=f"home-{calculator.slug}", role="view", view="small", width=share)
    address = f"{calculator.slug}/"
    # The picture is a link for the pointer only: keyboard and reader have the named one below it.
    picture = h("a", {"class": "picture", "href": address, "tabindex": -1, "aria-hidden": "true"},
                Markup.trusted(drawing))
    caption = h("div", {"class": "title"},
                h("h3", None, h("a", {"href": address}, calculator.title)),
                h("p", None, phrase_html(in_short(calculator.description))),
                h("p", {"class": "caption"}, scale_text(calculator.answer(form))))  # fmt: skip
    return h("li", None, picture, caption)


def _board(title: str, members: Sequence[CatalogueEntry]) -> Markup:
    """Return one group, as many columns wide as it has drawings."""
    marks: Marks = {"class": "board", "id": boards.anchor(title), "data-count": len(members)}
    drawings = h("ul", None, [_sheet(calculator) for calculator in members])
    return h("section", marks, h("h2", None, title), drawings)


def boards_of(main: CatalogueEntry, calculators: Iterable[CatalogueEntry]) -> dict[str, list[CatalogueEntry]]:
    """Return every calculator by its board, the boards in their order, the main job first on its own."""
    groups: dict[str, list[CatalogueEntry]] = {board: [] for board in boards.BOARDS}
    for calculator in sorted(calculators, key=lambda one: one.slug != main.slug):
        groups[calculator.board].append(calculator)
    return {board: members for board, members in groups.items() if members}


def home_regions(main: CatalogueEntry, calculators: Iterable[CatalogueEntry]) -> dict[str, Markup]:
    """Return the parts of the front page, with the example of the main job."""
    form = default_form(main.fields)
    answer = main.answer(form)
    shelf = [_board(board, members) for board, members in boards_of(main, calculators).items()]
    return {
        "job": join(h("h1", None, main.job or main.title), h("p", {"class": "lead"}, words.LEAD)),
        "form": rows_html(_shown(main), form, answer.echo),
        "answer": answer_html(answer, main.inks(form)),
        "front": front_html(answer),
        "uses": _uses(main),
        "entrances": _entrances(main),
        "shelf": join(*shelf),
    }
