"""What goes wrong with circuits, in words: what happened, and where to look. {a} names an element or a phasor."""

CIRCUITS: dict[str, tuple[str, str]] = {
    "two-pi-forgotten": (
        "2π was left out: the frequency f was used instead of 2πf",
        "Use ω = 2πf in a reactance: at 50 Hz, 2πf is 314, not 50.",
    ),
    "reactances-added": (
        "the reactances were added",
        "The reactances of coil and capacitor have opposite signs: subtract the smaller from the larger.",
    ),
    "reactive-currents-added": (
        "the currents of coil and capacitor were added, but they have opposite directions",
        "A coil’s current lags by 90° and a capacitor’s leads by 90°: subtract the smaller from the larger.",
    ),
    "kinds-exchanged": (
        "coil and capacitor are swapped",
        "In a coil the current lags the voltage; in a capacitor it leads. Check which way each arrow turns.",
    ),
    "reactance-inverted": (
        "the capacitor’s reactance was calculated as 2πfC",
        "A capacitor’s reactance is 1 ÷ (2πfC): a larger capacitance has a smaller reactance.",
    ),
    "milli-forgotten": (
        "millihenries were used as henries",
        "1 mH is 0.001 H: check the prefix before you use the number.",
    ),
    "micro-as-milli": (
        "microfarads were used as millifarads",
        "1 µF is 0.000001 F: six decimal places, not three.",
    ),
    "impedances-as-numbers": (
        "resistance and reactance were added as plain numbers",
        "They are at right angles: use Pythagoras, or draw the triangle.",
    ),
    "resistance-only": (
        "the reactance was left out",
        "The impedance has two components: resistance and reactance.",
    ),
    "reactance-only": (
        "the resistance was left out",
        "The impedance has two components: resistance and reactance.",
    ),
    "impedances-in-series": (
        "the branches were calculated as a series circuit",
        "In parallel, every branch has the supply voltage, and the branch currents add as phasors.",
    ),
    "branch-as-numbers": (
        "in branch {a}, resistance and reactance were added as plain numbers",
        "Within a branch they are at right angles: use Pythagoras.",
    ),
    "branch-reactance-only": (
        "in branch {a}, the resistance was left out",
        "The resistance of a coil makes its current smaller and its angle of lag less than 90°.",
    ),
    "multiplied-not-divided": (
        "the voltage was multiplied by the impedance",
        "A current is voltage divided by impedance.",
    ),
    "angle-turned": (
        "the angle has the wrong sign",
        "Lagging or leading? Check which has more effect, the coil or the capacitor.",
    ),
    "sine-of-phi": (
        "sine and cosine of φ are swapped",
        "The power factor is cos φ, so active power is P = S cos φ.",
    ),
    "apparent-for-active": (
        "the active power was used as the apparent power",
        "S = P ÷ power factor. S is never smaller than P.",
    ),
    "factor-multiplied": (
        "P was multiplied by the power factor instead of divided",
        "S = P ÷ power factor. S is never smaller than P.",
    ),
    "powers-as-numbers": (
        "P and Q were added as plain numbers",
        "They are at right angles: use Pythagoras.",
    ),
    "whole-corrected": (
        "all the reactive power was compensated, as for a power factor of 1",
        "Some reactive power remains at the target: Q = P × (tan φ before − tan φ after).",
    ),
    "cosines-subtracted": (
        "the power factors were subtracted instead of the tangents",
        "Q = P × (tan φ before − tan φ after).",
    ),
    "remaining-taken": (
        "the reactive power that remains was given instead of the capacitor’s",
        "The capacitor’s reactive power is the reactive power before minus the reactive power after.",
    ),
    "apparent-subtracted": (
        "the apparent powers were subtracted",
        "The capacitor changes only Q: subtract the reactive powers.",
    ),
}  # fmt: skip

SHORT: dict[str, str] = {
    "two-pi-forgotten": "2π forgotten",
    "reactances-added": "reactances added, not subtracted",
    "reactive-currents-added": "reactive currents added, not subtracted",
    "kinds-exchanged": "coil and capacitor swapped",
    "reactance-inverted": "capacitive reactance upside down",
    "milli-forgotten": "millihenries used as henries",
    "micro-as-milli": "microfarads used as millifarads",
    "impedances-as-numbers": "R and X added as plain numbers",
    "resistance-only": "the reactance left out",
    "reactance-only": "the resistance left out",
    "impedances-in-series": "branches treated as a series circuit",
    "branch-as-numbers": "R and X of a branch added as plain numbers",
    "branch-reactance-only": "the resistance of a coil left out",
    "multiplied-not-divided": "multiplied instead of divided",
    "angle-turned": "angle with the wrong sign",
    "sine-of-phi": "sine and cosine of φ swapped",
    "apparent-for-active": "active power used as apparent power",
    "factor-multiplied": "multiplied by the power factor",
    "powers-as-numbers": "P and Q added as plain numbers",
    "whole-corrected": "all the reactive power compensated",
    "cosines-subtracted": "power factors subtracted",
    "remaining-taken": "the reactive power that remains",
    "apparent-subtracted": "apparent powers subtracted",
}
"""The same in few words."""
