"""The only module that JavaScript calls: text and bytes in, text and bytes out.

``handle`` takes a request as JSON text (and bytes if the request is about a file) and returns a reply as JSON text (and
bytes if it makes a file). The only state is one long job (render/jobs.py); every request contains the complete form.
``handle`` never raises: an error is a reply with ``ok`` false.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from importlib import import_module
from typing import TYPE_CHECKING, Any

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Document
from pycore.errors import InputError
from pycore.forms import links
from pycore.forms.fields import VERSIONS, Field
from pycore.forms.opening import ReopenInfo
from pycore.render.checking import asked_reply
from pycore.render.lettered import BadLettersError, lacking, letters_of
from pycore.render.refusals import BadRequestError, error_of, refusal, refused
from pycore.render.regions import regions_of
from pycore.sheet.kinds import CONSTRUCTION, KINDS
from pycore.sums.answer import PROBLEM_SHEET
from pycore.sums.page import ALL_PARTS, FRONT, SumPage
from pycore.words import api as words
from pycore.words import checking, codes, give, plain

if TYPE_CHECKING:
    from pycore.pages.paper import PaperPage

Reply = tuple[dict[str, Any], bytes | None]
MAXIMUM_REQUEST = 500_000
MAXIMUM_WITH_LISTS = 8_000_000
"""Characters, with names and answers of a class at their longest, JSON's quotes and line ends, letters."""


def _page(request: Mapping[str, Any]) -> "SumPage[Any]":
    slug = request.get("page")
    if not isinstance(slug, str) or slug not in CALCULATORS:
        raise BadRequestError(words.UNKNOWN_PAGE)
    return CALCULATORS[slug]


def _paper(request: Mapping[str, Any]) -> "PaperPage | None":
    """Return the page of blank paper of a request; None for a calculator."""
    slug = request.get("page")
    if not isinstance(slug, str) or slug in CALCULATORS:
        return None
    # Only its own pages need it; the first answer of a sheet need not wait for its import.
    from pycore.pages.paper import PAPER_PAGES

    return PAPER_PAGES.get(slug)


def _form(request: Mapping[str, Any]) -> dict[str, str]:
    """Return the texts of the form; other values are dropped, as if they were not given."""
    form = request.get("form")
    if not isinstance(form, dict):
        raise BadRequestError(words.NO_FORM)
    return _texts(form, of_class.LONGEST.value if (of_class := _set_page(request)) else links.LONGEST_VALUE)


def _texts(entries: Mapping[Any, Any], longest: int = links.LONGEST_VALUE) -> dict[str, str]:
    return {
        key: value[:longest]
        for key, value in entries.items()
        if isinstance(key, str) and isinstance(value, str)
    }


def _sheet_form(request: Mapping[str, Any]) -> dict[str, str]:
    """Return the form of a calculator's request; with ``problem`` as one that holds its answer back."""
    form = _form(request)
    if request.get("problem") is not True:
        return form
    from pycore.pages.own_problem import as_problem

    return as_problem(_page(request), form)


def _opening(request: Mapping[str, Any]) -> ReopenInfo:
    """Return how the sheets of this request are opened again."""
    return ReopenInfo(links.base_of(request.get("base")), request.get("code") is True, letters=letters_of(request))


def _set_page(request: Mapping[str, Any]) -> Any:
    # Only such a page needs it; the first answer of a sheet need not wait for its import.
    if request.get("page") in CALCULATORS:
        return None
    from pycore.render.set_pages import set_page

    return set_page(request.get("page"))


def _held_back(echo: Mapping[str, str]) -> dict[str, str]:
    """Return how a field was understood, without what a learner has to find: a reactance, the components of a phasor.
    """
    return {key: "" if key in ("said", "factor") else text for key, text in echo.items()}


