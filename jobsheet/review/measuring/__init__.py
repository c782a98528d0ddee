"""Rules about measuring."""
