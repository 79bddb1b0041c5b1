"""What cannot be used is said by field, with what was given and what is accepted; nothing ever raises."""

import json
import math
import re
from functools import partial

import pytest
from calculators.neutral_current.forms import form
from host import shelf
from host.seeded import SeededChoices

from pycore import api
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.forms import links

ask = partial(shelf.ask, "neutral-current")
PLAIN = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
ACCEPTED = re.compile(r"(?:Enter|Use|Write),? |such as|0 or more|Example: ")


def refused(**given: str) -> dict:
    """The reply to a form that cannot be used."""
    reply, data = ask({**PLAIN, **given})
    assert not reply["ok"], given
    assert None is data
    return reply


def shown(given: str) -> str:
    """What of a typed text a message must repeat: its beginning."""
    return given.strip()[:24]


def passed(**given: str) -> dict:
    """The reply to a form with an unusable field that the answer can do without: it stands, the fault is named."""
    reply, _ = ask({**PLAIN, **given})
    assert reply["ok"], given
    assert all(fault["message"] in reply["announce"] for fault in reply["errors"])
    return reply


@pytest.mark.parametrize("field", ["i1", "i2", "i3", "measured"])
@pytest.mark.parametrize("given", [
    "text", "-5", "−5", "-0.001", "inf", "-inf", "Infinity", "∞", "nan", "1.2.3", "1,2,3", "12 V", "12 kV", "12 m",
    "1e6", "1e999", "1e-9", "1e-400", "100001", "12 34", "5 A A", "0x10", "<b>5</b>", "5; DROP", "½", "⚡", "مرحبا",
    "\u202e5", "{i1}", "**5**", "%00", "5" * 41, "9" * 199, "__proto__", "constructor",
])  # fmt: skip
def test_a_current_that_cannot_be_used_is_named_with_what_was_given_and_what_would_do(field: str, given: str):
    reply = (passed if field == "measured" else refused)(**{field: given})
    assert [field] == [fault["field"] for fault in reply["errors"]]
    message = reply["errors"][0]["message"]
    label = next(known.label for known in FIELDS if known.name == field)
    assert message.startswith(label)
    assert shown(given) in message
    assert ACCEPTED.search(message)
    assert message in reply["announce"]
    assert reply["errors"][0]["part"] in given
    assert reply["ok"] or reply["waiting"]


@pytest.mark.parametrize("given", ["", " ", "\u00a0", "\t\n"])
def test_an_empty_current_is_called_empty(given: str):
    (fault,) = refused(i2=given)["errors"]
    assert "i2" == fault["field"]
    assert fault["message"].startswith("L2 is empty. Enter a current in amperes: ")


@pytest.mark.parametrize("field", ["a1", "a2", "a3"])
@pytest.mark.parametrize("given", [
    "text", "181", "-180.1", "1e9", "inf", "nan", "1.2 lag", "-0.5 lag", "0.85 pf", "30 V", "1.2.3", "lag", "lead lag",
    "0.8 lag extra", "30 rad", "٣٠ rad", "⚡ lag", "9" * 50, "° lag",
])  # fmt: skip
def test_a_lag_that_cannot_be_used_is_named_with_what_was_given_and_what_would_do(field: str, given: str):
    reply = refused(**{field: given})
    assert [field] == [fault["field"] for fault in reply["errors"]]
    message = reply["errors"][0]["message"]
    assert message.startswith(f"“Lag of L{field[1]}”")
    assert shown(given) in message
    assert ACCEPTED.search(message)


@pytest.mark.parametrize(("given", "degrees"), [
    ("", 0.0), ("30", 30.0), ("-30", -30.0), ("−31,8", -31.8), ("30°", 30.0), ("30 ° lag", 30.0),
    ("30 deg lead", -30.0),
    ("0.5 lag", 60.0), ("0.5 lagging", 60.0), ("0,5 lead", -60.0), ("1 lag", 0.0), ("0 lead", -90.0),
    ("0.5 pf lag", 60.0), ("0.5 ind", 60.0), ("0.5 cap", -60.0),
    ("180", 180.0), ("-180", -180.0), ("0.8 LAG", 36.8698976458),
])  # fmt: skip
def test_a_lag_is_read_as_degrees_or_as_a_power_factor_with_its_side(given: str, degrees: float):
    """Only L1 carries current, so the neutral lags V1 by just that angle."""
    reply, _ = ask({"i1": "10", "i2": "0", "i3": "0", "a1": given})
    assert reply["ok"], reply
    html = reply["regions"]["results"]
    angle = float(re.search(r'name="neutral-angle" data-value="([^"]*)"', html)[1])
    assert 0 == pytest.approx((angle + degrees + 180) % 360 - 180, abs=1e-9)


