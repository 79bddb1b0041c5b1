"""`build.py test --changed` runs what a change touches, and no more than that."""

import argparse

import pytest
from making import touched
from making.paths import ROOT, TESTS

import build


@pytest.mark.parametrize(
    ("changed", "run", "left"),
    [
        ("tests/unit/test_trig.py", "unit/test_trig.py", "unit/test_paper.py"),
        ("tests/rooms.py", "browser/test_rooms.py", "unit/test_trig.py"),
        ("pycore/trig.py", "unit/test_trig.py", "codebase/test_compress.py"),
        ("pycore/practice/drawn.py", "unit/test_photograph.py", "unit/test_trig.py"),
        ("pycore/calculators/star_and_delta/case.py", "calculators/star_and_delta/test_star_and_delta.py",
         "calculators/add_phasors/test_add_phasors.py"),
        ("pycore/writers/qr.py", "browser/test_shelf.py", "codebase/test_compress.py"),
        ("site/making/compress.py", "codebase/test_compress.py", "browser/test_shelf.py"),
        ("site/js/register.js", "browser/test_question_paper.py", "browser/test_print_setup.py"),
        ("site/js/kept.js", "browser/test_this_device.py", "codebase/test_compress.py"),
        ("site/css/print-setup.css", "browser/test_print_setup.py", "browser/test_hand.py"),
        ("site/templates/practice.html", "browser/test_practice.py", "browser/test_print_setup.py"),
    ],
)  # fmt: skip
def test_a_change_runs_its_tests_and_leaves_others(changed: str, run: str, left: str) -> None:
    assert (ROOT / changed).is_file()
    found = touched.tests_of([ROOT / changed])
    assert TESTS / run in found
    assert (TESTS / left).is_file()
    assert TESTS / left not in found


def test_every_script_style_and_template_of_a_page_has_a_test_in_the_browser() -> None:
    kinds = sorted((ROOT / "site" / "templates").glob("*.html")) + sorted((ROOT / "site" / "js" / "pages").glob("*.js"))
    assert [] == [path.name for path in kinds if path.name != "base.html" and not touched.tests_of([path])]


def test_what_is_gone_or_only_read_by_people_runs_nothing() -> None:
    assert [] == touched.tests_of([ROOT / "README.md", ROOT / "tests" / "unit" / "test_that_is_gone.py"])


def test_the_command_prepares_and_runs_them_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    ran: list[list[str]] = []
    monkeypatch.setattr("making.touched.changed", lambda since: [ROOT / "pycore" / "trig.py"] if since == "x" else [])
    monkeypatch.setattr("making.testing.prepare", lambda _rest: None)
    monkeypatch.setattr("subprocess.run", lambda command, **_: ran.append(command) or argparse.Namespace(returncode=3))
    assert 3 == build.test(argparse.Namespace(changed="x"), ["-x"])
    assert ["-x", "tests/unit/test_trig.py"] == [one for one in ran[0] if one == "-x" or "test_trig" in one]
    assert "auto" not in ran[0]
    assert 0 == build.test(argparse.Namespace(changed="HEAD"), [])
    assert 1 == len(ran)
