"""The print set-up as HTML, and the reply to its page.

Regions: ``sheet`` (the set-up sheet), ``bars`` (what its bars should read), ``result`` (what follows from the
readings), ``kept`` (what this device stores). The form is outside of them.
"""

from collections.abc import Mapping
from typing import Any

from pycore.forms.fields import Field
from pycore.pages import print_setup as page
from pycore.pages.print_setup import FIELDS, PrinterCorrection, PrintSetupReply, millimetres, percent, set_up
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import fields_html, rows_html
from pycore.render.keeping import keeps_html
from pycore.render.phrase import phrase_html
from pycore.words import furniture, plain
from pycore.words import print_setup as words
from pycore.words.phrase import Phrase
from pycore.writers import svg

Reply = tuple[dict[str, Any], bytes | None]
_VALUES: tuple[Field, ...] = tuple(field for field in FIELDS if field.group == "values")
_CHOICES: tuple[Field, ...] = tuple(field for field in FIELDS if field.group != "values")


def sheet_html(setup: PrintSetupReply) -> Markup:
    """Return the sheet on its paper; an uncorrected one is marked, so that no stored correction changes it."""
    drawing = Markup.trusted(svg.write(setup.page, prefix="sheet", role="sheet"))
    marks: Marks = {"class": "paper", "data-page": setup.page_key, "data-uncorrected": not setup.applied}
    scroll: Marks = {"class": "paper-scroll", "tabindex": 0, "role": "group", "aria-label": words.SHEET_CHOICES}
    return h("div", scroll, h("div", marks, drawing))


def bars_html(setup: PrintSetupReply) -> Markup:
    """Return what the bars of this sheet should read."""
    lengths = words.bars(millimetres(setup.bars.upright), millimetres(setup.bars.level), setup.paper)
    return join(h("p", None, phrase_html(lengths)), h("p", {"class": "help"}, words.READ_HELP))


def _button(name: str, label: str, kind: str = "plain") -> Markup:
    return h("button", {"type": "button", "class": kind, "data-do": name}, label)


def _found(setup: PrintSetupReply, correction: PrinterCorrection) -> tuple[Phrase, ...]:
    """Return the result of the readings in sentences."""
    correction_text = words.correction(percent(correction.along), percent(correction.across))
    remains = words.remains(millimetres(setup.remains.x, 1), millimetres(setup.remains.y, 1))
    if setup.state == "true":
        return (
            (words.is_true(setup.applied), remains)
            if setup.applied
            else (words.is_true(False), correction_text, remains)
        )
    return (words.FINER, correction_text, remains) if setup.applied else (correction_text, remains)


def sentences(setup: PrintSetupReply, kept: PrinterCorrection | None) -> tuple[Phrase, ...]:
    """Return the result in sentences; empty without readings."""
    if setup.correction is not None:
        return _found(setup, setup.correction)
    if setup.state == "waiting":
        return ((words.still_empty(words.UPRIGHT_BAR if setup.missing == "upright" else words.LEVEL_BAR)),)
    if setup.state == "refused" and kept is not None:
        return (words.stays(percent(kept.along), percent(kept.across)),)
    return ()


def result_html(setup: PrintSetupReply, kept: PrinterCorrection | None) -> Markup:
    """Return what follows from the readings, and the button that stores it."""
    lines = [h("p", None, phrase_html(line)) for line in sentences(setup, kept)]
    done = setup.state == "true" and setup.applied
    keep = _button("keep-printer", words.KEEP, "first") if setup.correction is not None and not done else None
    dialog_link = h("p", None, h("a", {"href": f"#{words.DIALOG_ID}"}, words.DIALOG)) if setup.scaling else None
    return join(lines, keep, dialog_link)


def saved_html(kept: PrinterCorrection | None) -> Markup:
    """Return what this device stores about a printer."""
    if kept is None:
        return h("p", None, words.NOTHING_KEPT)
    sentence = words.kept(percent(kept.along), percent(kept.across))
    return join(h("p", None, phrase_html(sentence)), _button("forget-printer", words.FORGET))


