"""Scores of a page by Lighthouse on its mobile setting: a slow phone on a slow network, simulated."""

import json
import os
from collections.abc import Iterable
from pathlib import Path

from making.paths import NODE_MODULES
from making.programs import CHROMIUM_OPTIONS, run

CATEGORIES = ("performance", "accessibility", "best-practices", "seo")
GOALS = {"performance": 98, "accessibility": 100, "best-practices": 100, "seo": 100}
COMMAND = NODE_MODULES / "lighthouse" / "cli" / "index.js"


def scores(address: str, chromium: Path, categories: Iterable[str] = CATEGORIES) -> tuple[dict[str, int], list[str]]:
    """The score of each category out of 100, and the name of every audit that does not have full marks.

    Raises BuildError when Lighthouse does not run to its end.
    """
    flags = " ".join(["--headless=new", *CHROMIUM_OPTIONS])
    command = ["node", str(COMMAND), address, "--quiet", "--output=json", "--output-path=stdout"]
    command += ["--no-enable-error-reporting", f"--only-categories={','.join(categories)}", f"--chrome-flags={flags}"]
    output = run(command, "Run it by hand to see more.", env={**os.environ, "CHROME_PATH": str(chromium)}, timeout=180)
    report = json.loads(output[output.index("{") :])
    short = [name for name, audit in report["audits"].items() if audit["score"] is not None and audit["score"] < 1]
    return {name: round(100 * category["score"]) for name, category in report["categories"].items()}, short
