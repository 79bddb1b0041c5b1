"""In the place of Pyodide's module of the same name: its methods written in C go without documentation here."""


def dedent_docstring(_text: str) -> str:
    """No text."""
    return ""


def get_cmeth_docstring(_method: object) -> str:
    """No text."""
    return ""
