"""Two to six phasors, added or subtracted."""
