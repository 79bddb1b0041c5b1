"""Seeded forms of every calculator of the registry, and digests of what the api makes of them.

Each calculator's forms stand in ``calculators/<slug>/forms.py``: ``values(rng, number)`` are its own values and
``form(number)`` is a whole form; equal, opposite, collinear, tiny and cancelling values are among them. This module
runs in CPython and, by ``mounted.mjs``, in the site's Pyodide.
"""

import hashlib
import importlib
import json
from collections.abc import Iterable, Iterator
from types import ModuleType

from pycore.calculators.registry import CALCULATORS

COUNT = 30


def forms_of(slug: str) -> ModuleType:
    """The module of a calculator's seeded forms. Raises ModuleNotFoundError where it has none."""
    return importlib.import_module(f"calculators.{slug.replace('-', '_')}.forms")


def form(slug: str, number: int) -> dict[str, str]:
    """The form of this number; the kinds of problem follow one another."""
    return forms_of(slug).form(number)


def forms(slug: str, count: int, start: int = 0) -> Iterator[dict[str, str]]:
    """Forms of one calculator one after another."""
    return (form(slug, number) for number in range(start, start + count))


def ask(slug: str, form: dict[str, str], do: str = "answer", **more: object) -> tuple[dict, bytes | None]:
    """The api's reply to a form, all parts of it."""
    from pycore import api

    request = {"do": do, "page": slug, "form": form, "parts": ["answer", "sheet", "view", "workings"], **more}
    text, data = api.handle(json.dumps(request))
    return json.loads(text), data


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:20]


def digests(slugs: Iterable[str] = CALCULATORS, count: int = COUNT) -> dict[str, str]:
    """A digest by calculator, problem and region, and of the PDF of one problem in ten, each kind in turn."""
    made: dict[str, str] = {}
    for slug in slugs:
        for number in range(count):
            reply, _ = ask(slug, form(slug, number))
            assert reply["ok"], (slug, number, reply["announce"])
            for name, html in reply.pop("regions").items():
                made[f"{slug} {number} {name}"] = _digest(html.encode())
            made[f"{slug} {number} rest"] = _digest(json.dumps(reply).encode())
            if number % 10 == number // 10 % 10:
                made[f"{slug} {number} pdf"] = _digest(ask(slug, form(slug, number), "pdf")[1] or b"")
    return made
