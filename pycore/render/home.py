"""The front page: the sheets there are, as true drawings standing on a board."""

from collections.abc import Iterable, Mapping
from typing import Protocol

from pycore.calculators.interface import Answer, Field
from pycore.render.elements import Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.words import furniture
from pycore.writers import svg


class Listed(Protocol):
    """What the front page shows of a calculator."""

    slug: str
    title: str
    description: str
    fields: tuple[Field, ...]

    def answer(self, form: Mapping[str, str]) -> Answer:
        """The answer to a form."""


def _sheet(calculator: Listed) -> Markup:
    """One sheet on the board: its default example, the very drawing that its page prints."""
    answer = calculator.answer({field.name: field.default for field in calculator.fields})
    drawing = Markup.trusted(svg.write(answer.sheet, prefix=f"home-{calculator.slug}", role="view", view="small"))
    address = f"{calculator.slug}/"
    # The picture is a link for the pointer only: keyboard and reader have the named one below it.
    picture = h("a", {"class": "picture", "href": address, "tabindex": -1, "aria-hidden": "true"}, drawing)
    caption = h("div", {"class": "title"},
                h("h2", None, h("a", {"href": address}, calculator.title)),
                h("p", None, phrase_html(calculator.description)),
                h("p", {"class": "caption"}, phrase_html(answer.caption)))  # fmt: skip
    opening = h("a", {"class": "open", "href": address}, furniture.HOME_OPEN)
    return h("li", None, picture, h("div", {"class": "under"}, caption, opening))


def _points(points: tuple[tuple[str, str], ...]) -> Markup:
    items = [h("div", None, h("h3", None, title), h("p", None, phrase_html(text))) for title, text in points]
    return h("section", {"class": "points"}, h("h2", {"class": "away"}, furniture.HOME_WHAT), items)


def home_html(calculators: Iterable[Listed]) -> Markup:
    """Title, purpose, the board, and what a visitor gets."""
    head = h("div", {"class": "home-head"}, h("h1", None, furniture.HOME_TITLE), h("p", None, furniture.HOME_LEAD))
    board = h("ul", {"class": "board"}, [_sheet(calculator) for calculator in calculators])
    return join(head, board, _points(furniture.HOME_POINTS))
