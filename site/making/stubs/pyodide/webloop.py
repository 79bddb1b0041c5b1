"""In the place of Pyodide's event loop: nothing here waits, and asyncio with all that it imports stays away."""

# Unused, but a memory can be kept only where the same things of JavaScript are held, in the same order, as by Pyodide.
from pyodide_js._api import scheduleCallback  # noqa: F401


def _initialize_event_loop() -> None:
    """There is no loop to begin."""
