"""A class set: read from its form and names, made piece by piece through the api, the same again from any code."""

import csv
import io
import json

import numpy as np
import pytest
from making.paths import ROOT
from pypdfium2 import PdfDocument

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.pages import class_job, class_key, class_set
from pycore.pages.class_marks import MarkingRun, read_results
from pycore.pages.class_set import FIELDS, read_roll, read_set, values_of
from pycore.practice import codes
from pycore.practice.class_set import problems
from pycore.practice.codes import MOST_LEARNERS, Code
from pycore.sheet import ledger
from pycore.words import key as words


def form(**more: str) -> dict[str, str]:
    """The page's form with some values of its own."""
    return default_form(FIELDS) | {name.replace("_", "-"): value for name, value in more.items()}


def ask(blob: bytes | None = None, **request: object) -> tuple[dict, bytes | None]:
    """One request to the api."""
    text, data = handle(json.dumps({"page": "class-set", **request}), blob)
    return json.loads(text), data


def made(values: dict[str, str], *, work: str = "pdf", roll: str = "", pieces: int = 7, **more: object):
    """What a set's work gives, its replies one after another, and its bytes."""
    begun, _ = ask(do="begin", work=work, form=values, roll=roll, **more)
    assert begun["ok"], begun
    replies = [begun]
    while not replies[-1]["ended"]:
        replies.append(ask(do="next", job=begun["job"], pieces=pieces)[0])
    done, data = ask(do="finish", job=begun["job"])
    return done, data, replies


def faults(values: dict[str, str], roll: str = "") -> dict[str, str]:
    """What is wrong with a form, by field."""
    with pytest.raises(InputError) as refused:
        read_set(values, roll)
    return {fault.field: fault.message for fault in refused.value.faults}


def test_the_default_set_needs_no_decision():
    group = read_set(default_form(FIELDS))
    assert 30 == group.learners
    assert Code(0, "core", "any", "A4", 0) == group.code


@pytest.mark.parametrize(("typed", "said"), [
    ("10000", "10000 is too many for one set. One set has at most 1023 learners"),
    ("1024", "1024 is too many for one set"),
    ("99999999999999999999", "whole number from 1 to 1023"),
    ("0", "whole number from 1 to 1023"), ("-3", "whole number"), ("2.5", "whole number"), ("", "whole number"),
    ("thirty", "“thirty” cannot be used"),
])  # fmt: skip
def test_learners_that_no_set_holds_are_refused_with_the_reason(typed: str, said: str):
    assert said in faults(form(learners=typed))["learners"]


def test_every_fault_of_a_form_is_said_at_once():
    wrong = form(
        learners="x", seed="32768", allow_percent="0", allow_degrees="nan", marks_first="-1", paper="A0",
    )  # fmt: skip
    found = faults(wrong, "n" * 61)
    assert {"learners", "seed", "allow-percent", "allow-degrees", "marks-first", "paper", "roll"} == set(found)
    assert "The name on line 1 is too long" in found["roll"]


def test_names_are_taken_whole_and_what_cannot_be_printed_is_said():
    roll = 'Amber Okafor\n\n"Smith, T. ""Tom"""\r\n=1+1\nAmber Okafor\n李小龙\nZoë\tÅngström\n'
    names = read_roll(roll, "A4")
    wanted = ["Amber Okafor", 'Smith, T. "Tom"', "=1+1", "Amber Okafor", "李小龙", "Zoë Ångström"]
    assert wanted == [name.whole for name in names]
    assert ["Amber Okafor", 'Smith, T. "Tom"', "=1+1", "Amber Okafor", "Learner 5", "Zoë Ångström"] == [
        name.printed for name in names
    ]
    told = read_set(form(), roll).notices
    assert "One sheet for each of the 6 names." == told[0]
    assert told[1].startswith("These names are in the list more than once: Amber Okafor.")
    assert told[2].startswith("These names cannot be printed: 李小龙")


