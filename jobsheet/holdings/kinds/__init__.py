"""One kind of holding a file."""
