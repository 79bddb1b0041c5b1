"""What the page says about an input that it cannot use: field, typed text, and what is accepted."""

import re

GIVEN_LIMIT = 24
_DECIMAL_POINT = re.compile(r"(“[^”]*”)|(?<=\d)\.(?=\d)")


def with_mark(sentence: str, mark: str) -> str:
    """A sentence with the decimal mark that is in use; what was typed, in quotation marks, stays as it was typed."""
    return sentence if mark == "." else _DECIMAL_POINT.sub(lambda found: found[1] or mark, sentence)


_OTHER_UNITS = {
    "A": "amperes", "kA": "kiloamperes", "mA": "milliamperes", "V": "volts",
    "kV": "kilovolts", "mV": "millivolts", "W": "watts", "kW": "kilowatts",
    "Ω": "ohms", "ohm": "ohms", "Hz": "hertz", "VA": "volt-amperes", "mm": "millimetres",
    "cm": "centimetres", "%": "per cent", "°": "degrees", "m": (
        "only a prefix, with no unit"
    ), "k": "only a prefix, with no unit",
}  # fmt: skip


def too_much_text(most: int, remedy: str) -> str:
    """A pasted text beyond what is read at once; ``remedy`` says what to do with the rest."""
    digits = str(most)
    groups = [digits[max(0, end - 3) : end] for end in range(len(digits), 0, -3)]
    number = "\u00a0".join(reversed(groups))
    return f"This text has more than {number} characters. That is the most that is read at once. {remedy}"


def quoted(typed: str) -> str:
    """The typed text in quotation marks, shortened if it is long."""
    start = typed if len(typed) <= GIVEN_LIMIT else typed[:GIVEN_LIMIT] + "…"
    return f"“{start}”"


def unreadable(label: str, typed: str, reason: str, fragment: str, accepted: str) -> str:
    """A text that is not a quantity; ``accepted`` says what to write."""
    if reason == "empty":
        return f"{label} is empty. {accepted}"
    if reason == "long":
        return f"{label} is too long to be a number: {quoted(typed)}. {accepted}"
    if reason == "separators":
        return f"{label} has more than one decimal mark: {quoted(typed)}. {accepted}"
    if reason == "space":
        return f"{label} has a space inside the number: {quoted(typed)}. {accepted}"
    if reason == "infinite":
        return f"{label} is not a finite number: {quoted(typed)}. {accepted}"
    if reason == "unit":
        named = _OTHER_UNITS.get(fragment)
        fault = f"is in {named}" if named else f"has a unit that this field does not know, {quoted(fragment)}"
        return f"{label} {fault}: {quoted(typed)}. {accepted}"
    return f"{label} is not a number: {quoted(typed)}. {accepted}"


def accepted_current(example: str) -> str:
    """What a current may look like."""
    return f"Enter a current in amperes: {example}, or {example} A, or 850 mA."


def negative(label: str, typed: str) -> str:
    """A negative size."""
    return (
        f"{label} is negative: {quoted(typed)}. The size of a current is 0 or more. Enter it without the minus."
    )


def too_large(label: str, typed: str, limit: str) -> str:
    """A size above the limit of a teaching sheet."""
    return f"{label} is too large: {quoted(typed)}. Use 0 to {limit}."


def too_small(label: str, typed: str, limit: str) -> str:
    """A positive size that no sheet could show."""
    return f"{label} is too small to show: {quoted(typed)}. Use 0, or at least {limit}."


MILLIONTH = "one millionth"


def apart(label: str, typed: str, ratio: str) -> str:
    """Two sizes too different for one sheet."""
    return (
        f"{label} is too small compared with the largest line: {quoted(typed)}. On one sheet, a line must be 0 or at "
        f"least {ratio} of the largest."
    )


def all_zero(label: str, typed: str) -> str:
    """No line carries current."""
    return (
        f"All line currents are 0 ({label}: {quoted(typed)}), so there is nothing to draw. At least one must be more "
        "than 0 A."
    )


def bad_angle(label: str, typed: str) -> str:
    """A lag that is neither degrees nor a power factor."""
    return (
        f"“{label}” cannot be read: {quoted(typed)}. Write degrees of lag, −180 to 180 (minus for lead), or a power "
        "factor with lag or lead, such as 0.85 lag or 0.9 lead."
    )


