"""What every page that adds phasors says of its sum."""

from pycore.words.phrase import Phrase, say


def closed() -> Phrase:
    """The sum is nothing."""
    return say("The phasors add to nothing: the figure closes by itself.")


def small_sum(name: Phrase, length: str) -> Phrase:
    """A sum too short to be measured."""
    return say(
        "{name} is only {length} on this sheet: too short to measure its length or angle well.",
        name=name, length=length,
    )  # fmt: skip


def alternative(what: str, scale: str, name: Phrase, length: str) -> Phrase:
    """What another order would give."""
    return say("{what}: {scale}, {name} {length}", what=what, scale=scale, name=name, length=length)
