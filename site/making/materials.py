"""The bill of materials of the site, in CycloneDX form: what it carries, and what it was built with.

Read from the locks alone, without clock or random numbers, so that equal sources give equal bytes.
"""

import base64
import json
import re
import tomllib
import warnings
from collections.abc import Iterator
from typing import Any

from cyclonedx.model import HashAlgorithm, HashType
from cyclonedx.model.bom import Bom
from cyclonedx.model.component import Component, ComponentScope, ComponentType
from cyclonedx.model.license import LicenseExpression
from cyclonedx.output.json import JsonV1Dot6
from packageurl import PackageURL

from making.environment import LOCKED
from making.paths import ROOT, SITE

BILL = "bom.json"
TOOLS = ("esbuild", "@types/", "type-fest", "tagged-tag")
"""npm packages that build the site and are not in it, with all that they bring."""
CARRIED = ("pydyf", "segno")
"""Python packages that are in the site; the others build it."""
COMPILED = re.compile(r"^([^\n]+)\n-+$", re.MULTILINE)
"""A heading of licences/webassembly.txt."""


def _scope(carried: bool) -> ComponentScope:
    return ComponentScope.REQUIRED if carried else ComponentScope.EXCLUDED


def _of_npm() -> Iterator[Component]:
    """The locked npm packages that are no developer's own."""
    locked = json.loads((SITE / "package-lock.json").read_text("utf-8"))["packages"]
    for place, entry in locked.items():
        if not place or entry.get("dev"):
            continue
        group, _, name = place.removeprefix("node_modules/").rpartition("/")
        digest = base64.b64decode(entry["integrity"].removeprefix("sha512-")).hex()
        yield Component(
            name=name, group=group or None, version=entry["version"], type=ComponentType.LIBRARY,
            purl=PackageURL("npm", group or None, name, entry["version"]), bom_ref=place,
            scope=_scope(not any(tool in place for tool in TOOLS)),
            hashes=[HashType(alg=HashAlgorithm.SHA_512, content=digest)], licenses=_licences(entry),
            components=list(_compiled()) if name == "pyodide" else [],
        )  # fmt: skip


def _licences(entry: dict[str, Any]) -> list[LicenseExpression]:
    return [LicenseExpression(entry["license"])] if entry.get("license") else []


def _compiled() -> Iterator[Component]:
    """What is compiled into Pyodide's WebAssembly, as the licences name it."""
    for title in COMPILED.findall((SITE / "licences" / "webassembly.txt").read_text("utf-8")):
        if not title.startswith(("In the", "Under the")):
            yield Component(name=title, type=ComponentType.LIBRARY, bom_ref=f"pyodide/{title}")


def _of_python() -> Iterator[Component]:
    """The locked Python packages."""
    for name, version in re.findall(r"^([\w.-]+)==([\w.]+)", (LOCKED / "build.txt").read_text("utf-8"), re.MULTILINE):
        yield Component(
            name=name, version=version, type=ComponentType.LIBRARY, purl=PackageURL("pypi", None, name, version),
            bom_ref=f"python/{name}", scope=_scope(name in CARRIED),
        )  # fmt: skip


def bill_of_materials() -> str:
    """The bill as JSON."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    root = Component(
        name=project["name"], version=project["version"], type=ComponentType.APPLICATION, bom_ref=project["name"],
        licenses=[LicenseExpression(project["license"])],
    )  # fmt: skip
    bill = Bom(components=[*_of_npm(), *_of_python()])
    for part, name in ((bill, "serial_number"), (bill.metadata, "timestamp")):
        setattr(part, name, None)  # else drawn at random, and the time
    bill.metadata.component = root
    bill.register_dependency(root, bill.components)
    with warnings.catch_warnings():
        return str(JsonV1Dot6(bill).output_as_string(indent=1)) + "\n"
