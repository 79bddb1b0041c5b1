"""Quantities as people type them, and numbers as everything writes them."""

import itertools
import math

import pytest
from host.seeded import SeededChoices

from pycore import quantity
from pycore.quantity import QuantityError
from pycore.words import inputs

SPACES = (" ", "\u00a0", "\u2009", "\u202f", "\t")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("18.4", 18.4), ("18,4", 18.4), ("+18.4", 18.4), ("-18.4", -18.4), ("−18,4", -18.4),
        ("0", 0.0), ("007", 7.0), ("5.", 5.0), ("5,", 5.0), (".5", 0.5), (",5", 0.5), ("-.5", -0.5),
        ("1 000", 1000.0), ("12 345.5", 12345.5), ("1 234 567,25", 1234567.25), ("123 456", 123456.0),
        ("1e3", 1000.0), ("1E3", 1000.0), ("1.5e-3", 0.0015), ("1,5e−3", 0.0015), ("2e+2", 200.0), ("5e0", 5.0),
        ("12.5A", 12.5), ("12.5 A", 12.5), ("12,5 A", 12.5), ("850 mA", 0.85), ("850mA", 0.85), ("0.85kA", 850.0),
        ("3 µA", 3e-6), ("3 μA", 3e-6), ("3 uA", 3e-6), ("2 MA", 2e6), ("1 GA", 1e9), ("1e3 mA", 1.0),
        ("1 amp", 1.0), ("2 amps", 2.0), ("1 ampere", 1.0), ("2 amperes", 2.0), ("3 kamps", 3000.0),
        ("  7  ", 7.0),
    ],
)  # fmt: skip
def test_each_form_of_the_grammar_is_read_as_meant(text: str, value: float):
    """The very double that the written number names, not one beside it."""
    assert value == quantity.read(text, "A")


@pytest.mark.parametrize("space", SPACES)
def test_every_space_people_type_groups_digits_and_parts_the_unit(space: str):
    assert 1234.5 == quantity.read(f"{space}1{space}234,5{space}A{space}", "A")


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "empty"), ("   ", "empty"), ("\u00a0", "empty"),
        ("1" * 41, "long"), ("A" * 41, "long"),
        ("abc", "number"), ("A", "number"), ("-", "number"), (".", "number"), ("--5", "number"), ("+-5", "number"),
        ("e5", "number"), ("nan", "number"), ("NaN", "number"), ("½", "number"), ("A 5", "number"), ("(5)", "number"),
        ("1.2.3", "separators"), ("1,2,3", "separators"), ("1.840,5", "separators"), ("1,840.5", "separators"),
        ("1..2", "separators"),
        ("inf", "infinite"), ("-inf", "infinite"), ("Infinity", "infinite"), ("∞", "infinite"), ("−∞", "infinite"),
        ("1e999", "infinite"), ("9e308 kA", "infinite"),
        ("12 V", "unit"), ("12 kV", "unit"), ("12 m", "unit"), ("12 k", "unit"), ("12 a", "unit"), ("12 AA", "unit"),
        ("12 fA", "unit"), ("12 %", "unit"), ("12 A!", "unit"), ("1 e5", "unit"), ("12 A m", "unit"), ("1e", "unit"),
        ("0x10", "unit"), ("1_000", "unit"), ("1'000", "unit"), ("5-", "unit"), ("12 mV", "unit"),
    ],
)  # fmt: skip
def test_what_is_no_quantity_is_refused_with_its_reason(text: str, reason: str):
    with pytest.raises(QuantityError) as caught:
        quantity.read(text, "A")
    assert reason == caught.value.reason
    assert caught.value.fragment in text


@pytest.mark.parametrize("text", ["12 34", "1 2345", "1234 567", "1 234 5", "1 23", "5 5 5"])
def test_spaces_that_do_not_group_in_threes_are_not_called_decimal_marks(text: str):
    """Two numbers side by side have no decimal mark at all: that must not be the complaint."""
    with pytest.raises(QuantityError) as caught:
        quantity.read(text, "A")
    assert "space" == caught.value.reason


@pytest.mark.parametrize("text", ["9 .2", "9 ,2", "9. 2", "9 . 2 A", "9 .2 kA", "1 234 ,5 6"])
def test_a_space_beside_the_decimal_mark_is_not_a_second_mark(text: str):
    with pytest.raises(QuantityError) as caught:
        quantity.read(text, "A")
    assert "space" == caught.value.reason
    assert "has a space inside the number" in inputs.unreadable("L2", text, "space", text, "")


@pytest.mark.parametrize("text", ["9 .2.1", "9. 2 ,1", "9.2 .1"])
def test_two_decimal_marks_stay_two_whatever_spaces_there_are(text: str):
    with pytest.raises(QuantityError) as caught:
        quantity.read(text, "A")
    assert "separators" == caught.value.reason


@pytest.mark.parametrize("text", ["1e-400", "0.5e-330 A", "1e-324 mA"])
def test_a_number_too_small_to_hold_is_not_silently_zero(text: str):
    """Zero means "this line carries nothing"; a number that only rounds to it does not say so."""
    assert quantity.read(text, "A") > 0.0


def test_every_combination_of_sign_mark_exponent_prefix_and_unit_is_read():
    """600 texts built from the grammar, against Python's own reading of the same decimal number."""
    signs = {"": 1, "+": 1, "-": -1, "−": -1}
    bodies = {"18.4": "18.4", "18,4": "18.4", "1 018.4": "1018.4", "1 018,4": "1018.4", "7": "7"}
    powers = {"": 0, "e2": 2, "E-2": -2}
    tails = {"": 0, "A": 0, " A": 0, "mA": -3, " kA": 3, " µA": -6, " MA": 6, " uA": -6, " GA": 9, " amps": 0}
    count = 0
    for sign, body, power, tail in itertools.product(signs, bodies, powers, tails):
        expected = signs[sign] * float(f"{bodies[body]}e{powers[power] + tails[tail]}")
        assert expected == quantity.read(sign + body + power + tail, "A"), sign + body + power + tail
        count += 1
    assert 4 * 5 * 3 * 10 == count


