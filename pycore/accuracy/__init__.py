"""How far results may differ: errors of hands and instruments, and whether two results agree."""
