"""Tables as a spreadsheet opens them (LibreOffice, without a window), split at each sign it offers: nothing runs."""

import re
import subprocess
from pathlib import Path

from render.test_independent_eyes import program
from unit.test_spreadsheets import CELLS, SPLITS

from pycore.practice import tables

FORMULA = re.compile('table:formula="([^"]*)"')
UTF_8 = 76  # as LibreOffice numbers it


def formulas(folder: Path, split: str, texts: dict[str, str]) -> dict[str, list[str]]:
    """The formulas that the spreadsheet finds in tables, by name, if it splits their lines at this sign."""
    folder.mkdir()
    for name, text in texts.items():
        (folder / f"{name}.csv").write_text(text, encoding="utf-8", newline="")
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = [
        program("soffice"), "--headless", profile, "--convert-to", "fods", f"--infilter=CSV:{ord(split)},34,{UTF_8},1",
        "--outdir", str(folder), *(f"{folder}/{name}.csv" for name in texts),
    ]  # fmt: skip
    subprocess.run(command, check=True, capture_output=True, timeout=240)
    return {name: FORMULA.findall((folder / f"{name}.fods").read_text("utf-8")) for name in texts}


def test_a_spreadsheet_finds_no_formula_at_any_separator(tmp_path: Path) -> None:
    """Written bare, the same cells are formulas: the spreadsheet does run what it can."""
    written = {name: tables.write([["Amber", cell, "7"] for cell in CELLS], mark)
               for name, mark in (("comma", "."), ("semicolon", ","))}  # fmt: skip
    for number, split in enumerate(SPLITS):
        bare = split.join(("Amber", "=1+1", "7")) + "\r\n"
        found = formulas(tmp_path / str(number), split, written | {"bare": bare})
        assert found == {"comma": [], "semicolon": [], "bare": ["of:=1+1"]}, repr(split)
