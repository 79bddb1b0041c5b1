"""Links that stand on paper somewhere: each gives its own sheet again, for as long as there are pages.

`links/v1.toml` and each calculator's `links.toml` hold links of version 1, `links/v2.toml` of version 2, with what they
gave: results in SI units, the page's size, and every arrow in mm from the star point, y up. A later version adds files
of its own; nothing that stands in these is changed. A link that comes out otherwise is a fault of the edition, not of
the file.
"""

import json
import re

import pytest
from calculators.folders import LINKS
from cases.test_cases import OUTPUT

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import VERSIONS
from pycore.pages.paper import PAPER_PAGES

PAGES = {**CALCULATORS, **PAPER_PAGES}
TRUE = 0.005  # mm
ARROW = re.compile(
    r'<g[^>]* data-phasor="([^"]+)"( data-copy="")?[^>]*>.*?'
    r'<line [^>]*x1="([\d.-]+)" y1="([\d.-]+)" x2="([\d.-]+)" y2="([\d.-]+)"'
)
START = re.compile(r'<g data-step="\d+">.*?<circle [^>]*cx="([\d.-]+)" cy="([\d.-]+)"')
SIZE = re.compile(r'data-sheet="" width="([\d.]+)mm" height="([\d.]+)mm"')


def ask(page: str, do: str, **more: object) -> dict:
    reply = json.loads(api.handle(json.dumps({"do": do, "page": page, **more}))[0])
    assert reply["ok"], reply["errors"]
    return reply


def opened(page: str, fragment: str) -> dict:
    """The form that a page has when it is opened with a link."""
    found = ask(page, "open", fragment=fragment)
    assert [] == found["notices"]
    return found["form"]


def answered(page: str, form: dict) -> dict:
    """What a page says to a form."""
    answer = ask(page, "answer", form=form, parts=["answer", "sheet"])
    assert [] == answer["errors"]
    return answer


def arrows_of(svg: str) -> dict[str, list[float]]:
    """Tail and tip of each phasor from the star point, mm, y up; one drawn again has a star after its name."""
    start = START.search(svg)
    if start is None:
        return {}
    x0, y0 = map(float, start.groups())
    found = {}
    for key, copy, *ends in ARROW.findall(svg):
        x1, y1, x2, y2 = map(float, ends)
        found[key + ("*" if copy else "")] = [x1 - x0, y0 - y1, x2 - x0, y0 - y2]
    return found


@pytest.mark.parametrize("link", LINKS, ids=[link["id"] for link in LINKS])
def test_a_link_of_every_version_gives_the_sheet_that_it_was_printed_on(link: dict):
    """And sharing what it opens gives a link to the same sheet."""
    page, _, fragment = link["address"].partition("/#")
    form = opened(page, fragment)
    answer = answered(page, form)
    sheet = answer["regions"]["sheet"]
    assert link["size"] == [float(side) for side in SIZE.search(sheet).groups()]
    assert "marks" not in link or link["marks"] == len(re.findall(r"<(?:line|path|circle) ", sheet))
    found = dict(OUTPUT.findall("".join(answer["regions"].get(name, "") for name in ("answer", "results"))))
    for name, value in link.get("results", {}).items():
        assert value == (pytest.approx(float(found[name]), rel=1e-9) if value != "" else found[name]), name
    arrows = arrows_of(sheet)
    for key, ends in link.get("arrows", {}).items():
        assert ends == pytest.approx(arrows[key], abs=TRUE), key
    assert set(link.get("arrows", {})) == set(arrows)
    shared = ask(page, "share", form=form, base="https://folio.example/")["link"].partition("#")[2]
    again = answered(page, opened(page, shared))["regions"]["sheet"]
    assert arrows == arrows_of(again)
    assert SIZE.search(sheet)[0] == SIZE.search(again)[0]


def test_every_page_and_every_choice_has_a_link_that_holds_it():
    """Each value of each choice of each page stands in some link; so do each kind of text that a field takes."""
    held: dict[str, set[str]] = {}
    for link in LINKS:
        page, _, fragment = link["address"].partition("/#")
        held.setdefault(page, set()).update(fragment.split("&"))
        assert fragment.startswith(tuple(f"v={version}&" for version in VERSIONS))
    assert set(PAGES) == set(held)
    wanted = {
        (slug, f"{field.name}={choice.value}")
        for slug, page in PAGES.items()
        for field in page.fields if field.kind == "choice" and not field.private
        for choice in field.options if choice.value != ""
    }  # fmt: skip
    missing = {(slug, pair) for slug, pair in wanted if pair not in held[slug]}
    assert set() == missing, "give each new choice a link in its page's file, so that it means the same for ever"


def test_no_two_links_share_a_name():
    names = [link["id"] for link in LINKS]
    assert sorted(set(names)) == sorted(names)
