"""Every page of the site as regions of HTML: what the build writes before any JavaScript runs."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from pycore.forms.fields import default_form
from pycore.pages import class_set as class_form
from pycore.pages import college as college_form
from pycore.pages import print_setup as setup
from pycore.pages import question_paper as paper_form
from pycore.pages.lesson_plans import lessons_of
from pycore.pages.paper import PAPER_PAGES, PaperPage
from pycore.render import (
    class_marks,
    class_set,
    college,
    easy,
    paper,
    paper_marks,
    pile,
    practice,
    print_setup,
    question_paper,
    register,
    this_device,
)
from pycore.render.checking import check_html
from pycore.render.draw_way import draw_way_html
from pycore.render.elements import join
from pycore.render.form import (
    compare_html,
    counted,
    example_html,
    how_to_html,
    method_html,
    options_html,
    scale_html,
    to_paper_html,
    values_html,
)
from pycore.render.home import CatalogueEntry, home_regions
from pycore.render.lesson_shell import lesson_html, more_actions_html
from pycore.render.page import (
    TO_ACTIONS,
    TO_ANSWER,
    TO_PAGE,
    actions_html,
    also_html,
    elsewhere_html,
    footer_html,
    header_html,
    intro_html,
    link_notices_html,
    live_html,
    more_html,
    no_script_html,
    progress_html,
    request_html,
    status_html,
    tabs_html,
    unprintable_html,
)
from pycore.render.regions import regions_of
from pycore.render.start import words_html
from pycore.words import checking as checking_words
from pycore.words import class_set as class_words
from pycore.words import college as college_words
from pycore.words import furniture
from pycore.words import home as home_words
from pycore.words import pile as pile_words
from pycore.words import practice as practice_words
from pycore.words import print_setup as setup_words
from pycore.words import question_paper as paper_words
from pycore.words import register as register_words
from pycore.words import this_device as device_words
from pycore.words.phrase import Phrase, plain


class PageWords(Protocol):
    """What the words of a page say of the page itself."""

    @property
    def SLUG(self) -> str:
        """Its folder."""

    @property
    def TITLE(self) -> str:
        """Its heading."""

    @property
    def DESCRIPTION(self) -> str:
        """What it is for, in a sentence for search engines."""


class Calculator(CatalogueEntry, Protocol):
    """What a page needs from a calculator, besides what the front page shows of it."""

    @property
    def topic(self) -> int | None:
        """The page's number in practice codes, if it has problems."""

    @property
    def scenario(self) -> str:
        """The example's story."""

    @property
    def warning(self) -> str:
        """A caution before everything else; "" for none."""

    @property
    def cautions(self) -> Sequence[Phrase | str]:
        """The cautions of the page."""


@dataclass(frozen=True, slots=True)
class SitePage:
    """One page. ``slug``: its folder ("" for the front page). ``template``: the name of its shell without ending.
    ``regions``: the HTML that the shell inserts, by name. ``answers``: the calculator whose answers it shows, if that
    is another page's."""

    slug: str
    template: str
    title: str
    description: str
    language: str
    regions: Mapping[str, str]
    answers: str = ""


def _text(words: Phrase | str) -> str:
    return words if isinstance(words, str) else plain(words)


def calculator_page(calculator: Calculator) -> SitePage:
    """The page of one calculator, filled with its default example."""
    form = default_form(calculator.fields)
    answer = calculator.answer(form)
    compared = compare_html(calculator.fields, form, answer.echo)
    regions: dict[str, str] = dict(regions_of(answer, inks=calculator.inks(form)))
    regions |= {
        "start": words_html(),
        "header": header_html("../", current="true", skips=(TO_ANSWER, TO_ACTIONS)),
        "intro": intro_html(
            calculator.title, calculator.scenario, calculator.warning, instead=example_html(),
            how=join(how_to_html(calculator.fields, form), also_html(calculator.fields), elsewhere_html(),
                     link_notices_html()),
        ),
        "form": values_html(calculator.fields, form, answer.echo),
        "tabs": tabs_html(compare=bool(compared)),
        "papers": answer.page_key,
        "outofview": checking_words.OUT_OF_VIEW,
        "counted": str(counted(calculator.fields, form)),
        "check": check_html(answer.answer_request) if answer.answer_request else join(),
        "compare": compared,
        "method": join(method_html(calculator.fields, form),
                       scale_html(calculator.fields, form, answer.echo, join(draw_way_html(), to_paper_html()))),
        "options": options_html(calculator.fields, form, answer.echo),
        "actions": actions_html(lesson=True),
        "easy": easy.place_html(),
        "more": more_html(easy.button_html(), more_actions_html(), print_setup.line_html("../")),
        "lesson": lesson_html(calculator.fields),
        "truesize": print_setup.true_size_html(),
        "unprintable": unprintable_html(),
        "request": request_html(),
        "noscript": no_script_html(),
        "progress": progress_html(example=True),
        "live": live_html(),
        "footer": footer_html("../", calculator.cautions, lessons_of(calculator.slug, calculator.title)),
    }
    return SitePage(calculator.slug, "sheet", f"{calculator.title} · {furniture.NAME}",
                    _text(calculator.description), furniture.LANGUAGE, regions)  # fmt: skip


