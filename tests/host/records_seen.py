"""What pycore's dataclasses are and do, told alike where they are dataclasses and where they are written out."""

import importlib
from collections.abc import Iterator


def classes(modules: list[str]) -> Iterator[type]:
    """Every class of these modules with fields that is no named tuple."""
    for name in modules:
        for value in vars(importlib.import_module(name)).values():
            ours = isinstance(value, type) and value.__module__ == name
            if ours and "__match_args__" in vars(value) and not issubclass(value, tuple):
                yield value


def flat(value: object) -> str:
    """A value in words, its fields with it."""
    if "__match_args__" in vars(type(value)) and not isinstance(value, tuple):
        return f"{type(value).__name__}({', '.join(flat(getattr(value, name)) for name in type(value).__match_args__)})"
    if isinstance(value, (tuple, list)):
        return f"{type(value).__name__}[{', '.join(map(flat, value))}]"
    return value.__qualname__ if callable(value) else repr(value)


def changed(one: object, **values: object) -> object:
    """A copy with other values, as the host's own `replace` makes it."""
    if hasattr(one, "__replace__"):
        return one.__replace__(**values)
    from dataclasses import replace

    return replace(one, **values)


def told(kind: type) -> dict[str, object]:
    """One class: its fields, its defaults, and how its instances compare, hash and change."""
    names = kind.__match_args__
    needed = len(names) - len(kind.__init__.__defaults__ or ())
    one, same, least = kind(*names), kind(*names), kind(*names[:needed])
    other = changed(one, **{names[-1]: "other"})
    made = [name for name in names[needed:] if isinstance(getattr(least, name), (list, dict))]
    return {
        "fields": list(names),
        "kept in slots": not hasattr(one, "__dict__"),
        "least": flat(least),
        "shared": [name for name in made if getattr(least, name) is getattr(kind(*names[:needed]), name)],
        "equal": [one == same, one == other, one == names, one != same],
        "hash": None if kind.__hash__ is None else [hash(one) == hash(same), len({one, same, other})],
        "changed": flat(other),
    }


def digests(modules: list[str]) -> dict[str, dict[str, object]]:
    """Every class of these modules by module and name."""
    return {f"{kind.__module__}.{kind.__qualname__}": told(kind) for kind in classes(modules)}
