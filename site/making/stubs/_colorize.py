"""In the place of the standard library's module of the same name: tracebacks without colours."""


class _Plain:
    """A theme whose every colour is nothing, and whose every part is one like it."""

    def __getattr__(self, name: str) -> str:
        return ""


class _Themes:
    traceback = syntax = _Plain()


ANSIColors = _Plain()


def can_colorize(**_given: object) -> bool:
    """Nobody reads them on a terminal."""
    return False


def get_theme(**_given: object) -> _Themes:
    """The plain one."""
    return _Themes()
