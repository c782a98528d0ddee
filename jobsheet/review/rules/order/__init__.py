"""Rules about what comes before the first cut, and about the plan as a whole."""
