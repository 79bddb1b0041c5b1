"""The build keeps its promises: exact pins, one policy, no registry named, the same bytes twice."""

import re
import tomllib

from making.paths import ROOT


def test_every_python_package_is_pinned_exactly():
    """Each requirement of each extra is `name==version`."""
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["optional-dependencies"]
    requirements = [line for extra in extras.values() for line in extra]
    assert len(requirements) > 10
    loose = [line for line in requirements if not re.fullmatch(r"[a-z0-9-]+==\d+(\.\d+)+", line)]
    assert [] == loose
