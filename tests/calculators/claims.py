"""What each calculator's folder of tests says of its teaching."""

import importlib
from collections.abc import Mapping
from types import ModuleType


def claims_of(slug: str) -> ModuleType:
    """``CLAIMS`` (a function of a form by level), ``EXIT`` (answers of the exit question; empty if the plan writes them
    out) and ``WITHOUT_RIG`` (why there is no recording sheet; "" if there is one)."""
    return importlib.import_module(f"calculators.{slug.replace('-', '_')}.claims")


def whole(form: Mapping[str, str], *names: str) -> bool:
    """Whether no value of these fields has a decimal point."""
    return all("." not in form[name] for name in names)
