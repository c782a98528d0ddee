"""Rules about the order and size of milling cuts."""
