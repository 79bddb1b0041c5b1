"""What learners and lecturers ask of pycore, flow after flow, and what strangers may ask; of each flow one digest.

It runs inside the site's Pyodide: for the list of functions that its WebAssembly needs (site/making/profiling.py), and
for tests that compare what two kinds of that WebAssembly say.
"""

import hashlib
import json
from collections.abc import Callable, Iterator

from browser import hostile
from host import class_sets, codes, photographs_by_points, piles, shelf
from host.seeded import COMMON, SeededChoices

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.pages.paper import PAPER_PAGES
from pycore.sheet.kinds import KINDS

PARTS = ("answer", "sheet", "view", "workings", "check", "front")
VIEWS = ("lesson", "numbers", "together", "pull", "waves")
INSTRUMENTS = ("method", "order", "parallels", "protractor", "first", "rotation", "decimal", "angles")
BASE = "https://www.folio.example/term/"
HALF_TYPED = ("", "1", "1.", "-", "1e", "1e400", "NaN", "0", "18,4", "18.4 A; 18.6 A", "0.85 lag", "20 at 60", "é位")
ODD = ("", "[]", "{", '{"do": 1}', '{"do": "answer"}', "null", "\x00", "[" * 400, '"' + "9" * 500_001, '"\\ud800"')
DEEP = 6_000
Flow = Callable[[bool], Iterator[object]]


def ask(**request: object) -> list[object]:
    """The api's reply and its bytes' digest."""
    text, data = api.handle(json.dumps(request))
    return [text, hashlib.sha256(data or b"").hexdigest()]


def answers(whole: bool) -> Iterator[object]:
    """Every calculator: its example and other problems, with each part of the page, veiled and not."""
    for slug, page in CALCULATORS.items():
        forms = [default_form(page.fields), *shelf.forms(slug, 12 if whole else 1)]
        for form in forms:
            yield ask(do="answer", page=slug, form=form, parts=PARTS, base=BASE + slug, code=True)
            yield ask(do="answer", page=slug, form={**form, "sheet": "problem"}, parts=PARTS, veiled=True)


def settings(whole: bool) -> Iterator[object]:
    """Every option of every choice, and text where text is taken."""
    for slug, page in CALCULATORS.items():
        example = default_form(page.fields)
        for field in page.fields:
            for value in [option.value for option in field.options] if field.options else ["Room 12 – ø ü 位"]:
                if whole or (slug == "neutral-current" and field.name in ("print", "paper", "method", "place")):
                    yield ask(do="answer", page=slug, form={**example, field.name: value}, parts=PARTS)


def edits(whole: bool) -> Iterator[object]:
    """Values half typed, and such as cannot be used."""
    for slug, page in list(CALCULATORS.items())[: None if whole else 2]:
        example = default_form(page.fields)
        for field in page.fields:
            for value in HALF_TYPED if field.group in ("values", "loads", "more") else HALF_TYPED[-1:]:
                yield ask(do="answer", page=slug, form={**example, field.name: value}, parts=["answer", "view"])


def own_paper(whole: bool) -> Iterator[object]:
    """Homework on blank paper at a scale of one's own, to the answer checked; what has no room on a printed sheet."""
    for slug, page in list(CALCULATORS.items())[: None if whole else 1]:
        choices = {field.name: [option.value for option in field.options] for field in page.fields}
        for number, paper in enumerate(filter(None, choices.get("own-paper", ())) if whole else ["A4"]):
            own = {"own-paper": paper, "own-way": choices["own-way"][number % 3]}
            for scale in ("", "1", "0.05", "7"):
                form = default_form(page.fields) | own | {"scale": scale}
                yield ask(do="answer", page=slug, form=form, parts=PARTS, base=BASE + slug, code=True)
            for kind in KINDS:
                yield ask(do="answer", page=slug, form={**form, "sheet": kind}, parts=PARTS, veiled=True)
            yield ask(do="pdf", page=slug, form=form, kinds=KINDS, base=BASE + slug, code=True)
            given = {"answer-how": "drawn", "answer": "72.5", "answer-angle": "101", "answer-side": "clockwise"}
            yield ask(do="mark", page=slug, form=form, given=given)
            yield ask(do="share", page=slug, form=form, base=BASE + slug, code=True)
            yield ask(do="lesson", page=slug, form=form, view="lesson", step=1 + number)
            yield ask(do="photo", page=slug, form=form)
            photo = {"width": 900, "height": 700, "tap": 2.0}
            corners = {"marks": [[90, 80], [820, 90], [810, 620], [70, 610]], "paper": paper, "way": "landscape"}
            yield ask(do="photo", page=slug, form=form, photo=photo, ground="corners", **corners)


