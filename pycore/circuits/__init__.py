"""Circuit families: values in, a frozen solution out. Nothing here draws or words anything."""
