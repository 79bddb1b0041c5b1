"""The front page: the sheets that can be made, as real drawings on a board."""

from collections.abc import Iterable, Mapping
from typing import Protocol

from pycore.drawing import Page
from pycore.forms import links
from pycore.forms.fields import VERSION, Field, default_form
from pycore.pages.paper import PAPER_PAGES, PaperPage
from pycore.quantity import plain
from pycore.render.checking import code_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.sums.answer import Answer
from pycore.words import class_set, furniture, lesson_plans, practice, readings
from pycore.words import paper as paper_words
from pycore.words.phrase import Phrase
from pycore.writers import svg


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
    def fields(self) -> tuple[Field, ...]:
        """The form's fields, in order."""

    def answer(self, form: Mapping[str, str]) -> Answer:
        """The answer to a form; raises InputError when it cannot be used."""


def in_short(description: str) -> str:
    """Return the subject of a page: the part of its description before the colon, as a sentence."""
    return description.partition(":")[0].rstrip(".") + "."


def _sheet(calculator: CatalogueEntry, answer: Answer) -> Markup:
    """Return one drawing on the board: the figure of the page's example, laid out small but readable.

    A page without such a view shows its sheet.
    """
    page = answer.views.get("phone", answer.sheet)
    drawing = _drawing(page, calculator.slug, "small")
    address = f"{calculator.slug}/"
    # The picture is a link for the pointer only: keyboard and reader have the named one below it.
    picture = h("a", {"class": "picture", "href": address, "tabindex": -1, "aria-hidden": "true"}, drawing)
    scale = next((output.text for output in answer.outputs if output.name == "scale"), "")
    caption = h("div", {"class": "title"},
                h("h2", None, h("a", {"href": address}, calculator.title)),
                h("p", None, phrase_html(in_short(calculator.description))),
                h("p", {"class": "caption"}, scale) if scale else None)  # fmt: skip
    return h("li", None, picture, caption)


def _blank(page: PaperPage) -> Markup:
    """Return a sheet of blank paper on its board; it opens as shown."""
    sheet = page.make({**default_form(page.fields), **dict(page.on_board)})
    address = f"{page.slug}/" + (f"#{links.fragment(sheet.link)}" if page.on_board else "")
    drawing = _drawing(sheet.page, page.slug, "small")
    shape = "upright" if sheet.page.height > sheet.page.width else "level"
    picture = h("a", {"class": f"picture {shape}", "href": address, "tabindex": -1, "aria-hidden": "true"}, drawing)
    caption = h("div", {"class": "title"}, h("h3", None, h("a", {"href": address}, page.title)),
                h("p", None, page.short), h("p", {"class": "caption"}, paper_words.FULL_SIZE))  # fmt: skip
    return h("li", None, picture, caption)


def _practice(calculators: Iterable[CatalogueEntry]) -> Markup:
    """Return the links to practice, and to the problem of a printed code."""
    heading = h("h2", None, h("a", {"href": f"{practice.SLUG}/"}, practice.TITLE))
    opening = h("a", {"class": "open", "href": f"{practice.SLUG}/"}, practice.HOME_OPEN)
    # Any page reads a code, and goes to the page that it belongs to.
    reader = next(iter(calculators)).slug
    marks: Marks = {"class": "home-code", "data-code-page": f"{reader}/#v={VERSION}&code="}
    typed = h("div", marks, code_html())
    return h("section", {"class": "class-way"}, h("div", None, heading, h("p", None, practice.LEAD)), opening, typed)


def _class_set() -> Markup:
    """Return the link to class sets, with a short description."""
    heading = h("h2", None, h("a", {"href": f"{class_set.SLUG}/"}, class_set.TITLE))
    opening = h("a", {"class": "open", "href": f"{class_set.SLUG}/"}, class_set.HOME_OPEN)
    return h("section", {"class": "class-way"}, h("div", None, heading, h("p", None, class_set.LEAD)), opening)


def _blanks() -> Markup:
    """Return the second board: paper and instruments."""
    board = h("ul", {"class": "shelf"}, [_blank(page) for page in PAPER_PAGES.values()])
    return h("section", {"class": "blanks"}, h("h2", None, furniture.HOME_PAPER), board)


def _lessons() -> Markup:
    """Return the links to lesson plans and to the short pages for learners."""
    pages = (*lesson_plans.LISTED, *readings.LISTED)
    items = [h("li", None, h("a", {"href": f"{slug}/"}, title), h("p", None, short)) for slug, title, short in pages]
    return h("section", {"class": "lessons"}, h("h2", None, furniture.HOME_LESSONS), h("ul", None, items))


def _drawing(page: Page, slug: str, name: str) -> Markup:
    return Markup.trusted(svg.write(page, prefix=f"home-{slug}-{name}", role="view", view=name))


def length_on_paper(answers: Iterable[Answer]) -> str:
    """Return the first length that a sheet on the board shows, in mm; raises ValueError if none shows any."""
    for answer in answers:
        for output in answer.outputs:
            if output.name.endswith("length") and output.value:
                return f"{plain(round(output.value, 1))} mm"
    raise ValueError("no sheet has a result that is a length")


def _points(points: tuple[tuple[str, Phrase], ...]) -> Markup:
    items = [h("div", None, h("h3", None, title), h("p", None, phrase_html(text))) for title, text in points]
    return h("section", {"class": "points"}, h("h2", {"class": "away"}, furniture.HOME_WHAT), items)


def home_html(calculators: Iterable[CatalogueEntry]) -> Markup:
    """Title, purpose, the board, and what a visitor gets."""
    answered = [(calculator, calculator.answer(default_form(calculator.fields))) for calculator in calculators]
    head = h("div", {"class": "home-head"}, h("h1", None, furniture.HOME_TITLE), h("p", None, furniture.HOME_LEAD))
    board = h("ul", {"class": "board"}, [_sheet(calculator, answer) for calculator, answer in answered])
    points = _points(furniture.home_points(length_on_paper(answer for _, answer in answered)))
    practised = _practice([calculator for calculator, _ in answered])
    return join(head, board, practised, _class_set(), _blanks(), _lessons(), points)
