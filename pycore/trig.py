"""Sine, cosine and the angle of a vector, in degrees: the same bits on every machine.

The platforms' mathematics libraries differ in the last place, and a printed sheet must be
the same wherever it is made. These functions use only + - x / and square roots, which
IEEE 754 fixes exactly. Multiples of 30 degrees are exact to the last place.

Source of the kernels: the fdlibm polynomials for sine, cosine and arctangent on reduced
ranges (Sun Microsystems, 1993, freely distributable); coefficients from memory, checked
against ``math`` and against 50-digit arithmetic in tests/unit/test_trig.py.
"""

import math
from collections.abc import Iterable, Sequence
from functools import lru_cache

RADIANS_PER_DEGREE = math.pi / 180
ROOT_THREE = math.sqrt(3.0)
"""Between line and phase values; between a rectangular bound and its standard uncertainty."""
_HALF_ROOT_3 = math.sqrt(3) / 2

_SINE = (
    -1.66666666666666324348e-01,
    8.33333333332248946124e-03,
    -1.98412698298579493134e-04,
    2.75573137070700676789e-06,
    -2.50507602534068634195e-08,
    1.58969099521155010221e-10,
)
_COSINE = (
    4.16666666666666019037e-02,
    -1.38888888888741095749e-03,
    2.48015872894767294178e-05,
    -2.75573143513906633035e-07,
    2.08757232129817482790e-09,
    -1.13596475577881948265e-11,
)
_ARCTANGENT = (
    3.33333333333329318027e-01,
    -1.99999999998764832476e-01,
    1.42857142725034663711e-01,
    -1.11111104054623557880e-01,
    9.09088713343650656196e-02,
    -7.69187620504482999495e-02,
    6.66107313738753120669e-02,
    -5.83357013379057348645e-02,
    4.97687799461593236017e-02,
    -3.65315727442169155270e-02,
    1.62858201153657823623e-02,
)


def _six(coefficients: Sequence[float], x: float) -> float:
    """The polynomial of six coefficients, the constant first. Written out: a loop would take three times as long."""
    a, b, c, d, e, f = coefficients
    return a + x * (b + x * (c + x * (d + x * (e + x * f))))


def _kernel_sine(degrees: float) -> float:
    """Sine of an angle within 45 degrees of zero."""
    if degrees == 30.0 or degrees == -30.0:
        return degrees / 60.0
    x = degrees * RADIANS_PER_DEGREE
    square = x * x
    return x + x * square * _six(_SINE, square)


def _kernel_cosine(degrees: float) -> float:
    """Cosine of an angle within 45 degrees of zero."""
    if degrees == 30.0 or degrees == -30.0:
        return _HALF_ROOT_3
    x = degrees * RADIANS_PER_DEGREE
    square = x * x
    return 1.0 - (0.5 * square - square * square * _six(_COSINE, square))


def _octant(degrees: float) -> tuple[int, float]:
    """The number of right angles nearest to ``degrees`` (mod 4) and the exact rest."""
    turned = math.fmod(degrees, 360.0)
    quarters = math.floor(turned / 90.0 + 0.5)
    # Plus nothing, so that -0 is 0: the two are equal, and what is kept for one must be right for the other.
    return quarters % 4, turned - 90.0 * quarters + 0.0


@lru_cache(maxsize=4096)
def direction(degrees: float) -> tuple[float, float]:
    """Return cosine and sine of an angle in degrees; raises ValueError for NaN and infinities.

    Recent angles are cached: a drawing has many places and few directions.
    """
    quarter, rest = _octant(degrees)
    along, up = _kernel_cosine(rest), _kernel_sine(rest)
    if quarter == 0:
        return along, up
    if quarter == 1:
        return -up, along
    return (-along, -up) if quarter == 2 else (up, -along)


