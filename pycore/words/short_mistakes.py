"""Every mistake of every page in few words, without the names of lines, as it is counted for a class or on a device."""

from collections.abc import Mapping

SHORT: Mapping[str, str] = {
    "left-out": "a phasor left out", "stopped": "stopped at the first diagonal", "reversed": "a phasor reversed",
    "other-scale": "the protractor’s other scale", "wrong-way": "a phasor turned the wrong way",
    "other-scale-at-tip": "the other scale at a tip", "other-scale-throughout": "the other scale at each tip",
    "wrong-way-at-tip": "a wrong turn at a tip", "mirrored": "turned the other way throughout",
    "swapped": "two lengths exchanged", "other-diagonal": "the other diagonal measured",
    "two-diagonals": "two first diagonals added", "factor-ignored": "power factors left out",
    "lead-for-lag": "lead taken for lag", "ten-too-many": "decimal mark too far right",
    "ten-too-few": "decimal mark too far left", "not-multiplied": "centimetres read as the quantity",
    "divided": "divided by the scale", "multiplied-lines": "values multiplied by the scale",
    "plain-sum": "added as plain numbers", "largest-less-smallest": "largest less smallest", "mean": "the mean taken",
    "root-of-squares": "root of the squares", "no-root": "root forgotten", "sign-slipped": "a sign slipped",
    "signs-slipped": "all signs slipped", "product-dropped": "a product left out", "product-doubled": "a product twice",
    "across-only": "one axis only", "up-only": "the other axis only", "parts-added": "parts added as plain numbers",
    "sine-for-cosine": "sine for cosine", "all-sine-for-cosine": "sine for cosine throughout",
    "one-sign": "one sign for all parts", "right-angles": "90° between the lines", "radians": "radians",
    "gradians": "gradians", "times-root-three": "multiplied by √3", "over-root-three": "divided by √3",
    "complement": "angle from the other axis", "turned-round": "the opposite direction",
    # Those of single pages.
    "load-left-out": "a load left out", "impedance-for-admittance": "impedances for admittances",
    "line-for-phase": "line voltage for phase voltage", "root-three-forgotten": "√3 forgotten",
    "readings-exchanged": "the two readings exchanged", "minus-forgotten": "a reading’s minus forgotten",
    "added": "added, not taken off", "taken-off": "taken off, not added",
    "parts-exchanged": "both parts of a phasor exchanged", "j-sign": "the sign before j slipped",
    "first-turned": "the difference the other way round", "branch-for-line": "one phasor taken for the result",
    "star-voltage": "phase voltage across the loads", "root-three-unbalanced": "√3 though the loads differ",
    "angles-of-loads": "the loads’ own angles left out", "size-by-adding": "R and X of a load added as plain numbers",
    "two-pi-forgotten": "2π forgotten", "reactances-added": "reactances added, not taken off",
    "reactive-currents-added": "reactive currents added, not taken off",
    "kinds-exchanged": "coil and capacitor exchanged",
    "reactance-inverted": "a capacitor’s reactance inverted", "milli-forgotten": "millihenries taken as henries",
    "micro-as-milli": "microfarads taken as millifarads", "impedances-as-numbers": "R and X added as plain numbers",
    "resistance-only": "the reactance left out", "reactance-only": "the resistance left out",
    "impedances-in-series": "branches taken in series",
    "branch-as-numbers": "R and X of a branch added as plain numbers",
    "branch-reactance-only": "a coil’s own resistance left out", "multiplied-not-divided": "multiplied, not divided",
    "angle-turned": "the angle’s sign turned", "apparent-for-active": "active power taken for apparent power",
    "factor-multiplied": "multiplied by the power factor", "powers-as-numbers": "P and Q added as plain numbers",
    "sine-of-phi": "sine and cosine of φ exchanged", "whole-corrected": "all of the reactive power taken off",
    "remaining-taken": "the reactive power that remains", "apparent-subtracted": "apparent powers subtracted",
    "cosines-subtracted": "power factors subtracted", "order-not-multiplied": "angles not multiplied by the order",
    "all-orders": "all orders together", "turned": "turned where nothing turns", "not-turned": "not turned by a",
    "a-exchanged": "a and a² exchanged", "wrong-way-a": "a turn by a the wrong way",
    "divided-already": "divided by three already",
}  # fmt: skip


def short(key: str) -> str:
    """A mistake in few words; of a key that an older record of a device holds and no page has, the key in words."""
    return SHORT.get(key, key.replace("-", " "))