def test_a_name_too_wide_for_its_cell_is_shortened_on_the_sheet_only():
    """The cell is as wide as the title block: this name was cut before."""
    (whole,) = read_roll("Bartholomew Featherstonehaugh-Cholmondeley", "A4")
    assert whole.whole == whole.printed
    (name,) = read_roll("Bartholomew Maximilian Featherstonehaugh-Cholmondeley Smythe", "A4")
    assert name.printed.endswith("…")
    assert name.whole.startswith(name.printed.removesuffix("…"))


def test_a_set_made_on_an_address_of_this_device_says_why_it_has_no_qr_codes():
    """Preview and message promised them, and the sheets had none."""
    why = "no QR codes because this address works on this device only"
    for base, lacks in (("http://127.0.0.1:8000/class-set/", True), ("https://folio.example/class-set/", False)):
        reply, _ = ask(do="answer", form=form(), base=base)
        done, _, _ = made(form(learners="1"), base=base)
        assert (lacks, lacks) == (why in reply["regions"]["sheet"], why in done["told"])
    reply, _ = ask(do="answer", form=form(opens="code"), base="http://127.0.0.1:8000/class-set/")
    assert why not in reply["regions"]["sheet"]


def test_more_names_than_codes_are_refused():
    assert "There are 1100 names" in faults(form(), "A\n" * 1100)["roll"]


def test_ten_thousand_names_are_counted_rightly_when_they_are_refused():
    """A list was cut at 100,000 characters before it was counted: 7,778 names were told."""
    roll = "\n".join(f"Learner {number}" for number in range(1, 10_001))
    request = {"do": "answer", "page": "class-set", "form": form(), "roll": roll}
    reply = json.loads(handle(json.dumps(request))[0])
    assert not reply["ok"]
    assert "There are 10000 names" in reply["errors"][0]["message"]


def test_names_decide_how_many_sheets_there_are():
    assert 3 == read_set(form(learners="x"), "A\nB\nC").learners


@pytest.mark.parametrize("tier", codes.TIERS)
def test_no_two_learners_share_values_while_there_are_others(tier: str):
    """Also where there are few whole-number problems: a number whose values were there before is passed over."""
    group = read_set(form(tier=tier, seed="5"))
    found = list(problems(group.code, group.form_of))
    passed = found.count(None)
    forms = [problem for problem in found if problem is not None]
    assert MOST_LEARNERS == len(forms)
    different = [tuple(sorted(made.items())) for _, made in forms[: MOST_LEARNERS - passed]]
    assert len(different) == len(set(different))
    assert (passed > 100) == (tier == "support")
    assert sorted(range(1, MOST_LEARNERS + 1)) == sorted(code.number for code, _ in forms)


def test_any_code_of_a_set_gives_the_set_again():
    group = read_set(form(tier="stretch", method="tip-to-tail", paper="A3", seed="777", learners="2"))
    codes_of = [str(group.code), *(str(found[0]) for found in list(problems(group.code, group.form_of))[:2] if found)]
    assert 3 == len(codes_of)
    for code in codes_of:
        reply, _ = ask(do="set-again", code=code.lower())
        assert {"topic": "neutral-current", "tier": "stretch", "method": "tip-to-tail", "paper": "A3",
                "seed": "777", "generator": "2"} == reply["form"]  # fmt: skip
        assert group.code == read_set(form(**reply["form"])).code


def test_a_damaged_code_is_refused_with_what_is_wrong(monkeypatch):
    others = {slug: page for slug, page in class_set.TOPICS.items() if slug != "sequence-components"}
    monkeypatch.setattr(class_set, "TOPICS", others)
    code = str(Code(0, "core", seed=9, number=4))
    other = "3" if code[-1] != "3" else "4"
    reply, _ = ask(do="set-again", code=code[:-1] + other)
    assert not reply["ok"]
    assert "one character is wrong" in reply["errors"][0]["message"]
    for text, said in (("3CD-K7M", "has 6 characters"), ("30D-K7M-2QX", "“0” is not used in codes"),
                       (str(Code(9, "core")), "any page of this site")):  # fmt: skip
        with pytest.raises(InputError, match=said):
            values_of(text)


