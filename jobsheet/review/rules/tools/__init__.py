"""Rules about the cabinet."""
