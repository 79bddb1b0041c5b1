"""Cautions that several pages give, each in one place: a room lists those of its topic."""

EXAMINING_BODY = "Ask which method your examining body accepts."
TEACHING_ONLY = "These sheets teach; they do not size an installation."
LICENSED_PERSON = (
    "These sheets teach; they do not size an installation: the local wiring rules and a licensed person decide."
)
NEUTRAL_DECIDED = (
    "These sheets teach; they do not size an installation. The local wiring rules and a licensed person decide how "
    "large a neutral must be and how it is protected. They also decide about harmonics."
)
PROVE_DEAD = (
    "A clamp meter cannot prove that a circuit is dead. Before you change a connection: isolate, and prove dead with "
    "a proved tester."
)
NEUTRAL_CARRIES = f"A neutral can carry current even when a line is off. {PROVE_DEAD}"
COMPETENT_WITH_CLAMP = (
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. One conductor "
    "in the jaw of the clamp, and the right measurement category."
)
COMPETENT_ON_CIRCUIT = (
    "Only competent or supervised people may measure on a live circuit, and only on a rig made for it."
)
CHARGED = (
    "A capacitor stays charged after the supply is off. Switch off and isolate. Then discharge each capacitor through "
    "a suitable resistor, and prove it dead, before you touch anything."
)
