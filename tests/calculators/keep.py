"""Writes `links.toml` and `codes.toml` of a new calculator: `python tests/calculators/keep.py SLUG`.

Each file holds what its links or codes give now, and what stands in it is never written again: it is printed somewhere.
For a calculator that has both files, links of choices that have none are added to the first. Read what was written
before you commit it. A test checks that every choice of the form has a link.
"""

import json
import sys
import tomllib
from collections.abc import Iterator
from itertools import product
from pathlib import Path

if __name__ == "__main__":
    HOUSE = Path(__file__).resolve().parents[2]
    sys.path[:0] = [str(HOUSE), str(HOUSE / "site"), str(HOUSE / "tests")]

from calculators.folders import FOLDERS
from cases.test_cases import OUTPUT
from cases.test_links import SIZE, answered, arrows_of, ask, opened

from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.forms.fields import VERSION, default_form
from pycore.practice.codes import TIERS, Code
from pycore.sums.case import CHOSEN_TO_FIT

BESIDE_CODES = (("parallelogram", "A4", 0, 1), ("tip-to-tail", "A3", 12345, 678), ("any", "A5", 32767, 1023))
"""Method, paper, seed and number of the codes of each level."""


def forms_of(slug: str) -> Iterator[tuple[str, dict[str, str]]]:
    """A name and a form for the example, and for each option of each choice."""
    fields = CALCULATORS[slug].fields
    example = default_form(fields)
    yield "example", example
    for field in fields:
        if field.kind == "choice" and not field.private:
            for option in field.options:
                if option.value:
                    yield f"{field.name}-{option.value}", {**example, field.name: option.value}


def address_of(slug: str, name: str, form: dict[str, str]) -> str:
    """The link of a form: all its values, what was chosen to fit, and the option that the link is kept for."""
    case = CALCULATORS[slug].case(form)
    pairs = dict(case.link(case.sheet_plan()))
    values = {field.name: form[field.name] for field in CALCULATORS[slug].fields if field.group == "values"}
    wanted = {key: form[key] for key in form if name.startswith(f"{key}-") and form[key] == name[len(key) + 1:]}
    fit = {key: value for key, value in pairs.items() if key in CHOSEN_TO_FIT}
    rest = {key: value for key, value in pairs.items() if key != "v"}
    return f"{slug}/#" + links.fragment([("v", VERSION), *{**values, **rest, **fit, **wanted}.items()])


def link_text(slug: str, name: str, form: dict[str, str]) -> str:
    """A link with what it gives, as a table of TOML."""
    address = address_of(slug, name, form)
    answer = answered(slug, opened(slug, address.partition("#")[2]))
    sheet = answer["regions"]["sheet"]
    size = [float(side) for side in SIZE.search(sheet).groups()]
    results = [
        f"{key} = {value or json.dumps('')}"
        for key, value in OUTPUT.findall("".join(answer["regions"].values())) if key != "tolerance"
    ]  # fmt: skip
    lines = ["[[link]]", f'id = "{slug}-{name}"', f"address = {json.dumps(address)}",
             f"size = [{size[0]:g}, {size[1]:g}]", f"results = {{ {', '.join(results)} }}"]  # fmt: skip
    arrows = arrows_of(sheet)
    if arrows:
        lines.append("[link.arrows]")
    for key, ends in arrows.items():
        lines.append(f"{json.dumps(key)} = [{', '.join(f'{end:.3f}' for end in ends)}]")
    return "\n".join(lines)


def code_text(slug: str, code: Code) -> str:
    """A code with its problem, as a table of TOML."""
    page = CALCULATORS[slug]
    form = ask(slug, "open", fragment=f"v={VERSION}&code={code}")["form"]
    kept = [field.name for field in page.fields if field.group == "values"] + ["paper", "method"]
    values = ", ".join(f"{name} = {json.dumps(form[name], ensure_ascii=False)}" for name in kept)
    return f'[[code]]\ncode = "{code}"\npage = "{slug}"\nform = {{ {values} }}'


def write(path: Path, title: str, tables: Iterator[str]) -> None:
    """Write a new file of tables. Raises FileExistsError for one that is there: it is kept for ever."""
    with path.open("x", encoding="utf-8") as file:
        file.write("\n\n".join([f"# {title}", *tables]) + "\n")


def add_missing(slug: str, folder: Path) -> list[str]:
    """Add a link for each choice that no link of a calculator holds; return their names."""
    path = folder / "links.toml"
    addresses = [link["address"] for link in tomllib.loads(path.read_text("utf-8"))["link"]]
    held = {pair for address in addresses for pair in address.partition("#")[2].split("&")}
    missing = [
        (name, form) for name, form in forms_of(slug)
        if any(name == f"{key}-{value}" and f"{key}={value}" not in held for key, value in form.items())
    ]  # fmt: skip
    with path.open("a", encoding="utf-8") as file:
        file.writelines(f"\n{link_text(slug, *one)}\n" for one in missing)
    return [name for name, _ in missing]


def keep(slug: str, folder: Path) -> None:
    """Write both files of a calculator into a folder. Raises FileExistsError where one is there."""
    kept_links = (link_text(slug, *one) for one in forms_of(slug))
    write(folder / "links.toml", f"Links of version {VERSION} to the page {slug}.", kept_links)
    topic = CALCULATORS[slug].topic
    codes = (Code(topic, tier, *more) for tier, more in product(TIERS, BESIDE_CODES))
    write(folder / "codes.toml", f"Codes of the page {slug}.", (code_text(slug, code) for code in codes))


if __name__ == "__main__":
    own = FOLDERS[sys.argv[1]]
    if (own / "links.toml").exists():
        print("added:", ", ".join(add_missing(sys.argv[1], own)) or "nothing")
    else:
        keep(sys.argv[1], own)
