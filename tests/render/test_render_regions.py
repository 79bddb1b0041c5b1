"""The regions of a page: every result named, every move tied to its step, nothing unescaped."""

import json
from collections import Counter
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from render.example import IN, ExampleCalculator, answer

from pycore.calculators.registry import CALCULATORS, MAIN
from pycore.pages.paper import PAPER_PAGES
from pycore.render.answer import output_html
from pycore.render.form import method_html, options_html, values_html
from pycore.render.home import boards_of, home_regions, in_short
from pycore.render.mathml import formula_html, is_long, pieces
from pycore.render.phrase import phrase_html
from pycore.render.regions import regions_of
from pycore.render.sample import sample
from pycore.render.site import calculator_page, home_page, pages_of
from pycore.sums.answer import Output
from pycore.words import boards
from pycore.words.formula import Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import say

VOID = {"input", "br", "hr", "img", "meta", "link", "wbr", "col"}
NO_BREAK = "\u00a0"


class Tree(HTMLParser):
    """Reads HTML and holds that every element is closed in its turn."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text: list[str] = []
        self._open: list[str] = []
        self.feed(html)
        self.close()
        assert [] == self._open

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self._open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self._open.pop() == tag

    def handle_data(self, data):
        self.text.append(data)

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]


@pytest.fixture(scope="module")
def regions():
    return regions_of(answer({}))


@pytest.fixture(scope="module")
def page():
    return calculator_page(ExampleCalculator())


def test_every_output_of_the_answer_appears_once_with_its_value(regions):
    outputs = Tree(regions["answer"] + regions["results"]).all("output")
    expected = {
        "neutral-current": "11.6310790558", "neutral-angle": "-87.5123456789", "neutral-length": "58.155395279",
        "undefined": "",
    }  # fmt: skip
    assert expected == {output["name"]: output["data-value"] for output in outputs}
    assert len(expected) == len(outputs)


@pytest.mark.parametrize(
    ("value", "written"),
    [(None, ""), (0.0, "0"), (-0.0, "0"), (0.1 + 0.2, "0.3"), (1e-9, "1e-09"), (123456789.123456, "123456789.123")],
)
def test_data_values_have_twelve_digits_and_no_minus_zero(value, written):
    outputs = Tree(output_html(Output("x", value, "text"))).all("output")
    assert [written] == [output["data-value"] for output in outputs]


def test_an_output_keeps_figure_and_unit_together():
    html = output_html(Output("x", 11.6, "11.6", "A"))
    assert f"11.6{NO_BREAK}A" == "".join(Tree(html).text)
    assert "87.5°" == "".join(Tree(output_html(Output("x", 87.5, "87.5", "°"))).text)


def test_what_was_typed_is_escaped_wherever_it_appears():
    typed = "<img src=x onerror=alert(1)>"
    for html in regions_of(answer({"i1": typed})).values():
        assert [] == Tree(html).all("img")
    assert "&lt;img" in regions_of(answer({"i1": typed}))["answer"]


def test_no_region_holds_an_input_or_a_style(regions):
    """Inputs in a replaced region would lose focus; style attributes are refused by the page's policy."""
    for html in regions.values():
        tree = Tree(html)
        assert not {"input", "select", "textarea", "style", "script"} & {tag for tag, _ in tree.elements}
        assert not [attributes for _, attributes in tree.elements if "style" in attributes]


def test_the_sheet_is_one_true_drawing_on_its_page(regions):
    sheets = [marks for marks in Tree(regions["sheet"]).all("svg") if "data-sheet" in marks]
    assert [("297mm", "210mm")] == [(marks["width"], marks["height"]) for marks in sheets]
    assert 'data-page="a4l"' in regions["sheet"]


def test_alternatives_carry_the_values_that_bring_them(regions):
    shown = regions["workings"].partition("<details class=\"working")[0]
    buttons = [marks for marks in Tree(f"<div>{shown}</div>").all("button") if "data-set" in marks]
    assert [{"order": "23"}] == [json.loads(marks["data-set"] or "") for marks in buttons]


def test_the_working_on_the_sheet_stands_first_and_open_the_others_folded(regions):
    tree = Tree(regions["workings"])
    marked = [(tag, marks["data-working"]) for tag, marks in tree.elements if "data-working" in marks]
    assert [("section", "parallelogram-12"), ("details", "components")] == marked


