"""The registry imports one calculator for one page, and what its first answer needs is little of pycore."""

import json
import subprocess
import sys

import pytest
from making.paths import PYCORE, ROOT

from pycore.calculators.registry import CALCULATORS, MAIN, MAIN_FIRST, SLUGS, by_topic, module_of
from pycore.sums.page import SumPage

FIRST = """
import json, sys
from pycore import api
from pycore.calculators.registry import CALCULATORS, SLUGS
def ask(**request):
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert reply["ok"], reply
    return reply
assert "add-phasors" in CALCULATORS and "other" not in CALCULATORS and tuple(CALCULATORS) == SLUGS
form = ask(do="open", page="%s", fragment="")["form"]
ask(do="answer", page="%s", form=form, parts=["answer", "sheet", "view", "workings"])
print(json.dumps(sorted(name for name in sys.modules if name.startswith("pycore."))))
"""
NOT_AT_FIRST = (
    "pycore.pages.", "pycore.practice.marking", "pycore.practice.generator", "pycore.sums.lesson",
    "pycore.sums.classroom", "pycore.render.lesson", "pycore.render.classroom", "pycore.render.handout",
    "pycore.render.photograph", "pycore.render.class_", "pycore.render.practice", "pycore.render.print_setup",
    "pycore.writers.pdf", "pycore.words.lesson", "pycore.words.practice", "pycore.words.class_set",
)  # fmt: skip
"""Beginnings of names of modules."""


def modules() -> list[str]:
    """Every module of pycore by its full name."""
    paths = sorted(PYCORE.rglob("*.py"))
    return [".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for path in paths]


def test_all_that_is_not_wanted_at_first_is_there():
    """A name that has moved would be looked for in vain, and nothing would be said."""
    assert [] == [name for name in NOT_AT_FIRST if not any(module.startswith(name) for module in modules())]


def loaded(slug: str) -> list[str]:
    """The modules of pycore that are loaded once a fresh Python has given the first answer of a page."""
    command = [sys.executable, "-c", FIRST.replace("%s", slug)]
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, timeout=120)
    assert 0 == done.returncode, done.stderr[-2000:]
    return json.loads(done.stdout)


@pytest.mark.parametrize("slug", ["neutral-current", "two-wattmeters"])
def test_the_first_answer_of_a_page_imports_no_other_page_and_nothing_that_comes_later(slug: str):
    found = loaded(slug)
    rooms = {f"pycore.calculators.{one.replace('-', '_')}": one for one in SLUGS}
    assert {slug} == {rooms[room] for name in found if (room := ".".join(name.split(".")[:3])) in rooms}
    late = (*NOT_AT_FIRST, *(f"{room}.{name}" for room in rooms for name in ("practice", "teaching")))
    assert [] == [name for name in found if name.startswith(late)]


def test_every_line_of_the_registry_names_the_page_that_it_gives():
    for slug, page in CALCULATORS.items():
        assert isinstance(page, SumPage)
        assert slug == page.slug
        assert page is CALCULATORS[slug]
    assert (SLUGS, len(SLUGS)) == (tuple(CALCULATORS), len(CALCULATORS))
    assert MAIN in SLUGS and sorted(SLUGS) == sorted(MAIN_FIRST) and MAIN == MAIN_FIRST[0]


def test_a_topic_is_known_by_its_number_without_the_calculators():
    """Each has a number of its own, and to look one up imports rooms, not what stands in them."""
    assert {page.topic: slug for slug, page in CALCULATORS.items()} == by_topic()
    assert len(SLUGS) == len(by_topic())
    script = "import sys\nfrom pycore.calculators.registry import by_topic\nby_topic()\nprint(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, cwd=ROOT, check=True)
    depth = [name.count(".") for name in done.stdout.split() if name.startswith("pycore.calculators.")]
    assert len(depth) == len(SLUGS) + 1 and max(depth) == 2


ROOM = ("circuit", "fields", "case", "page", "practice", "teaching", "words")
"""The modules that every room has."""


@pytest.mark.parametrize("slug", SLUGS)
def test_every_room_holds_the_fixed_set_of_modules(slug: str):
    for name in ROOM:
        assert module_of(slug, name).__doc__


def test_no_other_slug_is_given():
    assert CALCULATORS.get("other") is None
    with pytest.raises(KeyError):
        CALCULATORS["other"]
