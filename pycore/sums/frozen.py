"""Values that do not change once they are made."""

from typing import Any


class FrozenAfterInit(type):
    """Metaclass whose instances are frozen after ``__init__``: setting an attribute then raises."""

    def __call__(cls, *args: Any, **names: Any) -> Any:
        """Make an instance and freeze it."""
        value = super().__call__(*args, **names)
        value.__dict__["_sealed"] = True
        return value
