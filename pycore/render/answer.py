"""The region of the answer: results and sentences, and the drawing beside it."""

import json
from collections.abc import Mapping
from functools import lru_cache

from pycore.drawing import Page
from pycore.quantity import exact
from pycore.render.draw_way import draw_way_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.render.sample import sample
from pycore.sums.answer import Answer, Output
from pycore.words import furniture
from pycore.words.phrase import Phrase
from pycore.words.unbroken import NO_BREAK
from pycore.writers import svg


def output_html(output: Output, figure_class: str = "") -> Markup:
    """Return one result. The element itself is silent; only the page's live line announces."""
    unit = None
    if output.unit:
        space = "" if output.unit == "°" else NO_BREAK
        unit = h("span", {"class": "unit"}, space, output.unit)
    marks = {
        "name": output.name, "data-value": exact(output.value), "aria-live": "off", "class": figure_class or None,
    }  # fmt: skip
    return h("output", marks, output.text, unit)


def _lines(name: str, phrases: tuple[Phrase, ...]) -> Markup | None:
    return h("ul", {"class": name}, [h("li", None, phrase_html(line)) for line in phrases]) if phrases else None


def results_html(answer: Answer) -> Markup:
    """Return the region ``results``: what there is to say of the answer, then every other result."""
    rows = [
        h("div", None, h("dt", None, phrase_html(output.label or output.name)), h("dd", None, output_html(output)))
        for output in answer.outputs[1:]
    ]
    listed = h("dl", {"class": "results"}, rows) if rows else None
    return join(_lines("remarks", answer.remarks), listed)


def notes_html(answer: Answer) -> Markup:
    """Return the region ``notes``: what must not be missed, and what the page had to change or could not do."""
    return join(_see(answer), _lines("notices", answer.notices))


def answer_html(answer: Answer, inks: Mapping[str, str]) -> Markup:
    """Return the region ``answer``: headline and short lines.

    The words for an answer that is out of date are always in the markup; the style sheet shows them when needed.
    """
    headline = answer.outputs[0]
    line = sample(headline.line, inks.get(headline.line, "")) if headline.line else None
    label = h("p", {"class": "answer-label"},
              h("span", {"class": "when-fresh"}, phrase_html(headline.label)),
              h("span", {"class": "when-old"}, furniture.OLD_ANSWER), line)
    old = h("p", {"class": "old-values when-old"}, furniture.OLD_FOR, phrase_html(answer.values_text))
    big = h("p", {"class": "headline"}, output_html(headline, "big"))
    busy = h("p", {"class": "when-late"}, furniture.WORKING)
    return join(label, h("div", {"class": "figures"}, big, _lines("summary", answer.summary), busy, old))


def _see(answer: Answer) -> Markup | None:
    """A sentence that must not be missed, with a button to the working that says more."""
    if answer.see is None:
        return None
    link = answer.see
    go = h("button", {"type": "button", "class": "go", "data-to-working": link.working}, link.button)
    return h("p", {"class": "see"}, phrase_html(link.sentence), " ", go)


def set_values(values: tuple[tuple[str, str], ...]) -> str:
    """Return form values as the text that a button carries."""
    return json.dumps(dict(values), ensure_ascii=False, separators=(",", ":"))


def old_label(answer: Answer, words: str = furniture.OLD_DRAWING) -> Markup:
    """Return the label that says that a region is for older values, and for which; hidden while it is not."""
    return h("p", {"class": "old-label when-old"},
             h("strong", None, words), " ", h("span", None, phrase_html(answer.values_text)))  # fmt: skip


def kinds_html(answer: Answer) -> Markup:
    """Return the region ``kinds``: which sheet is shown, the current one pressed, its paper and scale; and the way to
    drawing it on the screen."""
    caption = h("p", {"class": "caption"}, phrase_html(answer.caption))
    return join(_kind_buttons(answer.kind), draw_way_html(), caption) if answer.kind else caption


@lru_cache(maxsize=8)
def _kind_buttons(shown: str) -> Markup:
    """Return the buttons of the kinds of sheet, the one that is shown pressed."""
    buttons = [
        h("button", {"type": "button", "data-set": set_values((("sheet", kind),)),
                     "aria-pressed": "true" if kind == shown else "false"}, words)
        for kind, words in furniture.KINDS.items()
    ]  # fmt: skip
    return h("div", {"class": "kinds", "role": "group", "aria-label": furniture.KINDS_LABEL}, buttons)


def sheet_html(answer: Answer) -> Markup:
    """Return the region ``sheet``: the drawing on paper, and its further pages."""
    drawing = Markup.trusted(svg.write(answer.sheet, prefix="sheet", role="sheet"))
    # A sheet wider than a phone is scrolled in its own box, which the keyboard must reach.
    marks: Marks = {"class": "paper-scroll", "tabindex": 0, "role": "group", "aria-label": furniture.SHEET_ON_REQUEST}
    paper = h("div", marks, h("div", {"class": "paper", "data-page": answer.page_key}, drawing), old_label(answer))
    return join(paper, [_further(page, answer.page_key[:-1] + "p") for page in answer.further_pages])


def problem_sheet_html(answer: Answer) -> Markup:
    """Return the region ``problem-sheet``: the sheet beside Check, as a learner begins on it. It is not printed."""
    drawing = Markup.trusted(svg.write(answer.sheet, prefix="problem-sheet", role="view", view="problem"))
    return h("div", {"class": "paper"}, drawing, old_label(answer))


def figures_html(answer: Answer) -> Markup:
    """Return the region ``figures``: scale, length and accuracy of the sheet, below it while settings are changed."""
    rows = []
    for output in answer.outputs[1:]:
        if output.name in ("scale", "second-scale") or output.name.endswith("-length"):
            rows.append((output.label or output.name, output.text))
        elif output.name == "tolerance":
            rows.append((furniture.BY_HAND, f"± {output.text}{NO_BREAK}{output.unit}"))
    listed = [h("div", None, h("dt", None, phrase_html(label)), h("dd", None, said)) for label, said in rows]
    return join(h("h2", None, furniture.ON_SHEET), h("dl", {"class": "results"}, listed),
                h("p", None, furniture.ON_SHEET_NOTE))  # fmt: skip


def _further(page: Page, page_key: str) -> Markup:
    """Return a further page of the sheet, printed after it."""
    drawing = svg.write(page, prefix="sheet-" + page.title.rpartition(" ")[2], role="view", view="further")
    marks: Marks = {"class": "paper-scroll", "tabindex": 0, "role": "group", "aria-label": page.title}
    return h("div", marks, h("div", {"class": "paper", "data-page": page_key}, Markup.trusted(drawing)))


def view_html(answer: Answer, name: str = "phone") -> Markup:
    """Return the region ``view``: the same drawing laid out for a small screen."""
    if name not in answer.views:
        return join()
    drawing = Markup.trusted(svg.write(answer.views[name], prefix=f"view-{name}", role="view", view=name))
    return join(drawing, old_label(answer))


def front_html(answer: Answer) -> Markup:
    """Return the region ``front``: the drawing as the front page shows it, with its scale."""
    return join(h("p", {"class": "drawn-at"}, scale_text(answer)), view_html(answer))


def scale_text(answer: Answer) -> str:
    """Return the scale of an answer's sheet; "" if it has none."""
    return next((output.text for output in answer.outputs if output.name == "scale"), "")
