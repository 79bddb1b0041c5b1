"""A class's answers as a table of text: which column is what, and each line as an answer to be judged."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from pycore.practice import codes, tables
from pycore.practice.codes import Code, CodeError
from pycore.practice.tables import TableLine
from pycore.words import key as words_of_key
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


@dataclass(frozen=True, slots=True)
class _Layout:
    """What the columns of a table are, the unit that a head names by column, and whether a head says so; without a
    head, the column in which most lines have their code."""

    roles: tuple[str, ...] = ()
    units: Mapping[str, str] = field(default_factory=dict)
    has_head: bool = False
    at: int = 0

    def roles_of(self, cells: Sequence[str], names: Mapping[str, str]) -> tuple[str, ...]:
        """What the cells of one line are."""
        if self.has_head:
            return self.roles
        at = next((place for place, cell in enumerate(cells) if is_code(cell)), None)
        if at is None:
            at = next((place for place, cell in enumerate(cells) if _name(cell) in names), self.at)
        return (*["name"] * at, *IN_ORDER)


def _name(cell: str) -> str:
    """A name as it is compared."""
    return " ".join(cell.casefold().split())


def _of_the_key(plain: Sequence[str]) -> list[str]:
    """The roles of a class key's own columns: what is asked for stands behind the scale."""
    asked = [words_of_key.SCALE, words_of_key.ASKED, words_of_key.ORIGIN]
    last = max(place for place, head in enumerate(plain) if head in [_plain(one) for one in asked])
    first = _plain(words_of_key.FIRST)
    columns = []
    for place, head in enumerate(plain):
        role = _role(head)
        if place == last + 1:
            role = "answer"
        elif head == first or (place <= last and role not in ("code", "name")):
            role = ""
        columns.append(role)
    return columns


def _with_directions(plain: Sequence[str], roles: Sequence[str]) -> list[str]:
    """The roles of columns: beside a column of angles, "direction" heads the side; alone, it heads the angle."""
    beside = any(role == "answer-angle" and head != "direction" for head, role in zip(plain, roles, strict=True))
    return ["answer-side" if beside and head == "direction" and role else role
            for head, role in zip(plain, roles, strict=True)]  # fmt: skip


def _layout(lines: Sequence[TableLine], names: Mapping[str, str]) -> _Layout:
    head = lines[0].cells
    plain = [_plain(cell) for cell in head]
    is_key = _plain(words_of_key.SCALE) in plain and _plain(words_of_key.FIRST_SIZE) in plain
    roles = _with_directions(plain, _of_the_key(plain) if is_key else [_role(cell) for cell in head])
    headed = "code" in roles or (names and "name" in roles and "answer" in roles)
    if headed and not any(_reads(cell) for cell in head):
        seen: list[str] = []
        for role in roles:
            seen.append(role if role not in seen else "")
        units = {role: _unit_in(cell) for role, cell in zip(seen, head, strict=True) if role and _unit_in(cell)}
        return _Layout(tuple(seen), units, True)
    counts: dict[int, int] = {}
    for line in lines:
        for place, cell in enumerate(line.cells):
            if is_code(cell):
                counts[place] = counts.get(place, 0) + 1
    return _Layout(at=min(counts, key=lambda place: (-counts[place], place), default=0))


def read(text: str, names: Mapping[str, str] | None = None) -> tuple[Entry, ...]:
    """Every line of the answers; ``names`` are the codes of a set's learners by ``known_by``, "" for a name that two
    have. Lines that cannot be used say why."""
    known = names or {}
    lines = tables.read(text, lambda cells: any(is_code(cell) or _name(cell) in known for cell in cells))
    if not lines:
        return ()
    layout = _layout(lines, known)
    return tuple(_entry(line, layout, known) for line in lines[1 if layout.has_head else 0 :])


def known_by(learners: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Codes by name, from pairs of name and code; "" for a name that more than one learner has."""
    codes: dict[str, str] = {}
    for name, code in learners:
        if name:
            codes[_name(name)] = "" if _name(name) in codes else code
    return codes


def _parted(cell: str) -> tuple[str, ...]:
    """A line typed with spaces alone, such as ``334-PEK-23G 7.5 A``: the code, and what stands after it.

    Only as many words are tried as a code has signs: a whole page pasted into one line takes no longer."""
    words_in = cell.split(None, max(codes.LENGTHS))
    for count in range(1, len(words_in)):
        if _reads(" ".join(words_in[:count])):
            return " ".join(words_in[:count]), " ".join(" ".join(words_in[count:]).split())
    return (cell,)


def _settled(cells: dict[str, str]) -> dict[str, str]:
    """Words that stand in another's column because one before them was left out: a side or a way of finding
    it where an angle belongs."""
    asked = ("answer-angle", "answer-side", "answer-how")
    for name in asked[:2]:
        typed = cells.get(name, "").lower()
        for other, known in (("answer-side", (*words.SIDES, *words.RETURNING)), ("answer-how", words.HOWS)):
            if typed and asked.index(other) > asked.index(name) and typed in known and not cells.get(other):
                cells[other] = cells[name]
                cells[name] = ""
                break
    return cells


def _entry(line: TableLine, layout: _Layout, names: Mapping[str, str]) -> Entry:
    given = _parted(line.cells[0]) if len(line.cells) == 1 else line.cells
    roles = layout.roles_of(given, names)
    cells = _settled({role: cell for role, cell in zip(roles, given, strict=False) if role})
    if "answer" in layout.units and "answer-unit" not in cells:
        cells["answer-unit"] = layout.units["answer"]
    named = _name(cells.get("code") or cells.get("name", ""))
    if named in names and not is_code(cells.get("code", "")):
        cells |= {"name": cells.get("code") or cells["name"], "code": names[named]}
        if not names[named]:
            return Entry(line.number, cells, words.two_of_a_name(cells["name"]))
    return Entry(line.number, cells, words.OPEN_QUOTE if line.open_quote else _fault(cells))


def _fault(cells: Mapping[str, str]) -> str:
    """Why a line's cells cannot be used, apart from its code and numbers."""
    if not cells.get("code"):
        return words.NO_CODE
    if not cells.get("answer"):
        return words.no_answer(cells["code"])
    for side in ("answer-side", "answer-first-side"):
        if cells.get(side, "").lower() not in (*words.SIDES, *words.RETURNING):
            return words.bad_side(cells[side])
    if cells.get("answer-how", "").lower() not in words.HOWS:
        return words.bad_how(cells["answer-how"])
    return ""


def answer_of(cells: Mapping[str, str]) -> dict[str, str]:
    """The cells as the answer checker takes them."""
    form = {name: cell for name, cell in cells.items() if name.startswith("answer")}
    for side in ("answer-side", "answer-first-side"):
        typed = cells.get(side, "").lower()
        form[side] = words.SIDES.get(typed, typed)
    form["answer-how"] = words.HOWS[cells.get("answer-how", "").lower()]
    form["answer-angle"] = form.get("answer-angle", "").removesuffix("°").strip()
    return form


def code_of(cells: Mapping[str, str]) -> Code:
    """The code of a line. Raises CodeError."""
    return codes.read(cells["code"])
