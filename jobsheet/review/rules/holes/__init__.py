"""Rules about making holes."""