def directions(angles: Sequence[float]) -> tuple[list[float], list[float]]:
    """Return cosines and sines of many angles in degrees, equal to those of ``direction`` to the last bit.

    Not cached, and written out: a sample of drawings has thousands of angles that never recur.
    """
    a, b, c, d, e, f = _SINE
    p, q, r, s, t, u = _COSINE
    cosines, sines = [], []
    before = along = up = math.nan
    for degrees in angles:
        # Of drawings that differ by one slip each, most have a line as the one before has it.
        if degrees == before:
            cosines.append(along)
            sines.append(up)
            continue
        before = degrees
        turned = math.fmod(degrees, 360.0)
        quarters = math.floor(turned / 90.0 + 0.5)
        rest = turned - 90.0 * quarters + 0.0
        if rest == 30.0 or rest == -30.0:
            along, up = _HALF_ROOT_3, rest / 60.0
        else:
            x = rest * RADIANS_PER_DEGREE
            z = x * x
            along = 1.0 - (0.5 * z - z * z * (p + z * (q + z * (r + z * (s + z * (t + z * u))))))
            up = x + x * z * (a + z * (b + z * (c + z * (d + z * (e + z * f)))))
        quarter = quarters & 3
        if quarter & 1:
            along, up = -up, along
        if quarter & 2:
            along, up = -along, -up
        cosines.append(along)
        sines.append(up)
    return cosines, sines


def angles(across: Iterable[float], up: Iterable[float]) -> list[float]:
    """Return the angles in degrees of many vectors, equal to those of ``angle_of`` to the last bit; written out, as
    ``directions``."""
    a, b, c, d, e, f, g, h, i, j, k = _ARCTANGENT
    found: list[float] = []
    before_x = before_y = math.nan
    for x, y in zip(across, up, strict=True):
        if x == before_x and y == before_y:
            found.append(found[-1])
            continue
        before_x, before_y = x, y
        wide, high = math.fabs(x), math.fabs(y)
        steep = high > wide
        if not steep and wide == 0.0:
            found.append(0.0)
            continue
        ratio = wide / high if steep else high / wide
        far = ratio > 0.4375
        if far:
            ratio = (ratio - 1.0) / (ratio + 1.0)
        z = ratio * ratio
        late = f + z * (g + z * (h + z * (i + z * (j + z * k))))
        angle = (ratio - ratio * z * (a + z * (b + z * (c + z * (d + z * (e + z * late)))))) / RADIANS_PER_DEGREE
        if far:
            angle = 45.0 + angle
        if steep:
            angle = 90.0 - angle
        if x < 0.0:
            angle = 180.0 - angle
        found.append(-angle if y < 0.0 and angle != 180.0 else angle)
    return found


def sine(degrees: float) -> float:
    """Sine of an angle in degrees; raises ValueError for NaN and infinities."""
    return direction(degrees)[1]


def cosine(degrees: float) -> float:
    """Cosine of an angle in degrees; raises ValueError for NaN and infinities."""
    return direction(degrees)[0]


def _kernel_arctangent(ratio: float) -> float:
    """Arctangent in radians of a ratio up to 7/16 in size."""
    a, b, c, d, e, f, g, h, i, j, k = _ARCTANGENT
    x = ratio * ratio
    late = f + x * (g + x * (h + x * (i + x * (j + x * k))))
    return ratio - ratio * x * (a + x * (b + x * (c + x * (d + x * (e + x * late)))))


def _arctangent_to_one(ratio: float) -> float:
    """Arctangent in degrees of a ratio from 0 to 1."""
    if ratio <= 0.4375:
        return _kernel_arctangent(ratio) / RADIANS_PER_DEGREE
    # tan(a - 45) = (tan a - 1) / (tan a + 1) brings the rest within the kernel's range.
    return 45.0 + _kernel_arctangent((ratio - 1.0) / (ratio + 1.0)) / RADIANS_PER_DEGREE


@lru_cache(maxsize=1024)
def angle_of(x: float, y: float) -> float:
    """Return the angle in degrees of the vector (x, y), anticlockwise from +x, -180 < angle <= 180.

    The zero vector has angle 0 here; callers check for it first if that matters. Recent angles are cached: of an arrow
    that is drawn several parts ask.
    """
    across, up = math.fabs(x), math.fabs(y)
    if across == 0.0 and up == 0.0:
        return 0.0
    if up <= across:
        angle = _arctangent_to_one(up / across)
    else:
        angle = 90.0 - _arctangent_to_one(across / up)
    if x < 0.0:
        angle = 180.0 - angle
    return -angle if y < 0.0 and angle != 180.0 else angle