def test_the_link_of_a_set_holds_no_names_and_opens_the_same_set():
    values = form(tier="support", seed="12", learners="8", scale="open", allow_percent="4", code="secret")
    reply, _ = ask(do="share", form=values, base="https://folio.example.org/class-set/", roll="Amber Okafor")
    assert "Amber" not in reply["link"]
    assert "secret" not in reply["link"]
    opened, _ = ask(do="open", fragment=reply["link"].partition("#")[2])
    assert [] == opened["notices"]
    assert read_set(values).link == read_set(form(**opened["form"])).link


def test_a_set_is_made_in_pieces_and_says_how_far_it_is():
    done, data, replies = made(form(learners="4"), pieces=1)
    assert data.startswith(b"%PDF-1.7")
    assert "class-set-532-222-224.pdf" == done["filename"]
    shares = [reply["share"] for reply in replies]
    assert shares == sorted(shares)
    assert "Learner 3 of 4" in [reply["said"] for reply in replies]
    assert any(reply["said"].startswith("Key, page") for reply in replies)


def test_how_the_pieces_are_cut_changes_nothing():
    assert made(form(learners="3"), pieces=1)[1] == made(form(learners="3"), pieces=1000)[1]


def test_finish_carries_on_what_has_not_ended():
    begun, _ = ask(do="begin", work="pdf", form=form(learners="2"))
    done, data = ask(do="finish", job=begun["job"])
    assert done["ok"]
    assert data == made(form(learners="2"))[1]


def test_work_that_was_stopped_or_replaced_is_gone():
    first, _ = ask(do="begin", work="pdf", form=form(learners="2"))
    second, _ = ask(do="begin", work="pdf", form=form(learners="2"))
    assert ask(do="next", job=first["job"])[0]["gone"]
    assert ask(do="next", job=second["job"])[0]["ok"]
    assert "Stopped. Nothing was saved." == ask(do="stop", job=second["job"])[0]["announce"]
    for does in ("next", "finish"):
        reply, data = ask(do=does, job=second["job"])
        assert (False, True, None) == (reply["ok"], reply["gone"], data)


@pytest.mark.parametrize("job", [None, "1", [], 10**30, -1, {}])
def test_a_job_that_never_was_is_said_and_not_raised(job: object):
    for does in ("next", "finish"):
        assert "Start again" in ask(do=does, job=job)[0]["announce"]


def test_answers_come_between_the_pieces():
    begun, _ = ask(do="begin", work="pdf", form=form(learners="2"))
    ask(do="next", job=begun["job"])
    answer, _ = ask(do="answer", form=form(learners="12"))
    assert "12 problem sheets" in answer["regions"]["set"]
    assert "4 marks: first step 1, length 2, angle 1." in answer["regions"]["set"]
    assert ask(do="next", job=begun["job"])[0]["ok"]


def test_the_page_says_what_will_be_made():
    answer, _ = ask(do="answer", form=form(learners="1", overlays="no"), roll="")
    assert "1 problem sheet, then the key." in answer["regions"]["set"]
    assert "<svg" in answer["regions"]["sheet"]
    refused, _ = ask(do="answer", form=form(learners="10000"))
    assert ["learners"] == [error["field"] for error in refused["errors"]]


def test_the_key_as_a_table_is_read_by_another_reader():
    roll = 'Amber, Okafor\n=1+1\n@cmd\n-2\n"Quo ""te"""'
    done, data, _ = made(form(decimal="comma"), work="key", roll=roll)
    assert done["filename"].endswith(".csv")
    assert data.startswith(b"\xef\xbb\xbf")
    assert b"\r\n" in data
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""), delimiter=";", strict=True))
    assert 6 == len(rows)
    assert 1 == len({len(row) for row in rows})
    by_head = [dict(zip(rows[0], row, strict=True)) for row in rows[1:]]
    assert ["Amber, Okafor", "'=1+1", "'@cmd", "'-2", 'Quo "te"'] == [row["Name"] for row in by_head]
    for row in by_head:
        assert codes.read(row["Code"]).number > 0
        assert "," in row["L1"] or row["L1"].isdigit()
        assert float(row["I_N (A)"].replace(",", ".")) > 0