def _answer(request: Mapping[str, Any]) -> Reply:
    of_class = _set_page(request)
    if of_class:
        reply: Reply = of_class.answer(_form(request), request)
        return reply
    paper = _paper(request)
    if paper is not None:
        from pycore.render.paper import answer as paper_answer

        return paper_answer(paper, _form(request))
    calculator, form = _page(request), _form(request)
    requested, veiled = request.get("parts"), request.get("veiled") is True
    known = ("check", "sheet", PROBLEM_SHEET) if veiled else (*ALL_PARTS, FRONT)
    wanted = requested if isinstance(requested, list) else ("answer", "sheet", "view")
    parts = tuple(region for region in wanted if region in known)
    answer = calculator.answer(form, parts, _opening(request), "problem" if veiled else "")
    headline = answer.outputs[0]
    announced = words.announce(
        answer.title, headline.text, headline.unit, [plain(line) for line in answer.summary]
    )
    if veiled:
        announced = checking.VALUES_CHANGED if answer.code and request.get("opened") is True else checking.STAYS_HIDDEN
        answer = replace(answer, alternatives=())
    return {
        "ok": True,
        "regions": {name: str(html) for name, html in regions_of(answer, parts, answer.inks).items()},
        "echo": {name: _held_back(echo) if veiled else dict(echo) for name, echo in answer.echo.items()},
        "inks": answer.inks,
        "labels": answer.labels,
        "options": answer.options,
        "fragment": links.fragment(links.form_pairs({**form, "code": answer.code}, calculator.fields)),
        "code": answer.code,
        "problem": codes.opened(answer.code) if answer.code else "",
        "asked": asked_reply(answer.answer_request) if answer.answer_request else None,
        "announce": " ".join([announced, *(fault.message for fault in answer.faults)]),
        "page": answer.page_key,
        "errors": [error_of(fault) for fault in answer.faults],
        "scenario": answer.scenario,
    }, None


def _fields(request: Mapping[str, Any]) -> tuple[Field, ...]:
    """Return the fields of the page of a request."""
    fields: tuple[Field, ...] = of_class.FIELDS if (of_class := _set_page(request)) else (
        _paper(request) or _page(request)
    ).fields
    return fields


def _open(request: Mapping[str, Any]) -> Reply:
    fields = _fields(request)
    text = request.get("fragment")
    longest = of_class.LONGEST if (of_class := _set_page(request)) else links.USUAL
    opened = links.open_fragment(text if isinstance(text, str) else "", fields, links.RESERVED, longest)
    notices: list[str] = []
    if opened.version not in VERSIONS:
        notices.append(words.other_version(opened.version))
    if opened.too_long:
        notices.append(words.LONG_LINK)
    if opened.unknown:
        notices.append(words.unknown_keys(opened.unknown))
    form, of_code = _of_code(request, opened, notices)
    # Of what is private no link says anything, so it stays as it stands in the form.
    private = {field.name for field in fields if field.private}
    form = {name: value for name, value in form.items() if name not in private}
    own = opened.has_values or bool(form.get("code")) or "typed" in of_code
    return {"ok": True, "form": form, "notices": notices, "own": own, **of_code}, None


def _of_code(
    request: Mapping[str, Any], opened: links.ParsedLink, notices: list[str]
) -> tuple[dict[str, str], dict[str, Any]]:
    """Return the form of a link after its code was read, and beside it the page and fragment to go to if the code
    belongs to another page, or the code as it was typed and what is wrong with it."""
    if not opened.form.get("code"):
        return opened.form, {}
    # Only a link with a code needs the generator; the first answer need not wait for its import.
    from pycore.pages.own_problem import fill

    filled = fill(_page(request), opened)
    notices += filled.notices
    if filled.fault:
        return filled.form, {"typed": filled.fault.typed, "errors": [error_of(filled.fault)], "held": filled.held}
    return filled.form, {"page": filled.page, "fragment": filled.fragment} if filled.page else {}


def _code(request: Mapping[str, Any]) -> Reply:
    """Return the page and fragment that open the problem of a code; a check code is compared with the values."""
    from pycore.pages.own_problem import opened_by

    text, form = request.get("code"), request.get("form")
    typed = text[: links.LONGEST_VALUE] if isinstance(text, str) else ""
    page, fragment, code = opened_by(typed, request.get("page"), _texts(form) if isinstance(form, dict) else {})
    return {"ok": True, "page": page, "fragment": fragment, "code": code}, None


