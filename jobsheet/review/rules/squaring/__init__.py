"""Rules about the datum face and squaring."""
