"""The bill of materials, opened by its own library; the contact of those who host the site."""

import datetime
import json
from pathlib import Path

import pytest
from cyclonedx.model.bom import Bom
from making.contact import security_text
from making.editions import NOT_LISTED
from making.materials import BILL, bill_of_materials
from making.paths import SITE
from making.progress import BuildError

TODAY = datetime.date(2026, 7, 1)


def test_the_bill_names_all_that_the_site_carries_and_what_builds_it(dist: Path):
    text = (dist / BILL).read_text("utf-8")
    assert bill_of_materials() == text
    bill = Bom.from_json(data=json.loads(text))  # type: ignore[attr-defined]
    scopes = {f"{one.group}/{one.name}" if one.group else one.name: one.scope.value for one in bill.components}
    carried = {name for name, scope in scopes.items() if scope == "required"}
    assert {"pyodide", "morphdom", "harfbuzzjs", "woff2-encoder", "pydyf", "segno"} <= carried
    assert set(json.loads((SITE / "package.json").read_text("utf-8"))["dependencies"]) <= set(scopes)
    assert {"esbuild", "fonttools", "numpy"} <= scopes.keys() - carried
    (pyodide,) = (one for one in bill.components if one.name == "pyodide")
    assert {"zlib", "bzip2", "Zstandard"} <= {one.name for one in pyodide.components}
    assert "phasor-folio" == bill.metadata.component.name
    assert BILL in (dist / "licences.txt").read_text("utf-8")


def test_the_bill_has_no_time_and_nothing_drawn_at_random_and_names_no_host():
    text = bill_of_materials()
    assert text == bill_of_materials()
    assert [] == [word for word in ("serialNumber", "timestamp", "registry", "https:") if word in text]


def test_a_contact_is_written_as_the_standard_has_it():
    text = security_text("mailto:help@folio.example", "2027-06-30", "https://folio.example/", TODAY)
    assert text.splitlines() == [
        "Contact: mailto:help@folio.example", "Expires: 2027-06-30T23:59:59Z", "Preferred-Languages: en",
        "Canonical: https://folio.example/.well-known/security.txt",
    ]  # fmt: skip
    assert ".well-known/security.txt" in NOT_LISTED


@pytest.mark.parametrize(("contact", "until", "said"), [
    ("help@folio.example", "2027-06-30", "begins with mailto:"), ("", "2027-06-30", "begins with mailto:"),
    ("mailto:", "2027-06-30", "begins with mailto:"), ("mailto:a b@c", "2027-06-30", "begins with mailto:"),
    ("https://folio.example/report", "30.6.2027", "as 2027-06-30"), ("https://folio.example/report", "", "as 2027"),
    ("https://folio.example/report", "2026-01-31", "this day is over"),
])  # fmt: skip
def test_a_contact_that_the_standard_does_not_take_is_refused_in_words(contact: str, until: str, said: str):
    with pytest.raises(BuildError, match=said):
        security_text(contact, until, "", TODAY)