@pytest.mark.parametrize(("unit", "text", "value"), [
    ("V", "230 V", 230.0), ("V", "0.4kV", 400.0), ("V", "5 volts", 5.0), ("Ω", "10 kΩ", 1e4), ("Ω", "3 ohms", 3.0),
    ("°", "30°", 30.0), ("°", "-30 deg", -30.0), ("Hz", "50 Hz", 50.0), ("H", "100 mH", 0.1), ("F", "100 µF", 1e-4),
    ("mm", "5 mm", 5.0), ("%", "40 %", 40.0),
])  # fmt: skip
def test_each_unit_is_read_by_its_own_names(unit: str, text: str, value: float):
    assert value == quantity.read(text, unit)


def test_metre_like_prefixes_are_not_stripped_from_other_units():
    """"mm" is a unit of its own here, never a thousandth of "m"; "cm" is no centi-m."""
    for text in ("5 mm", "5 cm"):
        with pytest.raises(QuantityError):
            quantity.read(text, "A")


def test_split_number_gives_the_number_and_what_follows():
    assert (0.85, "lag") == quantity.split_number("0.85 lag")
    assert (-31.8, "°") == quantity.split_number("−31,8°")
    assert (5.0, "") == quantity.split_number("5")


def test_what_is_written_is_read_back():
    """2,000 numbers over ten decades, each decimal mark: exact to the decimals written."""
    rng = SeededChoices(11)
    for _ in range(2000):
        value = (rng.below(2_000_001) - 1_000_000) * float(f"1e{rng.below(10) - 6}")
        decimals, mark = rng.below(7), rng.one_of(".,")
        written = quantity.fixed(value, decimals, mark)
        assert quantity.read(written, "A") == pytest.approx(value, abs=0.5001 * float(f"1e-{decimals}"))
        assert decimals == len(written.partition(mark)[2])
        assert value == pytest.approx(quantity.read(quantity.plain(value, mark), "A"), rel=1e-5)
        assert value == pytest.approx(float(quantity.exact(value)), rel=1e-11)


def test_an_amount_survives_writing_and_reading_in_every_prefix():
    for power, unit in ((-6, "µA"), (-4, "µA"), (-3, "mA"), (-1, "mA"), (0, "A"), (2, "A"), (3, "A"), (4, "kA")):
        largest = float(f"1.84e{power}")
        writing = quantity.writing_for([largest], "A")
        assert unit == writing.unit
        assert largest == pytest.approx(quantity.read(writing.amount(largest), "A"), rel=5e-3)
        assert 3 <= len(writing.number(largest).replace(".", "").lstrip("0"))
        assert largest == pytest.approx(quantity.read(writing.short(largest), "A"), rel=1e-5)


@pytest.mark.parametrize("value", [0.0, -0.0, -1e-9, -0.04, -0.049999, 1e-300])
def test_nothing_is_ever_written_as_minus_zero(value: float):
    assert ["0.0", "0", "0,00"] == [
        quantity.fixed(value, 1), quantity.fixed(value, 0), quantity.fixed(value / 10, 2, ",")
    ]  # fmt: skip
    assert quantity.exact(-0.0) == quantity.exact(0.0) == "0"
    assert "0" == quantity.plain(-0.0)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_no_writer_of_numbers_takes_what_is_no_number(value: float):
    for write in (quantity.exact, lambda number: quantity.fixed(number, 1)):
        with pytest.raises(ValueError, match="cannot be written"):
            write(value)


def test_numbers_for_people_have_a_true_minus_and_no_needless_zeros():
    assert "−18.40" == quantity.fixed(-18.4, 2)
    assert "−18,4" == quantity.fixed(-18.4, 1, ",")
    assert ["2", "0.5", "92.25", "1000", "0.001"] == [quantity.plain(x) for x in (2.0, 0.5, 92.25, 1000.0, 0.001)]
    assert "" == quantity.exact(None)
    assert "11.6189500386" == quantity.exact(11.618950038622250656)


def test_number_and_unit_never_part():
    assert "18.4\u00a0A" == quantity.writing_for([18.4], "A").amount(18.4)


@pytest.mark.parametrize(("value", "order"), [
    (24.6, 1), (1.0, 0), (0.0, 0), (0.05, -2), (-300.0, 2), (9.99, 0), (999.999, 2), (1e-6, -6), (100000.0, 5),
])  # fmt: skip
def test_order_of_magnitude_is_that_of_the_first_digit(value: float, order: int):
    assert order == quantity.order_of_magnitude(value)


@pytest.mark.parametrize(("values", "given", "result", "written"), [
    ((101.6, 98.3, 97.9), ["101.6", "98.3", "97.9"], 3.5171, "3.52"),
    ((24.65, 10.05, 9.0), ["24.65", "10.05", "9"], 14.8234, "14.82"),
    ((10.05, 10.0, 10.02), ["10.05", "10", "10.02"], 0.0436, "0.044"),
    ((20.0, 15.0, 10.0), ["20", "15", "10"], 8.660254, "8.66"),
])  # fmt: skip
def test_given_values_are_written_as_typed_and_results_by_one_rule(values, given, result, written):
    """A working shows the learner's own figures; a result three figures, one decimal beyond the given at most."""
    writing = quantity.writing_for(values, "A")
    assert given == [writing.as_typed(value) for value in values]
    assert written == writing.number(result)