def regions(setup: PrintSetupReply, kept: PrinterCorrection | None) -> dict[str, Markup]:
    """Return every region that depends on the form."""
    return {
        "sheet": sheet_html(setup), "bars": bars_html(setup), "result": result_html(setup, kept),
        "kept": saved_html(kept),
    }  # fmt: skip


def form_html(form: Mapping[str, str]) -> Markup:
    """The two readings."""
    return rows_html(_VALUES, form, {})


def choices_html(form: Mapping[str, str]) -> Markup:
    """Return the choice of sheet."""
    return h("div", {"class": "fields"}, fields_html(_CHOICES, form, {}))


def actions_html() -> Markup:
    """Print the set-up sheet, or save it."""
    buttons = [
        h("button", {"type": "button", "data-do": "print", "class": "first"}, furniture.PRINT),
        h("button", {"type": "button", "data-do": "pdf"}, furniture.PDF),
    ]
    row = h("div", {"class": "actions", "role": "group", "aria-label": words.SHEET_CHOICES}, buttons)
    return join(row, h("p", {"class": "said", "data-said": True, "data-saved": furniture.PDF_READY}))


def dialogs_html() -> Markup:
    """Return how to switch off scaling in common programs."""
    rows = [h("div", None, h("dt", None, name), h("dd", None, phrase_html(path))) for name, path in words.DIALOGS]
    return h("details", {"class": "group", "id": words.DIALOG_ID}, h("summary", None, words.DIALOG),
             h("p", None, words.DIALOG_LEAD), h("dl", {"class": "dialogs"}, rows))  # fmt: skip


def screen_html() -> Markup:
    """Return the outline of a card and the controls of its size; all of it works without Python."""
    outline = h("div", {"class": "card", "data-card": True}, h("p", None, words.SCREEN_CARD))
    smaller = h("button", {"type": "button", "data-step": "-1", "aria-label": words.SMALLER}, "−")
    larger = h("button", {"type": "button", "data-step": "1", "aria-label": words.LARGER}, "+")
    slider = h("input", {
        "type": "range", "id": "outline-size", "data-outline": True, "min": "1", "max": "12", "step": "0.005",
        "value": "3.78", "autocomplete": "off",
    })  # fmt: skip
    size = h("div", {"class": "size"}, h("label", {"for": "outline-size"}, words.SCREEN_SIZE),
             h("div", {"class": "size-row"}, smaller, slider, larger))  # fmt: skip
    keep = h("div", {"class": "actions"}, _button("keep-screen", words.KEEP_SCREEN, "first"),
             h("button", {"type": "button", "data-do": "forget-screen", "hidden": True},
               words.FORGET_SCREEN))  # fmt: skip
    attributes: Marks = {
        "class": "screen-said", "role": "status", "data-screen-said": True, "data-kept": words.SCREEN_KEPT,
        "data-before": words.SCREEN_KEPT_BEFORE, "data-none": words.SCREEN_NOT_KEPT,
    }  # fmt: skip
    status = h("p", attributes, words.SCREEN_NOT_KEPT)
    notes = [h("p", {"class": "help"}, note) for note in (words.SCREEN_NOTE, words.SCREEN_FOR_CLASS)]
    about = h("div", {"class": "screen-words"}, h("h2", {"id": words.SCREEN_ID}, words.SCREEN),
              h("p", None, words.SCREEN_LEAD), size, keep, status, notes)  # fmt: skip
    return join(about, h("div", {"class": "card-place"}, outline))


def device_html() -> Markup:
    """Return the sentences for a device that stores nothing; JavaScript shows them."""
    marks: Marks = {
        "class": "notice", "role": "status", "data-device-said": True, "hidden": True,
        "data-denied": words.NOT_STORED, "data-unreadable": words.UNREADABLE_STORE,
    }  # fmt: skip
    return h("p", marks)


def _printer_said_html() -> Markup:
    """Return the place, below the readings, of the message that the correction is stored."""
    marks: Marks = {
        "class": "notice", "role": "status", "data-printer-said": True, "hidden": True, "data-kept": words.KEPT_NOW,
    }  # fmt: skip
    return h("p", marks)


def _step(title: str, *content: object) -> Markup:
    return join(h("h2", None, title), content)


