"""Rules about thin, soft or stressed work."""
