"""What kinds of operation share; no kind knows another."""
