"""Writers: they turn a finished drawing into a file, without any knowledge of electricity."""
