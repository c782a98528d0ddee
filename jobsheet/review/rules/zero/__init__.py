"""Rules on finding the zero, and on what loses it."""