@pytest.mark.parametrize("given", ["0", "-2", "text", "1.2.3", "inf", "1e-12", "1e12", "2 V", "nan", "⚡"])
def test_a_scale_that_cannot_be_used_is_named(given: str):
    (fault,) = refused(scale=given)["errors"]
    assert "scale" == fault["field"]
    assert shown(given) in fault["message"]
    assert "such as 2" in fault["message"]


@pytest.mark.parametrize("typed", ["1 cm = 2.5 A", "1cm=2,5", "2.5 A/cm", "2.5A per cm", "2500 mA / cm"])
def test_a_scale_may_be_written_as_the_sheets_write_it(typed: str):
    as_typed, plain = (ask({**PLAIN, "scale": scale})[0] for scale in (typed, "2.5"))
    assert as_typed["ok"] and not as_typed["errors"]
    assert plain["regions"]["sheet"] == as_typed["regions"]["sheet"]


@pytest.mark.parametrize("typed", ["2 cm = 5 A", "1 cm =", "/cm", "1 mm = 1 A", "2 A/mm", "2 V/cm"])
def test_a_scale_by_anything_else_than_one_centimetre_is_refused(typed: str):
    assert ["scale"] == [fault["field"] for fault in ask({**PLAIN, "scale": typed})[0]["errors"]]


@pytest.mark.parametrize("paper", ["A5", "A4", "letter"])
@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_a_scale_that_does_not_fit_says_by_how_much_and_what_would(paper: str, method: str):
    """And what it says fits does fit: on this paper at that scale, and on that paper at the scale asked for."""
    reply = passed(scale="0.5", paper=paper, method=method)
    (fault,) = reply["errors"]
    message = fault["message"]
    assert f"does not fit on {paper[0].upper()}{paper[1:]}" in message
    over = [float(number) for number in re.findall(r"(\d+)\u00a0mm too", message)]
    assert over
    assert min(over) > 0
    fitting = re.search(r"It is drawn at 1 cm = ([\d.]+)\u00a0A\.", message)[1]
    svg = re.compile(r"<svg.*</svg>", re.DOTALL)
    there = ask({**PLAIN, "paper": paper, "method": method, "scale": fitting})[0]
    assert [] == there["errors"]
    assert svg.search(there["regions"]["sheet"])[0] == svg.search(reply["regions"]["sheet"])[0]
    assert [] == [offer for offer in fault["offers"]
                  if ask({**PLAIN, "paper": paper, "method": method, "scale": "0.5", **offer["set"]})[0]["errors"]]


def test_every_choice_refuses_what_is_not_on_offer_and_names_what_is():
    for field in FIELDS:
        if field.kind != "choice":
            continue
        for given in ("nonsense", "__proto__", "A0", "<i>", "⚡"):
            (fault,) = refused(**{field.name: given})["errors"]
            assert field.name == fault["field"]
            assert given in fault["message"]
            offered = [choice.value for choice in field.options if choice.value]
            assert [] == [value for value in offered if value not in fault["message"]]


def test_currents_a_trillion_apart_are_refused_and_a_thousand_apart_are_drawn():
    """1e9 A is too large by itself; 50 kA beside 1 mA are both in range and too far apart for one sheet."""
    large = refused(i1="1e9", i2="1 mA", i3="1 mA")["errors"]
    assert "i1" in [fault["field"] for fault in large]
    (fault,) = refused(i1="50 kA", i2="50 kA", i3="1 mA")["errors"]
    assert "i3" == fault["field"]
    assert "1 mA" in fault["message"]
    assert "one millionth" in fault["message"]
    assert ask({"i1": "30 A", "i2": "30 mA", "i3": "20 A"})[0]["ok"]


def test_all_lines_at_zero_are_refused_and_each_is_marked():
    reply = refused(i1="0", i2="0,0", i3="-0")
    assert ["i1", "i2", "i3"] == [fault["field"] for fault in reply["errors"]]
    assert all("nothing to draw" in fault["message"] for fault in reply["errors"])


def test_every_fault_is_found_at_once():
    reply = refused(i1="x", i2="-1", a3="200", scale="0", paper="A9", place="☃")
    assert {"i1", "i2", "a3", "scale", "paper"} == {fault["field"] for fault in reply["errors"]}
    assert "marked fields" in reply["waiting"]


