"""Writers: a finished drawing becomes a file; they know nothing of electricity."""
