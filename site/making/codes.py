"""The reader of QR codes: zxing's, as WebAssembly. A folder of its own, of which a page asks for nothing until a
photograph is to be read."""

import re
import shutil
from pathlib import Path

from making.bundles import minified
from making.paths import NODE_MODULES, SITE
from making.progress import BuildError

READER = NODE_MODULES / "zxing-wasm" / "dist" / "reader" / "zxing_reader.wasm"
ELSEWHERE = re.compile(r"`https://[^`]*`")
"""Where the package would fetch its WebAssembly from, if nobody said where it is: ours is beside the script."""


def write_codes(folder: Path) -> None:
    """Write the reader and its script into `folder`.

    Raises BuildError where the package is not the one that is known.
    """
    folder.mkdir(parents=True)
    shutil.copyfile(READER, folder / READER.name)
    script = minified(SITE / "js" / "codes.js", "--bundle", "--format=esm")
    ours, count = ELSEWHERE.subn('""', script)
    if count != 1 or "https:" in ours:
        raise BuildError("zxing-wasm has changed: see ELSEWHERE in site/making/codes.py.")
    (folder / "codes.js").write_text(ours, encoding="utf-8", newline="\n")
