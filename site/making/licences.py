"""The licence of the site and of everything that it carries."""

from making.letters import families
from making.paths import NODE_MODULES, SITE

FONT_PACKAGES = NODE_MODULES / "@fontsource-variable"
SOURCES = {
    "Phasor Folio": (SITE / "LICENSE.txt",),
    "Ysabeau Office, the lettering": (FONT_PACKAGES / "ysabeau-office" / "LICENSE",),
    "STIX Two Text, the letters of quantities": (FONT_PACKAGES / "stix-two-text" / "LICENSE",),
    "Noto Sans Math, the signs of formulas": (NODE_MODULES / "@fontsource" / "noto-sans-math" / "LICENSE",),
    "HarfBuzz and woff2, which set names in other scripts": (
        SITE / "licences" / "shaper.txt", NODE_MODULES / "harfbuzzjs" / "LICENSE",
        NODE_MODULES / "woff2-encoder" / "LICENSE",
    ),
    "morphdom, which changes a page where it stands": (NODE_MODULES / "morphdom" / "LICENSE",),
    "Pyodide, which runs Python in the browser": (SITE / "licences" / "pyodide.txt",),
    "Python and its standard library": (SITE / "licences" / "python.txt",),
    "What is compiled into Pyodide's WebAssembly": (SITE / "licences" / "webassembly.txt",),
    "pydyf, which writes PDF": (SITE / "licences" / "pydyf.txt",),
    "segno, which makes QR codes": (SITE / "licences" / "segno.txt",),
    "zxing-cpp and zxing-wasm, which read QR codes in photographs": (
        SITE / "licences" / "zxing.txt", NODE_MODULES / "zxing-wasm" / "LICENSE",
    ),
}  # fmt: skip
NOTO = "Noto Sans, for names in other scripts"


HEAD = """What this site is made of, and on which terms. A bill of materials (CycloneDX) is beside this file: bom.json.
If those who host this site take reports of security faults, .well-known/security.txt says where.


"""


def _of_noto() -> str:
    """The copyright of each of these families, then the licence that they have in common."""
    texts = {family: (FONT_PACKAGES / family / "LICENSE").read_text("utf-8").strip() for family in families()}
    owners = [f"{family}: {text.splitlines()[0]}" for family, text in texts.items()]
    _, _, shared = texts[families()[0]].partition("\n")
    return "\n".join([*owners, shared])


def licences_text() -> str:
    """Every licence, one after another."""
    texts = {
        title: "\n\n\n".join(source.read_text("utf-8").strip() for source in sources)
        for title, sources in SOURCES.items()
    }
    texts[NOTO] = _of_noto()
    return HEAD + "\n\n\n".join(f"{title}\n{'=' * len(title)}\n\n{text}" for title, text in texts.items()) + "\n"
