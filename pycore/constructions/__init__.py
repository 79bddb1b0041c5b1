"""Geometric constructions as data: moves of ruler, protractor and compasses over named points."""
