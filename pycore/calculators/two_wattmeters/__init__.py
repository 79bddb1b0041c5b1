"""Power measured by two wattmeters."""
