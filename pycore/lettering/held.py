"""What the regular face can set by itself."""

from pycore.lettering import made


def own(text: str) -> bool:
    """Return whether the regular face has all of a text."""
    held = made.ADVANCES["regular"]
    return all(character in held for character in text)