@pytest.mark.parametrize("given", [
    "Theatre 🎭", "مسرح القرية", "תיאטרון", "舞台", "a\u0000b", "\u202eabc", "x" * 61, "W" * 60, "☃", "line\u0007bell",
])  # fmt: skip
def test_a_place_that_cannot_be_lettered_is_refused_with_what_is_accepted(given: str):
    (fault,) = passed(place=given)["errors"]
    assert "place" == fault["field"]
    assert fault["message"].startswith("Place ")
    assert re.search("Use |Write less", fault["message"])


@pytest.mark.parametrize("given", ["", "Höhenweg 3", "<script>alert(1)</script>", "A & B \"x\" 'y'", "Łódź Ω µ √"])
def test_a_place_in_latin_script_is_printed_and_never_becomes_markup(given: str):
    reply, _ = ask({**PLAIN, "place": given})
    assert reply["ok"], reply
    for html in reply["regions"].values():
        assert "<script" not in html.lower()
    escaped = given.replace("&", "&amp;").replace("<", "&lt;")
    assert escaped.split(" ")[0].replace(">", "&gt;") in reply["regions"]["sheet"].replace("&quot;", '"')


HOSTILE = [
    "", "#", "###", "&&&&", "====", "i1", "i1=", "=5", "i1=5&i1=6", "__proto__=1", "constructor=1&toString=2",
    "i1=%", "i1=%4", "i1=%zz", "i1=%ff%fe", "i1=%00", "i1=%F0%9F%98%80", "i1=<img src=x onerror=alert(1)>",
    "<script>=<script>", "i1=%3Cscript%3E", "place=%3C%2Fsvg%3E%3Cscript%3E", "i1=5#i2=6", "javascript:alert(1)",
    "v=2&i1=5", "v=%3Cb%3E", "v=" + "9" * 500, "a1=0.85+lag", "i1=١٢", "i1=%E2%80%AE5", "\ud800", "i1=\udfff",
    "i1=" + "5" * 5000, "&".join(f"k{number}=1" for number in range(3000)), "%" * 5000, "x" * 100_000,
]  # fmt: skip