def files(whole: bool) -> Iterator[object]:
    """PDFs of every kind of sheet, links with codes, handouts; on paper of other sizes too."""
    for slug, page in CALCULATORS.items():
        for number, form in enumerate([default_form(page.fields), *shelf.forms(slug, 5 if whole else 0)]):
            kinds = KINDS if number == 0 else [KINDS[number % len(KINDS)]]
            yield ask(do="pdf", page=slug, form=form, kinds=kinds, base=BASE + slug, code=True, correction=[1.01, 0.99])
            yield ask(do="share", page=slug, form=form, base=BASE + slug, code=True)
        if whole or slug == "neutral-current":
            style = "\n".join(_text(f"css/{name}.css") for name in ("tokens", "drawing", "print", "handout"))
            texts = {"style": style, "script": _text("js/handout-player.js")}
            yield ask(do="handout", page=slug, form=form, **texts, base=BASE + slug, code=True)
            yield ask(do="handout", page=slug, form=form, **texts, base=BASE + slug, code=True, problem=True)
            yield ask(do="share", page=slug, form=form, base=BASE + slug, code=True, problem=True)
            for style in ("page", "large", "easy"):
                yield ask(do="pdf", page=slug, form={**form, "print": style}, kinds=[], base=BASE, code=True)


def _text(place: str) -> str:
    """A file of the site as it is in the work tree, where the folder of the tests is."""
    with open(f"{__file__.rpartition('/tests/')[0]}/site/{place}", encoding="utf-8") as file:
        return file.read()


def lessons(whole: bool) -> Iterator[object]:
    """The lesson views, step by step; all methods and instruments, asking and telling."""
    for slug, page in list(CALCULATORS.items())[: None if whole else 1]:
        form = default_form(page.fields)
        for field, value in [(one, value) for one in INSTRUMENTS for value in COMMON[one]]:
            for step in range(40) if whole and slug == "neutral-current" else (1, 7):
                yield ask(do="lesson", page=slug, form={**form, field: value}, view="lesson", step=step)
        for view in VIEWS:
            for step in range(0, 40, 1 if whole else 6):
                yield ask(do="lesson", page=slug, form=form, view=view, step=step)
        yield ask(do="lesson", page=slug, form=form, view="lesson", step=1, list_step=3)
        where = {"view": "lesson", "step": 4, "ask": 1}
        yield ask(do="share", page=slug, form=form, base=BASE, code=True, lesson=where)


def practice(whole: bool) -> Iterator[object]:
    """Problems tried, shown and left; a record read, merged, replaced, erased; answers marked."""
    record: object = None
    for seed in range(24 if whole else 3):
        first = ("open", "guess", "mark", "mark", "show", "next", "mark", "another")
        for move in (*first, "read", "merge", "replace", "way", "erase"):
            given = {"answer": f"{seed}.{seed}", "answer-angle": str(-seed), "answer-unit": "A", "answer-side": "lag"}
            more = {"given": given, "at": [seed, 10.0], "way": f"{seed % 10}.components", "text": json.dumps(record)}
            reply = json.loads(ask(do="practice", move=move, record=record, seed=seed, incoming=record, **more)[0])
            record = reply.get("record", record)
            yield reply
    for slug, page in CALCULATORS.items():
        form = default_form(page.fields)
        for answer in ("10.5", "10.5 A", "1 2", "", "11.6 at 12"):
            given = {"answer": answer, "answer-angle": "12", "answer-across": "3", "answer-up": "-4"}
            yield ask(do="mark", page=slug, form=form, given=given)
            yield ask(do="mark", page=slug, form=form, given=given | {"answer-how": "calculated"}, shown=True)
        for part in ("answer-first", "answer-across", "answer-up"):
            for size in ("3", "12.5"):
                yield ask(do="mark", page=slug, form=form, given={part: size, "answer-how": "drawn"})
        for step in range(1, 14 if whole else 3):
            for rung in (1, 2):
                yield ask(do="hint", page=slug, form=form, step=step, rung=rung)
        yield ask(do="easy", page=slug, form=form)


