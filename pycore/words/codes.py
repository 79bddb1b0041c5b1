"""What is said about practice codes that cannot be used, or that do not fit the values."""

LABEL = "Code on your sheet"
EXAMPLE = "333-JDL-2GA"
HELP = f"Nine or twelve characters in groups of three, such as {EXAMPLE}. Capital or small letters."
OPEN = "Open the problem"

CHECKING = "6"
"""What a code begins with that checks values and brings none."""
FORM = (
    "a code that begins with 3, 5, 6 or 7 has nine letters and digits, such as 333-JDL-2GA; one that begins with 4 has "
    "twelve, such as 42C-332-3C2-9XZ"
)


def opened(code: str) -> str:
    """Which problem a page shows; of a check code, that the values are those of the sheet."""
    return f"Code {code}: these values are right." if code.startswith(CHECKING) else f"Problem {code}"


VALUES_FIRST = "Type the values of your sheet first. Then open this code again: it says whether they are right."


def other_typed(code: str) -> str:
    """Typed values that are not those of a check code."""
    return f"These are not the values that code {code} checks. Compare each value and each choice with your sheet."


def not_checked(code: str) -> str:
    """A link whose values are not those of its check code."""
    return f"The values here are not the ones that code {code} checks, so the code was removed. Compare your sheet."


GROUPS = ("first", "second", "third", "fourth")


def unusable(typed: str, reason: str, fragment: str, group: int = 0, sheet: str = "your sheet") -> str:
    """Why a code cannot be used, and what to do.

    ``reason``: as in ``CodeError``; ``group``: the number of the group that is probably wrong, 0 if none is known;
    ``sheet``: what the code stands on.
    """
    subject = f"Code “{typed.strip()[:20]}”"
    reasons = {
        "empty": f"Type a code: {FORM}.",
        "length": f"{subject} has {_counted(typed)}; {FORM}.",
        "sign": f"{subject}: “{fragment}” is not used in codes. "
        "Codes never use the digits 0 and 1 or the letters O and I.",
        "check": f"{subject}: one character is wrong, or two are swapped. Compare it with {sheet}.",
        "version": f"{subject} was made by a newer version of this site. Reload the site, then try again.",
        "paper": f"{subject} belongs to a question paper. Type it on the page “Question papers”.",
        "values": f"{subject} checks typed values. Type it on its own page, under “Check”.",
        "topic": f"{subject} does not belong to any page of this site. Compare it with {sheet}.",
    }
    if reason == "check" and group:
        return f"One character is wrong, or two are swapped: check the {GROUPS[group - 1]} group, “{fragment}”."
    return reasons[reason]


def _counted(typed: str) -> str:
    """How many characters were typed."""
    count = len([character for character in typed if character.isalnum()])
    return "1 character" if count == 1 else f"{count} characters"


def kept_values(message: str) -> str:
    """A link with a code that cannot be used, and values of its own."""
    return f"{message} The values stay as they are."


def other_values(code: str) -> str:
    """A link whose values are not those of its code."""
    return (
        f"The values here are not the values of code {code}, so the code was removed. To get its problem, type the "
        "code."
    )


def of_set(code: str) -> str:
    """The code of a class set, which is on no learner's sheet."""
    return f"{code} is the code of a class set. Your own sheet has another code: type that one."


def other_page(code: str, title: str) -> str:
    """A link whose code belongs to another page, with values of this one."""
    return f"Code {code} belongs to the page “{title}”, so it was removed here."