def test_workings_carry_what_says_that_they_are_old(regions):
    """The style sheet shows it as soon as they are, so that no older number stands there unmarked."""
    text = "".join(Tree(regions["workings"]).text)
    assert text.startswith("Old workings 18.4~A, 11.2~A, 24.6~A".replace("~", NO_BREAK))


def test_the_kinds_of_sheet_are_offered_where_there_are_any():
    tree = Tree(regions_of(replace(answer({}), kind="overlay"), ["sheet"])["kinds"])
    kinds = {json.loads(marks["data-set"] or "")["sheet"]: marks["aria-pressed"]
             for marks in tree.all("button") if "aria-pressed" in marks}  # fmt: skip
    assert {"construction": "false", "problem": "false", "overlay": "true"} == kinds


def test_a_page_of_one_kind_offers_none(regions):
    assert [] == [marks for marks in Tree(regions["kinds"]).all("button") if "aria-pressed" in marks]


def test_moves_are_tied_to_steps_and_counted_over_interruptions(regions):
    tree = Tree(regions["workings"])
    moves = [marks for marks in tree.all("li") if "data-for-step" in marks]
    assert ["1", "2", "3"] == [marks["data-for-step"] for marks in moves]
    assert ["0", "-1", "-1"] == [marks["tabindex"] for marks in moves], "one of them is reached by Tab"
    assert [None, "3"] == [marks.get("start") for marks in tree.all("ol")]


def test_an_unknown_region_is_refused():
    with pytest.raises(ValueError, match="sidebar"):
        regions_of(answer({}), ["sidebar"])


def test_number_and_unit_never_part():
    html = phrase_html(say("{length} mm is 18.4 A at 1 cm = 2 A, ± 0.2 A and 3 lines", length="92"))
    assert "92~mm is 18.4~A at 1~cm =~2~A, ±~0.2~A and 3 lines".replace("~", NO_BREAK) == html


def test_a_symbol_keeps_its_index():
    expected = '<span class="symbol"><var>I</var><sub>N</sub></span> is <strong>0</strong>'
    assert expected == phrase_html(say("{n} is **0**", n=IN))


def test_formulas_in_mathml():
    line = row(IN, "=", Root(row(Square(Number("18.4", "A")), "−", Fraction("a", "2"))), "≈", Number("−1.5", "°"))
    html = formula_html(line)
    assert 3 == len(Tree(html).all("math"))
    fenced = f"<msup><mrow><mo form=\"prefix\">(</mo><mrow><mn>18.4</mn><mtext>{NO_BREAK}A</mtext></mrow>"
    assert fenced in html
    assert "<mfrac><mrow><mi>a</mi></mrow><mrow><mn>2</mn></mrow></mfrac>" in html
    assert '<mrow><mo form="prefix">−</mo><mn>1.5</mn><mtext>°</mtext></mrow>' in html
    assert '<mi class="name">cos</mi><mo>\u2061</mo>' in formula_html(Function("cos", Number("60", "°")))


def test_a_formula_may_break_before_its_signs():
    """Before a relation always, before + and − where it is long, never after a sign or inside a short root."""
    assert 1 == len(pieces(row("=", "a", "+", "b")))
    assert 3 == len(pieces(row("a", "=", "b", "≈", "c")))
    assert 3 == len(pieces(row("=", *["123.4", "+"] * 2, "−", "0.5")))
    assert 1 == len(pieces(Root(row("123.45", "+", "67.89"))))
    assert not is_long(row("a", "=", "b"))


def test_a_root_longer_than_a_phone_breaks_before_its_signs():
    terms = ["123.4", "+", "234.5", "−", "345.6", "+", "456.7"]
    found = pieces(row(IN, "=", Root(row(*terms))))
    assert 5 == len(found)
    written = "".join("".join(Tree(formula_html(piece)).text) for piece in found)
    assert "IN=√(" + "".join(terms) + ")" == written
    assert not any(is_long(piece) for piece in found)
    assert is_long(Fraction(row(*terms), "2")), "nothing breaks a fraction: it has a box of its own"


