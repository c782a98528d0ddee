"""Rules on what holds the work."""
