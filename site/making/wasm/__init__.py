"""Reads Pyodide's WebAssembly, marks which of its functions are called, and splits it into a hot and a cold module."""
