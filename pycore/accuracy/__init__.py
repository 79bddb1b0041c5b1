"""How far results may differ: hands, instruments, and whether two results agree."""
