"""From a construction to a finished sheet in mm: paper, scale, frame, strokes, labels."""
