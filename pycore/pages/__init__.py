"""Pages that are no calculators; they may read the registry of those that are."""
