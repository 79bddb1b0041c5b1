"""The engine of every page that adds phasors: case, page, sheet, lesson, workings, task."""
