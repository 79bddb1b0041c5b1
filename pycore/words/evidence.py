"""The words of the two pages of evidence: outside checks, and the study of hand drawing."""

from pycore.words.phrase import Phrase, say

CHECKS_SLUG, STUDY_SLUG = "checks", "accuracy"
CHECKS_TITLE, STUDY_TITLE = "Checks", "How near a hand can come"
PAGES = ((STUDY_SLUG, STUDY_TITLE), (CHECKS_SLUG, CHECKS_TITLE))
CHECKS_DESCRIPTION = (

    "Every value that these pages were checked against from outside: source, expected, ours, difference."

)
STUDY_DESCRIPTION = "What thousands of simulated hand drawings show: how far they scatter, by method, order and scale."
TABLE = "Values checked from outside"
HOLDS, FAILS = "holds", "does not hold"
HEAD: tuple[Phrase, ...] = (
    say("what"), say("source"), say("expected"), say("ours"), say("difference"), say("within its tolerance"),
)  # fmt: skip
SCATTER = "How far drawings scatter"
SCATTER_HEAD: tuple[Phrase, ...] = (
    say("way"), say("95 in 100, reckoned"), say("95 in 100, simulated"), say("inside the ellipse"),
    say("flattest crossing"),
)  # fmt: skip
NONE_CROSS = "none"
BY_SCALE = "A larger scale helps"
SCALE_HEAD: tuple[Phrase, ...] = (say("scale"), say("95 in 100 within"))
BEST = "Which way is best"
BEST_HEAD: tuple[Phrase, ...] = (say("way"), say("best in"))
SCATTER_ALTERNATIVE = (
    "End points of simulated drawings by each way, with the ellipse that should hold 95 in 100 of them."
)
SCALE_ALTERNATIVE = (
    "The half-width in per cent of the neutral current against amperes per centimetre: it grows as the drawing shrinks."
)


def checks_lead() -> Phrase:
    """What the table is."""
    return say(
        "The table is made from the same data that the project’s tests read, each time the site is built, so that the "
        "two cannot part."
    )


def counted(number: str, held: str, kinds: str) -> Phrase:
    """How many checks there are."""
    return say("{number} values, of which {held} hold: {kinds}.", number=number, held=held, kinds=kinds)


def kinds() -> Phrase:
    """What the kinds mean."""
    return say(
        "“Published” has a source that anyone can look up; “recomputed” was worked out by other means, by hand or by a "
        "general-purpose program; “from memory” is a published figure as remembered; “common practice” has no source."
    )


def study_lead() -> Phrase:
    """What the study is."""
    return say(
        "A practised hand sets off and reads to about half a millimetre and half a degree. Here such slips are made at "
        "random, through the very moves that the sheets teach, and the drawings that come of it are measured."
    )


def simulated(drawings: str, scale: str) -> Phrase:
    """What was simulated."""
    return say(
        "{drawings} drawings by each way of 18.4 A, 11.2 A and 24.6 A at {scale}.", drawings=drawings, scale=scale
    )


def covered(low: str, high: str) -> Phrase:
    """How well the ellipse holds."""
    return say(
        "Where lines cross at 15° or more, {low} to {high} % of the drawings end inside the ellipse that is reckoned "
        "to hold 95 %.",
        low=low,
        high=high,
    )


def flat_found(way: str, angle: str, share: str) -> Phrase:
    """A way that crosses too flatly."""
    return say(
        "{way} has lines that cross at only {angle}: the reckoned ellipse holds {share} % there, and the drawings "
        "scatter with a long tail. The sheets warn of it.",
        way=way,
        angle=angle,
        share=share,
    )


def best_and_worst(best: str, least: str, worst: str, most: str) -> Phrase:
    """The spread of ways."""
    return say(
        "The most forgiving way here is {best}, ± {least} mm; the least forgiving {worst}, ± {most} mm.",
        best=best,
        least=least,
        worst=worst,
        most=most,
    )


def scale_found() -> Phrase:
    """What the scale does."""
    return say("The same slip of half a millimetre is a smaller share of a longer line (tip to tail, the same values):")


def best_found(problems: str) -> Phrase:
    """How often each way is best."""
    return say(
        "Over {problems} random problems, each drawn by every way at its own best scale on A4, the way with the "
        "smallest reckoned half-width was:",
        problems=problems,
    )
