"""Sine, cosine and angle in degrees, against the platform's library and against 50-digit arithmetic of our own."""

import math
from collections.abc import Iterator
from decimal import Decimal, localcontext
from functools import lru_cache

import pytest
from host.seeded import SeededChoices

from pycore import trig

PLACES = 50
SMALL = Decimal(10) ** -(PLACES + 4)


@pytest.fixture(autouse=True)
def many_digits() -> Iterator[None]:
    """Decimal arithmetic of 60 digits for each test."""
    with localcontext() as context:
        context.prec = PLACES + 10
        yield


def inverse_arctangent(n: int) -> Decimal:
    """The angle in radians whose tangent is 1/n, by its power series."""
    power, total, k = Decimal(1) / n, Decimal(0), 0
    while abs(power) > SMALL:
        total += power / (2 * k + 1)
        power, k = -power / (n * n), k + 1
    return total


@lru_cache(maxsize=1)
def pi() -> Decimal:
    """Pi by Machin's formula, 16 arctan(1/5) - 4 arctan(1/239)."""
    return 16 * inverse_arctangent(5) - 4 * inverse_arctangent(239)


def exact_sine(degrees: Decimal) -> Decimal:
    """Sine by its power series, of an angle in degrees taken as it stands."""
    x = degrees % 360 * pi() / 180
    term, total, k = x, Decimal(0), 1
    while abs(term) > SMALL:
        total += term
        term, k = -term * x * x / ((k + 1) * (k + 2)), k + 2
    return total


def angles(count: int, widest: int = 400) -> list[float]:
    """Angles of both signs with many digits, and some so near to right angles that sines nearly vanish."""
    rng = SeededChoices(5)
    spread = [(rng.below(2 * widest * 10**9) - widest * 10**9) / 1e9 for _ in range(count)]
    near = [90.0 * rng.below(5) + (rng.below(2000) - 1000) / 1e12 for _ in range(count // 4)]
    return spread + near


def test_pi_of_the_check_is_the_published_number():
    """First 50 decimals, as published everywhere (OEIS A000796)."""
    assert str(pi()).startswith("3.14159265358979323846264338327950288419716939937510")


def test_sine_and_cosine_are_within_a_unit_and_a_half_of_the_last_place():
    """Against 50-digit arithmetic, also where sine or cosine nearly vanishes."""
    worst = 0.0
    for degrees in angles(400):
        for found, exact in (
            (trig.sine(degrees), exact_sine(Decimal(degrees))),
            (trig.cosine(degrees), exact_sine(90 - Decimal(degrees))),
        ):
            worst = max(worst, float(abs(Decimal(found) - exact)) / math.ulp(float(exact)))
    assert 0.5 < worst < 1.5


def test_sine_and_cosine_agree_with_the_platforms_library():
    """Within 2e-15 up to two turns: the library works in radians and loses that much in the turning."""
    for degrees in angles(5000, 720):
        x = math.radians(degrees)
        assert trig.sine(degrees) == pytest.approx(math.sin(x), abs=2e-15)
        assert trig.cosine(degrees) == pytest.approx(math.cos(x), abs=2e-15)


ROOT = math.sqrt(3) / 2
CIRCLE = {
    0: (1, 0), 30: (ROOT, 0.5), 60: (0.5, ROOT), 90: (0, 1), 120: (-0.5, ROOT), 150: (-ROOT, 0.5), 180: (-1, 0),
    210: (-ROOT, -0.5), 240: (-0.5, -ROOT), 270: (0, -1), 300: (0.5, -ROOT), 330: (ROOT, -0.5),
}  # fmt: skip


@pytest.mark.parametrize("turns", [-1080, -360, 0, 360, 3600])
@pytest.mark.parametrize(("degrees", "point"), CIRCLE.items())
def test_multiples_of_thirty_degrees_are_exact(degrees: int, point: tuple[float, float], turns: int):
    assert point == (trig.cosine(degrees + turns), trig.sine(degrees + turns))


def test_sine_is_odd_cosine_even_and_both_are_shifted_copies():
    """To the bit: a mirrored picture must have mirrored numbers."""
    for degrees in angles(2000):
        assert trig.sine(-degrees) == -trig.sine(degrees)
        assert trig.cosine(-degrees) == trig.cosine(degrees)
    for degrees in (number / 8 for number in range(-2880, 2880)):
        assert trig.sine(degrees + 90) == trig.cosine(degrees)
        assert trig.sine(degrees + 180) == -trig.sine(degrees)
        assert trig.cosine(degrees + 360) == trig.cosine(degrees)
        across, up = trig.cosine(degrees), trig.sine(degrees)
        assert 1.0 == pytest.approx(across * across + up * up, abs=3e-16)


def test_the_angle_of_a_vector_agrees_with_fifty_digit_arithmetic():
    """The angle's sine and cosine in decimals lie along the vector: the error is an angle below 6e-14 degrees."""
    rng = SeededChoices(8)
    for _ in range(400):
        x, y = ((rng.below(2 * 10**12) - 10**12) * float(f"1e-{rng.below(13)}") for _ in range(2))
        if x == 0.0 and y == 0.0:
            continue
        degrees = Decimal(trig.angle_of(x, y))
        across, along = exact_sine(degrees), exact_sine(90 - degrees)
        sine_of_error = (across * Decimal(x) - along * Decimal(y)) / Decimal(math.hypot(x, y))
        assert abs(sine_of_error) * 180 / pi() < Decimal("6e-14")
        assert along * Decimal(x) + across * Decimal(y) > 0


def test_the_angle_of_a_vector_agrees_with_the_platforms_library_all_round():
    for degrees in angles(5000, 180):
        x, y = 3.7 * math.cos(math.radians(degrees)), 3.7 * math.sin(math.radians(degrees))
        assert trig.angle_of(x, y) == pytest.approx(math.degrees(math.atan2(y, x)), abs=6e-14)


@pytest.mark.parametrize(("x", "y", "degrees"), [
    (1, 0, 0), (1, 1, 45), (0, 1, 90), (-1, 1, 135), (-1, 0, 180), (-1, -0.0, 180), (-1, -1e-300, 180), (-1, -1, -135),
    (0, -1, -90), (1, -1, -45), (1, -0.0, 0), (0, 0, 0), (-0.0, -0.0, 0), (1e-300, 1e-300, 45), (1e300, -1e300, -45),
])  # fmt: skip
def test_the_angle_on_axes_and_diagonals_is_exact_and_never_minus_180(x: float, y: float, degrees: float):
    assert degrees == trig.angle_of(x, y)


def test_angle_of_undoes_sine_and_cosine():
    for degrees in range(-179, 181):
        assert degrees == pytest.approx(trig.angle_of(trig.cosine(degrees), trig.sine(degrees)), abs=3e-14)


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_no_sine_is_made_of_what_is_no_angle(number: float):
    for function in (trig.sine, trig.cosine):
        with pytest.raises(ValueError, match=r".+"):
            function(number)


def test_minus_nothing_is_nothing_whichever_is_asked_for_first():
    """What is kept for an angle must not depend on what was asked for before."""
    for first, second in ((-0.0, 0.0), (0.0, -0.0)):
        trig.direction.cache_clear()
        assert (1.0, 1.0) == tuple(math.copysign(1.0, trig.sine(angle)) for angle in (first, second))
