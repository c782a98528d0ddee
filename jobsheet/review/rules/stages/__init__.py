"""Rules on what the solids say: one for each kind of fact."""
