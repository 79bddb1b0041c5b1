"""Branches in parallel."""
