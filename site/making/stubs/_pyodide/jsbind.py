"""In the place of Pyodide's module of the same name: JavaScript is called with plain arguments, and nothing declares
types for them, so that what reads declarations (inspect, typing's hints) stays away."""

from _pyodide_core import (
    JsFuncSignature,
    js2py_as_py_json,
    js2py_deep,
    js2py_default_call_result,
    py2js_as_js_json,
    py2js_deep,
    py2js_default,
)


class Json:
    """Values as JSON has them."""

    py2js, js2py = py2js_as_js_json, js2py_as_py_json


class Deep:
    """Values with all that is in them."""

    py2js, js2py = py2js_deep, js2py_deep


class Default:
    """Values as they come."""


class BindClass:
    """What a declared class would derive from."""


def _any_arguments(*_given, **_named):
    """What every call is taken for."""


no_default = object()
default_signature = JsFuncSignature(
    _any_arguments, False, 0, (), (), py2js_default, (), (), (), py2js_default, js2py_default_call_result
)


def func_to_sig(_function):
    """The one signature there is."""
    return default_signature
