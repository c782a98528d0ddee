"""Where a cut begins: feeds, depths, fluids."""
