"""What the pages say of a load that is typed as an impedance."""

from pycore.words.inputs import quoted

OPEN = "open"


def load_range(label: str, typed: str) -> str:
    """A load out of range."""
    return (
        f"{label} is out of range: {quoted(typed)}. Use 0.001 Ω to 1 MΩ; the resistance must not be negative. 0 Ω "
        "would be a short circuit."
    )