def _pdf(request: Mapping[str, Any]) -> Reply:
    # The PDF writer is only needed here; the first answer need not wait for its import.
    from pycore.pages.print_setup import correction_of
    from pycore.writers import pdf

    form, correction, paper = _sheet_form(request), correction_of(request), _paper(request)
    if paper is not None:
        from pycore.render.paper import pdf as paper_pdf

        return paper_pdf(paper, form, correction)
    calculator = _page(request)
    requested = request.get("kinds")
    kinds = tuple(kind for kind in requested if kind in KINDS) if isinstance(requested, list) else ()
    pages = calculator.pages(form, _opening(request), kinds)
    document = Document(pages, pages[0].title or calculator.title, subject=calculator.title)
    data = pdf.write(document, correction=correction)
    kind = "all" if len(kinds) > 1 else kinds[0] if kinds else form.get("sheet") or CONSTRUCTION
    name = calculator.slug if kind == CONSTRUCTION else f"{calculator.slug}-{kind}"
    return {"ok": True, "filename": f"{name}.pdf", "type": "application/pdf"}, data


def _setup(request: Mapping[str, Any]) -> Reply:
    # Only the print set-up needs it; the first answer of a sheet need not wait for its import.
    from pycore.render.print_setup import reply
    return reply(request)


def _share(request: Mapping[str, Any]) -> Reply:
    # With the classroom's steps, links may open one of them.
    from pycore.render.classroom import share

    if of_class := _set_page(request):
        return of_class.share(_form(request), request), None
    form, paper = _sheet_form(request), _paper(request)
    resolved = paper.make(form).link if paper else _page(request).answer(form, ("answer",)).link
    reply = share(resolved, request, _opening(request))
    return {**reply, "told": give.told(form["code"])} if request.get("problem") is True else reply, None


def _lesson(request: Mapping[str, Any]) -> Reply:
    # Only the lesson view needs it; the first answer of a sheet need not wait for its import.
    from pycore.render.classroom import step

    return step(_page(request), _form(request), request), None


def _handout(request: Mapping[str, Any]) -> Reply:
    """Return the handout as one file; style and script are those of the page."""
    from pycore.render.handout import handout, problem_handout

    calculator, form, is_problem = _page(request), _sheet_form(request), request.get("problem") is True
    style, script = request.get("style"), request.get("script")
    if not isinstance(style, str) or not isinstance(script, str):
        raise BadRequestError(words.UNKNOWN_REQUEST)
    try:
        opening = _opening(request)
        html = problem_handout(calculator, form, opening, style) if is_problem else handout(
            calculator, form, opening, style, script
        )
    except InputError:
        raise
    except ValueError:
        raise BadRequestError(words.UNKNOWN_REQUEST) from None
    name = f"{calculator.slug}-{'problem' if is_problem else 'handout'}.html"
    file = {"ok": True, "filename": name, "type": "text/html;charset=utf-8"}
    return file, html.encode()


def _mark(request: Mapping[str, Any]) -> Reply:
    """Judge an answer to the problem of a form, without telling the right answer."""
    # Only the answer checker needs it; the first answer of a sheet need not wait for its import.
    from pycore.render.marking import reply

    answer = request.get("given")
    if not isinstance(answer, dict):
        raise BadRequestError(words.NO_FORM)
    page, form = _page(request), _form(request)
    seen = {"shown": request.get("shown") is True, "drawing_judged": request.get("drawing_judged") is True}
    return reply(page, form, _texts(answer), **seen), None


def _hint(request: Mapping[str, Any]) -> Reply:
    """Return a hint for one step of a problem whose answer is held back."""
    # Only the answer checker needs it; the first answer of a sheet need not wait for its import.
    from pycore.render.hints import reply

    return reply(_page(request), _form(request), request), None


def _easy(request: Mapping[str, Any]) -> Reply:
    """Return the moves of the sheet for easy reading, each with what a voice says; or the picture of one frame."""
    from pycore.render.easy import reply  # Only who asks for them needs it.
    return reply(_page(request), _form(request), request.get("frame", 0)) or refusal(words.UNKNOWN_REQUEST), None


