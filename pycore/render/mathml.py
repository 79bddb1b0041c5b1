"""Formulas as MathML.

Browsers do not break a formula over lines, and a phone is 320 px wide. So a row is set as several inline ``<math>``
pieces, split before its equals signs and, where it is long, before its plus and minus signs: there the text may break.
A root that is longer than a phone is written with brackets, so that it can break too. A piece that is still too long
(a fraction) scrolls in its own box.
"""

from collections.abc import Iterable, Iterator

from pycore.render.elements import Markup, h, join
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square
from pycore.words.phrase import Symbol

OPERATORS = frozenset("+−-×·÷/=≈≠<>≤≥±,;→√()")
SIGNS = frozenset("+−-±")
RELATIONS = frozenset("=≈≠<>≤≥→")
APPLY = "\u2061"
LONG = 27
"""The number of characters in one piece that fit a phone of 320 px without scrolling."""
SHORT = 14
"""A piece of no more characters is never broken."""


def _text(text: str) -> Markup:
    bare = text.strip()
    if bare in OPERATORS:
        return h("mo", None, bare)
    if bare.replace(".", "").replace(",", "").isdigit():
        return h("mn", None, bare)
    if len(bare) == 1 and bare.isalpha():
        return h("mi", None, bare)
    return h("mtext", None, text)


def _symbol(symbol: Symbol) -> Markup:
    letter = h("mi", None, symbol.letter)
    if not symbol.index:
        return letter
    index = h("mn", None, symbol.index) if symbol.index.isdigit() else h("mtext", None, symbol.index)
    return h("msub", None, letter, index)


def _number(number: Number) -> Markup:
    figure = number.text
    sign = None
    if figure[:1] in ("−", "-"):
        sign, figure = h("mo", {"form": "prefix"}, "−"), figure[1:]
    unit = h("mtext", None, number.unit if number.unit == "°" else "\u00a0" + number.unit) if number.unit else None
    if sign is None and unit is None:
        return h("mn", None, figure)
    return h("mrow", None, sign, h("mn", None, figure), unit)


def _needs_fence(base: Formula) -> bool:
    return isinstance(base, FormulaRow | Fraction) or (isinstance(base, Number) and bool(base.unit))


def _fenced(inside: Formula, bars: bool = False) -> Markup:
    left, right = ("|", "|") if bars else ("(", ")")
    return h("mrow", None, h("mo", {"form": "prefix"}, left), _node(inside), h("mo", {"form": "postfix"}, right))


def _node(formula: Formula) -> Markup:
    match formula:
        case str():
            return _text(formula)
        case Symbol():
            return _symbol(formula)
        case Number():
            return _number(formula)
        case Fraction(above, below):
            return h("mfrac", None, h("mrow", None, _node(above)), h("mrow", None, _node(below)))
        case Root(inside):
            return h("msqrt", None, _node(inside))
        case Square(base):
            return h("msup", None, _fenced(base) if _needs_fence(base) else _node(base), h("mn", None, 2))
        case Function(name, of):
            return h("mrow", None, h("mi", {"class": "name"}, name), h("mo", None, APPLY), _node(of))
        case Bracketed(inside, bars):
            return _fenced(inside, bars)
        case FormulaRow(parts):
            return h("mrow", None, [_node(node) for node in parts])


def _total(parts: tuple[Formula, ...]) -> int:
    count = 0
    for node in parts:
        count += length(node)
    return count


def length(formula: Formula) -> int:
    """Return about how many characters wide a formula is."""
    match formula:
        case str():
            return len(formula.strip()) + (2 if formula.strip() in OPERATORS else 0)
        case Symbol():
            return 1 + len(formula.index)
        case Number():
            return len(formula.text) + (len(formula.unit) + 1 if formula.unit else 0)
        case Fraction(above, below):
            return max(length(above), length(below))
        case Root(inside) | Bracketed(inside):
            return 2 + length(inside)
        case Square(base):
            return 1 + length(base) + (2 if _needs_fence(base) else 0)
        case Function(name, of):
            return len(name) + 1 + length(of)
        case FormulaRow(parts):
            return _total(parts)


def _opened(parts: Iterable[Formula]) -> Iterator[Formula]:
    """Yield the parts of a row, with what is too long for one line taken apart: rows, long roots and brackets."""
    for node in parts:
        match node:
            case FormulaRow(inner):
                yield from _opened(inner)
            case Root(inside) if length(node) > LONG:
                yield from ("√", "(", *_opened((inside,)), ")")
            case Bracketed(inside, bars=False) if length(node) > LONG:
                yield from ("(", *_opened((inside,)), ")")
            case _:
                yield node


def _split(parts: Iterable[Formula], before: frozenset[str]) -> list[list[Formula]]:
    """Return parts in rows that begin with one of these signs; a sign that follows another begins none."""
    rows: list[list[Formula]] = [[]]
    for node in parts:
        last = rows[-1][-1:]
        follows = any(isinstance(one, str) and one.strip() in OPERATORS and one.strip() != ")" for one in last)
        if isinstance(node, str) and node.strip() in before and rows[-1] and not follows:
            rows.append([])
        rows[-1].append(node)
    return rows


def pieces(formula: Formula) -> tuple[Formula, ...]:
    """Return the formula split where the line may break: before relation signs, and in long pieces before + and −."""
    parts = formula.parts if isinstance(formula, FormulaRow) else (formula,)
    found: list[Formula] = []
    for row in _split(parts, RELATIONS):
        whole = row[0] if len(row) == 1 else FormulaRow(tuple(row))
        if length(whole) <= SHORT:
            found.append(whole)
            continue
        found += [piece[0] if len(piece) == 1 else FormulaRow(tuple(piece)) for piece in _split(_opened(row), SIGNS)]
    return tuple(found)


def is_long(formula: Formula) -> bool:
    """Return whether one unbroken piece may be wider than a phone."""
    return any(length(piece) > LONG for piece in pieces(formula))


def formula_html(formula: Formula) -> Markup:
    """Return one line of calculation: inline pieces, set as a block by the style sheet."""
    inline = [h("math", {"display": "inline"}, _node(piece)) for piece in pieces(formula)]
    spaced = [join(" " if index else "", piece) for index, piece in enumerate(inline)]
    return h("p", {"class": "formula"}, spaced)