def fixed_regions(form: Mapping[str, str]) -> dict[str, Markup]:
    """Return the parts of the page that no answer replaces."""
    private = h("p", {"class": "help"}, keeps_html(words.STAYS), " ", words.PRIVACY)
    return {
        "noscript": h("noscript", None, h("p", {"class": "notice"}, words.SCRIPTS_NEEDED)),
        "device": device_html(),
        "choose": _step(words.STEP_PRINT, choices_html(form)),
        "actions": actions_html(),
        "read": _step(words.STEP_READ),
        "form": form_html(form),
        "kept-said": _printer_said_html(),
        "dialogs": dialogs_html(),
        "again": _step(words.STEP_AGAIN, h("p", None, words.AGAIN), private),
        "screen": screen_html(),
    }


def line_html(root: str) -> Markup:
    """Return the line at a calculator's buttons: prints are corrected, link to the set-up, true size."""
    address = f"{root}{page.SLUG}/"
    corrected: Marks = {"data-corrected": True, "data-words": words.CORRECTED, "hidden": True}
    sentence = h("p", corrected, h("span"), " ", h("a", {"href": address}, words.CHANGE))
    link = h("a", {"href": address, "data-set-up-link": True}, furniture.PRINT_SETUP)
    button: Marks = {
        "type": "button", "class": "plain", "data-action": "true-size", "data-true-size-switch": True,
        "data-set-up": f"{address}#{words.SCREEN_ID}", "aria-pressed": "false",
    }  # fmt: skip
    return h("div", {"class": "set-up-line"}, h("button", button, words.TRUE_SIZE), link, sentence)


def true_size_html() -> Markup:
    """Return the bar above the sheet while it is shown at true size."""
    sentence = h("p", None, words.TRUE_SIZE_LEAD, " ",
             h("span", {"data-changed": True, "hidden": True}, words.TRUE_SIZE_CHANGED))  # fmt: skip
    end = h("button", {"type": "button", "class": "plain", "data-action": "true-size"}, words.TRUE_SIZE_END)
    return h("div", {"class": "true-size-bar", "data-true-size-bar": True, "hidden": True}, sentence, end)


def _form(request: Mapping[str, Any]) -> dict[str, str]:
    form = request.get("form")
    typed = form if isinstance(form, dict) else {}
    return {
        key: value[:200] for key, value in typed.items() if isinstance(key, str) and isinstance(value, str)
    }


def _keep(correction: PrinterCorrection | None) -> dict[str, Any] | None:
    if correction is None:
        return None
    return {
        "along": correction.along, "across": correction.across, "edge": correction.edge, "lead": correction.lead,
        "pages": {key: list(factors) for key, factors in correction.by_page().items()},
    }  # fmt: skip


def _pdf(setup: PrintSetupReply, kept: PrinterCorrection | None) -> Reply:
    from pycore.writers import pdf  # only needed here; the page itself need not wait for its import

    point = kept.on_page(setup.page.width, setup.page.height) if setup.applied and kept else page.UNCORRECTED
    data = pdf.write(page.document(setup), correction=point)
    return {"ok": True, "filename": f"{page.SLUG}.pdf", "type": "application/pdf"}, data


def reply(request: Mapping[str, Any]) -> Reply:
    """Answer ``{"do": "setup", "form": {...}, "kept": {...} or null, "pdf": true or absent}``.

    The regions are returned even if a reading cannot be used: ``ok`` is then false and ``errors`` says why.
    ``correction`` is what a device may store, or null. Raises InputError.
    """
    kept = page.saved_correction(request)
    setup = set_up(_form(request), kept)
    if request.get("pdf") is True:
        return _pdf(setup, kept)
    messages = [fault.message for fault in setup.faults] + [plain(line) for line in sentences(setup, kept)]
    return {
        "ok": not setup.faults,
        "regions": {name: str(html) for name, html in regions(setup, kept).items()},
        "correction": _keep(setup.correction),
        "scaling": setup.scaling,
        "errors": [
            {
                "field": fault.field, "message": fault.message, "part": fault.fragment,
                "offers": [{"label": offer.label, "set": dict(offer.values)} for offer in fault.offers],
            }
            for fault in setup.faults
        ],
        "announce": words.announce(messages),
    }, None
