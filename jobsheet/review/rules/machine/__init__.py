"""Rules about the machine and its speeds."""
