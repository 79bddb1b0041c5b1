"""In the place of the standard library's module of the same name: the one thing of it that Pyodide's start asks for."""


def iscoroutinefunction(_function: object) -> bool:
    """Nothing of ours is one."""
    return False
