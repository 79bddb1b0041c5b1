"""Values that do not change once they are made."""

from typing import Any


class FrozenAfterInit(type):
    """The class of classes whose values no longer change once they are made: setting an attribute then raises."""

    def __call__(cls, *args: Any, **names: Any) -> Any:
        """Make a value, and seal it."""
        value = super().__call__(*args, **names)
        value.__dict__["_sealed"] = True
        return value