@pytest.mark.parametrize("slug", list(class_set.TOPICS))
@pytest.mark.parametrize("tier", codes.TIERS)
def test_every_topic_and_level_makes_a_set(slug: str, tier: str):
    done, data, _ = made(form(topic=slug, tier=tier, learners="2"), roll="W" * 60 + "\nB")
    assert done["ok"]
    assert 4 < len(PdfDocument(data))
    group = read_set(form(topic=slug, tier=tier, learners="40"), "W" * 60 + "\n" + "M\n" * 39)
    rows = [class_job.row_for(group, learner) for learner in class_job.learners_of(group) if learner is not None]
    answers = class_key.answers(class_key.head_of(group, rows, (40, 40)), rows)
    room = ledger.room_across("A4") - sum(ledger.natural_widths(answers.headings, answers.rows))
    assert room / (len(answers.headings) - 1) > 1.5
    assert 1 == len({len(row) for row in (answers.headings, *answers.rows)})
    assert 1 == len({len(line) for line in class_key.table(rows)})


@pytest.mark.parametrize("slug", list(class_set.TOPICS))
def test_a_set_whose_codes_have_twelve_signs_is_made_marked_and_found_again(slug: str, monkeypatch):
    """Every topic as it will be with a number of 10 or more: written, printed in the key, marked, opened again."""
    monkeypatch.setattr(codes, "version_for", lambda code: 2)
    group = read_set(form(topic=slug, tier="stretch", learners="12", seed="77"), "W" * 60 + "\n" + "M\n" * 11)
    learners = [learner for learner in class_job.learners_of(group) if learner is not None]
    rows = [class_job.row_for(group, learner) for learner in learners]
    assert {15} == {len(row.code) for row in rows}
    head = class_key.head_of(group, rows, (12, 12))
    for table in class_key.answers(head, rows), *class_key.beyond(head, rows):
        room = ledger.room_across("A4") - sum(ledger.natural_widths(table.headings, table.rows))
        assert room / (len(table.headings) - 1) > 1.5
    answers = "\n".join(f"{row.code} {row.result.size}" for row in rows)
    marking = MarkingRun(group, read_results(answers))
    assert [] == list(marking.refused)
    for _ in marking.steps():
        pass
    assert ([row.code for row in rows], []) == ([one.code for one in marking.results], marking.refused)
    assert (slug, "stretch", "77") == tuple(values_of(rows[3].code)[name] for name in ("topic", "tier", "seed"))
    assert group.code == read_set(form(**values_of(rows[3].code), learners="12")).code


def test_topics_are_taken_up_by_registration_alone():
    """Nothing here names a calculator: every one of the registry sets problems and is a topic."""
    assert [] == [slug for slug, page in CALCULATORS.items() if page.topic < 0]
    assert set(CALCULATORS) == set(class_set.TOPICS)
    source = (ROOT / "pycore" / "pages" / "class_set.py").read_text("utf-8")
    assert "neutral" not in source


def test_the_key_answers_the_further_question_of_the_stretch_tier():
    """Which current in the third line leaves no neutral: against numpy, from the key's own values."""
    done, data, _ = made(form(tier="stretch", learners="4"), work="key")
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""), strict=True))
    assert done["ok"]
    group = read_set(form(tier="stretch", learners="4"))
    problems_made = [learner for learner in class_job.learners_of(group) if learner is not None]
    for row, learner in zip(rows[1:], problems_made, strict=True):
        found = dict(zip(rows[0], row, strict=True))
        sizes, lags = ([float(learner.form[f"{key}{n}"]) for n in (1, 2)] for key in "ia")
        angles = np.radians(np.array([0.0, -120.0]) - lags)
        assert float(found[words.FURTHER]) == pytest.approx(abs(np.sum(sizes * np.exp(1j * angles))), abs=0.06)
        assert found[words.FURTHER_ANGLE]
    core = made(form(learners="2"), work="key")[1].decode("utf-8-sig")
    assert words.FURTHER not in core
