"""In the place of the standard library's module of the same name: a traceback as text, as that writes it, but without
lines of source, which the site does not carry.
"""

import sys

_REPEATS = 3
"""So many calls from one place stand in the text, as in a recursion without end; then their number."""

_BETWEEN = {
    "cause": "\nThe above exception was the direct cause of the following exception:\n\n",
    "context": "\nDuring handling of the above exception, another exception occurred:\n\n",
}


def _calls(traceback) -> list[str]:
    """A line for each call, a run of equal ones shortened."""
    found, before, times = [], None, 0
    while traceback is not None:
        code = traceback.tb_frame.f_code
        line = f'  File "{code.co_filename}", line {traceback.tb_lineno}, in {code.co_name}\n'
        times = times + 1 if line == before else 1
        if times <= _REPEATS:
            found.append(line)
        elif times == _REPEATS + 1:
            found.append("")
        if times > _REPEATS:
            more = times - _REPEATS
            found[-1] = f"  [Previous line repeated {more} more time{'s' if more > 1 else ''}]\n"
        before, traceback = line, traceback.tb_next
    return found


def format_exception_only(error, value=None, **_more) -> list[str]:
    """The exception itself, with its notes."""
    error = value if value is not None else error
    kind = type(error)
    place = "" if kind.__module__ in ("builtins", "__main__") else f"{kind.__module__}."
    name = f"{place}{kind.__qualname__}"
    try:
        text = str(error)
    except Exception:
        text = "<exception str() failed>"
    notes = getattr(error, "__notes__", None) or ()
    return [f"{name}: {text}\n" if text else f"{name}\n", *(f"{note}\n" for note in notes)]


def format_exception(error, value=None, tb=None, limit=None, chain=True, **_more) -> list[str]:
    """The exception with its calls, those before it first."""
    error = value if value is not None else error
    parts, seen = [], set()
    while error is not None and id(error) not in seen:
        seen.add(id(error))
        traceback = tb if tb is not None and not parts else error.__traceback__
        head = ["Traceback (most recent call last):\n", *_calls(traceback)] if traceback is not None else []
        parts.append("".join([*head, *format_exception_only(error)]))
        link, earlier = "cause", error.__cause__
        if earlier is None and not error.__suppress_context__:
            link, earlier = "context", error.__context__
        if not chain or earlier is None or id(earlier) in seen:
            break
        parts.append(_BETWEEN[link])
        error = earlier
    return parts[::-1]


def format_exc(limit=None, chain=True) -> str:
    """The exception that is being handled."""
    error = sys.exception()
    return "".join(format_exception(error, chain=chain)) if error is not None else "NoneType: None\n"


def print_exception(error, value=None, tb=None, limit=None, file=None, chain=True, **_more) -> None:
    """Write an exception to `file`, by default to the errors."""
    print("".join(format_exception(error, value, tb, chain=chain)), file=file or sys.stderr, end="")


def print_exc(limit=None, file=None, chain=True) -> None:
    """Write the exception that is being handled."""
    print_exception(sys.exception(), file=file, chain=chain)


_print_exception_bltin = print_exception
"""What Python itself calls."""
