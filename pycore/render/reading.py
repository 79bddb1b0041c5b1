"""Explanatory pages: headings, paragraphs, tables and pictures."""


from pycore.pages.reading import DrawingRow, InlineDrawing, LinkList, ReadBlock, ReadingPage, Section, Steps
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.page import TO_PAGE, footer_html, header_html, intro_html
from pycore.render.phrase import phrase_html
from pycore.render.site import SitePage
from pycore.render.workings import block_html
from pycore.words import furniture, readings, start
from pycore.writers import svg


def _drawing(drawing: InlineDrawing) -> Markup:
    picture = svg.write(drawing.page, prefix=f"read-{drawing.name}", role="view", view=drawing.name)
    return h("figure", {"class": "drawn exact" if drawing.exact else "drawn"}, Markup.trusted(picture))


def _steps(steps: Steps) -> Markup:
    items = [h("li", None, phrase_html(item)) for item in steps.items]
    return h("ul", {"class": "ticked" if steps.ticked else "said", "role": "list"}, items)


def _ways(ways: LinkList) -> Markup:
    items = [h("li", None, h("a", {"href": address}, words)) for words, address in ways.items]
    return h("ul", {"class": "ways"}, items)


def _part(block: ReadBlock) -> Markup:
    if isinstance(block, InlineDrawing):
        return _drawing(block)
    if isinstance(block, Steps):
        return _steps(block)
    if isinstance(block, LinkList):
        return _ways(block)
    if isinstance(block, DrawingRow):
        return h("div", {"class": "drawings"}, [_drawing(drawing) for drawing in block.drawings])
    return block_html(block)


def _section(section: Section) -> Markup:
    parts = [_part(block) for block in section.blocks]
    further = " new-sheet" if section.sheet else (" screen-only" if section.screen else "")
    marks: Marks = {"class": f"reading{further}"}
    return h("section", marks, h("h2", None, phrase_html(section.heading)), h("div", {"class": "said-here"}, parts))


def reading_page(page: ReadingPage) -> SitePage:
    """Return an explanatory page as the build writes it."""
    sections = [_section(section) for section in page.sections]
    printing = h("p", {"class": "how-to-print"}, readings.HOW_TO_PRINT) if page.one_sheet else None
    regions: dict[str, str] = {
        "header": header_html("../", page.slug, skips=(TO_PAGE,)),
        "kind": "handed" if page.one_sheet else "",
        "main": join(intro_html(page.title, page.lead), *sections, printing),
        "footer": footer_html("../", furniture.CAUTIONS),
    }
    title = f"{page.title} · {furniture.NAME}"
    return SitePage(page.slug, "reading", title, page.description, furniture.LANGUAGE, regions)


def not_found_page(name: str, root: str) -> SitePage:
    """Return the page for addresses that have none. ``name``: its file; ``root``: where the site begins."""
    regions: dict[str, str] = {
        "header": header_html(root, name, skips=(TO_PAGE,)),
        "kind": "",
        "main": intro_html(start.NO_PAGE, start.NO_PAGE_LEAD),
        "footer": footer_html(root, ()),
    }
    title = f"{start.NO_PAGE} · {furniture.NAME}"
    return SitePage(name, "reading", title, start.NO_PAGE_LEAD, furniture.LANGUAGE, regions)