def factor_or_degrees(label: str, typed: str) -> str:
    """A number up to 1 without a unit, which is taken as degrees but may be meant as a power factor."""
    return f"“{label}”: is {typed} a power factor, or {typed}°? Until you choose, {typed}° is used."


def angle_range(label: str, typed: str) -> str:
    """Degrees out of range."""
    return f"“{label}” is out of range: {quoted(typed)}. Use −180° to 180°, minus for lead."


def factor_range(label: str, typed: str) -> str:
    """A power factor above 1 or below 0."""
    return f"“{label}” is not a power factor: {quoted(typed)}. Use 0 to 1 with lag or lead."


def factor_side(label: str, typed: str) -> str:
    """A power factor without lag or lead."""
    return f"“{label}” needs lag or lead: {quoted(typed)}. Write, for example, 0.85 lag."


def bad_choice(label: str, typed: str, accepted: str) -> str:
    """An unknown option."""
    return f"{label}: {quoted(typed)} is not one of the options. Choose from: {accepted}."


def bad_scale(label: str, typed: str, unit: str = "A") -> str:
    """A scale that is not a positive number."""
    units = UNIT_WORDS.get(unit, unit)
    return (
        f"{label} cannot be used: {quoted(typed)}. Write how many {units} one centimetre represents, such as 2, or "
        "leave it empty for the best fit."
    )


UNIT_WORDS = {
    "A": "amperes", "V": "volts", "Ω": "ohms", "W": "watts", "VA": "volt-amperes", "var": "vars", "Hz": "hertz",
    "H": "henries", "F": "farads", "S": "siemens", "%": "per cent", "°": "degrees",
}  # fmt: skip


def accepted_amount(example: str, unit: str) -> str:
    """What a quantity of a unit may look like."""
    units = UNIT_WORDS.get(unit, unit)
    return f"Enter {units}: {example}, or {example} {unit}." if unit else f"Enter a number such as {example}."


def out_of_range(label: str, typed: str, least: str, most: str, *, zero: bool) -> str:
    """A quantity outside the limits of a teaching sheet."""
    nothing = "0, or " if zero else ""
    return f"{label} is out of range: {quoted(typed)}. Use {nothing}{least} to {most}."


def bad_phasor(label: str, typed: str, unit: str) -> str:
    """A text that is not a phasor in either form."""
    return (
        f"{label} is not a phasor: {quoted(typed)}. Write size and angle, such as 20 at 60, or real and imaginary "
        f"part, such as 10 + j17.3. Units: {UNIT_WORDS.get(unit, unit)} and degrees."
    )


def bad_number(label: str, typed: str, least: str, most: str) -> str:
    """A number out of bounds, or no number."""
    return f"{label} cannot be used: {quoted(typed)}. Enter a number from {least} to {most}."


def too_long_text(label: str, limit: int) -> str:
    """A text too long for its place on the sheet."""
    return f"{label} is too long for the sheet. Use at most {limit} characters."


def no_such_letters(label: str, letters: str) -> str:
    """Characters that the sheet's lettering lacks."""
    return (
        f"{label} has characters that the sheet cannot print: {quoted(letters)}. Use Latin letters (with or without "
        "accents), Greek letters, digits and common marks."
    )


def too_wide_text(label: str) -> str:
    """A text that is too wide to print although its length is allowed."""
    return f"{label} is too wide for one line of the title block. Write less."


ACCEPTED_READINGS = (
    "Put spaces or semicolons between repeated readings, in amperes: 10.2 10.4 10.3. A comma is a decimal mark."
)
ACCEPTED_DRAWN = "Write amperes, such as 10.4 A, or a length on the sheet, such as 52 mm or 5.2 cm."
LIMIT_BEYOND = "A meter whose error can be half of the reading is not useful here."


def too_many(label: str, count: int, most: int) -> str:
    """Too many repeated readings."""
    return f"{label} has {count} readings. Enter at most {most}."


def far_apart(label: str, typed: str) -> str:
    """Readings that cannot be of the same current."""
    return (
        f"{label} has readings that differ too much to be the same current: {quoted(typed)}. No reading may be twice "
        "another. Check the decimal marks. Example: 10.2 10.4 10.3."
    )


def bad_drawn_length(label: str, typed: str) -> str:
    """A length that no sheet can have."""
    return f"{label} cannot be used: {quoted(typed)}. Enter a length from 0 mm to 2000 mm."
