"""A class's answers as a table of text: which column is what, and each line as an answer to be judged."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.practice import codes, tables
from pycore.practice.codes import Code, CodeError
from pycore.practice.tables import TableLine
from pycore.words import marks as words

IN_ORDER = ("code", "answer", "answer-angle", "answer-side", "answer-how")
"""What the columns are where no head line says it: from the code on; what stands before it is a name."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line: its number, its cells by what they are, and why it cannot be used ("" if it can)."""

    line: int
    cells: Mapping[str, str]
    why: str = ""


def _plain(cell: str) -> str:
    """A head without its unit, in small letters."""
    return " ".join(cell.partition("(")[0].lower().replace("_", " ").split())


def _unit_in(cell: str) -> str:
    """The unit that a head names in brackets."""
    return cell.partition("(")[2].partition(")")[0].strip()


def _role(cell: str) -> str:
    plain = _plain(cell)
    return next((role for role, names in words.ROLES.items() if plain in names), "")


def is_code(cell: str) -> bool:
    """Whether a cell is a code, sound or damaged: as many letters and figures as a code has, at least one of them a
    figure, and not a bare number."""
    signs = [sign for sign in cell if sign.isalnum()]
    shaped = len(signs) in codes.LENGTHS and all(sign.isalnum() or sign in " -–—−" for sign in cell)
    return shaped and any(sign.isdigit() for sign in signs) and not cell.replace(" ", "").isdigit()


def _reads(cell: str) -> bool:
    try:
        codes.read(cell)
    except CodeError:
        return False
    return True


def columns(lines: Sequence[TableLine]) -> tuple[list[str], dict[str, str], bool]:
    """What each column is, the unit that a head names by column, and whether the first line is a head."""
    head = lines[0].cells
    roles = [_role(cell) for cell in head]
    if "code" in roles and not any(_reads(cell) for cell in head):
        seen: list[str] = []
        for role in roles:
            seen.append(role if role not in seen else "")
        units = {role: _unit_in(cell) for role, cell in zip(seen, head, strict=True) if role and _unit_in(cell)}
        return seen, units, True
    width = max(len(line.cells) for line in lines)
    counts = [len([1 for line in lines if index < len(line.cells) and is_code(line.cells[index])])
              for index in range(width)]  # fmt: skip
    at = counts.index(max(counts)) if max(counts, default=0) else 0
    made = ["name"] * at + list(IN_ORDER)
    return (made + [""] * width)[: max(width, len(made))], {}, False


def read(text: str) -> tuple[Entry, ...]:
    """Every line of the answers. Lines that cannot be used say why."""
    lines = tables.read(text)
    if not lines:
        return ()
    roles, units, has_head = columns(lines)
    return tuple(_entry(line, roles, units) for line in lines[1 if has_head else 0 :])


def _parted(cell: str) -> tuple[str, ...]:
    """A line typed with spaces alone, such as ``334-PEK-23G 7.5 A``: the code, and what stands after it."""
    words_in = cell.split()
    for count in range(1, len(words_in)):
        if _reads(" ".join(words_in[:count])):
            return " ".join(words_in[:count]), " ".join(words_in[count:])
    return (cell,)


def _settled(cells: dict[str, str]) -> dict[str, str]:
    """Words that stand in another's column because one before them was left out: a side or a way of finding
    it where an angle belongs."""
    asked = ("answer-angle", "answer-side", "answer-how")
    for name in asked[:2]:
        told = cells.get(name, "").lower()
        for other, known in (("answer-side", words.SIDES), ("answer-how", words.HOWS)):
            if told and asked.index(other) > asked.index(name) and told in known and not cells.get(other):
                cells[other] = cells[name]
                cells[name] = ""
                break
    return cells


def _entry(line: TableLine, roles: Sequence[str], units: Mapping[str, str]) -> Entry:
    given = _parted(line.cells[0]) if len(line.cells) == 1 else line.cells
    cells = _settled({role: cell for role, cell in zip(roles, given, strict=False) if role})
    if "answer" in units and "answer-unit" not in cells:
        cells["answer-unit"] = units["answer"]
    return Entry(line.number, cells, words.OPEN_QUOTE if line.open_quote else _fault(cells))


def _fault(cells: Mapping[str, str]) -> str:
    """Why a line's cells cannot be used, apart from its code and numbers."""
    if not cells.get("code"):
        return words.NO_CODE
    if not cells.get("answer"):
        return words.no_answer(cells["code"])
    if cells.get("answer-side", "").lower() not in words.SIDES:
        return words.bad_side(cells["answer-side"])
    if cells.get("answer-how", "").lower() not in words.HOWS:
        return words.bad_how(cells["answer-how"])
    return ""


def answer_of(cells: Mapping[str, str]) -> dict[str, str]:
    """The cells as the answer checker takes them."""
    made = {name: cell for name, cell in cells.items() if name.startswith("answer")}
    made["answer-side"] = words.SIDES[cells.get("answer-side", "").lower()]
    made["answer-how"] = words.HOWS[cells.get("answer-how", "").lower()]
    made["answer-angle"] = made.get("answer-angle", "").removesuffix("°").strip()
    return made


def code_of(cells: Mapping[str, str]) -> Code:
    """The code of a line. Raises CodeError."""
    return codes.read(cells["code"])
