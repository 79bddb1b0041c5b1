"""What is said of the codes of practice sheets: a code that cannot be used, or that does not fit its values."""

LABEL = "Code on your sheet"
HELP = "Nine or twelve signs in groups of three, such as 333-JDL-2GA. Small letters will do."
OPEN = "Open its problem"

FORM = (
    "a code that begins with 3 has nine letters and figures, such as 333-JDL-2GA; one that begins with 4 has twelve, "
    "such as 42C-332-3C2-9XZ"
)


def opened(code: str) -> str:
    """Which problem a page shows."""
    return f"Problem {code}"


def unusable(given: str, reason: str, part: str) -> str:
    """Why a code cannot be used, and what to do. ``reason`` as ``CodeError`` has it, or ``none``: no problem."""
    told = f"Code “{given.strip()[:20]}”"
    reasons = {
        "empty": f"No code was given: {FORM}.",
        "length": f"{told} has {_counted(given)}; {FORM}.",
        "sign": f"{told}: “{part}” stands in no code. The figures 0 and 1 and the letters O and I are not used.",
        "check": f"{told} does not add up: one sign is wrong, or two are exchanged. Compare it with your sheet.",
        "version": f"{told} was made by a newer edition of these pages. Open the newest one, then try it again.",
        "topic": f"{told} belongs to no page that is here. Compare it with your sheet.",
    }
    return reasons[reason]


def _counted(given: str) -> str:
    """How many signs were given."""
    count = len([sign for sign in given if sign.isalnum()])
    return "1 sign" if count == 1 else f"{count} signs"


def kept_values(message: str) -> str:
    """A link with a code that cannot be used, and values of its own."""
    return f"{message} The values stay as they are."


def other_values(code: str) -> str:
    """A link whose values are not those of its code."""
    return f"The values here are not those of the code {code}, so it is left out. To get its problem, type the code."


def other_page(code: str, title: str) -> str:
    """A link whose code belongs to another page, with values of this one."""
    return f"The code {code} belongs to the page “{title}”, so it is left out here."
