"""The lettering inside a document: rules of a style sheet with the glyphs that it uses, and no others."""

import binascii

from pycore.lettering import made
from pycore.lettering.subset import subset
from pycore.lettering.woff import woff

FACES = (
    ("regular", "Phasor Sans", "normal", "400 599"),
    ("bold", "Phasor Sans", "normal", "600 700"),
    ("italic", "Phasor Serif", "italic", "400 700"),
)
"""For each face, its name in style sheets and drawings: family, style, weights."""


def faces_css(text: str) -> str:
    """Return the faces of the lettering with the glyphs of a text, for a style sheet."""
    rules = []
    used = tuple(dict.fromkeys(text))
    for face, family, style, weights in FACES:
        numbers = [made.GLYPHS[face][sign] for sign in used if sign in made.GLYPHS[face]]
        data = binascii.b2a_base64(woff(subset(face, numbers, for_screen=True)), newline=False).decode()
        rules.append(
            f'@font-face{{font-family:"{family}";font-style:{style};font-weight:{weights};'
            f'src:url("data:font/woff;base64,{data}") format("woff")}}'
        )
    return "\n".join(rules)
