"""What goes wrong with circuits, in words: what happened, and where to look. {a} names an element or a phasor."""

CIRCUITS: dict[str, tuple[str, str]] = {
    "two-pi-forgotten": (
        "2π was forgotten: the frequency stands where 2πf belongs",
        "A reactance turns with ω = 2πf: at 50 Hz that is 314, not 50.",
    ),
    "reactances-added": (
        "the reactances were added",
        "Coil and capacitor work against each other: take the smaller reactance from the larger.",
    ),
    "reactive-currents-added": (
        "the currents of coil and capacitor were added where they work against each other",
        "A coil’s current lags by 90°, a capacitor’s leads by 90°: the smaller is taken from the larger.",
    ),
    "kinds-exchanged": (
        "coil and capacitor are exchanged",
        "In a coil the current lags its voltage, in a capacitor it leads: look which way each arrow turns.",
    ),
    "reactance-inverted": (
        "the capacitor’s reactance was worked out as 2πfC",
        "A capacitor’s reactance is 1 over 2πfC: the larger the capacitor, the smaller its reactance.",
    ),
    "milli-forgotten": (
        "the millihenries were taken as henries",
        "1 mH is 0.001 H: look at the prefix before you put the number in.",
    ),
    "micro-as-milli": (
        "the microfarads were taken as millifarads",
        "1 µF is 0.000001 F: six places, not three.",
    ),
    "impedances-as-numbers": (
        "resistance and reactance were added as plain numbers",
        "They stand at a right angle: use Pythagoras, or draw the triangle.",
    ),
    "resistance-only": (
        "the reactance was left out of account",
        "The impedance has two parts: resistance and reactance.",
    ),
    "reactance-only": (
        "the resistance was left out of account",
        "The impedance has two parts: resistance and reactance.",
    ),
    "impedances-in-series": (
        "the branches were taken as if they were in series",
        "Beside one another each branch has the whole voltage, and the currents add.",
    ),
    "branch-as-numbers": (
        "in the branch {a} resistance and reactance were added as plain numbers",
        "Within a branch they stand at a right angle: use Pythagoras.",
    ),
    "branch-reactance-only": (
        "in the branch {a} the resistance was left out",
        "A coil’s own resistance shortens its current and turns it towards the voltage.",
    ),
    "multiplied-not-divided": (
        "the voltage was multiplied by the impedance",
        "A current is voltage divided by impedance.",
    ),
    "angle-turned": (
        "the angle has the wrong sign",
        "Lagging or leading? Look whether the coil or the capacitor prevails.",
    ),
    "sine-of-phi": (
        "sine and cosine of φ are exchanged",
        "The power factor is the cosine of φ: active power lies along it.",
    ),
    "apparent-for-active": (
        "the active power was taken for the apparent power",
        "S is P divided by the power factor, and never smaller than P.",
    ),
    "factor-multiplied": (
        "P was multiplied by the power factor instead of divided",
        "S is P divided by the power factor, and never smaller than P.",
    ),
    "powers-as-numbers": (
        "P and Q were added as plain numbers",
        "They stand at a right angle: use Pythagoras.",
    ),
    "whole-corrected": (
        "all of the reactive power was taken off, as for a power factor of 1",
        "The target leaves some: Q = P × (tan φ before − tan φ after).",
    ),
    "cosines-subtracted": (
        "the power factors were subtracted instead of the tangents",
        "Q = P × (tan φ before − tan φ after).",
    ),
    "remaining-taken": (
        "this is the reactive power that remains, not the capacitor’s",
        "The capacitor takes what there was less what remains.",
    ),
    "apparent-subtracted": (
        "the apparent powers were subtracted",
        "The capacitor changes Q alone: subtract reactive powers.",
    ),
}  # fmt: skip

SHORT: dict[str, str] = {
    "two-pi-forgotten": "2π forgotten",
    "reactances-added": "reactances added, not taken off",
    "reactive-currents-added": "reactive currents added, not taken off",
    "kinds-exchanged": "coil and capacitor exchanged",
    "reactance-inverted": "a capacitor’s reactance inverted",
    "milli-forgotten": "millihenries taken as henries",
    "micro-as-milli": "microfarads taken as millifarads",
    "impedances-as-numbers": "R and X added as plain numbers",
    "resistance-only": "the reactance left out",
    "reactance-only": "the resistance left out",
    "impedances-in-series": "branches taken in series",
    "branch-as-numbers": "R and X of a branch added as plain numbers",
    "branch-reactance-only": "a coil’s own resistance left out",
    "multiplied-not-divided": "multiplied, not divided",
    "angle-turned": "the angle’s sign turned",
    "sine-of-phi": "sine and cosine of φ exchanged",
    "apparent-for-active": "active power taken for apparent power",
    "factor-multiplied": "multiplied by the power factor",
    "powers-as-numbers": "P and Q added as plain numbers",
    "whole-corrected": "all of the reactive power taken off",
    "cosines-subtracted": "power factors subtracted",
    "remaining-taken": "the reactive power that remains",
    "apparent-subtracted": "apparent powers subtracted",
}
"""The same in few words."""
