"""Zero, positive and negative sequence."""
