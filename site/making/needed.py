"""Runs inside Pyodide as the page starts it: tells which modules of pycore and which files of the standard library are
loaded by the first answer of each page, by everything else, and by each lazy part. A Pyodide of its own, because what
compiles them needs more.
"""

import importlib
import json
import sys

STANDARD_LIBRARY = "/lib/python314.zip/"
PARTS = "/parts/"
"""Holds a folder for each lazy part: what the page loads only when a request needs it."""

OURS = ("pycore", "pydyf", "records")


def read_a_traceback() -> None:
    """Format one traceback, because what that needs is imported only then."""
    import traceback

    try:
        raise ValueError
    except ValueError:
        traceback.format_exc()


def use_codes() -> None:
    """Make a code, because which codecs that needs is seen only then."""
    qr = importlib.import_module("pycore.writers.qr")
    qr.matrix("https://example.org/#a=1")
    qr.matrix("Ω")


USES = {"codes": use_codes}
"""What the page will do with a part, where importing it does not show all that it needs."""


def ask(**request: object) -> dict:
    """One reply of the api, which must be an answer. Raises ValueError where it is none."""
    api = importlib.import_module("pycore.api")
    reply: dict = json.loads(api.handle(json.dumps(request))[0])
    if not reply["ok"]:
        raise ValueError(f"{request}: {reply['announce']}")
    return reply


def first_answer(slug: str) -> None:
    """What a page asks as it opens, with all that it shows then or a moment later, and an entry that is refused."""
    form = ask(do="open", page=slug, fragment="")["form"]
    regions = ["answer", "sheet", "view", "workings"]
    ask(do="answer", page=slug, form=form, parts=regions, base="https://example.org/", code=True)
    api = importlib.import_module("pycore.api")
    refused = dict.fromkeys(form, "?")
    api.handle(json.dumps({"do": "answer", "page": slug, "form": refused, "parts": regions}))


def code_problem(slug: str) -> None:
    """What a page asks when a problem opens it: by its code, or with a lecturer's own values and their check code."""
    calculator = importlib.import_module("pycore.calculators.registry").CALCULATORS[slug]
    if calculator.topic is None:
        return
    code = importlib.import_module("pycore.practice.codes").Code(calculator.topic, "core")
    form = ask(do="open", page=slug, fragment=f"v=3&code={code}")["form"]
    links = importlib.import_module("pycore.forms.links")
    own = {**form, "code": str(calculator.check_code(calculator.case(form)))}
    given = links.fragment(links.form_pairs(own, calculator.fields))
    for opened in (form, ask(do="open", page=slug, fragment=given)["form"]):
        ask(do="answer", page=slug, form=opened, parts=["answer", "sheet", "view", "check"], veiled=True)


def is_ours(name: str) -> bool:
    """Whether a module is no part of the standard library."""
    return name.split(".")[0] in OURS


def ours() -> list[str]:
    """The modules that are loaded now and are no part of the standard library."""
    return sorted(name for name in sys.modules if is_ours(name))


def by_page() -> tuple[dict[str, list[str]], list[str]]:
    """By calculator, the modules that its first answer loads where no other page has been asked for; and what the
    problem of a code needs beside them, on whatever page."""
    modules = {}
    coded: set[str] = set()
    for slug in list(importlib.import_module("pycore.calculators.registry").CALCULATORS):
        for name in ours():
            del sys.modules[name]
        first_answer(slug)
        modules[slug] = ours()
        code_problem(slug)
        coded |= set(ours()) - set(modules[slug])
    return modules, sorted(coded)


def shared(pages: dict[str, list[str]], coded: list[str], complete: list[str]) -> dict[str, list[str]]:
    """The modules of each archive: `library` has what every page's first answer loads, and the fronts of all packages,
    so that other archives can be joined to them; a page's has what its own loads beside; `coded` what the problem of a
    code needs; `later` all the rest, and what the pages' own and `coded` have."""
    packages = {name.rpartition(".")[0] for name in complete if name.startswith("pycore.")}
    first = set.intersection(*map(set, pages.values())) | packages
    own = {slug: sorted(set(names) - first) for slug, names in pages.items()}
    rest = sorted({name for name in complete if is_ours(name)} - first)
    return {"library": sorted(first), "later": rest, "coded": sorted(set(coded) - first), **own}


def loaded() -> list[str]:
    """The files of the standard library's archive that are loaded now."""
    origins = (getattr(getattr(module, "__spec__", None), "origin", None) or "" for module in sys.modules.values())
    return sorted(origin.removeprefix(STANDARD_LIBRARY) for origin in origins if origin.startswith(STANDARD_LIBRARY))


def beside(names: list[str], *before: list[str]) -> list[str]:
    """Those names that stand in none of the lists before."""
    return [name for name in names if not any(name in one for one in before)]


def needed(modules: str) -> str:
    """As JSON: by archive its modules, and the files of the standard library that it needs; `modules` is JSON, too:
    the whole of pycore with what it imports, and by lazy part its modules."""
    names = json.loads(modules)
    pages, coded = by_page()
    read_a_traceback()
    archives = shared(pages, coded, names["whole"])
    loaded_by = {"library": loaded()}
    loaded_by["codes"] = beside(with_part("codes", names["parts"]["codes"]), loaded_by["library"])
    for name in names["whole"]:
        importlib.import_module(name)
    # A code is made before the rest is there, any other part only after it.
    loaded_by["later"] = beside(loaded(), loaded_by["library"])
    for folder in sorted(names["parts"].keys() - {"codes"}):
        loaded_by[folder] = beside(with_part(folder, names["parts"][folder]), *loaded_by.values())
    return json.dumps({"modules": archives, "loaded": loaded_by})


def with_part(folder: str, names: list[str]) -> list[str]:
    """What is loaded once a lazy part has been imported and used."""
    sys.path.append(PARTS + folder)
    for name in names:
        importlib.import_module(name)
    USES.get(folder, lambda: None)()
    return loaded()
