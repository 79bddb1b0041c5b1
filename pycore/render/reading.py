"""Pages that are read: headings, paragraphs, tables and pictures."""

from collections.abc import Iterable

from pycore.calculators.interface import Grid, Paragraph
from pycore.pages.reading import Figure, ReadingPage, Section
from pycore.render.elements import Markup, h, join
from pycore.render.page import footer_html, header_html, intro_html
from pycore.render.phrase import phrase_html
from pycore.render.site import LANGUAGE, SitePage
from pycore.render.workings import block_html
from pycore.words import furniture
from pycore.words.phrase import Phrase


def _part(block: Paragraph | Grid | Figure, assets: str) -> Markup:
    if isinstance(block, Figure):
        picture = h("img", {"src": f"{assets}study/{block.file}", "alt": block.alternative, "loading": "lazy"})
        return h("figure", {"class": "study"}, picture)
    return block_html(block)


def _section(section: Section, assets: str) -> Markup:
    parts = [_part(block, assets) for block in section.blocks]
    return h("section", {"class": "reading"}, h("h2", None, phrase_html(section.heading)), parts)


def reading_page(page: ReadingPage, assets: str, cautions: Iterable[Phrase | str]) -> SitePage:
    """A page that is read, as the build writes it; ``assets`` is the way from it to the site's assets."""
    sections = [_section(section, assets) for section in page.sections]
    regions: dict[str, str] = {
        "header": header_html("../", home=False),
        "main": join(intro_html(page.title, page.lead), *sections),
        "footer": footer_html("../", tuple(cautions)),
    }
    title = f"{page.title} · {furniture.NAME}"
    return SitePage(page.slug, "reading", title, page.description, LANGUAGE, regions)
