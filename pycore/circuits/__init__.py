"""Circuits: values in, a frozen solution out. Nothing here draws or makes sentences."""
