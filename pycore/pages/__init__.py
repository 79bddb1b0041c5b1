"""Pages that are not calculators; they may use the registry of calculators."""