def printing(whole: bool) -> Iterator[object]:
    """Print set-up and pages of blank paper."""
    for printed in ("100", "98.5", "", "x", "150", "100.4"):
        form = {"paper": "A4", "orientation": "portrait", "edge": printed, "printed": printed, "upright": printed,
                "level": "98,2"}  # fmt: skip
        for pdf in (False, True):
            yield ask(do="setup", form=form, kept=[1.002, 0.998], pdf=pdf)
    for slug, page in PAPER_PAGES.items():
        for field in page.fields:
            for option in field.options if whole else field.options[:2]:
                form = {field.name: option.value}
                yield ask(do="answer", page=slug, form=form, parts=["sheet"])
                yield ask(do="pdf", page=slug, form=form, base=BASE, code=True)
        yield [ask(do="open", page=slug, fragment="paper=A3"), ask(do="share", page=slug, form={}, base=BASE)]


def _strange(number: int) -> str:
    """A malformed link, encoded here or not at all: the site's Python has nothing that encodes addresses."""
    rng = SeededChoices(number)
    if rng.below(3):
        return rng.one_of([maker for maker in hostile.MAKERS if maker is not hostile.MAKERS[0]])(rng)
    values = [rng.one_of(hostile.VALUES).encode("utf-8", "replace") for _ in range(4)]
    return "&".join(f"{rng.one_of(hostile.KEYS)}={''.join(f'%{byte:02X}' for byte in value)}" for value in values)


def links(whole: bool) -> Iterator[object]:
    """Links, codes and sets opened again, and what a stranger may put in their place."""
    for slug in CALCULATORS:
        for number in range(400 if whole else 8):
            text = ask(do="open", page=slug, fragment=_strange(number))[0]
            form = json.loads(text).get("form", {})
            yield [text, ask(do="answer", page=slug, form=form, parts=["answer", "sheet", "view", "workings"])]
    for code in ("332-6M9-239", "3CD", "", "!!", "0" * 40, "ä"):
        yield [ask(do="code", code=code), ask(do="set-again", code=code)]
        yield [ask(do="open", page=page, fragment=f"code={code}&v=2") for page in ("class-set", "neutral-current")]


def sets(whole: bool) -> Iterator[object]:
    """Class sets with their keys and marks."""
    yield class_sets.digests() if whole else class_sets.digests()[:3]
    yield class_sets.paper_digests()
    settings = {"decimal": "comma", "percent": "1.5"}
    yield [ask(do=does, page="college-settings", form=settings) for does in ("answer", "share")]
    yield ask(do="answer", page="question-papers", form={}, roll="A\nB")
    yield ask(do="answer", page="class-set", form={"topic": "open-neutral"}, parts=["sheet", "answer"], roll="A\nB")
    yield [ask(do="begin", work="pdf", page="class-set", form={}), ask(do="stop", job=1), ask(do="next", job=99)]


NAMES = ("דנה כהן", "Zoë Nguyễn", "Jo (יו) 12", "\u05e8\u05b4ב", "山田 はな", "\U00013000\U00013001", "‘’ ﬁ 𝔸 é位",
         "\u200d")  # fmt: skip
GLYPHS = ([["{}", 600, "M 0 0 Q 50 90 100 -10 Z M 5 5 L 9 9 C 1 2 3 4 5 6 Z"], [" ", 250, ""]], [0, 1, 0])