def home_page(calculators: Sequence[Calculator], main: str = "") -> SitePage:
    """Return the front page; ``main``: the slug of the calculator at its head, else the first."""
    first = next((calculator for calculator in calculators if calculator.slug == main), calculators[0])
    regions: dict[str, str] = {
        "start": words_html(),
        "header": header_html("./"),
        **home_regions(first, calculators),
        "noscript": no_script_html(),
        "status": status_html(example=True),
        "footer": footer_html("./", furniture.CAUTIONS),
    }
    return SitePage("", "home", f"{furniture.NAME} · {home_words.TITLE}", home_words.DESCRIPTION, furniture.LANGUAGE,
                    regions, first.slug)  # fmt: skip


def print_setup_page() -> SitePage:
    """Return the print set-up as it opens: without readings and without a stored correction."""
    form = default_form(setup.FIELDS)
    opened = setup.set_up(form, None)
    regions: dict[str, str] = {**print_setup.regions(opened, None), **print_setup.fixed_regions(form)}
    regions |= {
        "start": words_html(),
        "header": header_html("../", setup.SLUG),
        "intro": intro_html(setup_words.TITLE, setup_words.LEAD),
        "status": status_html(),
        "footer": footer_html("../", furniture.CAUTIONS),
    }
    return SitePage(setup.SLUG, "print-setup", f"{setup_words.TITLE} · {furniture.NAME}", setup_words.DESCRIPTION,
                    furniture.LANGUAGE, regions)  # fmt: skip


def paper_page(page: PaperPage) -> SitePage:
    """A page of blank paper with its default sheet."""
    form = default_form(page.fields)
    sheet = page.make(form)
    regions: dict[str, str] = {
        "start": words_html(),
        "header": header_html("../", page.slug),
        "intro": join(intro_html(page.title, page.lead), link_notices_html()),
        "form": paper.choices_html(page, form),
        "actions": join(paper.reminder_html(), actions_html(), print_setup.line_html("../")),
        "truesize": print_setup.true_size_html(),
        "unprintable": unprintable_html(),
        "noscript": paper.no_script_html(),
        "sheet": paper.sheet_html(sheet.page, sheet.page_key),
        "status": status_html(),
        "footer": footer_html("../", furniture.CAUTIONS),
    }
    return SitePage(page.slug, "paper", f"{page.title} · {furniture.NAME}", page.description, furniture.LANGUAGE,
                    regions)  # fmt: skip


def _framed(
    words: PageWords, template: str, regions: Mapping[str, str], cautions: Sequence[Phrase | str] = furniture.CAUTIONS
) -> SitePage:
    """A page with these regions between head and foot, and what its words say of it."""
    frame = {
        "start": words_html(),
        "header": header_html("../", words.SLUG),
        "status": status_html(),
        "footer": footer_html("../", cautions),
    }
    title = f"{words.TITLE} · {furniture.NAME}"
    return SitePage(words.SLUG, template, title, words.DESCRIPTION, furniture.LANGUAGE, {**regions, **frame})


