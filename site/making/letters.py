"""Fonts and shaper for names in any script: a folder of its own, of which a page asks for nothing until a name does.

The fonts are the packages' own files: a script each, or a part of one (Chinese, Japanese and Korean characters). The
list says which file has which characters.
"""

import json
import shutil
from pathlib import Path

from making.bundles import minified
from making.fonts import FAMILIES
from making.paths import NODE_MODULES, SITE, WORKSHOP
from making.progress import BuildError

HARFBUZZ = NODE_MODULES / "harfbuzzjs" / "dist" / "harfbuzz.wasm"
UNPACKER = NODE_MODULES / "woff2-encoder" / "dist" / "decompress.js"
MAKES_CODE = "(function(A,I){if(!(A instanceof Function))", "(Function,m).apply(null,h)"
"""Begin and end of the place in it that makes a function of a text: ``m`` names its parameters, ``h`` holds their
values. Its minified names are those of the version that is locked."""
INVOKER = """(names, values) => {
  const by = Object.fromEntries(values.map((value, at) => [names[at], value]));
  return (...given) => {
    const made = [];
    const wired = given.map((one, at) => by[`argType${at}`].toWireType(made, one));
    const found = by.invoker(by.fn, ...wired);
    by.runDestructors(made);
    return by.retType.fromWireType(found);
  };
}"""
"""What stands there instead: a call of a function of the WebAssembly, its values turned there and back."""
OURS, NOTO = "ysabeau-office", "noto-sans"
ALPHABETS = {
    "Latn": ((OURS, NOTO), ("latin", "latin-ext", "vietnamese")),
    "Cyrl": ((OURS, NOTO), ("cyrillic", "cyrillic-ext")),
    "Grek": ((OURS, NOTO), ("greek", "greek-ext")),
}
"""By script: families, the lettering's own first, and the parts of each."""
SCRIPTS = {
    "Arab": "arabic", "Armn": "armenian", "Beng": "bengali", "Deva": "devanagari", "Ethi": "ethiopic",
    "Geor": "georgian", "Gujr": "gujarati", "Guru": "gurmukhi", "Hebr": "hebrew", "Khmr": "khmer", "Knda": "kannada",
    "Laoo": "lao", "Mlym": "malayalam", "Mymr": "myanmar", "Sinh": "sinhala", "Taml": "tamil", "Telu": "telugu",
    "Thai": "thai",
}  # fmt: skip
EAST_ASIAN = {"Hani": ("sc", "tc", "jp", "kr"), "Jpan": ("jp", "sc", "tc", "kr"), "Kore": ("kr", "sc", "tc", "jp")}
"""What has Chinese characters, by the script that they stand in: their shapes differ from country to country."""


def families() -> list[str]:
    """The packages whose fonts are here, beside the lettering's own."""
    parts = [*SCRIPTS.values(), *EAST_ASIAN["Hani"]]
    return [NOTO, *(f"{NOTO}-{part}" for part in parts)]


def _ranges(family: str) -> dict[str, str]:
    """The characters of each part of a family, as its package says it."""
    ranges: dict[str, str] = json.loads((FAMILIES / family / "unicode.json").read_text("utf-8"))
    return {part.strip("[]"): text.replace("U+", "") for part, text in ranges.items()}


def _slices(family: str, parts: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    """The files of a family and the characters of each: of these parts, or of all."""
    ranges = _ranges(family)
    return [(f"{family}-{part}-wght-normal.woff2", ranges[part]) for part in parts or ranges if part in ranges]


def slices() -> dict[str, list[tuple[str, str]]]:
    """By script: the files that have its characters, the best first, and which characters those are."""
    found = {script: [one for family in given for one in _slices(family, parts)]
             for script, (given, parts) in ALPHABETS.items()}  # fmt: skip
    found |= {script: _slices(f"{NOTO}-{part}", (part,)) for script, part in SCRIPTS.items()}
    return found | {
        script: [one for part in parts for one in _slices(f"{NOTO}-{part}")] for script, parts in EAST_ASIAN.items()
    }


def _without_eval(script: str) -> str:
    """The script that unpacks fonts, but for the one function that it makes from a text, which the policy forbids.

    Raises BuildError where the script is not the one that is known.
    """
    before, found, rest = script.partition(MAKES_CODE[0])
    _, ended, after = rest.partition(MAKES_CODE[1])
    if not (found and ended) or MAKES_CODE[0] in after or MAKES_CODE[1] in after:
        raise BuildError("woff2-encoder has changed: see MAKES_CODE in site/making/letters.py.")
    return f"{before}({INVOKER})(m,h){after}"


def write_letters(folder: Path) -> None:
    """Write fonts, list and shaper into `folder`."""
    folder.mkdir(parents=True)
    listed = slices()
    ranges = {file: text for files in listed.values() for file, text in files}
    for name in sorted(ranges):
        family = next(path for path in FAMILIES.iterdir() if (path / "files" / name).exists())
        shutil.copyfile(family / "files" / name, folder / name)
    scripts = {script: [file for file, _ in files] for script, files in listed.items()}
    text = json.dumps({"ranges": ranges, "scripts": scripts}, sort_keys=True)
    (folder / "fonts.json").write_text(text, encoding="utf-8", newline="\n")
    shutil.copyfile(HARFBUZZ, folder / HARFBUZZ.name)
    unpacker = WORKSHOP / "woff2.js"
    unpacker.write_text(_without_eval(UNPACKER.read_text("utf-8")), encoding="utf-8")
    options = ("--bundle", "--format=esm", "--external:module", f"--alias:woff2-encoder/decompress={unpacker}")
    script = minified(SITE / "js" / "letters.js", *options)
    (folder / "letters.js").write_text(script, encoding="utf-8", newline="\n")
