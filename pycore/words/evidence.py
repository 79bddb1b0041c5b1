"""The words of the two pages of evidence: outside checks, and the study of hand drawing."""

from pycore.words.phrase import Phrase, say

CHECKS_SLUG, STUDY_SLUG = "checks", "accuracy"
CHECKS_TITLE, STUDY_TITLE = "Checks", "How accurate is a hand drawing?"
PAGES = ((STUDY_SLUG, STUDY_TITLE), (CHECKS_SLUG, CHECKS_TITLE))
CHECKS_DESCRIPTION = (

    "Each value that was checked against an outside source, with the difference."

)
STUDY_DESCRIPTION = "How much do drawings by hand scatter? Thousands of them, for each method, order and scale."
TABLE = "Values checked against outside sources"
HOLDS, FAILS = "agrees", "does not agree"
HEAD: tuple[Phrase, ...] = (
    say("what"), say("source"), say("expected"), say("ours"), say("difference"), say("within its tolerance"),
)  # fmt: skip
SCATTER = "Scatter of the drawings"
SCATTER_HEAD: tuple[Phrase, ...] = (
    say("method"), say("95 of 100, calculated"), say("95 of 100, simulated"), say("inside the ellipse"),
    say("smallest crossing angle"),
)  # fmt: skip
NONE_CROSS = "none"
BY_SCALE = "A larger scale helps"
SCALE_HEAD: tuple[Phrase, ...] = (say("scale"), say("95 of 100 within"))
BEST = "Which method is best"
BEST_HEAD: tuple[Phrase, ...] = (say("method"), say("best in"))
DOTS = say("Each dot is where one drawing ends, measured from the exact point. The line is the calculated ellipse.")
ACROSS, UPWARDS = "amperes per centimetre", "95 of 100 within, % of the neutral"
SCATTER_ALTERNATIVE = (
    "End points of simulated drawings for each method, with the ellipse that should contain 95 of 100 of them."
)
SCALE_ALTERNATIVE = (
    "Half-width in per cent of the neutral current, against amperes per centimetre. It is larger for a smaller drawing."
)


CHECKS_LEAD = say(
    "The table is made from the data that the automatic tests use, every time the site is built. Table and tests "
    "are therefore always the same."
)


def counted(number: str, held: str, kinds: str) -> Phrase:
    """How many checks there are."""
    return say("{number} values; {held} agree: {kinds}.", number=number, held=held, kinds=kinds)


def kinds() -> Phrase:
    """What the kinds mean."""
    return say(
        "“Published” values have a source that anyone can look up. “Recomputed” values were found again by hand or "
        "with another program. “From memory” values were once published, and stand here as we remember them. “Common "
        "practice” has no source."
    )


STUDY_LEAD = say(
    "The study assumes a practised hand. Its errors have standard deviations of 0.5 mm and 0.5°. So 95 of 100 single "
    "lengths are within 1 mm, and 95 of 100 angles within 1°. A program adds such errors at random to each move that "
    "the sheets teach. Then it measures the finished drawings."
)


def scale(amperes: str) -> str:
    """A scale in the table."""
    return f"1 cm = {amperes} A"


def simulated(drawings: str, scale: str) -> Phrase:
    """What was simulated."""
    return say(
        "{drawings} drawings for each method of 18.4 A, 11.2 A and 24.6 A at {scale}.", drawings=drawings, scale=scale
    )


def covered(low: str, high: str) -> Phrase:
    """How well the ellipse holds."""
    return say(
        "Where lines cross at 15° or more, {low} to {high} % of the drawings end inside the calculated 95 % ellipse.",
        low=low,
        high=high,
    )


def flat_note(method: str, angle: str, share: str) -> Phrase:
    """A way that crosses too flatly."""
    return say(
        "{method}: lines cross at only {angle}. There the calculated ellipse contains only {share} %, and a few "
        "drawings are far out. The sheets warn about this.",
        method=method,
        angle=angle,
        share=share,
    )


def best_and_worst(best: str, least: str, worst: str, most: str) -> Phrase:
    """The spread of ways."""
    return say(
        "The most accurate method here is {best}, ± {least} mm. The least accurate is {worst}, ± {most} mm.",
        best=best,
        least=least,
        worst=worst,
        most=most,
    )


SCALE_NOTE = say(
    "An error of half a millimetre is a smaller percentage of a longer line (tip to tail, the same values):"
)


def best_note(problems: str) -> Phrase:
    """How often each way is best."""
    return say(
        "{problems} random problems, each drawn by every method at the best scale on A4. The method with the smallest "
        "calculated half-width was:",
        problems=problems,
    )
