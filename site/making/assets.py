"""Copies what pages load into folders named by the hash of their contents, so that hosts may keep them for ever."""

import shutil
from pathlib import Path

from making import stamps

HASH_LENGTH = 16


def place_hashed(prepared: Path, parent: Path) -> Path:
    """Move the folder `prepared` to `parent`/<hash of everything in it> and give the new path."""
    name = stamps.hash_of_files(stamps.files_under(prepared), prepared)[:HASH_LENGTH]
    parent.mkdir(parents=True, exist_ok=True)
    return prepared.rename(parent / name)


def copy_sources(source: Path, target: Path) -> None:
    """Copy the files of one source folder; a folder that does not exist (yet) gives nothing."""
    for path in stamps.files_under(source) if source.exists() else ():
        copy = target / path.relative_to(source)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)
