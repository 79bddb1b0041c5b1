#!/usr/bin/env python3
"""Builds, serves, tests and measures Phasor Folio: `python3 build.py serve`, `python3 build.py test`.

Needs Python 3.11 or newer and git, and nothing else: what more is wanted it installs into `.venv` and
`site/node_modules`. `python3 build.py --help` lists the commands; the modules that do the work stand in site/making/.
"""

import argparse
import os
import sys
from pathlib import Path

if sys.version_info < (3, 11):  # noqa: UP036 (said kindly, where pip is not there to say it)
    sys.exit(f"build.py: Python 3.11 or newer is needed; this is {sys.version.split()[0]} ({sys.executable}).")

ROOT = Path(__file__).resolve().parent
sys.path.insert(0, str(ROOT / "site"))
sys.path.insert(0, str(ROOT))

from making import environment, stamps  # noqa: E402
from making.progress import BuildError, say, stop  # noqa: E402


def serve(arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Build, then serve on 127.0.0.1 until stopped."""
    _build(arguments)
    from making.serve import serve_until_stopped

    return serve_until_stopped(arguments.port)


def build(arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Build dist/, with compressed copies for a host, and the pictures of README.md.

    With `--last`, it holds the assets of the edition before as well.
    """
    from making.compress import compress_site
    from making.pictures import write_pictures
    from making.whole import add_last_edition, ensure_lettering

    with stamps.one_at_a_time():
        environment.ensure_node_modules(developer=False)
        ensure_lettering()
        write_pictures()
    folder = _build(arguments)
    with stamps.one_at_a_time():  # a build beside it would take the files away
        compress_site(folder)
        if arguments.last:
            add_last_edition(folder, Path(arguments.last))
    say(f"built: {folder}")
    return 0


def test(arguments: argparse.Namespace, rest: list[str]) -> int:
    """Prepare what the tests need (for all of them the site, the browsers, the simulator), run pytest; gives its code.

    The whole run goes on every processor, and one that is done takes what waits for another; the few that fail in it
    are tried once more, alone. Tests that are named, or that a change touches, run in one process, in their order.
    """
    from making.testing import prepare, run_tests
    from making.touched import changed, tests_of

    if arguments.changed:
        files = tests_of(changed(arguments.changed))
        rest += [str(path.relative_to(ROOT)) for path in files]
        say(f"{len(files)} files of tests are touched")
        if not files:
            return 0
    prepare(rest)
    return run_tests(rest)


def check(_arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Lint Python and JavaScript, and check the types of both."""
    from making.checks import lint_and_types

    with stamps.one_at_a_time():
        environment.ensure_node_modules(developer=True)
    return lint_and_types()


def bench(arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Measure the site beside stock Pyodide, row by row; the named measurements, or all."""
    from making.bench import check_names, measure
    from making.programs import ensure_chromium

    check_names(arguments.names)
    environment.ensure_node_modules(developer=True)
    os.environ["PHASOR_FOLIO_CHROMIUM"] = str(ensure_chromium(environment.PYTHON))
    _build(arguments)
    return measure(arguments.names)


def profile(arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Find which functions of Python's WebAssembly are called, for the build to split it by (site/making/README.md)."""
    from making.profiling import profile as find
    from making.programs import ensure_chromium

    environment.ensure_node_modules(developer=True)
    os.environ["PHASOR_FOLIO_CHROMIUM"] = str(ensure_chromium(environment.PYTHON))
    _build(arguments)
    return find(arguments.add)


def lock(_arguments: argparse.Namespace, _rest: list[str]) -> int:
    """Write anew which files pip may install, after a change of pyproject.toml."""
    from making.locking import lock as write

    return write()


def _build(arguments: argparse.Namespace) -> Path:
    """Bring dist/ up to date and give its path."""
    from making.whole import Choices, build_site

    with stamps.one_at_a_time():
        environment.ensure_node_modules(developer=False)
        said = (getattr(arguments, name, "") for name in ("base", "security_contact", "security_until", "embed"))
        return build_site(Choices(*said))


COMMANDS = {
    "serve": (serve, ("build",)),
    "build": (build, ("build",)),
    "test": (test, ("build", "test")),
    "check": (check, ("build", "test")),
    "bench": (bench, ("build", "test")),
    "profile": (profile, ("build", "test")),
    "lock": (lock, ("lock",)),
}


def _parser() -> argparse.ArgumentParser:
    """The command line: one subcommand each, `test` passing what else it is given to pytest."""
    parser = argparse.ArgumentParser(description="Builds, serves, tests and measures Phasor Folio.")
    commands = parser.add_subparsers(dest="command", required=True)
    for name, (function, _extras) in COMMANDS.items():
        command = commands.add_parser(name, help=function.__doc__, description=function.__doc__)
        if name == "serve":
            command.add_argument("--port", type=int, default=8000, help="the port on 127.0.0.1 (default 8000)")
        if name == "bench":
            command.add_argument("names", nargs="*", help="measurements to take alone, such as start or keystrokes")
        if name == "test":
            said = "only the tests that changes since a commit touch (by default those not committed)"
            command.add_argument("--changed", nargs="?", const="HEAD", metavar="COMMIT", help=said)
        if name == "profile":
            command.add_argument("--add", action="store_true", help="keep what the list has already")
        if name in ("serve", "build"):
            command.add_argument("--base", default="", help="the address the site will have, for links on paper")
            said = "makes pages for embedding, which these sites may frame: their addresses, or * for every site"
            command.add_argument("--embed", default="", metavar="ORIGINS", help=said)
        if name == "build":
            said = "the site as published last: its scripts and styles stay beside the new ones"
            command.add_argument("--last", default="", metavar="FOLDER", help=said)
            said = "where faults of security are reported, such as mailto:...; goes into .well-known/security.txt"
            command.add_argument("--security-contact", default="", metavar="ADDRESS", help=said)
            command.add_argument("--security-until", default="", metavar="DAY", help="until when: 2027-06-30")
    return parser


def main() -> int:
    """Set up, then do what the command line asks."""
    parser = _parser()
    arguments, rest = parser.parse_known_args()
    if rest and arguments.command != "test":
        parser.error(f"unknown: {' '.join(rest)}")
    function, extras = COMMANDS[arguments.command]
    try:
        environment.enter(extras)
        return function(arguments, rest)
    except BuildError as error:
        stop(error)
        return 1
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main())
