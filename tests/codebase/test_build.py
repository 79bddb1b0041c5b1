"""The build keeps its promises: exact pins, one policy, no registry named, no other host asked, same bytes twice."""

import base64
import hashlib
import html
import http.client
import json
import re
import subprocess
import sys
import tomllib
import urllib.parse
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer
from making import checks, environment, stamps
from making.environment import LOCKED
from making.fonts import FACES, make_face
from making.paths import NODE_MODULES, ROOT, SITE
from making.policy import HEADER_POLICY, HEADERS, INLINE, NOT_FOUND, PAGE_POLICY, PERMISSIONS, permissions
from making.whole import build_site
from playwright.sync_api import Browser, Page
from witness import Witness

REGISTRY_HOSTS = ("registry." + "npmjs", "pypi." + "org", "python" + "hosted", "deb." + "debian.org", "npm" + "mirror")


def tracked_files() -> list[Path]:
    """Every file that git tracks and that is there."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [path for name in listed.split("\0") if name and (path := ROOT / name).exists()]


def pages_of(dist: Path) -> list[Path]:
    """Every page of the built site that has an address of its own."""
    return sorted(dist.rglob("index.html"))


def response_of(address: str) -> tuple[int, Mapping[str, str], bytes]:
    """The status, the headers and the body that the server gives for an address."""
    parts = urllib.parse.urlsplit(address)
    connection = http.client.HTTPConnection(parts.netloc)
    try:
        connection.request("GET", parts.path)
        response = connection.getresponse()
        return response.status, response.headers, response.read()
    finally:
        connection.close()


def test_every_python_package_is_locked_by_its_version_and_by_the_hashes_of_its_files():
    """Each requirement of each extra stands in the extra's own file, which pip may install and nothing else."""
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["optional-dependencies"]
    assert {f"{extra}.txt" for extra in extras} == {path.name for path in LOCKED.iterdir()}
    for extra, requirements in extras.items():
        entries = re.split(r"(?m)^(?=[a-z])", (LOCKED / f"{extra}.txt").read_text())[1:]
        names = {re.match(r"[\w.-]+==[\w.]+", entry)[0] for entry in entries}
        assert set() == set(requirements) - names
        assert [] == [entry for entry in entries if not re.search(r"--hash=sha256:[0-9a-f]{64}\b", entry)]


def test_a_package_of_another_content_is_not_installed(tmp_path: Path):
    """pip refuses a file that has the locked name and version, but not the locked hash."""
    (tmp_path / "parcel-1.0-py3-none-any.whl").write_bytes(b"something else")
    (tmp_path / "locked.txt").write_text(f"parcel==1.0 --hash=sha256:{'0' * 64}\n")
    command = [sys.executable, "-m", "pip", "install", "--dry-run", "--no-index", "--find-links", str(tmp_path),
               "--require-hashes", "--requirement", str(tmp_path / "locked.txt")]  # fmt: skip
    done = subprocess.run(command, capture_output=True, text=True)
    assert done.returncode != 0 and "THESE PACKAGES DO NOT MATCH THE HASHES" in done.stderr


def test_every_npm_package_is_pinned_exactly_and_names_no_address():
    """package.json holds plain versions; the lock file holds hashes, but no address to fetch from."""
    package = json.loads((SITE / "package.json").read_text())
    versions = {**package["dependencies"], **package["devDependencies"]}
    assert {} == {name: version for name, version in versions.items() if not re.fullmatch(r"\d+\.\d+\.\d+", version)}
    locked = json.loads((SITE / "package-lock.json").read_text())["packages"]
    assert [] == [name for name, entry in locked.items() if name and ("resolved" in entry or "integrity" not in entry)]


def test_no_tracked_file_names_a_registry():
    """Whoever builds decides where packages come from."""
    files = tracked_files()
    assert len(files) > 10
    assert [] == [
        (path.relative_to(ROOT).as_posix(), host)
        for path in files
        for host in REGISTRY_HOSTS
        if host.encode() in path.read_bytes()
    ]


def test_top_level_holds_what_the_plan_says():
    """Nothing is tracked at the top but the seven entries and dot-files."""
    tops = {path.relative_to(ROOT).parts[0] for path in tracked_files()}
    plan = {"README.md", "DEVELOPERS.md", "pyproject.toml", "build.py", "pycore", "site", "tests"}
    assert set() == {name for name in tops if not name.startswith(".")} - plan