@pytest.mark.parametrize(("name", "ticks"), [("i1", 1), ("i2", 2), ("i3", 3), ("sum", 0)])
def test_a_line_is_known_by_its_ticks(name, ticks):
    assert ticks == sample(name).count("sample-tick")


def test_every_field_has_one_named_control_a_label_and_a_message_slot():
    calculator = ExampleCalculator()
    html = values_html(calculator.fields, {}, {}) + options_html(calculator.fields, {}, {})
    tree = Tree(html)
    named = [marks for tag, marks in tree.elements if tag in ("input", "select") and "name" in marks]
    labelled = {marks["for"] for marks in tree.all("label") if "for" in marks}
    slots = Counter(marks["data-message-for"] for marks in tree.all("p") if "data-message-for" in marks)
    names = [field.name for field in calculator.fields if field.group != "method"]
    assert names == [marks["name"] for marks in named]
    assert all(marks["id"] in labelled and marks["form"] == "problem" for marks in named)
    assert Counter(names) == slots


def test_controls_are_described_by_elements_that_exist(page):
    tree = Tree("".join(page.regions.values()))
    ids = Counter(marks["id"] for _, marks in tree.elements if "id" in marks)
    assert [1] == sorted(set(ids.values()))
    for _, marks in tree.elements:
        for reference in (marks.get("aria-describedby") or "").split():
            assert reference in ids


def test_the_method_is_in_view_with_every_option_and_its_message():
    tree = Tree(method_html(ExampleCalculator.fields, {"method": "components"}))
    radios = [(marks["name"], marks["value"], "checked" in marks) for marks in tree.all("input")]
    assert [("method", "parallelogram", False), ("method", "components", True)] == radios
    assert ["method"] == [marks["data-message-for"] for marks in tree.all("p") if "data-message-for" in marks]
    assert "Method" in tree.text
    assert "data-group=\"method\"" not in options_html(ExampleCalculator.fields, {}, {})


def test_the_form_shows_values_given_and_defaults_elsewhere():
    calculator = ExampleCalculator()
    form = {"i1": '9" A', "order": "23"}
    tree = Tree(values_html(calculator.fields, form, {}) + options_html(calculator.fields, form, {}))
    values = {marks["name"]: marks["value"] for marks in tree.all("input") if "name" in marks}
    assert {"i1": '9" A', "i2": "11.2", "i3": "24.6", "a1": "0", "title": ""} == values
    assert ["lag", "23", "A4"] == [marks["value"] for marks in tree.all("option") if "selected" in marks]


def test_a_power_factor_has_controls_without_names():
    """Only the field itself goes into links; the power factor writes into it."""
    calculator = ExampleCalculator()
    echo = {"a1": {"factor": "0.850", "sense": "lead", "degrees": "31.8°", "said": "31.8° lead",
                   "as_lag": "0.85 lag", "as_lead": "0.85 lead"}}  # fmt: skip
    tree = Tree(options_html(calculator.fields, {}, echo))
    sides = {marks["value"]: marks["data-text"] for marks in tree.all("option") if "data-text" in marks}
    assert {"lag": "0.85 lag", "lead": "0.85 lead"} == sides
    factor = next(marks for marks in tree.all("input") if "data-factor-of" in marks)
    assert ("a1", "0.850", None) == (factor["data-factor-of"], factor["value"], factor.get("name"))
    assert "31.8° lead" in "".join(tree.text)


def test_the_page_of_a_calculator_has_all_that_its_shell_asks_for(page):
    asked = {"header", "intro", "form", "answer", "view", "request", "sheet", "actions", "options", "noscript",
             "workings", "footer", "method", "truesize", "lesson", "check", "notes", "results", "figures", "kinds",
             "tabs", "compare", "more", "papers", "progress", "live", "easy", "start", "unprintable", "counted",
             "outofview"}  # fmt: skip
    assert asked == set(page.regions)
    assert ("example", "sheet", "en-GB") == (page.slug, page.template, page.language)
    for html in page.regions.values():
        Tree(html)


def test_actions_are_those_that_work_now(page):
    buttons = Tree(page.regions["actions"] + page.regions["more"]).all("button")
    actions = [marks["data-action"] for marks in buttons if "data-action" in marks]
    in_the_bar = ["lesson", "print", "pdf", "share"]
    further = ["pdf-all", "easy", "give", "code", "handout", "photo"]
    assert [*in_the_bar, *further, "true-size"] == actions


