"""Reading a form into values, or into every fault at once; links; the conventions that a form chooses."""
