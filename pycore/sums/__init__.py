"""The engine of every page that adds phasors: sum, page, sheet, lesson, workings, task."""
