"""Cuts Pyodide's script to what it needs of its module, and what its module needs of it.

Every place that is replaced is looked for first, and must be there once: another Pyodide may be written otherwise.
"""

import re
from collections.abc import Collection, Iterable

ASSIGN = "function assignWasmExports(wasmExports){"
IMPORTS = "}var wasmImports={"
FUNCTION = "async function _createPyodideModule(moduleArg={}){"
GIVEN = ";return moduleRtn}export default _createPyodideModule;"
RESULT = "moduleRtn"
ALWAYS = frozenset({"main", "__main_argc_argv", "memory", "__indirect_function_table", "__wasm_call_ctors"})
"""Exports that the script finds by other ways than its list of names."""

_MARK = re.compile(r'(?<=[;}])[\w$]+\.(?:sig|isAsync|stub)=(?:"[^"]*"|true|false|!0|!1)(?:;|(?=\}))')
_EVAL = re.compile(r"(?<![.\w$])eval\(")
_RESULT = re.compile(rf"export\{{([\w$]+) as {RESULT}\}};$")
_WORD = re.compile(r"[\w$]+")
_PAIR = re.compile(r'(?:([\w$]+)=)?(?:Module\["([\w$]+)"\]=)?wasmExports\["([^"]+)"\]')
_DIRECT = re.compile(r'wasmExports(?:\.([\w$]+)|\["([^"]+)"\])')
_ASSIGNMENT = re.compile(r";(?=[\w$]+=|Module)")


class Unfamiliar(ValueError):
    """A script of Pyodide is not written as this module expects."""


def once(text: str, wanted: str) -> int:
    """Where `wanted` stands in `text`. Raises Unfamiliar unless it stands there once."""
    if text.count(wanted) != 1:
        raise Unfamiliar(f"{wanted!r} stands {text.count(wanted)} times in Pyodide's script, not once")
    return text.index(wanted)


def replaced(text: str, old: str, new: str) -> str:
    """`text` with `new` in the place of `old`."""
    at = once(text, old)
    return text[:at] + new + text[at + len(old) :]


def _exports_part(glue: str) -> tuple[int, int, int]:
    """Where the variables for exports begin, where the function that sets them begins, and where it ends."""
    function = once(glue, ASSIGN)
    variables = glue.rfind("var ", 0, function)
    if not re.fullmatch(r"var [\w$,]+;", glue[variables:function]):
        raise Unfamiliar("no list of variables stands before the exports in Pyodide's script")
    return variables, function, glue.index("}", function)


def exports_used(glue: str, others: Iterable[str]) -> set[str]:
    """The exports of the module that the scripts use, beside the list of all of them: every one whose variable's or
    property's name is a word anywhere in them."""
    variables, function, end = _exports_part(glue)
    rest = glue[:variables] + glue[end:]
    words = {word for text in (rest, *others) for word in _WORD.findall(text)}
    listed = _PAIR.findall(glue[function:end])
    used = {export for variable, name, export in listed if variable in words or name in words}
    return set(ALWAYS) | used | {first or second for first, second in _DIRECT.findall(rest)}


def with_exports(glue: str, kept: Collection[str]) -> str:
    """The script with its list of exports cut to those that are kept."""
    variables, function, end = _exports_part(glue)
    assignments = _ASSIGNMENT.split(glue[function + len(ASSIGN) : end])
    names = [_PAIR.search(one) for one in assignments]
    if None in names:
        raise Unfamiliar("an export is assigned in another way in Pyodide's script")
    staying = [one for one, name in zip(assignments, names, strict=True) if name and name[3] in kept]
    set_here = [match[0] for one in staying if (match := _WORD.match(one))]
    declared = glue[variables + len("var ") : function - 1].split(",")
    alone = [name for name in declared if name in ("wasmTable", "wasmMemory") and name not in set_here]
    head = f"var {','.join([*set_here, *alone])};{ASSIGN}{';'.join(staying)}"
    return glue[:variables] + head + glue[end:]


def with_imports(glue: str, wanted: Collection[str]) -> str:
    """The script with its list of what modules may import cut to what ours do."""
    begins = once(glue, IMPORTS) + len(IMPORTS)
    end = glue.index("}", begins)
    entries = glue[begins:end].split(",")
    staying = [entry for entry in entries if entry.partition(":")[0] in wanted]
    return glue[:begins] + ",".join(staying) + glue[end:]


def without_marks(glue: str) -> str:
    """The script without what only modules that are linked later read of its functions: those marks name each function,
    and so would keep all of them."""
    return _MARK.sub("", glue)


def as_module(glue: str) -> str:
    """The script's one function as a module of its own, whose names a compressor can follow and leave out. It gives
    `RESULT`, and finds its argument as a global. What it evaluates is text of its own that names nothing of it."""
    if not glue.startswith(FUNCTION) or not glue.rstrip().endswith(GIVEN):
        raise Unfamiliar("Pyodide's script is not one function")
    body = glue[len(FUNCTION) : glue.rindex(GIVEN)]
    return f"{_EVAL.sub('(0,eval)(', body)};export{{moduleRtn as {RESULT}}};"


def as_function(compressed: str) -> str:
    """What `as_module` made, compressed meanwhile, as the script that it was made from."""
    body, result = compressed.rstrip(), _RESULT.search(compressed.rstrip())
    if result is None:
        raise Unfamiliar("the compressed script does not end with what it gives")
    return f"{FUNCTION}{body[: result.start()]}return {result[1]}}}export default _createPyodideModule;\n"