def class_set_page() -> SitePage:
    """Return the page of class sets as it opens."""
    form = default_form(class_form.FIELDS)
    group = class_form.default_set()
    regions: dict[str, str] = {
        "intro": join(intro_html(class_words.TITLE, class_words.LEAD), link_notices_html()),
        "form": class_set.form_html(form),
        "groups": class_set.groups_html(form),
        "actions": class_set.actions_html(),
        "set": class_set.set_html(group),
        "another": class_set.another_html(),
        "sheet": class_set.sheet_html(group),
        "paste": class_marks.paste_html(),
        "noscript": class_set.no_script_html(),
    }
    return _framed(class_words, "class-set", regions)


def question_paper_page() -> SitePage:
    """Return the page of question papers as it opens."""
    form = default_form(paper_form.FIELDS)
    paper = paper_form.default_paper()
    regions: dict[str, str] = {
        "intro": join(intro_html(paper_words.TITLE, paper_words.LEAD), link_notices_html()),
        "form": question_paper.form_html(form),
        "groups": question_paper.groups_html(form),
        "actions": question_paper.actions_html(),
        "paper": question_paper.paper_html(paper),
        "front": question_paper.front_html(paper),
        "begin": question_paper.begin_html(),
        "lost": question_paper.lost_html(),
        "paste": paper_marks.paste_html(),
        "noscript": question_paper.no_script_html(),
    }
    return _framed(paper_words, "question-papers", regions)


def register_page() -> SitePage:
    """Return the register as it opens, before the script has looked at what is kept."""
    regions: dict[str, str] = {
        "main": join(intro_html(register_words.TITLE, register_words.LEAD, keeps=register_words.STAYS),
                     register.main_html()),
    }
    return _framed(register_words, "register", regions, cautions=())


def pile_page() -> SitePage:
    """Return the page of a pile of photographs as it opens: there is none yet."""
    regions: dict[str, str] = {
        "intro": intro_html(pile_words.TITLE, pile_words.LEAD),
        "main": pile.main_html(),
    }
    return _framed(pile_words, "photographs", regions, cautions=())


def college_page() -> SitePage:
    """Return the page of a college's settings as it opens: nothing is chosen."""
    form = default_form(college_form.FIELDS)
    regions: dict[str, str] = {
        "intro": join(intro_html(college_words.TITLE, college_words.LEAD, keeps=college_words.STAYS),
                      link_notices_html()),
        "form": college.form_html(form),
        "actions": college.actions_html(),
        "sheet": college.sheet_html(college_form.read_settings(form)),
        "noscript": college.no_script_html(),
    }
    return _framed(college_words, "college-settings", regions)


def practice_page() -> SitePage:
    """Return free practice as it opens."""
    regions: dict[str, str] = {
        **practice.regions(),
        "intro": join(intro_html(practice_words.TITLE, practice_words.LEAD),
                      this_device.learner_html("../")),
    }
    return _framed(practice_words, "practice", regions)


def this_device_page() -> SitePage:
    """Return the page that lists what this device keeps."""
    regions: dict[str, str] = {
        "start": words_html(),
        "header": header_html("../", device_words.SLUG, skips=(TO_PAGE,)),
        "main": join(intro_html(device_words.TITLE, device_words.LEAD, keeps=device_words.KEEPS),
                     this_device.main_html()),
        "footer": footer_html("../", ()),
    }
    return SitePage(device_words.SLUG, "this-device", f"{device_words.TITLE} · {furniture.NAME}",
                    device_words.DESCRIPTION, furniture.LANGUAGE, regions)  # fmt: skip


def pages_of(calculators: Iterable[Calculator], main: str = "") -> tuple[SitePage, ...]:
    """The front page, one page for each calculator in the order given, class sets, question papers, photographs, the
    register, the college's settings, blank paper, print set-up, and what this device keeps."""
    listed = tuple(calculators)
    sheets = (calculator_page(calculator) for calculator in listed)
    blank = (paper_page(page) for page in PAPER_PAGES.values())
    return (home_page(listed, main), *sheets, practice_page(), class_set_page(), question_paper_page(),
            pile_page(), register_page(), college_page(), *blank, print_setup_page(), this_device_page())  # fmt: skip


def site_pages() -> tuple[SitePage, ...]:
    """Every page of the site, with the registered calculators."""
    from pycore.calculators.registry import CALCULATORS, MAIN  # the browser has no need to load it for this module

    return pages_of(CALCULATORS.values(), MAIN)
