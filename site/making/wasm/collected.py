"""The functions by which Python's collector walks over objects: one for each type whose objects refer to others.

When the collector runs depends on all that was made before it, so the flows see now this function called, now that one
(groupby's only when a collection falls into its loop). So all of them count as called. They are found in the static
data, by how CPython lays a type out for 32 bits: Include/cpython/object.h and Include/typeslots.h of its source.
"""

import struct
from collections.abc import Iterator

from making.wasm.data import whole_of
from making.wasm.module import I32, Module

_SIZE, _NAME, _BASIC, _ITEM, _FLAGS, _WALK = 2, 3, 4, 5, 21, 23
"""Words of a PyTypeObject: ob_size, tp_name, tp_basicsize, tp_itemsize, tp_flags, tp_traverse."""
_COLLECTED = 1 << 14  # Py_TPFLAGS_HAVE_GC
_SLOT, _LAST_SLOT = 71, 90
"""Py_tp_traverse, and a number that no slot reaches."""
_TAKES = bytes([I32] * 3)
"""What each takes: the object, what to call for each it refers to, and what to hand on."""


def walks(whole: Module) -> frozenset[int]:
    """These functions, by own number."""
    memory = whole_of(whole)
    words = struct.unpack(f"<{len(memory) // 4}I", memory[: len(memory) // 4 * 4])
    first, last = whole.table_from, whole.table_from + len(whole.table) - 1
    named = [whole.table[place - first] for place in (*_of_types(words), *_of_lists(words)) if first <= place <= last]
    return frozenset(one - whole.asked for one in named if whole.types[whole.type_of[one]].takes == _TAKES)


def _of_types(words: tuple[int, ...]) -> Iterator[int]:
    """Places in the table that types written out as a whole name."""
    for at in range(len(words) - _WALK):
        sizes = words[at + _SIZE] == 0 and 8 <= words[at + _BASIC] < 4096 and words[at + _ITEM] < 64
        if sizes and words[at + _NAME] and words[at + _FLAGS] & _COLLECTED:
            yield words[at + _WALK]


def _of_lists(words: tuple[int, ...]) -> Iterator[int]:
    """Places in the table that types written as lists of slots name: pairs of a number and a pointer, 0 and 0 last."""
    for at in range(len(words) - 1):
        if words[at] == _SLOT:
            end = at
            while end + 1 < len(words) and 0 < words[end] < _LAST_SLOT:
                end += 2
            if words[end : end + 2] == (0, 0):
                yield words[at + 1]
