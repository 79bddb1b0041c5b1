"""Free practice as HTML, and the replies to what a learner does there.

The page's regions: ``problem``, ``sheet``, ``guess``, ``guess-help``, ``draw``, ``marked``, ``drawn`` (once it is
done), ``standing``, ``kept``, ``incoming``. The record comes with every request and goes back with every reply: nothing
of it stays here.
"""

from collections.abc import Callable, Mapping
from typing import Any

from pycore.errors import Fault, InputError
from pycore.forms.fields import default_form
from pycore.pages import practice as page
from pycore.pages.codes import CodeProblem
from pycore.pages.mistake_names import short
from pycore.practice import answers, ladder
from pycore.practice.answers import AnswerJudgement
from pycore.practice.codes import TIERS
from pycore.practice.judgement_text import JudgementText, tell
from pycore.practice.ladder import IN_A_ROW, SHOWN, Record, RecordError
from pycore.practice.marking import ACCEPT, LOOK, WRONG, Judgement
from pycore.practice.task import NO_LIMITS, Task
from pycore.render.answer import answer_html
from pycore.render.checking import asked_reply, form_html, task_html
from pycore.render.draw_way import draw_way_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.form import FORM, scale_html
from pycore.render.guess import board_html, end_of, sentence_of
from pycore.render.keeping import keeps_html
from pycore.render.marking import link_of, marked_html, numbers_only
from pycore.render.own_arrow import arrows_html
from pycore.render.phrase import phrase_html
from pycore.render.sample import sample
from pycore.sheet.kinds import PROBLEM
from pycore.sums.answer import Answer
from pycore.sums.on_screen import link_on_screen, on_screen
from pycore.words import codes, plain
from pycore.words import marking as marking_words
from pycore.words import practice as words

Reply = dict[str, Any]
SHOWN_MISTAKES = 6


def problem_html(problem: CodeProblem, answer: Answer) -> Markup:
    """Return the problem: its values, what is to be found, and its code."""
    inks = problem.page.inks(problem.form)
    rows = [
        h("div", None, h("dt", None, label, sample(line, inks.get(line, "")) if line else None),
          h("dd", None, phrase_html(value)))
        for label, value, line in page.values_of(problem)
    ]  # fmt: skip
    if answer.answer_request:
        rows.append(h("div", None, h("dt", None, words.FIND), h("dd", None, phrase_html(answer.answer_request.symbol))))
    return join(
        h("h2", None, codes.opened(str(problem.code)), h("span", {"class": "topic"}, problem.page.title)),
        h("dl", {"class": "given", "aria-label": words.GIVEN}, rows),
    )


def guess_help_html(problem: CodeProblem, answer: Answer) -> Markup:
    """Return what to do to guess, and what of the phasors is drawn already, where some are."""
    case = problem.page.case(problem.form)
    begun = [case.notation.tags[key] for key in case.begun_keys(case.sheet_plan())]
    drawn = None
    if begun and answer.answer_request:
        said = words.begun(begun, answer.answer_request.symbol, case.notation.words.plural)
        drawn = h("p", None, phrase_html(said))
    return join(h("p", None, words.GUESS_HELP), drawn)


def draw_html(problem: CodeProblem, answer: Answer) -> Markup:
    """Return how the problem is to be drawn, and the ways to its sheet on paper and on the screen."""
    address = f"../{problem.page.slug}/#{page.fragment_of(problem.page, {**problem.form, 'sheet': 'problem'})}"
    return join(
        task_html(answer.answer_request) if answer.answer_request else None,
        h("p", {"class": "ways"}, h("a", {"href": address, "class": "plain"}, words.AS_SHEET),
          draw_way_html(f"{address}&view=draw")),
    )


def standing_html(record: Record) -> Markup:
    """Return the level and how far the next one is: on a scale of ticks, and in words."""
    track, top = record.current_track, len(TIERS) - 1
    here = track.level * IN_A_ROW + max(0, track.run)
    ticks = [
        h("li", {"class": " ".join(name for name, holds in (
            ("whole", place % IN_A_ROW == 0), ("done", place <= here), ("now", place == here)) if holds)})
        for place in range(top * IN_A_ROW + 1)
    ]  # fmt: skip
    following = words.to_next(0 if track.level == top else track.level + 2, IN_A_ROW - max(0, track.run))
    return h("div", {"class": "standing"},
             h("p", None, h("strong", None, words.level(track.level + 1, len(TIERS), TIERS[track.level])), " ",
               h("span", {"class": "following"}, following)),
             h("ol", {"class": "level-scale", "aria-hidden": "true"}, ticks))  # fmt: skip


