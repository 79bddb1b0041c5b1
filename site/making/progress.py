"""What the person at the terminal is told."""

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager


class BuildError(Exception):
    """A step could not be done; the message says what to do about it."""


def say(message: str) -> None:
    """Show one line of progress at once, whatever the output is piped into."""
    print(message, flush=True)


@contextmanager
def step(message: str) -> Iterator[None]:
    """Show what is being done, and how long it took once it is done."""
    say(f"… {message}")
    began = time.monotonic()
    yield
    say(f"  done in {time.monotonic() - began:.1f} s")


def stop(error: BuildError) -> None:
    """Show why the command cannot go on."""
    print(f"\nbuild.py: {error}", file=sys.stderr, flush=True)