@pytest.mark.parametrize("fragment", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_link_opens_as_a_whole_form_of_known_keys(fragment: str):
    """Unknown keys are told, values are cut and cleaned, and the form that comes back can be asked for an answer.

    What is private is not in it: no link says anything of that.
    """
    reply = json.loads(api.handle(json.dumps({"do": "open", "page": "neutral-current", "fragment": fragment}))[0])
    assert reply["ok"]
    assert [field.name for field in FIELDS if not field.private] == list(reply["form"])
    assert all(isinstance(value, str) and len(value) <= links.LONGEST_VALUE for value in reply["form"].values())
    assert all(value.isprintable() for value in reply["form"].values())
    known = {field.name for field in FIELDS} | {"v"} | set(links.RESERVED)
    pairs = [pair.partition("=") for pair in fragment[:4000].lstrip("#").split("&")]
    strange = [pair for pair in pairs if any(pair) and not (pair[1] and links.decode(pair[0]) in known)]
    assert bool(strange) == any("left out" in notice for notice in reply["notices"])
    assert (len(fragment) > 4000) == any("too long" in notice for notice in reply["notices"])
    answered, _ = ask(reply["form"])
    assert answered["ok"] or answered["errors"]


def test_a_link_of_another_version_opens_with_a_notice():
    opened = json.loads(api.handle(json.dumps({"do": "open", "page": "neutral-current", "fragment": "v=7&i1=5"}))[0])
    assert "5" == opened["form"]["i1"]
    assert "another version" in " ".join(opened["notices"])


def test_every_problem_survives_its_own_link():
    """The fragment of an answer, opened again, gives the same form and the same answer: 100 problems."""
    for number in range(100):
        given = form(number)
        first, _ = ask(given)
        request = {"do": "open", "page": "neutral-current", "fragment": first["fragment"]}
        opened = json.loads(api.handle(json.dumps(request))[0])
        assert [] == opened["notices"]
        again, _ = ask(opened["form"])
        assert first == again


def test_a_shared_link_gives_its_own_sheet_again():
    """Every choice is resolved in it: scale, order and way round stand there; the sheet is the same to the byte."""
    for number in range(60):
        shared = json.loads(api.handle(json.dumps({
            "do": "share", "page": "neutral-current", "form": form(number), "base": "https://folio.example/n/#old",
        }))[0])  # fmt: skip
        base, _, fragment = shared["link"].partition("#")
        assert "https://folio.example/n/" == base
        assert fragment.startswith("v=3&")
        opened = json.loads(api.handle(json.dumps(
            {"do": "open", "page": "neutral-current", "fragment": fragment}))[0])  # fmt: skip
        assert {"scale", "order", "orientation"} <= {pair.partition("=")[0] for pair in fragment.split("&")}
        there, back = (ask(one, parts=["sheet"])[0] for one in (form(number), opened["form"]))
        svg = re.compile(r"<svg.*</svg>", re.DOTALL)
        assert svg.search(there["regions"]["sheet"])[0] == svg.search(back["regions"]["sheet"])[0]


NO_REQUESTS = [
    "", "null", "[]", "1", '"text"', "{", "{}", '{"do":"answer"}', '{"do":"answer","page":"neutral-current"}',
    '{"do":"answer","page":"neutral-current","form":[]}', '{"do":"answer","page":"neutral-current","form":null}',
    '{"do":"answer","page":"neutral-current","form":"i1=5"}', '{"do":"answer","page":"nowhere","form":{}}',
    '{"do":"answer","page":["neutral-current"],"form":{}}', '{"do":{},"page":"neutral-current","form":{}}',
    '{"do":"__class__","page":"neutral-current","form":{}}', "[" * 100_000, '{"a":' * 50_000, "\ud800", "NaN",
    '{"do":"pdf","page":"neutral-current"}', '{"do":"share","page":"neutral-current"}', "x" * 300_000,
]  # fmt: skip


@pytest.mark.parametrize("text", NO_REQUESTS, ids=range(len(NO_REQUESTS)))
def test_what_is_no_request_is_refused_in_words(text: str):
    reply, data = api.handle(text)
    answer = json.loads(reply)
    assert (False, [], None) == (answer["ok"], answer["errors"], data)
    assert answer["announce"].endswith(".")


def test_ten_megabytes_are_refused_at_once():
    text = json.dumps({"do": "answer", "page": "neutral-current", "form": {"place": "x" * 10_000_000}})
    assert "The request is too long." == json.loads(api.handle(text)[0])["announce"]


@pytest.mark.parametrize("value", [5, 1.5, True, None, [], {}, ["5"]])
def test_a_value_that_is_no_text_reads_as_not_given(value: object):
    """The field's default stands in its place; the others are kept."""
    reply, _ = ask({"i1": value, "i2": "0", "i3": "0"})  # type: ignore[dict-item]
    assert reply["ok"]
    assert 'name="neutral-current" data-value="18.4"' in reply["regions"]["answer"]


@pytest.mark.parametrize("parts", [None, "answer", 5, [], ["nothing"], [None, {}, "answer"], ["workings", "workings"]])
def test_parts_that_no_page_has_are_left_out(parts: object):
    request = {"do": "answer", "page": "neutral-current", "form": PLAIN, "parts": parts}
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert reply["ok"]
    assert set(reply["regions"]) <= {"answer", "notes", "results", "figures", "sheet", "kinds", "view", "workings"}


PIECES = ("18.4", "-", "−", ".", ",", "e5", "e-400", "A", "mA", "kV", " ", "\u00a0", "lag", "0.85 lead", "°", "inf",
          "nan", "A4", "up", "12", "<b>", "&amp;", "\"'", "{x}", "**", "⚡", "ב", "\u202e", "\ud800", "\x00", "9" * 60,
          "__proto__", "0", "1e5", "100000", "0.000001", "180", "-180", "µA", "٣", "½")  # fmt: skip


def fuzzed(rng: SeededChoices, number: int) -> dict[str, str]:
    """A seeded form with one or two of its values, or of unknown keys, replaced by rubbish."""
    given = form(number)
    for _ in range(1 + rng.below(2)):
        name = rng.one_of([*given, "measured", "scale", "place", "__class__", "☃"])
        given[name] = "".join(rng.one_of(PIECES) for _ in range(1 + rng.below(2)))
    return given


def test_two_thousand_fuzzed_forms_are_answered_or_refused_by_field():
    """Never raises; an answer has finite figures, a refusal names known fields with a sentence each."""
    rng, answered = SeededChoices(301), 0
    names = {field.name for field in FIELDS}
    for number in range(2000):
        given = fuzzed(rng, number)
        request = {"do": "answer", "page": "neutral-current", "form": given, "parts": ["answer", "sheet"]}
        text, _ = api.handle(json.dumps(request))
        reply = json.loads(text)
        answered += reply["ok"]
        if reply["ok"]:
            values = re.findall(r'data-value="([^"]*)"', "".join(reply["regions"].values()))
            assert all(math.isfinite(float(value)) for value in values if value), given
        else:
            assert reply["errors"], given
            assert {fault["field"] for fault in reply["errors"]} <= names
            assert all(fault["message"].endswith(".") for fault in reply["errors"]), given
    assert 100 < answered < 1900