@pytest.mark.parametrize("name", checks.COMMANDS)
def test_lint_and_types_find_no_fault(name: str):
    """`build.py check` is green."""
    environment.ensure_node_modules(developer=True)
    assert "" == checks.findings(checks.COMMANDS[name])


@pytest.mark.parametrize("name", ["js/page.js", "js/worker.js", "service-worker.js", "making/library.mjs"])
def test_lint_would_find_a_fault_in_a_script(name: str):
    fault = "export function other(one) { return one == 1; }"
    command = (*checks.ESLINT, "--stdin", "--stdin-filename", name)
    assert "eqeqeq" in checks.findings(command, fault if name != "service-worker.js" else fault.removeprefix("export "))


@pytest.mark.parametrize("project", ["pages", "workers", "node"])
def test_types_would_find_a_fault_in_a_script(project: str, tmp_path: Path):
    """Of the same settings: a value that may be null, and a parameter that may be anything."""
    (tmp_path / "wrong.js").write_text("export const wrong = (any) => any;\n/x/.exec('x').index;\n", "utf-8")
    options = {"typeRoots": [str(NODE_MODULES / "@types")]}
    base = str(checks.TYPES / f"{project}.json")
    settings = {"extends": base, "include": ["wrong.js"], "compilerOptions": options}
    (tmp_path / "wrong.json").write_text(json.dumps(settings), "utf-8")
    complaint = checks.findings((*checks.TSC, str(tmp_path / "wrong.json")))
    assert "TS7006" in complaint
    assert "TS2531" in complaint or "TS18047" in complaint


def test_every_script_is_read_by_lint_and_types():
    """A script that no check reads could hold anything. (Settings have no types of ours.)"""
    scripts = {path for path in tracked_files() if path.suffix in (".js", ".mjs") and path.is_relative_to(SITE)}
    listed: set[Path] = set()
    for project in ("pages", "workers", "node"):
        read = subprocess.run((*checks.TSC, str(checks.TYPES / f"{project}.json"), "--listFilesOnly"), cwd=SITE,
                              capture_output=True, text=True, check=True)  # fmt: skip
        listed |= {Path(line) for line in read.stdout.splitlines()}
    assert len(scripts) > 40
    assert {SITE / "eslint.config.js"} == scripts - listed


def test_the_site_carries_no_types(dist: Path):
    """What only the checks read stays here. (A handout's player is there to be read.)"""
    scripts = [path for path in dist.rglob("*.js") if path.name != "handout-player.js"]
    assert len(scripts) > 8
    assert [] == [path.name for path in scripts if re.search(r"@param|@type|@import|types/", path.read_text("utf-8"))]
    assert [] == list(dist.rglob("*.d.ts"))


def test_every_page_has_the_policy_first_in_its_head(dist: Path):
    """The policy binds only what comes after it."""
    assert pages_of(dist)
    for path in pages_of(dist):
        head = html.unescape(path.read_text("utf-8").split("<head>", 1)[1])
        policy = r'\s*(?:<meta charset="utf-8">\s*)?<meta http-equiv="Content-Security-Policy" content="([^"]*)">'
        first = re.match(policy, head)
        assert first is not None, path
        assert PAGE_POLICY == first[1]


def test_no_page_needs_what_its_policy_refuses(dist: Path):
    """No script that it does not know by its hash, no style attribute, no event handler in an attribute, no <base>."""
    refused = r"<style|<base|\sstyle\s*=|<script(?![^>]*\ssrc=)|\son[a-z]+\s*=|javascript:"
    for path in (*pages_of(dist), dist / NOT_FOUND):
        page = path.read_text("utf-8")
        for script in INLINE:
            page = page.replace(f"<script>{script}</script>", "", 1)
        assert [] == re.findall(refused, page), path


def test_the_policy_knows_the_scripts_that_stand_in_pages_and_no_other(dist: Path):
    """Each by the hash of the text between its marks, comments apart; and in every page it is the first of all."""
    page = (dist / "index.html").read_text("utf-8")
    found = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    hashes = [base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in found]
    assert 2 == len(hashes)
    assert hashes == re.findall(r"'sha256-([^']+)'", PAGE_POLICY)
    assert page.index("<script>") < page.index("<script ")
    assert [] == [script for script in found if re.search(r"^\s*(?://|/?\*)", script, re.MULTILINE)]


