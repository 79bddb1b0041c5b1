"""One module for each page: its fields, and how the parts above make its answer."""
