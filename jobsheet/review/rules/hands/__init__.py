"""Rules about what a hand can do."""