def kept_html(record: Record) -> Markup:
    """Return the stored record in words."""
    unsolved = sum_of(track.unsolved for track in record.tracks.values())
    worst = sorted(record.mistakes.items(), key=lambda pair: (-pair[1], pair[0]))[:SHOWN_MISTAKES]
    listed = [h("li", None, f"{short(key)}: {words.times(times)}") for key, times in worst]
    mistakes = (h("h3", None, words.MISTAKES), h("ul", {"class": "mistakes"}, listed)) if listed else None
    return join(h("p", None, words.SOLVED_OF.format(solved=_solved(record), unsolved=unsolved)), mistakes)


def sum_of(counts: Any) -> int:
    """Whole numbers added."""
    total = 0
    for count in counts:
        total += count
    return total


def drawn_html(problem: CodeProblem, answer: Answer, done: str) -> Markup:
    """Return the result, once the problem is done; its drawing stands on the sheet."""
    note = h("p", {"class": "help"}, words.SHOWN_NOTE) if done == SHOWN else None
    title = words.SHOWN if done == SHOWN else words.SOLVED
    figure = answer_html(answer, problem.page.inks(problem.form))
    return join(h("h2", None, title), note, figure)


def _solved(record: Record) -> int:
    return sum_of(track.solved for track in record.tracks.values())


def incoming_html(record: Record) -> Markup:
    """Return what a file contains, and the buttons that decide what to do with it."""
    buttons = [
        h("button", {"type": "button", "class": "plain", "data-do": name}, label)
        for name, label in (("merge", words.MERGE), ("replace", words.REPLACE), ("leave", words.CANCEL))
    ]
    paragraph = h("p", None, words.FROM_FILE, " ", phrase_html(words.holds(_solved(record))))
    return h("div", {"class": "notice"}, paragraph, h("p", {"class": "ways-out"}, buttons))


def _answer_of(problem: CodeProblem, done: str) -> Answer:
    """Return what may be shown of a problem: of one that is not done only its sheet and what is asked."""
    if done:
        return problem.page.answer(problem.form, ("answer", "view", "sheet", "check"))
    return problem.page.answer(problem.form, ("sheet", "check"), kind=PROBLEM)


def _problem(record: Record, request: Mapping[str, Any]) -> tuple[CodeProblem, tuple[Fault, ...]]:
    """Return the problem of a record as this college writes and this learner draws it, and the faults of the latter."""
    return page.drawn_on(page.as_college(page.problem_of(record), request.get("college")), request.get("drawn"))


def _reply(request: Mapping[str, Any], record: Record, announce: str = "", **more: object) -> Reply:
    """Return the page for a record, drawn as the request has it."""
    problem, faults = _problem(record, request)
    done = record.current_track.done
    answer = _answer_of(problem, done)
    regions = {
        "problem": problem_html(problem, answer),
        "sheet": board_html(problem, answer.sheet, answer.views.get("phone")),
        "draw": draw_html(problem, answer),
        "guess-help": guess_help_html(problem, answer),
        "standing": standing_html(record),
        "kept": kept_html(record),
        "drawn": drawn_html(problem, answer, done) if done else join(),
    }
    assert answer.answer_request is not None
    return {
        "ok": True, "record": ladder.written(record), "state": done or "asking",
        "way": record.track, "faults": faults, "echo": {"scale": answer.echo["scale"]},
        "labels": {"scale": page.scale_label(problem)},
        "asked": asked_reply(answer.answer_request), "announce": announce,
        "drawing": {"page": problem.page.slug, "problem": link_on_screen(problem.page.case(on_screen(problem.form)))},
        "regions": {name: str(html) for name, html in regions.items()}, **more,
    }  # fmt: skip


def _record(request: Mapping[str, Any]) -> tuple[Record, str]:
    """Return the record of a request, or a new one; and a notice, if any."""
    if request.get("record") is None:
        return page.checked(page.empty(request.get("seed"))), ""
    try:
        return page.checked(ladder.read(request["record"])), ""
    except RecordError:
        return page.checked(page.empty(request.get("seed"))), words.LOST


def _opened(record: Record, request: Mapping[str, Any]) -> Reply:
    return _reply(request, record)


def _turned(record: Record, request: Mapping[str, Any]) -> Reply:
    track = request.get("way")
    try:
        return _reply(request, page.turned_to(record, track if isinstance(track, str) else ""))
    except RecordError:
        return _reply(request, record)