def test_the_front_page_shows_each_sheet_and_links_to_it():
    tree = Tree("".join(home_page([ExampleCalculator()]).regions.values()))
    addresses = [marks["href"] for marks in tree.all("a")]
    assert 2 == addresses.count("example/")
    assert ["small"] == [marks["data-view"] for marks in tree.all("svg") if marks.get("data-view") == "small"]
    links = {address.partition("#")[0] for address in addresses}
    assert {f"./{slug}/" for slug in PAPER_PAGES} <= links


def test_the_front_page_says_of_each_sheet_what_it_is_about_and_its_scale():
    """A page is taken up by its registration: its description up to the colon, and the scale of its drawing."""
    assert "Line and phase values." == in_short("Line and phase values: drawn, and reckoned.")
    assert "Add or subtract two to six phasors." == in_short("Add or subtract two to six phasors.")
    html = shelf()
    for page in CALCULATORS.values():
        assert f'<a href="{page.slug}/">{page.title}</a></h3><p>{in_short(page.description)}</p>' in html
    assert len(CALCULATORS) == html.count('<p class="caption">1')


def shelf() -> str:
    return str(home_regions(CALCULATORS[MAIN], CALCULATORS.values())["shelf"])


def test_every_calculator_stands_once_on_a_board_and_the_main_job_first_on_its_own():
    groups = boards_of(CALCULATORS[MAIN], CALCULATORS.values())
    assert list(groups) == [board for board in boards.BOARDS if board in groups]
    assert sorted(CALCULATORS) == sorted(page.slug for members in groups.values() for page in members)
    assert MAIN == groups[CALCULATORS[MAIN].board][0].slug
    anchors = {marks["id"] for marks in Tree(shelf()).all("section")}
    foot = home_page(list(CALCULATORS.values()), MAIN).regions["footer"]
    for board in boards.BOARDS:
        assert f'href="./#{boards.anchor(board)}"' in foot and boards.anchor(board) in anchors


def test_the_drawings_of_the_boards_have_no_letters_and_one_scale():
    """Letters would be too small to read; a drawing is as wide as its share of a column says."""
    tree = Tree(shelf())
    assert [] == tree.all("text")
    drawings = tree.all("svg")
    assert len(CALCULATORS) == len(drawings)
    scales = [float(marks["width"].rstrip("%")) / float(marks["viewbox"].split()[2]) for marks in drawings]
    assert max(scales) < 1.01 * min(scales)
    assert all(float(marks["width"].rstrip("%")) <= 100 for marks in drawings)


def test_the_drawings_of_the_front_page_stay_light():
    """A shelf of drawings: a page adds at most 10 KB to it before compression."""
    assert len(shelf().encode()) < 10_000 * len(CALCULATORS)


def test_the_links_of_the_main_job_take_its_example_along():
    uses = Tree(str(home_regions(CALCULATORS[MAIN], CALCULATORS.values())["uses"])).all("a")
    values = "i1=18.4&i2=11.2&i3=24.6"
    assert [f"{MAIN}/#v=3&{values}{more}" for more in ("", "&view=lesson&step=1", "&sheet=problem")] == [
        marks["href"] for marks in uses
    ]
    assert all(marks["href"] == f"{marks['data-carries']}&{values}{marks['data-carries-too']}" for marks in uses)


def test_the_head_of_every_page_leads_to_what_the_site_has_and_marks_where_one_is():
    for page in pages_of(CALCULATORS.values(), MAIN):
        links = [marks for marks in Tree(page.regions["header"]).all("a") if "class" not in marks]
        root = "./" if page.slug == "" else "../"
        assert [root, f"{root}practice/", f"{root}class-set/", f"{root}lesson-plan/"] == [one["href"] for one in links]
        marked = [(one["href"], one["aria-current"]) for one in links if "aria-current" in one]
        own = f"{root}{page.slug}/" if page.slug else root
        expected = [(root, "true")] if page.slug in CALCULATORS else [(own, "page")]
        assert marked == (expected if own in [one["href"] for one in links] or page.slug in CALCULATORS else [])


def test_regions_are_the_same_twice():
    assert regions_of(answer({})) == regions_of(answer({}))
