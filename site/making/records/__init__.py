"""In the browser's library, what a dataclass needs beside the `__init__` that the library's compiler has written out.

`dataclasses.dataclass` writes and compiles its methods anew at each start, class by class: four fifths of the time that
importing pycore took. Instances are not guarded against change here: the tests, which run with dataclasses, hold that.
"""

from operator import attrgetter


def _known_by(cls, get):
    def equal(self, other):
        return get(self) == get(other) if other.__class__ is cls else NotImplemented

    def changed(self, /, **values):
        return cls(**{name: getattr(self, name) for name in cls.__match_args__} | values)

    cls.__eq__, cls.__replace__ = equal, changed


def changing(cls):
    """A class whose instances are equal if their fields are, and cannot be hashed."""
    _known_by(cls, attrgetter(*cls.__match_args__))
    cls.__hash__ = None
    return cls


def frozen(cls):
    """A class whose instances are equal and hash alike if their fields are and do."""
    get = attrgetter(*cls.__match_args__)
    _known_by(cls, get)
    cls.__hash__ = lambda self: hash(get(self))
    return cls