def test_pages_and_styles_ask_nothing_of_other_hosts(dist: Path):
    """Everything loaded is relative, so the site works under any sub-path; no address begins with a slash."""
    openings = r"""(?:\s(?:src|href|data-worker|data-runtime|data-library)\s*=\s*"|url\(\s*["']?|@import\s+["'])"""
    loads = openings + r"""((?:[a-z]+:)?/[^"')]*)"""
    files = [*pages_of(dist), *dist.rglob("*.css")]
    found = [(path.name, address) for path in files for address in re.findall(loads, path.read_text("utf-8"))]
    assert [] == [(name, address) for name, address in found if not address.startswith("data:")]


def test_every_link_of_a_page_leads_to_a_file(dist: Path):
    """Whatever a page links to or loads is in the site; the query and the fragment belong to the page that opens."""
    missing = []
    for path in pages_of(dist):
        for address in re.findall(r'\s(?:src|href|data-worker)="([^"#?]+)', path.read_text("utf-8")):
            target = path.parent / address
            if not address.startswith("data:") and not (target / "index.html" if target.is_dir() else target).is_file():
                missing.append((path.relative_to(dist).as_posix(), address))
    assert [] == missing


def test_a_page_waits_for_few_files_and_asks_for_all_its_scripts_at_once(dist: Path):
    """One style sheet; of scripts no more than five; and what a script imports is asked for before it has been read."""
    for path in pages_of(dist):
        head = path.read_text("utf-8").split("</head>", 1)[0]
        scripts = re.findall(r'<(?:script|link rel="modulepreload")[^>]* (?:src|href)="([^"]+\.js)"', head)
        assert 1 == head.count('<link rel="stylesheet"'), path
        assert len(scripts) <= 5, path
        asked = {(path.parent / script).resolve() for script in scripts}
        for script in asked:
            for imported in re.findall(r'(?:from|import)"(\./[^"]+)"', script.read_text("utf-8")):
                assert (script.parent / imported).resolve() in asked, (path, script.name, imported)


def test_what_scripts_bring_from_packages_is_named_in_the_licences(dist: Path):
    """What a script of ours imports by a package's name goes into the site, and its notice must go along."""
    imported = {
        name
        for path in (SITE / "js").rglob("*.js")
        for name in re.findall(r'^import [^"\n]*?(?:from )?"([^."][^"]*)";', path.read_text("utf-8"), re.MULTILINE)
    }
    assert {"harfbuzzjs", "morphdom", "woff2-encoder/decompress", "zxing-wasm/reader"} == imported
    licences = (dist / "licences.txt").read_text("utf-8")
    for name in (one.partition("/")[0] for one in imported):
        assert (NODE_MODULES / name / "LICENSE").read_text("utf-8").strip() in licences, name


def test_what_is_compiled_into_the_webassembly_is_named_in_the_licences(dist: Path):
    """By the signs that each library leaves in Pyodide's module; Pyodide's licence asks for the place of its source."""
    module = (NODE_MODULES / "pyodide" / "pyodide.asm.wasm").read_bytes()
    signs = {
        b"inflate 1.": "zlib", b"bzip2": "bzip2", b"Zstandard": "Zstandard", b"expat": "Expat", b"mpdec": "libmpdec",
        b"HACL": "HACL*", b"emscripten": "Emscripten",
    }  # fmt: skip
    licences = (dist / "licences.txt").read_text("utf-8")
    assert list(signs) == [sign for sign in signs if sign in module]
    assert [] == [name for name in (*signs.values(), "musl", "libffi", "compiler-rt") if name not in licences]
    assert "https://github.com/pyodide/pyodide" in licences


def test_python_is_sent_for_by_the_first_script_of_a_page_that_has_it(dist: Path):
    for path in pages_of(dist):
        page = path.read_text("utf-8")
        first = re.search(r"<script [^>]*>", page)[0]
        assert ("data-runtime=" in page) == ("/early.js" in first and " async" in first), path