NOT_NAMED = "not-named"
"""The record's key for a wrong answer whose mistake is not known for certain."""


def _counted(marked: Judgement) -> tuple[str, ...]:
    """Return the mistake to count: one that is named alone and sure, else that none was named."""
    keys = {mistake.key for cause in marked.causes for mistake in cause.mistakes}
    if len(keys) == 1 and len(marked.causes) == 1 and marked.causes[0].sure:
        return tuple(keys)
    return (NOT_NAMED,)


def _marked(record: Record, request: Mapping[str, Any]) -> Reply:
    """Mark an answer. Raises InputError if it cannot be read."""
    problem, _ = _problem(record, request)
    texts = _texts(request)
    task, judged, text = _judged(problem, texts)
    if text.band != LOOK and not judged.partial:
        record = ladder.tried(record, text.band == ACCEPT, _counted(judged.marked))
    reply = _reply(request, record, marking_words.announced(text.phrases), band=text.band)
    another: Marks = {"type": "button", "class": "go", "data-do": "another"}
    more = h("p", {"class": "way"}, h("button", another, marking_words.ONE_MORE)) if text.band == WRONG else None
    reply["regions"]["marked"] = str(marked_html(text, link_of(task), workings=False, more=more))
    return reply


def _texts(request: Mapping[str, Any]) -> dict[str, str]:
    """Return the answer of a request as texts."""
    typed = request.get("given")
    return {
        key: value[:200] for key, value in (typed.items() if isinstance(typed, dict) else ())
        if isinstance(key, str) and isinstance(value, str)
    }  # fmt: skip


def _judged(problem: CodeProblem, texts: Mapping[str, str]) -> tuple[Task, AnswerJudgement, JudgementText]:
    """Return the task of a problem, and an answer to it judged. Raises InputError if it cannot be read."""
    task = problem.page.task(problem.form)
    judged = answers.judge(task, texts, NO_LIMITS)
    text = tell(task, judged, problem.page.places(problem.form), numbers_only=numbers_only(texts))
    return task, judged, text


def _shown(record: Record, request: Mapping[str, Any]) -> Reply:
    """Show the answer, and beside it what went wrong in the last answer, if that was wrong."""
    reply = _reply(request, ladder.shown(record), words.SHOWN)
    problem, _ = _problem(record, request)
    try:
        task, judged, text = _judged(problem, _texts(request))
    except InputError:
        return reply
    if text.band == WRONG:
        picture = arrows_html(problem.page.case(problem.form).picture, task, judged)
        reply["regions"]["marked"] = str(marked_html(text, link_of(task), workings=False, picture=picture))
    return reply


def _another(record: Record, request: Mapping[str, Any]) -> Reply:
    """Go on to one more problem of the same kind; one that is left unsolved counts as shown."""
    return _reply(request, page.next_problem(ladder.shown(record)))


def _next(record: Record, request: Mapping[str, Any]) -> Reply:
    return _reply(request, page.next_problem(record) if record.current_track.done else record)


def _read(record: Record, request: Mapping[str, Any]) -> Reply:
    """Read a file; if this device has no record yet, it is used at once. ``before``: it was added once already."""
    text = request.get("text")
    try:
        incoming = page.checked(ladder.read_text(text if isinstance(text, str) else ""))
    except RecordError as error:
        message = words.refused(error.reason, error.part)
        return {"ok": False, "errors": [], "announce": message, "said": message}
    if not sum_of(track.solved + track.tries for track in record.tracks.values()) and not record.mistakes:
        return _reply(request, incoming, words.TAKEN, said=words.TAKEN)
    if request.get("before") is True:
        return _reply(request, record, words.TAKEN_BEFORE, said=words.TAKEN_BEFORE)
    said = f"{words.FROM_FILE} {plain(words.holds(_solved(incoming)))}"
    reply = _reply(request, record, said)
    reply["regions"]["incoming"] = str(incoming_html(incoming))
    return {**reply, "incoming": ladder.written(incoming)}


def _taken(record: Record, request: Mapping[str, Any]) -> Reply:
    try:
        incoming = page.checked(ladder.read(request.get("incoming")))
    except RecordError as error:
        message = words.refused(error.reason, error.part)
        return {"ok": False, "errors": [], "announce": message, "said": message}
    together = incoming if request.get("move") == "replace" else ladder.merged(record, incoming)
    return _reply(request, together, words.TAKEN, said=words.TAKEN)


def _erased(record: Record, request: Mapping[str, Any]) -> Reply:
    return _reply(request, page.checked(page.empty(request.get("seed"))), words.ERASED, said=words.ERASED)


