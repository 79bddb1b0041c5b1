"""The words of a lecturer's own values given as a problem: the panel, and the learner's handout."""

from pycore.words.codes import CHECKING

GIVE = TITLE = "Give it as a problem"
LEAD = (
    "Link, QR code, sheet and handout have your values and hold the answer back. Learners see it when they ask for it."
)
SHEET = "Problem sheet (PDF)"
HANDOUT = "Handout for learners"
TO_PAPER = "Add to a question paper"
IN_PAPER = "It is question {number} of the question paper that you are putting together."
PAPER_FULL = "Your question paper has {most} questions, and cannot have more. Remove one there first."
OPEN_PAPER = "Open the question paper"
HANDOUT_READY = "The learner’s handout is saved. It does not hold the answer."

HANDOUT_LEAD = "Work it out yourself on the sheet below. Print it at 100 %. The answer is not in this file."
CHECK_BY_LINK = "Check your answer on the page of this problem"


def told(code: str) -> str:
    """The code of the problem, and what it is for."""
    if code.startswith(CHECKING):
        return f"The code {code} is on the sheet. It tells learners who type the values whether they are right."
    return f"The code {code} is on the sheet. It opens the same problem."


def check_by_code(title: str, code: str) -> str:
    """How to check an answer without a link."""
    if code.startswith(CHECKING):
        return f"To check your answer, open the page “{title}”. Type the values, then the code {code} under “Check”."
    return f"To check your answer, open the page “{title}”. Type the code {code} under “Check”."
