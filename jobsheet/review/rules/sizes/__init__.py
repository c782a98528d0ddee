"""Rules about sizes and their limits."""