def _guessed(record: Record, request: Mapping[str, Any]) -> Reply:
    """Say what a guess stands for; the record knows nothing of it."""
    problem, _ = _problem(record, request)
    said = sentence_of(problem.page.placed(problem.form), end_of(request))
    return {"ok": True, "announce": said, "regions": {"guess": str(h("p", None, said))}}


MOVES: dict[str, Callable[[Record, Mapping[str, Any]], Reply]] = {
    "open": _opened, "way": _turned, "mark": _marked, "show": _shown, "next": _next, "read": _read,
    "another": _another, "merge": _taken, "replace": _taken, "erase": _erased, "guess": _guessed,
}  # fmt: skip


def reply(request: Mapping[str, Any]) -> Reply:
    """Answer ``{"do": "practice", "move", "record", "seed", ...}``. Raises InputError for an answer that cannot be
    read, KeyError for an unknown action."""
    move = MOVES[str(request.get("move"))]
    record, lost = _record(request)
    answer = move(record, request)
    return {**answer, "said": lost, "announce": lost} if lost else answer


# The page itself.


def way_html() -> Markup:
    """Return the list of what to practise, page by page."""
    groups: dict[str, list[Markup]] = {}
    for choice in page.choices():
        option = h("option", {"value": choice.key, "selected": choice.key == page.first_track()}, choice.name)
        groups.setdefault(choice.title, []).append(option)
    options = [h("optgroup", {"label": title}, entries) for title, entries in groups.items()]
    control = h("select", {"id": "f-way", "name": "way", "autocomplete": "off"}, options)
    label = h("label", {"for": "f-way"}, words.WAY)
    return h("div", {"class": "field"}, label, h("div", {"class": "entry"}, control))


def drawn_on_html(answer: Answer) -> Markup:
    """Return the form of the scale and the paper that a learner draws at and on."""
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": words.OWN}
    form = h("form", marks, scale_html(page.FIELDS, default_form(page.FIELDS), answer.echo))
    return h("details", {"class": "group"}, h("summary", None, words.OWN), form)


def _button(name: str, label: str, *, hidden: bool = False, style: str = "plain") -> Markup:
    return h("button", {"type": "button", "class": style, "data-do": name, "hidden": hidden}, label)


def kept_group_html(kept: Markup) -> Markup:
    """Return the stored record, how the level changes, and the buttons for the record."""
    choose: Marks = {
        "type": "file", "id": "f-file", "accept": ".json,application/json", "data-file": True, "class": "away",
        "data-longest": ladder.LONGEST_FILE, "data-too-long": words.TOO_LONG,
    }  # fmt: skip
    file = h("p", {"class": "file"}, h("input", choose), h("label", {"for": "f-file", "class": "plain"}, words.IMPORT))
    buttons = h("div", {"class": "kept-buttons"}, _button("export", words.EXPORT), file, _button("erase", words.ERASE),
                _button("undo", words.UNDO, hidden=True))  # fmt: skip
    status = h("p", {"class": "said", "data-said": True, "role": "status", "data-exported": words.EXPORTED})
    rule = h("p", {"class": "help"}, words.RULE, " ", keeps_html(words.STAYS))
    body = (
        rule, h("div", {"data-region": "kept"}, kept), buttons,
        h("div", {"data-region": "incoming"}), status,
    )  # fmt: skip
    return h("details", {"class": "group"}, h("summary", None, words.KEPT), body)


def regions() -> dict[str, str]:
    """Return the page as it opens, with the first problem of seed 0; a device sets its own at once."""
    record = page.checked(page.empty(0))
    problem = page.problem_of(record)
    answer = _answer_of(problem, "")
    assert answer.answer_request is not None
    ends = h("div", {"class": "ends"}, _button("show", words.SHOW),
             _button("next", words.NEXT, hidden=True, style="onward"))  # fmt: skip
    return {
        "way": way_html(),
        "problem": problem_html(problem, answer),
        "sheet": board_html(problem, answer.sheet, None),
        "guess_title": words.GUESS,
        "guess_help": guess_help_html(problem, answer),
        "draw_title": words.DRAW,
        "draw": draw_html(problem, answer),
        "drawn_on": drawn_on_html(answer),
        "answer_title": words.ANSWER,
        "sheet_name": words.SHEET,
        "form": form_html(answer.answer_request),
        "ends": ends,
        "standing": standing_html(record),
        "keeping": kept_group_html(kept_html(record)),
        "noscript": h("noscript", None, h("p", {"class": "notice"}, words.NO_SCRIPT)),
    }


