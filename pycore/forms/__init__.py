"""Forms: from texts to values or to all faults at once; links; conventions."""
