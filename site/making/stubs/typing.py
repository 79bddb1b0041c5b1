"""In the place of the standard library's module of the same name: its names for annotations and
for the heads of classes.

Nothing on the page asks what a type means, so none of them means anything here. What would be missed where a program
runs (`NamedTuple`, `get_type_hints`) is not here: to import it is an error.
"""

TYPE_CHECKING = False


class _Form:
    """A name of a type, or what is made of several: it stands for anything."""

    def __getitem__(self, _types: object) -> "_Form":
        return self

    def __or__(self, _other: object) -> "_Form":
        return self

    __ror__ = __or__

    def __mro_entries__(self, _bases: object) -> tuple:
        return ()


class Generic:
    """A class that is written with types in brackets: the same class, whatever they are."""

    __slots__ = ()

    @classmethod
    def __class_getitem__(cls, _types: object) -> type:
        return cls


Any = ClassVar = Final = IO = Literal = Protocol = Self = Union = Optional = _Form()


def TypeVar(_name: str, *_limits: object, **_more: object) -> _Form:
    """A name that stands for a type."""
    return _Form()


class ParamSpec(_Form):
    """What stands for the parameters of a function. (`Callable[...]` asks for this very name.)"""

    def __init__(self, *_given: object, **_more: object) -> None:
        self.args = self.kwargs = self


def _same(decorated):
    """What is decorated, as it is."""
    return decorated


overload = final = runtime_checkable = _same


def cast(_type: object, value):
    """The value, as it is."""
    return value
