"""In the place of the standard library's package: Pyodide imports it as it starts, and nothing of ours waits."""


def get_event_loop():
    """There is no loop: whoever needs one is told so."""
    raise RuntimeError("this Python answers at once and has no event loop")
