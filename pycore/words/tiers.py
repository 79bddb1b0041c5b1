"""What each level of each topic asks of a learner: read off the generators of practice/, which never change."""

from collections.abc import Mapping

TIERS: Mapping[str, Mapping[str, str]] = {
    "neutral-current": {
        "support": "whole amperes at equal power factor, the first two lines drawn already",
        "core": "tenths of an ampere at equal power factor",
        "stretch": "power factors that differ, and which current in the last line would leave the neutral at zero",
    },
    "add-phasors": {
        "support": "two phasors of whole amperes, at an angle that set squares have",
        "core": "three phasors in tenths of an ampere, at angles in steps of 5°",
        "stretch": "one phasor less two others, at angles of whole degrees",
    },
    "star-and-delta": {
        "support": "three equal loads in star: the line voltage from two phase voltages",
        "core": "three resistances in delta that differ: one line current",
        "stretch": "loads with reactance in delta, in either sequence",
    },
    "series-circuit": {
        "support": "the supply voltage of known reactances and a known current",
        "core": "the reactances from millihenries and microfarads at 50 Hz first",
        "stretch": "a coil with resistance of its own, at 50 or 60 Hz",
    },
    "parallel-circuit": {
        "support": "a resistor beside a coil of known reactance",
        "core": "resistor, coil and capacitor, the reactances worked out first",
        "stretch": "a coil with resistance of its own beside resistor and capacitor",
    },
    "power-triangle": {
        "support": "the apparent power of one load, from active power and power factor",
        "core": "the capacitor’s reactive power for a target, on one phase",
        "stretch": "the capacitor’s reactive power for a target, on three phases",
    },
    "harmonics-in-the-neutral": {
        "support": "the third harmonic of whole amperes at equal power factor",
        "core": "the fundamental beside a third harmonic, in tenths of an ampere",
        "stretch": "the third harmonic where the lines lag by different angles",
    },
    "open-neutral": {
        "support": "three resistances in tens of ohms",
        "core": "three resistances of usual values",
        "stretch": "one of the loads has reactance",
    },
    "two-wattmeters": {
        "support": "both readings above zero",
        "core": "both readings above zero, down to a power factor near 0.5",
        "stretch": "one reading below zero",
    },
    "sequence-components": {
        "support": "the zero sequence of whole amperes 120° apart",
        "core": "the zero or the negative sequence, angles in steps of 10°",
        "stretch": "any of the three components, angles in steps of 5°",
    },
}
NAMES = {"support": "Support", "core": "Core", "stretch": "Stretch"}


def tier_words(slug: str, tier: str) -> str:
    """What a level of a topic holds, as a sentence. KeyError for a page without practice."""
    return f"{NAMES[tier]}: {TIERS[slug][tier]}."
