"""What stands in the site's library before `encodings`, the first module that Python takes from an archive.

Python's own importer reads and unmarshals each module of an archive twice, the first time only to learn the name of
its file. With this, once: archives of the site hold compiled modules and nothing else (library.py).
What the importer does not find so it looks for as before.
"""


def _read_once() -> None:
    import marshal
    import zipimport
    from _frozen_importlib import ModuleSpec

    importer = zipimport.zipimporter
    find_spec, get_code = importer.find_spec, importer.get_code

    def entry_of(archive, name):
        """The archive's entry for a module, and where it stands if it is a package."""
        path = archive.prefix + name.rpartition(".")[2]
        files = archive._get_files()
        package = files.get(f"{path}/__init__.pyc")
        return (package, f"{archive.archive}/{path}") if package else (files.get(f"{path}.pyc"), "")

    def spec(self, name, target=None):
        entry, package = entry_of(self, name)
        if entry is None:
            return find_spec(self, name, target)
        module_spec = ModuleSpec(name, self, origin=entry[0], is_package=bool(package))
        module_spec.has_location = True
        if package:
            module_spec.submodule_search_locations.append(package)
        return module_spec

    def code(self, name):
        entry, _ = entry_of(self, name)
        if entry is None:
            return get_code(self, name)
        # After the file's head of 16 bytes.
        return marshal.loads(memoryview(zipimport._get_data(self.archive, entry))[16:])

    importer.find_spec, importer.get_code = spec, code


_read_once()
del _read_once
