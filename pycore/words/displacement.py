"""The sentences of the displaced star point: triangle, shift, and each load's voltage."""

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol


def triangle() -> Phrase:
    """The tips joined."""
    return say("**Join the three tips** with dashed lines: the triangle of the line voltages.")


def triangle_why() -> Phrase:
    """What the triangle stands for."""
    return say("The supply holds these three corners, whatever the load does.")


def shift(name: Name, zero: Name, angle: str, sense: str, length: str) -> Phrase:
    """The star point's voltage set off from the middle."""
    return say(
        "**Set off {name}.** Protractor’s centre on the common point, zero line along {zero}. Set off {angle} {sense} "
        "and draw {length}: its tip is the load’s star point.",
        name=name, zero=zero, angle=angle, sense=sense, length=length,
    )  # fmt: skip


def shift_why() -> Phrase:
    """Where the value comes from."""
    return say("With no neutral the load’s star point floats: it settles where the three currents add to nothing.")


def no_shift() -> Phrase:
    """Equal loads: nothing moves."""
    return say("**The star point stays in the middle.** The three loads are equal, so no neutral is missed.")


def load(name: Name, start: Name, tip: Name, length: str, amount: str) -> Phrase:
    """A load's voltage drawn and measured."""
    return say(
        "**Draw and measure {name},** from {start} to the tip of {tip}: about {length}, so {amount}.",
        name=name, start=start, tip=tip, length=length, amount=amount,
    )  # fmt: skip