def names(whole: bool) -> Iterator[object]:
    """Names in other scripts: asked for, set, refused; as a page sends them, not escaped."""
    for name in NAMES:
        asking = {"do": "answer", "page": "add-phasors", "form": {"who": name, "sheet": "problem"}, "parts": PARTS}
        text, _ = api.handle(json.dumps(asking, ensure_ascii=False))
        yield text
        keys = [one["key"] for one in json.loads(text).get("unlettered", ())]
        for runs in (dict.fromkeys(keys, GLYPHS[1]), dict.fromkeys(keys), {"Hebr x": [7]}):
            known = {"letters": {"glyphs": GLYPHS[0], "runs": runs}}
            for does in ({}, {"do": "pdf", "kinds": KINDS}):
                text, data = api.handle(json.dumps(asking | does | known, ensure_ascii=False))
                yield [text, hashlib.sha256(data or b"").hexdigest()]
            group = {"page": "class-set", "form": {"print": "page"}, "roll": f"A\n{name}\n{name} {name}\t", **known}
            yield api.handle(json.dumps({"do": "answer", **group}, ensure_ascii=False))[0]
            for work in ("pdf", "key"):
                text, _ = api.handle(json.dumps({"do": "begin", "work": work, **group}, ensure_ascii=False))
                yield ask(do="finish", job=json.loads(text).get("job"))


def photographs(whole: bool) -> Iterator[object]:
    """Drawings judged by points in a photograph."""
    if whole:
        yield photographs_by_points.digests()
    for slug, page in CALCULATORS.items():
        yield ask(do="photo", page=slug, form=default_form(page.fields))
        photo = {"photo": {"width": 900, "height": 700, "tap": 2.0}, "marks": [[1, 2], [3, 4], None], "ground": "marks"}
        yield ask(do="photo", page=slug, form=default_form(page.fields), **photo)


def pile(whole: bool) -> Iterator[object]:
    """A pile of photographs: sheets of a class set and of a question paper, read, marked, and given back."""
    yield list(piles.replies())[:: 1 if whole else 3]


def made_codes(whole: bool) -> Iterator[object]:
    """Codes of many sizes."""
    yield codes.digests()[:: 1 if whole else 12]
    yield codes.sheet()


def _deeper(left: int) -> int:
    return 1 + _deeper(left - 1) if left else 0


def faults(whole: bool) -> Iterator[object]:
    """What is no request, recursion without end, errors with their tracebacks."""
    import traceback

    for text in ODD:
        yield api.handle(text)[0]
    for fails in (lambda: _deeper(DEEP), lambda: {}["x"], lambda: [][1], lambda: int("x"), lambda: 1 // 0,
                  lambda: json.loads("{"), lambda: None.x, lambda: "é".encode("ascii"), lambda: __import__("absent"),
                  lambda: (1).real(), lambda: api.handle(), lambda: exec("x = ("), lambda: chr(-1)):  # fmt: skip
        try:
            fails()
        except Exception as error:
            told = traceback.format_exc() if whole else repr(error)
            yield [type(error).__name__, "Traceback" in told or str(error)]


def memory(whole: bool) -> Iterator[object]:
    """Much held and given back, and what collects it."""
    import gc

    for count in (10, 1000, 300_000 if whole else 5000):
        held = {str(k): [k, float(k), (k,)] for k in range(count)}
        held["itself"] = [held]
        yield [len(held), len(json.dumps(list(held)[:50]))]
        del held
        yield gc.collect() >= 0


FLOWS: dict[str, Flow] = {
    "answers": answers, "settings": settings, "edits": edits, "own paper": own_paper, "files": files,
    "lessons": lessons, "practice": practice, "printing": printing, "links": links, "sets": sets, "names": names,
    "photographs": photographs, "piles": pile, "codes": made_codes, "faults": faults, "memory": memory,
}  # fmt: skip


def digest(name: str, whole: bool) -> str:
    """One flow; `whole`: all of it, for minutes, or a part that takes seconds."""
    total = hashlib.sha256()
    for found in FLOWS[name](whole):
        total.update(json.dumps(found, sort_keys=True).encode("utf-8", "backslashreplace"))
    return total.hexdigest()[:20]
