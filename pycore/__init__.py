"""Phasor Folio's core: the electricity, the constructions, the sheets and their words.

Pure Python that runs unchanged in CPython and in Pyodide. ``pycore.api`` is the only
entrance for the browser; DEVELOPERS.md has the floors.
"""
