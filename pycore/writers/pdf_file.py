"""A PDF file made of its objects: streams as they are, all others packed together and compressed.

A tagged class set has a hundred small objects on each page; packed they take a fifth of the room. Sources: ISO 32000-1
(PDF 1.7), sections 7.5.7 (object streams), 7.5.8 (cross-reference streams) and 7.4.4.4 (predictors).
"""

import zlib
from hashlib import md5

import pydyf

LEVEL = 6
"""Of compression: the highest takes twice as long and leaves four in a thousand less."""
PACKED = 400
"""Objects in one packed stream: a reader that wants one page need not unpack those of all."""
PART = 1 << 18
"""Bytes from which on a part of the file is handed over."""
_WIDTHS = (1, 4, 2)
"""Bytes of the three fields of a cross-reference entry."""
_ROW = 7
"""Bytes of an entry."""


def compressed(content: bytes, extra: dict[str, object] | None = None) -> pydyf.Stream:
    """Return a compressed stream."""
    return pydyf.Stream([zlib.compress(content, LEVEL)], {"Filter": "/FlateDecode", **(extra or {})})


class FileBody:
    """The body of a file under way: objects that no longer change are written and let go, so that a long file is
    never in memory as objects. Equal objects in equal order give equal bytes."""

    def __init__(self, pdf: pydyf.PDF) -> None:
        self._pdf = pdf
        self._output = bytearray(b"%PDF-1.7\n%\xf0\x9f\x96\xa4\n")
        self._taken = 0
        self._table = bytearray(_row(0, 0, 65535))
        self._small: list[tuple[int, bytes]] = []
        self._digest = md5(usedforsecurity=False)

    def write(self, first: int) -> None:
        """Write the objects of the PDF from this number on; none of them may change any more."""
        objects = self._pdf.objects
        for number in range(first, len(objects)):
            one = objects[number]
            if one is None:
                continue
            objects[number] = None
            data = one.data
            self._digest.update(data)
            if isinstance(one, pydyf.Stream):
                self._put(one)
            else:
                self._small.append((number, data))
        while len(self._small) >= PACKED:
            self._pack()

    def take(self) -> bytes | None:
        """Return the next part of the file, once it is large enough to be worth handing over; None before."""
        if len(self._output) < PART:
            return None
        part, self._output = bytes(self._output), bytearray()
        self._taken += len(part)
        return part

    def finish(self) -> bytes:
        """Write all that is left and return the file, or what ``take`` has left of it."""
        pdf = self._pdf
        pdf.add_object(pdf.info)
        self.write(1)
        while self._small:
            self._pack()
        place = self._place
        size = len(pdf.objects)
        self._enter(size, 1, place, 0)
        name = b"<" + self._digest.hexdigest().encode() + b">"
        table = compressed(_differences(self._table), {
            "Type": "/XRef", "W": pydyf.Array(_WIDTHS), "Size": size + 1, "Root": pdf.catalog.reference,
            "Info": pdf.info.reference, "ID": pydyf.Array([name, name]),
            "DecodeParms": pydyf.Dictionary({"Predictor": 12, "Columns": _ROW}),
        })  # fmt: skip
        pdf.add_object(table)
        self._output += table.indirect + f"\nstartxref\n{place}\n%%EOF\n".encode("ascii")
        return bytes(self._output)

    @property
    def _place(self) -> int:
        """Where in the file the next object stands."""
        return self._taken + len(self._output)

    def _put(self, stream: pydyf.Stream) -> None:
        self._enter(stream.number, 1, self._place, 0)
        self._output += stream.indirect + b"\n"

    def _pack(self) -> None:
        """Write the small objects that wait, as many as one packed stream holds."""
        pack, self._small = self._small[:PACKED], self._small[PACKED:]
        stream = _packed(pack)
        self._pdf.add_object(stream)
        self._pdf.objects[stream.number] = None
        self._put(stream)
        for index, (number, _) in enumerate(pack):
            self._enter(number, 2, stream.number, index)

    def _enter(self, number: int, kind: int, place: int, index: int) -> None:
        """Note in the cross-reference table where an object stands."""
        start = _ROW * number
        if len(self._table) < start + _ROW:
            self._table.extend(bytes(start + _ROW - len(self._table)))
        self._table[start : start + _ROW] = _row(kind, place, index)


def _packed(pack: list[tuple[int, bytes]]) -> pydyf.Stream:
    """Return objects as one stream: their numbers and places, then what they are."""
    places, at = [], 0
    for number, data in pack:
        places.append(f"{number} {at}")
        at += len(data) + 1
    head = " ".join(places).encode("ascii") + b"\n"
    body = b"\n".join([data for _, data in pack])
    return compressed(head + body, {"Type": "/ObjStm", "N": len(pack), "First": len(head)})


def _row(kind: int, place: int, index: int) -> bytes:
    first, second, third = _WIDTHS
    return kind.to_bytes(first, "big") + place.to_bytes(second, "big") + index.to_bytes(third, "big")


def _differences(table: bytearray) -> bytes:
    """Return the rows of a table, each as its difference from the one before: most differ by one."""
    before = bytes(_ROW) + table[:-_ROW]
    changes = bytes([(new - old) & 255 for new, old in zip(table, before, strict=True)])
    return b"".join([b"\x02" + changes[at : at + _ROW] for at in range(0, len(changes), _ROW)])
