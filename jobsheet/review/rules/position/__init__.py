"""Rules on places, zeros and dials."""
