"""The build's own modules: what `build.py` calls to set up, build, serve and test Phasor Folio.

`paths`, `progress`, `stamps`, `environment` and `programs` use the standard library only, because they run before
the virtual environment exists; the others may use the packages of the extra `build`.
"""