def test_every_response_carries_the_policy(site: str):
    """Page, script, runtime and error alike, for the header alone binds the worker."""
    assert f"{PAGE_POLICY}; frame-ancestors 'none'" == HEADER_POLICY
    page = response_of(f"{site}neutral-current/")[2].decode()
    worker = re.search(r'data-worker="\.\./([^"]+)"', page)[1]
    runtime = re.search(r'data-runtime="\.\./([^"]+)"', page)[1]
    library = re.search(r'data-library="\.\./([^"]+)"', page)[1]
    types = {
        "": "text/html; charset=utf-8",
        worker: "text/javascript; charset=utf-8",
        f"{runtime}pyodide.js": "text/javascript; charset=utf-8",
        f"{runtime}pyodide.asm.wasm": "application/wasm",
        f"{library}library.zip": "application/zip",
    }
    wanted = {**HEADERS, PERMISSIONS: permissions("")}
    for path, media_type in types.items():
        status, headers, _body = response_of(site + path)
        assert (200, media_type) == (status, headers["Content-Type"])
        assert wanted == {name: headers[name] for name in HEADERS}
    status, headers, _body = response_of(f"{site}no-such-page/")
    assert 404 == status
    assert wanted == {name: headers[name] for name in HEADERS}


def test_the_hosts_headers_file_says_the_same(dist: Path):
    """`_headers` carries every header that the server sends."""
    text = (dist / "_headers").read_text()
    assert [] == [name for name, value in HEADERS.items() if f"  {name}: {value}\n" not in text]


def test_two_builds_give_the_same_bytes(dist: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """No clock, no chance and no order of a set reaches the site; fonts and library are made anew as well."""
    (tmp_path / "workshop").mkdir()
    for module in ("whole", "runtime", "bundles"):
        monkeypatch.setattr(f"making.{module}.WORKSHOP", tmp_path / "workshop")
    with stamps.one_at_a_time():
        again = build_site(folder=tmp_path / "again")
    first, second = (
        {path.relative_to(folder).as_posix(): path.read_bytes() for path in stamps.files_under(folder)}
        for folder in (dist, again)
    )
    assert first
    assert [] == sorted(name for name in first.keys() | second.keys() if first.get(name) != second.get(name))


def test_a_fault_in_a_page_does_not_go_unseen(browser: Browser, site: str):
    """The guard of every browser test hears console errors, uncaught exceptions and requests to other hosts."""
    context, witness = browser.new_context(), Witness(site)
    context.on("page", witness.watch)
    page = context.new_page()
    page.goto(f"{site}licences.txt")
    # A text file names no icon, so that the browser looks for one of its own accord.
    assert [] == [fault for fault in witness.faults if "favicon.ico" not in fault]
    page.evaluate("console.error('a fault')")
    page.evaluate("setTimeout(() => { throw new Error('an exception') })")
    page.evaluate("fetch('http://127.0.0.1:9/elsewhere').catch(() => {})")
    page.wait_for_timeout(200)
    context.close()
    heard = "\n".join(witness.faults)
    assert [] == [fault for fault in ("a fault", "an exception", "elsewhere") if fault not in heard]


def test_the_worker_cannot_ask_another_host(browser: Browser, site: str, ready: Callable[[Page], None]):
    """The policy of the page does not bind the worker: its own header must."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{site}neutral-current/")
    ready(page)
    broken = page.workers[0].evaluate(
        """() => new Promise((resolve) => {
            addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
            fetch("http://127.0.0.1:9/elsewhere").catch(() => setTimeout(() => resolve("fetched"), 1000));
        })"""
    )
    context.close()
    assert "connect-src" == broken


@pytest.mark.parametrize("face", FACES, ids=lambda face: face.name)
def test_lettering_is_as_wide_as_the_family_at_that_weight(face):
    """Oracle: fontTools' own instancer, which the build does not use, gives the same advances."""
    made = make_face(face)
    names, widths = made.getBestCmap(), {}
    for path in reversed(face.paths()):
        static = instancer.instantiateVariableFont(TTFont(path), {"wght": face.weight})
        widths |= {code: static["hmtx"][name][0] for code, name in static.getBestCmap().items()}
    assert set(map(ord, face.characters)) == set(names)
    assert {code: widths[code] for code in names} == {code: made["hmtx"][name][0] for code, name in names.items()}