def _set_again(request: Mapping[str, Any]) -> Reply:
    """Return the class set of a code as form values."""
    from pycore.render.class_set import again

    return again(request)


def _begin(request: Mapping[str, Any]) -> Reply:
    """Begin a long job; ``next`` continues it, ``finish`` or ``stop`` ends it."""
    # Only long work needs what makes it; the first answer of a sheet need not wait for its import.
    from pycore.render import jobs

    return jobs.begin(_form(request), request)


def _work(name: str) -> Callable[[Mapping[str, Any]], Reply]:
    def carry_out(request: Mapping[str, Any]) -> Reply:
        from pycore.render import jobs

        done: Reply = getattr(jobs, name)(request)
        return done

    return carry_out


def _judges(module: str) -> Callable[[Mapping[str, Any]], Reply]:
    """Return what answers for a part that judges drawings, and that only its own view needs: pixels are never sent."""
    part = f"pycore.render.{module}"
    return lambda request: (import_module(part).reply(_page(request), request, _form(request)), None)


def _pile(request: Mapping[str, Any]) -> Reply:
    """Handle one photograph of a pile; its pixels are never sent here."""
    from pycore.render.pile_read import reply  # Only the pile's page needs it.

    return reply(request), None


def _practice(request: Mapping[str, Any]) -> Reply:
    """Handle one action of free practice; the record comes with the request and goes back with the reply."""
    from pycore.render.practice import MOVES, reply

    if request.get("move") not in MOVES:
        raise BadRequestError(words.UNKNOWN_REQUEST)
    answer = reply(request)
    faults = answer.pop("faults", None)
    return answer if faults is None else {**answer, "errors": [error_of(fault) for fault in faults]}, None


_ANSWERS: dict[str, Callable[[Mapping[str, Any]], Reply]] = {
    "answer": _answer,
    "open": _open,
    "pdf": _pdf,
    "setup": _setup,
    "share": _share,
    "lesson": _lesson,
    "handout": _handout,
    "draw": _judges("draw_here"),
    "photo": _judges("photograph"),
    "pile": _pile,
    "strokes": _judges("strokes"),
    "mark": _mark,
    "hint": _hint,
    "easy": _easy,
    "code": _code,
    "practice": _practice,
    "set-again": _set_again,
    "begin": _begin,
    "next": _work("go_on"),
    "finish": _work("finish"),
    "stop": _work("stop"),
}


def _dispatch(text: str, blob: bytes | None) -> Reply:
    if len(text) > MAXIMUM_WITH_LISTS:
        raise BadRequestError(words.REQUEST_TOO_LONG)
    try:
        request = json.loads(text)
    except (ValueError, RecursionError):
        request = None
    if not isinstance(request, dict):
        raise BadRequestError(words.NOT_A_REQUEST)
    if len(text) > MAXIMUM_REQUEST and not _set_page(request):
        raise BadRequestError(words.REQUEST_TOO_LONG)
    does = request.get("do")
    if not isinstance(does, str) or does not in _ANSWERS:
        raise BadRequestError(words.UNKNOWN_REQUEST)
    unlettered = lacking(request)
    return (unlettered, None) if unlettered else _ANSWERS[does]({**request, "file": blob})


def handle(text: str, blob: bytes | None = None) -> tuple[str, bytes | None]:
    """Answer one request (site/CONTRACTS.md has their forms). Never raises."""
    try:
        reply, data = _dispatch(text, blob)
    except InputError as error:
        reply, data = refused(error), None
    except (BadRequestError, BadLettersError) as error:
        reply, data = refusal(str(error) or words.UNKNOWN_REQUEST), None
    except ImportError:  # An archive that is still on its way: the page waits for it, and asks again.
        reply, data = {**refusal(words.PART_MISSING), "missing": True}, None
    except Exception as error:  # A fault of ours must not stop the page: it is said, and the last answer stays.
        reply, data = refusal(words.fault_of_ours(type(error).__name__)), None
    return json.dumps(reply, ensure_ascii=False, allow_nan=False), data
